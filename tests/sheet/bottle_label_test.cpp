// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/bottle_label.h"

#include "quantity/parse.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::sheet;

namespace {

BottleLabel label() {
    BottleLabel made;
    made.name = "Plover 31";
    made.packed = parseDay("2026-03-02").value();
    made.size = {750};
    made.generations = {{2, parseDay("2025-11-02").value(), Share{.4}, Days{0}},
                        {1, parseDay("2024-03-02").value(), Share{.6}, Days{0}}};
    made.alcohol = {6.42};
    made.spread = {.64};
    return made;
}

} // namespace

TEST_CASE("a label says what is in the bottle and leaves room for what local law asks", "[sheet][label]") {
    const Document paper = bottleLabels(label(), {});
    REQUIRE(paper.cards);
    CHECK(paper.cards->repeated);
    const std::string text = writeMarkdown(paper);
    for (const char* part :
         {"## Plover 31", "750 mL. 6.4 % vol ±0.6, computed and not measured.", "Bottled on 2 Mar 2026.",
          "Beers: 40 % from 2 Nov 2025, 60 % from 2 Mar 2024.", "| As local law asks |"}) {
        INFO(text);
        CHECK(text.find(part) != std::string::npos);
    }
}

TEST_CASE("a measured alcohol is told as measured, beers nobody knows are left out", "[sheet][label]") {
    BottleLabel known = label();
    known.alcoholMeasured = true;
    known.generations.clear();
    const std::string text = writeText(bottleLabels(known, {}));
    CHECK(text.find("measured before bottling") != std::string::npos);
    CHECK(text.find("computed") == std::string::npos);
    CHECK(text.find("Beers") == std::string::npos);
}
