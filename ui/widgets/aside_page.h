// SPDX-License-Identifier: GPL-3.0-or-later
// A page that is opened beside the vessels' own, for one piece of work: Enter finishes it, Escape leaves it.
#pragma once

#include <QWidget>

namespace staveline::ui {

class AsidePage : public QWidget {
    Q_OBJECT
public:
    using QWidget::QWidget;
    virtual void finish() = 0;
    /// What is begun may stay in hand.
    virtual void leave() { Q_EMIT left(); }

Q_SIGNALS:
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;
};

} // namespace staveline::ui
