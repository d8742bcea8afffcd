// SPDX-License-Identifier: GPL-3.0-or-later
// Where a vessel stands between two refills: drawn or not, brewed or not, measured or not, and what follows from it.
#include "advice/forecaster.h"
#include "desk/support.h"
#include "quantity/density.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::vessel;
using namespace staveline::testing;

namespace {

/// Steel, so that nothing evaporates: 216 L since its last refill, due to be drawn.
struct SteelFixture : DeskFixture {
    SteelFixture() {
        record(R"([{"kind": "vessel", "name": "Plover", "capacity_l": 225, "material": "steel"},
                   {"kind": "opening", "vessel": "Plover", "on": "2024-10-01", "volume_l": 216, "ta_g_l": 6.2},
                   {"kind": "draw_off", "vessel": "Plover", "on": "2025-06-01", "volume_l": 60},
                   {"kind": "refill", "vessel": "Plover", "on": "2025-06-01", "volume_l": 60}])");
    }
    void draw(double litres) { REQUIRE(desk->record(DrawOffFact{"Plover", now, Litres{litres}, "", {}, ""})); }
    void brew(Day on, Litres intoFermenter = {110}) {
        BrewFact brew;
        brew.name = desk->nextBrewName();
        brew.vessel = "Plover";
        brew.on = on;
        brew.recipe = desk->setting("Plover")->recipe;
        brew.intoFermenter = intoFermenter;
        REQUIRE(desk->record(brew));
    }
    void tasted(Day on) {
        SittingFact fact;
        fact.vessel = "Plover";
        fact.sitting.on = on;
        fact.sitting.scores = {{"Rook", "TA1", 6.0, 6.5}};
        REQUIRE(desk->record(fact));
    }
    AdviceJob job() { return *desk->adviceJob({"Plover", {}, {}, false}); }
};

const Message* found(const std::vector<Message>& messages, std::string_view key) {
    const auto at = std::find_if(messages.begin(), messages.end(), [&](const Message& m) { return m.key == key; });
    return at == messages.end() ? nullptr : &*at;
}

} // namespace

// --- between draw and refill

TEST_CASE_METHOD(SteelFixture, "once drawn, the refill brings what was drawn, and no more is taken off",
                 "[desk][cycle]") {
    brew(now);
    draw(79); // 137 L stay: 79 L of 216 L are new
    const AdviceJob asked = job();
    const AdviceInput& in = asked.input;
    CHECK(in.base.draw.l == 79);
    CHECK(refillOf(in, in.base).l == Approx(79));
    CHECK(shareOf(in, in.base).of1 == Approx(79.0 / 216));
    CHECK(desk->brewPlan("Plover")->intoVessel.l == Approx(79));
    const auto view = desk->drawDay("Plover");
    REQUIRE(view);
    CHECK(view->drawn);
    CHECK(view->held.l == Approx(137));
    CHECK(view->plannedDraw.l == 79);
    CHECK(view->refill.l == Approx(79));
    CHECK_FALSE(found(view->findings, "desk.draw_day.short"));
    CHECK_FALSE(found(view->findings, "desk.draw_day.not_tasted")); // too late to taste before the draw
    CHECK(view->planB.empty());                                     // and to draw less
}

TEST_CASE_METHOD(SteelFixture, "the prediction is the same on both sides of the draw", "[desk][cycle]") {
    brew(now);
    Setting setting = *desk->setting("Plover");
    setting.draw = Litres{79};
    const auto before = desk->predict("Plover", setting);
    REQUIRE(before);
    draw(79);
    const auto after = desk->predict("Plover", *desk->setting("Plover"));
    REQUIRE(after);
    for (Dimension d : allDimensions)
        CHECK(after->next[d].value == Approx(before->next[d].value).margin(1e-9));
}

