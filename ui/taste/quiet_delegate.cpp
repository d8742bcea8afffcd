// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/quiet_delegate.h"

#include "ui/widgets/theme.h"

namespace staveline::ui {

QuietDelegate::QuietDelegate(QPalette::ColorRole ink, QObject* parent) : QStyledItemDelegate(parent), ink_(ink) {}

void QuietDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    QStyledItemDelegate::initStyleOption(option, index);
    const QPalette& palette = option->palette;
    const QColor ink = palette.color(ink_), tint = selection(palette);
    option->palette.setColor(QPalette::Text, ink);
    option->palette.setColor(QPalette::HighlightedText, ink);
    option->palette.setColor(QPalette::Highlight, tint);
}

} // namespace staveline::ui
