// SPDX-License-Identifier: GPL-3.0-or-later
// Calendar and progress of the present cycle: a line of milestones from the last refill to the draw after next.
#pragma once

#include "vessel/schedule.h"

#include <QAbstractButton>

#include <optional>

namespace staveline::ui {

/// What began the cycle is a fact and opens nothing; the others open the work that belongs to them.
enum class MilestoneKind {
    takenOver,
    filled, ///< for the first time
    refilled,
    taste,
    brew,
    draw,
    fill, ///< an empty vessel
    nextTaste,
    nextDraw,
    firstTaste,
    firstDraw
};
[[nodiscard]] constexpr bool isStart(MilestoneKind kind) {
    return kind <= MilestoneKind::refilled;
}

struct Milestone {
    MilestoneKind kind = MilestoneKind::taste;
    Day on{};                  ///< planned, or done
    std::optional<Day> due{};  ///< by the interval alone; before `on` when it is overdue
    std::optional<Days> age{}; ///< of the beer on that day, where it is drawn at one
    bool operator==(const Milestone&) const = default;
};
/// In order of time; the start is the last refill or the takeover. `toFill`: those of an empty vessel.
[[nodiscard]] std::vector<Milestone> milestonesOf(const vessel::Schedule& dates, const vessel::LedgerState& now,
                                                  bool toFill = false);
[[nodiscard]] QString wordOf(MilestoneKind kind);

/// Places along 0..`length`, in proportion to time but at least `gap` apart; the ends stay where they are when there
/// is room.
[[nodiscard]] std::vector<double> spread(const std::vector<double>& wanted, double gap, double length);

/// A milestone is a button of its own: reached by Tab and arrows, named with its day.
class MilestoneButton : public QAbstractButton {
    Q_OBJECT
public:
    MilestoneButton(const Milestone& milestone, Day today, bool current, QWidget* parent);
    [[nodiscard]] const Milestone& milestone() const { return milestone_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QPointF centre() const; ///< of the milestone, in own coordinates

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QString when() const;
    [[nodiscard]] bool overdue() const;
    void paintMilestone(QPainter& painter, const QRectF& box) const;

    Milestone milestone_;
    Day today_;
    bool current_;
};

class CycleTimeline : public QWidget {
    Q_OBJECT
public:
    explicit CycleTimeline(QWidget* parent = nullptr);
    /// `current`: the milestone that is due now, shown with its state.
    void setMilestones(const std::vector<Milestone>& milestones, Day today, std::optional<MilestoneKind> current);
    [[nodiscard]] const std::vector<MilestoneButton*>& buttons() const { return buttons_; }
    [[nodiscard]] QPointF todayAt() const; ///< the mark of today on its line
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] int heightForWidth(int width) const override; ///< a narrow one goes on in a second row

Q_SIGNALS:
    void opened(staveline::ui::MilestoneKind kind);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void place(); ///< buttons along the line
    void openFocused();
    void moveFocus(int by);
    void paintRow(QPainter& painter, std::size_t row, const QPointF& now) const;
    [[nodiscard]] double lineY(std::size_t row) const;
    [[nodiscard]] int rowHeight() const;
    [[nodiscard]] int widest() const;
    [[nodiscard]] int rowsIn(int width) const;

    std::vector<MilestoneButton*> buttons_;
    std::vector<double> centres_;
    std::size_t perRow_ = 1;
    Day today_{};
};

} // namespace staveline::ui
