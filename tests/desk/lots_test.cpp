// SPDX-License-Identifier: GPL-3.0-or-later
// Lots as they stand: what is left, what it is like, where it came from, what waits; beer of lots packed, blended and
// poured into vessels.
#include "desk/lots.h"

#include "desk/blending.h"
#include "desk/packing.h"
#include "desk/support.h"
#include "desk/vessel_life.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>
#include <utility>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;
using finishing::GuardAnswer;
using finishing::Trait;

namespace {

struct LotsFixture : DeskFixture {
    LotsFixture() {
        addPlover();
        draw("2025-09-01", 60, "Draw 7");
    }
    void draw(const std::string& on, double litres, const std::string& lot, const std::string& vessel = "Plover") {
        record(R"({"kind": "draw_off", "vessel": ")" + vessel + R"(", "on": ")" + on + R"(", "volume_l": )" +
               std::to_string(litres) + R"(, "lot": ")" + lot + "\"}");
    }
    void read(const std::string& on, double gravity, const std::string& rest = "") {
        record(R"({"kind": "lot_reading", "lot": "Draw 7", "on": ")" + on + R"(", "gravity_sg": )" +
               std::to_string(gravity) + rest + "}");
    }
    void prove(double gravity = 1.002) {
        for (const char* on : {"2025-10-20", "2025-12-20", "2026-02-20"})
            read(on, gravity);
        read("2026-02-18", gravity, R"(, "kept_warm": true)");
    }
    void cherries(const std::string& on, double mass) {
        record(R"({"kind": "lot_addition", "lot": "Draw 7", "on": ")" + on +
               R"(", "what": "fruit", "ingredient": "sour_cherry", "mass_kg": )" + std::to_string(mass) + "}");
    }
    [[nodiscard]] LotView lot(const std::string& name = "Draw 7") const {
        auto view = desk->lot(name);
        if (!view)
            FAIL(view.error().path << ": " << render(view.error().cause));
        return *view;
    }
    [[nodiscard]] static LotTrait trait(const LotView& view, Trait wanted) {
        const auto at = std::find_if(view.traits.begin(), view.traits.end(),
                                     [&](const LotTrait& one) { return one.trait == wanted; });
        REQUIRE(at != view.traits.end());
        return *at;
    }
    [[nodiscard]] static bool waitsFor(const LotView& view, LotWork work, Day on) {
        return std::any_of(view.waits.begin(), view.waits.end(),
                           [&](const LotWait& wait) { return wait.work == work && wait.on == on; });
    }
    static std::string bottles(const std::string& on, int count, const std::string& rest,
                               const std::string& name = "Gold") {
        return R"({"kind": "packaging", "lot": "Draw 7", "name": ")" + name + R"(", "on": ")" + on +
               R"(", "size_ml": 750, "count": )" + std::to_string(count) + rest + "}";
    }
};

} // namespace

TEST_CASE_METHOD(LotsFixture, "a lot is as old as it was in its vessel, and since", "[desk][lots]") {
    const LotView view = lot();
    CHECK(view.litres.l == Approx(60));
    CHECK(view.since == day(2025, 9, 1));
    CHECK(view.stage == LotStage::ageing);
    CHECK(view.meanAge.d == Approx(1.5 * 365.25 + daysBetween(day(2025, 6, 1), now)));
    REQUIRE(view.parts.size() == 1);
    CHECK(view.parts.front().vessel == "Plover");
    CHECK(view.parts.front().share.of1 == Approx(1));
    REQUIRE(view.lines.size() == 1);
    CHECK(render(view.lines.front().text) == "60.0 L drawn from Plover");
    CHECK(view.lines.front().table == "draw_off");
    CHECK(desk->lot("Drow 7").error().path == "/lot");
}

