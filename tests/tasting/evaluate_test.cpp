// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/sitting.h"
#include "tasting/taster_reading.h"

#include "support/property.h"

#include <algorithm>
#include <cmath>

using namespace staveline;
using namespace staveline::tasting;

namespace {

constexpr auto A = Dimension::acidity, F = Dimension::funk, B = Dimension::body;

/// One attribute that is the whole of acidity, so that a dimension score is the score itself.
TastingSheet oneLineSheet() {
    TastingSheet sheet;
    Attribute sour;
    sour.code = "S";
    sour.dimension = A;
    sour.weight = 1;
    sheet.attributes = {sour};
    return sheet;
}

/// Every weighted attribute at the given scores, body turned so that each dimension reads the same.
void addTaster(Sitting& sitting, const std::string& taster, std::optional<double> cold, std::optional<double> cellar) {
    for (const auto& a : builtInSheet().attributes) {
        if (!a.dimension)
            continue;
        const auto turned = [&](std::optional<double> y) { return a.reversed && y ? std::optional(10 - *y) : y; };
        sitting.scores.push_back({taster, a.code, turned(cold), turned(cellar)});
    }
}

std::string numbered(int i) {
    std::string name = "taster ";
    return name += std::to_string(i);
}

Sitting drop(Sitting sitting, std::initializer_list<std::string_view> codes) {
    std::erase_if(sitting.scores,
                  [&](const Score& s) { return std::find(codes.begin(), codes.end(), s.attribute) != codes.end(); });
    return sitting;
}

} // namespace

TEST_CASE("The worked panel: mean, absolute and same-taster error") {
    // Made-up scores; variance components by R 4.2.2 aov, shrinkage by hand (prior 0.80, 0.40, 0.80, 6 df).
    Sitting sitting;
    sitting.scores = {{"one", "S", 5.2, 6.0}, {"one", "S", 5.6, 5.8}, {"two", "S", 4.4, 5.0},
                      {"two", "S", 4.0, 4.8}, {"six", "S", 6.2, 6.4}, {"six", "S", 5.6, 7.0}};
    const auto result = evaluate(sitting, oneLineSheet());
    REQUIRE(result.dimensions[A]);
    const auto& reading = *result.dimensions[A];
    CHECK(reading.mean == Approx(5.5).margin(1e-9));
    CHECK(reading.absoluteSe == Approx(.5246692).margin(1e-6));
    CHECK(reading.sameTasterSe == Approx(.2248456).margin(1e-6));
    CHECK(reading.degreesOfFreedom == 8);
    CHECK(reading.tasters == 3);
    CHECK(reading.answered.of1 == Approx(1));
    CHECK_FALSE(result.dimensions[F]); // this sheet has no line for it
}

TEST_CASE("Errors of one taster are the prior's") {
    // sqrt(.64 + .08 + .32) and sqrt(.08 + .32), by hand.
    Sitting sitting;
    sitting.scores = {{"Rook", "S", 6.0, 6.0}};
    const auto reading = *evaluate(sitting, oneLineSheet()).dimensions[A];
    CHECK(reading.mean == Approx(6));
    CHECK(reading.absoluteSe == Approx(1.0198039).margin(1e-6));
    CHECK(reading.sameTasterSe == Approx(.6324555).margin(1e-6));
    CHECK(reading.degreesOfFreedom == 6);
}

TEST_CASE("The weighted sheet gives back what every line says") {
    Sitting sitting;
    addTaster(sitting, "Rook", 6, 6);
    addTaster(sitting, "Wren", 6, 6);
    const auto result = evaluate(sitting, builtInSheet());
    for (auto d : allDimensions) {
        REQUIRE(result.dimensions[d]);
        CHECK(result.dimensions[d]->mean == Approx(6).margin(1e-9));
        CHECK(result.missing[d].empty());
    }
}

TEST_CASE("Cold and cellar count by their shares") {
    Sitting sitting;
    addTaster(sitting, "Rook", 4, 6);
    const auto result = evaluate(sitting, builtInSheet());
    CHECK(result.dimensions[F]->mean == Approx(4 * .3 + 6 * .7)); // by hand from the sheet's shares
    CHECK(result.dimensions[B]->mean == Approx(5));
    CHECK(result.dimensions[A]->mean == Approx(.1 * 5.4 + .75 * 5 + .15 * 5.2));
}

