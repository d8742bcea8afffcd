// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/cautions.h"

namespace staveline::finishing {

std::vector<Message> packingCautions(const PackedBeer& beer) {
    std::vector<Message> cautions = {say("caution.ready.law"), say("caution.ready.co2"), say("caution.ready.cleaners"),
                                     say("caution.ready.alcohol")};
    if (beer.fruit)
        cautions.push_back(say("caution.ready.fruit"));
    if (beer.primed && !beer.liquid)
        cautions.push_back(say("caution.prime.weigh"));
    cautions.push_back(say("caution.fill.bottles"));
    if (beer.keg)
        cautions.push_back(say("caution.fill.keg"));
    cautions.push_back(say("caution.keep.gas"));
    cautions.push_back(say("caution.keep.first"));
    return cautions;
}

std::vector<Message> blendingCautions() {
    return {say("caution.blend.bench"), say("caution.blend.ferments"), say("caution.ready.co2")};
}

} // namespace staveline::finishing