TEST_CASE_METHOD(LotsFixture, "a lot traces back to the brews of its vessel", "[desk][lots]") {
    record(R"([{"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2025-09-20",
                "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]},
               {"kind": "refill", "vessel": "Plover", "on": "2025-10-10", "volume_l": 60, "brew": "Brew 1"}])");
    draw("2026-01-10", 30, "Draw 8");
    const LotView young = lot("Draw 8");
    REQUIRE(young.parts.front().generations.size() == 2);
    const LotGeneration& newest = young.parts.front().generations.front();
    CHECK(newest.brew == "Brew 1");
    CHECK(newest.on == day(2025, 10, 10));
    CHECK(newest.share.of1 == Approx(60.0 / 212).margin(.01));
    CHECK(young.meanAge.d < lot().meanAge.d - 100);
    // drawn on the day of the refill: what was in the vessel before it
    draw("2025-10-10", 10, "Draw 7 B");
    CHECK(trait(lot("Draw 7 B"), Trait::ta).value == Approx(trait(lot(), Trait::ta).value).margin(.15));
}

TEST_CASE_METHOD(LotsFixture, "measured values of a lot go before estimates until something is put in",
                 "[desk][lots]") {
    CHECK_FALSE(trait(lot(), Trait::bitterness).measured);
    record(R"({"kind": "lot_reading", "lot": "Draw 7", "on": "2025-11-01", "ta_g_l": 7.4, "ph": 3.2, "ibu": 4})");
    const LotView view = lot();
    CHECK(trait(view, Trait::ta).measured);
    CHECK(trait(view, Trait::ta).value == Approx(7.4).margin(.02));
    CHECK(trait(view, Trait::ph).value == Approx(3.2).margin(.01));
    CHECK(trait(view, Trait::bitterness).value == Approx(4).margin(.01));
    CHECK(trait(view, Trait::ta).sd < trait(view, Trait::alcohol).sd + 1);
    draw("2025-11-02", 20, "Draw 7");
    CHECK_FALSE(trait(lot(), Trait::bitterness).measured);
    CHECK(lot().litres.l == Approx(80));
}

TEST_CASE_METHOD(LotsFixture, "fruit brings acid, alcohol and juice, and stays with the beer when it is split",
                 "[desk][lots]") {
    const LotView before = lot();
    cherries("2025-09-10", 12);
    record(R"({"kind": "lot_move", "lot": "Draw 7", "on": "2025-10-30", "volume_l": 30, "to": "Red"})");
    const LotView red = lot("Red");
    CHECK(lot().litres.l + 30 == Approx(60 + 12 * .9 * .85));
    const double share = 12 * .9 * .85 / (60 + 12 * .9 * .85);
    REQUIRE(red.parts.size() == 2);
    CHECK(red.parts.back().added == "12.0 kg of sour cherries");
    CHECK(red.parts.back().share.of1 == Approx(share));
    CHECK_FALSE(trait(red, Trait::bitterness).measured);
    CHECK_FALSE(trait(red, Trait::funk).measured); // nobody tasted it with the fruit
    CHECK(trait(red, Trait::alcohol).value == Approx(trait(lot(), Trait::alcohol).value));
    // 12 kg with 84.9 g of sugar in each usable one, 0.613 mL of alcohol from a gram
    const double expected = trait(before, Trait::alcohol).value * (1 - share) + 12 * .9 * 84.9 * .613 / 10 / 69.18;
    CHECK(trait(red, Trait::alcohol).value == Approx(expected).margin(.06));
    CHECK(trait(red, Trait::ta).value > trait(before, Trait::ta).value + .5);
    CHECK(red.meanAge.d == Approx(before.meanAge.d)); // of what was drawn
    CHECK(waitsFor(lot(), LotWork::tasteFruit, day(2025, 10, 22)));
    read("2025-10-25", 1.003);
    CHECK_FALSE(waitsFor(lot(), LotWork::tasteFruit, day(2025, 10, 22)));
}

