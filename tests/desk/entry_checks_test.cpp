// SPDX-License-Identifier: GPL-3.0-or-later
// What cannot have been is refused when it is recorded, with the way out.
#include "desk/support.h"

#include <nlohmann/json.hpp>

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct EntryFixture : DeskFixture {
    EntryFixture() {
        addPlover();
        record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 50, "material": "steel"})");
    }
    std::string cause(const std::string& json) { return refused(json).cause.key; }
    std::string remedy(const std::string& json) { return render(refused(json).remedy); }
    static std::string brew(const std::string& name, const std::string& rest) {
        return R"({"kind": "brew", "name": ")" + name + R"(", "vessel": "Plover",
                   "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}], )" +
               rest + "}";
    }
};

} // namespace

TEST_CASE_METHOD(EntryFixture, "a file given twice is refused whole, in the window too", "[desk][bad]") {
    const char* files[] = {
        R"([{"kind": "draw_off", "vessel": "Plover", "on": "2025-09-08", "volume_l": 79, "lot": "Draw 1"},
            {"kind": "refill", "vessel": "Plover", "on": "2025-09-08", "volume_l": 70}])",
        R"({"kind": "sample", "vessel": "Plover", "on": "2025-10-01", "volume_l": 0.3, "ph": 3.3})",
        R"({"kind": "dip", "vessel": "Plover", "on": "2025-10-02", "volume_l": 190})",
        R"({"kind": "reading", "vessel": "Plover", "on": "2025-10-03", "ph": 3.3})",
        R"({"kind": "top_up", "vessel": "Plover", "on": "2025-10-04", "volume_l": 1})",
        R"({"kind": "event", "vessel": "Plover", "on": "2025-10-05", "what": "moved"})",
        R"({"kind": "sitting", "vessel": "Plover", "on": "2025-10-06", "scores": [{"attribute": "TA1", "cold": 5}]})"};
    for (const char* file : files) {
        record(file);
        const auto facts = *parseRecords(file);
        const Fault fault = refused(file);
        CHECK(fault.cause.key == "desk.on_record");
        CHECK(fault.path == (facts.size() > 1 ? "/0" : ""));
        if (facts.front().index() != Fact{SittingFact{}}.index())
            CHECK(desk->preview(facts.front()).error().cause.key == "desk.on_record");
    }
    // what differs in a word happened twice; what steers may be said twice
    record(
        R"({"kind": "sample", "vessel": "Plover", "on": "2025-10-01", "volume_l": 0.3, "ph": 3.3, "note": "again"})");
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-09-08", "volume_l": 20, "lot": "Draw 2"})");
    for (int i = 0; i < 2; ++i)
        record(R"({"kind": "target", "vessel": "Plover", "on": "2025-09-08", "acidity": 5})");
    CHECK(cause(R"([{"kind": "dip", "vessel": "Plover", "on": "2025-11-01", "volume_l": 180},
                    {"kind": "dip", "vessel": "Plover", "on": "2025-11-01", "volume_l": 180}])") == "desk.on_record");
}

TEST_CASE_METHOD(EntryFixture, "an entry can be corrected to itself, but not to another one", "[desk][bad][amend]") {
    record(R"([{"kind": "dip", "vessel": "Plover", "on": "2025-10-02", "volume_l": 190},
               {"kind": "dip", "vessel": "Plover", "on": "2025-10-02", "volume_l": 188}])");
    CHECK(desk->amend("dip", 1, *desk->fact("dip", 1)));
    CHECK(desk->amend("dip", 1, *desk->fact("dip", 2)).error().cause.key == "desk.on_record");
}

TEST_CASE_METHOD(EntryFixture, "a thimble turns no cycle", "[desk][bad]") {
    const auto entry = [](const std::string& kind, const std::string& litres) {
        return R"({"kind": ")" + kind + R"(", "vessel": "Plover", "on": "2025-10-02", "volume_l": )" + litres + "}";
    };
    CHECK(remedy(entry("draw_off", "0.001")) == "Record less than 1.1 L as a sample.");
    CHECK(remedy(entry("refill", "0.5")) == "Record less than 1.1 L as a top-up.");
    for (const char* kind : {"sample", "top_up"})
        record(entry(kind, "0.5"));
    record(entry("draw_off", "1.2"));
    record(entry("refill", "1.2"));
}

