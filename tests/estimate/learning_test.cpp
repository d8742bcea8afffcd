// SPDX-License-Identifier: GPL-3.0-or-later
// What a story teaches, as a brewer would put it.
#include "estimate/story_support.h"

#include "estimate/words.h"
#include "quantity/acid_base.h"
#include "quantity/text.h"

using namespace staveline;
using namespace staveline::estimate;

namespace {

/// Eight cycles, one sitting a month before each draw, always the same scores.
StoryWriter years(const Scores& scores, const Tasters& tasters = four, int cycles = 8) {
    StoryWriter writer;
    for (int cycle = 0; cycle < cycles; ++cycle)
        writer.taste(240 * cycle + 210, scores, tasters).refill(240 * (cycle + 1));
    return writer;
}

} // namespace

TEST_CASE("what eight sittings said is there the day after the refill", "[learning]") {
    const Learned learned = years({{5, 3.5, 4}}).learned(240 * 8 + 1);
    CHECK(now(learned, funk) == Approx(-2.5).margin(.1));
    CHECK(learned.offsets[funk].sd() < .35);
    CHECK(std::abs(now(learned, acidity)) < .1);
    CHECK(learned.sittings[funk] == 8);
    CHECK(learned.doubts.empty());
}

TEST_CASE("five stable sittings and none now: within .3 of them", "[learning]") {
    for (const auto& [tasters, most] : {std::pair{four, 2.0}, std::pair{Tasters{"Rook"}, 1.0}})
        for (double above : {-most, most / 2, most})
            for (Dimension d : allDimensions) {
                Scores scores = modelSays;
                scores[d] += above;
                const Learned learned = years(scores, tasters, 5).learned(240 * 5 + 200);
                INFO(name(d) << " " << above);
                CHECK(std::abs(now(learned, d) - above) <= .3);
                CHECK(tasting::z80 * learned.offsets[d].sd() <= .7);
            }
}

TEST_CASE("nothing that was not seen changes the estimate, day by day", "[learning]") {
    const StoryWriter writer = years({{6, 3.5, 4}}, four, 4);
    for (int day = 215; day < 1200; ++day) {
        if (day % 240 == 209 || day % 240 == 239) // a sitting or a refill on the next day
            continue;
        const Learned before = writer.learned(day), after = writer.learned(day + 1);
        for (Dimension d : allDimensions) {
            CHECK(std::abs(now(after, d) - now(before, d)) < .1);
            CHECK(std::abs(after.offsets[d].sd() - before.offsets[d].sd()) < .1);
        }
    }
}

TEST_CASE("a tasting or a titration never widens what is known", "[learning]") {
    StoryWriter writer = years({{6, 3.5, 4}}, four, 2);
    Learned before = writer.learned(600);
    writer.taste(600, {{6.4, 4, 4.5}});
    const Learned tasted = writer.learned(600);
    for (Dimension d : allDimensions)
        CHECK(tasted.offsets[d].sd() <= before.offsets[d].sd());
    writer.titrate(603, 7);
    before = tasted;
    const Learned titrated = writer.learned(603);
    REQUIRE(titrated.doubts.empty());
    CHECK(titrated.offsets[acidity].sd() <= before.offsets[acidity].sd() + 1e-3); // three days pass
}

TEST_CASE("the estimate lies between what was expected and what was seen", "[learning]") {
    for (double score : {2.0, 4.0, 6.0, 8.0}) {
        StoryWriter writer = years({{5.5, 5, 4}}, four, 2);
        const double expected = now(writer.learned(600), funk);
        writer.taste(600, {{5.5, score, 4}});
        const double seen = score - modelSays[funk], estimate = now(writer.learned(600), funk);
        CHECK(estimate >= std::min(expected, seen) - 1e-9);
        CHECK(estimate <= std::max(expected, seen) + 1e-9);
    }
}