TEST_CASE_METHOD(LotsFixture, "a lot waits for its gravity, then for bottles, then to be opened", "[desk][lots]") {
    CHECK(waitsFor(lot(), LotWork::testGravity, day(2025, 10, 1)));
    prove();
    CHECK(lot().gravity->sg == 1.002);
    CHECK(lot().gravityOn == day(2026, 2, 20));
    REQUIRE(lot().waits.size() == 1);
    CHECK(lot().waits.front().work == LotWork::bottle);
    record(bottles("2026-03-01", 78, R"(, "make": "sparkling", "sugar_g_l": 5, "planned_vol": 2.3, "lost_l": 1.5)"));
    LotView packed = lot();
    CHECK(packed.stage == LotStage::packed);
    CHECK(packed.traits.size() >= 7); // for the label
    CHECK(waitsFor(packed, LotWork::openFirst, day(2026, 3, 29)));
    now = day(2026, 4, 2);
    record(R"([{"kind": "opened", "packaging": "Gold", "on": "2026-04-01", "fizz": "low", "found_vol": 2.1},
               {"kind": "opened", "packaging": "Gold", "on": "2026-04-02", "count": 2, "what": "given",
                "fizz": "as_meant", "found_vol": 2.3}])");
    packed = lot();
    CHECK(packed.waits.empty());
    const PackageView& gold = packed.packages.front();
    CHECK(gold.left == 75);
    CHECK(gold.found->vol == Approx(2.2));
    CHECK(gold.planned->vol == 2.3);
    CHECK(gold.fizz == Fizz::asMeant);
    CHECK(gold.firstOpened == day(2026, 4, 1));
    record(R"({"kind": "opened", "packaging": "Gold", "on": "2026-04-02", "count": 75, "what": "broken"})");
    CHECK(lot().stage == LotStage::gone);
    CHECK(desk->lots()->back().name == "Draw 7");
}

TEST_CASE_METHOD(LotsFixture, "readings of a lot count by their days, however they were recorded", "[desk][lots]") {
    for (const auto& [on, ta] : {std::pair("2026-02-01", 8.5), std::pair("2025-11-01", 5.0)})
        record(R"({"kind": "lot_reading", "lot": "Draw 7", "on": ")" + std::string(on) + R"(", "ta_g_l": )" +
               std::to_string(ta) + "}");
    CHECK(trait(lot(), Trait::ta).value == Approx(8.5).margin(.05));
}

TEST_CASE_METHOD(LotsFixture, "what is filled already cannot get anything more", "[desk][lots][bad]") {
    prove();
    record(bottles("2026-03-01", 40, R"(, "make": "sparkling", "sugar_g_l": 5, "planned_vol": 2.3)"));
    const auto added = [](const std::string& on) {
        return R"({"kind": "lot_addition", "lot": "Draw 7", "on": ")" + on +
               R"(", "what": "sugar", "ingredient": "sucrose", "mass_kg": 1})";
    };
    CHECK(refused(added("2026-02-27")).cause.key == "desk.lot.filled_since");
    CHECK(refused(added("2026-03-01")).path == "/on");
    CHECK(refused(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2025-09-02", "volume_l": 5, "lot": "Small"},
                      {"kind": "lot_move", "lot": "Small", "on": "2026-02-01", "volume_l": 5, "to": "Draw 7"}])")
              .cause.key == "desk.lot.filled_since");
    CHECK(refused(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-02-25", "volume_l": 5, "lot": "Draw 7"})")
              .path == "/on");
    auto drawn = std::get<DrawOffFact>(*desk->fact("draw_off", 1));
    drawn.note = "clear";
    REQUIRE(desk->amend("draw_off", 1, drawn)); // words can be put right
    now = day(2026, 3, 2);
    record(added("2026-03-02")); // the rest of it
    record(bottles("2026-03-02", 2, R"(, "sugar_g_l": 0, "override_reason": "a trial")", "Trial"));
    auto sugar = std::get<LotAdditionFact>(*desk->fact("lot_addition", 1));
    sugar.note = "boiled in a litre of it";
    REQUIRE(desk->amend("lot_addition", 1, sugar));
    sugar.mass = Kilograms{2};
    CHECK(desk->amend("lot_addition", 1, sugar).error().cause.key == "desk.lot.filled_since");
}

