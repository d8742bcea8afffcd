// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/outlook.h"

#include "estimate/acid_evidence.h"

#include <algorithm>
#include <cmath>

namespace staveline::advice {
namespace {

using estimate::Offset;

template <class Ahead> Carried carriedBy(const AdviceInput& input, Ahead ahead) {
    Carried carried;
    for (auto d : allDimensions) {
        const estimate::Ahead at = ahead(input.offsets[d]);
        carried.mean[d] = at.mean;
        carried.variance[d] = at.variance;
        carried.withNow[d] = at.withNow;
    }
    return carried;
}

/// A refill wanders as such; nothing that goes in is no refill.
double settledSteps(Share share) {
    return share.of1 > 0 ? 1 : 0;
}

} // namespace

Carried carriedTo(const AdviceInput& input, Share share, int draws) {
    return carriedBy(input, [&](const Offset& offset) { return estimate::ahead(offset, share, draws); });
}

Carried carriedForGood(const AdviceInput& input) {
    return carriedBy(input, [](const Offset& offset) { return estimate::settledAhead(offset); });
}

std::vector<Carried> carriedAhead(const AdviceInput& input, Share share) {
    std::vector<Carried> all;
    for (int h = 1; h <= input.horizon; ++h)
        all.push_back(carriedTo(input, share, h));
    return all;
}

Scores plus(Scores scores, const Scores& more) {
    for (auto d : allDimensions)
        scores[d] += more[d];
    return scores;
}

Scores minus(Scores scores, const Scores& less) {
    for (auto d : allDimensions)
        scores[d] -= less[d];
    return scores;
}

std::vector<Expected> expectedDraws(std::span<const forward::Outcome> draws, std::span<const Carried> offsets) {
    std::vector<Expected> expected;
    for (std::size_t h = 0; h < std::min(draws.size(), offsets.size()); ++h)
        expected.push_back({plus(draws[h].scores, offsets[h].mean), offsets[h].variance});
    return expected;
}

GramsPerLitre acidityThen(const AdviceInput& input, const forward::Outcome& then, const Carried& carried) {
    const double slope = estimate::acidSlope(then.ta, then.state.beer, input.parameters.score);
    const double acid = carried.mean[Dimension::acidity] - input.offsets[Dimension::acidity].mean[Offset::apart];
    return {std::max(0.0, then.ta.gPerL + acid / slope)};
}

Wandered wanderedAhead(const AdviceInput& input, const Setting& setting) {
    const Share share = shareOf(input, setting);
    Wandered sd;
    for (auto d : allDimensions) {
        const auto& rule = input.wander[d];
        Offset offset = input.offsets[d];
        passTime(offset, input.toThisDraw, rule);
        sd.thisDraw[d] = offset.sd();
        for (int h = 1; h <= settledCycles; ++h) {
            refill(offset, share, setting.interval, settledSteps(share), rule);
            if (h == 1)
                sd.next[d] = offset.sd();
        }
        sd.settled[d] = std::sqrt(std::max(0.0, offset.cov[Offset::settled][Offset::settled]));
    }
    return sd;
}

} // namespace staveline::advice
