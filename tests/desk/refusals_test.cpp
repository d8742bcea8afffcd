// SPDX-License-Identifier: GPL-3.0-or-later
// What the desk refuses, at which field, in which words, with which remedy; and that it refuses the same everywhere.
#include "desk/full_facts.h"

#include <algorithm>
#include <nlohmann/json.hpp>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

using Json = nlohmann::ordered_json;

Json fullRecord(const std::string& kind) {
    const Json all = Json::parse(fullRecords);
    for (const auto& record : all)
        if (record["kind"] == kind)
            return record;
    FAIL("no record of kind " << kind);
    return {};
}

/// Where a record is refused; "taken" when it is not.
std::string refusedAt(const Json& record) {
    const auto facts = parseRecords(record.dump());
    return facts ? "taken" : facts.error().path;
}

std::string words(const Fault& fault) {
    return fault.path + ": " + render(fault.cause) + " " + render(fault.remedy);
}

struct RefusalFixture : DeskFixture {
    RefusalFixture() { addPlover(); }

    void addKnot() { record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 50, "material": "steel"})"); }
    std::string refusal(const std::string& json) { return words(refused(json)); }
    void addBrew() {
        record(R"({"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2026-02-20",
                   "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    }
};

} // namespace

// --- fields

TEST_CASE("every bounded field takes both its ends and refuses what lies just outside", "[desk][json][bad]") {
    int bounded = 0;
    for (const auto& table : cellarSchema().tables) {
        if (table.name == "grain" || table.name == "yeast")
            continue;
        const Json full = fullRecord(table.name);
        for (const auto& column : table.columns) {
            if (!column.low || !column.high)
                continue;
            ++bounded;
            const bool whole = column.type == book::ColumnType::integer;
            for (const auto& [value, taken] : {std::pair{*column.low, true}, std::pair{*column.high, true},
                                               std::pair{*column.low - (whole ? 1 : 1e-6), false},
                                               std::pair{*column.high + (whole ? 1 : 1e-6), false}}) {
                Json record = full;
                whole ? void(record[column.name] = static_cast<int>(value)) : void(record[column.name] = value);
                INFO(table.name << "." << column.name << " = " << value);
                CHECK(refusedAt(record) == (taken ? "taken" : "/" + column.name));
            }
        }
    }
    CHECK(bounded > 80);
}

TEST_CASE("every field refuses a value of another type and says what it wants", "[desk][json][bad]") {
    std::set<std::string> kinds;
    const Json all = Json::parse(fullRecords);
    for (const auto& full : all) {
        if (!kinds.insert(full["kind"]).second)
            continue;
        for (const auto& [key, value] : full.items()) {
            if (key == "kind" || value.is_null())
                continue;
            for (const Json& other : {Json(true), Json(4.5), Json("word"), Json::array({1}), Json{{"a", 1}}}) {
                if (other.type() == value.type() || (other.is_number() && value.is_number()))
                    continue;
                Json record = full;
                record[key] = other;
                const auto facts = parseRecords(record.dump());
                INFO(full["kind"] << "/" << key << " = " << other.dump());
                REQUIRE_FALSE(facts);
                CHECK(facts.error().path.starts_with("/" + key));
                CHECK(facts.error().kind == FaultKind::input);
                CHECK(render(facts.error().remedy).find('{') == std::string::npos);
            }
        }
    }
    CHECK(kinds.size() == std::variant_size_v<Fact>);
}