TEST_CASE_METHOD(LotsFixture, "sugar of a lot goes with it into a vessel and out of it again", "[desk][lots][guard]") {
    record(R"({"kind": "vessel", "name": "Small", "capacity_l": 70, "shape": "carboy", "material": "glass"})");
    cherries("2026-02-20", 20);
    record(R"({"kind": "refill", "vessel": "Small", "on": "2026-02-21", "volume_l": 60, "lot": "Draw 7"})");
    record(R"({"kind": "reading", "vessel": "Small", "on": "2026-03-01", "gravity_sg": 1.002})");
    PackingRequest request;
    request.vessel = "Small";
    request.litres = Litres{20};
    request.volumes = Co2Volumes{2};
    request.make = "sparkling";
    const auto fromVessel = desk->pack(request);
    REQUIRE(fromVessel);
    // 20 kg of cherries with 84.9 g of sugar in each usable one, in 60 + 15.3 L
    CHECK(fromVessel->verdict.pressures.fruit.vol == Approx(20 * .9 * 84.9 / 75.3 * .463 / 1.977).epsilon(.02));
    CHECK(fromVessel->verdict.answer == GuardAnswer::refused);
    draw("2026-03-01", 30, "Again", "Small");
    request.vessel.clear();
    request.lot = "Again";
    request.gravity = SpecificGravity{1.002};
    now = day(2026, 3, 2);
    const auto fromLot = desk->pack(request);
    REQUIRE(fromLot);
    CHECK(fromLot->verdict.pressures.fruit.vol == Approx(fromVessel->verdict.pressures.fruit.vol).epsilon(.05));
}

TEST_CASE_METHOD(LotsFixture, "a lot drawn long ago and never told of waits for nothing", "[desk][lots]") {
    now = day(2027, 1, 1);
    CHECK(lot().waits.empty());
    CHECK(desk->lots()->front().traits.empty());
    CHECK_FALSE(lot().traits.empty());
    read("2026-12-01", 1.002);
    CHECK_FALSE(lot().waits.empty());
}

TEST_CASE_METHOD(LotsFixture, "the answer for machines has litres, parts, entries and packages", "[desk][lots][json]") {
    prove();
    record(bottles("2026-03-01", 20, R"(, "make": "sparkling", "sugar_g_l": 5)"));
    const auto all = nlohmann::json::parse(toJson(*desk->lots()));
    REQUIRE(all.size() == 1);
    CHECK(all[0]["lot"] == "Draw 7");
    CHECK(all[0]["litres"].get<double>() == Approx(45));
    CHECK(all[0]["parts"][0]["vessel"] == "Plover");
    CHECK(all[0]["entries"].size() == 6);
    CHECK(all[0]["packages"][0]["left"] == 20);
    CHECK(all[0]["packages"][0]["verdict"].get<std::string>().starts_with("Cleared until"));
    CHECK(all[0]["beer"]["ta"]["plus_minus_80"].get<double>() > 0);
}

// --- packing and blending

TEST_CASE_METHOD(LotsFixture, "a filling the guard refuses is recorded for a reason only, and says so",
                 "[desk][lots][pack]") {
    const Fault refusal = refused(bottles("2026-03-01", 20, R"(, "make": "sparkling", "sugar_g_l": 5)"));
    CHECK(refusal.path == "/override_reason");
    CHECK(render(refusal.cause).find("was not measured") != std::string::npos);
    CHECK(refused(bottles("2026-03-01", 20, R"(, "make": "sparkling", "override_reason": "  ")")).path ==
          "/override_reason");
    record(bottles("2026-03-01", 20, R"(, "make": "sparkling", "override_reason": "drunk within the week")"));
    const auto stored = std::get<PackagingFact>(*desk->fact("packaging", 1));
    CHECK(stored.verdict.starts_with("Refused, and taken on by the brewer: drunk within the week"));
    CHECK_FALSE(stored.until);
    prove();
    record(bottles("2026-03-02", 20, R"(, "make": "sparkling", "sugar_g_l": 5)", "Gold 2"));
    const auto cleared = std::get<PackagingFact>(*desk->fact("packaging", 2));
    CHECK(cleared.verdict.starts_with("Cleared until"));
    CHECK(cleared.until == day(2026, 3, 23)); // a month after the last gravity
    auto noted = cleared;
    noted.note = "corks of last year";
    REQUIRE(desk->amend("packaging", 2, noted));
    noted.sugarWeight = GramsPerLitre{24};
    CHECK(desk->amend("packaging", 2, noted).error().path == "/sugar_g_l");
    noted.sugarWeight = GramsPerLitre{12};
    noted.make = "heavy";
    CHECK(desk->amend("packaging", 2, noted).error().path == "/override_reason");
    CHECK(std::get<PackagingFact>(*desk->fact("packaging", 2)).verdict == cleared.verdict);
}

