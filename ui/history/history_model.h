// SPDX-License-Identifier: GPL-3.0-or-later
// The history as tables: everything by day, and the promises with how they came out.
#pragma once

#include "desk/history.h"
#include "ui/history/columns.h"
#include "ui/present/session.h"

#include <QAbstractTableModel>

namespace staveline::ui {

class HistoryModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;
    void show(const std::vector<desk::HistoryRow>& rows, const DisplayUnits& units);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] const desk::HistoryRow* at(int row) const; ///< null: no such row
    [[nodiscard]] bool isEmptyColumn(int column) const;      ///< nothing in any row
    [[nodiscard]] int rowOf(Day day) const;                  ///< the first on or after it; else the last; -1: none

private:
    std::vector<desk::HistoryRow> rows_;
    std::vector<HistoryColumn> columns_;
};

/// Newest promise first; a column each for what was told, tasted and whether it was inside.
class PromiseModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;
    void show(const std::vector<desk::PromiseOutcome>& promises);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString cell(const desk::PromiseOutcome& promise, int column) const;
    std::vector<desk::PromiseOutcome> promises_;
};

} // namespace staveline::ui
