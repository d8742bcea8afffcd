// SPDX-License-Identifier: GPL-3.0-or-later
// What leaves the desk as a file: the history as CSV and JSON, and the answers a script reads.
#include "desk/support.h"
#include "facts/sample.h"
#include "quantity/csv.h"

#include <cmath>
#include <nlohmann/json.hpp>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::culture;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::vessel;
using namespace staveline::testing;

namespace {

using Json = nlohmann::json;

const std::string oddNote = "sharp, \"very\"\nand a second line; 1,5 L left";

struct Answers : DeskFixture {
    Answers() {
        now = day(2026, 6, 1);
        const auto facts = sampleCellar(now);
        REQUIRE(facts);
        REQUIRE(desk->record(*facts));
        REQUIRE(desk->record(ReadingFact{"Plover", now, {SpecificGravity{1.0034}, Ph{3.31}, {}, {}, {}}, oddNote}));
    }
    [[nodiscard]] HistoryView history() const {
        auto view = desk->history("Plover");
        REQUIRE(view);
        return *view;
    }
    [[nodiscard]] Json status() const { return Json::parse(toJson(desk->cellar().value())); }
};

} // namespace

TEST_CASE_METHOD(Answers, "the history as CSV is a table any reader takes, every row and word of it",
                 "[desk][history]") {
    const auto rows = history().rows;
    const auto csv = toCsv(rows);
    CHECK(csv.find("\r\n") != std::string::npos);
    CHECK(csv.ends_with("\r\n"));
    const auto table = CsvTable::parse(csv);
    REQUIRE(table);
    REQUIRE(table->rows() == rows.size());
    CHECK(table->header().front() == "on");
    CHECK(table->header().back() == "note");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CHECK(table->text(i, "on") == isoDay(rows[i].on));
        CHECK(table->text(i, "what") == wordOf(rows[i]));
        CHECK(table->text(i, "note") == rows[i].note);
    }
    const auto noted = std::find_if(rows.begin(), rows.end(), [](const auto& row) { return row.note == oddNote; });
    REQUIRE(noted != rows.end());
}

TEST_CASE_METHOD(Answers, "CSV and JSON of the history say the same numbers, and leave out the same",
                 "[desk][history]") {
    const auto view = history();
    const auto& rows = view.rows;
    const auto table = CsvTable::parse(toCsv(rows));
    const auto whole = Json::parse(toJson(view));
    const Json& json = whole["rows"];
    REQUIRE(table);
    REQUIRE(json.size() == rows.size());
    const std::set<std::string, std::less<>> words = {"happened", "learn_reason", "at",     "lot",
                                                      "brew",     "other_vessel", "faults", "scores"};
    int numbers = 0;
    for (std::size_t i = 0; i < rows.size(); ++i)
        for (const auto& column : table->header()) {
            if (column == "on" || column == "what" || column == "note")
                continue;
            INFO(i << " " << column);
            CHECK(json[i].contains(column) == !table->text(i, column).empty());
            if (column == "learn") {
                CHECK(table->text(i, column) == (!json[i].contains(column) ? "" : json[i][column] ? "yes" : "no"));
                continue;
            }
            if (words.contains(column)) {
                CHECK(json[i].value(column, "") == table->text(i, column));
                continue;
            }
            if (!json[i].contains(column))
                continue;
            ++numbers;
            CHECK(*table->number(i, column) == Approx(json[i][column].get<double>()).epsilon(1e-5));
        }
    CHECK(numbers > 100);
}

TEST_CASE_METHOD(Answers, "what is measured stands in its column and nowhere else", "[desk][history]") {
    const auto rows = history().rows;
    const auto table = CsvTable::parse(toCsv(rows));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].note != oddNote)
            continue;
        CHECK(*table->number(i, "gravity_sg") == Approx(1.0034));
        CHECK(*table->number(i, "ph") == Approx(3.31));
        for (const char* empty : {"ta_g_l", "temperature_c", "ibu", "moved_l", "acidity", "refill_ibu", "mash_c"})
            CHECK(table->text(i, empty).empty());
    }
}