TEST_CASE_METHOD(LotsFixture, "1.012 in a bottle, a keg without a rating and sugar against volumes",
                 "[desk][lots][bad]") {
    read("2026-02-20", 1.012);
    const Fault sweet = refused(bottles("2026-03-01", 20, R"(, "make": "sparkling")"));
    CHECK(sweet.path == "/lot");
    CHECK(render(sweet.cause).find("1.012") != std::string::npos);
    CHECK(refused(bottles("2026-03-01", 20, R"(, "make": "sparkling", "override_reason": "I want to")")).path ==
          "/lot");
    prove();
    CHECK(refused(R"({"kind": "packaging", "lot": "Draw 7", "name": "Keg", "on": "2026-03-01", "package": "keg",
                      "size_ml": 19000, "count": 2, "sugar_g_l": 4})")
              .path == "/override_reason");
}

TEST_CASE_METHOD(LotsFixture, "fruit counts against a bottle until the beer is proven again", "[desk][lots][pack]") {
    prove();
    PackingRequest request;
    request.lot = "Draw 7";
    request.litres = {30};
    request.sugarWeight = GramsPerLitre{5};
    request.package.rating = GaugePressure{8};
    const auto clear = desk->pack(request);
    REQUIRE(clear);
    CHECK(clear->vessel == "Draw 7");
    CHECK(clear->verdict.answer == GuardAnswer::clear);
    cherries("2026-02-25", 12);
    const auto fruity = desk->pack(request);
    REQUIRE(fruity);
    CHECK(fruity->verdict.answer == GuardAnswer::refused);
    // 10.8 kg usable, 84.9 g/kg, in 69.2 L
    CHECK(fruity->verdict.pressures.fruit.vol == Approx(10.8 * 84.9 / 69.18 * .46286 / 1.977).epsilon(.01));
    request.vessel = "Plover";
    CHECK(desk->pack(request).error().path == "/vessel");
    request.vessel.clear();
    request.litres = {70};
    CHECK(desk->pack(request).error().path == "/litres");
}

TEST_CASE_METHOD(LotsFixture, "the lowest gravity of the vessels a lot came from is feared", "[desk][lots][pack]") {
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2025-08-01", "gravity_sg": 0.997})");
    read("2026-02-20", 1.003);
    PackingRequest request;
    request.lot = "Draw 7";
    request.litres = {30};
    request.sugarWeight = GramsPerLitre{0};
    request.package.rating = GaugePressure{8};
    const auto answer = desk->pack(request);
    REQUIRE(answer);
    CHECK(answer->verdict.floor.sg == Approx(.996));
    record(R"({"kind": "lot_move", "lot": "Draw 7", "on": "2026-03-01", "volume_l": 40, "to": "Joined"})");
    request.lot = "Joined";
    const auto moved = desk->pack(request);
    REQUIRE(moved);
    CHECK(moved->verdict.floor.sg == Approx(.996));
    CHECK_FALSE(moved->verdict.gravity); // moved yesterday, and not measured since
    CHECK(moved->verdict.answer == GuardAnswer::refused);
}

TEST_CASE_METHOD(LotsFixture, "a lot is blended beside a vessel, up to what it holds", "[desk][lots][blend]") {
    record(R"({"kind": "lot_reading", "lot": "Draw 7", "on": "2026-01-01", "ta_g_l": 9, "ph": 3.1})");
    BlendRequest request;
    request.from = {{"Draw 7", Litres{40}, {}}, {"Plover", {}, {}}};
    request.aims[Trait::ta] = 7.5;
    request.litres = Litres{40};
    const auto blend = desk->blend(request);
    REQUIRE(blend);
    CHECK(blend->blend.reached());
    CHECK(blend->sources.front().atHand.l == 40);
    CHECK(blend->sources.front().measured[Trait::ta]);
    request.from.front().litres = Litres{61};
    CHECK(desk->blend(request).error().path == "/from/0");
    request.from.front() = {"Nobody", {}, {}};
    CHECK(desk->blend(request).error().path == "/from/0");
}

