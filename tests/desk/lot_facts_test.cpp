// SPDX-License-Identifier: GPL-3.0-or-later
// Facts of drawn beer: what is refused of them, at which field, and that nothing on record becomes impossible.
#include "desk/lots.h"
#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct LotFixture : DeskFixture {
    LotFixture() {
        addPlover();
        record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-10", "volume_l": 60, "lot": "Draw 7"})");
    }
    Fault lotRefused(const std::string& kind, const std::string& rest, const std::string& lot = "Draw 7") {
        const Fault fault = refused(R"({"kind": ")" + kind + R"(", "lot": ")" + lot + R"(", )" + rest + "}");
        CHECK(render(fault.cause).find('{') == std::string::npos);
        CHECK(render(fault.remedy).size() > 4);
        return fault;
    }
    void move(const std::string& on, double litres, const std::string& to) {
        record(R"({"kind": "lot_move", "lot": "Draw 7", "on": ")" + on + R"(", "volume_l": )" + std::to_string(litres) +
               R"(, "to": ")" + to + "\"}");
    }
    void bottle(const std::string& rest) {
        record(R"({"kind": "packaging", "lot": "Draw 7", "on": "2026-02-20", "name": "Gold", "size_ml": 750,
                   "count": 20, "rating_bar": 7, "sugar_g_l": 0, "override_reason": "trial", )" +
               rest + "}");
    }
    static std::string words(const Fault& fault) {
        return fault.path + ": " + render(fault.cause) + " " + render(fault.remedy);
    }
};

} // namespace

TEST_CASE_METHOD(LotFixture, "a lot that is not there is refused with the nearest name", "[desk][lots][bad]") {
    CHECK(words(lotRefused("lot_reading", R"("on": "2026-02-01", "ph": 3.4)", "Drow 7")) ==
          "/lot: There is no drawn beer \"Drow 7\". Did you mean \"Draw 7\"?");
    CHECK(lotRefused("lot_addition", R"("on": "2026-02-01", "what": "spice")", "Nothing").path == "/lot");
    CHECK(words(lotRefused("lot_reading", R"("on": "2026-01-09", "ph": 3.4)")) ==
          "/on: Draw 7 was first drawn on 10 Jan 2026. Check the day, or correct the day of the draw.");
    CHECK(lotRefused("lot_reading", R"("on": "2026-03-03", "ph": 3.4)").cause.key == "desk.future");
    CHECK(lotRefused("lot_reading", R"("on": "2026-02-01")").cause.key == "desk.nothing_measured");
    CHECK(lotRefused("lot_reading", R"("on": "2026-02-01", "ph": 3.4, "kept_warm": true)").path == "/gravity_sg");
    CHECK(words(refused(R"({"kind": "refill", "vessel": "Plover", "on": "2026-02-01", "volume_l": 5,
                            "lot": "Draw 8"})")) ==
          "/lot: There is no drawn beer \"Draw 8\". Did you mean \"Draw 7\"?");
    CHECK(refused(R"({"kind": "refill", "vessel": "Plover", "on": "2026-02-01", "volume_l": 5, "lot": "Draw 7",
                      "from": "Plover"})")
              .cause.key == "desk.two_sources");
}

