// SPDX-License-Identifier: GPL-3.0-or-later
#include "ingredient/hop.h"
#include "ingredient/pantry.h"
#include "resources/resources.h"
#include "support/catch.h"
#include "support/property.h"

namespace staveline {
using namespace ingredient;

namespace {

const std::string grains(resources::find("data/grains.csv")), yeasts(resources::find("data/yeasts.csv"));
const std::string header =
    "id,name,alpha_pct,alpha_low_pct,alpha_high_pct,lost_in_six_months_pct,age_years,stored_at_c,packed,source\n";

Fault hopFault(const std::string& row) {
    const auto parsed = Pantry::parse(grains, yeasts, header + row);
    REQUIRE_FALSE(parsed);
    return parsed.error();
}

} // namespace

TEST_CASE("A hop row is read into its units") {
    const auto pantry = Pantry::parse(grains, yeasts, header + "loft,loft hops,4,2,6,45,2,12,closed,memory\n");
    REQUIRE(pantry);
    const Hop hop = pantry->hop("loft").value();
    CHECK(hop.name == "loft hops");
    CHECK(hop.alpha.of1 == Approx(.04));
    CHECK(hop.lostInSixMonths.of1 == Approx(.45));
    CHECK(hop.age.d == Approx(730.5));
    CHECK(hop.storedAt == Celsius{12});
    CHECK(hop.packed == HopPack::closed);
    CHECK(pantry->hop("lofd").error().cause.key == "ingredient.unknown_hop");
}

TEST_CASE("Bad cells of a hop are refused at their row and column") {
    CHECK(hopFault("a,a,4,2,6,45,2,12,tied up,memory\n").path == "/hops/0/packed");
    CHECK(hopFault("a,a,7,2,6,45,2,12,open,memory\n").path == "/hops/0/alpha_pct");
    CHECK(hopFault("a,a,4,2,6,95,2,12,open,memory\n").path == "/hops/0/lost_in_six_months_pct");
    CHECK(hopFault("a,a,4,2,6,45,2,40,open,memory\n").path == "/hops/0/stored_at_c");
}

TEST_CASE("Hops lose alpha acids with time, the faster the warmer and the more open", "[properties]") {
    CHECK_PROPERTY("alpha falls and never below what a recipe can name", [] {
        Hop hop;
        hop.alpha = Share{*rc::gen::inRange(10, 250) / 1000.};
        hop.lostInSixMonths = Share{*rc::gen::inRange(5, 80) / 100.};
        hop.storedAt = Celsius{static_cast<double>(*rc::gen::inRange(-25, 25))};
        hop.packed = static_cast<HopPack>(*rc::gen::inRange(0, 3));
        const Days some{static_cast<double>(*rc::gen::inRange(1, 400))};
        const Share left = alphaAfter(hop, some);
        RC_ASSERT(left <= hop.alpha);
        RC_ASSERT(left >= Share{.001});
        RC_ASSERT(alphaAfter(hop, some * 2) <= left);
        Hop warmer = hop;
        warmer.storedAt += Celsius{5};
        RC_ASSERT(alphaAfter(warmer, some) <= left);
        Hop later = hop; // what has been in store already is in store longer
        later.age = some;
        RC_ASSERT(std::abs((alphaAfter(later, some) - alphaAfter(hop, some * 2)).of1) < 1e-12);
    });
}

TEST_CASE("The built-in aged hops are old for their store, the others fresh") {
    for (const Hop& hop : builtInPantry().hops()) {
        INFO(hop.id);
        const bool aged = hop.id.find("aged") != std::string::npos;
        CHECK((hop.age.d > 0) == aged);
        if (!aged)
            CHECK(alphaAfter(hop, Days{0}) == hop.alpha);
    }
    const auto now = [](const char* id) { return alphaAfter(builtInPantry().hop(id).value(), Days{0}); };
    CHECK(now("hops_aged_1y_cold") > now("hops_aged_1y_cellar"));
    CHECK(now("hops_aged_1y_cellar") > now("hops_aged_2y_cellar"));
    CHECK(now("hops_aged_2y_cellar") > now("hops_aged_2y_loft"));
    CHECK(now("hops_aged_2y_loft") > now("hops_aged_3y_loft"));
}

} // namespace staveline
