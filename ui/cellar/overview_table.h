// SPDX-License-Identifier: GPL-3.0-or-later
// The table of all vessels, with the year ahead as its last column: marks in it can be taken along by the mouse.
#pragma once

#include "ui/cellar/overview_model.h"
#include "ui/cellar/year_lane.h"

#include <QHeaderView>
#include <QStyledItemDelegate>
#include <QTableView>

class QSortFilterProxyModel;

namespace staveline::ui {

class OverviewTable;

class OverviewDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit OverviewDelegate(OverviewTable& table);
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    OverviewTable& table_;
};

/// Months stand over the year.
class OverviewHeader : public QHeaderView {
    Q_OBJECT
public:
    OverviewHeader(Day today, QWidget* parent);
    void setToday(Day today) { today_ = today; }

protected:
    void paintSection(QPainter* painter, const QRect& box, int column) const override;

private:
    Day today_;
};

class OverviewTable : public QTableView {
    Q_OBJECT
public:
    /// `shown`: the model's rows, filtered and sorted.
    OverviewTable(OverviewModel& model, QSortFilterProxyModel& shown, QWidget* parent = nullptr);
    void showYear(bool year); ///< the year alone beside the vessels' names, or the table
    [[nodiscard]] bool isYear() const { return year_; }
    /// Null: no row in hand, or not read yet.
    [[nodiscard]] const desk::VesselSummary* inHand() const;
    [[nodiscard]] const desk::VesselSummary* at(const QModelIndex& shown) const;
    [[nodiscard]] Day today() const;
    /// While a mark of that row is taken along.
    [[nodiscard]] std::optional<YearMark> moved(const QModelIndex& shown) const;
    [[nodiscard]] QRectF laneOf(const QModelIndex& shown) const;

Q_SIGNALS:
    void handChanged();
    void openAsked(); ///< the work of the row in hand
    void moveAsked(const QString& vessel, staveline::vessel::DueKind work, staveline::Day to);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Drag {
        QPersistentModelIndex row;
        YearMark from, now;
        double grip = 0; ///< of the mouse, right of the day of the mark
        int pressedAt = 0;
        bool begun = false; ///< moved far enough to be meant
    };
    void endDrag();
    void fitColumns();

    OverviewModel& model_;
    QSortFilterProxyModel& shown_;
    OverviewHeader* header_;
    std::optional<Drag> drag_;
    bool year_ = false;
};

} // namespace staveline::ui
