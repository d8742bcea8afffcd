// SPDX-License-Identifier: GPL-3.0-or-later
// Titrations and pH as evidence: what they say, what cannot be, and what contradicts a tasting.
#include "estimate/story_support.h"

#include "quantity/acid_base.h"

using namespace staveline;
using namespace staveline::estimate;

namespace {

AcidReading reading(std::optional<double> ta, std::optional<double> ph) {
    AcidReading made{{}, {}, sourBeer()};
    if (ta)
        made.ta = GramsPerLitre{*ta};
    if (ph)
        made.ph = Ph{*ph};
    return made;
}

} // namespace

TEST_CASE("acidity and pH of a beer stand for each other", "[acid]") {
    const Composition beer = sourBeer();
    CHECK(acidityAt(ph(beer), beer).gPerL == Approx(titratableAcidity(beer).gPerL));
    for (double ta : {3.0, 5.0, 8.0, 12.0})
        CHECK(acidityAt(phAt({ta}, beer), beer).gPerL == Approx(ta).epsilon(1e-6));
    // By the charge balance alone; strong beers are told less sharply than weak ones.
    CHECK(acidityAt({3.1}, beer).gPerL - acidityAt({3.2}, beer).gPerL >
          acidityAt({3.6}, beer).gPerL - acidityAt({3.7}, beer).gPerL);
}

TEST_CASE("a lone pH says something about the acidity, a titration more", "[acid]") {
    const AcidSeen byPh = seenOf(reading({}, 3.1), {}), byTitration = seenOf(reading(9, {}), {});
    CHECK(byPh.sd == Approx(1.5));
    CHECK(byTitration.sd == Approx(.3));
    CHECK(byPh.ta.gPerL > byPh.model.gPerL + 1);
    StoryWriter none, ph, ta;
    const double before = none.learned(1).offsets[acidity].sd();
    CHECK(ph.titrate(0, {}, 3.1).learned(1).offsets[acidity].sd() < before);
    CHECK(ta.titrate(0, 9).learned(1).offsets[acidity].sd() < ph.learned(1).offsets[acidity].sd());
    CHECK(now(ph.learned(1), acidity) > 0);
    // Beside a titration of the same glass it only has to be plausible.
    const double both = phAt({7}, sourBeer()).ph + .05;
    CHECK(StoryWriter().titrate(0, 7, both).learned(1).offsets == StoryWriter().titrate(0, 7).learned(1).offsets);
}

TEST_CASE("what no running vessel has is asked back and steers nothing", "[acid]") {
    for (const auto& [ta, ph] : std::vector<std::pair<std::optional<double>, std::optional<double>>>{
             {.5, {}}, {40, {}}, {{}, 2.5}, {{}, 5.2}, {.5, 2.5}, {40, 6.9}}) {
        CHECK(doubtOf(reading(ta, ph)) == AcidDoubt::range);
        const Learned learned = StoryWriter().titrate(0, ta, ph).learned(1);
        REQUIRE(learned.doubts.size() == 1);
        CHECK(learned.doubts[0].kind == Doubt::Kind::acidRange);
        CHECK(now(learned, acidity) == 0);
        CHECK(learned.acidity.empty());
    }
}

TEST_CASE("a titration and a pH that cannot both be true are asked back", "[acid]") {
    CHECK(doubtOf(reading(2, 3.0)) == AcidDoubt::balance);
    CHECK(doubtOf(reading(12, 3.9)) == AcidDoubt::balance);
    const double fits = phAt({6}, sourBeer()).ph;
    CHECK(doubtOf(reading(6, fits)) == AcidDoubt::none);
    CHECK(doubtOf(reading(6, fits + .3)) == AcidDoubt::balance);
    CHECK(StoryWriter().titrate(0, 12, 3.9).learned(1).doubts.at(0).kind == Doubt::Kind::acidBalance);
}

TEST_CASE("a tasting and a titration of one week that contradict each other steer nothing", "[acid]") {
    for (bool titrationFirst : {false, true}) {
        StoryWriter writer;
        if (titrationFirst)
            writer.titrate(0, 3).taste(3, {{9.5, 6, 4}});
        else
            writer.taste(0, {{9.5, 6, 4}}).titrate(3, 3);
        const Learned learned = writer.learned(4);
        REQUIRE(learned.doubts.size() == 1);
        CHECK(learned.doubts[0].kind == Doubt::Kind::clash);
        CHECK(learned.doubts[0].on == dayOf(0));
        CHECK(learned.doubts[0].other == dayOf(3));
        CHECK(now(learned, acidity) == 0);
        CHECK(learned.sittings[acidity] == 0);
        CHECK(learned.sittings[Dimension::funk] == 1);
    }
}

TEST_CASE("a repeat says which of the two stays out", "[acid]") {
    StoryWriter writer;
    writer.taste(0, {{9.5, 6, 4}}).titrate(3, 3);
    StoryWriter tastedAgain = writer, titratedAgain = writer;
    const Learned tasted = tastedAgain.taste(6, {{9.3, 6, 4}}).learned(7);
    CHECK(tasted.doubts.empty());
    CHECK(now(tasted, acidity) > 2);
    CHECK(tasted.acidity.empty());
    const Learned titrated = titratedAgain.titrate(6, 3.1).learned(7);
    CHECK(titrated.doubts.empty());
    CHECK(now(titrated, acidity) < 0);
    CHECK(titrated.sittings[acidity] == 0);
}

TEST_CASE("what was tasted before a refill does not contradict what was titrated after it", "[acid]") {
    const Learned learned = StoryWriter().taste(0, {{9.5, 6, 4}}).refill(1, .5).titrate(3, 3).learned(4);
    CHECK(learned.doubts.empty());
}

TEST_CASE("how sure a sitting is depends on who is known at the table", "[panel]") {
    const auto glass = evaluate(scoredBy({"Rook", "Jay"}, {{5, 5, 5}}, dayOf(0)), tasting::builtInSheet());
    const auto& read = *glass.dimensions[Dimension::funk];
    const Tasters both = {"Rook", "Jay"};
    CHECK(variance(read, both, {}) == Approx(read.absoluteSe * read.absoluteSe));
    CHECK(variance(read, both, both) == Approx(read.sameTasterSe * read.sameTasterSe));
    const double half = variance(read, both, {"Rook"});
    CHECK(half > variance(read, both, both));
    CHECK(half < variance(read, both, {}));
    CHECK(oneMoreTaster(Dimension::funk, true) < oneMoreTaster(Dimension::funk, false));
}
