// SPDX-License-Identifier: GPL-3.0-or-later
// From chemistry to score against published psychophysics. The maps were set by us; where they part from what panels
// found, the size of the miss stands here and in the README.
#include "quantity/acid_base.h"
#include "support/catch.h"
#include "tasting/score_map.h"

#include <cmath>

using namespace staveline;
using namespace staveline::tasting;

namespace {

/// The ordinary beer of 5 % vol that scores 5 for body.
Composition ordinary() {
    return {.sid = 16,
            .dextrin = 31,
            .ethanol = 39.5,
            .otherExtract = 10,
            .glycerol = 2,
            .betaGlucan = .15,
            .arabinoxylan = 1.1};
}
double body(const Composition& beer) {
    return scores(beer)[Dimension::body];
}
double bodyWith(double Composition::*pool, double amount) {
    Composition beer = ordinary();
    beer.*pool = amount;
    return body(beer);
}
double alcoholBody(double percent) {
    return bodyWith(&Composition::ethanol, percent * ethanolPerPercent);
}
double funkOfEthylPhenol(double mgPerL) {
    return scores({.sid = 16, .ethylPhenol = mgPerL})[Dimension::funk];
}
/// Growth of funk with concentration: exponent of a power law there.
double odourExponent(double score) {
    double low = 1e-3, high = 1e3;
    for (int i = 0; i < 100; ++i)
        (funkOfEthylPhenol(std::sqrt(low * high)) < score ? low : high) = std::sqrt(low * high);
    return std::log(funkOfEthylPhenol(low * 1.01) / funkOfEthylPhenol(low / 1.01)) / (2 * std::log(1.01));
}
double sourness(double ta, double alcohol = 5) {
    return acidityScore({ta}, {0}, {alcohol});
}

} // namespace

TEST_CASE("Fischer & Noble 1994: alcohol takes a little of the sourness, no more", "[published]") {
    // Am. J. Enol. Vitic. 45:6, abstract: no effect but at pH 3.2, where 8 to 14 % vol lowered it.
    CHECK(sourness(7, 14) < sourness(7, 8));
    CHECK(sourness(7, 8) - sourness(7, 14) < sourness(7 * 1.21) - sourness(7)); // less than is told apart
}

TEST_CASE("Expected miss: at the same titration the lower pH tastes a little sourer, Plane 1980", "[published]") {
    // Plane, Mattick & Weirs 1980, Am. J. Enol. Vitic. 31:265, abstract: 0.1 pH is worth 0.12 g/L. The map has no pH;
    // between the thinnest and the richest buffer of Choi 2022 that comes to less than one tastes.
    const auto phOf = [](double buffer) {
        return ph(withTitratableAcidity(withPh({.lactic = .2, .acetic = .1, .buffer = buffer}, {4.3}), {6})).ph;
    };
    const double apart = phOf(.92 + .22) - phOf(.92 - .22);
    CHECK(sourness(6 + 1.2 * apart) - sourness(6) == Approx(.18).margin(.03));
}

TEST_CASE("Da Conceicao Neta 2007: sourness follows the undissociated acid, with a bend as an expected miss",
          "[published]") {
    // J. Food Sci. 72:S352, abstract: linear in protonated acid and hydrogen ions, R2 0.88-0.995. Titratable acidity
    // above the beer's own stands for them as well; the map bends where the paper's scale does not.
    const Composition fresh = withPh({.lactic = .2, .acetic = .1, .buffer = 1}, {4.3});
    double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0, syy = 0;
    for (const double lactic : {1., 2., 3., 4., 5., 6., 8.}) {
        Composition beer = fresh;
        beer.lactic = lactic;
        const double hydrogen = std::pow(10, -ph(beer).ph);
        const double x =
            1e3 * hydrogen + 1e3 * lactic / lacticMolarMass * hydrogen / (hydrogen + std::pow(10, -lacticPka));
        const double y = titratableAcidity(beer).gPerL;
        n += 1, sx += x, sy += y, sxx += x * x, sxy += x * y, syy += y * y;
    }
    const double r = (n * sxy - sx * sy) / std::sqrt((n * sxx - sx * sx) * (n * syy - sy * sy));
    CHECK(r * r > .975);
    CHECK(2 - sourness(1.5 + 6) / sourness(1.5 + 3) == Approx(.43).margin(.03)); // twice the acid: published 2
}

TEST_CASE("Shayevitz 2022: acetic acid is tasted at a fifth of the lactic acid", "[published]") {
    // J. Am. Soc. Brew. Chem. 80:258, through a second text: 140 against 686 mg/L.
    const AcidParts atThreshold = acidParts({.lactic = .686, .acetic = .140});
    CHECK(atThreshold.milk / atThreshold.vinegar == Approx(1).epsilon(.25));
    CHECK(atThreshold.vinegar == Approx(1).epsilon(.25));
}

