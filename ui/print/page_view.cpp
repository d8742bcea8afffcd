// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/page_view.h"

#include "sheet/document.h"
#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace staveline::ui {

void PageStack::setPaper(std::optional<PagedPaper> paper) {
    paper_ = std::move(paper);
    update();
}

int PageStack::gap() const {
    return lines(*this, 1);
}

/// Fits the width, but never larger than a comfortable reading size.
QSizeF PageStack::pageSize(int width) const {
    const QSizeF points = paper_->pagePoints();
    const double widest = fontMetrics().averageCharWidth() * 130.0;
    const double wide = std::min<double>(width - 2 * gap(), widest);
    return points * (wide / points.width());
}

int PageStack::heightForWidth(int width) const {
    if (!paper_)
        return 0;
    return static_cast<int>(paper_->pages() * (pageSize(width).height() + gap()) + gap());
}

void PageStack::paintEvent(QPaintEvent* event) {
    if (!paper_)
        return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QSizeF size = pageSize(width());
    for (int page = 0; page < paper_->pages(); ++page) {
        const QRectF sheet(QPointF((width() - size.width()) / 2, gap() + page * (size.height() + gap())), size);
        if (!sheet.intersects(QRectF(event->rect())))
            continue;
        painter.fillRect(sheet, Qt::white); // paper is white in the dark too
        painter.setPen(QPen(hairline(palette()), 1));
        painter.drawRect(sheet);
        painter.save();
        painter.translate(sheet.topLeft());
        painter.scale(size.width() / paper_->pagePoints().width(), size.height() / paper_->pagePoints().height());
        paper_->paint(painter, page);
        painter.restore();
    }
}

PageView::PageView(QWidget* parent) : QScrollArea(parent), stack_(new PageStack) {
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    setWidget(stack_);
    setAccessibleName(tr("Page preview"));
}

void PageView::showDocument(const sheet::Document& document, PaperSize size) {
    stack_->setPaper(PagedPaper(document, size));
    setAccessibleDescription(tr("%1, %n page(s)", nullptr, pages()).arg(qs(document.title)));
    fit();
    verticalScrollBar()->setValue(0);
}

int PageView::pages() const {
    return stack_->paper() ? stack_->paper()->pages() : 0;
}

void PageView::fit() {
    const int width = viewport()->width();
    stack_->resize(width, stack_->heightForWidth(width));
    verticalScrollBar()->setSingleStep(lines(*this, 2));
}

void PageView::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    fit();
}

} // namespace staveline::ui
