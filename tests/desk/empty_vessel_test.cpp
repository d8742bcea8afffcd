// SPDX-License-Identifier: GPL-3.0-or-later
// An empty vessel says so everywhere, and what to do: fill it.
#include "desk/support.h"

#include <nlohmann/json.hpp>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct EmptyFixture : DeskFixture {
    EmptyFixture() {
        addPlover();
        record(R"([{"kind": "base_recipe", "vessel": "Plover", "on": "2025-06-01",
                    "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]},
                   {"kind": "sitting", "vessel": "Plover", "on": "2026-02-20", "scores": [
                    {"taster": "Rook", "attribute": "TA1", "cold": 8, "cellar": 8}]},
                   {"kind": "dip", "vessel": "Plover", "on": "2026-03-02", "volume_l": 0}])");
    }
    [[nodiscard]] std::string sheet() const { return writeMarkdown(*desk->brewSheet("Plover")); }
};

} // namespace

TEST_CASE_METHOD(EmptyFixture, "there is no advice on an empty vessel, and no promise", "[desk][empty]") {
    const auto advice = desk->advise({"Plover", {}, {}});
    REQUIRE_FALSE(advice);
    CHECK(advice.error().kind == FaultKind::notPossible);
    CHECK(render(advice.error().cause) == "Plover is empty: there is no beer to taste or to change.");
    CHECK(render(advice.error().remedy) ==
          "Brew 213.8 L for it now and fill it on 16 Mar 2026, or record a takeover if it holds beer.");
    CHECK_FALSE(desk->predict("Plover", *desk->setting("Plover")));
    CHECK(refused(R"({"kind": "choice", "vessel": "Plover", "on": "2026-03-02", "proposal": 0})").cause.key ==
          "desk.empty");
}

TEST_CASE_METHOD(EmptyFixture, "an empty vessel is to be brewed for at once", "[desk][empty]") {
    CHECK(render(desk->vessel("Plover")->headline) == "empty: fill it");
    CHECK(desk->vessel("Plover")->dates.brew == now);
    BrewFact brew;
    brew.name = "Brew 1";
    brew.vessel = "Plover";
    brew.on = now;
    brew.recipe = desk->setting("Plover")->recipe;
    REQUIRE(desk->record(brew));
    CHECK(render(desk->vessel("Plover")->headline) == "empty: fill in 14 days");
    record(R"({"kind": "refill", "vessel": "Plover", "on": "2026-03-02", "volume_l": 200, "brew": "Brew 1"})");
    CHECK(render(desk->vessel("Plover")->headline).starts_with("taste in "));
}

TEST_CASE_METHOD(EmptyFixture, "its sheet fills it and draws nothing", "[desk][empty][sheet]") {
    const std::string words = sheet();
    CHECK(words.find("First fill of an empty vessel: nothing is tasted or drawn before it.") != std::string::npos);
    CHECK(words.find("Draw ") == std::string::npos);
    CHECK(words.find("Take a sample") == std::string::npos);
    CHECK(words.find("Fill the vessel") != std::string::npos);
    REQUIRE(desk->undo());
    CHECK(sheet().find("empty vessel") == std::string::npos);
}

TEST_CASE_METHOD(EmptyFixture, "its recipe can be changed without promising anything", "[desk][empty]") {
    auto setting = *desk->setting("Plover");
    setting.recipe.bitterness = Ibu{7};
    REQUIRE(desk->revise("Plover", setting));
    CHECK(desk->setting("Plover")->recipe.bitterness.ibu == 7);
    CHECK_FALSE(desk->lastChoice("Plover"));
}

TEST_CASE_METHOD(DeskFixture, "what does not agree is said in words, with its day and entry", "[desk][findings]") {
    addPlover();
    auto facts = parseRecords(R"({"kind": "dip", "vessel": "Plover", "on": "2026-01-05", "volume_l": 150})");
    const auto done = desk->record(*facts);
    REQUIRE(done);
    REQUIRE(done->findings.size() == 1);
    CHECK(done->findings.front().vessel == "Plover");
    const std::string words = render(done->findings.front().note.text);
    CHECK(words.starts_with("The dip of 5 Jan 2026 says 150.0 L where "));
    const auto once = nlohmann::json{{"on", "2026-01-05"}, {"entry", "dip"}, {"text", words}};
    using Json = nlohmann::json;
    CHECK(Json::parse(toJson(*desk->cellar()))[0]["findings"] == Json::array({once}));
    CHECK(Json::parse(toJson(*desk->history("Plover")))["findings"] == Json::array({once}));
    const auto job = desk->adviceJob({"Plover", {}, {}});
    CHECK(Json::parse(toJson(*job, *desk->advise({"Plover", {}, {}})))["findings"] == Json::array({once}));
    auto told = once;
    told["vessel"] = "Plover";
    CHECK(Json::parse(toJson(*done))["findings"] == Json::array({told}));
    const auto next = desk->record(ReadingFact{"Plover", day(2026, 1, 6), {}, "clear"});
    REQUIRE(next);
    CHECK(next->findings.empty()); // it was there before
}

