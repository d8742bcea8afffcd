// SPDX-License-Identifier: GPL-3.0-or-later
// The pages of a vessel as words on a line; the one in hand is underlined.
#pragma once

#include <QTabBar>

namespace staveline::ui {

/// A tab bar to assistive technology and to the arrow keys; the wheel does not turn it.
class UnderlinedTabs : public QTabBar {
    Q_OBJECT
public:
    explicit UnderlinedTabs(QWidget* parent = nullptr);

protected:
    void paintEvent(QPaintEvent* event) override;
    [[nodiscard]] QSize tabSizeHint(int index) const override;
    void wheelEvent(QWheelEvent* event) override;
};

} // namespace staveline::ui
