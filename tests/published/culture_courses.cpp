// SPDX-License-Identifier: GPL-3.0-or-later
// Time courses in the vessel against published ones. "Through a second text": the paper itself was not seen.
#include "brewing/refill_beer.h"
#include "culture/vessel_state.h"
#include "quantity/acid_base.h"
#include "support/catch.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;

namespace {

/// Beer of the usual grist with what a lambic wort leaves beyond it.
Composition lambicBeer() {
    Recipe recipe;
    recipe.grist = {{"pilsner", {.65}}, {"raw_wheat", {.35}}};
    recipe.mash = {{{66}, {60}}};
    Composition beer = brew(resolve(recipe, ingredient::builtInPantry(), {1}).value()).beer;
    beer.sugar = 3, beer.dextrin = 18;
    return beer;
}
VesselState lambicAfter(double days, double oxygen = 10) {
    const CultureParameters p;
    return age(youngVessel(lambicBeer(), p), {{days}, {16}, oxygen}, p);
}
/// Share of the bitter acids left in a bottle: no wood, no culture.
Composition bottled(double days, double celsius) {
    CultureParameters bottle;
    bottle.vesselHopLoss = 0;
    return age({{.sid = 16, .isoCis = 1, .isoTrans = 1}, 0, 0, 20}, {{days}, {celsius}, 0}, bottle).beer;
}
/// Growth of a small Brettanomyces in food [1/d].
double brettGrowthAt(double celsius) {
    const VesselState sown{{.sid = 16, .sugar = 20, .dextrin = 60}, 0, .001, 20};
    return std::log(age(sown, {{5}, {celsius}, 0}, {}).brett / .001) / 5;
}

} // namespace

TEST_CASE("Expected miss: trans bitter acids fade faster in the first months, Araki 2002", "[published]") {
    // J. Am. Soc. Brew. Chem. 60:26, through a second text: at 20 C 10, 25, 35 and 45 % of the trans acids are gone
    // after 20, 50, 100 and 200 d, cis acids stay, 30 C nearly triples the rate. Read to 5 %.
    const auto tooMuch = [](double days, double left) { return bottled(days, 20).isoTrans - left; };
    CHECK(tooMuch(20, .90) == Approx(.06).margin(.02));
    CHECK(tooMuch(50, .75) == Approx(.16).margin(.02));
    CHECK(tooMuch(100, .65) == Approx(.18).margin(.02));
    CHECK(tooMuch(200, .55) == Approx(.13).margin(.02));
    CHECK(bottled(200, 20).isoCis > .90);
    CHECK(std::log(bottled(50, 30).isoTrans) / std::log(bottled(50, 20).isoTrans) == Approx(3).margin(.3));
}

TEST_CASE("Gahr 2020: hardly any bitterness is lost at 4 C", "[published]") {
    // BrewingScience 73 (11/12), abstract.
    CHECK(bottled(240, 4).isoTrans > .90);
}

TEST_CASE("Calibration: Gahr 2020: trans bitter acids are 5 to 8 times as short-lived as cis", "[published]") {
    // BrewingScience 73 (11/12), abstract. The half-lives stand in the table as five to one.
    const double ratio = std::log(bottled(240, 20).isoTrans) / std::log(bottled(240, 20).isoCis);
    CHECK(ratio >= 5 * (1 - 1e-9));
    CHECK(ratio <= 8);
}

TEST_CASE("Spitaels 2014: lactics by the second month, Brettanomyces by the sixth", "[published]") {
    // PLoS ONE 9:e95384, abstract: Pediococcus damnosus and Saccharomyces at two months, Dekkera bruxellensis at six.
    CHECK(lambicAfter(60).lactics > lambicAfter(60).brett);
    CHECK(lambicAfter(60).brett < .5);
    CHECK(lambicAfter(180).brett > .5);
}

TEST_CASE("Bossaert 2021: bacteria and yeasts multiply in a cask of finished beer", "[published]") {
    // Int. J. Food Microbiol. 339:109030, abstract: densities generally rose from filling to 2, 12 and 38 weeks.
    CHECK(lambicAfter(2 * 7).brett > lambicAfter(0).brett);
    CHECK(lambicAfter(12 * 7).brett > lambicAfter(2 * 7).brett);
    CHECK(lambicAfter(38 * 7).brett > lambicAfter(12 * 7).brett);
    CHECK(lambicAfter(38 * 7).lactics > lambicAfter(0).lactics);
}

TEST_CASE("Calibration: lactics without sugar lose 0.2 to 0.8 % a day", "[published]") {
    // Front. Microbiol. 2018, 9:1785, table: 0.002-0.008 a day below 0.2 g/L of sugar. The rate was taken from it.
    for (const double sugar : {0., .1}) {
        const VesselState hungry{{.sid = 16, .sugar = sugar, .isoCis = 500}, .9, 0, 20}; // hops keep them from eating
        const double rate = -std::log(age(hungry, {{100}, {20}, 0}, {}).lactics / .9) / 100;
        CHECK(rate > .002);
        CHECK(rate < .008);
    }
}