TEST_CASE("The thin finish lowers body, the hard edge raises acidity") {
    Sitting sitting;
    addTaster(sitting, "Rook", 5, 5);
    auto changed = sitting;
    for (auto& s : changed.scores)
        if (s.attribute == "MF3" || s.attribute == "TA3")
            s.cold = s.cellar = 9;
    const auto before = evaluate(sitting, builtInSheet()), after = evaluate(changed, builtInSheet());
    CHECK(after.dimensions[B]->mean - before.dimensions[B]->mean == Approx(-.2 * 4));
    CHECK(after.dimensions[A]->mean - before.dimensions[A]->mean == Approx(.15 * 4));
}

TEST_CASE("One temperature is enough, is shifted by the prior and is paid for") {
    Sitting both, cold, cellar;
    addTaster(both, "Rook", 5, 5.8); // 0.8 is what the prior expects of aroma
    addTaster(cold, "Rook", 5, {});
    addTaster(cellar, "Rook", {}, 5.8);
    const auto two = *evaluate(both, builtInSheet()).dimensions[F];
    for (const auto* one : {&cold, &cellar}) {
        const auto reading = *evaluate(*one, builtInSheet()).dimensions[F];
        CHECK(reading.mean == Approx(two.mean));
        CHECK(reading.absoluteSe > two.absoluteSe);
        CHECK(reading.sameTasterSe > two.sameTasterSe);
    }
    // Cold alone: .16 + .64 within, and .7 of a warming known to .5.
    CHECK(evaluate(cold, builtInSheet()).dimensions[F]->sameTasterSe == Approx(std::sqrt(.8 + .35 * .35)));
}

TEST_CASE("What is absent cold is not made up for the cellar") {
    Sitting sitting;
    addTaster(sitting, "Rook", 0, {});
    CHECK(evaluate(sitting, builtInSheet()).dimensions[F]->mean == Approx(0).margin(1e-12));
    Sitting strong;
    addTaster(strong, "Rook", 10, {});
    CHECK(evaluate(strong, builtInSheet()).dimensions[F]->mean == Approx(10));
}

TEST_CASE("An error of warming does not average out over tasters") {
    Sitting sitting;
    for (int i = 0; i < 100; ++i)
        addTaster(sitting, numbered(i), 5, {});
    const auto reading = *evaluate(sitting, builtInSheet()).dimensions[F];
    CHECK(reading.absoluteSe > .35); // .7 of the warming's .5
    CHECK(reading.absoluteSe < .37);
}

TEST_CASE("Lines left out: the rest counts for all, with a wider error") {
    Sitting full;
    addTaster(full, "Rook", 5, 5);
    const auto some = drop(full, {"TA2", "TA3"});
    const auto result = evaluate(some, builtInSheet());
    REQUIRE(result.dimensions[A]);
    CHECK(result.dimensions[A]->mean == Approx(5));
    CHECK(result.dimensions[A]->answered.of1 == Approx(.65));
    CHECK(result.dimensions[A]->sameTasterSe > evaluate(full, builtInSheet()).dimensions[A]->sameTasterSe);
    CHECK(result.missing[A] == std::vector<std::string>{"TA2", "TA3"});
    CHECK(result.missing[F].empty());
}

TEST_CASE("Below half of its weight a dimension is not scored and says what is missing") {
    Sitting full;
    addTaster(full, "Rook", 5, 5);
    const auto result = evaluate(drop(full, {"TA1", "MF1"}), builtInSheet());
    CHECK_FALSE(result.dimensions[A]); // .45 left
    CHECK(result.missing[A] == std::vector<std::string>{"TA1"});
    CHECK(result.dimensions[B]); // .55 left
    const auto half = evaluate(drop(full, {"AR1", "AR2"}), builtInSheet());
    CHECK(half.dimensions[F]); // exactly .50
    const auto nothing = evaluate({}, builtInSheet());
    for (auto d : allDimensions)
        CHECK_FALSE(nothing.dimensions[d]);
    CHECK(nothing.missing[F] == std::vector<std::string>{"AR1", "AR2", "AR3", "TA4"});
    CHECK(nothing.missing[A].size() == 4);
    CHECK(nothing.missing[B].size() == 4);
}

