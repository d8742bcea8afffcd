// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/vessel_panel.h"

#include "ui/cellar/work_date_line.h"
#include "ui/present/vessel_words.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/vessel_drawing.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace staveline::ui {

VesselPanel::VesselPanel(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), level_(new QLabel(this)), caption_(new QLabel(this)), ages_(new QLabel(this)),
      drawing_(new VesselDrawing(this)), dateHeading_(new QLabel(tr("Next dates"), this)), dates_(new QWidget(this)),
      dateGrid_(new QGridLayout(dates_)), steering_(new QLabel(this)),
      drawDate_(new WorkDateLine(session, this, vessel::DueKind::draw)) {
    setType(*level_, Type::number);
    level_->setObjectName("level");
    ages_->setWordWrap(true);
    steering_->setObjectName("steering");
    steering_->setWordWrap(true);
    caption_->setForegroundRole(QPalette::PlaceholderText);
    dateGrid_->setContentsMargins(0, 0, 0, 0);
    dateGrid_->setHorizontalSpacing(lines(*this, 1));
    dateGrid_->setVerticalSpacing(lines(*this, .2));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(lines(*this, 1), 0, 0, 0);
    column->setSpacing(lines(*this, .2));
    column->addWidget(caption_);
    column->addWidget(level_);
    column->addWidget(ages_);
    column->addSpacing(lines(*this, .6));
    column->addWidget(drawing_, 1);
    column->addSpacing(lines(*this, .6));
    setType(*dateHeading_, Type::strong);
    column->addWidget(dateHeading_);
    column->addWidget(dates_);
    column->addWidget(steering_);
    column->addWidget(drawDate_);
    connect(&session, &Session::unitsChanged, this, [this] {
        refresh();
        saySteering();
    });
}

void VesselPanel::showVessel(const desk::VesselSummary& vessel) {
    vessel_ = vessel;
    past_.reset();
    preview_.reset();
    entering_ = false;
    refresh();
    refreshDates();
}

void VesselPanel::showPast(const std::optional<vessel::LedgerState>& state) {
    past_ = state;
    refresh();
}

void VesselPanel::showPreview(const std::optional<desk::LedgerPreview>& preview, bool entering) {
    preview_ = preview;
    entering_ = entering;
    refresh();
}

/// An entry that cannot be made is about today, not about the row that was looked at before.
bool VesselPanel::showsPast() const {
    return past_ && !entering_;
}

const vessel::LedgerState& VesselPanel::shown() const {
    if (preview_)
        return preview_->after;
    return showsPast() ? *past_ : vessel_.now;
}

void VesselPanel::refresh() {
    const vessel::LedgerState& state = shown();
    const QString capacity = session_.amount(vessel_.facts.capacity);
    if (preview_) {
        caption_->setText(tr("With this entry"));
        level_->setText(
            tr("%1 \u2192 %2").arg(session_.amount(preview_->before.volume), session_.amount(state.volume)));
    } else {
        caption_->setText(showsPast() ? tr("After the entry of %1").arg(dayWords(state.on)) : tr("Today"));
        level_->setText(state.volume.l > 0 ? tr("%1 of %2").arg(session_.amount(state.volume), capacity) : tr("empty"));
    }
    QStringList words;
    if (vessel_.facts.capacity > state.volume)
        words << tr("room for %1").arg(session_.amount(vessel_.facts.capacity - state.volume));
    if (const QString ages = ageWords(state); !ages.isEmpty())
        words << ages;
    ages_->setText(words.join(QStringLiteral("; ")));
    VesselLook look{vessel_.facts.shape, vessel_.facts.capacity, state, std::nullopt};
    if (preview_)
        look.levelBefore = preview_->before.volume;
    drawing_->setLook(look, session_.units());
}

void VesselPanel::saySteering() {
    QStringList words;
    if (vessel_.steering)
        for (const Message& message : vessel_.steering->words)
            words << session_.words(message);
    steering_->setText(words.join(QLatin1Char(' ')));
    steering_->setVisible(!words.isEmpty());
}

void VesselPanel::refreshDates() {
    while (QLayoutItem* item = dateGrid_->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    drawDate_->showVessel(&vessel_);
    saySteering();
    int row = 0;
    for (const DateLine& line : dateLines(vessel_, session_.desk().today())) {
        dateGrid_->addWidget(new QLabel(line.what, dates_), row, 0);
        dateGrid_->addWidget(new QLabel(line.when, dates_), row, 1);
        auto* distance = new QLabel(line.distance, dates_);
        distance->setForegroundRole(QPalette::PlaceholderText);
        dateGrid_->addWidget(distance, row++, 2);
    }
    dateGrid_->setColumnStretch(2, 1);
}

} // namespace staveline::ui
