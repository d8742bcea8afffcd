// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/vessel_header.h"

#include "desk/ledger.h"
#include "ui/present/vessel_words.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/wrap_layout.h"
#include "vessel/schedule.h"

#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

namespace staveline::ui {

using vessel::DueKind;

namespace {

std::optional<MilestoneKind> milestoneOf(DueKind kind, bool toFill) {
    switch (kind) {
    case DueKind::taste:
        return MilestoneKind::taste;
    case DueKind::brew:
        return MilestoneKind::brew;
    case DueKind::draw:
    case DueKind::refill:
        return toFill ? MilestoneKind::fill : MilestoneKind::draw;
    case DueKind::nothing:
        break;
    }
    return std::nullopt;
}

/// The ages that a vessel is drawn at.
std::vector<Milestone> aged(std::vector<Milestone> milestones, const std::optional<desk::AgeSteering>& steering) {
    if (!steering)
        return milestones;
    for (Milestone& milestone : milestones)
        if (milestone.kind == MilestoneKind::draw)
            milestone.age = steering->atDraw;
        else if (milestone.kind == MilestoneKind::nextDraw || milestone.kind == MilestoneKind::firstDraw)
            milestone.age = steering->atNextDraw;
    return milestones;
}

} // namespace

VesselHeader::VesselHeader(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), name_(new ElidedLabel(this)), kind_(new QLabel(this)),
      ages_(new QLabel(this)), change_(new QToolButton(this)), timeline_(new CycleTimeline(this)) {
    setType(*name_, Type::title);
    kind_->setForegroundRole(QPalette::PlaceholderText);
    change_->setText(tr("Change"));
    change_->setAccessibleName(tr("Change this vessel"));
    change_->setAutoRaise(true);
    change_->setFocusPolicy(Qt::StrongFocus);
    connect(change_, &QToolButton::clicked, this, &VesselHeader::changeAsked);
    auto* row = new WrapLayout(nullptr, lines(*this, .6));
    for (QWidget* part : std::initializer_list<QWidget*>{name_, kind_, change_})
        row->addWidget(part);
    row->addStretch();
    row->addWidget(ages_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(row);
    column->addWidget(timeline_);
}

void VesselHeader::showVessel(const desk::VesselSummary& vessel) {
    name_->setText(qs(vessel.name));
    kind_->setText(vesselKind(vessel.facts, session_.units()));
    ages_->setText(ageWords(vessel.now));
    change_->setEnabled(!session_.desk().readOnly());
    timeline_->setMilestones(aged(milestonesOf(vessel.dates, vessel.now, vessel.toFill), vessel.steering),
                             session_.desk().today(), milestoneOf(vessel.due.kind, vessel.toFill));
}

} // namespace staveline::ui
