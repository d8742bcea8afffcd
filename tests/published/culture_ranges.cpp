// SPDX-License-Identifier: GPL-3.0-or-later
// Beers of long-run vessels against published ranges. Ranges are wide: they show that nothing is absurd, no more.
#include "forward/predict.h"
#include "quantity/acid_base.h"
#include "support/catch.h"
#include "support/reference_pantry.h"
#include "support/settled.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::forward;

namespace {

Outcome settledBase(Days interval, Share share, const Parameters& p = {}) {
    const BrewInput input = reference::inputFor(reference::baseRecipe());
    const RefillBeer beer = brew(input, p.brew);
    const Plan plan{.refillShare = share, .interval = interval};
    return reference::settledOutcome(p, youngVessel(beer.beer, p.culture), beer, plan);
}

void checkWithin(double value, double low, double high) {
    CHECK(value >= low);
    CHECK(value <= high);
}

} // namespace

TEST_CASE("A settled vessel at usual settings lies in the ranges of lambic and gueuze", "[published]") {
    const Outcome beer = settledBase({365}, {.35});
    // pH 3.2-3.6 (trade encyclopaedia) and 3.2-3.4 (Van Oevelen et al. 1977, quoted).
    checkWithin(beer.ph.ph, 3.2, 3.6);
    // Lactic acid of finished lambic 4-8 g/L (Van Oevelen, quoted).
    checkWithin(beer.state.beer.lactic, 4, 8);
}

TEST_CASE("Calibration: titratable acidity of a settled vessel at usual settings", "[published]") {
    // 5-9 g/L as lactic: from memory; one sample 7.83 (De Roos et al. 2018, Front. Microbiol. 9:2763). The culture was
    // fitted to 5.9.
    checkWithin(settledBase({365}, {.35}).ta.gPerL, 5, 9);
}

TEST_CASE("From memory, no source: phenols and extract of a settled vessel at usual settings", "[published]") {
    const Outcome beer = settledBase({365}, {.35});
    // Ethyl phenols together 0.5-3 mg/L: from memory.
    checkWithin(beer.state.beer.ethylGuaiacol + beer.state.beer.ethylPhenol, .5, 3);
    // Final apparent extract 0-1 P, now and then down to -0.5: from memory.
    checkWithin(beer.gravity.p, -.5, 1);
}

TEST_CASE("Expected miss: gueuze by HPLC holds less lactic and more acetic acid than the model", "[published]") {
    // Thesis, Virginia Tech 2012: lactic 0.995-2.557, acetic 0.723-1.624 g/L. At pH 3.2-3.4 the charges ask for 3.5-5
    // g/L of lactic acid; acetic acid in old vessels comes from air that the model does not know of. Both misses are
    // told in the README; a smaller one is to be told there too.
    const Composition beer = settledBase({365}, {.35}).state.beer;
    CHECK(beer.lactic - 2.557 == Approx(1.7).margin(.2));
    CHECK(.723 / beer.acetic == Approx(3.8).margin(.3));
}

TEST_CASE("Expected miss: about 4 g/L of lactic acid in lambic of eight months, De Roos 2018", "[published]") {
    // Front. Microbiol. 9:2763, through a second text. Ordinary refill beer has less food than lambic wort, which the
    // yeast leaves 3 g/L of sugar and more dextrin; the measured course lies between the two, at 16 C. Both misses are
    // told in the README; smaller ones are to be told there too.
    const CultureParameters p;
    const Composition ordinary = brew(reference::inputFor(reference::baseRecipe())).beer;
    Composition lambic = ordinary;
    lambic.sugar = 3, lambic.dextrin = 18;
    const auto soured = [&](const Composition& beer, double days) {
        return age(youngVessel(beer, p), {{days}, {16}, 10}, p).beer.lactic;
    };
    CHECK(4 - soured(ordinary, 240) == Approx(1.2).margin(.1));
    CHECK(soured(lambic, 240) - 4 == Approx(1.3).margin(.1));
    CHECK(soured(ordinary, 30) < 1); // the first months belong to other microbes
}

TEST_CASE("Calibration: Brettanomyces beers hold 4-ethylphenol as well as 4-ethylguaiacol", "[published]") {
    // Dusart et al. 2023, J. Am. Soc. Brew. Chem. 81:357, through a second text: 0.123 against 0.054 mg/L in one beer,
    // 0.236 and 0.384 mg/L of 4-ethylguaiacol in others; wine holds several times more 4-ethylphenol. The share of
    // p-coumaric acid in the esters was set by it.
    const Composition beer = settledBase({240}, {.35}).state.beer;
    checkWithin(beer.ethylPhenol / beer.ethylGuaiacol, .4, 2.5);
    CHECK(beer.ethylPhenol > .30); // above its threshold
}

TEST_CASE("Attenuation passes 80 % apparent with Brettanomyces", "[published]") {
    // Lambic: Saccharomyces stops at 60-65 %, Brettanomyces goes past 80 % (trade encyclopaedia).
    const Outcome beer = settledBase({240}, {.35});
    CHECK((12 - beer.gravity.p) / 12 > .80);
}

TEST_CASE("Calibration: Methner 1987: 18 against 7 IBU leave about half of the acid", "[published]") {
    // Thesis, TU Berlin, quoted in a second text: two strains soured wort to 0.43 and 0.52 of the acid. The model
    // brakes the rate, the thesis gives end points, so this compares size, not value; the tolerance was back-calculated
    // from it.
    const CultureParameters p;
    const double ratio = hopFreedom({18}, p.hopTolerance, {4.2}, p) / hopFreedom({7}, p.hopTolerance, {4.2}, p);
    checkWithin(ratio, .43 - .05, .52 + .05);
}

TEST_CASE("Calibration: lactic acid in a cask of Flanders ale (the constants were fitted to these points)",
          "[published]") {
    // Martens, Iserentant, Verachtert 1997, J. Inst. Brew. 103 (quoted): 0.6 g/L when filled, about 4.5 after 35 and
    // 5.2 after 60 weeks. The rest of the starting state is our own guess, so a fifth either way.
    Composition beer{.lactic = .6, .acetic = .25, .buffer = 1.05, .sugar = 2, .dextrin = 16, .residue = 12};
    beer.isoCis = 6.8, beer.isoTrans = 3.2, beer.ethanol = 40;
    const VesselState filled{withPh(beer, {4.1}), .5, .3, 25};
    const auto after = [&](double weeks) { return age(filled, {{7 * weeks}, {18}, 10}, {}).beer.lactic; };
    CHECK(after(35) == Approx(4.5).epsilon(.2));
    CHECK(after(60) == Approx(5.2).epsilon(.2));
}
