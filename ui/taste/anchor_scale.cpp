// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/anchor_scale.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QFontMetrics>
#include <QPainter>

namespace staveline::ui {

using tasting::anchorScores;

namespace {

constexpr double tall = 5.4; ///< [lines]: the name, the scale, and words on up to three lines

} // namespace

AnchorScale::AnchorScale(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("What the scores mean"));
}

QSize AnchorScale::sizeHint() const {
    return {lines(*this, 30), lines(*this, tall)};
}
QSize AnchorScale::minimumSizeHint() const {
    return {lines(*this, 20), lines(*this, tall)};
}

void AnchorScale::showLine(const tasting::Attribute* attribute, std::optional<double> score) {
    attribute_ = attribute;
    score_ = score;
    setAccessibleDescription(words());
    update();
}

QString AnchorScale::words() const {
    if (!attribute_)
        return own("ui.taste.scale_hint");
    QStringList parts;
    for (std::size_t i = 0; i < anchorScores.size(); ++i)
        parts << tr("%1 %2").arg(anchorScores[i]).arg(qs(attribute_->anchors[i]));
    return tr("%1: %2").arg(qs(attribute_->name), parts.join(QStringLiteral("; ")));
}

/// Equal parts: the scale's own steps would leave the outer words too little room.
QRectF AnchorScale::part(std::size_t anchor) const {
    const double each = static_cast<double>(width()) / static_cast<double>(anchorScores.size());
    const double line = lines(*this, 1);
    return {each * static_cast<double>(anchor), line * 2.1, each - line * .4, line * 3.2};
}

void AnchorScale::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = lines(*this, 1);
    painter.setPen(QPen(hairline(palette()), line / 14));
    painter.drawLine(QPointF(0, line * .2), QPointF(width(), line * .2));
    if (!attribute_) {
        painter.setPen(quietText(palette()));
        painter.drawText(rect().adjusted(0, static_cast<int>(line * .5), 0, 0), Qt::TextWordWrap, words());
        return;
    }
    painter.setPen(palette().color(QPalette::WindowText));
    painter.drawText(QRectF(0, line * .45, width(), line * 1.2), Qt::AlignLeft, qs(attribute_->name));
    const std::string_view said = score_ ? anchorFor(*attribute_, *score_) : std::string_view();
    for (std::size_t i = 0; i < anchorScores.size(); ++i) {
        const bool here = score_ && attribute_->anchors[i] == said;
        const QRectF box = part(i);
        painter.fillRect(QRectF(box.left(), box.top() - line * .3, box.width(), line * (here ? .18 : .07)),
                         here ? tone(palette(), Tone::tasted) : wall(palette()));
        painter.setFont(ui::font(font(), here ? Type::strong : Type::body));
        painter.setPen(here ? palette().color(QPalette::WindowText) : quietText(palette()));
        painter.drawText(box, Qt::TextWordWrap, tr("%1  %2").arg(anchorScores[i]).arg(qs(attribute_->anchors[i])));
    }
}

} // namespace staveline::ui
