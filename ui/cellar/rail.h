// SPDX-License-Identifier: GPL-3.0-or-later
// The rail is the cellar: every vessel drawn to its shape and fill, with one line on what is due or the verdict.
#pragma once

#include "ui/present/cellar_model.h"

#include <QListView>
#include <QStyledItemDelegate>

namespace staveline::ui {

/// Draws one vessel of the rail: picture, name, state.
class RailDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    RailDelegate(CellarModel& model, QObject* parent);
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    void paintWords(QPainter& painter, const QRectF& box, const desk::VesselSummary& vessel,
                    const QStyleOptionViewItem& option) const;
    CellarModel& model_;
};

class Rail : public QListView {
    Q_OBJECT
public:
    explicit Rail(CellarModel& model, QWidget* parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override;

Q_SIGNALS:
    /// By mouse or arrow key: the vessel in hand follows at once.
    void chosen(const QString& vessel);

private:
    CellarModel& model_;
};

} // namespace staveline::ui
