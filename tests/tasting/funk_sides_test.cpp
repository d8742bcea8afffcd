// SPDX-License-Identifier: GPL-3.0-or-later
// Spice and horse under funk, against numbers worked out by hand.
#include "tasting/funk_sides.h"

#include "support/catch.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::tasting;

namespace {

Sitting scored(std::vector<Score> scores) {
    Sitting sitting;
    sitting.scores = std::move(scores);
    return sitting;
}

FunkSides of(std::vector<Score> scores) {
    return funkSides(scored(std::move(scores)), builtInSheet());
}

} // namespace

TEST_CASE("The lines behind spice and horse are about funk and about nothing else", "[tasting]") {
    for (const auto code : {spiceLine, horseLine}) {
        const Attribute* line = builtInSheet().find(code);
        REQUIRE(line);
        CHECK(line->dimension == Dimension::funk);
        CHECK(line->shortSheet);
        CHECK(line->bothTemperatures);
    }
    CHECK(builtInSheet().find(spiceLine)->name.find("clove") != std::string::npos);
    CHECK(builtInSheet().find(horseLine)->name.find("horse") != std::string::npos);
}

TEST_CASE("One taster's horse: the shares of the glasses, and the error of a single line", "[tasting]") {
    // By hand: .3 x 5 + .7 x 6. One line of weights .30 .20 .15 .35 with correlation .3 spreads
    // (.3 + .7) / (.3 + .7 x .275) = 2.0304569 times as wide; within = (.09 + .49)(.16 + .64 x 2.0304569) = .8465056;
    // the taster adds .64.
    const auto sides = of({{"Rook", "AR1", 5.0, 6.0}});
    REQUIRE(sides.horse);
    CHECK(sides.horse->mean == Approx(5.7));
    CHECK(sides.horse->sameTasterSe == Approx(.9200574).margin(1e-6));
    CHECK(sides.horse->absoluteSe == Approx(1.2192233).margin(1e-6));
    CHECK(sides.horse->tasters == 1);
    CHECK(sides.horse->answered.of1 == Approx(.3));
    CHECK_FALSE(sides.spice);
}

TEST_CASE("Two tasters' spice: their mean, and variances shrunk as for any reading", "[tasting]") {
    // By hand: nothing moves between the glasses, so .8 shrinks to 6/7; between tasters (6 x .64 + 2) / 7 = .8342857;
    // within = .58 (.16 + .64 x 2.0304569) x 6/7 = .7255762; half of each stays.
    const auto sides = of({{"Rook", "AR2", 4.0, 4.0}, {"Wren", "AR2", 6.0, 6.0}});
    REQUIRE(sides.spice);
    CHECK(sides.spice->mean == Approx(5));
    CHECK(sides.spice->sameTasterSe == Approx(.6023189).margin(1e-5));
    CHECK(sides.spice->absoluteSe == Approx(.8831370).margin(1e-5));
    CHECK(sides.spice->tasters == 2);
    CHECK_FALSE(sides.horse);
}

TEST_CASE("One glass is filled in and paid for", "[tasting]") {
    const auto both = of({{"Rook", "AR1", 5.0, 5.8}}), cold = of({{"Rook", "AR1", 5.0, {}}});
    CHECK(cold.horse->mean == Approx(both.horse->mean)); // 0.8 is what the sheet expects of a warming nose
    CHECK(cold.horse->absoluteSe > both.horse->absoluteSe);
}

TEST_CASE("A side is less certain than funk, and the other lines do not move it", "[tasting]") {
    std::vector<Score> scores;
    for (const char* code : {"AR1", "AR2", "AR3", "TA4"})
        scores.push_back({"Rook", code, 4.0, 4.0});
    const Sitting calm = scored(scores);
    scores.back().cold = scores.back().cellar = 9.0;
    const Sitting loud = scored(scores);
    const auto funk = evaluate(calm, builtInSheet()).dimensions[Dimension::funk];
    const auto before = funkSides(calm, builtInSheet()), after = funkSides(loud, builtInSheet());
    REQUIRE(funk);
    CHECK(before.horse->absoluteSe > funk->absoluteSe);
    CHECK(before.spice->absoluteSe > funk->absoluteSe);
    CHECK(after.horse->mean == before.horse->mean);
    CHECK(after.spice->mean == before.spice->mean);
    CHECK(evaluate(loud, builtInSheet()).dimensions[Dimension::funk]->mean > funk->mean);
}

TEST_CASE("The order of entry and lines nobody knows change nothing", "[tasting]") {
    std::vector<Score> scores{{"Rook", "AR1", 5.0, 6.0}, {"Wren", "AR1", 3.0, {}}, {"Wren", "AR2", {}, 2.5}};
    const auto straight = of(scores);
    std::reverse(scores.begin(), scores.end());
    scores.push_back({"Wren", "XX9", 9.0, 9.0});
    const auto turned = of(scores);
    CHECK(turned.horse->mean == straight.horse->mean);
    CHECK(turned.horse->absoluteSe == straight.horse->absoluteSe);
    CHECK(turned.spice->mean == straight.spice->mean);
}

TEST_CASE("A fault that makes funk unusable leaves no sides; a trace of it, or another fault, does", "[tasting]") {
    Sitting sitting = scored({{"Rook", "AR1", 5.0, 6.0}, {"Rook", "AR2", 2.0, 2.0}});
    sitting.faults = {{"mouldy", 2}};
    CHECK_FALSE(funkSides(sitting, builtInSheet()).horse);
    CHECK_FALSE(funkSides(sitting, builtInSheet()).spice);
    CHECK(evaluate(sitting, builtInSheet()).spoiledBy[Dimension::funk] == "mouldy");
    sitting.faults = {{"mouldy", 1}, {"ropy", 3}};
    CHECK(funkSides(sitting, builtInSheet()).horse);
    CHECK(funkSides(sitting, builtInSheet()).spice);
}

TEST_CASE("Nothing scored has no sides", "[tasting]") {
    CHECK_FALSE(of({}).spice);
    CHECK_FALSE(of({}).horse);
    CHECK_FALSE(of({{"Rook", "TA1", 6.0, 6.0}, {"Rook", "AR3", 5.0, 5.0}, {"Rook", "TA4", 5.0, 5.0}}).horse);
    CHECK_FALSE(of({{"Rook", "AR1", {}, {}}}).horse);
}
