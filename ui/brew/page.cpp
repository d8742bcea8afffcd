// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/page.h"

#include "ui/brew/as_brewed_page.h"
#include "ui/brew/kit_editor.h"
#include "ui/brew/plan_page.h"
#include "ui/brew/step_section.h"
#include "ui/widgets/part_choice.h"
#include "ui/widgets/theme.h"

#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace staveline::ui {

BrewPage::BrewPage(Session& session, Prompt& prompt, QWidget* parent)
    : WorkPage(session, parent), choice_(new PartChoice({tr("Plan"), tr("Brew sheet"), tr("As brewed")}, this)),
      pages_(new QStackedWidget(this)), plan_(new PlanPage(session)), sheet_(new BrewSheetPage(session, prompt)),
      asBrewed_(new AsBrewedPage(session)) {
    connect(choice_, &PartChoice::chosen, this, [this](int part) { showPart(static_cast<Part>(part)); });
    pages_->addWidget(plan_);
    pages_->addWidget(sheet_);
    pages_->addWidget(asBrewed_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .5), 0, 0);
    column->setSpacing(lines(*this, .4));
    column->addWidget(choice_);
    column->addWidget(pages_, 1);
    connect(asBrewed_, &AsBrewedPage::refillAsked, this, &BrewPage::refillAsked);
}

BrewPage::Part BrewPage::part() const {
    return static_cast<Part>(pages_->currentIndex());
}

void BrewPage::showPart(Part part) {
    plan_->storeInHand();
    choice_->setFront(static_cast<int>(part));
    pages_->setCurrentIndex(static_cast<int>(part));
    follow();
    Q_EMIT partChanged();
}

void BrewPage::showPlan() {
    showPart(Part::plan);
}
void BrewPage::showKit() {
    showPart(Part::plan);
    plan_->kit().button().setChecked(true);
    plan_->kit().form().focusFirst();
}
void BrewPage::showSheet() {
    showPart(Part::sheet);
}
void BrewPage::showAsBrewed() {
    showPart(Part::asBrewed);
}

/// Only what is in front runs the model.
void BrewPage::refresh() {
    sheet_->showVessel(vessel()); // made when it is looked at or printed
    if (part() == Part::plan) {
        plan_->showVessel(vessel());
        plan_->refresh();
    } else if (part() == Part::asBrewed) {
        asBrewed_->showVessel(vessel());
        asBrewed_->refresh();
    }
}

void BrewPage::leaveVessel() {
    plan_->storeInHand();
}

void BrewPage::focusWork() {
    if (part() == Part::plan)
        plan_->focusFirst();
    else if (part() == Part::asBrewed)
        asBrewed_->focusFirst();
    else
        choice_->button(static_cast<int>(Part::sheet)).setFocus(Qt::OtherFocusReason);
}

QStringList BrewPage::notes() const {
    QStringList all;
    for (int step = 0; step < FlowPage::stepCount_; ++step)
        all << plan_->flow().step(static_cast<FlowPage::Step>(step)).notes();
    return all;
}

} // namespace staveline::ui