TEST_CASE("Hop tolerance is won in three months and, an expected miss, not all lost in a year, Sakamoto 2003",
          "[published]") {
    // An account of a collector of strains, 2016, quoted on the page "Hops" of milkthefunk.com: L. brevis brought from
    // 10 to 20-30 IBU in about three months, in steps of 3 IBU; no publication. Sakamoto & Konings 2003, Int. J. Food
    // Microbiol. 89:105, through a second text: without hops the tolerance is gone after up to a year.
    CultureParameters p;
    p.hopTolerance = 10;
    VesselState lab{{.sid = 16, .sugar = 5}, .9, 0, 10};
    for (double ibu = 10; ibu < 30; ibu += 3) {
        lab.beer.isoCis = ibu;
        lab = age(lab, {{91. / 7}, {20}, 0}, p);
    }
    const double won = lab.hopTolerance;
    CHECK(won > 20);
    CHECK(won < 30);
    lab.beer.isoCis = 0;
    const double kept = (age(lab, {{365}, {20}, 0}, p).hopTolerance - 10) / (won - 10);
    CHECK(kept == Approx(.26).margin(.03)); // published: 0
}

TEST_CASE("Expected miss: pH of lambic dips and comes back, Van Oevelen 1977", "[published]") {
    // J. Inst. Brew. 83:356, through a second text: about 3.0 at sixteen months, 3.2-3.4 when finished. The model falls
    // more slowly and on: nothing in it eats acid again.
    CHECK(ph(lambicAfter(480).beer).ph - 3.0 == Approx(.12).margin(.03));
    CHECK(3.2 - ph(lambicAfter(730).beer).ph == Approx(.10).margin(.03));
}

TEST_CASE("Van Oevelen 1976: lactic acid after the third month; acetic acid before it, an expected miss",
          "[published]") {
    // J. Inst. Brew. 82:322, abstract: alcohol and all acetic acid in the first three months, then lactic acid. Van
    // Oevelen 1977, through a second text: without air 40-120 mg/L of acetic acid.
    const auto made = [](double Composition::*pool, double days) {
        return lambicAfter(days, 0).beer.*pool - lambicBeer().*pool;
    };
    CHECK(made(&Composition::lactic, 90) < .5 * made(&Composition::lactic, 365));
    const double early = made(&Composition::acetic, 90) / made(&Composition::acetic, 365);
    CHECK(1 - early == Approx(.51).margin(.05));                              // published: all of it is there by then
    CHECK(lambicAfter(365, 0).beer.acetic - .120 == Approx(.08).margin(.01)); // above the upper end
}

TEST_CASE("Conterno 2006: Brettanomyces grows half as fast at 20 C as at its best, and at 15 C still", "[published]") {
    // Am. J. Enol. Vitic. 57:139, through a second text: best between 22 and 32 C.
    CHECK(brettGrowthAt(20) / brettGrowthAt(27) == Approx(.5).margin(.1));
    CHECK(brettGrowthAt(15) > .1 * brettGrowthAt(27));
    CHECK(brettGrowthAt(15) < brettGrowthAt(20));
}

TEST_CASE("Expected miss: Brettanomyces dies within twelve hours at 36 C, Barata 2008", "[published]") {
    // Int. J. Food Microbiol. 121:201, abstract. In the model heat stops the culture and leaves it alive.
    const VesselState hot{{.sid = 16, .dextrin = 10}, .5, .9, 20};
    CHECK(age(hot, {{.5}, {36}, 0}, {}).brett / .9 == Approx(1).margin(.02)); // published: 0
}

TEST_CASE("Macrae 1964: hops do not kill lactics; that they stop them wholly is an expected miss", "[published]") {
    // Through a second text: inhibited cells revive. Simpson & Fernandez 1992, Lett. Appl. Microbiol. 14:13, through a
    // second text: no strain of 42 grew above 180 uM, 65 mg/L. The model's brake has no end, and wood takes the hops.
    const CultureParameters p;
    const VesselState hopped{{.lactic = .2, .sid = 16, .sugar = 5, .isoCis = 200}, .2, 0, 15};
    const VesselState stopped = age(hopped, {{120}, {16}, 0}, p);
    CHECK(stopped.lactics / .2 - 1 == Approx(.40).margin(.05)); // published: 0 or less
    const VesselState free = refill(stopped, {.lactic = .2, .sid = 16, .sugar = 5}, {.98}, p);
    const VesselState again = age(free, {{120}, {16}, 0}, p);
    CHECK(again.lactics > free.lactics);
    CHECK(again.beer.lactic > 1);
}