TEST_CASE("Meilgaard 1982: phenols of one flavour add", "[published]") {
    // J. Agric. Food Chem. 30:1009, abstract: similar flavours add, in 26 tests of groups.
    const ScoreParameters p;
    const Composition both{
        .sid = 16, .ethylGuaiacol = 2 * p.ethylGuaiacolThreshold, .ethylPhenol = 2 * p.ethylPhenolThreshold};
    CHECK(scores(both)[Dimension::funk] == Approx(funkOfEthylPhenol(4 * p.ethylPhenolThreshold)).epsilon(1e-9));
}

TEST_CASE("No barnyard below 0.245 mg/L of 4-ethylphenol, surely some above 0.968", "[published]") {
    // Period. Polytech. Chem. Eng., article 12857, on wines, abstract. 3 on the sheet is "weak but clear".
    CHECK(funkOfEthylPhenol(.245) < 1.5);
    CHECK(funkOfEthylPhenol(.968) >= 3);
}

TEST_CASE("Odours grow with an exponent of 0.2 to 0.8; a faint funk grows faster, an expected miss", "[published]") {
    // Range of Stevens' exponents of odours, through a second text.
    for (const double score : {4., 6., 8.}) {
        CHECK(odourExponent(score) > .2);
        CHECK(odourExponent(score) < .8);
    }
    CHECK(odourExponent(1) - .8 == Approx(.28).margin(.03));
}

TEST_CASE("Expected miss: body rises faster with viscosity than thickness in the mouth does", "[published]") {
    // Christensen 1979, J. Texture Stud. 10:33: exponent 0.29 in the mouth; Stevens & Guirao 1964, Science 144:1157:
    // 0.42-0.46; abstracts. Their scales have no zero within the liquids, the sheet's body has.
    Composition thicker = ordinary();
    thicker.betaGlucan += .1;
    const double exponent =
        std::log(body(thicker) / body(ordinary())) / std::log(viscosity(thicker) / viscosity(ordinary()));
    CHECK(exponent - .46 == Approx(.33).margin(.03));
}

TEST_CASE("Expected miss: a panel did not notice 50 g/L of dextrin, Ragot 1989", "[published]") {
    // Ragot, Guinard, Shoemaker & Lewis 1989, J. Inst. Brew. 95:427 (reference from memory), through
    // scottjanish.com/dextrins-and-mouthfeel: light beer dosed with 20-70 g/L, more than 50 were needed. The model
    // would make it two points; in a mixed culture dextrin does not stay.
    CHECK(bodyWith(&Composition::dextrin, 31 + 50) - 5 == Approx(2.0).margin(.2));
}

TEST_CASE("Alcohol gives body up to a point, Ivanova 2023, Pickering 1998", "[published]") {
    // Food Qual. Prefer. 2023:105004, abstract: 0.05, 2.8 and 4.5 % vol rise in body.
    CHECK(alcoholBody(2.8) > alcoholBody(.05));
    CHECK(alcoholBody(4.5) > alcoholBody(2.8));
    // Am. J. Enol. Vitic. 49:306, abstract: wines of 7 to 14 % are not told apart, the most at 10 and 12 %. Expected
    // miss: the model adds a point.
    CHECK(alcoholBody(14) - alcoholBody(10) < alcoholBody(7) - alcoholBody(3));
    CHECK(alcoholBody(14) - alcoholBody(7) == Approx(1.0).margin(.2));
}

TEST_CASE("Glycerol is not noticed below 10 g/L, and against alcohol weighs too much, an expected miss",
          "[published]") {
    // "The quantitative determination of glycerol in beer by gas-liquid chromatography", abstract
    // (scilit.com/publications/88c930441807d6e227c7ce092fa98b69): detected in a test beer at 10 g/L; 0.3 points is what
    // the program calls noticed.
    CHECK(bodyWith(&Composition::glycerol, 10) - 5 > .3);
    CHECK(bodyWith(&Composition::glycerol, 5) - 5 < .3);
    // Nurgel & Pickering 2005, J. Texture Stud. 36:303, abstract: sugar most, alcohol of 3-15 % moderate, glycerol of
    // 5-50 g/L nominal.
    const double alcohol = alcoholBody(15) - alcoholBody(3);
    const double glycerol = bodyWith(&Composition::glycerol, 50) - bodyWith(&Composition::glycerol, 5);
    CHECK(bodyWith(&Composition::sugar, 80) - body(ordinary()) > alcohol);
    CHECK(glycerol - alcohol == Approx(.37).margin(.05)); // published: far less than 0
}

TEST_CASE("Krebs 2021: fuller beers are of more gravity, thicker and richer in beta-glucan", "[published]") {
    // J. Food Sci., abstract, 41 lagers: all three correlate with palate fullness.
    Composition strong = ordinary();
    for (const auto pool : {&Composition::dextrin, &Composition::ethanol, &Composition::otherExtract})
        strong.*pool *= 14. / 12;
    CHECK(body(strong) > body(ordinary()));
    CHECK(bodyWith(&Composition::betaGlucan, .3) > body(ordinary()));
    CHECK(bodyWith(&Composition::arabinoxylan, 2.2) > body(ordinary()));
}
