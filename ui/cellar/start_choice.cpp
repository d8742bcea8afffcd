// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/start_choice.h"

#include "ui/widgets/paper_style.h"
#include "ui/widgets/theme.h"

#include <QKeyEvent>
#include <QPainter>

namespace staveline::ui {
namespace {

constexpr double titleLines = 1.3;

} // namespace

StartChoice::StartChoice(const QString& title, const QString& words, QWidget* parent)
    : QAbstractButton(parent), words_(words) {
    setText(title);
    setAccessibleDescription(words);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

QSize StartChoice::sizeHint() const {
    return {lines(*this, 26), heightForWidth(QWIDGETSIZE_MAX)};
}

int StartChoice::heightForWidth(int width) const {
    const int room = width - lines(*this, 2) - 2;
    const QRect words = fontMetrics().boundingRect(QRect(0, 0, room, lines(*this, 100)), Qt::TextWordWrap, words_);
    return lines(*this, .55 + titleLines + .6) + words.height() + 2;
}

void StartChoice::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        click();
    else
        QAbstractButton::keyPressEvent(event);
}

void StartChoice::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = lines(*this, 1);
    const QRectF box = QRectF(rect()).adjusted(1, 1, -1, -1);
    painter.setBrush(palette().color(underMouse() || isDown() ? QPalette::Midlight : QPalette::Base));
    painter.setPen(QPen(outline(palette()), line / 16));
    painter.drawRoundedRect(box, line / 3, line / 3);
    const QRectF inner = box.adjusted(line, line * .55, -line, -line * .5);
    painter.setPen(palette().color(QPalette::WindowText));
    painter.setFont(ui::font(font(), Type::strong));
    painter.drawText(inner, Qt::AlignLeft | Qt::AlignTop | Qt::TextShowMnemonic, text());
    painter.setFont(font());
    painter.setPen(quietText(palette()));
    painter.drawText(inner.adjusted(0, line * titleLines, 0, 0), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                     words_);
    if (hasFocus())
        drawFocusRing(painter, box, palette(), line);
}

} // namespace staveline::ui