TEST_CASE_METHOD(DeskFixture, "the history names lots, brews, other vessels, faults and single scores",
                 "[desk][history]") {
    addPlover();
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225},
               {"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2025-08-20",
                "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]},
               {"kind": "draw_off", "vessel": "Plover", "on": "2025-09-08", "volume_l": 79, "lot": "Draw 1"},
               {"kind": "refill", "vessel": "Plover", "on": "2025-09-08", "volume_l": 80, "brew": "Brew 1"},
               {"kind": "refill", "vessel": "Knot", "on": "2025-10-01", "volume_l": 15, "from": "Plover"},
               {"kind": "sitting", "vessel": "Plover", "on": "2025-11-01", "scores": [
                {"taster": "Rook", "attribute": "TA1", "cold": 6.5, "cellar": 7}, {"attribute": "TA2", "cold": 6}],
                "faults": [{"fault": "ropy", "severity": 1}]}])");
    const std::string csv = toCsv(desk->history("Plover")->rows);
    const auto header = csv.substr(0, csv.find("\r\n"));
    CHECK(header.ends_with(",happened,learn,learn_reason,at,lot,brew,other_vessel,faults,scores,round,note"));
    CHECK(csv.find(",,,,,\"Draw 1\",,,,,,\r\n") != std::string::npos);
    CHECK(csv.find(",\"Brew 1\",,,,,\r\n") != std::string::npos);
    CHECK(csv.find("2025-10-01,moved_out,") != std::string::npos);
    CHECK(csv.find(",\"Knot\",,,,\r\n") != std::string::npos);
    CHECK(csv.find(",\"ropy 1\",\"Rook TA1 6.5 / 7; TA2 6 / -\",,\r\n") != std::string::npos);
    CHECK(toCsv(desk->history("Knot")->rows).find(",\"Plover\",,,,\r\n") != std::string::npos);
    using Json = nlohmann::json;
    const Json rows = Json::parse(toJson(*desk->history("Plover")))["rows"];
    CHECK(std::any_of(rows.begin(), rows.end(), [](const Json& row) { return row.value("lot", "") == "Draw 1"; }));
}

TEST_CASE_METHOD(DeskFixture, "each ledger names the other vessel", "[desk][transfer]") {
    addPlover();
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225},
               {"kind": "refill", "vessel": "Knot", "on": "2025-10-01", "volume_l": 15, "from": "Plover"},
               {"kind": "top_up", "vessel": "Knot", "on": "2025-10-02", "volume_l": 5, "from": "Plover"}])");
    CHECK(render(desk->ledger("Plover")->lines[1].text) == "15.0 L to Knot");
    CHECK(render(desk->ledger("Plover")->lines[2].text) == "5.0 L to Knot");
    CHECK(render(desk->ledger("Knot")->lines[0].text) == "15.0 L from Plover");
    CHECK(render(desk->ledger("Knot")->lines[1].text) == "topped up with 5.0 L from Plover");
}

TEST_CASE_METHOD(DeskFixture, "a dip that finds beer in a vessel opens it: it can be drawn and refilled",
                 "[desk][empty][dip]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225},
               {"kind": "dip", "vessel": "Knot", "on": "2026-02-01", "volume_l": 200}])");
    CHECK(render(desk->vessel("Knot")->headline).starts_with("taste in "));
    CHECK(desk->vessel("Knot")->due.on > now);
    record(R"({"kind": "sitting", "vessel": "Knot", "on": "2026-02-20", "scores": [{"attribute": "TA1", "cold": 5}]})");
    record(R"([{"kind": "draw_off", "vessel": "Knot", "on": "2026-03-01", "volume_l": 60},
               {"kind": "refill", "vessel": "Knot", "on": "2026-03-01", "volume_l": 60}])"); // in this order
    CHECK(desk->vessel("Knot")->now.volume.l == Approx(200).margin(1));
    CHECK(refused(R"({"kind": "draw_off", "vessel": "Knot", "on": "2026-01-30", "volume_l": 20})").cause.key ==
          "desk.not_opened");
    record(R"([{"kind": "vessel", "name": "Wren", "capacity_l": 225},
               {"kind": "dip", "vessel": "Wren", "on": "2026-02-01", "volume_l": 0}])");
    CHECK(render(desk->vessel("Wren")->headline) == "empty: fill it");
    CHECK(refused(R"({"kind": "draw_off", "vessel": "Wren", "on": "2026-02-20", "volume_l": 20})").cause.key ==
          "desk.not_opened");
}

TEST_CASE_METHOD(DeskFixture, "beer known by a dip alone is not called nothing, and its takeover may come after",
                 "[desk][dip]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225},
               {"kind": "dip", "vessel": "Knot", "on": "2026-02-01", "volume_l": 200}])");
    const auto advice = desk->advise({"Knot", {}, {}});
    REQUIRE_FALSE(advice);
    CHECK(advice.error().kind == FaultKind::notPossible);
    CHECK(advice.error().cause.key == "desk.dip_alone");
    record(R"({"kind": "opening", "vessel": "Knot", "on": "2026-02-10", "volume_l": 198, "age_years": 1})");
    CHECK(desk->advise({"Knot", {}, {}}));
    CHECK(desk->vessel("Knot")->findings.empty());
    CHECK(refused(R"({"kind": "refill", "vessel": "Knot", "on": "2026-02-05", "volume_l": 20})").path == "/on");
}

TEST_CASE_METHOD(DeskFixture, "a vessel whose takeover is taken out stands by its dip, or is empty",
                 "[desk][empty][dip]") {
    addPlover();
    record(R"([{"kind": "dip", "vessel": "Plover", "on": "2026-01-05", "volume_l": 200},
               {"kind": "draw_date", "vessel": "Plover", "on": "2026-01-10", "draw_on": "2026-04-01"}])");
    REQUIRE(desk->remove("opening", 1));
    CHECK(desk->vessel("Plover")->now.opened == day(2026, 1, 5));
    CHECK(desk->vessel("Plover")->dates.draw == day(2026, 4, 1));
    REQUIRE(desk->remove("dip", 1));
    CHECK(render(desk->vessel("Plover")->headline) == "empty: fill it");
    CHECK(desk->cellar()->front().toFill);
}
