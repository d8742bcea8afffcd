// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/ledger_table.h"

#include "desk/ledger.h"
#include "ui/widgets/entry_look.h"
#include "ui/widgets/glyph.h"
#include "ui/widgets/paper_style.h"
#include "ui/widgets/quiet_table.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>

namespace staveline::ui {
namespace {

constexpr double padding = .35; // lines of text
constexpr double leastWithAge = 28;

struct Under {
    QString words;
    bool finding = false;
};
std::vector<Under> linesUnder(const LedgerModel& model, int row) {
    std::vector<Under> under;
    if (const desk::LedgerLine* line = model.at(row); line && !line->note.empty())
        under.push_back({qs(line->note), false});
    for (const QString& finding : model.findings(row))
        under.push_back({finding, true});
    return under;
}

/// What a cell shows: beside what happened there may be no room for the age, which then stands below the level.
QString wordsIn(const QModelIndex& index, const QWidget* widget) {
    const QString words = index.data().toString();
    const auto* table = qobject_cast<const QTableView*>(widget);
    if (index.column() != LedgerModel::level || !table || !table->isColumnHidden(LedgerModel::age))
        return words;
    const QString age = index.siblingAtColumn(LedgerModel::age).data().toString();
    return age.isEmpty() ? words : words + QLatin1Char('\n') + age;
}

int inset(const QFontMetrics& metrics) {
    return static_cast<int>(metrics.height() * 1.5);
}
int heightOf(const QFontMetrics& metrics, int width, const QString& words) {
    // Measuring text is most of the cost of a long ledger: what surely fits one line is not measured.
    if (words.size() * metrics.horizontalAdvance(QLatin1Char('W')) <= width && !words.contains(QLatin1Char('\n')))
        return metrics.height();
    return metrics.boundingRect(QRect(0, 0, std::max(width, 1), 10000), Qt::TextWordWrap, words).height();
}

} // namespace

LedgerDelegate::LedgerDelegate(LedgerModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

QSize LedgerDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const QFontMetrics metrics(option.font);
    const int pad = static_cast<int>(2 * padding * metrics.height());
    if (index.column() != LedgerModel::entry) {
        const QSize words = metrics.size(0, wordsIn(index, option.widget));
        return {words.width() + 2 * pad, words.height() + pad};
    }
    const QString words = index.data().toString();
    const auto* table = qobject_cast<const QTableView*>(option.widget);
    const int width = (table ? table->columnWidth(LedgerModel::entry) : option.rect.width()) - inset(metrics) - pad;
    int height = heightOf(metrics, width, words) + pad;
    for (const Under& under : linesUnder(model_, index.row()))
        height += heightOf(metrics, width - (under.finding ? inset(metrics) : 0), under.words);
    return {inset(metrics) + metrics.horizontalAdvance(words) + pad, height};
}

void LedgerDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const QPalette& palette = option.palette;
    const bool selected = option.state & QStyle::State_Selected;
    const int pad = static_cast<int>(padding * option.fontMetrics.height());
    painter->save();
    painter->fillRect(option.rect, selected ? selection(palette) : palette.color(QPalette::Base));
    if (selected && index.column() == 0)
        painter->fillRect(QRectF(option.rect.left(), option.rect.top(), pad * .6, option.rect.height()),
                          tone(palette, Tone::proposed));
    painter->setPen(QPen(hairline(palette), option.fontMetrics.height() / 16.0));
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    painter->setPen(palette.color(QPalette::Text));
    painter->setFont(option.font);
    const QRect box = option.rect.adjusted(pad, pad, -pad, -pad);
    if (index.column() == LedgerModel::entry) {
        paintEntry(*painter, box, index.row(), option);
    } else {
        const auto alignment = index.data(Qt::TextAlignmentRole).value<Qt::Alignment>() & Qt::AlignHorizontal_Mask;
        const QString words = wordsIn(index, option.widget);
        const bool oneLine = !words.contains(QLatin1Char('\n'));
        painter->drawText(box, static_cast<int>(alignment | Qt::AlignTop),
                          oneLine ? option.fontMetrics.elidedText(words, Qt::ElideRight, box.width()) : words);
    }
    painter->restore();
}

