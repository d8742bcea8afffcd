// SPDX-License-Identifier: GPL-3.0-or-later
#include "ingredient/hop.h"

#include "quantity/constants.h"

#include <algorithm>
#include <cmath>

namespace staveline::ingredient {
namespace {

double storageFactor(HopPack packed) {
    switch (packed) {
    case HopPack::open:
        return 1;
    case HopPack::closed:
        return constants::hop::closedPack;
    case HopPack::sealed:
        break;
    }
    return constants::hop::sealedPack;
}

} // namespace

Share alphaAfter(const Hop& hop, Days kept) {
    const double rate = -std::log1p(-hop.lostInSixMonths.of1) / constants::hop::lossDays;
    const double warmth = std::exp2((hop.storedAt.c - 20) / constants::hop::halvedBy);
    const double left = std::exp(-rate * warmth * storageFactor(hop.packed) * (hop.age + kept).d);
    return std::max(Share{.001}, hop.alpha * left);
}

} // namespace staveline::ingredient