TEST_CASE_METHOD(Answers, "each sitting carries what was expected before it and what it taught", "[desk][history]") {
    const auto view = history();
    const auto table = CsvTable::parse(toCsv(view.rows));
    int sittings = 0;
    for (std::size_t i = 0; i < view.rows.size(); ++i) {
        const HistoryRow& row = view.rows[i];
        if (row.kind != HistoryKind::sitting) {
            CHECK(table->text(i, "acidity_offset").empty());
            CHECK(table->text(i, "acidity_expected").empty());
            continue;
        }
        ++sittings;
        now = row.on; // what stood at the end of that day
        const auto known = desk->estimates("Plover");
        REQUIRE(known);
        for (Dimension d : allDimensions) {
            const std::string column(name(d));
            INFO(i << " " << column);
            CHECK(*table->number(i, column + "_offset") ==
                  Approx(known->offsets[d].mean[estimate::Offset::now]).epsilon(1e-4).margin(1e-5));
            CHECK(*table->number(i, column + "_offset_sd") == Approx(known->offsets[d].sd()).epsilon(1e-4));
            CHECK(table->text(i, column + "_expected").empty() == !row.expected[d].has_value());
        }
    }
    CHECK(sittings > 3);
}

TEST_CASE("an empty history is a head and an empty list", "[desk][history]") {
    const auto csv = toCsv({});
    CHECK(csv.starts_with("on,what,acidity,funk,body,"));
    CHECK(csv.find("\r\n") == csv.size() - 2);
    CHECK(Json::parse(toJson(HistoryView{}))["rows"].empty());
}

TEST_CASE_METHOD(Answers, "litres moved explain the level, entry by entry", "[desk][history]") {
    // without evaporation between entries of one day
    const auto rows = history().rows;
    int compared = 0;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const auto& before = rows[i - 1];
        const auto& after = rows[i];
        if (before.on != after.on || !before.volume || !after.volume || !after.moved)
            continue;
        const double sign = after.is(EntryKind::refill) || after.is(EntryKind::topUp) ? 1 : -1;
        INFO(isoDay(after.on) << " " << wordOf(after));
        CHECK(after.volume->l - before.volume->l == Approx(sign * after.moved->l).margin(.01));
        ++compared;
    }
    CHECK(compared >= 3);
}

TEST_CASE_METHOD(Answers, "the status of a cellar says each vessel's numbers as the desk has them", "[desk][json]") {
    const auto json = status();
    const auto cellar = desk->cellar().value();
    REQUIRE(json.size() == cellar.size());
    for (std::size_t i = 0; i < cellar.size(); ++i) {
        const auto& vessel = cellar[i];
        CHECK(json[i]["vessel"] == vessel.name);
        CHECK(json[i]["volume_l"] == vessel.now.volume.l);
        CHECK(json[i]["due"] == render(vessel.due.text));
        CHECK(json[i]["due_on"] == isoDay(vessel.due.on));
        CHECK(json[i]["headline"] == render(vessel.headline));
        CHECK(json[i].contains("fault") == !vessel.fault.empty());
        double shares = 0;
        for (const auto& generation : json[i]["generations"])
            shares += generation["share"].get<double>();
        CHECK(shares == Approx(vessel.now.generations.empty() ? 0 : 1));
        if (vessel.opened) {
            CHECK(json[i]["dates"]["draw"].get<std::string>() <= json[i]["dates"]["next_draw"].get<std::string>());
            CHECK(json[i]["dates"]["brew"].get<std::string>() <= json[i]["dates"]["draw"].get<std::string>());
        }
    }
}