void LedgerDelegate::paintEntry(QPainter& painter, const QRect& box, int row,
                                const QStyleOptionViewItem& option) const {
    const desk::LedgerLine* line = model_.at(row);
    if (!line)
        return;
    const QFontMetrics& metrics = option.fontMetrics;
    const QPalette& palette = option.palette;
    const QColor ink = palette.color(QPalette::Text);
    const double side = metrics.height() * .85;
    paintGlyph(painter, QRectF(box.left(), box.top() + metrics.height() * .08, side, side), glyphOf(line->kind), ink);
    QRect at = box.adjusted(inset(metrics), 0, 0, 0);
    const auto write = [&](const QRect& where, const QString& words, const QColor& colour) {
        painter.setPen(colour);
        painter.drawText(where, Qt::TextWordWrap, words);
        at.setTop(at.top() + heightOf(metrics, where.width(), words));
    };
    write(at, model_.index(row, LedgerModel::entry).data().toString(), ink);
    for (const Under& under : linesUnder(model_, row)) {
        if (!under.finding) {
            write(at, under.words, quietText(palette));
            continue;
        }
        paintGlyph(painter, QRectF(at.left(), at.top() + metrics.height() * .08, side, side), Glyph::warning,
                   tone(palette, Tone::due));
        write(at.adjusted(inset(metrics), 0, 0, 0), under.words, ink);
    }
}

LedgerTable::LedgerTable(LedgerModel& model, QWidget* parent) : QTableView(parent) {
    setModel(&model);
    setItemDelegate(new LedgerDelegate(model, this));
    makeQuiet(*this, tr("Ledger"));
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setWordWrap(true);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->setMinimumSectionSize(1);
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() +
                                            static_cast<int>(2 * padding * fontMetrics().height()));
    horizontalHeader()->setResizeContentsPrecision(64); // rows looked at for the width of a column
    horizontalHeader()->setSectionsClickable(false);
    horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    horizontalHeader()->setSectionResizeMode(LedgerModel::entry, QHeaderView::Stretch);
    connect(this, &QAbstractItemView::doubleClicked, this, &LedgerTable::amendAsked);
}

void LedgerTable::fit() {
    fittedWidth_ = -1;
    if (isVisible())
        fitRows();
}

void LedgerTable::fitRows() {
    const int width = columnWidth(LedgerModel::entry);
    if (width == fittedWidth_ || !model())
        return;
    fittedWidth_ = width;
    QStyleOptionViewItem option;
    initViewItemOption(&option);
    for (int row = 0; row < model()->rowCount(); ++row) {
        const auto heightOfCell = [&](int column) {
            return itemDelegate()->sizeHint(option, model()->index(row, column)).height();
        };
        const int height = std::max(heightOfCell(LedgerModel::entry), heightOfCell(LedgerModel::level));
        if (rowHeight(row) != height)
            setRowHeight(row, height);
    }
    setMaximumHeight(horizontalHeader()->sizeHint().height() + verticalHeader()->length() + 2 * frameWidth());
}

/// Where it is narrow the age makes room for what happened, and stands below the level.
void LedgerTable::resizeEvent(QResizeEvent* event) {
    setColumnHidden(LedgerModel::age, width() < lines(*this, leastWithAge));
    QTableView::resizeEvent(event);
    if (isVisible())
        fitRows();
}

void LedgerTable::showEvent(QShowEvent* event) {
    QTableView::showEvent(event);
    fitRows();
}

void LedgerTable::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT amendAsked();
        return;
    case Qt::Key_Delete:
        Q_EMIT removeAsked();
        return;
    default:
        QTableView::keyPressEvent(event);
    }
}

} // namespace staveline::ui