TEST_CASE_METHOD(LotFixture, "more out of a lot than is in it on that day is refused", "[desk][lots][bad]") {
    move("2026-01-20", 45, "Cherry");
    CHECK(words(lotRefused("lot_move", R"("on": "2026-02-01", "volume_l": 15.2, "why": "taken")")) ==
          "/volume_l: 15.2 L are to be taken from Draw 7, which holds 15.0 L on 1 Feb 2026. "
          "Take at most 15.0 L, or correct what was drawn, added or taken before.");
    CHECK(lotRefused("packaging", R"("on": "2026-02-01", "name": "Gold", "size_ml": 500, "count": 31)").path ==
          "/count");
    CHECK(refused(R"({"kind": "top_up", "vessel": "Plover", "on": "2026-02-01", "volume_l": 16, "lot": "Draw 7"})")
              .path == "/volume_l");
    // the day before there was enough, and then the move of the 20th has too little
    CHECK(words(lotRefused("lot_move", R"("on": "2026-01-19", "volume_l": 30, "why": "poured_away")")) ==
          ": The move of a lot of 20 Jan 2026 takes 45.0 L from Draw 7, which would hold 30.0 L only. "
          "Check the day and the litres here, or correct the move of a lot of 20 Jan 2026 first.");
    record(R"({"kind": "lot_move", "lot": "Draw 7", "on": "2026-02-01", "volume_l": 15, "why": "taken"})");
    for (const char* litres : {"-3", "0"})
        CHECK(
            lotRefused("lot_move", R"("on": "2026-02-01", "why": "taken", "volume_l": )" + std::string(litres)).path ==
            "/volume_l");
}

TEST_CASE_METHOD(LotFixture, "a draw or a move that a later one lives on stays", "[desk][lots][amend]") {
    move("2026-01-20", 45, "Cherry");
    record(R"({"kind": "lot_move", "lot": "Cherry", "on": "2026-02-01", "volume_l": 40, "why": "taken"})");
    record(R"({"kind": "lot_reading", "lot": "Draw 7", "on": "2026-02-02", "ph": 3.4})");
    for (const auto& removed : {desk->remove("draw_off", 1), desk->remove("lot_move", 1)}) {
        REQUIRE_FALSE(removed);
        CHECK(removed.error().cause.key.starts_with("desk.lot.then_"));
    }
    auto draw = std::get<DrawOffFact>(*desk->fact("draw_off", 1));
    draw.volume = Litres{44};
    CHECK(desk->amend("draw_off", 1, draw).error().cause.key == "desk.lot.then_too_much");
    draw.volume = Litres{46};
    REQUIRE(desk->amend("draw_off", 1, draw));
    draw.lot = "Draw 9";
    CHECK(desk->amend("draw_off", 1, draw).error().cause.key == "desk.lot.then_not_there");
    auto moved = std::get<LotMoveFact>(*desk->fact("lot_move", 1));
    moved.volume = Litres{46.2};
    CHECK(desk->amend("lot_move", 1, moved).error().path == "/volume_l");
    moved.volume = Litres{39};
    CHECK(desk->amend("lot_move", 1, moved).error().cause.key == "desk.lot.then_too_much");
    moved.volume = Litres{45.5};
    REQUIRE(desk->amend("lot_move", 1, moved));
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    REQUIRE(desk->remove("lot_move", 2));
    REQUIRE(desk->remove("lot_move", 1));
    REQUIRE(desk->remove("lot_reading", 1));
    REQUIRE(desk->remove("draw_off", 1));
    REQUIRE(desk->undo());
    CHECK(lotRefused("lot_move", R"("on": "2026-02-01", "volume_l": 61, "why": "taken")").path == "/volume_l");
    CHECK(desk->check()->sound());
}

TEST_CASE_METHOD(LotFixture, "facts of one file see each other, and a preview sees the lots", "[desk][lots]") {
    CHECK(refused(R"([{"kind": "lot_move", "lot": "Draw 7", "on": "2026-02-01", "volume_l": 40, "to": "A"},
                      {"kind": "lot_move", "lot": "A", "on": "2026-02-02", "volume_l": 30, "to": "B"},
                      {"kind": "lot_move", "lot": "B", "on": "2026-02-03", "volume_l": 31, "why": "lost"}])")
              .path == "/2/volume_l");
    const auto topUp = parseRecords(R"({"kind": "top_up", "vessel": "Plover", "on": "2026-02-01", "volume_l": 61,
                                        "lot": "Draw 7"})");
    CHECK(desk->preview(topUp->front()).error().cause.key == "desk.lot.too_much");
    record(R"([{"kind": "lot_move", "lot": "Draw 7", "on": "2026-02-01", "volume_l": 40, "to": "A"},
               {"kind": "lot_move", "lot": "A", "on": "2026-02-01", "volume_l": 40, "to": "B"},
               {"kind": "lot_addition", "lot": "B", "on": "2026-02-01", "what": "fruit", "ingredient": "plum",
                "mass_kg": 4},
               {"kind": "lot_move", "lot": "B", "on": "2026-02-02", "volume_l": 43.1, "why": "lost"}])");
}

