// SPDX-License-Identifier: GPL-3.0-or-later
// Cards on pages: each section of the document in its place of the grid, with lines to cut along.
#pragma once

#include "sheet/document.h"

#include <QSizeF>

#include <memory>
#include <vector>

class QPainter;
class QTextDocument;

namespace staveline::ui {

class CardPages {
public:
    /// `page` in points; a document of cards.
    CardPages(const sheet::Document& document, const QSizeF& page);
    ~CardPages();
    [[nodiscard]] int pages() const;
    /// Page `page`, from 0; the painter counts in points.
    void paint(QPainter& painter, int page) const;

private:
    void paintCard(QPainter& painter, const QTextDocument& card) const;

    sheet::CardGrid grid_;
    QSizeF card_; ///< in points
    std::vector<std::unique_ptr<QTextDocument>> cards_;
};

} // namespace staveline::ui