TEST_CASE_METHOD(SteelFixture, "after a draw of more than half everything can still be asked", "[desk][cycle]") {
    draw(120); // 96 L stay
    const AdviceJob asked = job();
    CHECK(shareOf(asked.input, asked.input.base).of1 == Approx(120.0 / 216));
    CHECK(TryBoard(asked.input).trial(std::vector<TriedValue>{}, TrialDepth::central));
    CHECK(advise(asked.input));
    CHECK(desk->predict("Plover", asked.input.base));
    const auto view = desk->drawDay("Plover");
    REQUIRE(view);
    CHECK_FALSE(found(view->findings, "desk.draw_day.more_than_held"));
    for (Dimension d : allDimensions)
        CHECK(view->expected[d].has_value());
}

TEST_CASE_METHOD(SteelFixture, "what is drawn cannot be drawn otherwise", "[desk][cycle]") {
    record(R"({"kind": "lock", "vessel": "Plover", "on": "2026-01-01", "lever": "draw", "value": 90})");
    draw(79);
    const AdviceJob asked = job();
    CHECK(asked.input.locks.empty());
    const auto board = boardOf(asked.input);
    const auto line = std::find_if(board.begin(), board.end(), [](const auto& l) { return l.row.id == "draw"; });
    REQUIRE(line != board.end());
    CHECK_FALSE(line->applies);
    CHECK(std::get<double>(line->now) == 79);
    const auto advice = advise(asked.input);
    REQUIRE(advice);
    for (const auto& proposal : advice->proposals)
        CHECK(proposal.setting.draw.l == 79);
    Setting other = asked.input.base;
    other.draw = Litres{90};
    CHECK(desk->predict("Plover", other).error().path == "/draw_l");
    CHECK(TryBoard(asked.input).trial({{"draw", 90.0}}, TrialDepth::central).error().path == "/draw");
    CHECK(desk->advise({"Plover", {{"draw", 90.0}}, {}, false}).error().path == "/locks/draw");
}

TEST_CASE_METHOD(SteelFixture, "drawn, and the brew is short: so much is missing later", "[desk][cycle]") {
    brew(now, Litres{70});
    draw(79);
    const auto view = desk->drawDay("Plover");
    REQUIRE(view);
    CHECK_FALSE(found(view->findings, "desk.draw_day.short"));
    const Message* words = found(view->findings, "desk.draw_day.short.drawn");
    REQUIRE(words);
    CHECK(std::get<Amount>(words->arguments[2].value).value == Approx(79 - view->brewGives->l));
}

TEST_CASE_METHOD(SteelFixture, "drawn early, the refill goes in now, not when the draw would have been due",
                 "[desk][cycle]") {
    now = day(2025, 12, 1); // due on 27 January
    brew(day(2025, 11, 1));
    CHECK(desk->vessel("Plover")->dates.draw == day(2026, 1, 27));
    draw(79);
    CHECK(desk->vessel("Plover")->dates.draw == now);
    CHECK(desk->vessel("Plover")->dates.nextDraw == now + std::chrono::days{240});
    CHECK(job().input.toThisDraw.d == 0);
}

// --- what is kept from cycle to cycle

TEST_CASE_METHOD(SteelFixture, "a recipe edited later keeps the draw, interval and temperature that were chosen",
                 "[desk][cycle]") {
    const AdviceJob asked = job();
    Setting chosen = asked.input.base;
    chosen.draw = Litres{90};
    chosen.interval = Days{200};
    chosen.temperature = Celsius{13};
    const auto trial = TryBoard(asked.input).trial(chosen, TrialDepth::next);
    REQUIRE(trial);
    REQUIRE(desk->adopt(asked, trial->setting));
    now = day(2026, 3, 20);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-20", "volume_l": 90},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-20", "volume_l": 90}])");
    now = day(2026, 4, 1);
    Setting edited = *desk->setting("Plover");
    CHECK(edited.draw.l == 90);
    edited.recipe.bitterness = Ibu{14};
    REQUIRE(desk->revise("Plover", edited));
    CHECK(desk->planned("Plover")->from == PlannedRecipe::From::choice);
    CHECK(*desk->setting("Plover") == edited);
}

