// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/copy_table.h"

#include "ui/widgets/quiet_table.h"
#include "ui/widgets/theme.h"

#include <QHeaderView>
#include <QKeyEvent>

namespace staveline::ui {
namespace {

bool isLetter(const QKeyEvent& event) {
    const bool plain = !(event.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
    return plain && !event.text().isEmpty() && event.text().front().isLetter();
}

} // namespace

CopyTable::CopyTable(const QString& name, QAbstractItemModel& model, QWidget* parent) : QTableView(parent) {
    setModel(&model);
    setAlternatingRowColors(true);
    makeQuiet(*this, name);
    setSelectionMode(QAbstractItemView::ContiguousSelection);
    setWordWrap(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->setMinimumSectionSize(1);
    verticalHeader()->setDefaultSectionSize(lines(*this, 1.6));
    horizontalHeader()->setSectionsClickable(false);
    horizontalHeader()->setResizeContentsPrecision(64); // rows looked at for the width of a column
}

void CopyTable::keyPressEvent(QKeyEvent* event) {
    if (isLetter(*event))
        event->ignore(); // no searching as one types: the letter is a key of the page
    else
        QTableView::keyPressEvent(event);
}

} // namespace staveline::ui
