// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/phenol_release.h"

#include "quantity/arrhenius.h"
#include "quantity/constants.h"

#include <cmath>

namespace staveline::brewing {
namespace {

namespace k = constants::phenol;
constexpr double tread = .5; ///< a heating is walked as a staircase of treads this high [C]

double ionised(double ph) {
    return 1 / (1 + std::pow(10., k::releasePka - ph));
}

/// Moves the share 1 - left of `pool` to `dissolved`.
void move(double& pool, double left, double& dissolved) {
    dissolved += pool * (1 - left);
    pool *= left;
}

} // namespace

PhenolRelease::PhenolRelease(const PhenolPortion& first, Ph ph, double rateFactor)
    : factor_(rateFactor * ionised(ph.ph) / ionised(k::releasePh)), in_(first) {}

void PhenolRelease::add(const PhenolPortion& late) {
    in_.ferulicFree += late.ferulicFree;
    in_.ferulicBound += late.ferulicBound;
    in_.coumaricFree += late.coumaricFree;
    in_.coumaricBound += late.coumaricBound;
    in_.esterase += late.esterase;
}

void PhenolRelease::advance(const MashSegment& segment) {
    const int treads = segment.isRest() ? 1 : static_cast<int>(std::ceil(std::abs(segment.to - segment.from) / tread));
    const double minutes = segment.minutes / treads;
    double released = 0, dissolved = 0;
    for (int i = 0; i < treads; ++i) {
        const double celsius = segment.at((i + .5) * minutes);
        const double death = k::esteraseDeath60 * arrhenius(k::deathEnergy, 60, celsius);
        const double lost = -std::expm1(-death * minutes); // share of the esterase that dies on this tread
        released += k::release45 * arrhenius(k::releaseEnergy, 45, celsius) * factor_ * in_.esterase * lost / death;
        dissolved += k::dissolve45 * arrhenius(k::dissolveEnergy, 45, celsius) * minutes;
        in_.esterase *= 1 - lost;
    }
    settle(released, dissolved);
}

void PhenolRelease::settle(double released, double dissolved) {
    const double boundLeft = std::exp(-released), freeLeft = std::exp(-dissolved);
    move(in_.ferulicBound, boundLeft, dissolvedFerulic_);
    move(in_.ferulicFree, freeLeft, dissolvedFerulic_);
    move(in_.coumaricBound, boundLeft, dissolvedCoumaric_);
    move(in_.coumaricFree, freeLeft, dissolvedCoumaric_);
}

} // namespace staveline::brewing