// --- into vessels

TEST_CASE_METHOD(LotsFixture, "beer that goes by way of a lot is as old and as sour as beer that goes straight",
                 "[desk][lots][transfer]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 60, "material": "steel"},
               {"kind": "vessel", "name": "Godwit", "capacity_l": 60, "material": "steel"}])");
    draw("2026-01-05", 40, "Jug");
    record(R"([{"kind": "refill", "vessel": "Knot", "on": "2026-01-05", "volume_l": 40, "from": "Plover"},
               {"kind": "refill", "vessel": "Godwit", "on": "2026-01-05", "volume_l": 40, "lot": "Jug"}])");
    const auto straight = desk->vessel("Knot"), byLot = desk->vessel("Godwit");
    CHECK(byLot->now.meanAge.d == Approx(straight->now.meanAge.d));
    CHECK(byLot->now.meanAge.d > 700);
    CHECK(desk->estimates("Godwit")->combined[Dimension::acidity].mean ==
          Approx(desk->estimates("Knot")->combined[Dimension::acidity].mean).margin(.35));
    CHECK(lot("Jug").litres.l == Approx(0).margin(1e-9));
    CHECK(render(desk->ledger("Godwit")->lines.back().text) == "40.0 L from the lot Jug");
    CHECK(render(lot("Jug").lines.back().text) == "40.0 L into Godwit");
}

TEST_CASE_METHOD(LotsFixture, "what waited in a lot goes back older, blended and with fruit",
                 "[desk][lots][transfer]") {
    cherries("2025-09-10", 6);
    const double held = 60 + 6 * .9 * .85;
    record(R"({"kind": "top_up", "vessel": "Plover", "on": "2026-03-01", "volume_l": 50, "lot": "Draw 7"})");
    CHECK(lot().litres.l == Approx(held - 50));
    const auto plover = desk->vessel("Plover");
    const double age = 1.5 * 365.25 + daysBetween(day(2025, 6, 1), now);
    const double fruit = 50 * (6 * .9 * .85 / held); // new when it went in
    CHECK(plover->now.meanAge.d == Approx(age - (age - 1) * fruit / plover->now.volume.l).epsilon(.002));
    CHECK(desk->estimates("Plover"));
    CHECK(desk->life("Plover"));
    CHECK(refused(R"({"kind": "top_up", "vessel": "Plover", "on": "2026-03-02", "volume_l": 20, "lot": "Draw 7"})")
              .path == "/volume_l");
    CHECK_FALSE(desk->remove("draw_off", 1));
}

TEST_CASE_METHOD(LotsFixture, "what lots wait for stands in the calendar of all", "[desk][lots][calendar]") {
    CHECK(desk->calendar()->find("Draw 7: measure the gravity") != std::string::npos);
    CHECK(desk->calendar("Plover")->find("Draw 7") == std::string::npos);
    const auto waiting = desk->lotsWaiting();
    REQUIRE(waiting->size() == 1);
    CHECK(waiting->front().traits.empty());
    CHECK(render(waiting->front().waits.front().text) == "measure the gravity, 152 days overdue");
}

TEST_CASE_METHOD(LotsFixture, "each filling that waits to be opened has an entry of its own",
                 "[desk][lots][calendar]") {
    for (const char* name : {"Gold", "Silver"})
        record(bottles("2026-03-01", 20, R"(, "override_reason": "trial")", name));
    const std::string file = *desk->calendar();
    std::set<std::string> ids;
    std::size_t all = 0;
    for (std::size_t at = file.find("open_first"); at != std::string::npos; at = file.find("open_first", at + 1)) {
        ids.insert(file.substr(at, file.find_first_of("\r\n", at) - at));
        ++all;
    }
    CHECK(all == 2);
    CHECK(ids.size() == 2);
}