TEST_CASE_METHOD(LotFixture, "names of lots are no vessel's and differ to the eye", "[desk][lots][bad]") {
    const auto draw = [&](const std::string& lot) {
        return refused(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-02-01", "volume_l": 20, "lot": ")" +
                       lot + "\"}");
    };
    CHECK(words(draw("plover")) ==
          "/lot: \"Plover\" is a vessel. Give the drawn beer a name of its own, for example \"plover 1\".");
    CHECK(words(draw("draw  7")) ==
          "/lot: The name \"draw  7\" looks like \"Draw 7\", which is there already. "
          "Write it \"Draw 7\" to put it to that lot, or choose a name that looks different.");
    CHECK(lotRefused("lot_move", R"("on": "2026-02-01", "volume_l": 5, "to": "PLOVER")").path == "/to");
    CHECK(refused(R"({"kind": "vessel", "name": "draw 7", "capacity_l": 50})").cause.key == "desk.lot.lots_name");
    CHECK(refused(R"({"kind": "vessel_edit", "vessel": "Plover", "name": "Draw 7"})").path == "/name");
}

TEST_CASE_METHOD(LotFixture, "what is moved goes somewhere, what leaves does not", "[desk][lots][bad]") {
    CHECK(lotRefused("lot_move", R"("on": "2026-02-01", "volume_l": 5)").cause.key == "desk.lot.where_to");
    CHECK(lotRefused("lot_move", R"("on": "2026-02-01", "volume_l": 5, "why": "lost", "to": "A")").cause.key ==
          "desk.lot.leaves");
    CHECK(lotRefused("lot_move", R"("on": "2026-02-01", "volume_l": 5, "to": "Draw 7")").cause.key ==
          "desk.lot.into_itself");
}

TEST_CASE_METHOD(LotFixture, "additions are known and weighed", "[desk][lots][bad]") {
    const auto added = [&](const std::string& rest) {
        return lotRefused("lot_addition", R"("on": "2026-02-01", )" + rest);
    };
    CHECK(added(R"("what": "fruit", "ingredient": "durian", "mass_kg": 3)").path == "/ingredient");
    CHECK(added(R"("what": "fruit", "ingredient": "plum")").path == "/mass_kg");
    CHECK(added(R"("what": "sugar", "ingredient": "wort", "mass_kg": 1)").cause.key == "desk.lot.liquid_sugar");
    CHECK(added(R"("what": "wort", "ingredient": "pale")").path == "/volume_l");
    CHECK(added(R"("what": "spice", "ingredient": "peel", "extract_p": 12)").path == "/extract_p");
    CHECK(added(R"("what": "fruit", "ingredient": "plum", "mass_kg": 36.1)").cause.key == "desk.lot.too_much_fruit");
    CHECK(added(R"("what": "bananas")").path == "/what");
    record(R"({"kind": "lot_addition", "lot": "Draw 7", "on": "2026-02-01", "what": "fruit", "ingredient": "plum",
               "mass_kg": 36})"); // 0.6 kg to the litre
}

