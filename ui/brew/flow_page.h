// SPDX-License-Identifier: GPL-3.0-or-later
// The liquid's way from water to vessel on one page, with the fields of the recipe at the step they belong to.
#pragma once

#include "brewing/brew_plan.h"
#include "ui/brew/binder.h"

#include <QWidget>

namespace staveline::ui {

class FlowDiagram;
class GristEditor;
class HopEditor;
class MashEditor;
class StepSection;
class YeastEditor;

class FlowPage : public QWidget {
    Q_OBJECT
public:
    enum class Purpose { plan, brewed }; ///< a brew that is made no longer follows from a draw
    enum Step { wanted, water, mash, kettle, fermenter, vessel, stepCount_ };

    FlowPage(RecipeEditorModel& model, Purpose purpose, QWidget* parent = nullptr);
    void focusFirst();
    /// The way at a glance; it stands where the page that shows the flow puts it.
    [[nodiscard]] FlowDiagram& diagram() const { return *diagram_; }
    [[nodiscard]] StepSection& step(Step step) const { return *steps_[step]; }
    [[nodiscard]] Binder& fields() const { return *binder_; }
    [[nodiscard]] YeastEditor& yeast() const { return *yeast_; }
    void setFirstFill(bool firstFill); ///< of an empty vessel: nothing is drawn for it
    /// Where a finding or a caution belongs, by its key.
    [[nodiscard]] static Step stepOf(const std::string& key);

Q_SIGNALS:
    void wentTo(QWidget* step); ///< asked for: it wants to be in sight

private:
    void refresh(bool anew);
    void addWanted();
    void addKettle();
    /// One line of captioned number fields.
    void addFields(Step step, const std::vector<NumberTie>& ties, QWidget* last = nullptr);
    [[nodiscard]] QWidget* sugarKind();
    void sayAmounts(const brewing::BrewPlan& plan);
    [[nodiscard]] Message moreOfRefill(const brewing::BrewPlan& plan) const;
    [[nodiscard]] Message moreOfFermenter(const brewing::BrewPlan& plan) const;
    void sayNotes(const brewing::BrewPlan& plan);
    void showDiagram(const brewing::BrewPlan& plan);
    void goTo(int cell);

    RecipeEditorModel& model_;
    Purpose purpose_;
    bool firstFill_ = false;
    Binder* binder_;
    FlowDiagram* diagram_;
    std::array<StepSection*, stepCount_> steps_{};
    GristEditor* grist_;
    MashEditor* mash_;
    HopEditor* hops_;
    YeastEditor* yeast_;
};

} // namespace staveline::ui
