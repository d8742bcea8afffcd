// SPDX-License-Identifier: GPL-3.0-or-later
// The liquid's way from water to vessel on one page, with the fields of the recipe at the step they belong to.
#pragma once

#include "ui/brew/binder.h"

#include <QWidget>

namespace staveline::ui {

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

    FlowPage(BrewBench& bench, Purpose purpose, QWidget* parent = nullptr);
    void focusFirst();
    [[nodiscard]] StepSection& step(Step step) const { return *steps_[step]; }
    [[nodiscard]] Binder& fields() const { return *binder_; }
    [[nodiscard]] GristEditor& grist() const { return *grist_; }
    [[nodiscard]] MashEditor& mashEditor() const { return *mash_; }
    [[nodiscard]] HopEditor& hops() const { return *hops_; }
    [[nodiscard]] YeastEditor& yeast() const { return *yeast_; }
    /// Where a finding or a caution belongs, by its key.
    [[nodiscard]] static Step stepOf(const std::string& key);

private:
    void refresh(bool anew);
    void addWanted(Purpose purpose);
    void addKettle();
    /// One line of captioned number fields.
    void addFields(Step step, const std::vector<NumberTie>& ties, QWidget* last = nullptr);
    [[nodiscard]] QWidget* sugarKind();
    void sayAmounts(const BrewPlan& plan);
    void sayNotes(const BrewPlan& plan);
    void drawBands(const BrewPlan& plan);

    BrewBench& bench_;
    Binder* binder_;
    std::array<StepSection*, stepCount_> steps_{};
    GristEditor* grist_;
    MashEditor* mash_;
    HopEditor* hops_;
    YeastEditor* yeast_;
};

} // namespace staveline::ui
