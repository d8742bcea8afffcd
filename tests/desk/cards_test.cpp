// SPDX-License-Identifier: GPL-3.0-or-later
// The cards of the vessels say what the cellar says.
#include "desk/support.h"
#include "facts/sample.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;

TEST_CASE_METHOD(DeskFixture, "the cards say what the cellar says of each vessel", "[desk][card]") {
    now = day(2026, 11, 30);
    REQUIRE(desk->record(*facts::sampleCellar(now)));
    const auto cards = desk->vesselCards();
    REQUIRE(cards);
    const std::string text = sheet::writeMarkdown(*cards);
    const auto cellar = desk->cellar();
    REQUIRE(cellar);
    for (const VesselSummary& vessel : *cellar) {
        INFO(vessel.name);
        const std::size_t from = text.find("## " + vessel.name);
        REQUIRE(from != std::string::npos);
        const std::string card = text.substr(from, text.find("\n## ", from + 1) - from);
        CHECK(card.find(show(vessel.now.volume) + " of " + show(vessel.facts.capacity)) != std::string::npos);
        CHECK(card.find(render(vessel.due.text)) != std::string::npos);
        CHECK(card.find(dayInWords(vessel.dates.draw)) != std::string::npos);
        CHECK(card.find(dayInWords(*vessel.now.lastRefill)) != std::string::npos);
        CHECK((card.find("Fault first") != std::string::npos) == !vessel.fault.empty());
    }
}

TEST_CASE_METHOD(DeskFixture, "a card is of one vessel, or of all in use", "[desk][card]") {
    CHECK(desk->vesselCards().error().kind == FaultKind::notPossible);
    addPlover();
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 100},
               {"kind": "retire", "vessel": "Knot", "on": "2026-03-02", "reason": "leaks"}])");
    CHECK(sheet::writeText(*desk->vesselCards()).find("Knot") == std::string::npos);
    CHECK(sheet::writeText(*desk->vesselCards("Knot")).find("retired") != std::string::npos);
    CHECK(desk->vesselCards("Nobody").error().path == "/vessel");
}