TEST_CASE("the order of one week's readings does not matter", "[learning]") {
    const double before = now(years({{6, 5, 4}}).taste(2000, {{6.7, 5, 4}}).titrate(2003, 8).learned(2007), acidity);
    const double after = now(years({{6, 5, 4}}).titrate(2000, 8).taste(2003, {{6.7, 5, 4}}).learned(2007), acidity);
    CHECK(before == Approx(after).margin(.1));
    const double first = now(StoryWriter().taste(0, {{7.2, 5, 4}}).titrate(3, 8).learned(7), acidity);
    const double second = now(StoryWriter().titrate(0, 8).taste(3, {{7.2, 5, 4}}).learned(7), acidity);
    CHECK(first == Approx(second).margin(.1));
}

TEST_CASE("a titration that says the same as the tasting is no second voice for it", "[learning]") {
    StoryWriter writer;
    const double asModelled = titratableAcidity(sourBeer()).gPerL;
    for (int cycle = 0; cycle < 8; ++cycle)
        writer.titrate(240 * cycle + 205, asModelled).taste(240 * cycle + 210, {{7, 6, 4}}).refill(240 * (cycle + 1));
    const Learned learned = writer.learned(240 * 8);
    CHECK(now(learned, acidity) == Approx(2).margin(.25));                       // tasted two above
    CHECK(learned.offsets[acidity].mean[Offset::apart] == Approx(2).margin(.5)); // the acid is as expected
}

TEST_CASE("the same taster again and again grows sure, not certain", "[learning]") {
    StoryWriter writer;
    double last = 9;
    for (int day = 0; day < 4; ++day) {
        writer.taste(day, 5.0, {"Rook"});
        const double sd = writer.learned(day).offsets[funk].sd();
        CHECK(sd < last);
        last = sd;
    }
    for (int day = 4; day < 30; ++day)
        for (int glass = 0; glass < 7; ++glass)
            writer.taste(day, 5.0, {"Rook"});
    const double many = writer.learned(30).offsets[funk].sd();
    CHECK(many >= .2); // 200 sittings in a month
    CHECK(std::isfinite(many));
}

TEST_CASE("four tasters and then one: the four stay", "[learning]") {
    StoryWriter writer;
    writer.taste(0, {{5, 2, 4}}).taste(5, {{5, 3.6, 4}}, {"Wren"});
    const Learned learned = writer.learned(5);
    CHECK(modelSays[funk] + now(learned, funk) < 2.7);
    StoryWriter other;
    other.taste(0, {{5, 2, 4}});
    const double before = now(other.learned(5), funk);
    tasting::Sitting acidOnly;
    acidOnly.on = dayOf(5);
    for (const auto& score : scoredBy({"Wren"}, {{5, 5, 5}}, dayOf(5)).scores)
        if (tasting::builtInSheet().find(score.attribute)->dimension == acidity)
            acidOnly.scores.push_back(score);
    other.story.facts.push_back({dayOf(5), tastingOf(acidOnly, modelSays, true)});
    CHECK(now(other.learned(5), funk) == Approx(before));
}

TEST_CASE("a second taster who agrees makes it surer", "[learning]") {
    StoryWriter alone;
    alone.story.targetsSetBy = {"Rook"};
    const double one = alone.taste(0, 5.0, {"Rook"}).learned(0).offsets[funk].sd();
    StoryWriter both;
    both.story.targetsSetBy = {"Rook"};
    const double two = both.taste(0, 5.0, {"Rook", "Jay"}).learned(0).offsets[funk].sd();
    CHECK(two < one);
}

