// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/addition.h"

#include "finishing/carbonation.h"
#include "quantity/constants.h"
#include "quantity/density.h"

namespace staveline::finishing {
namespace {

namespace rule = constants::finishing;

constexpr double ethanolPerCo2 = 46.07 / 44.01; ///< a mole of each [g/g]

Composition ofNothing() {
    Composition water;
    water.buffer = 0;
    return water;
}

} // namespace

Brought broughtBy(const Fruit& fruit, Kilograms mass) {
    const Litres any{4}; // the effect of a kilogram is the same in any beer
    const auto one = withFruit({fruit, Kilograms{1}, any, PercentVol{0}, Celsius{15}, {}});
    if (!one)
        return {};
    Brought brought{one->water * mass.kg, {}, Grams{one->sugar.gPerL * any.l * mass.kg}};
    const double inJuice = one->volume / one->water;
    brought.beer.ethanol = one->alcohol.pct * ethanolPerPercent * inJuice;
    brought.beer.lactic = one->acidity.gPerL * inJuice;
    return brought;
}

Brought broughtBy(const PrimingSugar& sugar, Kilograms mass) {
    const double co2 = mass.kg * 1000 * sugar.mostCo2;
    Brought brought{Litres{mass.kg * rule::sugarVolume}, ofNothing(), Grams{co2 / rule::extractCo2}};
    brought.beer.ethanol = co2 * ethanolPerCo2 / brought.litres.l;
    return brought;
}

Brought broughtByWort(Litres litres, Plato extract) {
    const double grams = 10 * extract.p * toGravity(extract).sg; // in a litre
    Brought brought{litres, {}, Grams{grams * litres.l}};
    brought.beer.original = extract.p;
    brought.beer.buffer = extract.p / 12;
    brought.beer.ethanol = grams * rule::wortFermented * rule::extractCo2 * ethanolPerCo2;
    brought.beer.dextrin = grams * (1 - rule::wortFermented) * constants::wort::dextrin;
    return brought;
}

Brought broughtByAcid(Kilograms mass) {
    Brought brought{Litres{mass.kg * rule::acidVolume}, ofNothing(), {}};
    brought.beer.lactic = mass.kg * 1000 / brought.litres.l;
    return brought;
}

Brought broughtByWater(Litres litres) {
    return {litres, ofNothing(), {}};
}

} // namespace staveline::finishing
