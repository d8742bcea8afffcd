// SPDX-License-Identifier: GPL-3.0-or-later
// The year ahead of one vessel as a lane of marks, each with the letter of its work: to paint, and to find what is
// under the mouse.
#pragma once

#include "desk/moved_work.h"

#include <QPalette>
#include <QRectF>
#include <QString>

#include <optional>
#include <vector>

class QPainter;

namespace staveline::ui {

struct YearMark {
    vessel::DueKind kind = vessel::DueKind::taste;
    Day on{};
    bool movable = false;
    bool set = false;  ///< the brewer's own day
    bool late = false; ///< it was due before today
    bool operator==(const YearMark&) const = default;
};
/// What is to come within a year, by day.
[[nodiscard]] std::vector<YearMark> marksOf(const desk::VesselSummary& vessel, Day today);
/// "taste", "brew", "draw", "fill"
[[nodiscard]] QString workWord(vessel::DueKind kind);

/// Days along a lane: some that are past, then a year.
class YearScale {
public:
    YearScale(Day today, const QRectF& lane) : from_(today - std::chrono::days{past}), lane_(lane) {}
    [[nodiscard]] double x(Day day) const;
    [[nodiscard]] Day day(double x) const;
    [[nodiscard]] Day from() const { return from_; }
    [[nodiscard]] Day to() const { return from_ + std::chrono::days{past + ahead}; }
    /// First days of months within.
    [[nodiscard]] std::vector<Day> months() const;

    static constexpr int past = 14, ahead = 365;

private:
    Day from_;
    QRectF lane_;
};

/// `moved`: the mark in hand, where it would go.
void paintLane(QPainter& painter, const QRectF& lane, const std::vector<YearMark>& marks, Day today,
               const QPalette& palette, double line, const std::optional<YearMark>& moved = {});
/// Month by month, over the lanes.
void paintMonths(QPainter& painter, const QRectF& lane, Day today, const QPalette& palette);
/// The mark at `x`, of those in the way the last painted.
[[nodiscard]] const YearMark* markAt(const std::vector<YearMark>& marks, Day today, const QRectF& lane, double x,
                                     double line);

} // namespace staveline::ui
