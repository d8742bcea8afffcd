// SPDX-License-Identifier: GPL-3.0-or-later
// Outside checks of the tables of ingredients and of what acidulated malt and aged hops come to.
#include "brewing/grist.h"
#include "ingredient/hop.h"
#include "ingredient/pantry.h"
#include "quantity/acid_base.h"
#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <cmath>

using namespace staveline;
using namespace staveline::ingredient;

// J. Palmer, How to Brew, table 9: most extract of malts and grain [% of mass].
TEST_CASE("Published: yields of Palmer's table lie in the range of their row", "[published]") {
    const auto rows = CsvTable::parse(resources::find("data/grains.csv")).value();
    const std::vector<std::pair<std::string_view, double>> yields{
        {"amber_malt", 75},   {"brown_malt", 70},  {"chocolate_malt", 60}, {"black_malt", 55},  {"roasted_barley", 55},
        {"flaked_maize", 84}, {"flaked_rice", 82}, {"flaked_wheat", 77},   {"flaked_oats", 70}, {"flaked_barley", 70}};
    for (const auto& [id, yield] : yields) {
        CAPTURE(id);
        std::size_t row = 0;
        while (rows.text(row, "id") != id)
            ++row;
        CHECK(rows.number(row, "extract_low_pct").value() <= yield);
        CHECK(rows.number(row, "extract_high_pct").value() >= yield);
    }
}

// IUPAC atomic masses: water 18.02, glucose 180.16, lactose 342.30 g/mol.
TEST_CASE("Published: the water in sugar hydrates is that of their formula", "[published]") {
    const auto moisture = [](const char* id) { return builtInPantry().grain(id).value().moisture; };
    CHECK(moisture("dextrose") == Approx(18.02 / (180.16 + 18.02)).margin(.003));
    CHECK(moisture("lactose") == Approx(18.02 / (342.30 + 18.02)).margin(.003));
}

// The Oxford Companion to Beer, "acidulated malt": every per cent of the grist lowers the mash pH by 0.1. Mashes hold
// 35 to 45 mEq/(kg pH) (from memory). A measurement told in a brewers' forum in 2020: 337.7 mEq/kg to pH 5.4.
TEST_CASE("Published: the lactic acid of acidulated malt is what its effect in the mash asks for", "[published]") {
    const Grain malt = builtInPantry().grain("acidulated").value();
    const double acid = malt.lactic * 1e6 / lacticMolarMass; // mEq/kg
    const double givenOffAt54 = 1 / (1 + std::pow(10, lacticPka - 5.4));
    CHECK(acid * givenOffAt54 == Approx(337.7).epsilon(.05));
    for (const double buffer : {35., 45.})
        CHECK(.01 * acid * givenOffAt54 / buffer == Approx(.1).margin(.03));
}

// M. Garetz, BrewingTechniques 2(1), 1994: the loss of a variety is that in 180 days at 20 C in the open; the rate is
// halved for every 15 C below; storage factors 1, 0.75 and 0.5 (from memory).
TEST_CASE("Published: alpha acids in store, Garetz 1994", "[published]") {
    Hop hop;
    hop.alpha = Share{.10};
    hop.lostInSixMonths = Share{.5};
    hop.packed = HopPack::open;
    hop.storedAt = Celsius{20};
    CHECK(alphaAfter(hop, Days{180}).of1 == Approx(.05));
    hop.storedAt = Celsius{5};
    CHECK(alphaAfter(hop, Days{360}).of1 == Approx(.05));
    hop.storedAt = Celsius{-10};
    CHECK(alphaAfter(hop, Days{720}).of1 == Approx(.05));
    hop.packed = HopPack::closed;
    CHECK(alphaAfter(hop, Days{960}).of1 == Approx(.05));
    hop.packed = HopPack::sealed;
    CHECK(alphaAfter(hop, Days{1440}).of1 == Approx(.05));
}
