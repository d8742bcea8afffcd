// SPDX-License-Identifier: GPL-3.0-or-later
// What the desk answers the pages: sittings as they grow, targets, drafts, revisions, brews, draw day, history.
#include "desk/stock.h"
#include "desk/support.h"
#include "facts/sample.h"
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

/// The sample cellar on its own day.
struct SampleFixture : DeskFixture {
    SampleFixture() {
        now = day(2026, 6, 1);
        const auto facts = sampleCellar(now);
        REQUIRE(facts);
        REQUIRE(desk->record(*facts));
    }
};

SittingFact sitting(const std::vector<Score>& scores) {
    SittingFact fact;
    fact.vessel = "Plover";
    fact.sitting.on = day(2026, 3, 1);
    fact.sitting.scores = scores;
    return fact;
}

bool has(const std::vector<Message>& messages, std::string_view key) {
    return std::any_of(messages.begin(), messages.end(), [&](const Message& m) { return m.key == key; });
}

} // namespace

// --- tasting

TEST_CASE_METHOD(DeskFixture, "half a sitting says what it has and what is missing", "[desk][taste]") {
    addPlover();
    const auto view = desk->taste(sitting({{"Rook", "TA1", 6.0, 6.5}, {"Rook", "TA2", 5.5, {}}}));
    REQUIRE(view);
    CHECK(view->scored == 2);
    CHECK(view->wanted == 12);
    CHECK(view->tasters == std::vector<std::string>{"Rook"});
    CHECK(view->says[Dimension::body].key == "desk.taste.body.missing");
    const auto missing = render(view->says[Dimension::body]);
    CHECK(missing.find(builtInSheet().find("MF1")->name) != std::string::npos);
    CHECK(missing.find("MF1") == std::string::npos); // names, not codes
}

TEST_CASE_METHOD(DeskFixture, "faults come with their usual action, wanted ones do not come first", "[desk][taste]") {
    addPlover();
    SittingFact ropy = sitting({});
    ropy.sitting.faults = {{"ropy", 3}};
    const auto before = desk->taste(ropy);
    REQUIRE(before);
    REQUIRE(before->faults.size() == 1);
    CHECK(before->faults[0].comesFirst);
    CHECK(before->faults[0].action.size() > 10);
    TargetFact target{"Plover", day(2026, 1, 1), {}};
    target.target.wantedTraits = {{"ropy", 3}};
    REQUIRE(desk->record(target));
    const auto after = desk->taste(ropy);
    REQUIRE(after);
    CHECK(after->faults[0].wanted);
    CHECK_FALSE(after->faults[0].comesFirst);
}

TEST_CASE_METHOD(DeskFixture, "scores typed one after another are named edits, and typing merges", "[desk][taste]") {
    addPlover();
    REQUIRE(desk->record(Fact{sitting({{"Rook", "TA1", 6.0, {}}})}, {"score for sour peak, Plover", "TA1"}));
    CHECK(desk->undoText() == "score for sour peak, Plover");
    const auto id = desk->sittings("Plover")->front().id;
    REQUIRE(desk->amend("sitting", id, sitting({{"Rook", "TA1", 6.5, {}}}), {"score for sour peak, Plover", "TA1"}));
    REQUIRE(desk->amend("sitting", id, sitting({{"Rook", "TA1", 6.5, {}}, {"Rook", "TA2", 5.0, {}}}),
                        {"score for sour length, Plover", "TA2"}));
    CHECK(desk->sittings("Plover")->front().fact.sitting.scores.size() == 2);
    REQUIRE(desk->undo());
    CHECK(desk->sittings("Plover")->front().fact.sitting.scores == std::vector<Score>{{"Rook", "TA1", 6.5, {}}});
    REQUIRE(desk->undo()); // 6 and 6.5 were one edit
    CHECK(desk->sittings("Plover")->empty());
    REQUIRE(desk->redo());
    CHECK(desk->sittings("Plover")->front().fact.sitting.scores[0].cold == 6.5);
}

