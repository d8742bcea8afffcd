// SPDX-License-Identifier: GPL-3.0-or-later
// The joined forward model: recipe and plan in, scores at the coming draws out.
#pragma once

#include "forward/parameters.h"
#include "quantity/day.h"
#include "vessel/ledger.h"

#include <map>
#include <memory>
#include <optional>
#include <span>

namespace staveline::forward {

inline constexpr std::string_view modelVersion = "2";

struct Plan {
    Days toThisDraw{30};    ///< the remaining beer ages until the draw
    Share refillShare{.35}; ///< of the volume after filling
    Days interval{240};     ///< from this draw to the next
    Celsius temperature{16};
    double oxygenPerYear = 10; ///< mg/(L year)
    vessel::ByMonth apart{};   ///< how far each month lies from the temperature [K]
    Day from{};                ///< the day it is told on; counts where the months differ
    bool operator==(const Plan&) const = default;
};

struct Outcome {
    culture::VesselState state;
    Scores scores;
    Ph ph{3.3};
    GramsPerLitre ta{6};
    PercentVol alcohol{6};
    Plato gravity{0.2}; ///< apparent
    Ibu bitterness{8};
};
[[nodiscard]] Outcome outcomeOf(const culture::VesselState& state, const Parameters& parameters);

struct Prediction {
    Outcome thisDraw, nextDraw;
};

/// One recipe, one plan, one parameter set. Deterministic; no I/O; about 0.1 ms.
[[nodiscard]] Prediction predict(const Parameters& parameters, const culture::VesselState& state,
                                 const brewing::BrewInput& recipe, const Plan& plan);
/// The same with the beer already brewed (brew() memoised by the caller).
[[nodiscard]] Prediction predict(const Parameters& parameters, const culture::VesselState& state,
                                 const brewing::RefillBeer& beer, const Plan& plan);

/// What the refill brings under these parameters: the beer as brewed with its buffer scaled, its pH kept.
[[nodiscard]] Composition freshBeer(const brewing::RefillBeer& beer, const Parameters& parameters);

/// What lives in it.
[[nodiscard]] inline culture::Inoculum inoculumOf(const brewing::RefillBeer& beer) {
    return {beer.lactics, beer.brett, beer.enzyme};
}

/// The same plan under every draw, in their order: what bands are made of.
struct DrawnScores {
    std::vector<Scores> thisDraw, nextDraw;
};
[[nodiscard]] DrawnScores scoresOver(std::span<const Parameters> draws, const culture::VesselState& state,
                                     const brewing::BrewInput& recipe, const Plan& plan);

/// Brettanomyces when a vessel was taken over: at home since it runs, just pitched, or none at all.
enum class BrettAtOpening { established, young, none };

/// The vessel's composition today, from its history. What is unknown keeps its prior.
struct OpeningFacts {
    Day on{};
    Days usualInterval{240};
    Share usualShare{.35};
    double yearsRunning = 3; ///< on the usual recipe
    BrettAtOpening brett = BrettAtOpening::established;
    std::optional<Plato> gravity{}; ///< apparent
    std::optional<Ibu> bitterness{};
};
/// Runs the usual refill from a young vessel through the years stated, up to the end of an interval, then lets the
/// measurements correct it: gravity scales the dextrins, bitterness the hop acids. Acid that was measured is no part of
/// it: it says how far the vessel is from the model. Total: numbers out of range count as their nearest limit, NaN as
/// not measured. The days of `cellaring` do not count, here and below.
[[nodiscard]] culture::VesselState openingState(const OpeningFacts& opening, const brewing::BrewInput& usualRecipe,
                                                const culture::AgeConditions& cellaring, const Parameters& parameters);

/// One event after the opening, in ledger order.
struct BlendEvent {
    Day on{};
    Share share{0};                                      ///< of the volume after it; 0: nothing goes in (draw, sample)
    std::optional<std::int64_t> brew{};                  ///< key into `brews`; none: the usual recipe
    bool brettPitched = false;                           ///< Brettanomyces goes in, after the beer
    std::optional<culture::CultureParameters> culture{}; ///< from here on, instead of the parameters'
    std::optional<culture::AgeConditions> cellaring{};   ///< from here on; its days do not count
    // A measurement corrects the state when there is one, after what went in.
    std::optional<Plato> gravity{}; ///< apparent
    std::optional<Ibu> bitterness{};
};
/// Events after `today` do not count; a brew that is not in `brews` counts as the usual one. Total, as above.
[[nodiscard]] culture::VesselState carryForward(const culture::VesselState& opening, Day openedOn,
                                                std::span<const BlendEvent> events,
                                                const std::map<std::int64_t, brewing::RefillBeer>& brews,
                                                const brewing::RefillBeer& usual, Day today,
                                                const culture::AgeConditions& cellaring, const Parameters& parameters);

} // namespace staveline::forward
