// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/carbonation.h"
#include "finishing/priming.h"
#include "quantity/density.h"

#include "support/property.h"

#include <cmath>

namespace staveline::finishing {
namespace {

PrimingWish wish(std::string_view sugar, double wanted, double residual = .8) {
    PrimingWish out;
    out.beer = {100};
    out.wanted = {wanted};
    out.residual = {residual};
    out.sugar = primingSugar(sugar).value();
    return out;
}

std::string pathOf(const PrimingWish& wish) {
    return prime(wish).error().path;
}

} // namespace

TEST_CASE("Priming by sugar is undone by its inverse", "[priming]") {
    CHECK_PROPERTY("exact inverse", [] {
        const auto& all = builtInSugars();
        PrimingWish asked;
        asked.sugar = all[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(all.size())))];
        asked.beer = {*rc::gen::inRange(1, 4000) / 10.0};
        asked.residual = {*rc::gen::inRange(0, 100) / 100.0};
        asked.wanted = {asked.residual.vol + *rc::gen::inRange(0, 250) / 100.0};
        asked.extract = {*rc::gen::inRange(80, 180) / 10.0};
        const auto primed = prime(asked).value();
        // All CO2 that beer and priming bring, over all that is filled.
        const double brought =
            asked.residual.vol * asked.beer.l + volumesOf(primed.perLitre * asked.sugar.co2).vol * asked.beer.l;
        RC_ASSERT(std::abs(brought / (asked.beer + primed.liquid).l - asked.wanted.vol) < 1e-9);
        if (!asked.sugar.isLiquid())
            RC_ASSERT(std::abs(volumesWith(primed.perLitre, asked.residual, asked.sugar)->vol - asked.wanted.vol) <
                      1e-9);
        RC_ASSERT(primed.most >= primed.gives);
    });
}

TEST_CASE("Grams per package and per batch are those per litre", "[priming]") {
    PrimingWish asked = wish("sucrose", 2.8);
    asked.package = {750};
    const auto primed = prime(asked).value();
    CHECK(primed.perPackage.g == Approx(.75 * primed.perLitre.gPerL));
    CHECK(primed.batch.kg == Approx(.1 * primed.perLitre.gPerL));
    CHECK(primed.packages == 133);
    CHECK(primed.liquid == Litres{0});
    CHECK(primed.gives.vol == Approx(2.0));
}

TEST_CASE("Wort brings its volume along", "[priming]") {
    PrimingWish asked = wish("wort", 2.5, .5);
    asked.extract = {12};
    asked.package = {750};
    const auto primed = prime(asked).value();
    // 12 P (1.0484 kg/L by the tables of Plato) is 125.8 g/L of extract; 0.347 of it is 43.7 g/L of CO2, 22.1 volumes;
    // (2.5 - 0.5) / (22.1 - 2.5) = 0.102 L for each litre
    CHECK(primed.liquid.l == Approx(10.2).margin(.05));
    CHECK(primed.batch.kg == Approx(10.2 * .1258).margin(.01));
    CHECK(primed.packages == 146); // 110.2 L
    CHECK(primed.perPackage.g * primed.packages / 1000 == Approx(primed.batch.kg).epsilon(.01));
}

TEST_CASE("What is lost on the way is not counted as bottles, and is told as usual", "[priming]") {
    PrimingWish asked = wish("sucrose", 2.5);
    CHECK(prime(asked)->packages == 303);
    const double batch = prime(asked)->batch.kg;
    asked.lost = usualLoss(asked.beer); // 0.75 L and a hundredth
    CHECK(asked.lost.l == Approx(1.75));
    CHECK(prime(asked)->packages == 297);           // 98.25 L
    CHECK(prime(asked)->batch.kg == Approx(batch)); // it is in what is lost as well
    CHECK(usualLoss({.5}).l <= .5);
    for (const double impossible : {-1.0, 101.0}) {
        asked.lost = {impossible};
        CHECK(pathOf(asked) == "/lost_l");
    }
}

TEST_CASE("Priming that cannot be is refused at its field", "[priming]") {
    CHECK(pathOf(wish("sucrose", 7)) == "/volumes");
    CHECK(pathOf(wish("dry_malt_extract", 6, 0)) == "/volumes"); // 35 g/L
    CHECK(pathOf(wish("sucrose", .5)) == "/volumes");
    PrimingWish litres = wish("sucrose", 2.5);
    litres.beer = {-3};
    CHECK(pathOf(litres) == "/litres");
    PrimingWish size = wish("sucrose", 2.5);
    size.package = {0};
    CHECK(pathOf(size) == "/bottle_ml");
    PrimingWish thin = wish("wort", 3);
    thin.extract = {2};
    CHECK(pathOf(thin) == "/extract_p");
    CHECK(primingSugar("molasses").error().path == "/sugar");
    // 40 g/L of sugar would be 11 volumes
    CHECK(volumesWith({40}, {.8}, primingSugar("sucrose").value()).error().path == "/sugar_g_l");
    CHECK(volumesWith({-1}, {.8}, primingSugar("sucrose").value()).error().path == "/sugar_g_l");
}

} // namespace staveline::finishing