TEST_CASE("A taster who scored too little is left out of the dimension, not of the others") {
    Sitting sitting;
    addTaster(sitting, "Rook", 5, 5);
    sitting.scores.push_back({"Wren", "TA2", 9.0, 9.0});
    sitting.scores.push_back({"Wren", "MF1", 8.0, 8.0});
    sitting.scores.push_back({"Wren", "MF2", 8.0, 8.0});
    const auto result = evaluate(sitting, builtInSheet());
    CHECK(result.dimensions[A]->tasters == 1);
    CHECK(result.dimensions[A]->mean == Approx(5));
    CHECK(result.dimensions[B]->tasters == 2);
    CHECK(result.dimensions[B]->mean > 6);
    CHECK(result.missing[A].empty());
}

TEST_CASE("Lines and tasters the sheet does not know change nothing") {
    Sitting sitting;
    addTaster(sitting, "Rook", 5, 7);
    auto more = sitting;
    more.scores.push_back({"Rook", "ZZ9", 1.0, 1.0});
    more.scores.push_back({"Wren", "TA1", {}, {}});
    CHECK(evaluate(more, builtInSheet()).dimensions[A]->mean == evaluate(sitting, builtInSheet()).dimensions[A]->mean);
    CHECK(evaluate(more, builtInSheet()).dimensions[A]->tasters == 1);
}

TEST_CASE("A taster far from the rest weighs less but is not dropped") {
    Sitting sitting;
    for (const auto* taster : {"a", "b", "c"})
        sitting.scores.push_back({taster, "S", 5.0, 5.0});
    sitting.scores.push_back({"d", "S", 10.0, 10.0});
    const auto reading = *evaluate(sitting, oneLineSheet()).dimensions[A];
    CHECK(reading.mean > 5.1);
    CHECK(reading.mean < 6.25); // the plain mean
    CHECK(reading.tasters == 4);
}

TEST_CASE("Without second glasses the sum of the small errors is learned") {
    Sitting calm, wild;
    const std::vector<double> jump{-3, 3, -3, 3, -3, 3};
    for (std::size_t i = 0; i < jump.size(); ++i) {
        const auto taster = numbered(static_cast<int>(i));
        calm.scores.push_back({taster, "S", 5.0, 5.0});
        wild.scores.push_back({taster, "S", 5.0 - jump[i] / 2, 5.0 + jump[i] / 2});
    }
    const auto still = *evaluate(calm, oneLineSheet()).dimensions[A];
    const auto moved = *evaluate(wild, oneLineSheet()).dimensions[A];
    // Prior sum .80 at 6 df, seen 0 at 5 df; halved by two temperatures, six tasters.
    CHECK(still.sameTasterSe == Approx(std::sqrt(.8 * 6 / 11 / 12)));
    CHECK(moved.sameTasterSe == Approx(std::sqrt((.8 * 6 + 5 * 5.4) / 11 / 12))); // half differences: 54/5/2 = 5.4
    CHECK(moved.mean == Approx(still.mean));
}

TEST_CASE("Faults come worst first, those that block before those that do not") {
    Sitting sitting;
    sitting.faults = {{"metallic", 1}, {"gushing", 2}, {"acetic", 2}, {"mousy", 3}, {"soapy", 0}};
    const auto result = evaluate(sitting, builtInSheet());
    const std::vector<FaultMark> expected{{"mousy", 3}, {"acetic", 2}, {"gushing", 2}, {"metallic", 1}};
    CHECK(result.faults == expected);
}

TEST_CASE("Stringing on the pour shows rope, and rope makes the body score unusable") {
    const auto withPour = [](double pour) {
        Sitting sitting;
        addTaster(sitting, "Rook", 5, 5);
        sitting.scores.push_back({"Rook", "AP4", pour, {}});
        return evaluate(sitting, builtInSheet());
    };
    CHECK(withPour(2.5).faults.empty());
    CHECK(withPour(3).faults == std::vector<FaultMark>{{"ropy", 1}});
    CHECK(withPour(3).dimensions[B]);
    CHECK(withPour(5).faults == std::vector<FaultMark>{{"ropy", 2}});
    CHECK_FALSE(withPour(5).dimensions[B]);
    CHECK(withPour(5).spoiledBy[B] == "ropy");
    CHECK(withPour(5).dimensions[A]);
    CHECK(withPour(8).faults == std::vector<FaultMark>{{"ropy", 3}});
}