TEST_CASE("a score far from the past asks what happened, learns, and says so", "[learning]") {
    StoryWriter writer = years({{5, 3.5, 4}});
    const double expected = 3.5;
    writer.taste(240 * 8 + 210, {{5, 6.8, 4}});
    const Learned learned = writer.learned(240 * 8 + 210);
    REQUIRE(learned.doubts.size() == 1);
    CHECK(learned.doubts[0].kind == Doubt::Kind::surprise);
    CHECK(learned.doubts[0].dimension == funk);
    CHECK(learned.doubts[0].expected.mean == Approx(expected).margin(.15));
    CHECK(learned.doubts[0].seen == Approx(6.8).margin(.1));
    CHECK(modelSays[funk] + now(learned, funk) > 5.5);
    writer.story.facts.insert(writer.story.facts.end() - 1, {dayOf(240 * 8 + 100), Event{}});
    CHECK(writer.learned(240 * 8 + 210).doubts.empty()); // the brewer said so
}

TEST_CASE("an announced event opens what is known, one before the first look nothing", "[learning]") {
    const StoryWriter quiet = years({{5, 3.5, 4}}, four, 3);
    StoryWriter racked = quiet;
    racked.event(730);
    CHECK(racked.learned(740).offsets[funk].sd() > quiet.learned(740).offsets[funk].sd() + .5);
    StoryWriter early;
    early.event(-10).taste(0, 5.0);
    CHECK(early.learned(0).offsets[funk] == StoryWriter().taste(0, 5.0).learned(0).offsets[funk]);
}

TEST_CASE("a new table opens a little, the same one nothing", "[learning]") {
    const Tasters others = {"Finch", "Heron"};
    const auto sd = [&](const Tasters& tasters) {
        return years({{5, 3.5, 4}}).taste(2000, {{5, 3.5, 4}}, tasters).learned(2000).offsets[funk].sd();
    };
    CHECK(sd(others) > sd({"Rook", "Wren"}));
    // Announced, it is not opened twice.
    const Learned said = years({{5, 3.5, 4}}).event(1990, true).taste(2000, {{5, 3.5, 4}}, others).learned(2000);
    CHECK(said.offsets[funk].sd() == Approx(sd(others)).margin(.02));
}

TEST_CASE("a sitting set aside teaches nothing and stays in the list", "[learning]") {
    const Learned with = years({{5, 3.5, 4}}).taste(2000, {{9, 9, 9}}, four, false).learned(2001);
    const Learned without = years({{5, 3.5, 4}}).learned(2001);
    CHECK(with.offsets == without.offsets);
    CHECK(with.lessons.size() == without.lessons.size() + 1);
    CHECK_FALSE(with.lessons.back().learned[funk]);
}

TEST_CASE("a fault that spoils a dimension teaches nothing there", "[learning]") {
    StoryWriter writer;
    auto sitting = scoredBy(four, {{5, 5, 9}}, dayOf(0));
    sitting.faults = {{"ropy", 3}};
    writer.story.facts.push_back({dayOf(0), tastingOf(sitting, modelSays, true)});
    const Learned learned = writer.learned(0);
    CHECK(learned.sittings[body] == 0);
    CHECK(learned.sittings[acidity] == 1);
    CHECK(now(learned, body) == 0);
}

TEST_CASE("a correction of the model's state does not move the estimate", "[learning]") {
    StoryWriter writer = years({{5, 3.5, 4}}, four, 2);
    const double before = now(writer.learned(500), body);
    writer.corrected(500, {{.3, 0, .4}});
    const Learned after = writer.learned(500);
    CHECK(now(after, body) == Approx(before - .4));
    CHECK(after.offsets[body].mean[Offset::settled] == Approx(writer.learned(499).offsets[body].mean[Offset::settled]));
}

TEST_CASE("moved beer brings what was learned of it", "[learning]") {
    const PerDimension<Offset> from = years({{5, 3.5, 4}}).learned(240 * 8).offsets;
    const OffsetsOf others = [&](std::int64_t vessel, Day) { return vessel == 7 ? from : PerDimension<Offset>{}; };
    StoryWriter empty;
    empty.story.cyclesBefore = 0;
    const Learned filled = empty.moved(0, 1, 7).learned(10, others);
    CHECK(now(filled, funk) == Approx(from[funk].mean[Offset::now]));
    CHECK(filled.sittings[funk] == 0);
    const StoryWriter own = years({{5, 6, 4}});
    StoryWriter blended = own;
    blended.moved(240 * 8 + 5, .25, 7);
    const double mixed = now(blended.learned(240 * 8 + 6, others), funk), alone = now(own.learned(240 * 8 + 6), funk);
    CHECK(mixed == Approx(.75 * alone + .25 * from[funk].mean[Offset::now]).margin(.01));
}

