// SPDX-License-Identifier: GPL-3.0-or-later
// A table to read and to copy from; its letters stay keys of the page.
#pragma once

#include <QTableView>

namespace staveline::ui {

class CopyTable : public QTableView {
    Q_OBJECT
public:
    CopyTable(const QString& name, QAbstractItemModel& model, QWidget* parent = nullptr);

protected:
    void keyPressEvent(QKeyEvent* event) override;
};

} // namespace staveline::ui
