// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of a stack beside the plots: heads with their legend, the timeline with its marks, and all on one sheet.
#pragma once

#include "ui/chart/plot.h"

#include <QStringList>

namespace staveline::ui {

[[nodiscard]] double headHeight(const ChartStyle& style);
[[nodiscard]] double timelineHeight(const ChartStyle& style);
constexpr double plotLines = 5.6; ///< height of a plot when there is no room to spare, in lines

/// Title, then each series with its sign and, at a cursor, its value. What does not fit goes without its day, then
/// without its value.
struct Head {
    bool open = true;
    bool arrow = true; ///< the sign that it folds; papers have none
    std::optional<Day> cursor;
};
void paintHead(QPainter& painter, const QRectF& box, const ChartPanel& panel, const Head& head,
               const ChartStyle& style);
/// What the head of a panel shows for each series, in as many words as fit into `room`.
[[nodiscard]] QStringList legendWords(const ChartPanel& panel, std::optional<Day> cursor, double room,
                                      const ChartStyle& style);

/// Dates, marks of what left and what went in, today and the cursor.
void paintTimeline(QPainter& painter, const QRectF& box, const ChartData& chartData, const TimeSpan& span,
                   std::optional<Day> cursor, const ChartStyle& style);

/// Everything on one sheet, top to bottom, without panels that say nothing; the height follows.
[[nodiscard]] double sheetHeight(const ChartData& chartData, const ChartStyle& style);
void paintSheet(QPainter& painter, double width, const ChartData& chartData, const TimeSpan& span,
                const ChartStyle& style);

} // namespace staveline::ui
