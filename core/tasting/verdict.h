// SPDX-License-Identifier: GPL-3.0-or-later
// What an estimate says by itself: a fault first, a date to wait for, never tasted, on target, or open. What is to be
// done about an open one only a plan can tell.
#pragma once

#include "quantity/constants.h"
#include "tasting/sitting.h"

namespace staveline::tasting {

struct Estimate {
    double mean = 0;
    double sd = 1;
    bool operator==(const Estimate&) const = default;
};

inline constexpr double z80 = 1.2815515655446004; ///< half-width of the 80 % interval in sd
// Rows "tasting." of resources/data/rules.csv.
inline constexpr double bandPerError =
    constants::tasting::bandPerError; ///< an error above band / 1.3 cannot resolve the band
inline constexpr int waitWithoutModel = static_cast<int>(constants::tasting::waitWithoutModel); ///< [days]

struct TargetWindow {
    double wanted = 5;
    double band = 1; ///< tolerance to each side, 0.25..4
    bool operator==(const TargetWindow&) const = default;
};
struct Target {
    PerDimension<TargetWindow> windows{{TargetWindow{5, 1}, TargetWindow{4, 1}, TargetWindow{4, 1}}};
    Ibu bitternessCeiling{15};
    Plato gravityLow{10.5}, gravityHigh{14.0};
    PercentVol alcoholLow{4.5}, alcoholHigh{8.0};
    std::vector<FaultMark> wantedTraits; ///< a fault at or below this severity is wanted here
    std::string setBy;                   ///< the taster who set it; empty: others
    bool operator==(const Target&) const = default;
};

enum class VerdictKind { faultFirst, waitUntil, neverTasted, hold, open, move, leaveAlone, tasteAgain };

struct Verdict {
    VerdictKind kind = VerdictKind::open;
    double gap = 0; ///< wanted - estimate; positive: too little
    double sd = 1;
    bool up = false;           ///< open, leaveAlone, tasteAgain: the score is too low; move: the plan raises it
    std::optional<Day> until;  ///< waitUntil, faultFirst where waiting is the cure
    bool gravityFalls = false; ///< waitUntil: it waits for that, not for what the model says is to come
    std::string fault;         ///< faultFirst
    bool firstOfCycle = false; ///< tasteAgain: nobody tasted in this cycle
    Message reason;
};

/// The fault that stands in the way: severity 2 or 3, not a wanted trait, worst first, those that block advice before
/// those a recipe can cure. Put its id and rule into the context.
[[nodiscard]] std::optional<FaultMark> worstUnwantedFault(const SittingResult& result, const Target& target,
                                                          const TastingSheet& sheet);

/// What is known beside the numbers.
/// When a fault found on that day is to be looked at again; none where waiting is no cure.
[[nodiscard]] std::optional<Day> clearsOn(const FaultRule& rule, Day found);
/// What it is, what to do, and when to taste again.
[[nodiscard]] Message faultWords(const FaultRule& rule, std::optional<Day> until);

/// A gap beyond the band and beyond what the reading can be off (80 %): only then is it said to be too much or too
/// little.
[[nodiscard]] bool surelyOutside(double gap, double sd, const TargetWindow& window);

struct VerdictContext {
    Day today{};
    std::optional<std::string> fault;     ///< the worst unwanted fault of severity 2 or 3
    const FaultRule* faultRule = nullptr; ///< its rule; none: a fault the sheet does not know
    bool gravityFalling = false;          ///< more than 0.001 in 30 days
    std::optional<Day> modelArrives;      ///< when the model brings the score to the window by itself (moves > 0.5)
    bool tasted = true;                   ///< false: nothing was ever seen of this dimension that counts
    bool contradicted = false;            ///< because what was seen of it contradicts itself
    Day faultOn{};                        ///< when the fault was tasted
};
/// How many more tasters, each at both temperatures, bring the error below band / 1.3; at least 1.
[[nodiscard]] int tastersNeeded(const Estimate& estimate, double band, const TastingNoise& noise = {});
/// The score is inside the band for sure: |gap| + 1.28 sd is at most the band.
[[nodiscard]] bool onTarget(const Estimate& estimate, const TargetWindow& window);
/// A text with the numbers of a verdict: {by}, {half}, {score}, {wanted}, {band}.
[[nodiscard]] Message withNumbers(std::string_view key, Dimension dimension, const Estimate& estimate,
                                  const TargetWindow& window);
/// First that applies: fault first (unless the fault's cure is the recipe), hold where the gravity falls, wait until,
/// never tasted, hold, open. Only the adviser turns an open one into move, leave alone or taste again.
[[nodiscard]] Verdict standing(Dimension dimension, const Estimate& estimate, const TargetWindow& window,
                               const VerdictContext& context);

} // namespace staveline::tasting
