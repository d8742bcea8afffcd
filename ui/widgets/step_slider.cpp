// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/step_slider.h"

#include <QWheelEvent>

#include <cmath>

namespace staveline::ui {

StepSlider::StepSlider(QWidget* parent) : QSlider(Qt::Horizontal, parent) {
    setFocusPolicy(Qt::StrongFocus);
}

void StepSlider::setScale(Shown shown, Suffix suffix) {
    shown_ = std::move(shown);
    suffix_ = std::move(suffix);
}

double StepSlider::shown(int step) const {
    return shown_ ? shown_(step) : step;
}

QString StepSlider::words() const {
    const QString unit = suffix_ ? suffix_() : QString();
    const QString number = QString::number(shown(value()), 'g', 5);
    return unit.isEmpty() ? number : number + QChar(QChar::Nbsp) + unit;
}

void StepSlider::moveTo(double shownValue) {
    int nearest = minimum();
    for (int step = minimum(); step <= maximum(); ++step)
        if (std::abs(shown(step) - shownValue) < std::abs(shown(nearest) - shownValue))
            nearest = step;
    setValue(nearest);
}

void StepSlider::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

} // namespace staveline::ui
