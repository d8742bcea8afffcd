// SPDX-License-Identifier: GPL-3.0-or-later
// What charts are made of: panels one above the other on one time axis. Plain values; nothing here draws.
#pragma once

#include "quantity/day.h"
#include "ui/widgets/glyph.h"

#include <QString>

#include <optional>
#include <vector>

namespace staveline::ui {

enum class SeriesKind {
    points,  ///< a shape each, with its error bar
    line,    ///< straight from point to point; two points on one day are a jump (sawtooth)
    step,    ///< holds until the next point
    band,    ///< low to high, holds until the next point: a target window
    promises ///< an open shape within its 80 % band
};
enum class Shape { none, disc, square, diamond, up, down };

struct ChartPoint {
    Day on{};
    double value = 0;
    double low = 0, high = 0;   ///< of the error bar or band; both `value`: none
    std::optional<double> told; ///< what words say instead of the value: litres drawn, at the level they left
};
[[nodiscard]] inline ChartPoint plainPoint(Day on, double value) {
    return {on, value, value, value, {}};
}

struct ChartSeries {
    QString name; ///< as in "tasted 6.4": follows the panel's title
    SeriesKind kind = SeriesKind::points;
    Shape shape = Shape::none;
    Tone tone = Tone::calm;
    std::vector<ChartPoint> points; ///< oldest first
    bool joined = false;            ///< points: a thin line from one to the next
    bool spoken = true;             ///< in the sentence at the cursor; the legend has it all the same
};

struct ChartPanel {
    QString id; ///< stays when the words change
    QString title, unit;
    int decimals = 1;
    std::vector<ChartSeries> series;
    std::optional<double> low, high; ///< of the value axis; none: what the points need
    double least = 0;                ///< the axis covers at least this much: what is too little to matter looks flat
    QString nothing;                 ///< what to say while there is no point

    [[nodiscard]] bool empty() const;
};

/// Something that happened; a mark along the bottom, in its row, and a stop for the cursor.
struct ChartEvent {
    enum class Row { out, in, look }; ///< liquid that leaves, that goes in; the vessel was looked at or decided on
    Day on{};
    Row row = Row::look;
    std::optional<Glyph> glyph; ///< none: a tick
    bool change = false;        ///< a thin line through all panels
    QString words;
    QString kind = {}; ///< of the mark, for its legend: "refill"
};

struct TimeSpan {
    Day from{}, to{};
    [[nodiscard]] int days() const { return daysBetween(from, to); }
    bool operator==(const TimeSpan&) const = default;
};

struct ChartData {
    QString subject; ///< "Plover"
    std::vector<ChartPanel> panels;
    std::vector<ChartEvent> events; ///< oldest first
    TimeSpan whole;
    Day today{};

    /// The days the cursor stops at, oldest first, each once.
    [[nodiscard]] std::vector<Day> stops() const;
};

} // namespace staveline::ui
