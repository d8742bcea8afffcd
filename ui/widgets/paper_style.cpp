// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/paper_style.h"

#include "ui/widgets/theme.h"

#include <QPainter>
#include <QStyleOption>

namespace staveline::ui {
namespace {

double unit(const QStyleOption& option) {
    return option.fontMetrics.height() / 16.0;
}

void drawButton(const QStyleOption& option, QPainter& painter) {
    const auto* button = qstyleoption_cast<const QStyleOptionButton*>(&option);
    const bool isDefault = button && (button->features & QStyleOptionButton::DefaultButton);
    const bool flat = button && (button->features & QStyleOptionButton::Flat);
    const bool pressed = option.state & (QStyle::State_Sunken | QStyle::State_On);
    const bool hovered = (option.state & QStyle::State_MouseOver) && (option.state & QStyle::State_Enabled);
    const double u = unit(option);
    const QRectF box = QRectF(option.rect).adjusted(u, u, -u, -u);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QColor fill = option.palette.color(pressed ? QPalette::Midlight : QPalette::Button);
    if (hovered)
        fill = option.palette.color(QPalette::Midlight);
    const bool bare = flat && !pressed && !hovered;
    painter.setBrush(bare ? Qt::NoBrush : QBrush(fill));
    painter.setPen(bare ? QPen(Qt::NoPen)
                        : QPen(isDefault ? tone(option.palette, Tone::proposed) : hairline(option.palette),
                               isDefault ? 2 * u : u));
    painter.drawRoundedRect(box, 4 * u, 4 * u);
    painter.restore();
}

void drawField(const QStyleOption& option, QPainter& painter) {
    const double u = unit(option);
    const bool focused = option.state & QStyle::State_HasFocus;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(option.rect).adjusted(u, u, -u, -u);
    painter.setPen(QPen(focused ? tone(option.palette, Tone::proposed) : option.palette.color(QPalette::Mid),
                        focused ? 2 * u : u));
    painter.setBrush(option.palette.brush(option.state & QStyle::State_Enabled ? QPalette::Base : QPalette::Window));
    painter.drawRoundedRect(box, 3 * u, 3 * u);
    painter.restore();
}

void drawHeader(const QStyleOption& option, QPainter& painter) {
    painter.fillRect(option.rect, option.palette.color(QPalette::Base));
    painter.setPen(QPen(wall(option.palette), unit(option)));
    painter.drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
}

} // namespace

PaperStyle::PaperStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

void drawFocusRing(QPainter& painter, const QRectF& around, const QPalette& palette, double lineHeight) {
    const double u = lineHeight / 16.0;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(tone(palette, Tone::proposed), 2 * u));
    painter.drawRoundedRect(around.adjusted(u, u, -u, -u), 4 * u, 4 * u);
    painter.restore();
}

void PaperStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
    switch (element) {
    case PE_PanelButtonCommand:
        drawButton(*option, *painter);
        return;
    case PE_PanelLineEdit:
        if (const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option); frame && frame->lineWidth > 0) {
            drawField(*option, *painter);
            return;
        }
        break;
    case PE_FrameFocusRect:
        drawFocusRing(*painter, QRectF(option->rect), option->palette, option->fontMetrics.height());
        return;
    case PE_FrameLineEdit:
    case PE_FrameStatusBarItem:
        return;
    default:
        break;
    }
    QProxyStyle::drawPrimitive(element, option, painter, widget);
}

void PaperStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const {
    if (element == CE_HeaderSection || element == CE_HeaderEmptyArea) {
        drawHeader(*option, *painter);
        return;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

int PaperStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* returned) const {
    switch (hint) {
    case SH_UnderlineShortcut:
        return 1;
    case SH_BlinkCursorWhenTextSelected:
    case SH_EtchDisabledText:
        return 0;
    default:
        return QProxyStyle::styleHint(hint, option, widget, returned);
    }
}

} // namespace staveline::ui
