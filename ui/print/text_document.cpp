// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/text_document.h"

#include "ui/present/text.h"

#include <QTextCursor>
#include <QTextDocument>
#include <QTextTable>

#include <algorithm>
#include <cmath>

namespace staveline::ui {
namespace {

constexpr double bodyPoints = 9.5;

QTextCharFormat inked(double points, bool bold = false) {
    QTextCharFormat format;
    format.setFont(paperFont(points, bold));
    format.setForeground(Qt::black);
    return format;
}
QTextBlockFormat spaced(double above, double below, Qt::Alignment alignment = Qt::AlignLeft) {
    QTextBlockFormat format;
    format.setTopMargin(above * unitsPerPoint);
    format.setBottomMargin(below * unitsPerPoint);
    format.setAlignment(alignment);
    return format;
}

class Setter {
public:
    Setter(QTextDocument& document, double width, QString cautionWord)
        : cursor_(&document), width_(width), cautionWord_(std::move(cautionWord)) {}

    void line(const QString& words, const QTextBlockFormat& block, const QTextCharFormat& ink) {
        nextBlock(block);
        cursor_.insertText(words, ink);
    }
    void operator()(const Heading& heading) {
        const int level = std::clamp(heading.level, 1, 3);
        QTextBlockFormat block = spaced(level == 1 ? 14 : 9, 3);
        block.setHeadingLevel(level);
        line(qs(heading.text), block, inked(level == 1 ? 14 : level == 2 ? 11.5 : 10, true));
    }
    void operator()(const Paragraph& paragraph) { line(qs(paragraph.text), spaced(1, 3), inked(bodyPoints)); }
    void operator()(const Caution& caution) {
        QTextTable* box = cursor_.insertTable(1, 1, boxFormat());
        QTextCursor cell = box->cellAt(0, 0).firstCursorPosition();
        cell.insertText(QStringLiteral("\u25B2 %1: ").arg(cautionWord_), inked(bodyPoints, true));
        cell.insertText(qs(caution.text), inked(bodyPoints));
        leave();
    }
    void operator()(const BulletList& bullets) {
        QTextBlockFormat block = spaced(0, 2);
        block.setLeftMargin(11 * unitsPerPoint);
        block.setTextIndent(-9 * unitsPerPoint);
        for (const std::string& item : bullets.items)
            line(QStringLiteral("\u2013 ") + qs(item), block, inked(bodyPoints));
    }
    void operator()(const Table& table);

private:
    void nextBlock(const QTextBlockFormat& block) {
        if (fresh_)
            cursor_.setBlockFormat(block);
        else
            cursor_.insertBlock(block, inked(bodyPoints));
        fresh_ = false;
    }
    /// Out of a table: the block after it is empty and can be used.
    void leave() {
        cursor_.movePosition(QTextCursor::End);
        cursor_.setBlockFormat(spaced(0, 0));
        cursor_.setBlockCharFormat(inked(2));
        fresh_ = true;
    }
    QTextTableFormat boxFormat() const {
        QTextTableFormat format;
        format.setBorder(.8 * unitsPerPoint);
        format.setBorderBrush(Qt::black);
        format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        format.setCellPadding(4 * unitsPerPoint);
        format.setCellSpacing(0);
        format.setTopMargin(5 * unitsPerPoint);
        format.setBottomMargin(8 * unitsPerPoint);
        format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
        return format;
    }
    void cell(QTextTable& made, int row, int column, const QString& words, bool right, bool head);

    QTextCursor cursor_;
    double width_;
    QString cautionWord_;
    bool fresh_ = true;
};

/// Columns in which nothing is printed are spaces to write in.
bool isSpace(const Table& table, std::size_t column) {
    return !table.rows.empty() && std::all_of(table.rows.begin(), table.rows.end(), [&](const auto& row) {
        return column >= row.size() || row[column].empty();
    });
}

/// Of a space to write in, as a share of the page: a score needs less room than a word.
double spaceShare(int columns) {
    return columns > 5 ? .09 : .2;
}

void Setter::cell(QTextTable& made, int row, int column, const QString& words, bool right, bool head) {
    QTextTableCell cell = made.cellAt(row, column);
    QTextTableCellFormat format;
    format.setBottomBorder((head ? 1.0 : .4) * unitsPerPoint);
    format.setBottomBorderStyle(QTextFrameFormat::BorderStyle_Solid);
    format.setBottomBorderBrush(Qt::black);
    format.setPadding(2.6 * unitsPerPoint);
    if (!right)
        format.setLeftPadding((column > 0 ? 9 : 2.6) * unitsPerPoint); // away from the numbers before it
    cell.setFormat(format);
    QTextCursor at = cell.firstCursorPosition();
    at.setBlockFormat(spaced(0, 0, right ? Qt::AlignRight : Qt::AlignLeft));
    at.insertText(words, inked(head ? bodyPoints - .5 : bodyPoints, head));
}

void Setter::operator()(const Table& table) {
    const int columns = static_cast<int>(table.columns.size());
    if (columns == 0)
        return;
    QTextTableFormat format;
    format.setBorder(0);
    format.setCellSpacing(0);
    format.setHeaderRowCount(1);
    format.setTopMargin(3 * unitsPerPoint);
    format.setBottomMargin(11 * unitsPerPoint);
    format.setWidth(QTextLength(QTextLength::FixedLength, width_));
    QVector<QTextLength> widths;
    for (std::size_t c = 0; c < table.columns.size(); ++c)
        widths << (isSpace(table, c) ? QTextLength(QTextLength::FixedLength, width_ * spaceShare(columns))
                                     : QTextLength());
    format.setColumnWidthConstraints(widths);
    QTextTable* made = cursor_.insertTable(static_cast<int>(table.rows.size()) + 1, columns, format);
    const auto right = [&](std::size_t c) { return c < table.numeric.size() && table.numeric[c]; };
    for (std::size_t c = 0; c < table.columns.size(); ++c)
        cell(*made, 0, static_cast<int>(c), qs(table.columns[c]), right(c), true);
    for (std::size_t r = 0; r < table.rows.size(); ++r)
        for (std::size_t c = 0; c < table.columns.size(); ++c)
            cell(*made, static_cast<int>(r) + 1, static_cast<int>(c),
                 c < table.rows[r].size() ? qs(table.rows[r][c]) : QString(), right(c), false);
    leave();
}

} // namespace

QFont paperFont(double points, bool bold) {
    QFont font(QStringLiteral("sans-serif"));
    font.setStyleHint(QFont::SansSerif);
    font.setPixelSize(static_cast<int>(std::lround(points * unitsPerPoint)));
    font.setBold(bold);
    // Any letter spacing keeps Qt from joining "fi", which would not be found by a search in the PDF.
    font.setLetterSpacing(QFont::AbsoluteSpacing, .02);
    return font;
}

std::unique_ptr<QTextDocument> textDocument(const Document& document, double width) {
    auto made = std::make_unique<QTextDocument>();
    made->setDocumentMargin(0);
    made->setUseDesignMetrics(true);
    made->setDefaultFont(paperFont(bodyPoints));
    made->setMetaInformation(QTextDocument::DocumentTitle, qs(document.title));
    Setter setter(*made, width, qs(document.cautionWord));
    QTextBlockFormat first = spaced(0, 2);
    first.setHeadingLevel(1);
    setter.line(qs(document.title), first, inked(19, true));
    if (!document.subtitle.empty())
        setter.line(qs(document.subtitle), spaced(0, 6), inked(10.5));
    for (const Block& block : document.blocks)
        std::visit(setter, block);
    return made;
}

} // namespace staveline::ui
