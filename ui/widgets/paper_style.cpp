// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/paper_style.h"

#include "ui/widgets/theme.h"

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPolygonF>
#include <QStyleOption>
#include <QWidget>

#include <algorithm>
#include <cmath>

namespace staveline::ui {
namespace {

double unit(const QStyleOption& option) {
    return option.fontMetrics.height() / 16.0;
}

/// Of whole pixels: an edge that falls between them is half as strong.
double edge(const QStyleOption& option) {
    return std::max(1.0, std::round(unit(option)));
}
QRectF within(const QRect& rect, double pen) {
    return QRectF(rect).adjusted(pen / 2, pen / 2, -pen / 2, -pen / 2);
}

void drawButton(const QStyleOption& option, QPainter& painter) {
    const auto* button = qstyleoption_cast<const QStyleOptionButton*>(&option);
    const bool isDefault = button && (button->features & QStyleOptionButton::DefaultButton);
    const bool flat = button && (button->features & QStyleOptionButton::Flat);
    const bool pressed = option.state & (QStyle::State_Sunken | QStyle::State_On);
    const bool hovered = (option.state & QStyle::State_MouseOver) && (option.state & QStyle::State_Enabled);
    const double u = unit(option), pen = isDefault ? 2 * edge(option) : edge(option);
    const QRectF box = within(option.rect, pen);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QColor fill = option.palette.color(pressed ? QPalette::Midlight : QPalette::Button);
    if (hovered)
        fill = option.palette.color(QPalette::Midlight);
    const bool bare = flat && !pressed && !hovered;
    painter.setBrush(bare ? Qt::NoBrush : QBrush(fill));
    const QColor ink = isDefault ? tone(option.palette, Tone::proposed) : outline(option.palette);
    painter.setPen(bare ? QPen(Qt::NoPen) : QPen(ink, pen));
    painter.drawRoundedRect(box, 4 * u, 4 * u);
    if (option.state & QStyle::State_On) // one of several that is chosen: a bar, not only a shade
        painter.fillRect(QRectF(box.left() + 4 * u, box.bottom() - 3 * u, box.width() - 8 * u, 3 * u),
                         tone(option.palette, Tone::proposed));
    painter.restore();
}

void drawRefused(const QStyleOption& option, QPainter& painter) {
    const double u = unit(option), corner = 6 * u, pen = 2 * edge(option);
    const QRectF box = within(option.rect, pen);
    const QColor ink = tone(option.palette, Tone::fault);
    painter.setPen(QPen(ink, pen));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(box, 3 * u, 3 * u);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawPolygon(
        QPolygonF{box.topLeft(), box.topLeft() + QPointF(corner, 0), box.topLeft() + QPointF(0, corner)});
}

void drawField(const QStyleOption& option, QPainter& painter, const QWidget* widget) {
    const double u = unit(option);
    const bool focused = option.state & QStyle::State_HasFocus;
    const double pen = focused ? 2 * edge(option) : edge(option);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(focused ? tone(option.palette, Tone::proposed) : outline(option.palette), pen));
    painter.setBrush(option.palette.brush(option.state & QStyle::State_Enabled ? QPalette::Base : QPalette::Window));
    painter.drawRoundedRect(within(option.rect, pen), 3 * u, 3 * u);
    if (widget && widget->property(refusedProperty).toBool())
        drawRefused(option, painter);
    painter.restore();
}

/// A ring that can be seen on any background; a dot in it when chosen.
void drawRadio(const QStyleOption& option, QPainter& painter) {
    const double u = unit(option);
    const QRectF box = QRectF(option.rect).adjusted(u, u, -u, -u);
    const double inset = box.width() * .26;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(wall(option.palette), 1.2 * u));
    painter.setBrush(option.palette.brush(option.state & QStyle::State_Enabled ? QPalette::Base : QPalette::Window));
    painter.drawEllipse(box);
    if (option.state & QStyle::State_On) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(tone(option.palette, Tone::proposed));
        painter.drawEllipse(box.adjusted(inset, inset, -inset, -inset));
    }
    painter.restore();
}

/// A box that can be seen on any background, with a tick in it when chosen.
void drawCheckBox(const QStyleOption& option, QPainter& painter) {
    const double u = unit(option);
    const QRectF box = QRectF(option.rect).adjusted(u, u, -u, -u);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(wall(option.palette), 1.2 * u));
    painter.setBrush(option.palette.brush(option.state & QStyle::State_Enabled ? QPalette::Base : QPalette::Window));
    painter.drawRoundedRect(box, 2 * u, 2 * u);
    painter.setPen(QPen(tone(option.palette, Tone::proposed), 2 * u, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const auto at = [&](double x, double y) {
        return QPointF(box.left() + x * box.width(), box.top() + y * box.height());
    };
    if (option.state & QStyle::State_On)
        painter.drawPolyline(QPolygonF{at(.22, .52), at(.42, .74), at(.78, .28)});
    else if (option.state & QStyle::State_NoChange)
        painter.drawLine(at(.25, .5), at(.75, .5));
    painter.restore();
}

void drawHeader(const QStyleOption& option, QPainter& painter) {
    painter.fillRect(option.rect, option.palette.color(QPalette::Base));
    painter.setPen(QPen(wall(option.palette), unit(option)));
    painter.drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
}

void drawSplitter(const QStyleOption& option, QPainter& painter) {
    const double u = unit(option);
    const QRectF box(option.rect);
    painter.setPen(QPen(hairline(option.palette), option.state & QStyle::State_MouseOver ? 3 * u : u));
    if (option.state & QStyle::State_Horizontal)
        painter.drawLine(QPointF(box.center().x(), box.top()), QPointF(box.center().x(), box.bottom()));
    else
        painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()));
}