TEST_CASE("a record without what it must have names the field that is missing", "[desk][json][bad]") {
    const std::map<std::string, std::vector<std::string>> required{
        {"vessel", {"name", "capacity_l"}},
        {"vessel_edit", {"vessel"}},
        {"retire", {"vessel", "on"}},
        {"culture", {"vessel", "on"}},
        {"equipment", {"on"}},
        {"base_recipe", {"vessel", "on"}},
        {"target", {"vessel", "on"}},
        {"opening", {"vessel", "on", "volume_l"}},
        {"sitting", {"vessel", "on"}},
        {"sitting_use", {"vessel", "sitting", "learn"}},
        {"reading", {"vessel", "on"}},
        {"sample", {"vessel", "on"}},
        {"event", {"vessel", "on", "what"}},
        {"dip", {"vessel", "on", "volume_l"}},
        {"refill", {"vessel", "on", "volume_l"}},
        {"top_up", {"vessel", "on", "volume_l"}},
        {"draw_off", {"vessel", "on", "volume_l"}},
        {"brew", {"name", "on"}},
        {"draw_date", {"vessel", "on"}},
        {"work_date", {"vessel", "on", "what"}},
        {"round", {"vessel", "on"}},
        {"room", {"on", "name"}},
        {"lot_reading", {"lot", "on"}},
        {"lot_addition", {"lot", "on", "what"}},
        {"lot_move", {"lot", "on", "volume_l"}},
        {"packaging", {"lot", "on", "name", "size_ml", "count"}},
        {"opened", {"packaging", "on"}},
        {"refit", {"vessel", "on"}},
        {"bring_back", {"vessel", "on"}},
        {"lock", {"vessel", "on", "lever"}},
        {"availability", {"on", "item"}},
        {"own_grain", {"on", "ingredient", "name", "like"}},
        {"own_yeast", {"on", "ingredient", "name", "like"}},
        {"own_hop", {"on", "ingredient", "name", "like"}},
        {"choice", {"vessel", "on"}}};
    REQUIRE(required.size() == std::variant_size_v<Fact>);
    for (const auto& [kind, fields] : required) {
        const Json full = fullRecord(kind);
        for (const auto& [key, value] : full.items()) {
            Json record = full;
            record.erase(key);
            const bool needed = std::find(fields.begin(), fields.end(), key) != fields.end() || key == "kind";
            INFO(kind << " without " << key);
            CHECK(refusedAt(record) == (needed ? "/" + key : "taken"));
        }
    }
}

TEST_CASE("a field nobody knows is refused in every kind, with the nearest one", "[desk][json][bad]") {
    std::set<std::string> kinds;
    const Json all = Json::parse(fullRecords);
    for (Json record : all) {
        if (!kinds.insert(record["kind"]).second)
            continue;
        record["notes"] = "x";
        const auto facts = parseRecords(record.dump());
        REQUIRE_FALSE(facts);
        CHECK(facts.error().path == "/notes");
        if (record.contains("note"))
            CHECK(render(facts.error().remedy) == "Did you mean \"note\"?");
    }
}

TEST_CASE("lists and objects inside a record are checked as closely, with their place", "[desk][json][bad]") {
    const auto at = [](const std::string& kind, const std::string& pointer, const Json& value) {
        Json record = fullRecord(kind);
        record[Json::json_pointer(pointer)] = value;
        return refusedAt(record);
    };
    CHECK(at("base_recipe", "/grist/1/share", 1.5) == "/grist/1/share");
    CHECK(at("base_recipe", "/grist/1/shares", 0.5) == "/grist/1/shares");
    CHECK(at("base_recipe", "/grist/2/late", "yes") == "/grist/2/late");
    CHECK(at("base_recipe", "/mash/1/minutes", 601) == "/mash/1/minutes");
    CHECK(at("base_recipe", "/mash/0", 45) == "/mash/0");
    CHECK(at("base_recipe", "/hops/0/alpha_share", 0.4) == "/hops/0/alpha_share");
    CHECK(at("brew", "/hops/0/minutes", -1) == "/hops/0/minutes");
    CHECK(at("sitting", "/scores/1/cellar", 10.5) == "/scores/1/cellar");
    CHECK(at("sitting", "/faults/0/severity", 4) == "/faults/0/severity");
    CHECK(at("sitting", "/faults/0/severity", 1.5) == "/faults/0/severity");
    CHECK(at("sitting", "/draw_it", "maybe") == "/draw_it");
    CHECK(at("target", "/wanted_traits/0/severity", -1) == "/wanted_traits/0/severity");
    CHECK(at("choice", "/forecast/recipe/mash/0/temperature_c", 99) == "/forecast/recipe/mash/0/temperature_c");
    CHECK(at("choice", "/forecast/target/acidity", 11) == "/forecast/target/acidity");
    CHECK(at("choice", "/forecast/moves/0", 7) == "/forecast/moves/0");
    CHECK(at("choice", "/forecast/this_draw", "soon") == "/forecast/this_draw");
}

