// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paged_paper.h"

#include "ui/present/text.h"
#include "ui/print/text_document.h"

#include <QAbstractTextDocumentLayout>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPainter>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextDocument>

namespace staveline::ui {
namespace {

constexpr double margin = 45;    // points
constexpr double footRoom = 24;  // points, below the text
constexpr double footPoints = 8; // type size

/// A heading must not stand alone at the foot of a page: it starts the next one with what it heads.
void keepHeadings(QTextDocument& document, double pageHeight) {
    const auto pageOf = [&](double y) { return static_cast<int>(y / pageHeight); };
    for (QTextBlock block = document.begin(); block.isValid(); block = block.next()) {
        const QTextBlock after = block.next();
        if (block.blockFormat().headingLevel() == 0 || !after.isValid())
            continue;
        const auto* layout = document.documentLayout();
        const double top = layout->blockBoundingRect(block).top();
        if (pageOf(top) == pageOf(layout->blockBoundingRect(after).bottom() - 1))
            continue;
        QTextBlockFormat format = block.blockFormat();
        format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
        QTextCursor(block).setBlockFormat(format);
    }
}

} // namespace

QPageLayout PagedPaper::layout(PaperSize size) {
    return {QPageSize(rowOf(size).page), QPageLayout::Portrait, QMarginsF(0, 0, 0, 0), QPageLayout::Point};
}

PagedPaper::PagedPaper(const Document& document, PaperSize size)
    : points_(layout(size).fullRect(QPageLayout::Point).size()), foot_(qs(document.footer)) {
    const QSizeF body = (points_ - QSizeF(2 * margin, 2 * margin + footRoom)) * unitsPerPoint;
    text_ = textDocument(document, body.width());
    text_->setPageSize(body);
    keepHeadings(*text_, body.height());
}

PagedPaper::~PagedPaper() = default;
PagedPaper::PagedPaper(PagedPaper&&) noexcept = default;
PagedPaper& PagedPaper::operator=(PagedPaper&&) noexcept = default;

int PagedPaper::pages() const {
    return text_->pageCount();
}

QSizeF PagedPaper::pagePoints() const {
    return points_;
}

void PagedPaper::paint(QPainter& painter, int page) const {
    painter.save();
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
    painter.drawText(box.adjusted(0, gap, -wide, box.height()), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, foot_);
}

} // namespace staveline::ui
