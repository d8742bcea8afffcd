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
constexpr int across = 2, down = 2, toAPage = across * down;

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
        section.blocks.emplace_back(sheet::Paragraph{section.footer});
    return sections;
}

} // namespace

CardPages::CardPages(const sheet::Document& document, const QSizeF& page)
    : card_(page.width() / across, page.height() / down) {
    const double width = (card_.width() - 2 * inner) * unitsPerPoint;
    for (const sheet::Document& section : sectionsOf(document)) {
        cards_.push_back(textDocument(section, width));
        cards_.back()->setTextWidth(width);
    }
}

CardPages::~CardPages() = default;

int CardPages::pages() const {
    return std::max(1, (static_cast<int>(cards_.size()) + toAPage - 1) / toAPage);
}

void CardPages::paint(QPainter& painter, int page) const {
    painter.setPen(QPen(Qt::black, .4, Qt::DashLine));
    painter.drawLine(QPointF(card_.width(), 0), QPointF(card_.width(), down * card_.height()));
    painter.drawLine(QPointF(0, card_.height()), QPointF(across * card_.width(), card_.height()));
    const int last = std::min(static_cast<int>(cards_.size()), (page + 1) * toAPage);
    for (int i = page * toAPage; i < last; ++i) {
        const int place = i - page * toAPage;
        painter.save();
        painter.translate(place % across * card_.width() + inner, place / across * card_.height() + inner);
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