TEST_CASE_METHOD(EntryFixture, "nothing goes into or out of a retired vessel", "[desk][bad]") {
    record(R"({"kind": "retire", "vessel": "Plover", "on": "2026-01-15", "reason": "hoop gone"})");
    for (const char* late :
         {R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-16", "volume_l": 50})",
          R"({"kind": "refill", "vessel": "Plover", "on": "2026-01-16", "volume_l": 5})",
          R"({"kind": "reading", "vessel": "Plover", "on": "2026-02-01", "ph": 3.3})",
          R"({"kind": "event", "vessel": "Plover", "on": "2026-02-01", "what": "moved"})",
          R"({"kind": "sitting", "vessel": "Plover", "on": "2026-02-01", "scores": [{"attribute": "TA1", "cold": 5}]})",
          R"({"kind": "choice", "vessel": "Plover", "on": "2026-02-01", "proposal": 0})"}) {
        INFO(late);
        CHECK(cause(late) == "desk.retired");
    }
    const Fault moved =
        refused(R"({"kind": "refill", "vessel": "Knot", "on": "2026-02-01", "volume_l": 5, "from": "Plover"})");
    CHECK(moved.path == "/from");
    CHECK(moved.cause.key == "desk.retired");
    // what happened before, or on the day itself, may be told later
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-15", "volume_l": 50})");
    record(R"({"kind": "refill", "vessel": "Knot", "on": "2026-01-15", "volume_l": 5, "from": "Plover"})");
}

TEST_CASE_METHOD(EntryFixture, "a vessel is retired once, after what happened in it", "[desk][bad]") {
    record(R"({"kind": "dip", "vessel": "Plover", "on": "2026-02-01", "volume_l": 200})");
    const auto retire = [](const std::string& on) {
        return R"({"kind": "retire", "vessel": "Plover", "on": ")" + on + "\"}";
    };
    CHECK(cause(retire("2025-01-01")) == "desk.retired_before"); // before it was opened
    CHECK(remedy(retire("2026-01-31")) == "Retire it on 1 Feb 2026 or later.");
    CHECK(cause(retire("2026-03-03")) == "desk.future");
    record(retire("2026-02-01"));
    const Fault twice = refused(retire("2026-02-10"));
    CHECK(render(twice.cause) == "Plover was retired on 1 Feb 2026.");
    REQUIRE(desk->undo());
    record(retire("2026-02-10"));
}

TEST_CASE_METHOD(EntryFixture, "gravities of a brew are those of one beer", "[desk][bad]") {
    const auto measured = [](const std::string& fields) { return brew("Brew 1", R"("on": "2026-02-01", )" + fields); };
    const auto path = [&](const std::string& fields) { return refused(measured(fields)).path; };
    CHECK(path(R"("measured_original_gravity_sg": 1.010, "measured_final_gravity_sg": 1.048)") ==
          "/measured_final_gravity_sg");
    CHECK(path(R"("measured_original_gravity_sg": 0.95, "measured_final_gravity_sg": 1.2)") ==
          "/measured_final_gravity_sg");
    CHECK(path(R"("original_gravity_p": 12, "measured_final_gravity_sg": 1.06)") == "/measured_final_gravity_sg");
    record(measured(R"("measured_original_gravity_sg": 1.048, "measured_final_gravity_sg": 1.048)"));
}

