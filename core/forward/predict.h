// SPDX-License-Identifier: GPL-3.0-or-later
// The joined forward model: recipe and plan in, scores at the coming draws out.
#pragma once

#include "brewing/refill_beer.h"
#include "culture/vessel_state.h"
#include "tasting/score_map.h"
#include "vessel/ledger.h"

#include <map>
#include <memory>

namespace staveline {

inline constexpr std::string_view modelVersion = "1";

struct Parameters {
    BrewParameters brew;
    CultureParameters culture;
    ScoreParameters score;
    bool operator==(const Parameters&) const = default;
};

struct Plan {
    Days toThisDraw{30};    ///< the heel ages until the draw
    Share refillShare{.35}; ///< of the volume after filling
    Days interval{240};     ///< from this draw to the next
    Celsius temperature{16};
    double oxygenPerYear = 10;
    bool operator==(const Plan&) const = default;
};

struct Outcome {
    VesselState state;
    Scores scores;
    Ph ph{3.3};
    GramsPerLitre ta{6};
    PercentVol alcohol{6};
    Plato gravity{0.2}; ///< apparent
    Ibu bitterness{8};
};
[[nodiscard]] Outcome outcomeOf(const VesselState& state, const Parameters& parameters, Plato originalGravity = {12});

struct Prediction {
    Outcome thisDraw, nextDraw;
};

/// One recipe, one plan, one parameter set. Deterministic; no I/O; about 0.1 ms.
[[nodiscard]] Prediction predict(const Parameters& parameters, const VesselState& state, const BrewInput& recipe,
                                 const Plan& plan);
/// The same with the beer already brewed (brew() memoised by the caller).
[[nodiscard]] Prediction predict(const Parameters& parameters, const VesselState& state, const RefillBeer& beer,
                                 Plato originalGravity, const Plan& plan);

/// The fixed point of equal cycles, found by repeating them (at most `maxCycles`, stops below 1e-4 points).
[[nodiscard]] Outcome ifKeptUp(const Parameters& parameters, const VesselState& start, const RefillBeer& beer,
                               Plato originalGravity, const Plan& plan, int maxCycles = 40);

/// Quasi-random parameter sets for bands: always the same `count` draws (Halton + inverse normal), from priors.csv.
[[nodiscard]] std::vector<Parameters> parameterDraws(const Parameters& centre, int count = 64);

/// The vessel's composition today, from its history. What is unknown keeps its prior.
struct OpeningFacts {
    Day on{};
    Days usualInterval{240};
    Share usualShare{.35};
    double yearsRunning = 3; ///< on the usual recipe
    std::optional<GramsPerLitre> ta;
    std::optional<Ph> ph;
    std::optional<Plato> gravity; ///< apparent
    std::optional<Ibu> bitterness;
};
[[nodiscard]] VesselState openingState(const OpeningFacts& opening, const BrewInput& usualRecipe, Celsius temperature,
                                       double oxygenPerYear, const Parameters& parameters);

/// One event after the opening, in ledger order.
struct BlendEvent {
    Day on{};
    Share share{0};                   ///< of the volume after it; 0: nothing goes in (draw, sample)
    std::optional<std::int64_t> brew; ///< key into `brews`; none: the usual recipe
    // A measurement corrects the state when there is one.
    std::optional<GramsPerLitre> ta;
    std::optional<Ph> ph;
};
[[nodiscard]] VesselState carryForward(const VesselState& opening, Day openedOn, std::span<const BlendEvent> events,
                                       const std::map<std::int64_t, RefillBeer>& brews, const RefillBeer& usual,
                                       Day today, Celsius temperature, double oxygenPerYear,
                                       const Parameters& parameters);

} // namespace staveline
