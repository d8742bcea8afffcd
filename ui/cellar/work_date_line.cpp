// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/work_date_line.h"

#include "ui/cellar/year_lane.h"
#include "ui/present/score_words.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/wrap_layout.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include <algorithm>

namespace staveline::ui {

using desk::PlannedWork;
using vessel::DueKind;

namespace {

std::string wordFor(DueKind kind) {
    return kind == DueKind::taste ? "taste" : kind == DueKind::brew ? "brew" : "draw";
}

} // namespace

WorkDateLine::WorkDateLine(Session& session, QWidget* parent, std::optional<DueKind> only)
    : QWidget(parent), session_(session), only_(only), label_(new QLabel(this)), work_(new ChoiceField(this)),
      day_(new DateField(session.desk().today(), this)),
      set_(new QPushButton(only ? tr("Move the %1").arg(workWord(*only)) : tr("Move it"), this)),
      back_(new QPushButton(this)) {
    work_->setAccessibleName(tr("Work to move"));
    work_->setVisible(!only);
    day_->setName(only ? tr("Day of the %1").arg(workWord(*only)) : tr("Day of the work"));
    set_->setToolTip(tr("Puts this off, or brings it forward, for this cycle alone."));
    auto* row = new WrapLayout(this, lines(*this, .5));
    for (QWidget* part : {static_cast<QWidget*>(label_), static_cast<QWidget*>(work_), static_cast<QWidget*>(day_),
                          static_cast<QWidget*>(set_), static_cast<QWidget*>(back_)})
        row->addWidget(part);
    connectParts();
    showVessel(nullptr);
}

void WorkDateLine::connectParts() {
    connect(work_, &ChoiceField::activated, this, &WorkDateLine::showWork);
    connect(day_, &DateField::edited, this, &WorkDateLine::offer);
    connect(day_->edit(), &QLineEdit::returnPressed, set_, &QPushButton::click);
    connect(set_, &QPushButton::clicked, this, [this] {
        if (const PlannedWork* work = chosen())
            move(vessel_, work->kind, day_->day());
    });
    connect(back_, &QPushButton::clicked, this, [this] {
        if (const PlannedWork* work = chosen())
            move(vessel_, work->kind, std::nullopt);
    });
}

std::vector<PlannedWork> WorkDateLine::worksOf(const desk::VesselSummary* vessel) const {
    if (!vessel || session_.desk().readOnly())
        return {};
    std::vector<PlannedWork> works = desk::movableWork(*vessel);
    std::erase_if(works, [this](const PlannedWork& work) { return only_ && work.kind != *only_; });
    return works;
}

/// What is half typed stays while nothing of it changed.
void WorkDateLine::showVessel(const desk::VesselSummary* vessel) {
    const bool same = vessel && vessel->name == vessel_;
    if (same && worksOf(vessel) == works_)
        return;
    const std::string before = work_->word();
    vessel_ = vessel ? vessel->name : facts::VesselName();
    works_ = worksOf(vessel);
    label_->setText(only_ ? sentenceCase(tr("%1 on").arg(workWord(*only_))) : tr("Move for %1:").arg(qs(vessel_)));
    label_->setVisible(!vessel_.empty());
    work_->clear();
    for (const PlannedWork& work : works_)
        work_->add(workWord(work.kind), wordFor(work.kind));
    const bool there = std::any_of(works_.begin(), works_.end(),
                                   [&](const PlannedWork& work) { return wordFor(work.kind) == before; });
    if (same && there)
        work_->setWord(before);
    setEnabled(!works_.empty());
    setVisible(!only_ || !works_.empty());
    back_->setText(vessel && vessel->steering && vessel->steering->reachable ? tr("By the age again")
                                                                             : tr("By the interval again"));
    day_->setToday(session_.desk().today());
    showWork();
}

const PlannedWork* WorkDateLine::chosen() const {
    const auto found = std::find_if(works_.begin(), works_.end(),
                                    [&](const PlannedWork& work) { return wordFor(work.kind) == work_->word(); });
    return found == works_.end() ? nullptr : &*found;
}

void WorkDateLine::showWork() {
    if (const PlannedWork* work = chosen())
        day_->setDay(work->on);
    back_->setVisible(chosen() && chosen()->set);
    offer();
}

void WorkDateLine::offer() {
    const PlannedWork* work = chosen();
    set_->setEnabled(work && day_->day() && *day_->day() != work->on);
}

void WorkDateLine::move(const facts::VesselName& vessel, DueKind kind, std::optional<Day> to) {
    const auto done = session_.record(desk::movedWork(vessel, kind, session_.desk().today(), to));
    if (!done)
        day_->showFault(done.error());
}

} // namespace staveline::ui