TEST_CASE_METHOD(EntryFixture, "a brew is brewed by today and before it is poured", "[desk][bad][amend]") {
    CHECK(cause(brew("Brew 1", R"("on": "2026-03-03")")) == "desk.future");
    CHECK(cause(brew("Brew 1", R"("on": "2099-01-01")")) == "desk.future");
    record(brew("Brew 1", R"("on": "2026-02-01")"));
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-02-20", "volume_l": 70},
               {"kind": "refill", "vessel": "Plover", "on": "2026-02-20", "volume_l": 70, "brew": "Brew 1"}])");
    auto moved = std::get<BrewFact>(*desk->fact("brew", 1));
    moved.on = day(2026, 2, 21);
    const auto later = desk->amend("brew", 1, moved);
    REQUIRE_FALSE(later);
    CHECK(render(later.error().cause) == "Brew 1 was poured into Plover on 20 Feb 2026, before that day.");
    moved.on = day(2026, 2, 19);
    CHECK(desk->amend("brew", 1, moved));
}

TEST_CASE_METHOD(EntryFixture, "names that look the same are one name", "[desk][bad]") {
    record(R"({"kind": "vessel", "name": "Caf\u00e9", "capacity_l": 50})");
    record(brew("Brew 1", R"("on": "2026-02-01")"));
    for (const std::string twin : {"PLOVER", "Plover ", "Plo ver", "Plover\\u200b", "cafe\\u0301", "knot"}) {
        INFO(twin);
        CHECK(cause(R"({"kind": "vessel", "name": ")" + twin + R"(", "capacity_l": 50})") == "desk.name_alike");
    }
    CHECK(cause(brew("brew  1", R"("on": "2026-02-01")")) == "desk.name_alike");
    const Fault renamed = refused(R"({"kind": "vessel_edit", "vessel": "Knot", "name": "plover"})");
    CHECK(renamed.path == "/name");
    CHECK(render(renamed.cause) == "The name \"plover\" looks like \"Plover\", which is there already.");
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "name": "PLOVER"})"); // its own
    record(R"({"kind": "vessel_edit", "vessel": "PLOVER", "name": "Lapwing"})");
    record(R"({"kind": "vessel_edit", "vessel": "Knot", "name": "Plover"})"); // free again
    CHECK(desk->amend("brew", 1, Fact{[&] {
                          auto same = std::get<BrewFact>(*desk->fact("brew", 1));
                          same.name = "BREW 1";
                          return same;
                      }()}));
}

TEST_CASE_METHOD(EntryFixture, "names can be read, and end", "[desk][bad]") {
    const auto vessel = [&](const std::string& name) {
        return refused(R"({"kind": "vessel", "name": ")" + name + R"(", "capacity_l": 50})");
    };
    CHECK(vessel("   ").cause.key == "quantity.blank_name");
    CHECK(vessel("\\u200b").cause.key == "quantity.blank_name");
    CHECK(vessel("a\\nb").cause.key == "quantity.unseen");
    CHECK(vessel("a\\u001b[2J").cause.key == "quantity.unseen");
    CHECK(vessel("a\\u0000b").cause.key == "quantity.unseen");
    CHECK(vessel(std::string(200000, 'a')).cause.key == "quantity.too_long");
    CHECK(vessel("   ").path == "/name");
    CHECK(refused(R"({"kind": "vessel_edit", "vessel": "Knot", "name": " "})").path == "/name");
    CHECK(refused(brew(" ", R"("on": "2026-02-01")")).path == "/name");
    CHECK(refused(brew("Brew 1", R"("on": "2026-02-01", "note": "a\u001bb")")).path == "/note");
    CHECK(refused(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-02-01", "volume_l": 50, "lot": "a\nb"})")
              .path == "/lot");
    CHECK(refused(R"({"kind": "sitting", "vessel": "Plover", "on": "2026-02-01",
                      "scores": [{"attribute": "TA1", "cold": 5, "taster": "Ro\tok"}]})")
              .path == "/scores/0/taster");
    record(R"({"kind": "dip", "vessel": "Plover", "on": "2026-02-01", "volume_l": 200, "note": "two\nlines"})");
}

