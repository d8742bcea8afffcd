// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/wrap_layout.h"

#include <algorithm>
#include <utility>

namespace staveline::ui {

WrapLayout::WrapLayout(QWidget* parent, int gap) : PartsLayout(parent), gap_(gap) {}

void WrapLayout::addStretch() {
    right_ = true;
}

void WrapLayout::addSpacing(int width) {
    nextSpace_ = width;
}

void WrapLayout::addItem(QLayoutItem* item) {
    parts_.push_back({item, gap_ + std::exchange(nextSpace_, 0), right_});
}

QSize WrapLayout::sizeHint() const {
    QSize size(0, 0);
    for (const WrapPart& part : parts_) {
        if (part.item->isEmpty())
            continue;
        const QSize wants = part.item->sizeHint();
        size = {size.width() + wants.width() + (size.width() > 0 ? part.before : 0),
                std::max(size.height(), wants.height())};
    }
    return size;
}

std::vector<WrapLayout::Row> WrapLayout::rowsIn(int width) const {
    std::vector<Row> rows;
    for (const WrapPart& part : parts_) {
        if (part.item->isEmpty())
            continue;
        const QSize wants = part.item->sizeHint();
        const bool fits = !rows.empty() && rows.back().width + part.before + wants.width() <= width;
        if (!fits)
            rows.emplace_back();
        Row& row = rows.back();
        row.width += wants.width() + (row.parts.empty() ? 0 : part.before);
        row.height = std::max(row.height, wants.height());
        row.parts.push_back(&part);
    }
    return rows;
}

int WrapLayout::heightForWidth(int width) const {
    const QMargins margins = contentsMargins();
    int height = margins.top() + margins.bottom();
    const auto rows = rowsIn(width - margins.left() - margins.right());
    for (const Row& row : rows)
        height += row.height + (&row == &rows.front() ? 0 : gap_);
    return height;
}

/// What belongs to the right end is pushed there by the room that is left.
void WrapLayout::place(const Row& row, const QRect& box) {
    int x = box.left(), room = std::max(0, box.width() - row.width);
    for (const WrapPart* part : row.parts) {
        if (part->right)
            x += std::exchange(room, 0);
        if (part != row.parts.front())
            x += part->before;
        QSize size = part->item->sizeHint();
        size.setWidth(std::min(size.width(), std::max(box.width(), part->item->minimumSize().width())));
        part->item->setGeometry(QRect(QPoint(x, box.top() + (row.height - size.height()) / 2), size));
        x += size.width();
    }
}

void WrapLayout::setGeometry(const QRect& box) {
    QLayout::setGeometry(box);
    QRect rest = box.marginsRemoved(contentsMargins());
    for (const Row& row : rowsIn(rest.width())) {
        place(row, rest);
        rest.setTop(rest.top() + row.height + gap_);
    }
}

} // namespace staveline::ui
