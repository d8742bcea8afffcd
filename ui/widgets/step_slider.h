// SPDX-License-Identifier: GPL-3.0-or-later
// A slider over steps that have values of their own. It lets the page scroll under the wheel.
#pragma once

#include <QSlider>

#include <functional>

namespace staveline::ui {

class StepSlider : public QSlider {
    Q_OBJECT
public:
    using Shown = std::function<double(int step)>; ///< a step's value in the units shown
    using Suffix = std::function<QString()>;       ///< their unit

    explicit StepSlider(QWidget* parent = nullptr);
    /// Without a scale the steps themselves are told.
    void setScale(Shown shown, Suffix suffix);
    [[nodiscard]] double shown(int step) const;
    [[nodiscard]] QString words() const; ///< "64 °C"
    void moveTo(double shownValue);      ///< the nearest step

protected:
    void wheelEvent(QWheelEvent* event) override;

private:
    Shown shown_;
    Suffix suffix_;
};

} // namespace staveline::ui
