// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/first_steps_bar.h"

#include "ui/present/text.h"
#include "ui/widgets/glyph.h"
#include "ui/widgets/wrap_layout.h"

#include <QEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

using desk::FirstStep;

namespace {

QString wordsOf(FirstStep step, const char* ending = "") {
    return own("ui.first." + std::string(desk::name(step)) + ending);
}

} // namespace

FirstStepsBar::FirstStepsBar(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), close_(new QPushButton(tr("Put away"), this)), words_(new QLabel(this)) {
    setAccessibleName(tr("First steps"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(lines(*this, .6), lines(*this, .3), lines(*this, .6), lines(*this, .3));
    column->setSpacing(lines(*this, .2));
    auto* row = new WrapLayout(nullptr, lines(*this, .2));
    column->addLayout(row);
    column->addWidget(words_);
    words_->setWordWrap(true);
    for (const FirstStep step : desk::firstStepsInOrder) {
        auto* button = new QPushButton(wordsOf(step), this);
        button->setFlat(true);
        button->setAccessibleDescription(wordsOf(step, "_words"));
        connect(button, &QPushButton::clicked, this, [this, step] { Q_EMIT asked(step); });
        steps_[static_cast<std::size_t>(step)] = button;
        row->addWidget(button);
    }
    row->addStretch();
    row->addWidget(close_);
    close_->setFlat(true);
    close_->setAccessibleName(tr("Put the first steps away"));
    connect(close_, &QPushButton::clicked, this, [this] {
        setAway(true);
        Q_EMIT putAway();
    });
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::AlternateBase); // last: the steps are drawn anew by it
    refresh();
}

void FirstStepsBar::showVessel(const facts::VesselName& vessel) {
    vessel_ = vessel;
    refresh();
}

void FirstStepsBar::setAway(bool away) {
    away_ = away;
    refresh();
}

void FirstStepsBar::recall() {
    wasNew_ = true;
    setAway(false);
}

QString FirstStepsBar::words() const {
    return words_->text();
}

void FirstStepsBar::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange)
        refresh();
}

void FirstStepsBar::refresh() {
    const auto steps = session_.desk().firstSteps(vessel_);
    wasNew_ = wasNew_ || (steps && !steps->begun);
    setVisible(steps && wasNew_ && !away_ && !session_.desk().readOnly());
    if (isHidden())
        return;
    const auto next = steps->next();
    for (const FirstStep step : desk::firstStepsInOrder)
        tick(step, steps->isDone(step), step == next);
    words_->setText(next ? wordsOf(*next, "_words") : own("ui.first.done"));
}

/// A shape and its name say what is done; what comes next stands out.
void FirstStepsBar::tick(FirstStep step, bool done, bool next) {
    QPushButton& button = *steps_[static_cast<std::size_t>(step)];
    button.setIcon(QIcon(glyphBeside(*this, done ? Glyph::done : Glyph::calm, .8)));
    setType(button, next ? Type::strong : Type::body);
    const char* state = done ? "ui.first.is_done" : next ? "ui.first.is_next" : "ui.first.is_open";
    button.setAccessibleName(text(say(state).with("step", toStd(wordsOf(step)))));
}

} // namespace staveline::ui
