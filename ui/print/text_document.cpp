// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/text_document.h"

#include "ui/present/text.h"
#include "ui/print/picture_object.h"

#include <QAbstractTextDocumentLayout>
#include <QFontMetricsF>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextOption>
#include <QTextTable>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

using sheet::Table;

namespace {

constexpr double bodyPoints = 9.5, headPoints = 9;

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

/// A word that is longer than its line is broken where it must be; Qt would let it run over the edge, or break shorter
/// ones too.
QString fitted(const QString& words, const QTextCharFormat& ink, double room) {
    const QFontMetricsF metrics(ink.font());
    QStringList parts = words.split(QLatin1Char(' '));
    for (QString& word : parts) {
        if (metrics.horizontalAdvance(word) <= room)
            continue;
        for (qsizetype start = 0, end = 1; end < word.size(); ++end)
            if (!word[end].isLowSurrogate() && metrics.horizontalAdvance(word.mid(start, end + 1 - start)) > room) {
                word.insert(end, QChar::LineSeparator);
                start = end + 1;
            }
    }
    return parts.join(QLatin1Char(' '));
}

constexpr double boxPadding = 3 * unitsPerPoint; // with its border

class Setter {
public:
    Setter(QTextDocument& document, double width, const sheet::Document& paper)
        : cursor_(&document), width_(width), paper_(paper) {}

    void line(const QString& words, const QTextBlockFormat& block, const QTextCharFormat& ink) {
        nextBlock(block);
        cursor_.insertText(fitted(words, ink, width_ - block.leftMargin()), ink);
    }
    void operator()(const sheet::Heading& heading) {
        const int level = std::clamp(heading.level, 1, 3);
        QTextBlockFormat block = spaced(level == 1 ? 8 : 6, 1);
        block.setHeadingLevel(level);
        line(qs(heading.text), block, inked(level == 1 ? 14 : level == 2 ? 11.5 : 10, true));
    }
    void operator()(const sheet::Paragraph& paragraph) { line(qs(paragraph.text), spaced(1, 3), inked(bodyPoints)); }
    void operator()(const sheet::Caution& caution) {
        QTextTable* box = cursor_.insertTable(1, 1, boxFormat());
        QTextCursor cell = box->cellAt(0, 0).firstCursorPosition();
        cell.insertText(QStringLiteral("\u25B2 %1: ").arg(qs(paper_.cautionWord)), inked(bodyPoints, true));
        cell.insertText(fitted(qs(caution.text), inked(bodyPoints), width_ - 2 * boxPadding), inked(bodyPoints));
        leave();
    }
    void operator()(const sheet::BulletList& bullets) {
        QTextBlockFormat block = spaced(0, 2);
        const QString mark = bullets.boxes ? QStringLiteral("\u2610 ") : QStringLiteral("\u2013 ");
        const double indent = bullets.boxes ? 13 : 9; // points
        block.setLeftMargin((indent + 2) * unitsPerPoint);
        block.setTextIndent(-indent * unitsPerPoint);
        for (const std::string& item : bullets.items)
            line(mark + qs(item), block, inked(bodyPoints));
    }
    void operator()(const Table& table);
    void operator()(const sheet::Picture& picture) {
        nextBlock(spaced(4, 6));
        cursor_.insertText(QString(QChar::ObjectReplacementCharacter),
                           pictureFormat(QByteArray::fromStdString(picture.svg), width_));
    }

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
        format.setCellPadding(2 * unitsPerPoint);
        format.setCellSpacing(0);
        format.setTopMargin(2 * unitsPerPoint);
        format.setBottomMargin(2 * unitsPerPoint);
        format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
        format.setProperty(keptWhole, true); // no half caution at the foot of a page
        return format;
    }
    [[nodiscard]] std::vector<const Table*> alike(const Table& table) const;
    [[nodiscard]] QVector<QTextLength> columnWidths(const Table& table) const;
    void cell(QTextTable& made, int row, const Table& table, std::size_t column);

    QTextCursor cursor_;
    double width_;
    const sheet::Document& paper_;
    bool fresh_ = true;
};

bool isEmpty(const std::vector<std::string>& row, std::size_t column) {
    return column >= row.size() || row[column].empty();
}
/// Columns in which nothing is printed are spaces to write in.
bool isSpace(const Table& table, std::size_t column) {
    return !table.rows.empty() &&
           std::all_of(table.rows.begin(), table.rows.end(), [&](const auto& row) { return isEmpty(row, column); });
}
bool isBlank(const std::vector<std::string>& row) {
    return std::all_of(row.begin(), row.end(), [](const std::string& words) { return words.empty(); });
}
/// Lines for words of one's own: a few of them alone on a page would be a page of nothing.
bool isForNotes(const Table& table) {
    return !table.rows.empty() && std::all_of(table.rows.begin(), table.rows.end(), isBlank);
}
/// A short table is read at one look: it is not torn for a page.
constexpr std::size_t keptRows = 8;
bool isWide(const Table& table) {
    return table.columns.size() > 5;
}

/// Tables under the same heads are one table to the eye: their columns stand below each other.
std::vector<const Table*> Setter::alike(const Table& table) const {
    std::vector<const Table*> found;
    for (const sheet::Block& block : paper_.blocks)
        if (const auto* other = std::get_if<Table>(&block); other && other->columns == table.columns)
            found.push_back(other);
    return found;
}

