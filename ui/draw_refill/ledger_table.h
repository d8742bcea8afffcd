// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger as a readable table; notes and findings stand under the entry they belong to.
#pragma once

#include "ui/present/ledger_model.h"

#include <QStyledItemDelegate>
#include <QTableView>

namespace staveline::ui {

class LedgerDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    LedgerDelegate(LedgerModel& model, QObject* parent);
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    void paintEntry(QPainter& painter, const QRect& box, int row, const QStyleOptionViewItem& option) const;
    LedgerModel& model_;
};

class LedgerTable : public QTableView {
    Q_OBJECT
public:
    explicit LedgerTable(LedgerModel& model, QWidget* parent = nullptr);
    /// Gives each row the height its words need; done when the table is next seen, once for each width.
    void fit();

Q_SIGNALS:
    void amendAsked();
    void removeAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;

private:
    void fitRows();
    int fittedWidth_ = -1; ///< of the entry column; -1: the words are new
};

} // namespace staveline::ui
