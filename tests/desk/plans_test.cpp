// SPDX-License-Identifier: GPL-3.0-or-later
// The plan for the coming refill: chosen, adopted, revised, held by locks and by what is not at hand; and what a brew
// already made leaves open.
#include "desk/stock.h"
#include "desk/support.h"
#include "quantity/density.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::sheet;
using namespace staveline::tasting;
using namespace staveline::testing;

namespace {

struct PlanFixture : DeskFixture {
    PlanFixture() { addPlover(); }

    [[nodiscard]] AdviceJob job(const AdviceRequest& request = {"Plover", {}, {}, false}) const {
        auto made = desk->adviceJob(request);
        REQUIRE(made);
        return *made;
    }
    void choose(int number) {
        const auto plan = job();
        const auto advice = advise(plan.input);
        REQUIRE(advice);
        REQUIRE(desk->choose(plan, *advice, number));
    }
    BrewFact brewFor(const std::string& name, Day on) {
        BrewFact brew;
        brew.name = name;
        brew.vessel = "Plover";
        brew.on = on;
        brew.recipe = desk->setting("Plover")->recipe;
        brew.intoFermenter = Litres{95};
        return brew;
    }
    void brewIt() { REQUIRE(desk->record(brewFor("Brew 1", now))); }
    void taste(double acidity) {
        SittingFact fact;
        fact.vessel = "Plover";
        fact.sitting.on = now;
        for (const char* code : {"TA1", "TA2", "TA3", "TA4", "AR1", "AR2", "MF1", "MF3"})
            if (builtInSheet().find(code))
                fact.sitting.scores.push_back({"Rook", code, acidity, acidity});
        REQUIRE(desk->record(Fact{fact}));
    }
};

bool mentions(const std::vector<Message>& messages, std::string_view key) {
    return std::any_of(messages.begin(), messages.end(), [&](const Message& m) { return m.key == key; });
}

} // namespace

// --- choosing

TEST_CASE_METHOD(PlanFixture, "only a proposal that was made can be chosen", "[desk][choose][bad]") {
    taste(8);
    const auto plan = job();
    const auto advice = advise(plan.input);
    REQUIRE(advice);
    const int count = static_cast<int>(advice->proposals.size());
    REQUIRE(count > 0);
    for (int number : {count + 1, 99, -1, -7}) {
        const auto chosen = desk->choose(plan, *advice, number);
        REQUIRE_FALSE(chosen);
        CHECK(chosen.error().path == "/proposal");
        CHECK(render(chosen.error().cause) ==
              "There is no proposal " + std::to_string(number) + "; there are " + std::to_string(count) + ".");
    }
    CHECK_FALSE(desk->lastChoice("Plover"));
    for (int number = count + 1; number <= 3; ++number)
        CHECK(refused(R"({"kind": "choice", "vessel": "Plover", "on": "2026-03-02", "proposal": )" +
                      std::to_string(number) + "}")
                  .path == "/proposal");
}

TEST_CASE_METHOD(PlanFixture, "a choice by script promises the same as a choice in the window", "[desk][choose]") {
    taste(8);
    const auto plan = job();
    const auto advice = advise(plan.input);
    REQUIRE(advice);
    REQUIRE_FALSE(advice->proposals.empty());
    const auto chosen = desk->choose(plan, *advice, 1);
    REQUIRE(chosen);
    REQUIRE(desk->undo());
    record(R"({"kind": "choice", "vessel": "Plover", "on": "2026-03-02", "proposal": 1})");
    const auto scripted = desk->lastChoice("Plover");
    REQUIRE(scripted);
    CHECK(*scripted == chosen->choice);
    CHECK(scripted->forecast->moves.size() == advice->proposals[0].moves.size());
    CHECK_FALSE(scripted->forecast->fingerprint.empty());
    CHECK(scripted->forecast->thisDraw < scripted->forecast->nextDraw);
}

TEST_CASE_METHOD(PlanFixture, "a promise is not changed by what is learned later", "[desk][choose]") {
    choose(0);
    const auto promised = *desk->lastChoice("Plover");
    taste(9);
    record(R"([{"kind": "target", "vessel": "Plover", "on": "2026-03-02", "acidity": 3},
               {"kind": "reading", "vessel": "Plover", "on": "2026-03-02", "ta_g_l": 9.5}])");
    CHECK(*desk->lastChoice("Plover") == promised);
    CHECK(desk->history("Plover")->promises.size() == 1);
    CHECK(desk->history("Plover")->promises[0].told[Dimension::acidity].mean ==
          promised.forecast->mean[Dimension::acidity]);
}

