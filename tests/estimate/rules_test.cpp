// SPDX-License-Identifier: GPL-3.0-or-later
// What each row of the rules does to an estimate: its effect in points, days and grams, on both sides of its limit.
#include "estimate/estimates.h"
#include "estimate/story_support.h"
#include "estimate/words.h"

#include "quantity/acid_base.h"
#include "quantity/text.h"

using namespace staveline;
using namespace staveline::estimate;

namespace {

constexpr auto now_ = Offset::now, settled = Offset::settled, apart = Offset::apart;

/// What a fact did to the covariance of a vessel that was tasted on the first day.
Offset::Row grown(const StoryWriter& after, int day, Dimension d, Offset::Part part) {
    const auto before = StoryWriter().taste(0, modelSays).learned(0).offsets[d].cov;
    const auto then = after.learned(day).offsets[d].cov;
    return {then[part][0] - before[part][0], then[part][1] - before[part][1], then[part][2] - before[part][2]};
}
void checkRow(const Offset::Row& row, double first, double second, double third) {
    CHECK(row[0] == Approx(first).margin(1e-9));
    CHECK(row[1] == Approx(second).margin(1e-9));
    CHECK(row[2] == Approx(third).margin(1e-9));
}

AcidDoubt doubtAbout(std::optional<double> ta, std::optional<double> ph, const EstimateConstants& by = {}) {
    AcidReading reading{{}, {}, sourBeer()};
    if (ta)
        reading.ta = GramsPerLitre{*ta};
    if (ph)
        reading.ph = Ph{*ph};
    return doubtOf(reading, by);
}

} // namespace

TEST_CASE("before anything is seen: spread of a vessel long on one recipe and of a first fill", "[rules]") {
    StoryWriter young;
    young.story.cyclesBefore = 0;
    const double levels[] = {1.2, 2.0, .7};
    for (Dimension d : allDimensions) {
        const double level = levels[static_cast<std::size_t>(d)] * levels[static_cast<std::size_t>(d)];
        const Offset old = StoryWriter().learned(0).offsets[d], first = young.learned(0).offsets[d];
        CHECK(old.cov[now_][now_] == Approx(level + .09));
        CHECK(old.cov[now_][settled] == Approx(level));
        CHECK(old.cov[settled][settled] == Approx(level));
        CHECK(first.cov[now_][now_] == Approx(level));
        CHECK(first.cov[now_][settled] == Approx(.8 * level));
        CHECK(first.cov[settled][settled] == Approx(level));
        for (const Offset& offset : {old, first})
            CHECK(offset.cov[apart][apart] == Approx(d == acidity ? .81 : 0));
    }
}

TEST_CASE("in a cycle of 240 days the beer wanders by .15, .12 and .20", "[rules]") {
    const StoryWriter tasted = StoryWriter().taste(0, modelSays);
    checkRow(grown(tasted, 240, acidity, now_), .0225, 0, 0);
    checkRow(grown(tasted, 240, funk, now_), .0144, 0, 0);
    checkRow(grown(tasted, 240, body, now_), .04, 0, 0);
    checkRow(grown(tasted, 60, body, now_), .01, 0, 0);
    checkRow(grown(tasted, 240, body, settled), 0, 0, 0);
}

TEST_CASE("at a refill what it settles at wanders by .10, .08 and .12, at a top-up by its share of that", "[rules]") {
    const StoryWriter tasted = StoryWriter().taste(0, modelSays);
    for (const auto& [d, walk] : {std::pair{acidity, .10}, std::pair{funk, .08}, std::pair{body, .12}}) {
        CHECK(grown(StoryWriter(tasted).refill(0), 0, d, settled)[settled] == Approx(walk * walk));
        CHECK(grown(StoryWriter(tasted).topUp(0, .07), 0, d, settled)[settled] == Approx(.2 * walk * walk));
    }
    CHECK(grown(StoryWriter(tasted).refill(0), 0, acidity, apart)[apart] == Approx(.0025));
    CHECK(grown(StoryWriter(tasted).topUp(0, .07), 0, acidity, apart)[apart] == Approx(.0005));
}

TEST_CASE("an event opens 1, .7 and 1 squared points, a new table a quarter of everything", "[rules]") {
    const StoryWriter racked = StoryWriter().taste(0, modelSays).event(0);
    for (Dimension d : allDimensions) {
        checkRow(grown(racked, 0, d, now_), 1, .7, 0);
        checkRow(grown(racked, 0, d, settled), .7, 1, 0);
        checkRow(grown(racked, 0, d, apart), 0, 0, 0);
    }
    const StoryWriter others = StoryWriter().taste(0, modelSays).event(0, true);
    checkRow(grown(others, 0, funk, now_), .25, .25, 0);
    for (auto part : {now_, settled, apart})
        checkRow(grown(others, 0, acidity, part), .25, .25, .25);
}

