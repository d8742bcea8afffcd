// SPDX-License-Identifier: GPL-3.0-or-later
// What every table of the window can do: Ctrl+C copies what is chosen, its menu that and the whole table. Columns are
// apart by tabs, as spreadsheets take them, with their headings when there is more than one cell.
#pragma once

#include <QObject>

class QTableView;

namespace staveline::ui {

class TableCopy : public QObject {
    Q_OBJECT
public:
    /// Lives as long as the table, whose menu holds its actions from then on.
    explicit TableCopy(QTableView& table);
    void copyChosen() const;
    void copyAll() const;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QTableView& table_;
};

} // namespace staveline::ui