TEST_CASE_METHOD(PlanFixture, "after the refill the old choice no longer is the plan's promise", "[desk][choose]") {
    choose(0);
    brewIt();
    now = day(2026, 3, 20);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-20", "volume_l": 75},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-20", "volume_l": 80, "brew": "Brew 1"}])");
    const auto sheet = desk->brewSheet("Plover");
    REQUIRE(sheet);
    CHECK(writeText(*sheet).find("Promised on") == std::string::npos);
    now = day(2026, 9, 1);
    Setting changed = *desk->setting("Plover");
    changed.recipe.bitterness = Ibu{12};
    REQUIRE(desk->revise("Plover", changed));
    CHECK(desk->planned("Plover")->setting.recipe.bitterness.ibu == 12);
}

// --- what a brew locks, and what it leaves open

TEST_CASE_METHOD(PlanFixture, "once brewed, the recipe of this refill is closed to every way in",
                 "[desk][choose][bad]") {
    const Setting before = *desk->setting("Plover");
    brewIt();
    Setting changed = before;
    changed.recipe.bitterness = Ibu{14};
    const auto revised = desk->revise("Plover", changed);
    REQUIRE_FALSE(revised);
    CHECK(revised.error().kind == FaultKind::notPossible);
    CHECK(render(revised.error().cause) == "Brew 1 is made for this refill: its recipe can no longer be changed.");
    changed.draw = Litres{90};
    CHECK(desk->revise("Plover", changed).error().cause.key == "desk.brewed_already");
    const auto plan = job();
    CHECK(desk->choose(plan, *advise(plan.input), 0).error().cause.key == "desk.brewed_already");
    TryBoard board(plan.input);
    const auto trial = board.trial({{"bitterness", 12.0}}, TrialDepth::central);
    REQUIRE(trial);
    CHECK(desk->adopt(plan, trial->setting).error().cause.key == "desk.brewed_already");
    CHECK(refused(R"({"kind": "choice", "vessel": "Plover", "on": "2026-03-02", "proposal": 0})").kind ==
          FaultKind::notPossible);
    CHECK(*desk->setting("Plover") == before);
}

TEST_CASE_METHOD(PlanFixture, "a brew waiting does not keep the culture from being described", "[desk][vessel]") {
    brewIt();
    record(R"({"kind": "culture", "vessel": "Plover", "on": "2026-03-02", "brettanomyces": "none",
               "killer_sensitive": false})");
    REQUIRE(desk->culture("Plover"));
    CHECK(desk->culture("Plover")->brettanomyces == Brettanomyces::none);
    CHECK_FALSE(job().input.brettEstablished);
    CHECK_FALSE(job().input.houseYeastKillerSensitive);
}

TEST_CASE_METHOD(PlanFixture, "a brew for another vessel closes nothing here", "[desk][choose]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 50},
               {"kind": "opening", "vessel": "Knot", "on": "2025-06-01", "volume_l": 45, "age_years": 1}])");
    BrewFact brew = brewFor("Brew 1", now);
    brew.vessel = "Knot";
    REQUIRE(desk->record(brew));
    CHECK_FALSE(desk->planned("Plover")->brewed);
    CHECK(desk->planned("Knot")->brewed);
    choose(0);
    CHECK(desk->brewsFor("Plover").empty());
    CHECK(desk->brewsFor("Knot").size() == 1);
}

// --- locks and what is not at hand

