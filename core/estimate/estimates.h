// SPDX-License-Identifier: GPL-3.0-or-later
// What is known about a vessel today: the model carried forward, what was measured and what was tasted, joined to one
// estimate a dimension and its verdict.
#pragma once

#include "estimate/estimate_constants.h"
#include "forward/parameters.h"
#include "quantity/day.h"
#include "tasting/verdict.h"

#include <optional>
#include <span>
#include <vector>

namespace staveline::estimate {

/// One part of what the combined estimate of a dimension rests on.
struct Evidence {
    enum class Kind { model, titration, sitting } kind = Kind::model;
    tasting::Estimate estimate;
    std::optional<Day> on{};           ///< titration, sitting
    std::optional<GramsPerLitre> ta{}; ///< titration
    bool operator==(const Evidence&) const = default;
};

/// Of the beer in the vessel, wherever it was taken.
struct Measurement {
    Day on{};
    std::optional<SpecificGravity> gravity{};
    std::optional<GramsPerLitre> ta{};
};

/// A sitting that speaks for the vessel.
struct Tasted {
    const tasting::Sitting* sitting = nullptr; ///< not owned
    std::optional<culture::VesselState> then;  ///< the vessel on that day; none: as it is today
};

struct KnownOfVessel {
    Day today{};
    std::optional<Day> lastRefill;     ///< none: in its first cycle
    culture::VesselState state;        ///< today, as the model carries it forward
    culture::AgeConditions cellaring;  ///< from today on; its days do not count
    std::vector<Measurement> measured; ///< up to today, by day
    std::optional<Tasted> tasted;      ///< the latest, if it speaksFor() the vessel
    tasting::Target target;
    forward::Parameters parameters;
};

struct Estimates {
    PerDimension<tasting::Estimate> model, combined; ///< scores today
    PerDimension<Offset> offsets;                    ///< of the vessel from the model, today
    PerDimension<std::optional<tasting::DimensionReading>> sitting;
    PerDimension<std::vector<Evidence>> evidence; ///< what `combined` rests on
    std::optional<GramsPerLitre> ta;
    std::optional<Day> tastedOn;
    PerDimension<tasting::Verdict> verdicts;
    std::vector<tasting::FaultMark> faults;
};

/// Of this cycle and not too old. What is measured or tasted on the day of a refill is the beer from before it.
[[nodiscard]] bool speaksFor(Day on, std::optional<Day> lastRefill, Day today, const EstimateConstants& by = {});
/// The acidity that a titration of this beer stands for, with the errors of both the titration and the map.
[[nodiscard]] tasting::Estimate titrationEstimate(GramsPerLitre ta, const Composition& beer,
                                                  const tasting::ScoreParameters& parameters,
                                                  const EstimateConstants& by = {});
/// Between the last two gravities of the cycle.
[[nodiscard]] bool gravityFalling(std::span<const Measurement> measured, std::optional<Day> lastRefill,
                                  const EstimateConstants& by = {});
/// The day the model brings the score into the window by itself, if it moves enough on the way. `deviation`: of the
/// estimate from the model [points].
[[nodiscard]] std::optional<Day> modelArrival(Dimension dimension, const KnownOfVessel& known, double deviation,
                                              const EstimateConstants& by = {});
[[nodiscard]] Estimates estimatesFrom(const KnownOfVessel& known, const EstimateConstants& by = {});

} // namespace staveline::estimate
