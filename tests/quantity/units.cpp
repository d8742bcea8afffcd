// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/composition.h"
#include "quantity/dimension.h"
#include "quantity/fault.h"

#include "support/property.h"

#include <type_traits>

namespace staveline {
namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};

/// A beer whose pools all differ, so that a pool left out shows.
Composition numbered(double start) {
    Composition beer;
    for (auto pool : compositionPools)
        beer.*pool = start++;
    return beer;
}

} // namespace

TEST_CASE("Quantities add within a type and scale") {
    CHECK(Litres{2} + Litres{3} == Litres{5});
    CHECK(Litres{2} - Litres{3} == Litres{-1});
    CHECK(-Litres{2} == Litres{-2});
    CHECK(2 * Litres{3} == Litres{6});
    CHECK(Litres{3} * 2 == Litres{6});
    CHECK(Litres{3} / 2 == Litres{1.5});
    CHECK(Litres{3} / Litres{2} == 1.5);
    Litres volume{1};
    volume += Litres{2};
    volume -= Litres{0.5};
    CHECK(volume == Litres{2.5});
    CHECK(Litres{1} < Litres{2});
    CHECK(raw(Ph{3.4}) == 3.4);
}

TEST_CASE("Quantities of different kinds do not mix") {
    STATIC_REQUIRE(Addable<Litres, Litres>);
    STATIC_REQUIRE_FALSE(Addable<Litres, Kilograms>);
    STATIC_REQUIRE_FALSE(Addable<Litres, double>);
    STATIC_REQUIRE_FALSE(Addable<Plato, SpecificGravity>);
    STATIC_REQUIRE_FALSE(std::is_convertible_v<double, Litres>);
    STATIC_REQUIRE_FALSE(std::is_convertible_v<Litres, double>);
    STATIC_REQUIRE(sizeof(Celsius) == sizeof(double));
}

TEST_CASE("Scores are kept by dimension") {
    Scores scores;
    scores[Dimension::funk] = 4;
    CHECK(scores.values == std::array<double, 3>{0, 4, 0});
    CHECK(name(Dimension::acidity) == "acidity");
    CHECK(name(Dimension::funk) == "funk");
    CHECK(name(Dimension::body) == "body");
}

TEST_CASE("A fault seen from a level up has the longer path") {
    const auto fault = badInput("/minutes", say("quantity.empty"), say("quantity.number_form")).value();
    CHECK(under("/mash/1", fault).path == "/mash/1/minutes");
    CHECK(under("/mash/1", fault).cause == fault.cause);
}

TEST_CASE("The list of pools names every member of a composition once") {
    CHECK(compositionPools.size() * sizeof(double) == sizeof(Composition));
    const auto beer = numbered(1);
    double sum = 0;
    for (auto pool : compositionPools)
        sum += beer.*pool;
    const auto n = static_cast<double>(compositionPools.size());
    CHECK(sum == n * (n + 1) / 2);
}

TEST_CASE("A blend lies between its parts, pool by pool") {
    CHECK(blend(numbered(1), numbered(3), Share{0}) == numbered(1));
    CHECK(blend(numbered(1), numbered(3), Share{1}) == numbered(3));
    CHECK(blend(numbered(1), numbered(3), Share{0.5}) == numbered(2));
}

TEST_CASE("Blending keeps every substance") {
    CHECK_PROPERTY("litres x grams per litre before and after", [] {
        const double old = *rc::gen::inRange(1, 300), fresh = *rc::gen::inRange(0, 300);
        const auto a = numbered(*rc::gen::inRange(0, 50)), b = numbered(*rc::gen::inRange(0, 50));
        const auto mixed = blend(a, b, Share{fresh / (old + fresh)});
        for (auto pool : compositionPools)
            RC_ASSERT(std::abs(mixed.*pool * (old + fresh) - (a.*pool * old + b.*pool * fresh)) <
                      1e-9 * (1 + old + fresh) * 100);
    });
}

TEST_CASE("Composition gives bitterness, alcohol and residual carbohydrate") {
    Composition beer;
    beer.isoCis = 6.8;
    beer.isoTrans = 3.2;
    beer.ethanol = 39.45;
    beer.dextrin = 10.98;
    beer.sugar = 1.05;
    CHECK(beer.bitterness().ibu == Approx(10));
    CHECK(beer.alcohol().pct == Approx(5)); // 7.89 g per 10 mL of ethanol
    CHECK(beer.carbohydrate() == Approx(11));
}

} // namespace staveline