TEST_CASE_METHOD(PlanFixture, "every proposal keeps to the locks and uses nothing that is missing", "[desk][lock]") {
    taste(8.5);
    record(R"([{"kind": "lock", "vessel": "Plover", "on": "2026-03-01", "lever": "bitterness", "value": 11},
               {"kind": "lock", "vessel": "Plover", "on": "2026-03-01", "lever": "interval", "value": 240},
               {"kind": "availability", "on": "2026-03-01", "item": "ale_low", "available": false},
               {"kind": "availability", "on": "2026-03-01", "item": "flaked_oats", "available": false}])");
    const auto plan = job();
    const auto advice = advise(plan.input);
    REQUIRE(advice);
    REQUIRE_FALSE(advice->proposals.empty());
    for (const auto& proposal : advice->proposals) {
        CHECK(proposal.setting.recipe.bitterness.ibu == Approx(11));
        CHECK(proposal.setting.interval.d == Approx(240));
        CHECK(proposal.setting.recipe.yeast != "ale_low");
        for (const auto& part : proposal.setting.recipe.grist)
            CHECK(part.grain != "flaked_oats");
    }
    CHECK(advice->leaveAlone.setting.recipe.bitterness.ibu == Approx(11));
    // what is asked for beside them joins them, and may override a recorded lock
    const auto more = job({"Plover", {{"bitterness", 9.0}, {"draw", 70.0}}, {"saison"}, false});
    CHECK(more.input.locks.size() == 3);
    CHECK(more.input.unavailable == std::set<std::string>{"ale_low", "flaked_oats", "saison"});
    for (const auto& lock : more.input.locks)
        if (lock.lever == "bitterness")
            CHECK(std::get<double>(lock.value) == 9);
}

TEST_CASE_METHOD(PlanFixture, "what the recipe needs and is not at hand is replaced, and the swap is said",
                 "[desk][lock]") {
    record(R"([{"kind": "availability", "on": "2026-03-01", "item": "ale_clean", "available": false},
               {"kind": "availability", "on": "2026-03-01", "item": "wheat_malt", "available": false}])");
    const auto advice = advise(job().input);
    REQUIRE(advice);
    const auto& alone = advice->leaveAlone;
    CHECK(alone.setting.recipe.yeast != "ale_clean");
    for (const auto& part : alone.setting.recipe.grist)
        CHECK(part.grain != "wheat_malt");
    CHECK(std::any_of(alone.moves.begin(), alone.moves.end(), [](const Move& move) { return move.forced; }));
}

TEST_CASE_METHOD(PlanFixture, "what is ready by brew day is at hand", "[desk][lock]") {
    const Day brewDay = job().dates.brew;
    const auto missing = [&](Day ready) {
        REQUIRE(desk->record(AvailabilityFact{day(2026, 3, 1), "saison", false, ready}));
        return job().input.unavailable.contains("saison");
    };
    CHECK_FALSE(missing(brewDay));
    CHECK(missing(brewDay + std::chrono::days{1}));
    CHECK(desk->stock().size() == 1); // the latest word on each
    REQUIRE(desk->record(AvailabilityFact{now, "saison", true, {}}));
    CHECK_FALSE(job().input.unavailable.contains("saison"));
}

TEST_CASE_METHOD(PlanFixture, "a lock is in force from its day until it is taken off", "[desk][lock]") {
    record(R"([{"kind": "lock", "vessel": "Plover", "on": "2026-02-01", "lever": "yeast", "choice": "saison"},
               {"kind": "lock", "vessel": "Plover", "on": "2026-03-20", "lever": "draw", "value": 80}])");
    CHECK(desk->locks("Plover")->size() == 1);
    CHECK(job().input.locks == std::vector<LeverLock>{{"yeast", std::string("saison")}});
    CHECK(advise(job().input)->leaveAlone.setting.recipe.yeast == "saison");
    now = day(2026, 3, 21);
    CHECK(desk->locks("Plover")->size() == 2);
    record(R"({"kind": "lock", "vessel": "Plover", "on": "2026-03-21", "lever": "yeast", "locked": false})");
    CHECK(desk->locks("Plover")->size() == 1);
    CHECK(job({"Plover", {}, {}, false, true}).input.locks.empty());
}

TEST_CASE_METHOD(PlanFixture, "a lock outside its bounds asked for in passing is refused by the adviser",
                 "[desk][lock]") {
    for (const LeverLock& lock : std::vector<LeverLock>{{"bitterness", 900.0}, {"moon", 1.0}, {"yeast", 3.0}}) {
        const auto advice = desk->advise({"Plover", {lock}, {}, false});
        INFO(lock.lever);
        REQUIRE_FALSE(advice);
        CHECK(advice.error().path.find(lock.lever) != std::string::npos);
        CHECK(render(advice.error().remedy).size() > 4);
    }
}

// --- settings of one's own

