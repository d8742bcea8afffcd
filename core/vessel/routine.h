// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel becomes by habit: the same draw, at the same interval, refilled to the same level, for years. Mean ages
// are weighted by volume and count from the brew day of what went in. Derived from the blending of a well mixed vessel
// (see: fractional blending); nothing here knows facts.
#pragma once

#include "quantity/constants.h"
#include "quantity/day.h"

#include <optional>
#include <vector>

namespace staveline::vessel {

inline constexpr double longestAge = 200 * daysPerYear; ///< no age and no interval is worked out beyond it [d]

struct Routine {
    Litres filled{225};          ///< held after each refill, above 0
    Litres draw{75};             ///< each time, above 0, at most what is held then
    Days interval{240};          ///< above 0
    Share evaporationPerYear{0}; ///< of `filled`; made good by the refill
    Days refillAge{0};           ///< mean age of what goes in
    Days refillAgeSd{0};
};

/// Lost between two draws [L]; all that is held at most.
[[nodiscard]] Litres evaporated(const Routine& routine);
/// What each refill is of the volume after it: (drawn + evaporated) / filled, at most 1.
[[nodiscard]] Share refillShare(const Routine& routine);
[[nodiscard]] Litres drawnPerYear(const Routine& routine);

struct SettledAge {
    Days beforeDraw{0}, afterRefill{0};
    Days sd{0}; ///< spread of the ages within the vessel, the same before and after
};
/// What it comes to after many draws.
[[nodiscard]] SettledAge settledAge(const Routine& routine);
/// Draws until the age is within `rest` (0..1) of the way to where it settles, from wherever it starts.
[[nodiscard]] int drawsToSettle(const Routine& routine, Share rest = {0.05});

/// The vessel at one draw, before and after.
struct AgePoint {
    int draw = 0;   ///< 1 is the first
    Days since{0};  ///< the start
    Days before{0}; ///< mean age as it is drawn
    Days after{0};  ///< after the refill
    Days sd{0};     ///< spread as it is drawn
    Share first{0}; ///< of what was in the vessel at the start, after the refill
};
/// A vessel as the habit begins.
struct Beginning {
    Days age{0}, sd{0};              ///< of what is in it
    bool drawn = false;              ///< it is refilled first, at once
    std::optional<Days> until{};     ///< to the first draw of one that is not; none: as to the others
    std::optional<Share> refilled{}; ///< of the vessel by its first refill, 0..1; none: as by the others
};
[[nodiscard]] std::vector<AgePoint> growth(const Routine& routine, int draws, const Beginning& from);

/// The same when it is drawn each time it is `wanted` old, above the refill's age, and where it is older `leastGap`
/// after the draw before, at first at once.
[[nodiscard]] std::vector<AgePoint> growthAtAge(const Routine& routine, Days wanted, int draws, const Beginning& from,
                                                Days leastGap = {0});
/// The draw from which on all are within `near` of `at`; none: not the last of them is.
[[nodiscard]] std::optional<int> settledFrom(const std::vector<AgePoint>& points, Days at, Days near);

/// What keeps the age before each draw at `wanted` in the long run; none: no draw of a full vessel does.
[[nodiscard]] std::optional<Days> intervalFor(const Routine& routine, Days wanted);
[[nodiscard]] std::optional<Litres> drawFor(const Routine& routine, Days wanted);

/// Vessels of one size in a row, one draw from the oldest, each topped from the next younger, the youngest refilled.
/// All start full of fresh beer; the mean age in the oldest before the n-th draw.
[[nodiscard]] Days ageInRow(const Routine& routine, int vessels, int draw);
/// And after many draws.
[[nodiscard]] SettledAge settledAgeInRow(const Routine& routine, int vessels);
/// What settles the oldest at `wanted`; none: no interval does.
[[nodiscard]] std::optional<Days> intervalForRow(const Routine& routine, int vessels, Days wanted);
/// Draws until the age in the oldest is within `rest` (0..1) of the way to where it settles; at most `most`.
[[nodiscard]] int drawsToSettleInRow(const Routine& routine, int vessels, Share rest = {0.05}, int most = 1000);
/// What goes into the youngest each time: the draw, and what evaporates from all of them.
[[nodiscard]] Litres refillOfRow(const Routine& routine, int vessels);

/// How much of a vessel to replace (share of the volume after) by beer of `refillAge`, so that its mean age falls from
/// `now` to `wanted`; none: it is younger already, or the refill is not young enough.
[[nodiscard]] std::optional<Share> shareToReach(Days now, Days wanted, Days refillAge);

} // namespace staveline::vessel
