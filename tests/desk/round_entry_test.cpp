// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/round_entry.h"

#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

RoundEntry empty() {
    RoundEntry entry;
    entry.seen.vessel = "Plover";
    entry.seen.on = day(2026, 3, 2);
    entry.seen.nextLook = day(2026, 4, 2);
    return entry;
}

} // namespace

TEST_CASE("a row in which nothing stands but the next look was not looked at", "[desk][round]") {
    CHECK(factsOf(empty()).empty());
}

TEST_CASE("a row comes to a dip, a top-up and what was seen, in that order", "[desk][round]") {
    RoundEntry entry = empty();
    entry.level = Litres{210};
    entry.topped = Litres{4};
    entry.brew = "Brew 4";
    entry.seen.weep = Weep::damp;
    const auto facts = factsOf(entry);
    REQUIRE(facts.size() == 3);
    const auto& dip = std::get<DipFact>(facts[0]);
    CHECK(dip.vessel == "Plover");
    CHECK(dip.on == day(2026, 3, 2));
    CHECK(dip.volume == Litres{210});
    const auto& topUp = std::get<TopUpFact>(facts[1]);
    CHECK(topUp.vessel == "Plover");
    CHECK(topUp.on == day(2026, 3, 2));
    CHECK(topUp.volume == Litres{4});
    CHECK(topUp.brew == "Brew 4");
    CHECK(std::get<RoundFact>(facts[2]) == entry.seen);
}

TEST_CASE("a level alone is a look: the next one is counted from it", "[desk][round]") {
    RoundEntry entry = empty();
    entry.level = Litres{210};
    REQUIRE(factsOf(entry).size() == 2);
    CHECK(std::get<RoundFact>(factsOf(entry)[1]).nextLook == day(2026, 4, 2));
    entry = empty();
    entry.seen.note = "quiet";
    CHECK(factsOf(entry).size() == 1);
}