TEST_CASE_METHOD(DeskFixture, "the blank sheet names the vessel and its cellar temperature", "[desk][taste]") {
    addPlover();
    const auto brief = writeText(desk->tastingPaper("Plover", true));
    const auto all = writeText(desk->tastingPaper("Plover", false));
    CHECK(brief.find("Plover") != std::string::npos);
    CHECK(all.size() > brief.size());
    CHECK(writeText(desk->tastingPaper("", true)).size() > 200); // for any vessel
}

// --- targets and history

TEST_CASE_METHOD(DeskFixture, "a vessel without a target says so", "[desk][target]") {
    addPlover();
    const auto none = desk->target("Plover");
    REQUIRE(none);
    CHECK_FALSE(none->has_value());
    REQUIRE(desk->record(TargetFact{"Plover", day(2026, 1, 1), {}}));
    TargetFact later{"Plover", day(2026, 2, 1), {}};
    later.target.setBy = "Rook";
    REQUIRE(desk->record(later));
    CHECK((*desk->target("Plover"))->fact.target.setBy == "Rook");
    CHECK_FALSE(desk->target("Nobody"));
}

TEST_CASE_METHOD(SampleFixture, "a target like an earlier draw takes its scores to the half point", "[desk][target]") {
    const auto draws = desk->pastDraws("Plover");
    REQUIRE(draws);
    REQUIRE(draws->size() > 2);
    CHECK(std::is_sorted(draws->begin(), draws->end(), [](const auto& a, const auto& b) { return a.on > b.on; }));
    const auto tasted = std::find_if(draws->begin(), draws->end(),
                                     [](const PastDraw& d) { return d.tasted[Dimension::acidity].has_value(); });
    REQUIRE(tasted != draws->end());
    const Target before = (*desk->target("Plover"))->fact.target;
    const Target like = likeDraw(before, *tasted);
    for (Dimension d : allDimensions) {
        if (!tasted->tasted[d])
            continue;
        CHECK(std::abs(like.windows[d].wanted - tasted->tasted[d]->mean) <= .25 + 1e-9);
        CHECK(like.windows[d].wanted * 2 == std::round(like.windows[d].wanted * 2));
        CHECK(like.windows[d].band == before.windows[d].band);
    }
    CHECK(like.bitternessCeiling == before.bitternessCeiling);
}

TEST_CASE("a promise is nearer than no change when it lies closer to what was tasted", "[desk][history]") {
    PromiseOutcome promise;
    promise.told[Dimension::funk] = {4.5, .4};
    CHECK_FALSE(promise.nearer(Dimension::funk)); // nothing tasted, nothing known before
    promise.tasted[Dimension::funk] = Estimate{4.8, .4};
    CHECK_FALSE(promise.nearer(Dimension::funk));
    promise.before[Dimension::funk] = Estimate{5.2, .4};
    CHECK(promise.nearer(Dimension::funk) == true); // .3 off against .4
    promise.before[Dimension::funk] = Estimate{5.0, .4};
    CHECK(promise.nearer(Dimension::funk) == false); // .2
    CHECK_FALSE(promise.nearer(Dimension::body));
}

TEST_CASE("a promise that moved is said only beyond what is asked for", "[desk][draw_day]") {
    Forecast told;
    told.mean[Dimension::acidity] = 5;
    told.mean[Dimension::body] = 4;
    PerDimension<std::optional<double>> now;
    now[Dimension::acidity] = 5.6;
    now[Dimension::body] = 4.2;
    const auto moved = movedPromises(told, now, {{.3, .3, .3}});
    REQUIRE(moved.size() == 1);
    CHECK(render(moved.front()) ==
          "Acidity was promised at 5.0 for the next draw; with today's numbers it comes to 5.6.");
}