// --- brewed

TEST_CASE_METHOD(SteelFixture, "a brew made early in the cycle waits for the draw like any other", "[desk][cycle]") {
    brew(day(2025, 7, 1));
    tasted(now);
    CHECK(desk->planned("Plover")->brewed.has_value());
    CHECK(desk->vessel("Plover")->due.kind == DueKind::draw);
    CHECK(desk->vessel("Plover")->dates.brew == day(2025, 7, 1));
}

TEST_CASE_METHOD(SteelFixture, "a brew from before the opening does not wait", "[desk][cycle]") {
    record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 100})");
    record(R"({"kind": "opening", "vessel": "Knot", "on": "2025-06-01", "volume_l": 90})");
    BrewFact old;
    old.name = "Brew 1";
    old.vessel = "Knot";
    old.on = day(2025, 1, 1);
    old.recipe = desk->setting("Knot")->recipe;
    REQUIRE(desk->record(old));
    CHECK_FALSE(desk->planned("Knot")->brewed);
}

TEST_CASE_METHOD(SteelFixture, "a brew poured into another vessel does not wait any more", "[desk][cycle]") {
    brew(day(2026, 2, 10));
    tasted(now);
    CHECK(desk->vessel("Plover")->due.kind == DueKind::draw);
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 110},
               {"kind": "refill", "vessel": "Knot", "on": "2026-03-01", "volume_l": 100, "brew": "Brew 1"}])");
    CHECK_FALSE(desk->planned("Plover")->brewed);
    CHECK(desk->vessel("Plover")->due.kind == DueKind::brew);
    CHECK_FALSE(job().brewed);
    REQUIRE(desk->undo());
    CHECK(desk->planned("Plover")->brewed->name == "Brew 1");
}

TEST_CASE_METHOD(SteelFixture, "a culture can be corrected and a base recipe noted while a brew waits",
                 "[desk][cycle]") {
    brew(day(2026, 2, 10));
    record(R"({"kind": "culture", "vessel": "Plover", "on": "2026-03-01", "brettanomyces": "young"})");
    record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-03-01", "bitterness_ibu": 9,
        "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    Setting edited = *desk->setting("Plover");
    edited.recipe.bitterness = Ibu{14};
    const auto revision = desk->revision();
    const auto refusedEdit = desk->revise("Plover", edited);
    REQUIRE_FALSE(refusedEdit);
    CHECK(refusedEdit.error().kind == FaultKind::notPossible);
    CHECK(refusedEdit.error().cause.key == "desk.brewed_already");
    CHECK(desk->revision() == revision);
}

TEST_CASE_METHOD(SteelFixture, "an earlier brew is judged by its own plan and tells where it went", "[desk][cycle]") {
    brew(day(2026, 2, 10));
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 79},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-01", "volume_l": 79, "brew": "Brew 1"}])");
    BrewFact old = desk->brewsFor("Plover").front().fact;
    Setting next = *desk->setting("Plover");
    next.recipe.originalGravity = Plato{14}; // the coming one is another beer
    REQUIRE(desk->revise("Plover", next));
    old.originalGravity = toGravity(old.recipe.originalGravity);
    auto meaning = desk->meaning(old);
    REQUIRE(meaning);
    CHECK_FALSE(meaning->coming);
    CHECK(meaning->words.front() ==
          say("desk.brewed.went_in").with("vessel", std::string("Plover")).with("on", day(2026, 3, 1)));
    CHECK(found(meaning->words, "desk.brewed.went_in"));
    CHECK_FALSE(found(meaning->words, "desk.brewed.original"));
    CHECK_FALSE(found(meaning->words, "desk.brewed.as_planned"));
    CHECK_FALSE(found(meaning->words, "desk.brewed.short"));
    old.originalGravity = toGravity(Plato{old.recipe.originalGravity.p + 1});
    meaning = desk->meaning(old);
    CHECK(found(meaning->words, "desk.brewed.original"));
}

