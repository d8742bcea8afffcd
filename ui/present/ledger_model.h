// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel's ledger as a table, newest entry first.
#pragma once

#include "desk/ledger.h"
#include "ui/present/session.h"

#include <QAbstractTableModel>

namespace staveline::ui {

class LedgerModel : public QAbstractTableModel {
    Q_OBJECT
public:
    /// Measured values stand in the entry's sentence: a ledger is read line by line.
    enum Column { day, entry, level, age, columnCount_ };

    explicit LedgerModel(Session& session, QObject* parent = nullptr);
    void show(desk::LedgerView view);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] const desk::LedgerLine* at(int row) const;         ///< null: no such row
    [[nodiscard]] const vessel::LedgerState* stateAt(int row) const; ///< after that entry
    /// -1: not there. Rows are told apart by table and id, since each kind of entry has a table of its own.
    [[nodiscard]] int rowOf(std::int64_t id, const std::string& table) const;
    [[nodiscard]] QStringList findings(int row) const; ///< what does not agree at this entry

private:
    [[nodiscard]] QString cell(const desk::LedgerLine& line, int column) const;
    [[nodiscard]] std::size_t indexOf(int row) const;

    Session& session_;
    desk::LedgerView view_;
};

/// What happened with what was measured then: "72 L drawn for Draw 2: TA 6.4 g/L".
[[nodiscard]] QString entryWords(const desk::LedgerLine& line, const DisplayUnits& units);
/// "1.004 SG, pH 3.31, TA 7.2 g/L" in the units in use.
[[nodiscard]] QString measuredWords(const facts::Measured& measured, const DisplayUnits& units);

} // namespace staveline::ui
