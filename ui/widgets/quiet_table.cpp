// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/quiet_table.h"

#include "ui/widgets/table_copy.h"

#include <QHeaderView>
#include <QTableView>

namespace staveline::ui {

void makeQuiet(QTableView& table, const QString& name) {
    table.setAccessibleName(name);
    table.setFrameShape(QFrame::NoFrame);
    table.setShowGrid(false);
    table.setEditTriggers(QAbstractItemView::NoEditTriggers);
    table.setTabKeyNavigation(false);
    table.verticalHeader()->setVisible(false);
    table.horizontalHeader()->setHighlightSections(false);
    new TableCopy(table);
}

} // namespace staveline::ui