TEST_CASE("replay with a sitting taken out and put back gives the same numbers", "[learning]") {
    StoryWriter writer = years({{5, 3.5, 4}});
    const Learned before = writer.learned(2000);
    const auto kept = writer.story.facts[4];
    writer.story.facts.erase(writer.story.facts.begin() + 4);
    CHECK_FALSE(writer.learned(2000).offsets == before.offsets);
    writer.story.facts.insert(writer.story.facts.begin() + 4, kept);
    CHECK(writer.learned(2000).offsets == before.offsets);
}

TEST_CASE("a young vessel is less bound to what its refills settle at", "[learning]") {
    StoryWriter young, old;
    young.story.cyclesBefore = 0;
    young.refill(0, 1).taste(200, 8.0);
    old.taste(200, 8.0);
    const auto settled = [](const Learned& learned) { return learned.offsets[acidity].mean[Offset::settled]; };
    CHECK(settled(young.learned(200)) < settled(old.learned(200)));
    StoryWriter grown = young;
    grown.story.facts.clear();
    for (int cycle = 0; cycle < 3; ++cycle)
        grown.refill(200 * cycle - 500, cycle ? .35 : 1);
    CHECK(grown.taste(200, 8.0).learned(200).offsets == old.learned(200).offsets);
    StoryWriter second = young;
    second.story.facts.clear();
    second.refill(-500, 1).refill(-300).taste(200, 8.0);
    CHECK(second.learned(200).offsets == young.learned(200).offsets); // two are not enough
}

TEST_CASE("before this cycle was looked at: its readings are gone, its events stay", "[learning]") {
    StoryWriter writer = years({{5, 3.5, 4}}, four, 2);
    const Learned at = writer.learned(600);
    writer.taste(500, {{9, 9, 9}}).titrate(505, 9).event(510).topUp(520, .02);
    const Learned earlier = learnFrom(beforeThisCycle(writer.story), {dayOf(600)}, {}, {});
    CHECK(earlier.sittings == at.sittings);
    CHECK(earlier.offsets[funk].sd() > at.offsets[funk].sd());
}

TEST_CASE("what was learned and what does not fit is said in words", "[learning][words]") {
    Offset offset = longRunPrior(offsetRules()[funk]);
    CHECK(render(taught(funk, offset, 0)) == "Funk was never tasted in this vessel: what is shown is the model alone.");
    offset.mean[Offset::now] = -2.5;
    offset.cov[Offset::now][Offset::now] = .16;
    CHECK(render(taught(funk, offset, 8)) ==
          "This vessel tastes 2.5 less funky than the model says (±0.5, from 8 sittings).");
    offset.mean[Offset::now] = .04;
    CHECK(render(taught(body, offset, 1)) == "This vessel tastes as full as the model says (±0.5, from 1 sitting).");
    const std::string range = render(told({.kind = Doubt::Kind::acidRange, .on = dayOf(0), .ta = GramsPerLitre{.5}}));
    INFO(range);
    CHECK(range.find("0.5") != std::string::npos);
    const std::string clash =
        render(told({.kind = Doubt::Kind::clash, .on = dayOf(0), .other = dayOf(3), .expected = {3, .5}, .seen = -1}));
    CHECK(clash.find("4.0 points of acidity apart") != std::string::npos);
    const std::string surprise = render(
        told({.kind = Doubt::Kind::surprise, .dimension = body, .on = dayOf(0), .expected = {3, .5}, .seen = 6}));
    CHECK(surprise.find("Body was tasted 6.0 on") != std::string::npos);
    CHECK(surprise.find("Did something happen?") != std::string::npos);
}