// --- measured

TEST_CASE_METHOD(SteelFixture, "a titration counts on draw day, with a reading or with a sample", "[desk][cycle]") {
    CHECK(found(desk->drawDay("Plover")->findings, "desk.draw_day.titrate"));
    record(R"({"kind": "sample", "vessel": "Plover", "on": "2026-03-01", "volume_l": 0.3, "ta_g_l": 6.4})");
    CHECK_FALSE(found(desk->drawDay("Plover")->findings, "desk.draw_day.titrate"));
}

TEST_CASE_METHOD(SteelFixture, "a falling gravity says wait, in readings, in samples, and in one of each",
                 "[desk][cycle]") {
    const auto with = [&](const std::string& first, const std::string& second) {
        const auto one = [](const std::string& kind, const char* on, double sg) {
            return R"({"kind": ")" + kind + R"(", "vessel": "Plover", "on": ")" + on + R"(", "gravity_sg": )" +
                   std::to_string(sg) + "}";
        };
        record("[" + one(first, "2026-02-01", 1.010) + "," + one(second, "2026-03-01", 1.006) + "]");
        const auto verdicts = desk->estimates("Plover")->verdicts;
        REQUIRE(desk->undo());
        return std::count_if(verdicts.values.begin(), verdicts.values.end(),
                             [](const Verdict& v) { return v.kind == VerdictKind::waitUntil; });
    };
    tasted(now);
    const auto inReadings = with("reading", "reading");
    CHECK(inReadings > 0);
    CHECK(with("sample", "sample") == inReadings);
    CHECK(with("reading", "sample") == inReadings);
    CHECK(with("sample", "reading") == inReadings);
}

TEST_CASE_METHOD(SteelFixture, "what was tasted and titrated on the day of the refill was the beer before it",
                 "[desk][cycle]") {
    tasted(now);
    record(R"([{"kind": "reading", "vessel": "Plover", "on": "2026-03-02", "ta_g_l": 9},
               {"kind": "draw_off", "vessel": "Plover", "on": "2026-03-02", "volume_l": 150}])");
    CHECK(desk->estimates("Plover")->tastedOn == now);
    CHECK(desk->estimates("Plover")->ta);
    record(R"({"kind": "refill", "vessel": "Plover", "on": "2026-03-02", "volume_l": 150})");
    CHECK_FALSE(desk->estimates("Plover")->tastedOn);
    CHECK_FALSE(desk->estimates("Plover")->ta);
}

// --- plan B

TEST_CASE_METHOD(SteelFixture, "plan B says of each score which way a larger draw turns it", "[desk][cycle]") {
    const auto view = desk->drawDay("Plover");
    REQUIRE(view);
    const auto job = desk->adviceJob({"Plover", {}, {}, false, true});
    REQUIRE(job);
    Setting larger = job->inUse;
    larger.draw = job->inUse.draw * 1.2;
    TryBoard board(job->input);
    const auto planned = board.trial(job->inUse, TrialDepth::central), more = board.trial(larger, TrialDepth::central);
    int told = 0;
    for (Dimension d : allDimensions) {
        const double change = more->next[d].value - planned->next[d].value;
        const std::string stem = "desk.plan_b.larger." + std::string(name(d));
        CAPTURE(stem, change);
        CHECK((found(view->planB, stem + ".lowers") != nullptr) == (change <= -.05));
        CHECK((found(view->planB, stem + ".raises") != nullptr) == (change >= .05));
        told += std::abs(change) >= .05 ? 1 : 0;
    }
    CHECK(told > 0);
    // Fresh beer is less sour than what stays: who finds it too sour draws more, not less.
    for (const Message& line : view->planB)
        if (line.key == "desk.plan_b.larger.acidity.lowers")
            CHECK(render(line).find("draw more if the glass is too sour") != std::string::npos);
}
