// SPDX-License-Identifier: GPL-3.0-or-later
// What a window strip shows of one dimension: what was tasted, what is known today, and where the next draws go.
#pragma once

#include "advice/advise.h"
#include "advice/board.h"
#include "desk/history.h"

#include <QString>

namespace staveline::ui {

struct StripPoint {
    Day on{};
    Band band;
};
/// Scores expected from one setting.
struct StripCourse {
    Band thisDraw, next;
    std::optional<Band> settled; ///< none: not worked out yet
};
struct StripLook {
    Dimension dimension = Dimension::acidity;
    TargetWindow window;
    std::vector<StripPoint> tasted; ///< the last sittings, oldest first
    StripPoint today;
    Day thisDraw{}, nextDraw{};
    std::optional<StripCourse> alone, tried; ///< tried: the selected proposal or the try board
    QString triedName;                       ///< "Proposal 1", "What is tried"
};

/// At most `most` sittings of the history that scored this dimension.
[[nodiscard]] std::vector<StripPoint> lastTasted(const HistoryView& history, Dimension dimension, std::size_t most = 5);
[[nodiscard]] PerDimension<StripCourse> courseOf(const Proposal& proposal, bool settled);
[[nodiscard]] PerDimension<StripCourse> courseOf(const Trial& trial);
/// The whole strip in words.
[[nodiscard]] QString sentenceOf(const StripLook& look);
/// The lowest and highest score to show, whole numbers.
struct ScoreSpan {
    double low = 0, high = 10;
};
[[nodiscard]] ScoreSpan spanOf(const StripLook& look);

/// The three strips as one table: a heading, then a cell for each dimension.
struct StripRow {
    QString what;
    PerDimension<QString> cells;
};
[[nodiscard]] std::vector<StripRow> tableOf(const PerDimension<StripLook>& strips);

} // namespace staveline::ui
