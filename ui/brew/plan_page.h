// SPDX-License-Identifier: GPL-3.0-or-later
// The plan: where the recipe comes from, the flow that edits it, and the kit it is brewed on.
#pragma once

#include "desk/brew.h"
#include "ui/brew/flow_page.h"

class QLabel;
class QPushButton;

namespace staveline::ui {

class KitEditor;
class MessageLabel;
class SteadyScroll;

class PlanPage : public QWidget {
    Q_OBJECT
public:
    explicit PlanPage(Session& session, QWidget* parent = nullptr);
    /// Another vessel: what is in hand is left.
    void showVessel(const facts::VesselName& vessel);
    void refresh(); ///< the book changed; what is half typed stays
    void storeInHand();
    void makeUsual();
    void focusFirst();
    [[nodiscard]] FlowPage& flow() const { return *flow_; }
    [[nodiscard]] KitEditor& kit() const { return *kit_; }
    [[nodiscard]] RecipeEditorModel& model() const { return *model_; }
    [[nodiscard]] const std::optional<desk::PlannedRecipe>& planned() const { return planned_; }

private:
    void sayOrigin();
    void sayState();

    Session& session_;
    facts::VesselName vessel_;
    std::optional<desk::PlannedRecipe> planned_;
    RecipeEditorModel* model_;
    QLabel* origin_;
    QLabel* moves_;
    MessageLabel* message_;
    QPushButton* usual_;
    SteadyScroll* scroll_;
    FlowPage* flow_;
    KitEditor* kit_;
};

/// "Proposal 2, adopted on 3 Mar 2026", "the usual recipe since ..", "the habit: ..".
[[nodiscard]] QString originWords(const desk::PlannedRecipe& planned);

} // namespace staveline::ui
