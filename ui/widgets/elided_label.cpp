// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/elided_label.h"

#include <QFontMetrics>
#include <QPainter>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr int fewestLetters = 8;

} // namespace

ElidedLabel::ElidedLabel(QWidget* parent) : QLabel(parent) {
    setTextFormat(Qt::PlainText);
    setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Preferred);
}

QSize ElidedLabel::minimumSizeHint() const {
    const QSize whole = QLabel::minimumSizeHint();
    return {std::min(whole.width(), fewestLetters * fontMetrics().averageCharWidth()), whole.height()};
}

QString ElidedLabel::shown() const {
    return fontMetrics().elidedText(text(), Qt::ElideRight, contentsRect().width());
}

void ElidedLabel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(palette().color(foregroundRole()));
    painter.drawText(contentsRect(), static_cast<int>(alignment()) | Qt::TextSingleLine, shown());
    setToolTip(shown() == text() ? QString() : text()); // here: new words change it as a new width does
}

} // namespace staveline::ui
