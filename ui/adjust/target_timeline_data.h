// SPDX-License-Identifier: GPL-3.0-or-later
// What a target timeline shows of one dimension: what was tasted, what is known today, and where the next draws go.
#pragma once

#include "advice/advise.h"
#include "advice/board.h"
#include "desk/history.h"

#include <QString>

namespace staveline::ui {

struct TimelinePoint {
    Day on{};
    advice::Band band;
};
/// Scores expected from one setting.
struct ForecastBands {
    advice::Band thisDraw, next;
    std::optional<advice::Band> settled; ///< none: not worked out yet
};
struct TargetTimelineData {
    Dimension dimension = Dimension::acidity;
    tasting::TargetWindow window;
    std::vector<TimelinePoint> tasted; ///< the last sittings, oldest first
    TimelinePoint today;
    Day thisDraw{}, nextDraw{};
    std::optional<ForecastBands> alone, tried; ///< tried: the selected proposal or the try board
    QString triedName;                         ///< "Proposal 1", "Your own setting"
};

/// At most `most` sittings of the history that scored this dimension.
[[nodiscard]] std::vector<TimelinePoint> lastTasted(const desk::HistoryView& history, Dimension dimension,
                                                    std::size_t most = 5);
[[nodiscard]] PerDimension<ForecastBands> forecastBandsOf(const advice::Proposal& proposal, bool settled);
[[nodiscard]] PerDimension<ForecastBands> forecastBandsOf(const advice::Trial& trial);
/// The whole timeline in words.
[[nodiscard]] QString sentenceOf(const TargetTimelineData& look);
/// The lowest and highest score to show, whole numbers.
struct ScoreSpan {
    double low = 0, high = 10;
};
[[nodiscard]] ScoreSpan spanOf(const TargetTimelineData& look);

/// The three timelines as one table: a heading, then a cell for each dimension.
struct TimelineRow {
    QString what;
    PerDimension<QString> cells;
};
[[nodiscard]] std::vector<TimelineRow> tableOf(const PerDimension<TargetTimelineData>& timelines);

} // namespace staveline::ui