TEST_CASE_METHOD(EntryFixture, "a promise of the brewer's own is checked like a plan", "[desk][bad]") {
    using Json = nlohmann::ordered_json;
    const Json sound = Json::parse(R"({"kind": "choice", "vessel": "Plover", "on": "2026-03-02", "proposal": -1,
        "forecast": {"acidity_mean": 5, "recipe": {"grist": [{"grain": "pilsner", "share": 1}],
                     "mash": [{"temperature_c": 66, "minutes": 60}]}, "draw_l": 80,
                     "this_draw": "2026-04-01", "next_draw": "2026-12-01"}})");
    const auto with = [&](const std::string& pointer, const Json& value) {
        Json choice = sound;
        choice[Json::json_pointer(pointer)] = value;
        return refused(choice.dump()).path;
    };
    CHECK(with("/forecast", Json::object()) == "/forecast/recipe");
    CHECK(with("/forecast/recipe", Json::object()) == "/forecast/recipe/grist");
    CHECK(with("/forecast/recipe/grist/0/grain", "moon") == "/forecast/recipe/grist/0/grain");
    CHECK(with("/forecast/recipe/yeast", "moon") == "/forecast/recipe/yeast");
    CHECK(with("/forecast/acidity_mean", 1e308) == "/forecast/acidity_mean");
    CHECK(with("/forecast/draw_l", 2250) == "/forecast/draw_l");
    CHECK(with("/forecast/next_draw", "2026-03-01") == "/forecast/next_draw");
    CHECK(with("/forecast/this_draw", "9999-12-31") == "/forecast/this_draw");
    CHECK(with("/forecast/target", Json::parse(R"({"wanted_traits": [{"fault": "nosuch", "severity": 1}]})")) ==
          "/forecast/target/wanted_traits/0/fault");
    record(sound.dump());
    CHECK(desk->adviceJob({"Plover", {}, {}, true}));
    CHECK(desk->brewSheet("Plover", {}));
}

TEST_CASE_METHOD(EntryFixture, "wanted traits are faults of the sheet", "[desk][bad]") {
    const auto target = [](const std::string& fault) {
        return R"({"kind": "target", "vessel": "Plover", "on": "2026-02-01",
                   "wanted_traits": [{"fault": "ropy", "severity": 1}, {"fault": ")" +
               fault + R"(", "severity": 1}]})";
    };
    CHECK(refused(target("nosuch")).path == "/wanted_traits/1/fault");
    CHECK(remedy(target("nosuch")).starts_with("Use one of: "));
    CHECK(remedy(target("ropi")) == "Did you mean \"ropy\"?");
}

TEST_CASE_METHOD(EntryFixture, "days beyond any cellar are faults in every kind", "[desk][bad]") {
    for (const char* kind : {R"("kind": "culture")", R"("kind": "target", "acidity": 5)",
                             R"("kind": "lock", "lever": "bitterness", "value": 9)",
                             R"("kind": "opening", "volume_l": 5)", R"("kind": "dip", "volume_l": 5)"})
        for (const char* on : {"0001-01-01", "1899-12-31", "2201-01-01", "9999-12-31"}) {
            const Fault fault = refused(std::string("{") + kind + R"(, "vessel": "Plover", "on": ")" + on + "\"}");
            CHECK(fault.path == "/on");
            CHECK(fault.cause.key == "quantity.day_range");
        }
    DipFact typed{"Plover", Day{std::chrono::days(-100000)}, Litres{100}, ""}; // a form gives days, not texts
    CHECK(desk->record(Fact{typed}).error().cause.key == "quantity.day_range");
}

TEST_CASE_METHOD(EntryFixture, "what is not at hand is named by id or as it is printed", "[desk][advice]") {
    const auto without = [&](const std::string& item) { return desk->adviceJob({"Plover", {}, {item}, false}); };
    for (const char* name : {"pilsner", "Pilsner malt", "PILSNER MALT", "pilsner  malt"}) {
        INFO(name);
        const auto job = without(name);
        REQUIRE(job);
        CHECK(job->input.unavailable.contains("pilsner"));
    }
    CHECK(without("saison")->input.unavailable.contains("saison"));
    const auto none = without("nosuch");
    REQUIRE_FALSE(none);
    CHECK(none.error().path == "/without");
    CHECK(render(none.error().remedy).find("wheat_malt") != std::string::npos);
    CHECK(render(without("pilsnr").error().remedy) == "Did you mean \"pilsner\" (Pilsner malt)?");
    CHECK_FALSE(without(""));
}

