// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/underlined_tabs.h"

#include "ui/widgets/paper_style.h"
#include "ui/widgets/theme.h"

#include <QPainter>
#include <QWheelEvent>

namespace staveline::ui {

UnderlinedTabs::UnderlinedTabs(QWidget* parent) : QTabBar(parent) {
    setAccessibleName(tr("Pages"));
    setDrawBase(false);
    setExpanding(false);
    setFocusPolicy(Qt::StrongFocus);
}

QSize UnderlinedTabs::tabSizeHint(int index) const {
    const QFontMetrics metrics(ui::font(font(), Type::strong));
    QString words = tabText(index);
    words.remove(QLatin1Char('&'));
    return {metrics.horizontalAdvance(words) + lines(*this, 1.6), lines(*this, 2)};
}

void UnderlinedTabs::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const double line = lines(*this, 1);
    painter.fillRect(QRectF(0, height() - line / 14, width(), line / 14), hairline(palette()));
    for (int i = 0; i < count(); ++i) {
        const QRectF box = tabRect(i);
        const bool current = i == currentIndex();
        painter.setFont(ui::font(font(), current ? Type::strong : Type::body));
        painter.setPen(current ? palette().color(QPalette::WindowText) : quietText(palette()));
        painter.drawText(box, Qt::AlignCenter | Qt::TextShowMnemonic, tabText(i));
        if (current)
            painter.fillRect(QRectF(box.left() + line * .5, height() - line / 6, box.width() - line, line / 6),
                             tone(palette(), Tone::proposed));
        if (current && hasFocus())
            drawFocusRing(painter, box.adjusted(0, line / 8, 0, -line / 4), palette(), line);
    }
}

void UnderlinedTabs::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

} // namespace staveline::ui
