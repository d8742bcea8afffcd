// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/overview_table.h"

#include "ui/widgets/glyph.h"
#include "ui/widgets/paper_style.h"
#include "ui/widgets/quiet_table.h"
#include "ui/widgets/theme.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QSortFilterProxyModel>
#include <QToolTip>

#include <algorithm>
#include <cstdlib>

namespace staveline::ui {
namespace {

constexpr double padding = .35; // lines of text
constexpr double laneMargin = .7;

/// Widths in lines of text, at which each is read without a cut.
double widthOf(int column) {
    switch (column) {
    case OverviewModel::due:
        return 10;
    case OverviewModel::name:
        return 8;
    case OverviewModel::level:
        return 10.5;
    case OverviewModel::age:
        return 6;
    case OverviewModel::plan:
        return 8.5;
    default:
        return 10.5;
    }
}

bool isOfYear(int column) {
    return column == OverviewModel::due || column == OverviewModel::name || column == OverviewModel::year;
}

QRectF laneIn(const QRect& cell, double line) {
    return QRectF(cell).adjusted(line * laneMargin, 0, -line * laneMargin, 0);
}

void paintLevel(QPainter& painter, const QRectF& box, double part, const QPalette& palette, double line) {
    const QRectF bar(box.left(), box.bottom() - line * .12, box.width(), line * .2);
    painter.fillRect(bar, headspace(palette));
    painter.fillRect(QRectF(bar.left(), bar.top(), bar.width() * std::clamp(part, 0.0, 1.0), bar.height()),
                     stratum(palette, .6));
}

} // namespace

OverviewDelegate::OverviewDelegate(OverviewTable& table) : QStyledItemDelegate(&table), table_(table) {}

QSize OverviewDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const double line = option.fontMetrics.height();
    return {static_cast<int>(line * widthOf(index.column())), static_cast<int>(line * (1 + 2 * padding + .2))};
}

void OverviewDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const QPalette& palette = option.palette;
    const double line = option.fontMetrics.height();
    painter->save();
    painter->setClipRect(option.rect);
    painter->fillRect(option.rect,
                      option.state & QStyle::State_Selected ? selection(palette) : palette.color(QPalette::Base));
    painter->setPen(QPen(hairline(palette), line / 16));
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    painter->setFont(option.font);
    QRectF box = QRectF(option.rect).adjusted(line * padding, line * padding, -line * padding, -line * padding);
    if (index.column() == OverviewModel::year) {
        if (const desk::VesselSummary* vessel = table_.at(index))
            paintLane(*painter, laneIn(option.rect, line), marksOf(*vessel, table_.today()), table_.today(), palette,
                      line, table_.moved(index));
    } else {
        if (const QVariant glyph = index.data(OverviewModel::glyphRole); glyph.isValid()) {
            const auto shape = static_cast<Glyph>(glyph.toInt());
            painter->setRenderHint(QPainter::Antialiasing);
            paintGlyph(*painter, {box.left(), box.top() + line * .08, line * .85, line * .85}, shape,
                       tone(palette, toneOf(shape)));
            box.setLeft(box.left() + line * 1.15);
        }
        if (const QVariant share = index.data(OverviewModel::shareRole); share.isValid())
            paintLevel(*painter, box, share.toDouble(), palette, line);
        painter->setPen(palette.color(QPalette::Text));
        painter->drawText(
            QRectF(box.left(), box.top(), box.width(), line), Qt::AlignLeft | Qt::AlignVCenter,
            option.fontMetrics.elidedText(index.data().toString(), Qt::ElideRight, static_cast<int>(box.width())));
    }
    painter->restore();
    if (option.state & QStyle::State_HasFocus)
        drawFocusRing(*painter, QRectF(option.rect), palette, line);
}

OverviewHeader::OverviewHeader(Day today, QWidget* parent) : QHeaderView(Qt::Horizontal, parent), today_(today) {
    setSectionsClickable(true);
    setSortIndicatorShown(true);
    setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    setMinimumSectionSize(fontMetrics().height() * 2);
}

void OverviewHeader::paintSection(QPainter* painter, const QRect& box, int column) const {
    if (column != OverviewModel::year) {
        QHeaderView::paintSection(painter, box, column);
        return;
    }
    painter->save();
    painter->fillRect(box, palette().color(QPalette::Base));
    painter->setPen(palette().color(QPalette::WindowText));
    painter->drawLine(box.bottomLeft(), box.bottomRight());
    paintMonths(*painter, laneIn(box, fontMetrics().height()), today_, palette());
    painter->restore();
}

