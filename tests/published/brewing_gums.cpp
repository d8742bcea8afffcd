// SPDX-License-Identifier: GPL-3.0-or-later
// Gums of beer against published ranges.
#include "brewing/refill_beer.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ingredient;

TEST_CASE("Published: arabinoxylan in beer, Schwarz & Han 1995") {
    // J. Am. Soc. Brew. Chem. 53:157: 0.5-4.2 g/L in beers of many grists.
    const std::vector<std::vector<GristPart>> grists = {{{"pilsner", {1}}},
                                                        {{"pilsner", {.75}}, {"wheat_malt", {.25}}},
                                                        {{"pale", {.9}}, {"caramel_medium", {.1}}},
                                                        {{"pilsner", {.7}}, {"rye_malt", {.3}}},
                                                        {{"pilsner", {.75}}, {"raw_rye", {.25}}},
                                                        {{"pilsner", {.6}}, {"raw_wheat", {.4}}}};
    for (const auto& grist : grists) {
        Recipe recipe;
        recipe.grist = grist;
        recipe.mash = {{{66}, {60}}};
        for (double plato : {10., 12., 14.}) {
            recipe.originalGravity = {plato};
            const double xylan = brew(resolve(recipe, builtInPantry(), {1}).value()).beer.arabinoxylan;
            CAPTURE(grist.back().grain, plato);
            CHECK(xylan >= .5);
            CHECK(xylan <= 4.2);
        }
    }
}
