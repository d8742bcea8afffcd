// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/flow_diagram.h"

#include "ui/widgets/glyph.h"
#include "ui/widgets/paper_style.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr double wordLines = 3.3, streamLines = 1.3, inset = .35; // of the cell's height; left of its words

} // namespace

FlowCellButton::FlowCellButton(QWidget* parent) : QAbstractButton(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void FlowCellButton::show(const FlowCell& cell, Litres widest) {
    cell_ = cell;
    widest_ = widest;
    setAccessibleName(tr("Go to %1").arg(cell.name));
    setAccessibleDescription(
        (QStringList(cell.amount + QLatin1Char(' ') + cell.how) + cell.findings).join(QStringLiteral(". ")));
    update();
}

QSize FlowCellButton::sizeHint() const {
    return {lines(*this, 9), lines(*this, wordLines + streamLines)};
}
QSize FlowCellButton::minimumSizeHint() const {
    return {lines(*this, 5.5), sizeHint().height()};
}

void FlowCellButton::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        click();
    else
        QAbstractButton::keyPressEvent(event); // the arrow keys go to the cells beside it
}

/// As deep as the litres, flat at its top: it falls where the step loses liquid.
void FlowCellButton::paintStream(QPainter& painter) const {
    if (widest_.l <= 0)
        return;
    const double room = lines(*this, streamLines), foot = height();
    const auto top = [&](Litres volume) { return foot - room * std::clamp(volume / widest_, 0.0, 1.0); };
    const double before = top(cell_.enters), after = top(cell_.leaves), from = width() * .45, to = width() * .75;
    QPainterPath stream(QPointF(0, before));
    stream.lineTo(from, before);
    stream.cubicTo((from + to) / 2, before, (from + to) / 2, after, to, after);
    stream.lineTo(width(), after);
    stream.lineTo(width(), foot);
    stream.lineTo(0, foot);
    stream.closeSubpath();
    painter.fillPath(stream, stratum(palette(), .25));
}

void FlowCellButton::paintWords(QPainter& painter) const {
    const double line = lines(*this, 1);
    const QFontMetricsF metrics(font());
    QRectF row(line * inset, line * .1, width() - 2 * line * inset, line * 1.1);
    const auto write = [&](Type type, const QColor& ink, const QString& words) {
        painter.setFont(ui::font(font(), type));
        painter.setPen(ink);
        painter.drawText(row, Qt::AlignLeft | Qt::AlignVCenter,
                         painter.fontMetrics().elidedText(words, Qt::ElideRight, static_cast<int>(row.width())));
        row.translate(0, row.height());
    };
    const QColor ink = palette().color(QPalette::WindowText);
    if (!cell_.findings.isEmpty()) {
        const double side = line * .85;
        paintGlyph(painter, QRectF(row.right() - side, row.top() + line * .1, side, side), Glyph::warning,
                   tone(palette(), Tone::due));
    }
    write(Type::body, quietText(palette()), cell_.name);
    write(Type::strong, ink, cell_.amount);
    write(Type::body, quietText(palette()), cell_.how);
}

void FlowCellButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (underMouse() || isDown())
        painter.fillRect(rect(), palette().color(QPalette::Midlight));
    paintStream(painter);
    paintWords(painter);
    if (hasFocus())
        drawFocusRing(painter, QRectF(rect()), palette(), lines(*this, 1));
}

FlowDiagram::FlowDiagram(int cells, QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("The liquid's way"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    for (int i = 0; i < cells; ++i) {
        auto* cell = new FlowCellButton(this);
        connect(cell, &QAbstractButton::clicked, this, [this, i] { Q_EMIT chosen(i); });
        row->addWidget(cell);
        cells_.push_back(cell);
    }
}

void FlowDiagram::show(const std::vector<FlowCell>& cells) {
    Litres widest{0};
    for (const FlowCell& cell : cells)
        widest = std::max({widest, cell.enters, cell.leaves});
    for (std::size_t i = 0; i < std::min(cells.size(), cells_.size()); ++i)
        cells_[i]->show(cells[i], widest);
}

void FlowDiagram::focusFirst() {
    cells_.front()->setFocus(Qt::OtherFocusReason);
}

} // namespace staveline::ui