TEST_CASE_METHOD(PlanFixture, "a plan file changes what it names and nothing else", "[desk][json]") {
    const Setting base = *desk->setting("Plover");
    const auto plan =
        parseSetting(R"({"bitterness_ibu": 13, "draw_l": 80, "interval_d": 200, "temperature_c": 14})", base);
    REQUIRE(plan);
    Setting expected = base;
    expected.recipe.bitterness = Ibu{13};
    expected.draw = Litres{80};
    expected.interval = Days{200};
    expected.temperature = Celsius{14};
    CHECK(*plan == expected);
    CHECK(*parseSetting("{}", base) == base);
    CHECK(parseSetting(R"({"original_gravity_sg": 1.048})", base)->recipe.originalGravity.p ==
          Approx(toPlato(SpecificGravity{1.048}).p));
    for (const auto& [text, path] :
         std::map<std::string, std::string>{{"[]", ""},
                                            {"{", ""},
                                            {R"({"draw_l": 0})", "/draw_l"},
                                            {R"({"draw": 80})", "/draw"},
                                            {R"({"temperature_c": 60})", "/temperature_c"},
                                            {R"({"original_gravity_sg": 1048})", "/original_gravity_sg"},
                                            {R"({"mash": [{"temperature_c": 63}]})", "/mash/0/minutes"}}) {
        INFO(text);
        const auto bad = parseSetting(text, base);
        REQUIRE_FALSE(bad);
        CHECK(bad.error().path == path);
    }
}

TEST_CASE_METHOD(PlanFixture, "predicting refuses a draw larger than the vessel holds", "[desk][bad]") {
    Setting setting = *desk->setting("Plover");
    setting.draw = Litres{600};
    const auto prediction = desk->predict("Plover", setting);
    REQUIRE_FALSE(prediction);
    CHECK(prediction.error().path == "/draw_l");
    setting.draw = Litres{70};
    CHECK(desk->predict("Plover", setting));
    setting.recipe.grist.clear();
    CHECK(desk->predict("Plover", setting).error().path == "/grist");
    CHECK(desk->predict("Nobody", setting).error().path == "/vessel");
}

TEST_CASE_METHOD(PlanFixture, "the sheet is of the plan: its draw, its recipe, its promise", "[desk][sheet]") {
    const auto plan = job();
    TryBoard board(plan.input);
    const auto trial = board.trial({{"draw", 90.0}, {"bitterness", 12.0}}, TrialDepth::central);
    REQUIRE(trial);
    REQUIRE(desk->adopt(plan, trial->setting));
    const auto text = writeText(*desk->brewSheet("Plover"));
    CHECK(text.find("Promised on 2 Mar 2026") != std::string::npos);
    CHECK(text.find("12 IBU") != std::string::npos);
    CHECK(text.find("90.0 L") != std::string::npos);
    CHECK(text.find(desk->lastChoice("Plover")->forecast->fingerprint) != std::string::npos);
    // the promise keeps the words it was made in; without one every number follows the units
    REQUIRE(desk->undo());
    DisplayUnits american;
    american.volume = DisplayUnits::Volume::usGallon;
    american.temperature = DisplayUnits::Temperature::fahrenheit;
    const auto gallons = writeText(*desk->brewSheet("Plover", american));
    CHECK(gallons.find("US gal") != std::string::npos);
    CHECK(gallons.find(" L ") == std::string::npos);
    CHECK(gallons.find("°C") == std::string::npos);
}

TEST_CASE_METHOD(PlanFixture, "the next brew is numbered after the highest there is", "[desk][brew]") {
    CHECK(desk->nextBrewName() == "Brew 1");
    for (const char* name : {"Brew 9", "Old ale 12", "Trial", "007"})
        REQUIRE(desk->record(brewFor(name, now)));
    CHECK(desk->nextBrewName() == "Brew 13");
}

TEST_CASE_METHOD(PlanFixture, "a meaning names what differs, and only that", "[desk][brew]") {
    BrewFact brew = brewFor("Brew 1", now);
    brew.originalGravity = SpecificGravity{1.060};
    const auto stronger = desk->meaning(brew);
    REQUIRE(stronger);
    CHECK(mentions(stronger->words, "desk.brewed.original"));
    CHECK_FALSE(mentions(stronger->words, "desk.brewed.final"));
    CHECK_FALSE(mentions(stronger->words, "desk.brewed.as_planned"));
    brew.vessel = "Nobody";
    CHECK_FALSE(desk->meaning(brew));
}
