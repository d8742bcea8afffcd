// SPDX-License-Identifier: GPL-3.0-or-later
// From what a brewer knows about a running vessel to its state, and from there through the ledger to today.
#include "forward/predict.h"

#include "brewing/gravity.h"
#include "quantity/constants.h"

#include <algorithm>
#include <cmath>

namespace staveline::forward {

using culture::VesselState;

namespace {

/// The measurement inside its plausible range; nothing when it is no number.
template <Quantity Q> std::optional<Q> usable(const std::optional<Q>& measured, double low, double high) {
    if (!measured || std::isnan(raw(*measured)))
        return {};
    return Q{std::clamp(raw(*measured), low, high)};
}

double finiteWithin(double value, double low, double high) {
    return std::min(high, std::max(low, value)); // NaN: low
}

Composition withGravity(Composition beer, std::optional<Plato> apparent) {
    apparent = usable(apparent, -3, 30);
    if (!apparent)
        return beer;
    const double missing = brewing::realExtractAt(*apparent, beer.originalGravity()) - brewing::realExtractOf(beer);
    const double dextrins = beer.dextrin + beer.residue;
    const double wanted = std::max(0.0, dextrins + constants::wort::dextrin * missing);
    if (dextrins > 0) {
        beer.dextrin *= wanted / dextrins;
        beer.residue *= wanted / dextrins;
    } else {
        beer.residue = wanted;
    }
    return beer;
}

Composition withBitterness(Composition beer, std::optional<Ibu> measured) {
    measured = usable(measured, 0, 150);
    if (!measured)
        return beer;
    const double now = beer.bitterness().ibu;
    const double cisShare = now > 0 ? beer.isoCis / now : constants::wort::cisShare;
    beer.isoCis = cisShare * measured->ibu;
    beer.isoTrans = (1 - cisShare) * measured->ibu;
    return beer;
}

/// Kept like this for so many days from a day on.
VesselState later(const VesselState& state, Day from, Days days, culture::AgeConditions cellaring,
                  const Parameters& p) {
    cellaring.days = days;
    cellaring.from = from;
    return culture::age(state, cellaring, p.culture);
}

VesselState withBrettPitched(VesselState state, const Parameters& p) {
    state.brett = std::max(state.brett, p.culture.startBrett);
    return state;
}

/// A tolerance of hops that is told is there from that day; what the culture has learned beyond it stays.
VesselState withCultureTold(VesselState state, const culture::CultureParameters& told) {
    state.hopTolerance = std::max(state.hopTolerance, told.hopTolerance);
    return state;
}

/// Whole intervals end today; what is left over of the years lengthens the first.
VesselState settled(const OpeningFacts& opening, const brewing::RefillBeer& usual,
                    const culture::AgeConditions& cellaring, const Parameters& p) {
    const double interval = finiteWithin(opening.usualInterval.d, 14, 3650);
    const double total = finiteWithin(opening.yearsRunning, 0, 100) * daysPerYear;
    const int cycles = std::max(1, static_cast<int>(total / interval));
    const Composition fresh = freshBeer(usual, p);
    VesselState state = youngVessel(fresh, p.culture);
    state.enzyme = usual.enzyme;
    if (opening.brett != BrettAtOpening::established)
        state.brett = 0;
    const auto before = [&](double days) { return after(opening.on, Days{-days}); };
    state = later(state, before(total), Days{total - (cycles - 1) * interval}, cellaring, p);
    for (int i = 1; i < cycles; ++i)
        state = later(refill(state, fresh, opening.usualShare, p.culture, inoculumOf(usual)),
                      before((cycles - i) * interval), Days{interval}, cellaring, p);
    return opening.brett == BrettAtOpening::young ? withBrettPitched(state, p) : state;
}

} // namespace

VesselState openingState(const OpeningFacts& opening, const brewing::BrewInput& usualRecipe,
                         const culture::AgeConditions& cellaring, const Parameters& parameters) {
    VesselState state = settled(opening, brew(usualRecipe, parameters.brew), cellaring, parameters);
    state.beer = withGravity(state.beer, opening.gravity);
    state.beer = withBitterness(state.beer, opening.bitterness);
    return state;
}

VesselState carryForward(const VesselState& opening, Day openedOn, std::span<const BlendEvent> events,
                         const std::map<std::int64_t, brewing::RefillBeer>& brews, const brewing::RefillBeer& usual,
                         Day today, const culture::AgeConditions& cellaring, const Parameters& parameters) {
    culture::AgeConditions kept = cellaring;
    Parameters now = parameters;
    VesselState state = opening;
    Day at = openedOn;
    const auto ageTo = [&](Day day) {
        if (day > at)
            state = later(state, at, Days{static_cast<double>(daysBetween(at, day))}, kept, now);
        at = std::max(at, day);
    };
    for (const BlendEvent& event : events) {
        if (event.on > today)
            continue;
        ageTo(event.on);
        const auto known = event.brew ? brews.find(*event.brew) : brews.end();
        const brewing::RefillBeer& beer = known == brews.end() ? usual : known->second;
        state = refill(state, freshBeer(beer, now), event.share, now.culture, inoculumOf(beer));
        if (event.culture)
            state = withCultureTold(state, now.culture = *event.culture);
        if (event.cellaring)
            kept = *event.cellaring;
        if (event.brettPitched)
            state = withBrettPitched(state, now);
        state.beer = withGravity(state.beer, event.gravity);
        state.beer = withBitterness(state.beer, event.bitterness);
    }
    ageTo(today);
    return state;
}

} // namespace staveline::forward
