// SPDX-License-Identifier: GPL-3.0-or-later
// A document laid out on pages. Preview, printer and PDF paint the same layout, so that they break alike.
#pragma once

#include "sheet/document.h"
#include "ui/print/paper.h"

#include <QSizeF>

#include <memory>

class QPageLayout;
class QPainter;
class QTextDocument;

namespace staveline::ui {

class CardPages;

class PagedPaper {
public:
    PagedPaper(const sheet::Document& document, PaperSize size);
    ~PagedPaper();
    PagedPaper(PagedPaper&&) noexcept;
    PagedPaper& operator=(PagedPaper&&) noexcept;

    [[nodiscard]] int pages() const;
    /// Of a page, in points (1/72 inch).
    [[nodiscard]] QSizeF pagePoints() const;
    /// Paints page `page` (from 0), black on nothing, into a square of `pagePoints` scaled by the painter.
    void paint(QPainter& painter, int page) const;
    [[nodiscard]] static QPageLayout layout(PaperSize size);

private:
    void paintFoot(QPainter& painter, int page) const;

    QSizeF points_;
    QString foot_;
    std::unique_ptr<CardPages> cards_; ///< of a document of cards, instead of a text
    std::unique_ptr<QTextDocument> text_;
    int pages_ = 1;
};

} // namespace staveline::ui