/// Words without a frame that can be pressed look like a link.
bool isFrameless(const QStyleOption& option) {
    if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(&option))
        return button->features & QStyleOptionButton::Flat;
    return option.state & QStyle::State_AutoRaise;
}
template <class Option> Option linked(const Option& option) {
    Option made(option);
    made.palette.setColor(QPalette::ButtonText, option.palette.color(QPalette::Link));
    return made;
}

QFont underlined(QFont font) {
    font.setUnderline(true);
    return font;
}

/// Line height of a widget, or of the program.
int textLine(const QWidget* widget) {
    return QFontMetrics(widget ? widget->font() : QApplication::font()).height();
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

void PaperStyle::polish(QWidget* widget) {
    if (auto* label = qobject_cast<QLabel*>(widget); label && label->textFormat() == Qt::AutoText)
        label->setTextFormat(Qt::PlainText);
    QProxyStyle::polish(widget);
}

void PaperStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
    switch (element) {
    case PE_PanelButtonCommand:
        drawButton(*option, *painter);
        return;
    case PE_PanelLineEdit:
        if (const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option); frame && frame->lineWidth > 0) {
            drawField(*option, *painter, widget);
            return;
        }
        break;
    case PE_Frame:
        // Several lines to write in are a field like one line.
        if (qobject_cast<const QPlainTextEdit*>(widget)) {
            drawField(*option, *painter, widget);
            return;
        }
        break;
    case PE_IndicatorRadioButton:
        drawRadio(*option, *painter);
        return;
    case PE_IndicatorCheckBox:
        drawCheckBox(*option, *painter);
        return;
    case PE_FrameFocusRect:
        drawFocusRing(*painter, QRectF(option->rect), option->palette, option->fontMetrics.height());
        return;
    case PE_FrameLineEdit:
        if (qobject_cast<const QComboBox*>(widget))
            drawField(*option, *painter, widget);
        return;
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
    if (element == CE_Splitter) {
        drawSplitter(*option, *painter);
        return;
    }
    const bool live = isFrameless(*option) && (option->state & State_Enabled);
    const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option);
    const auto* tool = qstyleoption_cast<const QStyleOptionToolButton*>(option);
    if (element == CE_PushButtonLabel && live && button) {
        const auto words = linked(*button);
        const QFont before = painter->font();
        painter->setFont(underlined(before));
        QProxyStyle::drawControl(element, &words, painter, widget);
        painter->setFont(before);
    } else if (element == CE_ToolButtonLabel && live && tool) {
        auto words = linked(*tool);
        if (tool->arrowType == Qt::NoArrow) // what folds has its arrow
            words.font = underlined(words.font);
        QProxyStyle::drawControl(element, &words, painter, widget);
    } else {
        QProxyStyle::drawControl(element, option, painter, widget);
    }
}

void PaperStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                                    const QWidget* widget) const {
    if (control != CC_ScrollBar) {
        QProxyStyle::drawComplexControl(control, option, painter, widget);
        return;
    }
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->fillRect(option->rect, option->palette.color(QPalette::Window));
    const double u = unit(*option);
    const QRectF slider =
        QRectF(subControlRect(control, option, SC_ScrollBarSlider, widget)).adjusted(2 * u, 2 * u, -2 * u, -2 * u);
    painter->setPen(Qt::NoPen);
    painter->setBrush(outline(option->palette));
    painter->drawRoundedRect(slider, 3 * u, 3 * u);
    painter->restore();
}

/// A scroll bar is all slider and groove: wheel, keys and dragging do what arrows would.
QRect PaperStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                                 const QWidget* widget) const {
    const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
    if (control != CC_ScrollBar || !bar)
        return QProxyStyle::subControlRect(control, option, part, widget);
    const bool upright = bar->orientation == Qt::Vertical;
    const int length = upright ? bar->rect.height() : bar->rect.width();
    const int range = bar->maximum - bar->minimum;
    const int thumb = range <= 0
                          ? length
                          : std::clamp(static_cast<int>(qint64(length) * bar->pageStep / (range + bar->pageStep)),
                                       std::min(length, 2 * textLine(widget)), length);
    const int at =
        sliderPositionFromValue(bar->minimum, bar->maximum, bar->sliderPosition, length - thumb, bar->upsideDown);
    const auto along = [&](int from, int size) {
        return upright ? QRect(bar->rect.left(), from, bar->rect.width(), size)
                       : QRect(from, bar->rect.top(), size, bar->rect.height());
    };
    switch (part) {
    case SC_ScrollBarSlider:
        return along(at, thumb);
    case SC_ScrollBarGroove:
        return bar->rect;
    case SC_ScrollBarSubPage:
        return along(0, at);
    case SC_ScrollBarAddPage:
        return along(at + thumb, length - at - thumb);
    default:
        return {};
    }
}

QSize PaperStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                                   const QWidget* widget) const {
    if (type != CT_PushButton)
        return QProxyStyle::sizeFromContents(type, option, size, widget);
    const int line = option->fontMetrics.height();
    return {size.width() + line * 13 / 10, size.height() + line / 2};
}

int PaperStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    if (metric == PM_ScrollBarExtent)
        return textLine(widget) * 7 / 10;
    return QProxyStyle::pixelMetric(metric, option, widget);
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