TEST_CASE("files that are no list of records are refused whole", "[desk][json][bad]") {
    const auto causeOf = [](const std::string& text) {
        INFO(text);
        const auto facts = parseRecords(text);
        REQUIRE_FALSE(facts);
        return facts.error().cause.key;
    };
    for (const char* text : {"{", "[{]", "{\"kind\": \"dip\"", "{'kind': 'dip'}", "[1,]"})
        CHECK(causeOf(text) == "desk.not_json");
    CHECK(causeOf("[{\"kind\": \"dip\", \"vessel\": \"P\", \"on\": \"2026-03-01\", \"volume_l\": 1e999}]") ==
          "desk.number_too_large");
    for (const char* text : {"", "   "})
        CHECK(causeOf(text) == "desk.empty_file");
    CHECK(causeOf("\xff\xfe{}") == "quantity.not_utf8");
    for (const char* text : {"null", "3", "\"dip\"", "true"}) {
        const auto facts = parseRecords(text);
        REQUIRE_FALSE(facts);
        CHECK(facts.error().cause.key == "desk.wrong_type");
    }
    CHECK(parseRecords("[]")->empty());
    CHECK_FALSE(parseRecords(std::string(100000, '[')));
}

TEST_CASE_METHOD(RefusalFixture, "nothing to record is said so", "[desk][bad]") {
    const auto nothing = desk->record(std::vector<Fact>{});
    REQUIRE_FALSE(nothing);
    CHECK(words(nothing.error()) == ": There is nothing to record. Give one entry or a list of them.");
}

// --- meaning, in the words a brewer reads

TEST_CASE_METHOD(RefusalFixture, "refusals say what is wrong and what to do", "[desk][bad]") {
    CHECK(refusal(R"({"kind": "dip", "vessel": "Plover", "on": "2026-03-03", "volume_l": 100})") ==
          "/on: 3 Mar 2026 is in the future (today is 2 Mar 2026). "
          "The ledger takes what has happened; check the date.");
    CHECK(refusal(R"({"kind": "reading", "vessel": "Plover", "on": "2025-05-31", "ph": 3.4})") ==
          "/on: 31 May 2025 lies before the vessel was taken over or filled in this book (1 Jun 2025). "
          "Check the date, or amend that first entry.");
    CHECK(refusal(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-06-01", "volume_l": 300})") ==
          "/volume_l: 300.0 L is more than Plover holds then (216.0 L). "
          "Take at most 216.0 L, or record a dip if there is more in it.");
    CHECK(refusal(R"({"kind": "vessel", "name": "Plover", "capacity_l": 50})") ==
          "/name: The name \"Plover\" is taken. Choose another name.");
    CHECK(refusal(R"({"kind": "dip", "vessel": "Plovr", "on": "2026-03-01", "volume_l": 1})") ==
          "/vessel: There is no vessel \"Plovr\". Did you mean \"Plover\"?");
    CHECK(refusal(R"({"kind": "lock", "vessel": "Plover", "on": "2026-03-01", "lever": "draw"})") ==
          "/value: A lock needs the value it holds the lever at. "
          "Give \"value\" for a number or \"choice\" for a word.");
    CHECK(refusal(R"({"kind": "sitting", "vessel": "Plover", "on": "2026-03-01"})") ==
          "/scores: Nothing is scored. Score at least one line, or mark a fault.");
    CHECK(refusal(R"({"kind": "sitting", "vessel": "Plover", "on": "2026-03-01", "faults": [{"fault": "ropi",
                      "severity": 1}]})") == "/faults/0/fault: There is no fault \"ropi\". Did you mean \"ropy\"?");
}

