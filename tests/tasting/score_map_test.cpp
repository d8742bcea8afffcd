// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/acid_base.h"
#include "support/property.h"
#include "tasting/score_map.h"

#include <cmath>

using namespace staveline;
using namespace staveline::tasting;

namespace {

const ScoreParameters usual;

double uniform(double low, double high) {
    return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
}

/// The ordinary 5 % beer that is the zero of the body scale.
Composition ordinaryBeer() {
    return {.lactic = .2,
            .sid = 16.358,
            .ethanol = 39.5,
            .otherExtract = 40,
            .glycerol = 2,
            .betaGlucan = .15,
            .arabinoxylan = usual.ordinaryArabinoxylan};
}

/// A beer whose phenols add up to `units` of funk.
Composition funky(double units) {
    return {.sid = 16, .ethylPhenol = units * usual.ethylPhenolThreshold};
}

double score(const Composition& beer, Dimension d) {
    return scores(beer)[d];
}

} // namespace

TEST_CASE("Regression: acidity score of an effective acidity", "[tasting][regression]") {
    ScoreParameters plain; // 5 % vol and 2.4 volumes of CO2: nothing softens or sharpens
    plain.carbonation = 2.4;
    struct Row {
        double ta, score;
    };
    for (const Row row : {Row{1.5, 0}, Row{2, 1.24}, Row{3, 2.54}, Row{4, 3.54}, Row{5, 4.40}, Row{6, 5.18},
                          Row{7, 5.91}, Row{8, 6.58}, Row{10, 7.84}, Row{12, 8.99}, Row{15, 10}}) {
        CAPTURE(row.ta);
        CHECK(acidityScore({row.ta}, {0}, {5}, plain) == Approx(row.score).margin(.006));
    }
    CHECK(acidityScore({6}, {1}, {5}, plain) == Approx(5.51).margin(.006)); // acetic acid: 6.45 effective
}

TEST_CASE("Acidity and its inverse undo each other", "[tasting][property]") {
    CHECK_PROPERTY("inside the scale", [] {
        const GramsPerLitre acetic{uniform(0, 1)};
        const PercentVol alcohol{uniform(0, 12)};
        const double wanted = uniform(.1, 9);
        const GramsPerLitre ta = titratableAcidityFor(wanted, acetic, alcohol);
        RC_PRE(ta.gPerL > 0);
        RC_ASSERT(std::abs(acidityScore(ta, acetic, alcohol) - wanted) < 1e-9);
    });
    CHECK(titratableAcidityFor(0, {0}, {5}).gPerL == Approx(usual.ownAcidity));
    CHECK(acidityScore(titratableAcidityFor(0, {0}, {5}), {0}, {5}) == 0);
    CHECK(titratableAcidityFor(-4, {0}, {5}).gPerL == Approx(usual.ownAcidity));
    CHECK(std::isfinite(titratableAcidityFor(40, {0}, {5}).gPerL));
    CHECK(titratableAcidityFor(1, {50}, {5}).gPerL == 0);
}

TEST_CASE("Sourness follows acid, alcohol softens it, gas sharpens it", "[tasting]") {
    CHECK(acidityScore({6}, {0}, {5}) > acidityScore({5}, {0}, {5}));
    CHECK(acidityScore({6}, {.5}, {5}) > acidityScore({6}, {0}, {5}));
    CHECK(acidityScore({6}, {0}, {9}) < acidityScore({6}, {0}, {5}));
    CHECK(acidityScore({6}, {0}, {2}) == acidityScore({6}, {0}, {5}));
    ScoreParameters fizzy = usual;
    fizzy.carbonation = 4;
    CHECK(acidityScore({6}, {0}, {5}, fizzy) > acidityScore({6}, {0}, {5}));
}

TEST_CASE("Regression: funk by flavour units", "[tasting][regression]") {
    struct Row {
        double units, score;
    };
    for (const Row row : {Row{.3, .27}, Row{.5, .48}, Row{1, 1.04}, Row{2, 2.11}, Row{3, 3.03}, Row{5, 4.46}, Row{6, 5},
                          Row{10, 6.49}, Row{20, 8.09}, Row{30, 8.73}, Row{50, 9.27}}) {
        CAPTURE(row.units);
        CHECK(score(funky(row.units), Dimension::funk) == Approx(row.score).margin(.006));
    }
    // Its inverse, score 1 to 8.
    const double units[] = {.96, 1.89, 2.96, 4.28, 6.00, 8.41, 12.16, 19.05};
    for (int i = 0; i < 8; ++i)
        CHECK(score(funky(units[i]), Dimension::funk) == Approx(i + 1).margin(.01));
}

