// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/acid_evidence.h"

#include "quantity/acid_base.h"

#include <algorithm>
#include <cmath>

namespace staveline::estimate {
namespace {

bool outside(double value, double low, double high) {
    return !(value >= low && value <= high);
}

} // namespace

double acidSlope(GramsPerLitre ta, const Composition& beer, const tasting::ScoreParameters& parameters,
                 const EstimateConstants& by) {
    constexpr double step = .1; // [g/L]
    const auto score = [&](double g) { return tasting::acidityScore({g}, {beer.acetic}, beer.alcohol(), parameters); };
    return std::max(by.leastSlope, (score(ta.gPerL + step) - score(ta.gPerL - step)) / (2 * step));
}

GramsPerLitre acidityAt(Ph ph, const Composition& beer) {
    // Charge is linear in lactic acid at a given pH.
    const double without = anionCharge(ph, 0, beer.acetic, beer.buffer);
    const double perGram = anionCharge(ph, 1, beer.acetic, beer.buffer) - without;
    Composition soured = beer;
    soured.lactic = std::max(0.0, (beer.sid - without) / perGram);
    return titratableAcidity(soured);
}

Ph phAt(GramsPerLitre ta, const Composition& beer) {
    return ph(withTitratableAcidity(beer, ta));
}

AcidDoubt doubtOf(const AcidReading& reading, const EstimateConstants& by) {
    if (reading.ta && outside(reading.ta->gPerL, by.leastTa.gPerL, by.mostTa.gPerL))
        return AcidDoubt::range;
    if (reading.ph && outside(reading.ph->ph, by.leastPh.ph, by.mostPh.ph))
        return AcidDoubt::range;
    if (!reading.ta || !reading.ph)
        return AcidDoubt::none;
    const bool apart = std::abs(acidityAt(*reading.ph, reading.model).gPerL - reading.ta->gPerL) > by.balanceTa ||
                       std::abs(phAt(*reading.ta, reading.model).ph - reading.ph->ph) > by.balancePh;
    return apart ? AcidDoubt::balance : AcidDoubt::none;
}

AcidSeen seenOf(const AcidReading& reading, const tasting::ScoreParameters& parameters, const EstimateConstants& by) {
    AcidSeen seen;
    seen.model = titratableAcidity(reading.model);
    seen.slope = acidSlope(seen.model, reading.model, parameters, by);
    seen.ta = reading.ta ? *reading.ta : acidityAt(reading.ph.value_or(ph(reading.model)), reading.model);
    seen.sd = reading.ta ? by.titrationSd : by.phAsTa;
    return seen;
}

} // namespace staveline::estimate
