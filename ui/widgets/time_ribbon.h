// SPDX-License-Identifier: GPL-3.0-or-later
// Calendar and progress of the present cycle: a line of knots from the last refill to the draw after next.
#pragma once

#include "vessel/schedule.h"

#include <QAbstractButton>

#include <optional>

namespace staveline::ui {

/// The start is a fact and opens nothing; the others open the work that belongs to them.
enum class KnotKind { start, taste, brew, draw, nextTaste, nextDraw };

struct Knot {
    KnotKind kind = KnotKind::taste;
    Day on{};                 ///< planned, or done
    std::optional<Day> due{}; ///< by the interval alone; before `on` when it is overdue
    bool operator==(const Knot&) const = default;
};
/// In order of time; the start is the last refill or the opening.
[[nodiscard]] std::vector<Knot> knotsOf(const Schedule& dates, const LedgerState& now);
[[nodiscard]] QString wordOf(KnotKind kind);

/// Places along 0..`length`, in proportion to time but at least `gap` apart; the ends stay where they are when there
/// is room.
[[nodiscard]] std::vector<double> spread(const std::vector<double>& wanted, double gap, double length);

/// A knot is a button of its own: reached by Tab and arrows, named with its day.
class KnotButton : public QAbstractButton {
    Q_OBJECT
public:
    KnotButton(const Knot& knot, Day today, bool current, QWidget* parent);
    [[nodiscard]] const Knot& knot() const { return knot_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QPointF centre() const; ///< of the knot, in own coordinates

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QString when() const;
    [[nodiscard]] bool overdue() const;
    void paintKnot(QPainter& painter, const QRectF& box) const;

    Knot knot_;
    Day today_;
    bool current_;
};

class TimeRibbon : public QWidget {
    Q_OBJECT
public:
    explicit TimeRibbon(QWidget* parent = nullptr);
    /// `current`: the knot that is due now, shown with its state.
    void setKnots(const std::vector<Knot>& knots, Day today, std::optional<KnotKind> current);
    [[nodiscard]] const std::vector<KnotButton*>& buttons() const { return buttons_; }
    [[nodiscard]] double todayAt() const; ///< x of the mark of today
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void opened(staveline::ui::KnotKind kind);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void place(); ///< buttons along the line
    void openFocused();
    void moveFocus(int by);
    [[nodiscard]] double lineY() const;

    std::vector<KnotButton*> buttons_;
    std::vector<double> centres_;
    Day today_{};
};

} // namespace staveline::ui
