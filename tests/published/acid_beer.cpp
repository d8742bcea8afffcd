// SPDX-License-Identifier: GPL-3.0-or-later
// pH and titratable acidity of beer against published measurements.
#include "brewing/refill_beer.h"
#include "forward/parameters.h"
#include "quantity/acid_base.h"
#include "support/catch.h"

#include <cmath>
#include <vector>

using namespace staveline;
using namespace staveline::forward;

namespace {

struct MeasuredBeer {
    double ph, citricPercent;
};
/// Choi et al. 2022, Korean J. Food Preserv. 29:292-300: thirteen beers, pH and titratable acidity as citric acid.
constexpr MeasuredBeer choi2022[] = {{4.07, .14}, {4.27, .10}, {4.24, .10}, {4.15, .11}, {4.49, .15},
                                     {4.40, .15}, {4.37, .13}, {4.44, .15}, {4.47, .15}, {4.18, .11},
                                     {4.38, .10}, {4.44, .12}, {4.06, .10}};

/// Lactic 0.1 and acetic 0.05 g/L are assumed, they were not measured; buffer 0.92 is the mean over the thirteen.
double modelTa(double measuredPh, double buffer) {
    return titratableAcidity(withPh({.lactic = .1, .acetic = .05, .buffer = buffer}, {measuredPh})).gPerL;
}
double measuredTa(const MeasuredBeer& beer) {
    return asLactic({beer.citricPercent * 10}, Acid::citric).gPerL;
}

} // namespace

TEST_CASE("Choi 2022: titratable acidity of thirteen beers from their pH within 0.55 g/L", "[published]") {
    double bias = 0;
    for (const MeasuredBeer& beer : choi2022) {
        CAPTURE(beer.ph, beer.citricPercent);
        const double difference = modelTa(beer.ph, .92) - measuredTa(beer);
        CHECK(std::abs(difference) < .55);
        bias += difference / std::size(choi2022);
    }
    CHECK(std::abs(bias) < .05);
}

TEST_CASE("Calibration: Choi 2022: the buffer that meets each beer scatters as the prior says", "[published]") {
    double sum = 0, squares = 0;
    for (const MeasuredBeer& beer : choi2022) {
        const double at0 = modelTa(beer.ph, 0), at1 = modelTa(beer.ph, 1);
        const double buffer = (measuredTa(beer) - at0) / (at1 - at0);
        sum += buffer;
        squares += buffer * buffer;
    }
    constexpr double n = std::size(choi2022);
    const double mean = sum / n, sd = std::sqrt((squares - n * mean * mean) / (n - 1));
    CHECK(mean == Approx(.92).margin(.02));
    CHECK(sd == Approx(.22).margin(.02));
    for (const Prior& prior : builtInPriors())
        if (prior.parameter == "beerBuffer")
            CHECK(prior.spread == .22);
}

TEST_CASE("Choi 2022: ordinary beer titrates to 1.4-3.2 g/L", "[published]") {
    const Composition fresh = withPh({.lactic = .2, .acetic = .1, .buffer = 1}, {4.3});
    CHECK(titratableAcidity(fresh).gPerL > 1.4);
    CHECK(titratableAcidity(fresh).gPerL < 3.2);
}

TEST_CASE("Blending: titratable acidity is the mean by volume, pH is far from it", "[published]") {
    // Conservation of acid: each litre brings its own titration. No source needed.
    const Composition old = [] {
        Composition beer = withPh({.lactic = .2, .acetic = .1, .buffer = 1}, {4.3});
        beer.lactic = 6, beer.acetic = .8;
        return beer;
    }();
    const Composition fresh = withPh({.lactic = .2, .acetic = .1, .buffer = 1.1}, {4.4});
    for (const double share : {.25, .5, .75}) {
        const double mean = (1 - share) * titratableAcidity(old).gPerL + share * titratableAcidity(fresh).gPerL;
        CHECK(titratableAcidity(blend(old, fresh, {share})).gPerL == Approx(mean).epsilon(1e-12));
    }
    const double mixed = ph(blend(old, fresh, {.5})).ph;
    const double linear = .5 * (ph(old).ph + ph(fresh).ph);
    CHECK(linear - mixed > .3);
    // Rough cellar rule (common practice, no source): hydrogen ions blend better than pH.
    const double hydrogen = .5 * (std::pow(10, -ph(old).ph) + std::pow(10, -ph(fresh).ph));
    CHECK(mixed == Approx(-std::log10(hydrogen)).margin(.02));
}

TEST_CASE("Calibration: lambic wort soured to pH 4.5 holds 1.2 g/L of lactic acid, an expected miss, De Roos 2018",
          "[published]") {
    // Front. Microbiol. 9:2763, through a second text. The buffer of wort was set by this one wort and rounded; its pH
    // before souring is ours.
    const brewing::BrewParameters p;
    const double sid = anionCharge({p.phWort}, 0, 0, p.wortBuffer);
    CHECK(4.5 - solvePh(1.2, 0, p.wortBuffer, sid).ph == Approx(.14).margin(.03));
    CHECK(solvePh(1.2, 0, 1, anionCharge({p.phWort}, 0, 0, 1)).ph < 4.2); // with the buffer of beer it would be sourer
}
