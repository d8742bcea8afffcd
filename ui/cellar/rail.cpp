// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/rail.h"

#include "desk/ledger.h"
#include "ui/widgets/glyph.h"
#include "ui/widgets/paper_style.h"
#include "ui/widgets/vessel_drawing.h"

#include <QPainter>

namespace staveline::ui {
namespace {

constexpr double drawingLines = 4.4, pad = .55;
constexpr int headlineRows = 2;

Glyph glyphOf(VesselMood mood) {
    switch (mood) {
    case VesselMood::fault:
        return Glyph::fault;
    case VesselMood::overdue:
        return Glyph::overdue;
    case VesselMood::soon:
        return Glyph::soon;
    case VesselMood::calm:
        break;
    }
    return Glyph::calm;
}

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
    return {static_cast<int>(line * 10), static_cast<int>(line * (drawingLines + 1 + headlineRows + 3 * pad))};
}

void RailDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const desk::VesselSummary* vessel = model_.at(index.row());
    if (!vessel)
        return;
    const double line = option.fontMetrics.height();
    const QPalette& palette = option.palette;
    painter->save();
    paintBackground(*painter, option, line);
    const QRectF box = QRectF(option.rect).adjusted(line * .7, line * pad, -line * .5, -line * pad);
    QRectF at(box.left(), box.top(), box.width(), line * drawingLines);
    paintVessel(*painter, at, {vessel->facts.shape, vessel->facts.capacity, vessel->now, std::nullopt}, palette, line);
    at = QRectF(box.left(), at.bottom() + line * pad / 2, box.width(), line);
    painter->setPen(palette.color(QPalette::WindowText));
    painter->setFont(font(option.font, Type::strong));
    painter->drawText(
        at, Qt::AlignLeft | Qt::AlignVCenter,
        QFontMetrics(painter->font()).elidedText(qs(vessel->name), Qt::ElideRight, static_cast<int>(at.width())));
    const Glyph glyph = glyphOf(moodOf(*vessel));
    at.translate(0, line * 1.05);
    paintGlyph(*painter, QRectF(at.left(), at.top() + line * .08, line * .85, line * .85), glyph,
               tone(palette, toneOf(glyph)));
    painter->setFont(option.font);
    painter->drawText(at.adjusted(line * 1.15, 0, 0, line * (headlineRows - 1)),
                      Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, model_.headline(*vessel));
    painter->restore();
    if (option.state & QStyle::State_HasFocus)
        drawFocusRing(*painter, QRectF(option.rect), palette, line);
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