TEST_CASE_METHOD(LotFixture, "a filling has a size, a name of its own and a weight of sugar that can be",
                 "[desk][lots][bad]") {
    const auto filling = [&](const std::string& rest) {
        return lotRefused("packaging", R"("on": "2026-02-01", )" + rest);
    };
    CHECK(filling(R"("name": "Gold", "count": 10)").path == "/size_ml");
    CHECK(filling(R"("name": "Gold", "count": 10, "size_ml": 330, "sugar_g_l": 40)").path == "/sugar_g_l");
    CHECK(filling(R"("name": "Gold", "count": 0, "size_ml": 330)").path == "/count");
    CHECK(filling(R"("name": "Gold", "count": 2, "size_ml": 19000)").path == "/size_ml");
    CHECK(filling(R"("name": "Gold", "count": 2, "size_ml": 330, "make": "jar")").path == "/make");
    CHECK(filling(R"("name": "Gold", "count": 2, "size_ml": 330, "sugar": "salt")").path == "/sugar");
    CHECK(filling(R"("name": "Gold", "count": 2, "size_ml": 330, "lost_l": 60)").path == "/count");
    bottle(R"("note": "")");
    CHECK(filling(R"("name": "gold", "count": 2, "size_ml": 330)").cause.key == "desk.lot.filled_twice");
}

TEST_CASE_METHOD(LotFixture, "no more is opened than was filled", "[desk][lots][bad]") {
    bottle(R"("lost_l": 1)");
    const auto open = [](const std::string& on, int count, const std::string& name = "Gold") {
        return R"({"kind": "opened", "packaging": ")" + name + R"(", "on": ")" + on + R"(", "count": )" +
               std::to_string(count) + "}";
    };
    CHECK(words(refused(open("2026-03-01", 1, "Gald"))) ==
          "/packaging: There is no filling \"Gald\". Did you mean \"Gold\"?");
    CHECK(refused(open("2026-02-19", 1)).cause.key == "desk.lot.no_filling");
    record(open("2026-03-01", 15));
    CHECK(words(refused(open("2026-03-02", 6))) == "/count: 6 are to be opened, and of Gold 5 are left. "
                                                   "Check the number, or correct what was filled or opened before.");
    CHECK(refused(open("2026-02-25", 6)).cause.key == "desk.lot.then_opened_more");
    record(open("2026-03-02", 5));
    CHECK(desk->remove("packaging", 1).error().cause.key == "desk.lot.then_no_filling");
    auto filling = std::get<PackagingFact>(*desk->fact("packaging", 1));
    filling.count = 19;
    CHECK(desk->amend("packaging", 1, filling).error().cause.key == "desk.lot.then_opened_more");
    filling.count = 21;
    REQUIRE(desk->amend("packaging", 1, filling));
    record(open("2026-03-02", 1));
}

TEST_CASE_METHOD(LotFixture, "the same given twice is refused, whichever kind it is", "[desk][lots][bad]") {
    bottle(R"("lost_l": 1)");
    for (const char* json :
         {R"({"kind": "lot_reading", "lot": "Draw 7", "on": "2026-02-01", "ph": 3.4})",
          R"({"kind": "lot_addition", "lot": "Draw 7", "on": "2026-02-21", "what": "oak", "ingredient": "chips"})",
          R"({"kind": "lot_move", "lot": "Draw 7", "on": "2026-02-01", "volume_l": 5, "why": "taken"})",
          R"({"kind": "opened", "packaging": "Gold", "on": "2026-03-01", "fizz": "low"})"}) {
        record(json);
        CHECK(refused(json).cause.key == "desk.lot.on_record");
    }
}

TEST_CASE_METHOD(LotFixture, "a vessel renamed keeps its lots, in the same file too", "[desk][lots][vessel]") {
    record(R"([{"kind": "vessel_edit", "vessel": "Plover", "name": "Godwit"},
               {"kind": "packaging", "lot": "Draw 7", "on": "2026-02-20", "name": "Gold", "size_ml": 750, "count": 20,
                "rating_bar": 7, "override_reason": "trial"}])");
    CHECK(desk->lot("Draw 7")->parts.front().vessel == "Godwit");
    REQUIRE(desk->undo());
    CHECK(desk->lot("Draw 7")->parts.front().vessel == "Plover");
    CHECK(desk->lot("Draw 7")->litres.l == 60);
}
