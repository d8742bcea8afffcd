// SPDX-License-Identifier: GPL-3.0-or-later
// The stations of a vessel as words on a line; the one in hand is underlined.
#pragma once

#include <QTabBar>

namespace staveline::ui {

/// A tab bar to assistive technology and to the arrow keys; the wheel does not turn it.
class StationBar : public QTabBar {
    Q_OBJECT
public:
    explicit StationBar(QWidget* parent = nullptr);

protected:
    void paintEvent(QPaintEvent* event) override;
    [[nodiscard]] QSize tabSizeHint(int index) const override;
    void wheelEvent(QWheelEvent* event) override;
};

} // namespace staveline::ui