TEST_CASE_METHOD(SampleFixture, "history holds scores with errors, promises and how they came out", "[desk][history]") {
    const auto history = desk->history("Plover");
    REQUIRE(history);
    CHECK(std::is_sorted(history->rows.begin(), history->rows.end(),
                         [](const auto& a, const auto& b) { return a.on < b.on; }));
    REQUIRE_FALSE(history->promises.empty());
    int judged = 0;
    for (const auto& promise : history->promises) {
        CHECK(promise.forDay > promise.made);
        for (Dimension d : allDimensions) {
            CHECK(promise.told[d].sd > 0);
            CHECK(promise.inside[d].has_value() == promise.tasted[d].has_value());
            judged += promise.inside[d].has_value();
        }
    }
    CHECK(judged > 0);
    CHECK_FALSE(history->record.empty());
    CHECK_FALSE(history->targets.empty());
}

TEST_CASE_METHOD(SampleFixture, "mean age has sawtooth: it rises a day a day and falls at a refill",
                 "[desk][history]") {
    const auto history = desk->history("Plover");
    REQUIRE(history);
    const auto& sawtooth = history->sawtooth;
    REQUIRE(sawtooth.size() > 6);
    int falls = 0;
    for (std::size_t i = 1; i < sawtooth.size(); ++i) {
        const double days = daysBetween(sawtooth[i - 1].on, sawtooth[i].on);
        REQUIRE(days >= 0);
        if (days > 0)
            CHECK(sawtooth[i].meanAge.d - sawtooth[i - 1].meanAge.d == Approx(days).margin(1e-6));
        falls += sawtooth[i].meanAge < sawtooth[i - 1].meanAge;
    }
    CHECK(falls >= 3);
    CHECK(sawtooth.back().on == now);
}

TEST_CASE_METHOD(DeskFixture, "an empty history is a history", "[desk][history]") {
    record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 50})");
    const auto history = desk->history("Knot");
    REQUIRE(history);
    CHECK(history->rows.empty());
    CHECK(history->sawtooth.empty());
    CHECK(history->record.empty());
    CHECK(desk->pastDraws("Knot")->empty());
}

// --- recipe and brew

TEST_CASE_METHOD(DeskFixture, "a recipe edited by hand is for this refill, and leaves the usual one", "[desk][brew]") {
    addPlover();
    CHECK(desk->planned("Plover")->from == PlannedRecipe::From::habit);
    Setting setting = *desk->setting("Plover");
    setting.recipe.bitterness = Ibu{14};
    REQUIRE(desk->revise("Plover", setting, {"bitterness, Plover", "ibu"}));
    setting.recipe.bitterness = Ibu{15};
    REQUIRE(desk->revise("Plover", setting, {"bitterness, Plover", "ibu"}));
    const auto planned = desk->planned("Plover");
    CHECK(planned->from == PlannedRecipe::From::choice);
    CHECK(planned->proposal == ChoiceFact::own);
    CHECK(planned->setting.recipe.bitterness.ibu == 15);
    CHECK(*planned->since == now);
    CHECK_FALSE(planned->usual);
    REQUIRE(desk->undo()); // typing was one edit
    CHECK(desk->planned("Plover")->from == PlannedRecipe::From::habit);
}

TEST_CASE_METHOD(DeskFixture, "an edited plan is a new promise, and the adopted one stays on record", "[desk][brew]") {
    addPlover();
    auto job = desk->adviceJob({"Plover", {}, {}, false});
    REQUIRE(job);
    const auto advice = advise(job->input);
    REQUIRE(advice);
    REQUIRE(desk->choose(*job, *advice, 0));
    Setting setting = *desk->setting("Plover");
    setting.recipe.mash[0].temperature = Celsius{64};
    setting.draw = Litres{90};
    REQUIRE(desk->revise("Plover", setting));
    const auto planned = desk->planned("Plover");
    CHECK(planned->from == PlannedRecipe::From::choice);
    CHECK(planned->proposal == ChoiceFact::own);
    CHECK(planned->setting.draw.l == 90);
    CHECK(planned->moves.size() >= 2);
    const auto choice = desk->lastChoice("Plover");
    REQUIRE(choice->forecast);
    for (Dimension d : allDimensions)
        CHECK(choice->forecast->sd[d] > 0);
    REQUIRE(desk->undo());
    CHECK(desk->lastChoice("Plover")->proposal == 0);
}