TEST_CASE("until a day and before what goes in on it are two things", "[learning]") {
    const StoryWriter writer = StoryWriter().taste(0, {{5, 8, 4}}).event(240).refill(240).taste(241, modelSays);
    const auto until = [&](int day, bool beforeFillings) {
        return learnFrom(writer.story, {dayOf(day), beforeFillings}, {}, {}).offsets;
    };
    CHECK(until(240, true) == StoryWriter().taste(0, {{5, 8, 4}}).event(240).learned(240).offsets);
    CHECK(until(240, false) == StoryWriter().taste(0, {{5, 8, 4}}).event(240).refill(240).learned(240).offsets);
    CHECK(until(241, true) == writer.learned(241).offsets); // nothing goes in on that day
}

TEST_CASE("time counts once, whatever happened in between", "[learning]") {
    const auto variance = [](const StoryWriter& writer, int day, const OffsetsOf& others = {}) {
        return writer.learned(day, others).offsets[funk].cov[Offset::now][Offset::now];
    };
    const StoryWriter tasted = StoryWriter().taste(0, modelSays);
    const double cycle = .12 * .12, start = variance(tasted, 0);
    CHECK(variance(StoryWriter(tasted).refill(120, 0), 240) == Approx(start + cycle));
    CHECK(variance(StoryWriter(tasted).event(120), 240) == Approx(start + cycle + 1));
    // Beer of another vessel: what was there wanders up to the day, the mixture from then on.
    const PerDimension<Offset> same = tasted.learned(120).offsets;
    const OffsetsOf others = [&](std::int64_t, Day) { return same; };
    const double there = start + cycle / 2;
    CHECK(variance(StoryWriter(tasted).moved(120, .25, 7), 120, others) == Approx((.5625 + .0625) * there));
    CHECK(variance(StoryWriter(tasted).moved(120, .25, 7), 240, others) == Approx((.5625 + .0625) * there + cycle / 2));
    CHECK(variance(StoryWriter().moved(0, 1, 7), 240, others) == Approx(same[funk].cov[0][0] + cycle));
}

TEST_CASE("only a whole filling begins the story of an empty vessel, and top-ups make no vessel old", "[learning]") {
    const PerDimension<Offset> from = years({{5, 3.5, 4}}).learned(240 * 8).offsets;
    const OffsetsOf others = [&](std::int64_t, Day) { return from; };
    StoryWriter part;
    part.story.cyclesBefore = 0;
    StoryWriter empty = part;
    CHECK(part.moved(0, .5, 7).learned(0, others).offsets == empty.learned(0).offsets);
    CHECK(now(empty.moved(0, 1, 7).learned(0, others), funk) == from[funk].mean[Offset::now]);
    StoryWriter young;
    young.story.cyclesBefore = 0;
    const StoryWriter fresh = StoryWriter(young).refill(-300, 1).taste(0, 8.0);
    young.refill(-300, 1).topUp(-200, .02).topUp(-100, .02).topUp(-50, .02).taste(0, 8.0);
    CHECK(young.learned(0).offsets == fresh.learned(0).offsets);
}

TEST_CASE("an announcement holds for the next sitting, not for ever", "[learning]") {
    const auto asked = [](const StoryWriter& writer) { return writer.learned(2400).doubts.size(); };
    const StoryWriter quiet = years({{5, 3.5, 4}});
    CHECK(asked(StoryWriter(quiet).event(2000).taste(2010, {{5, 7, 4}})) == 0);
    CHECK(asked(StoryWriter(quiet).event(2000).taste(2010, {{5, 3.5, 4}}).taste(2100, {{5, 8.5, 4}})) == 1);
    // A new table that was announced once is new again the next time.
    const Tasters others = {"Finch", "Heron"}, third = {"Plover"};
    const auto sd = [&](const Tasters& last) {
        return StoryWriter(quiet).event(2000, true).taste(2010, {{5, 3.5, 4}}, others).taste(2100, {{5, 3.5, 4}}, last);
    };
    CHECK(sd(third).learned(2100).lessons.back().expected[funk]->sd >
          sd(others).learned(2100).lessons.back().expected[funk]->sd + .1);
}

