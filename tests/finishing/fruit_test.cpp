// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/fruit.h"

#include "support/catch.h"

namespace staveline::finishing {
namespace {

FruitAddition cherries() {
    FruitAddition addition;
    addition.fruit = fruit("sour_cherry").value();
    addition.mass = {20};
    addition.beer = {100};
    addition.alcohol = {6};
    return addition;
}

} // namespace

TEST_CASE("Fruit brings sugar, acid, water and alcohol", "[fruit]") {
    const auto effect = withFruit(cherries()).value();
    // 18 kg of flesh with 84.9 g/kg of sugar: 15.28 g/L; 15.3 L of liquid
    CHECK(effect.kgPerLitre == Approx(.2));
    CHECK(effect.sugar.gPerL == Approx(15.282));
    CHECK(effect.water.l == Approx(15.3));
    CHECK(effect.volume.l == Approx(115.3));
    // 600 mL of alcohol and 0.613 mL for each of 1528 g, in 115.3 L: fruit thins more than it strengthens
    CHECK(effect.alcohol.pct == Approx((6000 + .613 * 1528.2) / 1153));
    // 252 g of malic acid, 67.04 g an equivalent, as lactic in 115.3 L
    CHECK(effect.acidity.gPerL == Approx(252 / 67.0435 * 90.078 / 115.3).epsilon(1e-4));
    CHECK(effect.headspace.l == Approx(30));
    CHECK(effect.contact.d == Approx(42));
}

TEST_CASE("Fruit is tasted sooner where it is warm", "[fruit]") {
    FruitAddition warm = cherries();
    warm.temperature = {25};
    CHECK(withFruit(warm)->contact.d == Approx(21));
}

TEST_CASE("Fruit that cannot go in is refused at its field", "[fruit]") {
    FruitAddition full = cherries();
    full.vessel = Litres{110};
    CHECK(withFruit(full).error().path == "/fruit"); // 100 L, 20 kg and 30 L for the surge
    full.vessel = Litres{150};
    CHECK(withFruit(full).has_value());
    FruitAddition jam = cherries();
    jam.mass = {90};
    CHECK(withFruit(jam).error().path == "/fruit");
    jam.mass = {.07}; // less than a gram a litre
    CHECK(withFruit(jam).error().path == "/fruit");
    jam.mass = {-1};
    CHECK(withFruit(jam).error().path == "/fruit");
    FruitAddition none = cherries();
    none.beer = {0};
    CHECK(withFruit(none).error().path == "/litres");
    CHECK(fruit("durian").error().path == "/fruit");
}

} // namespace staveline::finishing
