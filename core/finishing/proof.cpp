// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/proof.h"

#include "quantity/constants.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

namespace staveline::finishing {
namespace {

namespace rule = constants::finishing;

constexpr double rounding = 1e-9; // of gravities written with three decimals

bool equal(SpecificGravity a, SpecificGravity b) {
    return std::abs(a.sg - b.sg) <= rule::hydrometer + rounding;
}

/// Since when the beer is as it is; a reading of that day is of the beer before it.
std::optional<Day> undisturbedSince(const BeerKnown& beer) {
    return std::max(beer.lastRefill, beer.lastMove);
}

bool ofThisBeer(const BeerKnown& beer, Day on) {
    const auto since = undisturbedSince(beer);
    return on <= beer.today && (!since || on > *since);
}

std::vector<GravityReading> readingsNow(const BeerKnown& beer) {
    std::vector<GravityReading> now;
    std::copy_if(beer.readings.begin(), beer.readings.end(), std::back_inserter(now),
                 [&](const GravityReading& reading) { return ofThisBeer(beer, reading.on); });
    return now;
}

/// The last readings that are equal to the latest.
std::vector<GravityReading> equalReadings(const BeerKnown& beer) {
    std::vector<GravityReading> all = readingsNow(beer);
    const auto differs = std::find_if(all.rbegin(), all.rend(), [&](const GravityReading& reading) {
        return !equal(reading.gravity, all.back().gravity);
    });
    all.erase(all.begin(), differs.base());
    return all;
}

/// Several of one day are one look at the beer.
std::size_t daysOf(const std::vector<GravityReading>& readings) {
    std::set<Day> days;
    for (const GravityReading& reading : readings)
        days.insert(reading.on);
    return days.size();
}

bool isStable(const BeerKnown& beer) {
    const auto same = equalReadings(beer);
    return daysOf(same) >= static_cast<std::size_t>(rule::proofReadings) &&
           daysBetween(same.front().on, same.back().on) >= rule::proofDays &&
           daysBetween(same.back().on, beer.today) <= rule::proofHolds;
}

/// It was taken of the beer as it is now, and stood for as long as such samples do.
bool isWarmSampleOf(const BeerKnown& beer, const GravityReading& sample) {
    const auto since = undisturbedSince(beer);
    return ofThisBeer(beer, sample.on) && (!since || daysBetween(*since, sample.on) >= rule::warmTestDays);
}

/// A sample kept warm before the beer was as it is now says nothing of it; one that ended lower says it can go there.
bool warmSampleAgrees(const BeerKnown& beer) {
    const auto same = equalReadings(beer);
    const bool agrees = beer.forced && !same.empty() && isWarmSampleOf(beer, *beer.forced) &&
                        beer.forced->on >= same.front().on && equal(beer.forced->gravity, same.back().gravity);
    return agrees && std::none_of(beer.warm.begin(), beer.warm.end(), [&](const GravityReading& other) {
               return ofThisBeer(beer, other.on) && other.gravity < beer.forced->gravity &&
                      !equal(other.gravity, beer.forced->gravity);
           });
}

/// The lowest that a whole proof rests on: a warm sample that ended higher proves no less extract, and where one of the
/// beer it came from ended lower, so may this.
SpecificGravity lowestProven(const BeerKnown& beer) {
    SpecificGravity lowest = beer.forced->gravity;
    for (const GravityReading& sample : beer.warm)
        lowest = std::min(lowest, sample.gravity);
    for (const GravityReading& reading : equalReadings(beer))
        lowest = std::min(lowest, reading.gravity);
    return lowest;
}

/// In this vessel, whatever was in it; none: never measured.
std::optional<SpecificGravity> lowestSeen(const BeerKnown& beer) {
    std::optional<SpecificGravity> lowest;
    const auto look = [&](const GravityReading& reading) {
        lowest = lowest ? std::min(*lowest, reading.gravity) : reading.gravity;
    };
    std::for_each(beer.readings.begin(), beer.readings.end(), look);
    std::for_each(beer.warm.begin(), beer.warm.end(), look);
    if (beer.forced)
        look(*beer.forced);
    return lowest;
}

/// How earlier beer of this vessel ended is only known from before it was drawn and filled again.
bool endsAreKnown(const BeerKnown& beer) {
    return beer.lastExchange && std::any_of(beer.readings.begin(), beer.readings.end(),
                                            [&](const GravityReading& one) { return one.on <= *beer.lastExchange; });
}

} // namespace

std::optional<GravityReading> gravityNow(const BeerKnown& beer) {
    const auto now = readingsNow(beer);
    return now.empty() ? std::nullopt : std::optional(now.back());
}

bool stillFalling(const BeerKnown& beer) {
    const auto now = readingsNow(beer);
    if (now.empty())
        return false;
    const GravityReading& last = now.back();
    std::optional<Day> before; // the last day before it on which it was measured
    for (const GravityReading& reading : now)
        if (reading.on < last.on)
            before = reading.on;
    return std::any_of(now.begin(), now.end(), [&](const GravityReading& reading) {
        const bool counts = reading.on == before || daysBetween(reading.on, last.on) <= rule::freshGravity;
        return counts && reading.gravity > last.gravity && !equal(reading.gravity, last.gravity);
    });
}

Proof proofOf(const BeerKnown& beer) {
    Proof proof{isStable(beer), warmSampleAgrees(beer), {}, {}};
    if (proof.whole())
        proof.until = gravityNow(beer)->on + std::chrono::days{static_cast<int>(rule::proofHolds)};
    if (!proof.stable)
        proof.missing.push_back(say("finishing.proof.readings")
                                    .with("count", static_cast<std::int64_t>(rule::proofReadings))
                                    .with("over", Days{rule::proofDays})
                                    .with("within", Number{rule::hydrometer, 3}));
    if (!proof.forced)
        proof.missing.push_back(say("finishing.proof.warm")
                                    .with("least", Celsius{rule::warmTestLeast})
                                    .with("most", Celsius{rule::warmTestMost})
                                    .with("days", Days{rule::warmTestDays})
                                    .with("within", Number{rule::hydrometer, 3}));
    return proof;
}

SpecificGravity floorOf(const BeerKnown& beer) {
    const double off = rule::hydrometer;
    const bool restless = beer.diastatic || beer.simpleSugar.of1 > rule::sugaryGrist;
    if (proofOf(beer).whole())
        return lowestProven(beer) - SpecificGravity{restless ? 2 * off : off};
    const double highest = restless ? rule::restlessFloor : endsAreKnown(beer) ? rule::dryFloor : rule::unknownFloor;
    const auto lowest = lowestSeen(beer);
    return {lowest ? std::min(highest, lowest->sg - off) : highest};
}

} // namespace staveline::finishing
