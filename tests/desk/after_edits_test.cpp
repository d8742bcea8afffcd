// SPDX-License-Identifier: GPL-3.0-or-later
// What the desk says right after an edit is what it says after the book was opened anew.
#include "desk/support.h"
#include "facts/codec.h"
#include "facts/kept_words.h"
#include "facts/sample.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::testing;

namespace {

/// Three casks that feed each other, and a book that can be opened a second time.
struct Transfers : DeskFixture {
    Transfers() {
        for (const char* name : {"Avocet", "Brent", "Curlew"})
            record(R"([{"kind": "vessel", "name": ")" + std::string(name) + R"(", "capacity_l": 225},
                       {"kind": "opening", "vessel": ")" +
                   name + R"(", "on": "2025-06-01", "volume_l": 180}])");
        record(R"({"kind": "top_up", "vessel": "Avocet", "on": "2025-09-01", "volume_l": 12, "from": "Brent"})");
    }
    [[nodiscard]] double level(const VesselName& name) const { return desk->vessel(name)->now.volume.l; }
    [[nodiscard]] std::unique_ptr<Desk> again() {
        return *Desk::open(scratch / "test.cellar", [this] { return now; });
    }
    void sameAsOpenedAnew() {
        const auto fresh = again();
        for (const char* name : {"Avocet", "Brent", "Curlew"}) {
            INFO(name);
            CHECK(level(name) == fresh->vessel(name)->now.volume.l);
            CHECK(desk->ledger(name)->lines.size() == fresh->ledger(name)->lines.size());
        }
    }
    [[nodiscard]] LedgerLine topUp() const {
        const auto ledger = *desk->ledger("Avocet");
        return *std::find_if(ledger.lines.begin(), ledger.lines.end(),
                             [](const LedgerLine& line) { return line.kind == EntryKind::topUp; });
    }
    TopUpFact topUpFact() { return std::get<TopUpFact>(*desk->fact("top_up", topUp().id)); }
};

std::size_t rowsOf(const std::filesystem::path& file, const std::string& table) {
    auto book = *book::Book::open(file, cellarSchema(), book::OpenMode::readOnly);
    return book->rows(table)->size();
}

} // namespace

TEST_CASE_METHOD(Transfers, "a transfer amended to another source leaves the first and takes from the second",
                 "[desk][transfer]") {
    const double brent = level("Brent"), curlew = level("Curlew");
    TopUpFact other = topUpFact();
    other.from = "Curlew";
    REQUIRE(desk->amend("top_up", topUp().id, other));
    CHECK(level("Brent") > brent + 11);
    CHECK(level("Curlew") < curlew - 11);
    sameAsOpenedAnew();
    REQUIRE(desk->undo());
    CHECK(level("Brent") == brent);
    CHECK(level("Curlew") == curlew);
    sameAsOpenedAnew();
    REQUIRE(desk->redo());
    sameAsOpenedAnew();
}

TEST_CASE_METHOD(Transfers, "a transfer moved to another vessel, changed in size or removed balances at once",
                 "[desk][transfer]") {
    TopUpFact larger = topUpFact();
    larger.volume = Litres{20};
    REQUIRE(desk->amend("top_up", topUp().id, larger));
    sameAsOpenedAnew();
    TopUpFact outside = topUpFact();
    outside.from.clear();
    const auto id = topUp().id;
    REQUIRE(desk->amend("top_up", id, outside));
    CHECK(desk->ledger("Brent")->lines.size() == 1);
    sameAsOpenedAnew();
    outside.from = "Curlew";
    REQUIRE(desk->amend("top_up", id, outside));
    CHECK(desk->ledger("Curlew")->lines.size() == 2);
    REQUIRE(desk->remove("top_up", id));
    CHECK(desk->ledger("Curlew")->lines.size() == 1);
    sameAsOpenedAnew();
    REQUIRE(desk->undo());
    CHECK(desk->ledger("Curlew")->lines.size() == 2);
    sameAsOpenedAnew();
}

TEST_CASE_METHOD(Transfers, "a brew renamed keeps its place in every vessel it went into", "[desk][brew]") {
    record(R"([{"kind": "brew", "name": "Brew 1", "vessel": "Avocet", "on": "2025-10-01", "original_gravity_p": 14,
                "bitterness_ibu": 25, "grist": [{"grain": "pilsner", "share": 1}],
                "mash": [{"temperature_c": 68, "minutes": 60}], "yeast": "ale_clean"},
               {"kind": "draw_off", "vessel": "Brent", "on": "2025-10-20", "volume_l": 60},
               {"kind": "refill", "vessel": "Brent", "on": "2025-10-20", "volume_l": 60, "brew": "Brew 1"}])");
    const auto before = desk->estimates("Brent")->model;
    const auto stored = desk->brewsFor("Avocet").front();
    BrewFact renamed = stored.fact;
    renamed.name = "Amber";
    REQUIRE(desk->amend("brew", stored.id, renamed));
    for (Dimension d : allDimensions) {
        CHECK(desk->estimates("Brent")->model[d].mean == before[d].mean);
        CHECK(again()->estimates("Brent")->model[d].mean == before[d].mean);
    }
    const auto lines = desk->ledger("Brent")->lines;
    CHECK(std::any_of(lines.begin(), lines.end(),
                      [](const LedgerLine& line) { return render(line.text).find("Amber") != std::string::npos; }));
}

