// SPDX-License-Identifier: GPL-3.0-or-later
// Cells whose selection is a tint and whose keyboard place is a ring.
#pragma once

#include <QStyledItemDelegate>

namespace staveline::ui {

class QuietDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit QuietDelegate(QPalette::ColorRole ink, QObject* parent = nullptr);

protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;

private:
    QPalette::ColorRole ink_;
};

} // namespace staveline::ui