TEST_CASE_METHOD(DeskFixture, "what is tried on the board can be adopted, with what it promised", "[desk][choose]") {
    addPlover();
    auto job = desk->adviceJob({"Plover", {}, {}, false});
    REQUIRE(job);
    TryBoard board(job->input);
    const auto trial = board.trial({{"draw", 90.0}, {"bitterness", 12.0}}, TrialDepth::central);
    REQUIRE(trial);
    const auto choice = desk->adopt(*job, trial->setting);
    REQUIRE(choice);
    CHECK(choice->choice.proposal == ChoiceFact::own);
    for (Dimension d : allDimensions)
        CHECK(choice->choice.forecast->mean[d] == Approx(trial->next[d].value).margin(1e-12));
    CHECK(desk->setting("Plover")->draw.l == 90);
}

TEST_CASE_METHOD(DeskFixture, "a brew made locks the plan of its refill, and the refill unlocks it", "[desk][choose]") {
    addPlover();
    auto job = desk->adviceJob({"Plover", {}, {}, false});
    const auto advice = advise(job->input);
    REQUIRE(desk->choose(*job, *advice, 0));
    BrewFact brew;
    brew.name = "Brew 7";
    brew.vessel = "Plover";
    brew.on = day(2026, 3, 2);
    brew.recipe = desk->setting("Plover")->recipe;
    brew.intoFermenter = Litres{90};
    REQUIRE(desk->record(brew));
    CHECK(desk->nextBrewName() == "Brew 8");
    CHECK(desk->planned("Plover")->brewed->name == "Brew 7");
    CHECK(desk->adviceJob({"Plover", {}, {}, false})->brewed.has_value());
    const auto refusedChoice = desk->choose(*job, *advice, 0);
    REQUIRE_FALSE(refusedChoice);
    CHECK(refusedChoice.error().kind == FaultKind::notPossible);
    now = day(2026, 3, 20);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-20", "volume_l": 75},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-20", "volume_l": 80, "brew": "Brew 7"}])");
    CHECK_FALSE(desk->planned("Plover")->brewed);
    job = desk->adviceJob({"Plover", {}, {}, false});
    CHECK(desk->choose(*job, *advise(job->input), 0));
}

TEST_CASE_METHOD(DeskFixture, "a draft recalculates and writes nothing; its faults name the field", "[desk][brew]") {
    addPlover();
    const auto revision = desk->revision();
    Setting setting = *desk->setting("Plover");
    EquipmentFact kit = desk->kit();
    const auto draft = desk->draft("Plover", setting, kit);
    REQUIRE(draft);
    CHECK(draft->plan.gristMass.kg > 5);
    CHECK(draft->mash.minute.size() > 50);
    const auto planned = desk->brewPlan("Plover");
    CHECK(draft->plan.gristMass.kg == planned->gristMass.kg);
    setting.recipe.originalGravity = Plato{13};
    CHECK(desk->draft("Plover", setting, kit)->plan.gristMass > draft->plan.gristMass);
    setting.recipe.mash[0].temperature = Celsius{95};
    CHECK(desk->draft("Plover", setting, kit).error().path == "/mash/0/temperature_c");
    setting = *desk->setting("Plover");
    kit.equipment.efficiency = Share{.1};
    CHECK(desk->draft("Plover", setting, kit).error().path == "/equipment/mash_and_lauter_efficiency");
    CHECK(desk->revision() == revision);
}