TEST_CASE("a sitting asks what happened from 2.5 errors on, to either side", "[rules]") {
    const StoryWriter first = StoryWriter().taste(0, modelSays);
    const Lesson lesson = StoryWriter(first).taste(100, modelSays).learned(100).lessons.back();
    const double error = std::hypot(lesson.expected[funk]->sd, lesson.tasted[funk]->sd);
    const auto asked = [&](double errors) {
        return StoryWriter(first).taste(100, {{5, 6 + errors * error, 4}}).learned(100);
    };
    for (double side : {-1., 1.}) {
        CHECK(asked(2.45 * side).doubts.empty());
        REQUIRE(asked(2.55 * side).doubts.size() == 1);
        const Doubt doubt = asked(2.55 * side).doubts[0];
        CHECK(doubt.expected.mean == Approx(6));
        CHECK(doubt.expected.sd == Approx(error));
        CHECK(doubt.seen == Approx(6 + 2.55 * side * error));
        CHECK(doubt.on == dayOf(100));
    }
    // It is learned as after an event: the beer may have changed.
    CHECK(asked(2.55).offsets[funk].sd() > asked(2.45).offsets[funk].sd());
    CHECK(StoryWriter().taste(0, {{5, 0, 4}}).learned(0).doubts.empty()); // nothing was expected of a first sitting
}

TEST_CASE("a tasting and a titration contradict each other from 2.5 errors on, up to seven days apart", "[rules]") {
    const AcidSeen seen = seenOf({GramsPerLitre{6}, {}, sourBeer()}, {});
    const double tasting = StoryWriter().taste(0, modelSays).learned(0).lessons.back().tasted[acidity]->sd;
    const double error = std::sqrt(tasting * tasting + seen.slope * seen.slope * .09 + .81);
    const auto apartBy = [&](double errors, int days) {
        const double ta = seen.model.gPerL + errors * error / seen.slope;
        return StoryWriter().taste(0, modelSays).titrate(days, ta).learned(days);
    };
    CHECK(apartBy(2.45, 3).doubts.empty());
    REQUIRE(apartBy(2.55, 3).doubts.size() == 1);
    CHECK(apartBy(2.55, 7).doubts.size() == 1);
    CHECK(apartBy(2.55, 8).doubts.empty());
    const Doubt doubt = apartBy(2.55, 3).doubts[0];
    CHECK(doubt.expected.mean == Approx(0).margin(1e-9)); // as the model says
    CHECK(doubt.expected.sd == Approx(tasting));
    CHECK(doubt.seen == Approx(2.55 * error));
}

TEST_CASE("sittings of one table within thirty days come to one of at least .28 points", "[rules]") {
    StoryWriter writer;
    writer.story.targetsSetBy = {"Rook"};
    for (int glass = 0; glass < 8; ++glass)
        writer.taste(0, modelSays, {"Rook"});
    const double spread = writer.learned(0).offsets[funk].sd();
    CHECK(1 / (spread * spread) == Approx(1 / 4.09 + 1 / (.28 * .28)));
    const auto later = [&](int day) { return StoryWriter(writer).taste(day, modelSays, {"Rook"}).learned(day); };
    CHECK(later(30).offsets[funk] == writer.learned(30).offsets[funk]);
    CHECK(later(31).offsets[funk].sd() < writer.learned(31).offsets[funk].sd());
    // Two glasses weigh as two while they are far from it.
    StoryWriter two;
    two.story.targetsSetBy = {"Rook"};
    two.taste(0, modelSays, {"Rook"}).taste(30, modelSays, {"Rook"});
    const double error = two.learned(30).lessons.back().tasted[body]->sd;
    const double walked = 1 / (1 / .58 + 1 / (error * error)) + .04 * 30 / 240;
    const double both = two.learned(30).offsets[body].cov[now_][now_];
    CHECK(1 / both == Approx(1 / walked + 1 / (error * error)));
}

TEST_CASE("a titration is good to .3 g/L, a lone pH to 1.5, where the map is flat .3 points a gram", "[rules]") {
    CHECK(seenOf({GramsPerLitre{6}, {}, sourBeer()}, {}).sd == Approx(.3));
    CHECK(seenOf({GramsPerLitre{6}, Ph{3.3}, sourBeer()}, {}).sd == Approx(.3));
    CHECK(seenOf({{}, Ph{3.3}, sourBeer()}, {}).sd == Approx(1.5));
    const AcidSeen usual = seenOf({GramsPerLitre{7}, {}, sourBeer()}, {});
    CHECK(usual.ta.gPerL == 7);
    CHECK(usual.model.gPerL == Approx(titratableAcidity(sourBeer()).gPerL));
    const auto score = [&](double g) {
        return tasting::acidityScore({g}, {sourBeer().acetic}, sourBeer().alcohol(), {});
    };
    const double ta = usual.model.gPerL;
    CHECK(usual.slope == Approx((score(ta + .01) - score(ta - .01)) / .02).epsilon(1e-3));
    CHECK(seenOf({GramsPerLitre{20}, {}, withTitratableAcidity(sourBeer(), {20})}, {}).slope == Approx(.3));
}

