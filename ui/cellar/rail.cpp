// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/rail.h"

#include "desk/ledger.h"
#include "ui/cellar/mood_glyph.h"
#include "ui/widgets/paper_style.h"
#include "ui/widgets/vessel_drawing.h"

#include <QPainter>

namespace staveline::ui {
namespace {

constexpr double drawingLines = 4.4, pad = .55;
constexpr int headlineRows = 2;
constexpr double compactDrawing = 2.6; // wide, in lines

void paintBackground(QPainter& painter, const QStyleOptionViewItem& option, double line) {
    if (!(option.state & QStyle::State_Selected))
        return;
    painter.fillRect(option.rect, selection(option.palette));
    painter.fillRect(QRectF(option.rect.left(), option.rect.top(), line / 4, option.rect.height()),
                     tone(option.palette, Tone::proposed));
}

} // namespace

RailDelegate::RailDelegate(CellarModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

QSize RailDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
    const double line = option.fontMetrics.height();
    const double high = model_.crowded() ? 2.1 + 2 * pad : drawingLines + 1 + headlineRows + 3 * pad;
    return {static_cast<int>(line * 10), static_cast<int>(line * high)};
}

void RailDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const desk::VesselSummary* vessel = model_.at(index.row());
    if (!vessel)
        return;
    const double line = option.fontMetrics.height();
    painter->save();
    paintBackground(*painter, option, line);
    const QRectF box = QRectF(option.rect).adjusted(line * .7, line * pad, -line * .5, -line * pad);
    const QRectF picture(box.topLeft(), model_.crowded() ? QSizeF(line * compactDrawing, box.height())
                                                         : QSizeF(box.width(), line * drawingLines));
    paintVessel(*painter, picture, {vessel->facts.shape, vessel->facts.capacity, vessel->now, std::nullopt},
                option.palette, line);
    const QRectF words = model_.crowded() ? box.adjusted(line * (compactDrawing + pad), 0, 0, 0)
                                          : box.adjusted(0, line * (drawingLines + pad / 2), 0, 0);
    paintWords(*painter, words, *vessel, option);
    painter->restore();
    if (option.state & QStyle::State_HasFocus)
        drawFocusRing(*painter, QRectF(option.rect), option.palette, line);
}

/// Its name, and under it what is due.
void RailDelegate::paintWords(QPainter& painter, const QRectF& box, const desk::VesselSummary& vessel,
                              const QStyleOptionViewItem& option) const {
    const double line = option.fontMetrics.height();
    const QPalette& palette = option.palette;
    QRectF at(box.left(), box.top(), box.width(), line);
    painter.setPen(palette.color(QPalette::WindowText));
    painter.setFont(font(option.font, Type::strong));
    painter.drawText(
        at, Qt::AlignLeft | Qt::AlignVCenter,
        QFontMetrics(painter.font()).elidedText(qs(vessel.name), Qt::ElideRight, static_cast<int>(at.width())));
    const Glyph glyph = glyphOf(moodOf(vessel));
    at.translate(0, line * 1.05);
    paintGlyph(painter, QRectF(at.left(), at.top() + line * .08, line * .85, line * .85), glyph,
               tone(palette, toneOf(glyph)));
    painter.setFont(option.font);
    at.adjust(line * 1.15, 0, 0, 0);
    const QString headline = model_.headline(vessel);
    if (model_.crowded())
        painter.drawText(at, Qt::AlignLeft | Qt::AlignTop,
                         option.fontMetrics.elidedText(headline, Qt::ElideRight, static_cast<int>(at.width())));
    else
        painter.drawText(at.adjusted(0, 0, 0, line * (headlineRows - 1)),
                         Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, headline);
}

Rail::Rail(CellarModel& model, QWidget* parent) : QListView(parent), model_(model) {
    setModel(&model);
    setItemDelegate(new RailDelegate(model, this));
    setAccessibleName(tr("Cellar"));
    setFrameShape(QFrame::NoFrame);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setUniformItemSizes(true);
    setTabKeyNavigation(false);
    viewport()->setBackgroundRole(QPalette::Window);
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
        if (const desk::VesselSummary* vessel = model_.at(current.row()))
            Q_EMIT chosen(qs(vessel->name));
    });
}

QSize Rail::sizeHint() const {
    return {lines(*this, 11.5), lines(*this, 30)};
}

} // namespace staveline::ui
