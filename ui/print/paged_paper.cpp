// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paged_paper.h"

#include "sheet/document.h"
#include "ui/present/text.h"
#include "ui/print/card_pages.h"
#include "ui/print/text_document.h"

#include <QAbstractTextDocumentLayout>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextOption>
#include <QTextTable>

#include <algorithm>
#include <cmath>
#include <optional>

namespace staveline::ui {
namespace {

constexpr double margin = 45;    // points
constexpr double footRoom = 24;  // points, below the text
constexpr double footPoints = 8; // type size

/// From top to bottom in the laid-out text.
struct Span {
    double top = 0, bottom = 0;
};

Span spanOf(const QTextDocument& document, const QTextBlock& block) {
    const QRectF box = document.documentLayout()->blockBoundingRect(block);
    return {box.top(), box.bottom()};
}

/// Of a box that must stay whole: all of it; of another table: its head and its first row.
Span startOf(const QTextDocument& document, QTextTable& table) {
    const QRectF box = document.documentLayout()->frameBoundingRect(&table);
    if (table.format().hasProperty(keptWhole))
        return {box.top(), box.bottom()};
    Span start{box.top(), box.top()};
    const int row = std::min(table.format().headerRowCount(), table.rows() - 1);
    for (int column = 0; column < table.columns(); ++column) {
        const QTextBlock last = table.cellAt(row, column).lastCursorPosition().block();
        start.bottom = std::max(start.bottom, spanOf(document, last).bottom);
    }
    return start;
}

bool isHeading(const QTextFrame::iterator& at) {
    return !at.currentFrame() && at.currentBlock().blockFormat().headingLevel() > 0;
}

/// What may not be torn where a part of the text starts: a box, a heading with the start of what it heads.
std::optional<Span> heldTogether(const QTextDocument& document, QTextFrame::iterator at) {
    auto* box = qobject_cast<QTextTable*>(at.currentFrame());
    if (box)
        return box->format().hasProperty(keptWhole) ? std::optional(startOf(document, *box)) : std::nullopt;
    if (!isHeading(at))
        return std::nullopt;
    Span span = spanOf(document, at.currentBlock());
    while (isHeading(at) && !(++at).atEnd())
        span.bottom = at.currentFrame() ? startOf(document, *qobject_cast<QTextTable*>(at.currentFrame())).bottom
                                        : spanOf(document, at.currentBlock()).bottom;
    return span;
}

/// A bottom margin that reaches over the end of its page makes Qt count the next page from there: what follows would be
/// torn, or come after an empty page.
void trimMargin(const QTextDocument& document, QTextFrame& frame, double pageHeight) {
    QTextFrameFormat format = frame.frameFormat();
    const double bottom = document.documentLayout()->frameBoundingRect(&frame).bottom();
    const double over = bottom - std::floor(bottom / pageHeight) * pageHeight;
    if (over > format.bottomMargin())
        return;
    format.setBottomMargin(0);
    frame.setFrameFormat(format);
}

void startPage(const QTextFrame::iterator& at) {
    if (QTextFrame* frame = at.currentFrame()) {
        QTextFrameFormat format = frame->frameFormat();
        format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
        frame->setFrameFormat(format);
        return;
    }
    QTextBlockFormat format = at.currentBlock().blockFormat();
    format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
    QTextCursor(at.currentBlock()).setBlockFormat(format);
}

/// A line that finds no room at the foot of a page begins the next one by itself: a break before it would be a second.
bool movesByItself(const QTextDocument& document, const QTextFrame::iterator& at, double pageHeight) {
    if (at.currentFrame())
        return false;
    const Span span = spanOf(document, at.currentBlock());
    return std::floor(span.top / pageHeight) != std::floor((span.bottom - 1) / pageHeight);
}

/// From the top on, as each page break moves all that follows. What is higher than a page is torn all the same.
void keepTogether(QTextDocument& document, double pageHeight) {
    const auto pageOf = [&](double y) { return std::floor(y / pageHeight); };
    for (auto at = document.rootFrame()->begin(); !at.atEnd(); ++at) {
        const auto held = heldTogether(document, at);
        if (held && held->bottom - held->top < pageHeight && pageOf(held->top) != pageOf(held->bottom - 1) &&
            !movesByItself(document, at, pageHeight))
            startPage(at);
        if (at.currentFrame())
            trimMargin(document, *at.currentFrame(), pageHeight);
    }
}

/// The block after a table holds nothing: where it alone runs over, no page follows.
int filledPages(const QTextDocument& document, double pageHeight) {
    double bottom = 0;
    for (auto at = document.rootFrame()->begin(); !at.atEnd(); ++at)
        if (QTextFrame* frame = at.currentFrame())
            bottom = std::max(bottom, document.documentLayout()->frameBoundingRect(frame).bottom() -
                                          frame->frameFormat().bottomMargin());
        else if (at.currentBlock().length() > 1)
            bottom = std::max(bottom, spanOf(document, at.currentBlock()).bottom);
    return std::max(1, static_cast<int>(std::ceil((bottom - 1) / pageHeight)));
}

} // namespace

QPageLayout PagedPaper::layout(PaperSize size) {
    return {QPageSize(rowOf(size).page), QPageLayout::Portrait, QMarginsF(0, 0, 0, 0), QPageLayout::Point};
}

PagedPaper::PagedPaper(const sheet::Document& document, PaperSize size)
    : points_(layout(size).fullRect(QPageLayout::Point).size()), foot_(qs(document.footer)) {
    if (document.cards) {
        cards_ = std::make_unique<CardPages>(document, points_);
        pages_ = cards_->pages();
        return;
    }
    const QSizeF body = (points_ - QSizeF(2 * margin, 2 * margin + footRoom)) * unitsPerPoint;
    text_ = textDocument(document, body.width());
    text_->setPageSize(body);
    keepTogether(*text_, body.height());
    pages_ = filledPages(*text_, body.height());
}

PagedPaper::~PagedPaper() = default;
PagedPaper::PagedPaper(PagedPaper&&) noexcept = default;
PagedPaper& PagedPaper::operator=(PagedPaper&&) noexcept = default;

int PagedPaper::pages() const {
    return pages_;
}

QSizeF PagedPaper::pagePoints() const {
    return points_;
}

void PagedPaper::paint(QPainter& painter, int page) const {
    painter.save();
    if (cards_) {
        cards_->paint(painter, page);
        painter.restore();
        return;
    }
    painter.translate(margin, margin);
    painter.scale(1 / unitsPerPoint, 1 / unitsPerPoint);
    const QSizeF body = text_->pageSize();
    painter.save();
    painter.translate(0, -page * body.height());
    QAbstractTextDocumentLayout::PaintContext context;
    context.palette.setColor(QPalette::Text, Qt::black);
    // A hair short, or what stands at the top of the next page would be written here too, unseen but found by a search.
    context.clip = QRectF(0, page * body.height(), body.width(), body.height() - 1);
    painter.setClipRect(context.clip);
    text_->documentLayout()->draw(&painter, context);
    painter.restore();
    painter.translate(0, body.height());
    paintFoot(painter, page);
    painter.restore();
}

void PagedPaper::paintFoot(QPainter& painter, int page) const {
    const QRectF box(0, (footRoom - footPoints * 1.6) * unitsPerPoint, text_->pageSize().width(),
                     footPoints * 1.6 * unitsPerPoint);
    painter.setFont(paperFont(footPoints));
    painter.setPen(QPen(Qt::black, .4 * unitsPerPoint));
    painter.drawLine(box.topLeft(), box.topRight());
    const QString count = QCoreApplication::translate("Paper", "page %1 of %2").arg(page + 1).arg(pages());
    const double wide = painter.fontMetrics().horizontalAdvance(count) + 2 * footPoints * unitsPerPoint;
    const double gap = .3 * footPoints * unitsPerPoint;
    painter.drawText(box.adjusted(0, gap, 0, box.height()), Qt::AlignRight | Qt::AlignTop, count);
    const QRectF place = box.adjusted(0, gap, -wide, box.height());
    // Two lines at most; wrapping leaves some of the first one empty.
    const int room = static_cast<int>(place.width() * 1.8);
    const QString words = painter.fontMetrics().elidedText(foot_, Qt::ElideRight, room);
    QTextOption wrapped(Qt::AlignLeft | Qt::AlignTop);
    wrapped.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    painter.drawText(place, words, wrapped);
}

} // namespace staveline::ui
