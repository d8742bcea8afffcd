// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/vessel_card.h"

#include "support/catch.h"

using namespace staveline;
using namespace staveline::sheet;

namespace {

constexpr Day day(int y, unsigned m, unsigned d) {
    return std::chrono::year{y} / static_cast<int>(m) / static_cast<int>(d);
}

VesselCard cask() {
    VesselCard card;
    card.vessel = "Plover <2>";
    card.kind = "cask of used oak";
    card.capacity = Litres{225};
    card.now.on = day(2026, 3, 2);
    card.now.volume = Litres{200};
    card.now.meanAge = Days{500};
    card.now.generations = {{3, day(2025, 11, 2), Share{.4}, Days{0}},
                            {2, day(2025, 3, 2), Share{.585}, Days{0}},
                            {1, day(2023, 3, 2), Share{.015}, Days{0}}};
    card.lastIn = say("desk.line.refill_brew").with("volume", Litres{79}).with("brew", "Brew 7");
    card.lastInOn = day(2025, 11, 2);
    card.due = say("desk.due.taste.in").with("days", Days{3});
    card.draw = day(2026, 4, 4);
    card.cautions = {say("caution.refill.vented")};
    return card;
}

} // namespace

TEST_CASE("a card says what is in the vessel, what went in last and what is due", "[sheet][card]") {
    const std::string text = writeText(vesselCards({cask()}, day(2026, 3, 2)));
    for (const char* part :
         {"Vessel cards", "As of 2 Mar 2026.", "Plover <2>", "225.0 L, cask of used oak",
          "200.0 L of 225.0 L, room for 25.0 L", "16 months", "2 Nov 2025: 79.0 L refilled from Brew 7",
          "taste in 3 days", "4 Apr 2026", "not described", "a way to vent"}) {
        INFO(text);
        CHECK(text.find(part) != std::string::npos);
    }
}

TEST_CASE("what formats without pictures say of the layers is what is drawn", "[sheet][card]") {
    const Document paper = vesselCards({cask()}, day(2026, 3, 2));
    const Picture* picture = nullptr;
    for (const Block& block : paper.blocks)
        if (const auto* found = std::get_if<Picture>(&block))
            picture = found;
    REQUIRE(picture);
    CHECK(picture->words == "200.0 L of 225.0 L; 40 % from 2 Nov 2025; 60 % from 2 Mar 2025 and before");
    CHECK(picture->svg.find("40 % from 2 Nov 2025") != std::string::npos);
    CHECK(picture->svg.find("60 % from 2 Mar 2025 and before") != std::string::npos);
}

TEST_CASE("each vessel has its card, an empty one no layers and the day it is filled", "[sheet][card]") {
    VesselCard empty;
    empty.vessel = "Knot";
    empty.kind = "foeder";
    empty.capacity = Litres{1200};
    empty.due = say("desk.due.empty");
    empty.fill = day(2026, 3, 16);
    const Document paper = vesselCards({cask(), empty}, day(2026, 3, 2), {});
    CHECK(paper.cards);
    const std::string text = writeMarkdown(paper);
    CHECK(text.find("## Plover") < text.find("## Knot"));
    const std::string knot = text.substr(text.find("## Knot"));
    CHECK(knot.find("16 Mar 2026") != std::string::npos);
    CHECK(knot.find("Draw and refill") == std::string::npos);
    CHECK(knot.find(" % from ") == std::string::npos);
    CHECK(knot.find("empty, room for 1200 L") != std::string::npos);
    CHECK(writeText(paper).find("0.00 L") == std::string::npos);
}