QVector<QTextLength> Setter::columnWidths(const Table& table) const {
    const auto all = alike(table);
    const auto space = [&](std::size_t column) {
        return std::any_of(all.begin(), all.end(), [&](const Table* each) { return isSpace(*each, column); });
    };
    const std::size_t columns = table.columns.size();
    std::vector<double> shares(columns, 0);
    double spaces = 0, texts = 0;
    for (std::size_t c = 0; c < columns; ++c)
        if (space(c)) {
            // A score needs less room than a word, a remark all there is.
            const QFontMetricsF head(paperFont(headPoints, true));
            const double needed = head.horizontalAdvance(qs(table.columns[c])) + 14 * unitsPerPoint;
            shares[c] = std::max(isWide(table) ? .09 : .2, needed / width_);
            spaces += shares[c];
        } else {
            texts += c == 0 ? 1.4 : 1;
        }
    if (texts == 0)
        shares.back() += 1 - spaces;
    QVector<QTextLength> widths;
    for (std::size_t c = 0; c < columns; ++c) {
        if (shares[c] == 0 && all.size() > 1)
            shares[c] = (1 - spaces) * (c == 0 ? 1.4 : 1) / texts;
        widths << (shares[c] > 0 ? QTextLength(QTextLength::FixedLength, width_ * shares[c]) : QTextLength());
    }
    return widths;
}

/// Row 0 is the head.
void Setter::cell(QTextTable& made, int row, const Table& table, std::size_t column) {
    const bool head = row == 0;
    const std::vector<std::string>& words = head ? table.columns : table.rows[static_cast<std::size_t>(row) - 1];
    const bool right = table.isNumeric(column);
    QTextTableCell cell = made.cellAt(row, static_cast<int>(column));
    QTextTableCellFormat format;
    format.setBottomBorder((head ? 1.0 : .4) * unitsPerPoint);
    format.setBottomBorderStyle(QTextFrameFormat::BorderStyle_Solid);
    format.setBottomBorderBrush(Qt::black);
    format.setPadding(1.4 * unitsPerPoint);
    if (column > 0 && !right) // away from the numbers before it
        format.setLeftPadding((table.isNumeric(column - 1) ? 9 : 5) * unitsPerPoint);
    if (isBlank(words))
        format.setTopPadding(8 * unitsPerPoint); // a hand needs more than type
    else if (!head && isEmpty(words, column)) {  // a box; its upper edge is that of the row above
        format.setLeftBorder(.4 * unitsPerPoint);
        format.setRightBorder(.4 * unitsPerPoint);
        format.setLeftBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        format.setRightBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        format.setLeftBorderBrush(Qt::black);
        format.setRightBorderBrush(Qt::black);
    }
    cell.setFormat(format);
    QTextCursor at = cell.firstCursorPosition();
    at.setBlockFormat(spaced(0, 0, right ? Qt::AlignRight : Qt::AlignLeft));
    const QTextCharFormat ink = inked(head || isWide(table) ? headPoints : bodyPoints, head);
    const double room = width_ / static_cast<double>(table.columns.size());
    at.insertText(column < words.size() ? fitted(qs(words[column]), ink, room) : QString(), ink);
}

void Setter::operator()(const Table& table) {
    const int columns = static_cast<int>(table.columns.size());
    if (columns == 0)
        return;
    QTextTableFormat format;
    format.setBorder(0);
    format.setCellSpacing(0);
    format.setHeaderRowCount(1);
    format.setTopMargin(2 * unitsPerPoint);
    format.setBottomMargin(5 * unitsPerPoint);
    format.setWidth(QTextLength(QTextLength::FixedLength, width_));
    format.setColumnWidthConstraints(columnWidths(table));
    if (isForNotes(table) || table.rows.size() <= keptRows)
        format.setProperty(keptWhole, true);
    QTextTable* made = cursor_.insertTable(static_cast<int>(table.rows.size()) + 1, columns, format);
    for (int row = 0; row <= static_cast<int>(table.rows.size()); ++row)
        for (std::size_t c = 0; c < table.columns.size(); ++c)
            cell(*made, row, table, c);
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

std::unique_ptr<QTextDocument> textDocument(const sheet::Document& document, double width) {
    auto made = std::make_unique<QTextDocument>();
    made->documentLayout()->registerHandler(pictureKind, new PictureObject(made.get()));
    made->setDocumentMargin(0);
    made->setUseDesignMetrics(true);
    made->setDefaultFont(paperFont(bodyPoints));
    made->setDefaultTextOption([] {
        QTextOption option;
        option.setWrapMode(QTextOption::WordWrap); // a word is not broken for a narrow column
        return option;
    }());
    made->setMetaInformation(QTextDocument::DocumentTitle, qs(document.title));
    made->setUndoRedoEnabled(false);
    QTextCursor whole(made.get());
    whole.beginEditBlock(); // laid out once, at its end: each cell by itself would lay out all that is there so far
    Setter setter(*made, width, document);
    QTextBlockFormat first = spaced(0, 2);
    first.setHeadingLevel(1);
    setter.line(qs(document.title), first, inked(19, true));
    if (!document.subtitle.empty())
        setter.line(qs(document.subtitle), spaced(0, 6), inked(10.5));
    for (const sheet::Block& block : document.blocks)
        std::visit(setter, block);
    whole.endEditBlock();
    return made;
}

} // namespace staveline::ui
