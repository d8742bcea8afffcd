// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/page.h"

#include "ui/brew/as_brewed_page.h"
#include "ui/brew/plan_page.h"
#include "ui/brew/step_section.h"
#include "ui/widgets/accessible_controls.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

/// The part in front is told by weight too.
void mark(QPushButton& button, bool inFront) {
    button.setChecked(inFront);
    setType(button, inFront ? Type::strong : Type::body);
}

} // namespace

BrewPage::BrewPage(Session& session, Prompt& prompt, QWidget* parent)
    : WorkPage(session, parent), pages_(new QStackedWidget(this)), plan_(new PlanPage(session)),
      sheet_(new BrewSheetPage(session, prompt)), asBrewed_(new AsBrewedPage(session)) {
    auto* row = new QHBoxLayout;
    row->setSpacing(lines(*this, .3));
    const std::array names = {tr("Plan"), tr("Brew sheet"), tr("As brewed")};
    for (std::size_t i = 0; i < names.size(); ++i) {
        auto* button = new QPushButton(names[i], this);
        button->setCheckable(true);
        tellAsOneOfSeveral(*button);
        mark(*button, i == 0);
        choices_[i] = button;
        connect(button, &QPushButton::clicked, this, [this, i] { showPart(static_cast<Part>(i)); });
        row->addWidget(button);
    }
    row->addStretch(1);
    pages_->addWidget(plan_);
    pages_->addWidget(sheet_);
    pages_->addWidget(asBrewed_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .5), 0, 0);
    column->setSpacing(lines(*this, .4));
    column->addLayout(row);
    column->addWidget(pages_, 1);
    connect(asBrewed_, &AsBrewedPage::refillAsked, this, &BrewPage::refillAsked);
}

BrewPage::Part BrewPage::part() const {
    return static_cast<Part>(pages_->currentIndex());
}

void BrewPage::showPart(Part part) {
    plan_->storeInHand();
    for (std::size_t i = 0; i < choices_.size(); ++i)
        mark(*choices_[i], i == static_cast<std::size_t>(part));
    pages_->setCurrentIndex(static_cast<int>(part));
    follow();
    Q_EMIT partChanged();
}

void BrewPage::showPlan() {
    showPart(Part::plan);
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
        choices_[static_cast<std::size_t>(Part::sheet)]->setFocus(Qt::OtherFocusReason);
}

QStringList BrewPage::notes() const {
    QStringList all;
    for (int step = 0; step < FlowPage::stepCount_; ++step)
        all << plan_->flow().step(static_cast<FlowPage::Step>(step)).notes();
    return all;
}

} // namespace staveline::ui