TEST_CASE("in an empty book the remedy is to add what is missing", "[desk][bad]") {
    DeskFixture book;
    CHECK(words(book.refused(R"({"kind": "dip", "vessel": "Plover", "on": "2026-03-01", "volume_l": 1})")) ==
          "/vessel: There is no vessel \"Plover\". Add the vessel first.");
    book.addPlover();
    CHECK(words(book.refused(R"({"kind": "refill", "vessel": "Plover", "on": "2026-03-01", "volume_l": 5,
                                 "brew": "Brew 1"})")) == "/brew: There is no brew \"Brew 1\". Record the brew first.");
}

TEST_CASE_METHOD(RefusalFixture, "a name in use is refused to vessels, renamed vessels and brews", "[desk][bad]") {
    addKnot();
    addBrew();
    CHECK(refused(R"({"kind": "vessel_edit", "vessel": "Knot", "name": "Plover"})").path == "/name");
    record(R"({"kind": "vessel_edit", "vessel": "Knot", "name": "Knot"})"); // to itself is no clash
    CHECK(refused(R"({"kind": "brew", "name": "Brew 1", "on": "2026-02-21",
                      "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})")
              .cause.key == "desk.name_taken");
    // two of a name in one batch
    CHECK(refused(R"([{"kind": "vessel", "name": "Godwit", "capacity_l": 50},
                      {"kind": "vessel", "name": "Godwit", "capacity_l": 60}])")
              .path == "/1/name");
}

TEST_CASE_METHOD(RefusalFixture, "a vessel cannot lose its name", "[desk][bad][vessel]") {
    const Fault fault = refused(R"({"kind": "vessel_edit", "vessel": "Plover", "name": ""})");
    CHECK(fault.path == "/name");
    CHECK(render(fault.remedy).size() > 4);
}

TEST_CASE_METHOD(RefusalFixture, "a lock is refused at its own field", "[desk][bad][lock]") {
    const auto lock = [&](const std::string& rest) {
        return refused(R"({"kind": "lock", "vessel": "Plover", "on": "2026-03-01", )" + rest + "}").path;
    };
    CHECK(lock(R"("lever": "bitternes", "value": 9)") == "/lever");
    CHECK(lock(R"("lever": "bitternes", "locked": false)") == "/lever");
    CHECK(lock(R"("lever": "bitterness", "value": 90)") == "/value");
    CHECK(lock(R"("lever": "yeast", "choice": "moon yeast")") == "/choice");
    CHECK(lock(R"("lever": "yeast", "value": 3)") == "/value");
    CHECK(lock(R"("lever": "draw", "choice": "much")") == "/choice");
}

TEST_CASE_METHOD(RefusalFixture, "a vessel nothing was put into gives nothing", "[desk][bad]") {
    addKnot();
    const auto fault = refused(R"({"kind": "sample", "vessel": "Knot", "on": "2026-03-01", "volume_l": 0.2})");
    CHECK(fault.path == "/vessel");
    CHECK(render(fault.cause) == "Knot has nothing in it yet in this book.");
    CHECK(desk->estimates("Knot").error().cause.key == "desk.not_opened");
    for (const auto& asked : {desk->drawDay("Knot").error(), desk->adviceJob({"Knot", {}, {}, false}).error()}) {
        CHECK(asked.kind == FaultKind::notPossible);
        CHECK(asked.cause.key == "desk.empty");
    }
}

TEST_CASE_METHOD(RefusalFixture, "what comes from another vessel must have been in it", "[desk][bad][transfer]") {
    addKnot();
    const auto from = [&](const std::string& on, double litres, const std::string& source) {
        return refused(R"({"kind": "refill", "vessel": "Knot", "on": ")" + on + R"(", "volume_l": )" +
                       std::to_string(litres) + R"(, "from": ")" + source + "\"}");
    };
    CHECK(from("2026-01-01", 10, "Nobody").path == "/from");
    CHECK(from("2025-05-01", 10, "Plover").path == "/on"); // Plover was not open then
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-01", "volume_l": 195})");
    const auto tooMuch = from("2026-01-02", 40, "Plover");
    CHECK(tooMuch.path == "/volume_l");
    CHECK(tooMuch.cause.key == "desk.more_than_held");
    record(R"({"kind": "vessel", "name": "Godwit", "capacity_l": 50})");
    CHECK(from("2026-01-02", 10, "Godwit").path == "/from"); // nothing in it yet
}