TEST_CASE_METHOD(DeskFixture, "ingredients of a recipe are kept in the book however it comes in", "[desk][pantry]") {
    addPlover();
    const auto file = scratch / "test.cellar";
    record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-03-02", "original_gravity_p": 12,
               "bitterness_ibu": 10, "grist": [{"grain": "pilsner", "share": 1}],
               "mash": [{"temperature_c": 66, "minutes": 60}], "yeast": "ale_clean"})");
    CHECK(rowsOf(file, "grain") == 1);
    Setting setting = *desk->setting("Plover");
    setting.recipe.grist = {{"pilsner", Share{.8}, false}, {"rye_malt", Share{.2}, false}};
    REQUIRE(desk->revise("Plover", setting)); // the second recipe of the day amends the first
    CHECK(rowsOf(file, "grain") == 2);
    setting.recipe.grist = {{"pilsner", Share{.8}, false}, {"wheat_malt", Share{.2}, false}};
    setting.draw = Litres{70}; // a promise of its own
    REQUIRE(desk->revise("Plover", setting));
    CHECK(rowsOf(file, "grain") == 3);
    REQUIRE(desk->undo());
    CHECK(rowsOf(file, "grain") == 2);
    REQUIRE(desk->revise("Plover", setting)); // and again after it was taken back
    CHECK(rowsOf(file, "grain") == 3);
}

TEST_CASE_METHOD(DeskFixture, "what is in force today is set once, whatever comes before it", "[desk]") {
    addPlover();
    TargetFact target{"Plover", now, {}};
    target.target.windows[Dimension::acidity].wanted = 5;
    REQUIRE(desk->setToday(target));
    const auto id = (*desk->target("Plover"))->id;
    target.target.windows[Dimension::acidity].wanted = 6;
    REQUIRE(desk->setToday(target));
    CHECK((*desk->target("Plover"))->id == id);
    CHECK((*desk->target("Plover"))->fact.target.windows[Dimension::acidity].wanted == 6);
    now += std::chrono::days{1};
    target.on = now;
    REQUIRE(desk->setToday(target));
    CHECK((*desk->target("Plover"))->id != id);

    EquipmentFact kit = desk->kit();
    kit.on = now;
    kit.equipment.name = "small kit";
    REQUIRE(desk->setToday(kit));
    kit.equipment.boilOff = LitresPerHour{7};
    REQUIRE(desk->setToday(kit));
    CHECK(rowsOf(scratch / "test.cellar", "equipment") == 1);
    kit.equipment.name = "large kit";
    REQUIRE(desk->setToday(kit));
    CHECK(rowsOf(scratch / "test.cellar", "equipment") == 2);
    const auto refused = desk->setToday(TargetFact{"Nobody", now, {}});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().path == "/vessel");
}

TEST_CASE_METHOD(DeskFixture, "a promise is not made from what the book no longer says", "[desk][choose]") {
    now = day(2026, 6, 1);
    REQUIRE(desk->record(*sampleCellar(now)));
    const auto job = desk->adviceJob({"Plover", {}, {}, false});
    REQUIRE(job);
    const auto advice = advise(job->input);
    REQUIRE(advice);
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2026-05-31", "ta_g_l": 9})");
    const auto stale = desk->choose(*job, *advice, 0);
    REQUIRE_FALSE(stale);
    CHECK(stale.error().kind == FaultKind::notPossible);
    CHECK(stale.error().cause.key == "desk.stale_advice");
    const auto trial = TryBoard(job->input).trial(job->input.base, TrialDepth::next);
    REQUIRE(trial);
    CHECK_FALSE(desk->adopt(*job, trial->setting));

    const auto fresh = desk->adviceJob({"Plover", {}, {}, false});
    {
        auto other = *Desk::open(scratch / "test.cellar", [this] { return now; });
        REQUIRE(other->record(Fact{DipFact{"Knot", now, Litres{50}, ""}}));
    }
    CHECK_FALSE(desk->choose(*fresh, *advise(fresh->input), 0)); // another program's edit counts as well
    const auto now_ = desk->adviceJob({"Plover", {}, {}, false});
    CHECK(desk->choose(*now_, *advise(now_->input), 0));
}

TEST_CASE_METHOD(DeskFixture, "edits and promises are named in the units of who makes them", "[desk][units]") {
    addPlover();
    DisplayUnits us;
    us.volume = DisplayUnits::Volume::usGallon;
    us.temperature = DisplayUnits::Temperature::fahrenheit;
    desk->speakIn(us);
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-02-20", "volume_l": 60})");
    CHECK(desk->undoText().find("15.9") != std::string::npos);
    Setting setting = *desk->setting("Plover");
    setting.recipe.mash.front().temperature = Celsius{63};
    setting.draw = Litres{75};
    REQUIRE(desk->revise("Plover", setting));
    const auto moves = desk->lastChoice("Plover")->forecast->moves;
    REQUIRE_FALSE(moves.empty());
    std::string all;
    for (const auto& move : moves)
        all += facts::toldWords(move, us) + "\n";
    INFO(all);
    CHECK(all.find("\u00b0F") != std::string::npos);
    CHECK(all.find("\u00b0C") == std::string::npos);
    CHECK(all.find("gal") != std::string::npos);
}

TEST_CASE_METHOD(Transfers, "vessels are listed as the cellar lists them, the retired last", "[desk]") {
    record(R"({"kind": "retire", "vessel": "Avocet", "on": "2026-02-01"})");
    const auto cellar = *desk->cellar();
    const auto vessels = *desk->vessels();
    REQUIRE(cellar.size() == vessels.size());
    for (std::size_t i = 0; i < cellar.size(); ++i)
        CHECK(cellar[i].name == vessels[i].name);
    CHECK(vessels.back().name == "Avocet");
}
