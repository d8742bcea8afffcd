// SPDX-License-Identifier: GPL-3.0-or-later
// Which vessels the table of all shows, and in which order.
#pragma once

#include "ui/cellar/overview_model.h"

#include <QSortFilterProxyModel>

namespace staveline::ui {

class OverviewFilter : public QSortFilterProxyModel {
    Q_OBJECT
public:
    enum class Which { all, due, faulty, offTarget };

    explicit OverviewFilter(OverviewModel& model, QObject* parent = nullptr);
    void setWhich(Which which);
    void setWords(const QString& words); ///< each of them is in the name or in what is due

protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

private:
    OverviewModel& model_;
    Which which_ = Which::all;
    QStringList words_;
};

} // namespace staveline::ui
