// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/draw_date_line.h"

#include "ui/widgets/date_field.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

DrawDateLine::DrawDateLine(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), day_(new DateField(session.desk().today(), this)),
      set_(new QPushButton(tr("Move the draw"), this)), interval_(new QPushButton(tr("By the interval again"), this)) {
    day_->setName(tr("Day of the draw"));
    set_->setToolTip(tr("Puts this draw off, or brings it forward; the next one counts from it."));
    auto* row = new QHBoxLayout;
    row->setSpacing(lines(*this, .5));
    auto* label = new QLabel(tr("Draw on"), this);
    label->setMinimumHeight(day_->edit()->sizeHint().height());
    row->addWidget(label, 0, Qt::AlignTop);
    row->addWidget(day_, 1, Qt::AlignTop);
    auto* acts = new QHBoxLayout;
    acts->setSpacing(lines(*this, .5));
    acts->addWidget(set_);
    acts->addWidget(interval_);
    acts->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    column->addLayout(row);
    column->addLayout(acts);
    connect(day_, &DateField::edited, this, &DrawDateLine::offer);
    connect(day_->edit(), &QLineEdit::returnPressed, set_, &QPushButton::click);
    connect(set_, &QPushButton::clicked, this, [this] { set(day_->day()); });
    connect(interval_, &QPushButton::clicked, this, [this] { set(std::nullopt); });
}

void DrawDateLine::showVessel(const desk::VesselSummary& vessel) {
    using vessel::DueKind;
    vessel_ = vessel.name;
    planned_ = vessel.dates.draw;
    setVisible(!vessel.toFill && !vessel.retired && !vessel.works.draw.done && vessel.due.kind != DueKind::nothing &&
               !session_.desk().readOnly());
    day_->setToday(session_.desk().today());
    day_->setDay(planned_);
    interval_->setVisible(vessel.works.draw.set);
    interval_->setText(vessel.steering && vessel.steering->reachable ? tr("By the age again")
                                                                     : tr("By the interval again"));
    offer();
}

void DrawDateLine::offer() {
    set_->setEnabled(day_->day() && *day_->day() != planned_);
}

void DrawDateLine::set(std::optional<Day> drawOn) {
    const auto done = session_.record(facts::DrawDateFact{vessel_, session_.desk().today(), drawOn, {}});
    if (!done)
        day_->showFault(done.error());
}

} // namespace staveline::ui
