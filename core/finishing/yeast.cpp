// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/yeast.h"

#include "quantity/constants.h"

namespace staveline::finishing {

namespace yeast = constants::finishing;

namespace {

/// Of the dry yeast that has so many million cells for each mL.
Grams weightOf(double cells, Litres batch) {
    constexpr double millionInBillion = 1e-3, mlInLitre = 1000;
    return {cells * millionInBillion * mlInLitre * batch.l / yeast::dryYeast};
}

} // namespace

bool stopsYeast(const PackedBeer& beer) {
    return beer.primed &&
           (beer.ph.ph < yeast::yeastPh || beer.ta.gPerL > yeast::yeastTa || beer.alcohol.pct > yeast::yeastAlcohol);
}

YeastDose yeastFor(Litres batch) {
    return {weightOf(yeast::yeastLeast, batch), weightOf(yeast::yeastMost, batch)};
}

std::vector<Message> yeastAdvice(const PackedBeer& beer, Litres batch) {
    if (!stopsYeast(beer))
        return {};
    const YeastDose dose = yeastFor(batch);
    return {say("finishing.yeast.why")
                .with("ph", beer.ph)
                .with("ta", beer.ta)
                .with("alcohol", beer.alcohol)
                .with("least_ph", Ph{yeast::yeastPh})
                .with("most_ta", GramsPerLitre{yeast::yeastTa})
                .with("most_alcohol", PercentVol{yeast::yeastAlcohol}),
            say("finishing.yeast.how")
                .with("least", dose.least)
                .with("most", dose.most)
                .with("least_cells", Number{yeast::yeastLeast})
                .with("most_cells", Number{yeast::yeastMost})
                .with("soonest", Days{yeast::yeastSoonest})
                .with("latest", Days{yeast::yeastLatest})
                .with("coldest", Celsius{yeast::yeastColdest})
                .with("warmest", Celsius{yeast::yeastWarmest}),
            say("finishing.yeast.else")};
}

} // namespace staveline::finishing