TEST_CASE_METHOD(DeskFixture, "a beer that fermented further than planned says so and what follows", "[desk][brew]") {
    addPlover();
    BrewFact brew;
    brew.name = "Brew 1";
    brew.vessel = "Plover";
    brew.on = now;
    brew.recipe = desk->setting("Plover")->recipe;
    const auto same = desk->meaning(brew);
    REQUIRE(same);
    CHECK(has(same->words, "desk.brewed.as_planned"));
    for (Dimension d : allDimensions)
        CHECK(same->asBrewed[d].value == Approx(same->planned[d].value).margin(1e-9));
    brew.finalGravity = SpecificGravity{1.002};
    brew.intoFermenter = Litres{20};
    const auto dry = desk->meaning(brew);
    REQUIRE(dry);
    CHECK(has(dry->words, "desk.brewed.final"));
    CHECK(has(dry->words, "desk.brewed.short"));
    // less left for the culture: less sour at the next draw
    CHECK(dry->asBrewed[Dimension::acidity].value < dry->planned[Dimension::acidity].value);
}

TEST_CASE_METHOD(DeskFixture, "a measured final gravity changes what the vessel is taken to hold", "[desk][brew]") {
    addPlover();
    BrewFact brew;
    brew.name = "Brew 1";
    brew.vessel = "Plover";
    brew.on = day(2026, 1, 1);
    brew.recipe = desk->setting("Plover")->recipe;
    REQUIRE(desk->record(brew));
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-01-20", "volume_l": 75},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-20", "volume_l": 80, "brew": "Brew 1"}])");
    const auto before = desk->estimates("Plover")->model[Dimension::acidity].mean;
    brew.finalGravity = SpecificGravity{1.0005};
    REQUIRE(desk->amend("brew", 1, brew));
    CHECK(desk->estimates("Plover")->model[Dimension::acidity].mean < before);
}

// --- draw day

TEST_CASE_METHOD(DeskFixture, "draw day: the brew is short, so a smaller draw is offered that fills the vessel",
                 "[desk][draw]") {
    addPlover();
    auto job = desk->adviceJob({"Plover", {}, {}, false});
    REQUIRE(desk->choose(*job, *advise(job->input), 0));
    BrewFact brew;
    brew.name = "Brew 1";
    brew.vessel = "Plover";
    brew.on = now;
    brew.recipe = desk->setting("Plover")->recipe;
    brew.intoFermenter = Litres{70};
    REQUIRE(desk->record(brew));
    const auto view = desk->drawDay("Plover");
    REQUIRE(view);
    REQUIRE(view->brewGives);
    const Equipment kit = desk->kit().equipment;
    CHECK(view->brewGives->l == Approx(70 * (1 - kit.fermenterLoss.of1) - kit.transferLoss.l));
    REQUIRE(has(view->findings, "desk.draw_day.short"));
    for (const auto& finding : view->findings)
        if (finding.key == "desk.draw_day.short") {
            const double fits = std::get<Amount>(finding.arguments[2].value).value;
            CHECK(job->input.volumeAtDraw.l - fits + view->brewGives->l == Approx(225).margin(1e-9));
        }
    CHECK(has(view->findings, "desk.draw_day.not_tasted"));
    CHECK(has(view->findings, "desk.draw_day.titrate"));
    CHECK(has(view->planB, "caution.refill.hold"));
    for (Dimension d : allDimensions)
        CHECK(view->expected[d].has_value());
}

TEST_CASE_METHOD(DeskFixture, "draw day: a fault comes first in plan B", "[desk][draw]") {
    addPlover();
    SittingFact bad = sitting({{"Rook", "TA1", 6.0, {}}});
    bad.sitting.faults = {{"ropy", 3}};
    REQUIRE(desk->record(bad));
    const auto view = desk->drawDay("Plover");
    REQUIRE(view);
    REQUIRE_FALSE(view->planB.empty());
    CHECK(view->planB.front().key.starts_with("tasting.verdict.fault"));
}