TEST_CASE("each lesson keeps what was expected, what was seen and what stood after it", "[learning]") {
    const Learned learned = years({{5, 3.5, 4}}, four, 2).learned(480);
    REQUIRE(learned.lessons.size() == 2);
    const Lesson& last = learned.lessons[1];
    CHECK(last.on == dayOf(450));
    CHECK(last.model[funk] == modelSays[funk]);
    CHECK(last.tasted[funk]->mean == Approx(3.5));
    const Learned before = years({{5, 3.5, 4}}, four, 1).learned(450),
                  after = years({{5, 3.5, 4}}, four, 2).learned(450);
    CHECK(last.expected[funk]->mean == Approx(modelSays[funk] + now(before, funk)));
    CHECK(last.expected[funk]->sd == Approx(before.offsets[funk].sd()));
    CHECK(last.offset[funk]->mean == Approx(now(after, funk)));
    CHECK(last.offset[funk]->sd == Approx(after.offsets[funk].sd()));
    CHECK_FALSE(StoryWriter().taste(0, modelSays, four, false).learned(0).lessons[0].expected[funk]);
    const AcidSeen seen = seenOf({GramsPerLitre{8}, {}, sourBeer()}, {});
    const AcidLesson first = StoryWriter().titrate(0, 8).learned(0).acidity.at(0);
    CHECK(first.offset.mean == Approx(seen.slope * (8 - seen.model.gPerL)));
    CHECK(first.offset.sd == Approx(std::sqrt(.09 * seen.slope * seen.slope + .81)));
    CHECK(first.ta->gPerL == 8);
}

TEST_CASE("a palate that is known to find the vessel sour is no contradiction of its acid", "[learning]") {
    const double asModelled = titratableAcidity(sourBeer()).gPerL;
    StoryWriter writer;
    for (int cycle = 0; cycle < 8; ++cycle)
        writer.titrate(240 * cycle + 205, asModelled).taste(240 * cycle + 210, {{7, 6, 4}}).refill(240 * (cycle + 1));
    CHECK(writer.learned(240 * 8).doubts.empty());
    CHECK(StoryWriter(writer).taste(2000, {{7, 6, 4}}).titrate(2003, asModelled).learned(2004).doubts.empty());
    const Learned known = StoryWriter(writer).titrate(2000, asModelled).learned(2000);
    CHECK(known.acidity.back().offset.mean == Approx(known.offsets[acidity].mean[Offset::apart]).margin(.1));
    // What would once have been no wonder now is one: as sour as the acid says.
    const Learned apart = StoryWriter(writer).taste(2000, {{3, 6, 4}}).titrate(2003, asModelled).learned(2004);
    REQUIRE(apart.doubts.size() == 1);
    CHECK(apart.doubts[0].kind == Doubt::Kind::clash);
}

TEST_CASE("a sitting of faults alone neither widens what is known nor uses up what was announced", "[learning]") {
    StoryWriter writer = years({{5, 3.5, 4}});
    const Learned before = writer.event(1990).learned(2000);
    tasting::Sitting faults;
    faults.on = dayOf(1995);
    faults.faults = {{"mousy", 1}};
    writer.story.facts.push_back({dayOf(1995), tastingOf(faults, modelSays, true)});
    const Learned after = writer.learned(2000);
    for (Dimension d : allDimensions)
        CHECK(after.offsets[d].sd() == Approx(before.offsets[d].sd()));
    CHECK(writer.taste(2001, {{5, 7, 4}}).learned(2001).doubts.empty()); // the event stands for it
}