TEST_CASE_METHOD(Answers, "advice for a script has a verdict and a band for each dimension", "[desk][json]") {
    const auto job = desk->adviceJob({"Plover", {}, {}, true});
    REQUIRE(job);
    const auto advice = advise(job->input);
    REQUIRE(advice);
    const auto json = Json::parse(toJson(*job, *advice));
    CHECK(json["value_of_tasting"]["value"] == advice->tasting.value);
    CHECK(json["value_of_tasting"]["worth_it"] == advice->tasting.dimension.has_value());
    CHECK(json["vessel"] == "Plover");
    CHECK(json["draw_on"] == isoDay(job->dates.draw));
    for (Dimension d : allDimensions) {
        const auto& verdict = json["verdicts"][std::string(name(d))];
        CHECK(verdict["gap"] == advice->verdicts[d].gap);
        CHECK_FALSE(verdict["verdict"].get<std::string>().empty());
        CHECK_FALSE(verdict["reason"].get<std::string>().empty());
        const auto& offset = json["offsets"][std::string(name(d))];
        CHECK(offset["mean"] == job->input.offsets[d].mean[0]);
        CHECK(offset["sd"].get<double>() == Approx(job->input.offsets[d].sd()));
        CHECK(json["evidence"][std::string(name(d))].size() == job->input.evidence[d].size());
        CHECK(json["leave_it_alone"]["loss"][std::string(name(d))] == advice->leaveAlone.loss[d]);
        const auto& band = json["leave_it_alone"]["next_draw"][std::string(name(d))];
        CHECK(band.is_object());
    }
    REQUIRE(json["proposals"].size() == advice->proposals.size());
    for (std::size_t i = 0; i < advice->proposals.size(); ++i) {
        CHECK(json["proposals"][i]["draw_l"] == advice->proposals[i].setting.draw.l);
        CHECK(json["proposals"][i]["moves"].size() == advice->proposals[i].moves.size());
        CHECK(json["proposals"][i].contains("if_kept_up"));
        CHECK(json["proposals"][i]["loss"]["funk"] == advice->proposals[i].loss[Dimension::funk]);
        CHECK_FALSE(json["proposals"][i]["why"].get<std::string>().empty());
    }
    const auto quick = desk->adviceJob({"Plover", {}, {}, false});
    const auto quickJson = Json::parse(toJson(*quick, *advise(quick->input)));
    CHECK_FALSE(quickJson["leave_it_alone"].contains("if_kept_up")); // not worked out: not told as nought
}

TEST_CASE_METHOD(Answers, "a plan for a script weighs what the plan weighs", "[desk][json]") {
    const auto plan = desk->brewPlan("Plover");
    REQUIRE(plan);
    const auto json = Json::parse(toJson(*plan));
    double kilograms = 0;
    for (const auto& grain : json["grist"])
        kilograms += grain["kg"].get<double>();
    CHECK(kilograms == Approx(plan->gristMass.kg));
    double ibu = 0;
    for (const auto& hop : json["hops"])
        ibu += hop["ibu"].get<double>();
    CHECK(ibu == Approx(plan->bitterness.ibu));
    CHECK(json["into_fermenter_l"].get<double>() >= json["into_vessel_l"].get<double>());
    CHECK(json["findings"].size() == plan->findings.size());
    CHECK(json["cautions"].size() == plan->cautions.size());
}

TEST_CASE_METHOD(Answers, "predictions, faults and checks are told whole", "[desk][json]") {
    const auto setting = *desk->setting("Plover");
    const auto prediction = desk->predict("Plover", setting);
    REQUIRE(prediction);
    const auto json = Json::parse(toJson(*prediction));
    for (Dimension d : allDimensions)
        CHECK(json["next_draw"]["scores"][std::string(name(d))] == prediction->next[d].value);
    CHECK(json["this_draw"]["ph"] == prediction->thisBeer.ph.ph);
    CHECK(json["next_draw"]["bands"]["funk"]["high_80"] == prediction->next[Dimension::funk].high);
    CHECK(json["if_kept_up"]["body"]["value"] == prediction->settled[Dimension::body].value);
    CHECK(json["loss"]["acidity"] == prediction->loss[Dimension::acidity]);
    const auto fault = desk->vessel("Plovr").error();
    const auto told = Json::parse(toJson(fault))["fault"];
    CHECK(told["path"] == "/vessel");
    CHECK(told["cause"] == render(fault.cause));
    CHECK(told["remedy"] == "Did you mean \"Plover\"?");
    const auto report = Json::parse(toJson(*desk->check()));
    CHECK(report["sound"] == true);
    CHECK(report["rows_checked"].get<int>() > 100);
    CHECK(report["damages"].empty());
}

TEST_CASE_METHOD(Answers, "a book looked at on an earlier day knows nothing of what came later", "[desk][history]") {
    const auto whole = history();
    const auto last = desk->ledger("Plover")->lines.back().on;
    now = last - std::chrono::days{400};
    const auto early = desk->vessel("Plover");
    REQUIRE(early);
    CHECK(early->now.on == now);
    CHECK_FALSE(early->findings.empty()); // what is in the future is said
    for (const auto& generation : early->now.generations)
        CHECK(generation.on <= now);
    CHECK(desk->history("Plover")->rows.size() == whole.rows.size()); // nothing is lost
    CHECK(desk->brewPlan("Plover"));
    now = day(1990, 1, 1); // before anything
    REQUIRE(desk->vessel("Plover"));
    CHECK(desk->vessel("Plover")->now.volume.l == 0);
    CHECK(desk->history("Plover"));
}