OverviewTable::OverviewTable(OverviewModel& model, QSortFilterProxyModel& shown, QWidget* parent)
    : QTableView(parent), model_(model), shown_(shown), header_(new OverviewHeader(today(), this)) {
    setHorizontalHeader(header_);
    setModel(&shown);
    setItemDelegate(new OverviewDelegate(*this));
    makeQuiet(*this, tr("All vessels"));
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setWordWrap(false);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->setDefaultSectionSize(static_cast<int>(fontMetrics().height() * (1 + 2 * padding + .2)));
    setSortingEnabled(true);
    sortByColumn(OverviewModel::due, Qt::AscendingOrder);
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, &OverviewTable::handChanged);
    connect(&shown, &QAbstractItemModel::dataChanged, this, [this](const QModelIndex& from, const QModelIndex& to) {
        if (currentIndex().row() >= from.row() && currentIndex().row() <= to.row())
            Q_EMIT handChanged();
    });
    connect(this, &QAbstractItemView::doubleClicked, this, &OverviewTable::openAsked);
    showYear(false);
}

Day OverviewTable::today() const {
    return model_.cellar().session().desk().today();
}

void OverviewTable::showYear(bool year) {
    year_ = year;
    for (int column = 0; column < OverviewModel::columns; ++column)
        setColumnHidden(column, year ? !isOfYear(column) : column == OverviewModel::year);
    header_->setToday(today());
    fitColumns();
}

/// The last one takes what is left.
void OverviewTable::fitColumns() {
    header_->setStretchLastSection(true);
    for (int column = 0; column < OverviewModel::columns; ++column)
        if (!isColumnHidden(column))
            header_->resizeSection(column, lines(*this, widthOf(column)));
}

void OverviewTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fitColumns();
}

const desk::VesselSummary* OverviewTable::at(const QModelIndex& shown) const {
    return shown.isValid() ? model_.at(shown_.mapToSource(shown).row()) : nullptr;
}
const desk::VesselSummary* OverviewTable::inHand() const {
    return at(currentIndex());
}

std::optional<YearMark> OverviewTable::moved(const QModelIndex& shown) const {
    return drag_ && drag_->begun && drag_->row.row() == shown.row() ? std::optional(drag_->now) : std::nullopt;
}

QRectF OverviewTable::laneOf(const QModelIndex& shown) const {
    return laneIn(visualRect(shown.siblingAtColumn(OverviewModel::year)), fontMetrics().height());
}

void OverviewTable::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && drag_)
        endDrag();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        Q_EMIT openAsked();
    else
        QTableView::keyPressEvent(event);
}

void OverviewTable::mousePressEvent(QMouseEvent* event) {
    QTableView::mousePressEvent(event);
    const QModelIndex index = indexAt(event->pos());
    const desk::VesselSummary* vessel = at(index);
    if (!vessel || index.column() != OverviewModel::year || event->button() != Qt::LeftButton ||
        model_.cellar().session().desk().readOnly())
        return;
    const auto marks = marksOf(*vessel, today());
    const YearMark* mark = markAt(marks, today(), laneOf(index), event->position().x(), fontMetrics().height());
    if (!mark || !mark->movable)
        return;
    const double grip = event->position().x() - YearScale(today(), laneOf(index)).x(mark->on);
    drag_ = {index, *mark, *mark, grip, event->pos().x(), false};
}

/// Not before today: what is past cannot be planned.
void OverviewTable::mouseMoveEvent(QMouseEvent* event) {
    if (!drag_) {
        QTableView::mouseMoveEvent(event);
        return;
    }
    drag_->begun = drag_->begun || std::abs(event->pos().x() - drag_->pressedAt) >= QApplication::startDragDistance();
    if (!drag_->begun)
        return;
    viewport()->setCursor(Qt::ClosedHandCursor);
    const YearScale scale(today(), laneOf(drag_->row));
    drag_->now.on = std::max(today(), scale.day(event->position().x() - drag_->grip));
    QToolTip::showText(event->globalPosition().toPoint(),
                       tr("%1 on %2").arg(workWord(drag_->now.kind), weekdayWords(drag_->now.on)), this);
    viewport()->update();
}

void OverviewTable::mouseReleaseEvent(QMouseEvent* event) {
    QTableView::mouseReleaseEvent(event);
    if (!drag_)
        return;
    const Drag done = *drag_;
    endDrag();
    const desk::VesselSummary* vessel = at(done.row);
    if (vessel && done.now.on != done.from.on)
        Q_EMIT moveAsked(qs(vessel->name), done.from.kind, done.now.on);
}

void OverviewTable::endDrag() {
    drag_.reset();
    viewport()->unsetCursor();
    viewport()->update();
}

} // namespace staveline::ui
