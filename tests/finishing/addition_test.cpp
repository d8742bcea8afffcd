// SPDX-License-Identifier: GPL-3.0-or-later
// Additions as beers of their own: blended in, they come to what the effect of fruit says, and to stoichiometry.
#include "finishing/addition.h"

#include "finishing/blend.h"
#include "quantity/acid_base.h"
#include "support/catch.h"
#include "support/property.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::finishing;

namespace {

Composition blendOf(const Composition& beer, Litres litres, const Brought& brought) {
    std::vector<BlendSource> sources(2);
    sources[0].beer = beer;
    sources[1].beer = brought.beer;
    const double share = brought.litres / (litres + brought.litres);
    return blended(sources, {1 - share, share});
}

} // namespace

TEST_CASE("beer with fruit blended in has the alcohol and volume that fruit gives", "[finishing][lots]") {
    Composition beer;
    beer.ethanol = 47;
    const Litres litres{50};
    for (const Fruit& fruit : builtInFruits()) {
        INFO(fruit.id);
        const Kilograms mass{11};
        const auto effect = withFruit({fruit, mass, litres, beer.alcohol(), Celsius{15}, {}});
        REQUIRE(effect);
        const Brought brought = broughtBy(fruit, mass);
        CHECK((litres + brought.litres).l == Approx(effect->volume.l));
        CHECK(blendOf(beer, litres, brought).alcohol().pct == Approx(effect->alcohol.pct));
        CHECK(blendOf(beer, litres, brought).lactic == Approx(effect->acidity.gPerL));
        CHECK(brought.fermented.g == Approx(effect->sugar.gPerL * litres.l));
    }
}

// C12H22O11 + H2O -> 4 C2H5OH + 4 CO2: 0.538 g of ethanol and 0.514 g of CO2 from a gram of sucrose.
TEST_CASE("sugar ferments by stoichiometry", "[finishing][lots]") {
    const Brought brought = broughtBy(*primingSugar("sucrose"), Kilograms{2});
    CHECK(brought.beer.ethanol * brought.litres.l == Approx(2000 * .538).epsilon(.002));
    CHECK(brought.fermented.g * constants::finishing::extractCo2 == Approx(2000 * .514).epsilon(.002));
}

// Wort of 12 P (SG 1.0484) that ends at 4 P real extract has about 5 % vol.
TEST_CASE("wort brings extract, buffer and alcohol", "[finishing][lots]") {
    const Brought brought = broughtByWort(Litres{10}, Plato{12});
    CHECK(brought.beer.original == 12);
    CHECK(brought.beer.buffer == Approx(1));
    CHECK(brought.fermented.g == Approx(10 * 125.8).epsilon(.005));
    CHECK(brought.beer.alcohol().pct > 4.5);
    CHECK(brought.beer.alcohol().pct < 6.5);
}

TEST_CASE("acid is what was weighed, and water thins", "[finishing][lots]") {
    Composition beer;
    beer.lactic = 4;
    const Brought acid = broughtByAcid(Kilograms{.1});
    const Composition sour = blendOf(beer, Litres{50}, acid);
    CHECK(sour.lactic * (50 + acid.litres.l) == Approx(4 * 50 + 100));
    CHECK(blendOf(beer, Litres{50}, broughtByWater(Litres{50})).lactic == Approx(2));
}

TEST_CASE("a blend of draws and additions lies inside their hull", "[finishing][lots][property]") {
    CHECK_PROPERTY("each part of the blend is between the least and the most of its sources", [] {
        std::vector<BlendSource> sources;
        const int count = *rc::gen::inRange(1, 5);
        std::vector<double> shares;
        double all = 0;
        for (int i = 0; i < count; ++i) {
            BlendSource source;
            source.beer.lactic = *rc::gen::inRange(0, 200) / 10.0;
            source.beer.ethanol = *rc::gen::inRange(0, 900) / 10.0;
            source.beer.dextrin = *rc::gen::inRange(0, 400) / 10.0;
            sources.push_back(source);
            shares.push_back(*rc::gen::inRange(1, 100));
            all += shares.back();
        }
        for (double& share : shares)
            share /= all;
        const Composition blend = blended(sources, shares);
        for (const auto pool : compositionPools) {
            const auto [least, most] =
                std::minmax_element(sources.begin(), sources.end(), [&](const BlendSource& a, const BlendSource& b) {
                    return a.beer.*pool < b.beer.*pool;
                });
            const double value = blend.*pool, low = least->beer.*pool, high = most->beer.*pool;
            RC_ASSERT(value >= low - 1e-9);
            RC_ASSERT(value <= high + 1e-9);
        }
    });
}
