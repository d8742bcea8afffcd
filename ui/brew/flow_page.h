// SPDX-License-Identifier: GPL-3.0-or-later
// The liquid's way from water to vessel on one page, with the fields of the recipe at the step they belong to.
#pragma once

#include "brewing/brew_plan.h"
#include "ui/brew/binder.h"

#include <QWidget>

namespace staveline::ui {

class FlowStrip;
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
    /// The way at a glance; it stands where the page that shows the flow puts it.
    [[nodiscard]] FlowStrip& strip() const { return *strip_; }
    [[nodiscard]] StepSection& step(Step step) const { return *steps_[step]; }
    [[nodiscard]] Binder& fields() const { return *binder_; }
    [[nodiscard]] YeastEditor& yeast() const { return *yeast_; }
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
    void sayAmounts(const BrewPlan& plan);
    [[nodiscard]] Message moreOfRefill(const BrewPlan& plan) const;
    [[nodiscard]] Message moreOfFermenter(const BrewPlan& plan) const;
    void sayNotes(const BrewPlan& plan);
    void showStrip(const BrewPlan& plan);
    void goTo(int cell);

    BrewBench& bench_;
    Purpose purpose_;
    Binder* binder_;
    FlowStrip* strip_;
    std::array<StepSection*, stepCount_> steps_{};
    GristEditor* grist_;
    MashEditor* mash_;
    HopEditor* hops_;
    YeastEditor* yeast_;
};

} // namespace staveline::ui