TEST_CASE_METHOD(RefusalFixture, "a preview refuses what recording refuses, with the same fault", "[desk][preview]") {
    addKnot();
    addBrew();
    for (const char* json :
         {R"({"kind": "refill", "vessel": "Knot", "on": "2026-03-01", "volume_l": 5, "brew": "Brew 9"})",
          R"({"kind": "refill", "vessel": "Knot", "on": "2026-03-01", "volume_l": 5, "from": "Nobody"})",
          R"({"kind": "refill", "vessel": "Knot", "on": "2026-03-01", "volume_l": 500, "from": "Plover"})",
          R"({"kind": "top_up", "vessel": "Plover", "on": "2026-03-01", "volume_l": 5, "from": "Plover"})",
          R"({"kind": "top_up", "vessel": "Plover", "on": "2026-03-09", "volume_l": 5})",
          R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 500})",
          R"({"kind": "dip", "vessel": "Plover", "on": "2026-03-01", "volume_l": 500})",
          R"({"kind": "reading", "vessel": "Nobody", "on": "2026-03-01", "ph": 3.4})",
          R"({"kind": "opening", "vessel": "Plover", "on": "2026-03-01", "volume_l": 50})"}) {
        INFO(json);
        const Fact fact = parseRecords(json)->front();
        const auto recorded = desk->record(fact);
        const auto previewed = desk->preview(fact);
        REQUIRE_FALSE(recorded);
        REQUIRE_FALSE(previewed);
        CHECK(words(previewed.error()) == words(recorded.error()));
    }
    const auto brew = desk->preview(Fact{desk->brews().front()});
    REQUIRE_FALSE(brew);
}

TEST_CASE_METHOD(RefusalFixture, "corrections are refused for what is not there or of another kind", "[desk][amend]") {
    record(R"({"kind": "dip", "vessel": "Plover", "on": "2026-01-01", "volume_l": 200})");
    const Fact dip = *desk->fact("dip", 1);
    CHECK(desk->amend("dip", 7, dip).error().cause.key == "book.no_such_row");
    CHECK(desk->remove("dip", 7).error().cause.key == "book.no_such_row");
    CHECK(desk->fact("dip", 7).error().cause.key == "book.no_such_row");
    CHECK(words(desk->amend("dips", 1, dip).error()) ==
          "/table: \"dips\" holds no entries. Name the kind of entry, for example draw_off.");
    CHECK(desk->remove("vessel", 1).error().cause.key == "desk.unknown_table");
    CHECK(words(desk->amend("opening", 1, dip).error()) ==
          "/kind: The corrected entry is of another kind. Remove the entry and record the right one.");
    auto wrong = std::get<DipFact>(dip);
    wrong.volume = Litres{-1};
    CHECK(desk->amend("dip", 1, wrong).error().path == "/volume_l");
    wrong = std::get<DipFact>(dip);
    wrong.vessel = "Nobody";
    CHECK(desk->amend("dip", 1, wrong).error().path == "/vessel");
    CHECK(*desk->fact("dip", 1) == dip);
}

TEST_CASE_METHOD(RefusalFixture, "a brew that is in a vessel cannot be removed", "[desk][amend]") {
    addBrew();
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 70},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-01", "volume_l": 70, "brew": "Brew 1"}])");
    const auto kept = desk->remove("brew", 1);
    REQUIRE_FALSE(kept);
    CHECK(kept.error().cause.key == "book.still_used");
    CHECK(desk->brews().size() == 1);
    REQUIRE(desk->remove("refill", 1));
    CHECK(desk->remove("brew", 1));
    CHECK(desk->brews().empty());
}
