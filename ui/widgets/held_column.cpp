// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/held_column.h"

#include <QApplication>
#include <QEvent>
#include <QGridLayout>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>

#include <algorithm>

namespace staveline::ui {

HeldColumn::HeldColumn(QScrollArea& scroll, QGridLayout& grid) : QObject(&scroll), scroll_(scroll), grid_(grid) {
    scroll.widget()->installEventFilter(this);
    connect(scroll.horizontalScrollBar(), &QScrollBar::valueChanged, this, &HeldColumn::hold);
    connect(qApp, &QApplication::focusChanged, this, &HeldColumn::uncover);
}

/// The focus leaves the fields while they are taken down: nobody follows it then.
HeldColumn::~HeldColumn() {
    disconnect(qApp, nullptr, this, nullptr);
}

void HeldColumn::hold() {
    const int left = scroll_.horizontalScrollBar()->value();
    for (int row = 0; row < grid_.rowCount(); ++row) {
        QLayoutItem* item = grid_.itemAtPosition(row, 0);
        QWidget* held = item ? item->widget() : nullptr;
        if (!held)
            continue;
        held->setAutoFillBackground(true);
        const QRect cell = grid_.cellRect(row, 0);
        held->setGeometry(left, cell.top(), cell.width() + (left > 0 ? grid_.horizontalSpacing() : 0), cell.height());
        held->raise();
    }
}

int HeldColumn::width() const {
    return grid_.cellRect(0, 0).width() + grid_.horizontalSpacing();
}

void HeldColumn::uncover(QWidget*, QWidget* focus) {
    if (!focus || !scroll_.widget() || !scroll_.widget()->isAncestorOf(focus))
        return;
    scroll_.ensureWidgetVisible(focus, 0, 0);
    QScrollBar& bar = *scroll_.horizontalScrollBar();
    const int at = focus->mapTo(scroll_.widget(), QPoint(0, 0)).x();
    if (at < bar.value() + width())
        bar.setValue(std::max(0, at - width()));
}

bool HeldColumn::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Resize || event->type() == QEvent::LayoutRequest)
        QTimer::singleShot(0, this, &HeldColumn::hold); // when the layout is done
    return QObject::eventFilter(watched, event);
}

} // namespace staveline::ui
