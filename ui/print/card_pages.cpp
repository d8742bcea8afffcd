// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/card_pages.h"

#include "ui/print/text_document.h"

#include <QAbstractTextDocumentLayout>
#include <QPainter>
#include <QTextDocument>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr double inner = 17; // points, inside a card

int toAPage(const sheet::CardGrid& grid) {
    return grid.across * grid.down;
}

/// Each section by itself; its heading is the title.
std::vector<sheet::Document> sectionsOf(const sheet::Document& document) {
    std::vector<sheet::Document> sections;
    for (const sheet::Block& block : document.blocks) {
        const auto* heading = std::get_if<sheet::Heading>(&block);
        if (heading && heading->level == 1) {
            sections.emplace_back();
            sections.back().title = heading->text;
            sections.back().cautionWord = document.cautionWord;
            sections.back().footer = document.footer;
        } else if (!sections.empty()) {
            sections.back().blocks.push_back(block);
        }
    }
    for (sheet::Document& section : sections)
        if (!section.footer.empty())
            section.blocks.emplace_back(sheet::Paragraph{section.footer});
    if (sections.size() == 1 && document.cards->repeated)
        sections.resize(static_cast<std::size_t>(toAPage(*document.cards)), sections.front());
    return sections;
}

} // namespace

CardPages::CardPages(const sheet::Document& document, const QSizeF& page)
    : grid_(*document.cards), card_(page.width() / grid_.across, page.height() / grid_.down) {
    const double width = (card_.width() - 2 * inner) * unitsPerPoint;
    for (const sheet::Document& section : sectionsOf(document)) {
        cards_.push_back(textDocument(section, width));
        cards_.back()->setTextWidth(width);
    }
}

CardPages::~CardPages() = default;

int CardPages::pages() const {
    return std::max(1, (static_cast<int>(cards_.size()) + toAPage(grid_) - 1) / toAPage(grid_));
}

void CardPages::paint(QPainter& painter, int page) const {
    painter.setPen(QPen(Qt::black, .4, Qt::DashLine));
    const double wide = grid_.across * card_.width(), high = grid_.down * card_.height();
    for (int column = 1; column < grid_.across; ++column)
        painter.drawLine(QPointF(column * card_.width(), 0), QPointF(column * card_.width(), high));
    for (int row = 1; row < grid_.down; ++row)
        painter.drawLine(QPointF(0, row * card_.height()), QPointF(wide, row * card_.height()));
    const int first = page * toAPage(grid_);
    const int last = std::min(static_cast<int>(cards_.size()), first + toAPage(grid_));
    for (int i = first; i < last; ++i) {
        const int place = i - first;
        painter.save();
        painter.translate(place % grid_.across * card_.width() + inner, place / grid_.across * card_.height() + inner);
        paintCard(painter, *cards_[static_cast<std::size_t>(i)]);
        painter.restore();
    }
}

/// What has more to say than there is room for is set smaller: a card is one card.
void CardPages::paintCard(QPainter& painter, const QTextDocument& card) const {
    const double room = (card_.height() - 2 * inner) * unitsPerPoint;
    const double smaller = std::min(1.0, room / std::max(1.0, card.size().height()));
    painter.scale(smaller / unitsPerPoint, smaller / unitsPerPoint);
    QAbstractTextDocumentLayout::PaintContext context;
    context.palette.setColor(QPalette::Text, Qt::black);
    card.documentLayout()->draw(&painter, context);
}

} // namespace staveline::ui