TEST_CASE("A mark and a line that agree are one fault at the worse severity") {
    Sitting sitting;
    sitting.scores = {{"Rook", "AP4", 5.0, {}}, {"Rook", "TA5", 6.0, 6.0}};
    sitting.faults = {{"ropy", 1}};
    const auto result = evaluate(sitting, builtInSheet());
    const std::vector<FaultMark> expected{{"ropy", 2}, {"harsh_bitter", 2}};
    CHECK(result.faults == expected);
    REQUIRE(result.bitterness);
    CHECK(*result.bitterness == Approx(6));
}

TEST_CASE("Bitterness is the mean over tasters, absent when nobody scored it") {
    Sitting sitting;
    CHECK_FALSE(evaluate(sitting, builtInSheet()).bitterness);
    sitting.scores = {{"Rook", "TA5", 2.0, 4.0}, {"Wren", "TA5", 5.0, {}}, {"Wren", "TA5", 7.0, {}}};
    CHECK(*evaluate(sitting, builtInSheet()).bitterness == Approx(4.5)); // 3, and 6 for the two glasses
}

TEST_CASE("Two hundred tasters") {
    Sitting sitting;
    for (int i = 0; i < 200; ++i)
        addTaster(sitting, numbered(i), 4 + i % 3, 5 + i % 2);
    const auto reading = *evaluate(sitting, builtInSheet()).dimensions[A];
    CHECK(reading.tasters == 200);
    CHECK(reading.mean == Approx(5.25).margin(.1));
    CHECK(reading.absoluteSe < .12);
    CHECK(reading.degreesOfFreedom == 205);
}

TEST_CASE("Sittings of any shape") {
    CHECK_PROPERTY("means stay in 0..10, errors are ordered, entry order changes nothing", [] {
        const auto& lines = builtInSheet().attributes;
        Sitting sitting;
        const auto scores = *rc::gen::inRange(0, 80);
        for (int i = 0; i < scores; ++i) {
            const auto half = [] { return *rc::gen::inRange(0, 21) / 2.0; };
            const auto temperatures = *rc::gen::inRange(0, 4);
            const auto line = *rc::gen::inRange<std::size_t>(0, lines.size());
            Score score{numbered(*rc::gen::inRange(0, 6)), lines[line].code, {}, {}};
            if (temperatures & 1)
                score.cold = half();
            if (temperatures & 2)
                score.cellar = half();
            sitting.scores.push_back(score);
        }
        const auto result = evaluate(sitting, builtInSheet());
        auto shuffled = sitting;
        std::stable_sort(shuffled.scores.begin(), shuffled.scores.end(),
                         [](const Score& a, const Score& b) { return a.attribute > b.attribute; });
        const auto again = evaluate(shuffled, builtInSheet());
        for (auto d : allDimensions) {
            RC_ASSERT(result.dimensions[d].has_value() == again.dimensions[d].has_value());
            RC_ASSERT(result.missing[d] == again.missing[d]);
            if (!result.dimensions[d])
                continue;
            const auto& reading = *result.dimensions[d];
            RC_ASSERT(reading.mean >= -1e-9 && reading.mean <= 10 + 1e-9);
            RC_ASSERT(reading.sameTasterSe > 0 && reading.sameTasterSe < reading.absoluteSe);
            RC_ASSERT(reading.absoluteSe < 8);
            RC_ASSERT(reading.mean == again.dimensions[d]->mean);
            RC_ASSERT(reading.answered.of1 >= .5 - 1e-9 && reading.answered.of1 <= 1 + 1e-9);
        }
    });
}

TEST_CASE("Raising one score never lowers its dimension") {
    CHECK_PROPERTY("one taster, all lines, one of them raised", [] {
        const auto& lines = builtInSheet().attributes;
        Sitting sitting;
        for (const auto& a : lines)
            if (a.dimension)
                sitting.scores.push_back(
                    {"Rook", a.code, *rc::gen::inRange(0, 20) / 2.0, *rc::gen::inRange(0, 20) / 2.0});
        const auto before = evaluate(sitting, builtInSheet());
        auto& raised = sitting.scores[*rc::gen::inRange<std::size_t>(0, sitting.scores.size())];
        *raised.cold += .5;
        const auto* line = builtInSheet().find(raised.attribute);
        const auto after = evaluate(sitting, builtInSheet());
        const double change = after.dimensions[*line->dimension]->mean - before.dimensions[*line->dimension]->mean;
        RC_ASSERT((change > 0) != line->reversed);
    });
}
