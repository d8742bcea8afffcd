// SPDX-License-Identifier: GPL-3.0-or-later
// Beers and bottles to ask about.
#pragma once

#include "finishing/blend.h"
#include "finishing/guard.h"
#include "quantity/acid_base.h"

#include <chrono>
#include <utility>
#include <vector>

namespace staveline::finishing {

inline constexpr Day bottlingDay = std::chrono::sys_days(std::chrono::year(2026) / 9 / 1);

/// Measured today at `gravity`, nothing put in for two years, and a vessel whose earlier beer ended at `before`.
inline BeerKnown oldBeer(double gravity, double before = 1.000) {
    BeerKnown beer;
    beer.today = bottlingDay;
    beer.lastRefill = beer.lastExchange = bottlingDay - std::chrono::days{730};
    beer.readings = {{bottlingDay - std::chrono::days{731}, {before}}, {bottlingDay, {gravity}}};
    beer.residual = {.85};
    return beer;
}

/// Equal gravities over four months and a warm sample that ended there.
inline BeerKnown provenBeer(double gravity) {
    BeerKnown beer = oldBeer(gravity);
    beer.readings = {{bottlingDay - std::chrono::days{120}, {gravity}},
                     {bottlingDay - std::chrono::days{60}, {gravity + .0005}},
                     {bottlingDay, {gravity}}};
    beer.forced = GravityReading{bottlingDay - std::chrono::days{5}, {gravity}};
    return beer;
}

inline Package bottleOf(std::string_view make, double warmest = 25) {
    Package package;
    package.make = bottleMake(make).value();
    package.warmest = {warmest};
    return package;
}
inline Package bottleFor(double bar, double warmest = 25) {
    Package package;
    package.rating = GaugePressure{bar};
    package.warmest = {warmest};
    return package;
}

inline GuardVerdict asked(const BeerKnown& beer, const Package& package, double priming) {
    return guard({beer, package, {priming}, {}}).value();
}

/// A beer with this titratable acidity, alcohol and bitterness, at the pH where the acid of the others leaves it.
inline BlendSource source(std::string name, double litres, double ta, double alcohol, double ibu) {
    BlendSource out;
    out.name = std::move(name);
    out.atHand = {litres};
    out.beer.sid = 30;
    out.beer.ethanol = alcohol * ethanolPerPercent;
    out.beer.isoCis = ibu;
    out.beer.otherExtract = 10;
    out.beer = withTitratableAcidity(out.beer, {ta});
    return out;
}

} // namespace staveline::finishing