TEST_CASE("a sitting set aside shows what stood then, and waits as long as any other", "[learning]") {
    const Learned learned = years({{5, 3.5, 4}}).taste(2100, {{9, 9, 9}}, four, false).learned(2100);
    const Lesson& aside = learned.lessons.back();
    REQUIRE(aside.offset[funk]);
    CHECK(aside.offset[funk]->mean == Approx(now(learned, funk)));
    CHECK(aside.offset[funk]->sd == Approx(learned.offsets[funk].sd()));
    CHECK(aside.expected[funk]->sd == Approx(learned.offsets[funk].sd()));
}

TEST_CASE("a top-up between them does not hide a contradiction, nor what settles it", "[learning]") {
    StoryWriter writer;
    writer.taste(0, {{9.5, 6, 4}}).topUp(1, .01).titrate(3, 3);
    REQUIRE(writer.learned(4).doubts.size() == 1);
    CHECK(writer.learned(4).doubts[0].kind == Doubt::Kind::clash);
    CHECK(writer.topUp(5, .01).taste(6, {{9.3, 6, 4}}).learned(7).doubts.empty());
}

TEST_CASE("a table that has tasted its fill is heard again after a refill or an event", "[learning]") {
    const auto often = [] {
        StoryWriter writer;
        for (int glass = 0; glass < 40; ++glass)
            writer.taste(glass / 4, 5.0, {"Rook"});
        return writer;
    };
    const int before = often().learned(12).sittings[funk];
    CHECK(often().refill(11).taste(12, 8.0, {"Rook"}).learned(12).sittings[funk] == before + 1);
    CHECK(often().event(11).taste(12, 8.0, {"Rook"}).learned(12).sittings[funk] == before + 1);
    CHECK(often().taste(12, 8.0, {"Rook"}).learned(12).sittings[funk] == before); // nothing new in it
}

TEST_CASE("two tables in turn count as two, however often", "[learning]") {
    StoryWriter writer;
    for (int glass = 0; glass < 80; ++glass)
        writer.taste(glass / 4, 5.0, glass % 2 ? Tasters{"Rook"} : Tasters{"Wren"});
    CHECK(writer.learned(20).offsets[funk].sd() > .15);
}

TEST_CASE("new tasters announced on the day they taste are met once", "[learning]") {
    const Tasters others = {"Finch", "Heron"};
    const StoryWriter tasted = years({{5, 3.5, 4}}).taste(2000, {{5, 3.5, 4}}, others);
    StoryWriter said = tasted;
    said.event(2000, true);
    CHECK(said.learned(2000).offsets == tasted.learned(2000).offsets);
    CHECK(said.taste(2010, {{5, 8, 4}}, others).learned(2010).doubts.size() == 1); // a surprise is still one
}

TEST_CASE("an event is used up by dimension", "[learning]") {
    StoryWriter writer = years({{5, 3.5, 4}}).event(1990);
    tasting::Sitting acidOnly;
    acidOnly.on = dayOf(1995);
    for (const auto& score : scoredBy(four, {{5, 5, 5}}, dayOf(1995)).scores)
        if (tasting::builtInSheet().find(score.attribute)->dimension == acidity)
            acidOnly.scores.push_back(score);
    writer.story.facts.push_back({dayOf(1995), tastingOf(acidOnly, modelSays, true)});
    CHECK(writer.taste(2000, {{5, 7, 4}}).learned(2000).doubts.empty());
}

TEST_CASE("cycles before the takeover and refills since count together", "[learning]") {
    StoryWriter writer;
    writer.story.cyclesBefore = 1.5;
    writer.refill(-400).refill(-200).taste(0, 8.0);
    StoryWriter old;
    CHECK(writer.learned(0).offsets == old.taste(0, 8.0).learned(0).offsets);
}
