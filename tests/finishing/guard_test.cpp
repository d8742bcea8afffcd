// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing_support.h"

#include "finishing/carbonation.h"
#include "finishing/guard_words.h"
#include "quantity/text.h"
#include "support/property.h"

#include <algorithm>

namespace staveline::finishing {
namespace {

bool refusedFor(const GuardVerdict& verdict, std::string_view key) {
    return verdict.answer == GuardAnswer::refused &&
           std::any_of(verdict.refusals.begin(), verdict.refusals.end(),
                       [&](const Message& message) { return message.key == key; });
}

std::chrono::days daysAgo(int days) {
    return std::chrono::days{days};
}

} // namespace

TEST_CASE("Proven beer in a bottle that holds it is cleared, with until when", "[guard]") {
    const auto verdict = asked(provenBeer(1.002), bottleFor(8), 1.5);
    CHECK(verdict.answer == GuardAnswer::clear);
    CHECK(verdict.proof.whole());
    CHECK(verdict.floor.sg == Approx(1.001));
    CHECK(verdict.until == bottlingDay + daysAgo(31)); // when the gravity has to be measured again
    CHECK_FALSE(verdict.grounds.empty());
    CHECK(verdict.margin()->barOverAir > 0);
    CHECK(verdict.marginVolumes()->vol > .5);
}

TEST_CASE("Nothing is cleared in a bottle nobody knows", "[guard]") {
    CHECK(refusedFor(asked(provenBeer(1.000), Package{}, 0), "finishing.guard.no_rating"));
    CHECK(refusedFor(asked(provenBeer(1.000), bottleOf("unknown"), 0), "finishing.guard.never"));
}

TEST_CASE("The lower of the maker's rating and what the make is trusted with counts", "[guard]") {
    Package both = bottleOf("light", 20);
    both.rating = GaugePressure{8};
    CHECK(asked(provenBeer(1.000), both, 1).limitVolumes == Co2Volumes{3});
    both.rating = GaugePressure{1.5};
    CHECK(asked(provenBeer(1.000), both, 1).limit->barOverAir == Approx(1.5));
}

TEST_CASE("A beer that was not measured, long ago or still falls is not packed", "[guard]") {
    BeerKnown none = oldBeer(1.000);
    none.readings.pop_back();
    CHECK(refusedFor(asked(none, bottleFor(8), 1), "finishing.guard.no_gravity"));
    BeerKnown old = oldBeer(1.000);
    old.readings.back().on -= daysAgo(40);
    CHECK(refusedFor(asked(old, bottleFor(8), 1), "finishing.guard.old_gravity"));
    BeerKnown falling = oldBeer(1.000);
    falling.readings.insert(falling.readings.end() - 1, {bottlingDay - daysAgo(30), {1.003}});
    CHECK(refusedFor(asked(falling, bottleFor(8), 1), "finishing.guard.falling"));
}

TEST_CASE("A young refill and a recent transfer want the proof", "[guard]") {
    BeerKnown young = oldBeer(1.000);
    young.lastRefill = bottlingDay - daysAgo(80);
    CHECK(refusedFor(asked(young, bottleFor(8), 1), "finishing.guard.young"));
    young.lastRefill = bottlingDay - daysAgo(93);
    CHECK(asked(young, bottleFor(8), 1).answer == GuardAnswer::clear);
    BeerKnown moved = oldBeer(1.000);
    moved.lastMove = bottlingDay - daysAgo(10);
    CHECK(refusedFor(asked(moved, bottleFor(8), 1), "finishing.guard.moved"));
}

TEST_CASE("Readings from before the last refill or transfer prove nothing", "[guard]") {
    BeerKnown beer = provenBeer(1.001);
    CHECK(proofOf(beer).whole());
    beer.lastMove = bottlingDay - daysAgo(70);
    CHECK_FALSE(proofOf(beer).stable);
    beer.lastMove = bottlingDay - daysAgo(3);
    CHECK_FALSE(proofOf(beer).forced);
}

TEST_CASE("A proof wants three equal readings over three months and a warm sample", "[guard]") {
    const BeerKnown whole = provenBeer(1.001);
    BeerKnown two = whole;
    two.readings.erase(two.readings.begin() + 1);
    CHECK_FALSE(proofOf(two).stable);
    BeerKnown brief = whole;
    brief.readings.front().on = bottlingDay - daysAgo(80);
    CHECK_FALSE(proofOf(brief).stable);
    BeerKnown moving = whole;
    moving.readings.front().gravity = {1.003};
    CHECK_FALSE(proofOf(moving).stable);
    BeerKnown lower = whole;
    lower.forced->gravity = {.999};
    CHECK_FALSE(proofOf(lower).forced);
    CHECK(proofOf(lower).missing.size() == 1);
    CHECK(floorOf(lower).sg == Approx(.998)); // the warm sample is the lowest seen
}

TEST_CASE("A warm sample stands for three weeks, and an earlier one that ended lower speaks against it", "[guard]") {
    BeerKnown brief = provenBeer(1.001);
    brief.lastMove = bottlingDay - daysAgo(121); // the readings are of the beer since
    CHECK(proofOf(brief).whole());
    brief.forced->on = bottlingDay - daysAgo(101);
    CHECK_FALSE(proofOf(brief).forced);
    brief.forced->on = bottlingDay - daysAgo(100);
    CHECK(proofOf(brief).forced);
    BeerKnown lower = provenBeer(1.004);
    lower.warm = {{bottlingDay - daysAgo(40), {.998}}};
    CHECK_FALSE(proofOf(lower).forced);
    CHECK(floorOf(lower).sg == Approx(.997));
    lower.warm = {{bottlingDay - daysAgo(40), {1.0035}}}; // as good as equal
    CHECK(proofOf(lower).whole());
    lower.warm = {{bottlingDay - daysAgo(300), {.996}}}; // of the beer before it was parted and moved
    lower.lastMove = bottlingDay - daysAgo(200);
    CHECK(proofOf(lower).whole());
    CHECK(floorOf(lower).sg == Approx(.995));
}

TEST_CASE("A top-up tells nothing of how the beer of a vessel ends", "[guard]") {
    BeerKnown topped = oldBeer(1.004, 1.004);
    topped.lastExchange.reset();
    topped.lastRefill = bottlingDay - daysAgo(365);
    CHECK(floorOf(topped).sg == Approx(.998));
    topped.lastExchange = bottlingDay - daysAgo(700);
    CHECK(floorOf(topped).sg == Approx(1.000));
}

TEST_CASE("Beer still falls when its last gravity is entered twice", "[guard]") {
    BeerKnown beer = oldBeer(1.008);
    beer.readings.back().on = bottlingDay - daysAgo(5);
    beer.readings.push_back({bottlingDay, {1.003}});
    CHECK(stillFalling(beer));
    beer.readings.push_back({bottlingDay, {1.003}});
    CHECK(stillFalling(beer));
    for (GravityReading& reading : beer.readings)
        reading.on -= daysAgo(40);
    beer.readings.push_back({bottlingDay - daysAgo(2), {1.003}});
    beer.readings.push_back({bottlingDay, {1.003}});
    CHECK_FALSE(stillFalling(beer));
}

TEST_CASE("Glass that is hotter than usual holds no more pressure", "[guard]") {
    const BeerKnown beer = provenBeer(1.000);
    const GuardVerdict usual = asked(beer, bottleOf("heavy", 30), 1), hot = asked(beer, bottleOf("heavy", 40), 1);
    CHECK(hot.limit->barOverAir == Approx(usual.limit->barOverAir));
    CHECK(hot.margin()->barOverAir < usual.margin()->barOverAir - .5);
}

TEST_CASE("Sugar that was ever added counts until a whole proof says that it has fermented", "[guard]") {
    BeerKnown beer = provenBeer(1.001);
    beer.freshSugar = GramsPerLitre{10};
    CHECK(asked(beer, bottleFor(8), 1).pressures.fruit.vol == 0);
    beer.forced.reset();
    // 0.463 g of CO2 from a gram of extract (Balling), 1.977 g/L in a volume
    CHECK(asked(beer, bottleFor(8), 1).pressures.fruit.vol == Approx(10 * .463 / 1.977).epsilon(.01));
}

TEST_CASE("The floor is the lowest gravity seen, and lower where that is not known", "[guard]") {
    CHECK(floorOf(oldBeer(1.003, .999)).sg == Approx(.998));
    CHECK(floorOf(oldBeer(1.003, 1.004)).sg == Approx(1.000)); // one high ending proves nothing
    BeerKnown first = oldBeer(1.003);
    first.lastRefill.reset();
    first.lastExchange.reset();
    first.readings.erase(first.readings.begin());
    CHECK(floorOf(first).sg == Approx(.998));
    BeerKnown diastatic = oldBeer(1.003);
    diastatic.diastatic = true;
    CHECK(floorOf(diastatic).sg == Approx(.996));
    BeerKnown sugary = oldBeer(1.003);
    sugary.simpleSugar = {.15};
    CHECK(floorOf(sugary).sg == Approx(.996));
    BeerKnown proven = provenBeer(1.003);
    proven.diastatic = true;
    CHECK(floorOf(proven).sg == Approx(1.001));
}

TEST_CASE("Beer at 1.012 does not go into a bottle, whatever the bottle", "[guard]") {
    const auto fault = guard({provenBeer(1.012), bottleFor(8), {0}, {}}).error();
    CHECK(fault.path == "/gravity");
    CHECK_FALSE(fault.remedy.key.empty());
}

TEST_CASE("To override the guard takes a reason, which stays with the answer", "[guard]") {
    GuardQuestion question{oldBeer(1.004), bottleOf("light"), {1.7}, "for tomorrow, cold"};
    const auto verdict = guard(question).value();
    CHECK(verdict.answer == GuardAnswer::overridden);
    CHECK(verdict.reason == "for tomorrow, cold");
    CHECK_FALSE(verdict.refusals.empty());
    CHECK_FALSE(verdict.until.has_value());
    question.override = "  ";
    CHECK(guard(question).error().path == "/override");
    // What is cleared needs none.
    CHECK(guard({provenBeer(1.000), bottleFor(8), {1}, "why not"}).value().answer == GuardAnswer::clear);
}

TEST_CASE("A margin below half a volume is called thin", "[guard]") {
    // 0.85 + 0.5 from the hydrometer; 3.5 are allowed
    CHECK(asked(provenBeer(1.001), bottleOf("heavy"), 1.2).answer == GuardAnswer::clear);
    CHECK(asked(provenBeer(1.001), bottleOf("heavy"), 1.9).answer == GuardAnswer::thin);
}

TEST_CASE("An answer for a cool cellar says what a warm room would do", "[guard]") {
    const auto tells = [](const GuardVerdict& verdict) {
        return std::any_of(verdict.grounds.begin(), verdict.grounds.end(),
                           [](const Message& message) { return message.key == "finishing.ground.cooler"; });
    };
    CHECK(tells(asked(provenBeer(1.000), bottleFor(8, 12), 1.5)));
    CHECK_FALSE(tells(asked(provenBeer(1.000), bottleFor(8, 30), 1.5)));
    CHECK(Package().warmest == Celsius{30});
}

TEST_CASE("A bottle that cannot be is refused at its field", "[guard]") {
    Package package = bottleFor(-2);
    CHECK(guard({provenBeer(1), package, {1}, {}}).error().path == "/rating_bar");
    package = bottleFor(6, 80);
    CHECK(guard({provenBeer(1), package, {1}, {}}).error().path == "/warmest_c");
    package = bottleFor(6);
    package.size = {-330};
    CHECK(guard({provenBeer(1), package, {1}, {}}).error().path == "/bottle_ml");
    CHECK(bottleMake("jug").error().path == "/bottle");
}

TEST_CASE("More residual extract never lowers the guard's pressure, nor turns no into yes", "[guard]") {
    CHECK_PROPERTY("monotone", [] {
        const double less = 1 + *rc::gen::inRange(-3, 10) / 1000.0;
        const double more = less + *rc::gen::inRange(0, 11) / 1000.0;
        RC_PRE(more <= 1.010);
        BeerKnown a = oldBeer(less), b = oldBeer(more);
        const int days = *rc::gen::inRange(1, 400);
        a.lastRefill = b.lastRefill = bottlingDay - daysAgo(days);
        a.diastatic = b.diastatic = *rc::gen::arbitrary<bool>();
        a.readings.front().gravity = b.readings.front().gravity = {1 + *rc::gen::inRange(-5, 10) / 1000.0};
        const Package package = bottleFor(*rc::gen::inRange(5, 85) / 10.0, *rc::gen::inRange(5, 40));
        const double priming = *rc::gen::inRange(0, 40) / 10.0;
        const auto low = asked(a, package, priming), high = asked(b, package, priming);
        RC_ASSERT(high.pressures.warmest.barOverAir >= low.pressures.warmest.barOverAir - 1e-9);
        RC_ASSERT(low.answer != GuardAnswer::refused || high.answer == GuardAnswer::refused);
    });
}

TEST_CASE("A warm sample that ended higher never takes pressure off", "[guard]") {
    CHECK_PROPERTY("no higher than any proof", [] {
        BeerKnown beer = provenBeer(1 + *rc::gen::inRange(0, 6) / 1000.0);
        beer.forced->gravity.sg += *rc::gen::inRange(-10, 11) / 10000.0;
        const auto verdict = asked(beer, bottleFor(6), 1);
        RC_PRE(verdict.proof.whole());
        RC_ASSERT(verdict.floor.sg <= beer.forced->gravity.sg - .001 + 1e-9);
        for (const GravityReading& reading : beer.readings)
            RC_ASSERT(verdict.floor.sg <= reading.gravity.sg - .001 + 1e-9);
    });
    BeerKnown beer = provenBeer(1.002);
    const auto before = asked(beer, bottleFor(6), 1).pressures.extract;
    beer.forced->gravity = {1.003};
    CHECK(asked(beer, bottleFor(6), 1).proof.whole());
    CHECK(asked(beer, bottleFor(6), 1).pressures.extract == before);
}

TEST_CASE("Two readings of one day are one look, and an old warm sample proves nothing", "[guard]") {
    BeerKnown beer = provenBeer(1.001);
    beer.readings[1] = beer.readings[2];
    CHECK_FALSE(proofOf(beer).stable);
    beer = provenBeer(1.001);
    beer.forced->on = bottlingDay - daysAgo(200);
    CHECK_FALSE(proofOf(beer).forced);
}

TEST_CASE("Bottles that ferment are reckoned as warm as they do", "[guard]") {
    const auto cold = asked(provenBeer(1.000), bottleFor(4, 0), 4);
    CHECK(cold.warmest == Celsius{25});
    CHECK(refusedFor(cold, "finishing.guard.bursts"));
    CHECK(asked(provenBeer(1.000), bottleFor(4, 28), 1).warmest == Celsius{28});
}

TEST_CASE("No rating makes a bottle hold more than any is filled to", "[guard]") {
    CHECK(guard({provenBeer(1), bottleFor(12), {1}, {}}).error().path == "/rating_bar");
    CHECK(asked(provenBeer(1), bottleFor(8.5, 25), 1).limitVolumes->vol <= 6);
    Package drum = bottleOf("heavy");
    drum.size = {60000};
    CHECK(guard({provenBeer(1), drum, {1}, {}}).error().path == "/bottle_ml");
}

TEST_CASE("Beer that was taken over young wants the proof", "[guard]") {
    BeerKnown beer = oldBeer(1.000);
    beer.takenOver = bottlingDay - daysAgo(8);
    CHECK(refusedFor(asked(beer, bottleFor(8), 1), "finishing.guard.taken_over"));
    beer.takenOver = bottlingDay - daysAgo(93);
    CHECK(asked(beer, bottleFor(8), 1).answer == GuardAnswer::clear);
}

TEST_CASE("A refusal asks for at least a tenth of a volume, and says what is too much", "[guard]") {
    const BeerKnown beer = provenBeer(1.000);
    const double limit = bottleMake("heavy")->most.vol;
    const double others = asked(beer, bottleOf("heavy"), 0).pressures.all().vol;
    const auto verdict = asked(beer, bottleOf("heavy"), limit - others + .01);
    REQUIRE(verdict.answer == GuardAnswer::refused);
    const std::string refusal = render(verdict.refusals.front());
    INFO(refusal);
    CHECK(refusal.find("It takes 0.1 vol less") != std::string::npos);
    const auto tooMuch = asked(beer, bottleOf("heavy"), limit - others + 1);
    const std::string margin = render(pressureWords(tooMuch).back());
    INFO(margin);
    CHECK(margin.ends_with(" bar too much."));
    CHECK(margin.find('-') == std::string::npos);
}

} // namespace staveline::finishing
