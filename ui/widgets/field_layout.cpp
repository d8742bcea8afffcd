// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/field_layout.h"

#include <QWidget>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr int usualColumns = 3; // wider forms are read across, not down

} // namespace

FieldLayout::FieldLayout(QWidget* parent, int gap, int rowGap) : PartsLayout(parent), gap_(gap), rowGap_(rowGap) {}

void FieldLayout::addField(QWidget* field, bool whole) {
    addChildWidget(field);
    parts_.push_back({new QWidgetItem(field), whole});
}

void FieldLayout::addItem(QLayoutItem* item) {
    parts_.push_back({item, false});
}

/// The middle one of the widths, so that one long field does not thin out all columns.
int FieldLayout::narrowest() const {
    std::vector<int> widths;
    for (const FieldPart& field : parts_)
        if (!field.whole && !field.item->isEmpty())
            widths.push_back(field.item->sizeHint().width());
    if (widths.empty())
        return 1;
    const auto middle = widths.begin() + static_cast<std::ptrdiff_t>(widths.size() / 2);
    std::nth_element(widths.begin(), middle, widths.end());
    return std::max(1, *middle);
}

std::pair<std::vector<QRect>, int> FieldLayout::placed(int width) const {
    const int columns = std::clamp((width + gap_) / (narrowest() + gap_), 1, usualColumns);
    const int step = (width + gap_) / columns;
    std::vector<QRect> boxes;
    int column = 0, top = 0, rowHeight = 0;
    for (const FieldPart& field : parts_) {
        if (field.item->isEmpty()) {
            boxes.emplace_back();
            continue;
        }
        const int needs = (field.item->sizeHint().width() + gap_ + step - 1) / step;
        const int span = field.whole ? columns : std::clamp(needs, 1, columns);
        if (column + span > columns) {
            top += rowHeight + rowGap_;
            column = rowHeight = 0;
        }
        const int wide = span * step - gap_;
        const int high =
            field.item->hasHeightForWidth() ? field.item->heightForWidth(wide) : field.item->sizeHint().height();
        boxes.emplace_back(column * step, top, wide, high);
        column += span;
        rowHeight = std::max(rowHeight, high);
    }
    return {boxes, top + rowHeight};
}

QSize FieldLayout::sizeHint() const {
    const int width = usualColumns * (narrowest() + gap_) - gap_;
    return {width, placed(width).second};
}

int FieldLayout::heightForWidth(int width) const {
    return placed(width).second;
}

void FieldLayout::setGeometry(const QRect& box) {
    QLayout::setGeometry(box);
    const auto boxes = placed(box.width()).first;
    for (std::size_t i = 0; i < parts_.size(); ++i)
        if (!parts_[i].item->isEmpty())
            parts_[i].item->setGeometry(boxes[i].translated(box.topLeft()));
}

} // namespace staveline::ui
