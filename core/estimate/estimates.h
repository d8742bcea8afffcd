// SPDX-License-Identifier: GPL-3.0-or-later
// What is known about a vessel today: the model carried forward, what earlier sittings taught of this vessel, and what
// was measured and tasted in this cycle, joined to one estimate a dimension and how it stands to the target.
#pragma once

#include "estimate/learning.h"
#include "forward/parameters.h"
#include "quantity/day.h"
#include "tasting/verdict.h"

#include <optional>
#include <span>
#include <vector>

namespace staveline::estimate {

/// One part of what the combined estimate of a dimension rests on, as a score of today.
struct Evidence {
    enum class Kind { model, learned, sitting, titration } kind = Kind::model;
    tasting::Estimate estimate;
    std::optional<Day> on{};           ///< titration, sitting
    std::optional<GramsPerLitre> ta{}; ///< titration; none: a pH alone
    int sittings = 0;                  ///< learned: how many taught it
    bool operator==(const Evidence&) const = default;
};

/// As answers and the keys of texts have it.
[[nodiscard]] constexpr std::string_view wordOf(Evidence::Kind kind) {
    constexpr std::array<std::string_view, 4> words = {"model", "learned", "sitting", "titration"};
    return words[static_cast<std::size_t>(kind)];
}

/// Of the beer in the vessel, wherever it was taken.
struct Measurement {
    Day on{};
    std::optional<SpecificGravity> gravity{};
};

struct KnownOfVessel {
    Day today{};
    std::optional<Day> lastRefill;            ///< none: in its first cycle
    culture::VesselState state;               ///< today, as the model carries it forward
    culture::AgeConditions cellaring;         ///< from today on; its days do not count
    std::vector<Measurement> measured;        ///< up to today, by day
    const tasting::Sitting* tasted = nullptr; ///< the latest, if of this cycle; not owned
    Learned learned;                          ///< from its whole story
    Learned earlier;                          ///< the same without the readings of this cycle
    tasting::Target target;
    bool targetSet = true; ///< false: an ordinary one stands in for it
    forward::Parameters parameters;
};

struct Estimates {
    PerDimension<tasting::Estimate> model, combined; ///< scores today
    PerDimension<Offset> offsets;                    ///< of the vessel from the model, today
    PerDimension<int> sittings{};                    ///< that taught it; 0: never tasted
    PerDimension<std::vector<Evidence>> evidence;    ///< what `combined` rests on
    PerDimension<double>
        oneMoreTaster{}; ///< variance of one more taster's score; beside a lone taster a stranger's [points^2]
    PerDimension<bool> tastedThisCycle{};
    PerDimension<bool> tastedToday{};
    std::optional<GramsPerLitre> ta; ///< of this cycle, the latest
    std::optional<Ph> ph;            ///< likewise
    std::optional<Day> tastedOn;     ///< likewise
    PerDimension<tasting::Verdict> verdicts;
    std::vector<tasting::FaultMark> faults;
    std::vector<Doubt> doubts; ///< of this cycle
};

/// What is measured or tasted on the day of a refill is the beer from before it.
[[nodiscard]] inline bool ofThisCycle(Day on, std::optional<Day> lastRefill) {
    return !lastRefill || on > *lastRefill;
}
/// Between the last two gravities of the cycle.
[[nodiscard]] bool gravityFalling(std::span<const Measurement> measured, std::optional<Day> lastRefill,
                                  const EstimateConstants& by = {});
/// The day the model brings the score into the window by itself, if it moves enough on the way. `deviation`: of the
/// estimate from the model [points].
[[nodiscard]] std::optional<Day> modelArrival(Dimension dimension, const KnownOfVessel& known, double deviation,
                                              const EstimateConstants& by = {});
[[nodiscard]] Estimates estimatesFrom(const KnownOfVessel& known, const EstimateConstants& by = {});

} // namespace staveline::estimate