TEST_CASE("acid that no running vessel has: below 1 or above 25 g/L, pH below 2.7 or above 4.6", "[rules]") {
    for (double good : {1.0, 1.01, 24.9, 25.0})
        CHECK(doubtAbout(good, {}) == AcidDoubt::none);
    for (double bad : {.99, 25.1, std::nan("")})
        CHECK(doubtAbout(bad, {}) == AcidDoubt::range);
    for (double good : {2.7, 2.71, 4.59, 4.6})
        CHECK(doubtAbout({}, good) == AcidDoubt::none);
    for (double bad : {2.69, 4.61})
        CHECK(doubtAbout({}, bad) == AcidDoubt::range);
}

TEST_CASE("pH and titration may miss each other by .25 and by 1.5 g/L", "[rules]") {
    EstimateConstants byPh, byTa;
    byPh.balanceTa = byTa.balancePh = 100;
    const double fits = phAt({6}, sourBeer()).ph;
    for (double side : {-1., 1.}) {
        CHECK(doubtAbout(6, fits + .245 * side, byPh) == AcidDoubt::none);
        CHECK(doubtAbout(6, fits + .255 * side, byPh) == AcidDoubt::balance);
        const double ta = acidityAt({fits}, sourBeer()).gPerL;
        CHECK(doubtAbout(ta + 1.48 * side, fits, byTa) == AcidDoubt::none);
        CHECK(doubtAbout(ta + 1.52 * side, fits, byTa) == AcidDoubt::balance);
    }
}

TEST_CASE("gravity still falls from a thousandth a month on, seen over a week at least", "[rules]") {
    const auto falls = [](double by, int days) {
        const std::vector<Measurement> measured = {{dayOf(0), SpecificGravity{1.008}},
                                                   {dayOf(days), SpecificGravity{1.008 - by}}};
        return gravityFalling(measured, {});
    };
    CHECK(falls(.00105, 30));
    CHECK_FALSE(falls(.00095, 30));
    CHECK(falls(.0021, 60));
    CHECK_FALSE(falls(.0019, 60));
    CHECK(falls(.005, 7));
    CHECK_FALSE(falls(.005, 6));
    CHECK_FALSE(falls(-.005, 30));
    const std::vector<Measurement> one = {{dayOf(0), SpecificGravity{1.012}}};
    CHECK_FALSE(gravityFalling(one, {}));
}

TEST_CASE("words give the 80 % half-width and the sign of the offset", "[rules][words]") {
    Offset offset;
    offset.mean[now_] = 1.2;
    offset.cov[now_][now_] = .36;
    CHECK(render(taught(acidity, offset, 3)).find("1.2 ") != std::string::npos);
    CHECK(render(taught(acidity, offset, 3)).find("±0.8") != std::string::npos);
    offset.mean[now_] = .06;
    CHECK(render(taught(acidity, offset, 3)) != render(taught(acidity, Offset{{-.06}, offset.cov}, 3)));
    offset.mean[now_] = .04;
    CHECK(render(taught(acidity, offset, 3)) == render(taught(acidity, Offset{{-.04}, offset.cov}, 3)));
    const std::string surprise = render(
        told({.kind = Doubt::Kind::surprise, .dimension = funk, .on = dayOf(0), .expected = {3, .5}, .seen = 6}));
    INFO(surprise);
    CHECK(surprise.find("±0.6") != std::string::npos);
    CHECK(surprise.find("3.0") != std::string::npos);
    const auto acidWords = [](std::optional<GramsPerLitre> ta, std::optional<Ph> ph) {
        return render(told({.kind = Doubt::Kind::acidBalance, .on = dayOf(0), .ta = ta, .ph = ph}));
    };
    CHECK(acidWords(GramsPerLitre{12}, Ph{3.9}).find("12") != std::string::npos);
    CHECK(acidWords(GramsPerLitre{12}, Ph{3.9}).find("3.9") != std::string::npos);
    CHECK(acidWords({}, Ph{2.5}).find("2.5") != std::string::npos);
    CHECK(acidWords(GramsPerLitre{12}, {}) != acidWords(GramsPerLitre{12}, Ph{3.9}));
}