TEST_CASE_METHOD(DeskFixture, "draw day of a vessel never opened is refused with words", "[desk][draw][bad]") {
    record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 50})");
    const auto view = desk->drawDay("Knot");
    REQUIRE_FALSE(view);
    CHECK(render(view.error().remedy).size() > 4);
}

// --- locks and amendments

TEST_CASE_METHOD(DeskFixture, "locks and what is not at hand are those in force", "[desk][lock]") {
    addPlover();
    record(R"([{"kind": "lock", "vessel": "Plover", "on": "2026-01-01", "lever": "bitterness", "value": 10},
               {"kind": "lock", "vessel": "Plover", "on": "2026-02-01", "lever": "draw", "value": 80},
               {"kind": "lock", "vessel": "Plover", "on": "2026-02-02", "lever": "bitterness", "locked": false},
               {"kind": "availability", "on": "2026-02-01", "item": "rye_malt", "available": false}])");
    const auto locks = desk->locks("Plover");
    REQUIRE(locks);
    REQUIRE(locks->size() == 1);
    CHECK(locks->front().lever == "draw");
    CHECK(desk->stock().size() == 1);
    CHECK(desk->adviceJob({"Plover", {}, {}, false})->input.unavailable.contains("rye_malt"));
    CHECK(desk->adviceJob({"Plover", {}, {}, false, true})->input.locks.empty());
}

TEST_CASE_METHOD(DeskFixture, "an amendment is previewed without the entry it replaces", "[desk][preview]") {
    addPlover();
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-20", "volume_l": 75})");
    const auto id = desk->ledger("Plover")->lines.back().id;
    const auto preview = desk->preview("draw_off", id, DrawOffFact{"Plover", day(2026, 1, 20), Litres{60}, "", {}, ""});
    REQUIRE(preview);
    CHECK(preview->after.volume.l - preview->before.volume.l == Approx(15).margin(.1));
    CHECK_FALSE(desk->preview("draw_off", id, DrawOffFact{"Plover", day(2026, 1, 20), Litres{600}, "", {}, ""}));
    CHECK_FALSE(desk->preview("draw_off", id, DipFact{"Plover", day(2026, 1, 20), Litres{60}, ""}));
    CHECK(desk->ledger("Plover")->lines.back().volumeAfter.l == Approx(desk->vessel("Plover")->now.volume.l).margin(2));
}

TEST_CASE_METHOD(DeskFixture, "the evidence behind an estimate is all there and adds up", "[desk]") {
    addPlover();
    REQUIRE(desk->record(Fact{sitting({{"Rook", "TA1", 6.0, 6.5},
                                       {"Rook", "TA2", 5.5, 5.5},
                                       {"Rook", "TA3", 4.0, 4.5},
                                       {"Rook", "TA4", 4.0, 4.5}})}));
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-01", "ta_g_l": 6.4})");
    const auto view = desk->estimates("Plover");
    REQUIRE(view);
    const auto& evidence = view->evidence[Dimension::acidity];
    REQUIRE(evidence.size() == 4); // the model, the tasting, the titrations of the opening and of this day
    const Estimate& combined = view->combined[Dimension::acidity];
    const auto [least, most] = std::minmax_element(evidence.begin(), evidence.end(), [](const auto& a, const auto& b) {
        return a.estimate.mean < b.estimate.mean;
    });
    CHECK(combined.mean > least->estimate.mean);
    CHECK(combined.mean < most->estimate.mean);
    for (const auto& each : evidence)
        CHECK(combined.sd < each.estimate.sd);
    CHECK(evidence[1].kind == estimate::Evidence::Kind::sitting);
    CHECK(*evidence[1].on == day(2026, 3, 1));
    CHECK(evidence[3].ta->gPerL == 6.4);
}