TEST_CASE_METHOD(EntryFixture, "a retired vessel is brought back into use by an act of its own", "[desk][retire]") {
    const std::string back = R"({"kind": "bring_back", "vessel": "Plover", "on": "2026-02-20"})";
    CHECK(cause(back) == "desk.not_retired");
    record(R"({"kind": "retire", "vessel": "Plover", "on": "2026-01-15", "reason": "hoop gone"})");
    CHECK(refused(R"({"kind": "bring_back", "vessel": "Plover", "on": "2026-01-10"})").path == "/on");
    record(back);
    CHECK(desk->undoText() == "bring Plover back into use");
    CHECK_FALSE(desk->vessel("Plover")->retired);
    CHECK(desk->vessel("Plover")->facts.retiredReason.empty());
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-02-25", "volume_l": 20})");
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK(desk->vessel("Plover")->retired);
}

TEST_CASE_METHOD(EntryFixture, "a brew is not corrected below what was poured of it", "[desk][bad][amend]") {
    record(brew("Brew 1", R"("on": "2026-02-01", "into_fermenter_l": 90)"));
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-02-20", "volume_l": 70},
               {"kind": "refill", "vessel": "Plover", "on": "2026-02-20", "volume_l": 70, "brew": "Brew 1"}])");
    auto less = std::get<BrewFact>(*desk->fact("brew", 1));
    less.intoFermenter = Litres{40};
    const auto refused = desk->amend("brew", 1, less);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().path == "/into_fermenter_l");
    CHECK(render(refused.error().cause).starts_with("70.0 L of Brew 1 are poured, more than the "));
    less.intoFermenter = Litres{100};
    CHECK(desk->amend("brew", 1, less));
}

TEST_CASE_METHOD(EntryFixture, "a change of a vessel that says nothing is refused", "[desk][bad]") {
    CHECK(cause(R"({"kind": "refit", "vessel": "Plover", "on": "2026-02-01"})") == "desk.nothing_changed");
    CHECK(cause(R"({"kind": "vessel_edit", "vessel": "Plover"})") == "desk.nothing_changed");
    CHECK(cause(R"({"kind": "vessel_edit", "vessel": "Plover", "on": "2026-02-01"})") == "desk.nothing_changed");
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "note": ""})"); // takes a note off
    record(R"({"kind": "refit", "vessel": "Plover", "on": "2026-02-01", "clear": ["evaporation_per_year"]})");
}

TEST_CASE_METHOD(EntryFixture, "an emptied vessel is neither tasted nor given a day to draw on", "[desk][bad][empty]") {
    const auto tasted = [](const std::string& on) {
        return R"({"kind": "sitting", "vessel": "Plover", "on": ")" + on +
               R"(", "scores": [{"attribute": "TA1", "cold": 5}]})";
    };
    const auto drawOn = [](const std::string& on) {
        return R"({"kind": "draw_date", "vessel": "Plover", "on": ")" + on + R"(", "draw_on": "2026-06-01"})";
    };
    record(R"({"kind": "dip", "vessel": "Plover", "on": "2026-01-10", "volume_l": 0})");
    const Fault fault = refused(tasted("2026-01-12"));
    CHECK(fault.path == "/on");
    CHECK(render(fault.cause) == "Plover was empty on 12 Jan 2026.");
    CHECK(cause(drawOn("2026-01-12")) == "desk.nothing_held");
    record(tasted("2026-01-10")); // what was in it that morning
    record(R"({"kind": "refill", "vessel": "Plover", "on": "2026-02-01", "volume_l": 200})");
    record(tasted("2026-02-01"));
    record(drawOn("2026-02-01"));
    CHECK(cause(tasted("2026-01-13")) == "desk.nothing_held");
}