TEST_CASE("Funk is spice and horse, vinyl phenols count half", "[tasting]") {
    const Composition beer{.vinylGuaiacol = .30, .vinylPhenol = .25, .ethylGuaiacol = .26, .ethylPhenol = .90};
    const FunkParts parts = funkParts(beer);
    CHECK(parts.spice == Approx(2 + .5));
    CHECK(parts.horse == Approx(3 + .5));
    CHECK(score(beer, Dimension::funk) == Approx(score(funky(6), Dimension::funk)));
    CHECK(score({}, Dimension::funk) < 1e-3);
}

TEST_CASE("Both acids are shown in multiples of their threshold", "[tasting]") {
    const AcidParts parts = acidParts({.lactic = 5.5, .acetic = .26});
    CHECK(parts.milk == Approx(10));
    CHECK(parts.vinegar == Approx(2));
}

TEST_CASE("Regression: viscosity of five beers", "[tasting][regression]") {
    struct Row {
        double extract, ethanol, glycerol, glucan, xylan, viscosity;
    };
    const Row rows[] = {{40, 39.5, 2, .15, .5, 1.555},
                        {10, 50, 2, .15, .5, 1.410},
                        {10, 50, 2, .45, .5, 1.518},
                        {10, 50, 2, .15, 2.5, 1.710},
                        {10, 50, 6, .15, .5, 1.421}};
    for (const Row& r : rows) {
        const Composition beer{.ethanol = r.ethanol,
                               .otherExtract = r.extract,
                               .glycerol = r.glycerol,
                               .betaGlucan = r.glucan,
                               .arabinoxylan = r.xylan};
        CAPTURE(r.glucan, r.xylan);
        CHECK(viscosity(beer, {.arabinoxylanThickening = .10}) == Approx(r.viscosity).margin(.001));
    }
}

TEST_CASE("An ordinary beer has body 5, one noticeable step of viscosity moves it as stated", "[tasting]") {
    const Composition beer = ordinaryBeer();
    CHECK(score(beer, Dimension::body) == Approx(5));
    Composition thicker = beer;
    while (viscosity(thicker) < viscosity(beer) * usual.viscosityStep)
        thicker.betaGlucan += 1e-5;
    CHECK(score(thicker, Dimension::body) == Approx(5 + usual.bodyPerStep).margin(.001));
}

TEST_CASE("What fills the mouth raises body", "[tasting]") {
    const double before = score(ordinaryBeer(), Dimension::body);
    for (const auto pool : {&Composition::dextrin, &Composition::residue, &Composition::ethanol, &Composition::glycerol,
                            &Composition::betaGlucan, &Composition::arabinoxylan}) {
        Composition more = ordinaryBeer();
        more.*pool += 1;
        CHECK(score(more, Dimension::body) > before);
    }
    Composition strong = ordinaryBeer(), stronger = ordinaryBeer();
    strong.ethanol = 80, stronger.ethanol = 90; // beyond 10 % vol only viscosity still counts
    const double rest = score(stronger, Dimension::body) - score(strong, Dimension::body);
    CHECK(rest < 10 * usual.bodyPerAlcohol);
}

TEST_CASE("Scores stay on the scale", "[tasting][property]") {
    CHECK_PROPERTY("0..10", [] {
        Composition beer;
        for (const auto pool : compositionPools)
            beer.*pool = uniform(0, 200);
        for (const Dimension d : allDimensions) {
            const double s = score(beer, d);
            RC_ASSERT(s >= 0 && s <= 10);
        }
    });
}

TEST_CASE("The acidity score is that of the beer's own titratable acidity", "[tasting]") {
    const Composition beer{.lactic = 4, .acetic = .3, .sid = 16.358, .ethanol = 50};
    CHECK(score(beer, Dimension::acidity) ==
          Approx(acidityScore(titratableAcidity(beer), {.3}, beer.alcohol())).epsilon(1e-12));
}
