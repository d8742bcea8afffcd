// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/cautions.h"

#include "quantity/constants.h"

namespace staveline::finishing {
namespace {

/// Bottle yeast stops in acid and alcohol.
bool stopsYeast(const PackedBeer& beer) {
    return beer.ph.ph < constants::finishing::yeastPh || beer.ta.gPerL > constants::finishing::yeastTa ||
           beer.alcohol.pct > constants::finishing::yeastAlcohol;
}

} // namespace

std::vector<Message> packingCautions(const PackedBeer& beer) {
    std::vector<Message> cautions = {say("finishing.caution.bottles"), say("finishing.caution.first_bottle")};
    if (beer.primed)
        cautions.push_back(say("finishing.caution.weigh"));
    if (beer.primed && stopsYeast(beer))
        cautions.push_back(say("finishing.caution.yeast")
                               .with("ph", beer.ph)
                               .with("ta", beer.ta)
                               .with("alcohol", beer.alcohol)
                               .with("least", Celsius{constants::finishing::conditioningLeast})
                               .with("most", Celsius{constants::finishing::conditioning}));
    if (beer.fruit)
        cautions.push_back(say("finishing.caution.fruit"));
    cautions.push_back(say("finishing.caution.co2"));
    cautions.push_back(say("finishing.caution.law"));
    return cautions;
}

std::vector<Message> blendingCautions() {
    return {say("finishing.caution.bench"), say("finishing.caution.blend_ferments"), say("finishing.caution.co2")};
}

} // namespace staveline::finishing
