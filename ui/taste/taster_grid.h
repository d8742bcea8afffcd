// SPDX-License-Identifier: GPL-3.0-or-later
// Everybody's scores side by side: a line of the sheet a row, the two glasses of a taster two columns, then what the
// table comes to: the mean, and how far the highest taster is above the lowest. Read at the pace it is looked at.
#pragma once

#include "ui/taste/draft.h"

#include <QAbstractTableModel>
#include <QTableView>

#include <unordered_map>

namespace staveline::ui {

class TasterModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;
    void showDraft(const SittingDraft& draft, bool all);
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] const tasting::Attribute* attribute(int row) const; ///< null: no such row
    [[nodiscard]] int tasterAt(int column) const;                     ///< -1: a column of the whole table
    [[nodiscard]] int columnOf(int taster) const { return 2 * taster; }

private:
    [[nodiscard]] const tasting::Score* scoreOf(const tasting::Attribute& line, int taster) const;
    [[nodiscard]] QString cell(const tasting::Attribute& line, int column) const;
    [[nodiscard]] QString wholeTable(const tasting::Attribute& line, bool mean) const;

    std::vector<const tasting::Attribute*> lines_;
    std::vector<std::string> tasters_;
    std::vector<tasting::Score> scores_;
    std::unordered_map<std::string, std::size_t> where_; ///< code and taster -> index into scores_
};

class TasterGrid : public QTableView {
    Q_OBJECT
public:
    explicit TasterGrid(QWidget* parent = nullptr);
    void showDraft(const SittingDraft& draft, bool all);
    [[nodiscard]] const TasterModel& scores() const { return *model_; }

Q_SIGNALS:
    /// A cell of the table was chosen, to score it.
    void opened(int taster, const QString& code);

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void open(const QModelIndex& index);
    TasterModel* model_;
};

} // namespace staveline::ui
