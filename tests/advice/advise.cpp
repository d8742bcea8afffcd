// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/adviser.h"
#include "advice/board.h"

#include "advice/fake_forecaster.h"
#include "advice/scenario.h"
#include "advice/search.h"
#include "quantity/text.h"
#include "support/catch.h"
#include "support/property.h"

#include <cmath>
#include <fmt/core.h>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::tasting;

namespace {

/// Asks for changes in a cask; few draws and no settled columns, to be quick.
AdviceInput wanting(const Scores& change, double band = 1) {
    auto input = scenario::cask();
    input.draws = 16;
    input.withSettled = false;
    scenario::want(input, change, band);
    return input;
}

bool hasKey(const std::vector<Message>& messages, std::string_view key) {
    return std::any_of(messages.begin(), messages.end(), [&](const Message& m) { return m.key == key; });
}

double effortOf(const AdviceInput& input, const Proposal& proposal) {
    double sum = 0;
    for (const auto& move : proposal.moves) {
        const auto row = narrowedRow(*findLever(move.lever), input.base, input);
        const double units = row.isChoice() ? 1 : std::abs(number(move.to) - number(move.from)) / row.movement;
        sum += move.forced ? 0 : row.cost * units;
    }
    return sum;
}
double firstEffort(const AdviceInput& input, const Advice& advice) {
    return advice.proposals.empty() ? 0 : effortOf(input, advice.proposals.front());
}

std::set<std::string> leversOf(const Proposal& proposal) {
    std::set<std::string> ids;
    for (const auto& move : proposal.moves)
        if (!move.forced)
            ids.insert(move.lever);
    return ids;
}

/// A path or a late addition with the rest it needs is one step with it.
int stepsIn(const std::set<std::string>& levers) {
    int steps = static_cast<int>(levers.size());
    if (levers.contains("ferulic_rest"))
        for (const auto* dependent : {"sacch_path", "late_unmalted"})
            steps -= levers.contains(dependent) ? 1 : 0;
    return steps;
}

/// A diastatic yeast may be better than the first proposal and does not lead all the same.
bool heldBack(const AdviceInput& input, const Proposal& proposal) {
    return input.pantry->yeast(proposal.setting.recipe.yeast)->diastatic();
}

/// Words, chevrons and proposals are one answer.
void checkWords(const Advice& advice) {
    int moves = 0, again = 0;
    for (auto d : allDimensions) {
        const auto& word = advice.verdicts[d];
        CHECK(word.kind != VerdictKind::open);
        CHECK(render(word.reason).find('{') == std::string::npos);
        again += word.kind == VerdictKind::tasteAgain ? 1 : 0;
        if (word.kind != VerdictKind::move)
            continue;
        ++moves;
        REQUIRE(!advice.proposals.empty());
        CHECK(advice.leaveAlone.loss[d] - advice.proposals[0].loss[d] >= clearlyBetter);
        CHECK(word.up == (advice.proposals[0].ahead[d] > advice.leaveAlone.ahead[d]));
    }
    CHECK(again == (advice.tasting.dimension ? 1 : 0));
    if (again == 0)
        CHECK((moves > 0) == !advice.proposals.empty());
}

/// What must hold for any advice, whatever was asked.
void checkSound(const AdviceInput& input, const Advice& advice) {
    CHECK(leversOf(advice.leaveAlone).empty());
    CHECK(advice.leaveAlone.worth == 0);
    CHECK(advice.proposals.size() <= 3);
    checkWords(advice);
    std::set<std::set<std::string>> used;
    double last = 0;
    for (const auto& proposal : advice.proposals) {
        const auto ids = leversOf(proposal);
        CHECK(!ids.empty());
        CHECK(stepsIn(ids) <= input.maxMoved);
        CHECK(used.insert(ids).second); // they differ in what they move
        CHECK(proposal.worth >= clearlyBetter);
        CHECK(proposal.worth == Approx(advice.leaveAlone.cost - proposal.cost));
        CHECK((proposal.cost >= last || heldBack(input, proposal)));
        last = std::max(last, proposal.cost);
        CHECK(proposal.cost >= total(proposal.loss));
        for (auto d : allDimensions) {
            CHECK(proposal.next[d].low <= proposal.next[d].value);
            CHECK(proposal.next[d].value <= proposal.next[d].high);
        }
    }
}

void checkInsideRanges(const AdviceInput& input, const Proposal& proposal) {
    const auto& recipe = proposal.setting.recipe;
    CHECK(recipe.bitterness.ibu <= std::max(input.target.bitternessCeiling.ibu, input.base.recipe.bitterness.ibu));
    CHECK(recipe.originalGravity.p >= input.target.gravityLow.p);
    CHECK(recipe.originalGravity.p <= input.target.gravityHigh.p);
    CHECK(proposal.atNext.alcohol.pct >= input.target.alcoholLow.pct - 1e-9);
    CHECK(proposal.atNext.alcohol.pct <= input.target.alcoholHigh.pct + 1e-9);
    for (const auto& move : proposal.moves) {
        const auto& row = rowOf(*findLever(move.lever));
        if (row.isChoice() || move.lever == "draw")
            continue;
        CHECK(number(move.to) >= row.low);
        CHECK(number(move.to) <= row.high);
    }
}

} // namespace

TEST_CASE("advice keeps its rules in very different vessels") {
    for (const auto& change :
         {Scores{{-1.5, 1.4, 0}}, Scores{{2, -2, .5}}, Scores{{-3, 0, 2.5}}, Scores{{.8, .8, -.8}}}) {
        const auto input = wanting(change);
        const auto advice = advise(input).value();
        checkSound(input, advice);
        REQUIRE(!advice.proposals.empty());
        for (const auto& proposal : advice.proposals)
            checkInsideRanges(input, proposal);
        CHECK_FALSE(advice.faultFirst);
    }
}

TEST_CASE("contributions of the moves add up to what the proposal changes") {
    auto input = wanting({{-1.5, 1.4, 0}});
    input.withSettled = true;
    input.locks = {{"mash_ph", 5.3}};
    const auto advice = advise(input).value();
    REQUIRE(!advice.proposals.empty());
    for (const auto& proposal : advice.proposals)
        for (auto d : allDimensions) {
            double next = 0, settled = 0;
            for (const auto& move : proposal.moves)
                if (!move.forced) {
                    next += move.next.value()[d];
                    settled += move.settled.value()[d];
                }
            CHECK(std::abs(next - (proposal.next[d].value - advice.leaveAlone.next[d].value)) < 1e-9);
            CHECK(std::abs(settled - (proposal.settled[d].value - advice.leaveAlone.settled[d].value)) < 1e-9);
        }
}

TEST_CASE("the same question has the same answer to the last bit") {
    const auto input = wanting({{-1.5, 1.4, .5}});
    const auto one = advise(input).value(), other = advise(input).value();
    REQUIRE(!one.proposals.empty());
    REQUIRE(one.proposals.size() == other.proposals.size());
    for (std::size_t i = 0; i < one.proposals.size(); ++i) {
        CHECK(one.proposals[i].setting == other.proposals[i].setting);
        CHECK(one.proposals[i].cost == other.proposals[i].cost);
        CHECK(one.proposals[i].reasons == other.proposals[i].reasons);
        for (auto d : allDimensions) {
            CHECK(one.proposals[i].next[d].low == other.proposals[i].next[d].low);
            CHECK(one.proposals[i].next[d].high == other.proposals[i].next[d].high);
        }
    }
}

TEST_CASE("screening loses at most a thousandth of the cost against predicting every plan in full") {
    for (const auto& change : {Scores{{-1.5, 1.4, 0}}, Scores{{1.5, -1.5, 0}}, Scores{{0, 1, .8}}}) {
        auto input = wanting(change);
        for (const auto* id : {"gravity", "interval", "mash_ph", "presour", "bitterness"})
            input.locks.push_back({id, leverValue(input.base, id, *input.pantry)});
        ModelForecaster model(input);
        const auto baseline = prepare(input).value();
        const auto goal = goalOf(input);
        Search search(input, baseline, model, goal, {});
        REQUIRE(search.survey());
        CHECK(search.plans() > 800);
        const auto first = search.exhaustive([](const OptionSet&) { return true; }).value().value();
        CHECK(search.best([](const OptionSet&) { return true; }, predictedInFull).value()->cost <= first.cost * 1.001);
    }
}

TEST_CASE("the plan shown is the cheapest of those whose every lever earns its place and that harm nothing") {
    for (const auto& change : {Scores{{-1.5, 1.4, 0}}, Scores{{2, -2, .5}}, Scores{{-.8, .8, 0}}}) {
        auto input = wanting(change);
        const auto advice = advise(input).value();
        ModelForecaster model(input);
        const auto baseline = prepare(input).value();
        const auto goal = goalOf(input);
        Search search(input, baseline, model, goal, {});
        REQUIRE(search.survey());
        CHECK(std::abs(search.scored({}).cost - advice.leaveAlone.cost) < 1e-9);
        REQUIRE(!advice.proposals.empty());
        const auto& shown = advice.proposals.front();
        // What is shown is what its setting costs.
        CHECK(std::abs(search.predicted(shown.setting, effortOf(input, shown))->cost - shown.cost) < 1e-9);
        int cheaper = 0;
        REQUIRE(search.best(
            [&](const OptionSet& options) {
                const auto& plan = search.scored(options);
                cheaper += plan.cost < shown.cost - 1e-9 && search.admissible(plan) ? 1 : 0;
                return options.size() == 1;
            },
            0));
        CHECK(cheaper == 0);
        for (const auto& proposal : advice.proposals) {
            const auto plan = search.predicted(proposal.setting, effortOf(input, proposal)).value();
            CHECK(search.guarded(plan));
            for (const auto& lever : leversOf(proposal)) { // take each one back
                auto without =
                    withLever(proposal.setting, lever, leverValue(input.base, lever, *input.pantry), *input.pantry);
                if (!without || lever == "ferulic_rest") // brings more than its own value
                    continue;
                const auto move = std::find_if(proposal.moves.begin(), proposal.moves.end(),
                                               [&](const Move& m) { return m.lever == lever; });
                const double saved = advice::effortOf({findLever(lever), move->from, move->to},
                                                      narrowedRow(*findLever(lever), input.base, input));
                CHECK(search.predicted(*without, effortOf(input, proposal) - saved)->cost - proposal.cost >
                      earnsItsPlace - 1e-9);
            }
        }
    }
}

TEST_CASE("locks hold in every proposal and in leaving it alone") {
    auto input = wanting({{-1.5, 1.4, 0}});
    input.locks = {{"sacch_temperature", 66.0}, {"draw", 60.0}, {"yeast", std::string("ale_high")}};
    const auto advice = advise(input).value();
    checkSound(input, advice);
    auto all = advice.proposals;
    all.push_back(advice.leaveAlone);
    for (const auto& proposal : all) {
        for (const auto& lock : input.locks)
            CHECK(sameValue(leverValue(proposal.setting, lock.lever, *input.pantry), lock.value));
        CHECK(std::count_if(proposal.moves.begin(), proposal.moves.end(), [](const Move& m) { return m.forced; }) == 2);
        CHECK(proposal.refill.l == Approx(65));
    }
}

TEST_CASE("a lock that stands in the way has a price") {
    auto input = wanting({{0, 1.5, 0}});
    const auto open = advise(input).value();
    REQUIRE(!open.proposals.empty());
    REQUIRE(leversOf(open.proposals[0]).contains("ferulic_rest"));
    input.locks = {{"ferulic_rest", 0.0}, {"cellar_temperature", 16.0}};
    input.withSettled = true;
    const auto locked = advise(input).value();
    CHECK(locked.proposals.front().cost > open.proposals.front().cost);
    int prices = 0;
    for (const auto& note : locked.notes)
        if (note.key == "advice.note.lockPrice") {
            ++prices;
            CHECK(render(note).find("ferulic rest") != std::string::npos);
            const double saved = locked.proposals.front().cost - open.proposals.front().cost;
            CHECK(std::get<Amount>(note.arguments.back().value).value == Approx(saved));
        }
    CHECK(prices == 1);
}

TEST_CASE("what is not at hand is in no proposal, and its price is told where it has one") {
    auto input = wanting({{-2.5, 0, 0}});
    input.unavailable = {"ale_clean", "saison", "ale_high", "rye_malt", "flaked_oats"};
    input.withSettled = true;
    const auto advice = advise(input).value();
    checkSound(input, advice);
    REQUIRE(!advice.proposals.empty());
    for (const auto& id : input.unavailable) {
        INFO(id);
        auto with = input;
        with.unavailable.erase(id);
        with.withSettled = false;
        const double saved = advice.proposals.front().cost - advise(with).value().proposals.at(0).cost;
        const auto price = std::find_if(advice.prices.begin(), advice.prices.end(),
                                        [&](const RestrictionPrice& each) { return each.id == id; });
        REQUIRE((price != advice.prices.end()) == (saved > clearlyBetter));
        if (price == advice.prices.end())
            continue;
        CHECK_FALSE(price->lock);
        CHECK(price->cost == Approx(saved));
        const auto name = input.pantry->yeast(id) ? input.pantry->yeast(id)->name : input.pantry->grain(id)->name;
        CHECK(std::any_of(advice.notes.begin(), advice.notes.end(), [&](const Message& note) {
            return note.key == "advice.note.missingPrice" && render(note).find(name) != std::string::npos;
        }));
    }
    CHECK(!advice.prices.empty());
    auto all = advice.proposals;
    all.push_back(advice.leaveAlone);
    for (const auto& proposal : all) {
        CHECK_FALSE(input.unavailable.contains(proposal.setting.recipe.yeast));
        for (const auto& part : proposal.setting.recipe.grist)
            CHECK_FALSE(input.unavailable.contains(part.grain));
    }
}

TEST_CASE("on target for sure nothing is proposed, and a wait for the rest names its date") {
    auto input = scenario::cask();
    input.withSettled = false;
    scenario::taste(input, {}, .3);
    auto advice = advise(input).value();
    checkSound(input, advice);
    CHECK(advice.proposals.empty());
    CHECK(advice.leaveAlone.setting == input.base);
    for (auto d : allDimensions)
        CHECK(advice.verdicts[d].kind == VerdictKind::hold);
    CHECK(advice.notes.empty());
    input.target.windows[Dimension::acidity].wanted += 3;
    input.verdicts[Dimension::acidity].kind = VerdictKind::waitUntil;
    input.verdicts[Dimension::acidity].until = Day{std::chrono::days{20600}};
    advice = advise(input).value();
    CHECK(advice.proposals.empty());
    CHECK(hasKey(advice.notes, "advice.note.acidity.wait"));
}

TEST_CASE("a wait in one dimension does not hide what another needs") {
    auto input = wanting({{0, 1.5, 0}});
    input.verdicts[Dimension::body].kind = VerdictKind::waitUntil;
    input.verdicts[Dimension::body].until = Day{std::chrono::days{20600}};
    const auto advice = advise(input).value();
    CHECK(advice.verdicts[Dimension::body].kind == VerdictKind::waitUntil);
    CHECK(advice.verdicts[Dimension::funk].kind == VerdictKind::move);
    CHECK(hasKey(advice.notes, "advice.note.body.wait"));
    CHECK(!advice.proposals.empty());
}

TEST_CASE("a score that has to wait carries no plan, however much the plan would do for it") {
    auto input = scenario::cask();
    input.withSettled = false;
    FakeForecaster model(input);
    model.base = {{6, 4, 4}};
    model.perUnit["sugar"] = {{-.6, 0, 0}};
    scenario::tasteAt(input, model.base, .3);
    input.tastedToday = {{true, true, true}};
    for (auto d : allDimensions)
        input.target.windows[d] = {model.base[d], 1};
    input.target.windows[Dimension::acidity].wanted = 4;
    input.target.windows[Dimension::funk].wanted = 5.2; // open, and nothing reaches it
    input.verdicts = scenario::verdictsFor(input);
    REQUIRE(!adviseWith(model, input).value().proposals.empty());
    input.verdicts[Dimension::acidity].kind = VerdictKind::waitUntil;
    input.verdicts[Dimension::acidity].until = Day{std::chrono::days{20600}};
    const auto advice = adviseWith(model, input).value();
    checkSound(input, advice);
    CHECK(advice.proposals.empty());
    // What another gains carries it, and then the reason is that other one.
    model.perUnit["sugar"] = {{-.6, .3, 0}};
    const auto both = adviseWith(model, input).value();
    checkSound(input, both);
    REQUIRE(!both.proposals.empty());
    const auto& first = both.proposals.front();
    CHECK(both.leaveAlone.loss[Dimension::acidity] - first.loss[Dimension::acidity] >
          both.leaveAlone.loss[Dimension::funk] - first.loss[Dimension::funk]);
    CHECK(first.why.key == "advice.why.funk");
    CHECK(both.verdicts[Dimension::funk].kind == VerdictKind::move);
    CHECK(both.verdicts[Dimension::acidity].kind == VerdictKind::waitUntil);
}

TEST_CASE("beside a plan for another score it is not said that nothing can be brewed for this one") {
    auto input = scenario::cask();
    input.withSettled = false;
    input.tastedToday = {{true, true, true}};
    FakeForecaster model(input);
    model.base = {{6, 4, 4}};
    model.perUnit["sugar"] = {{-.6, 0, 0}};
    scenario::tasteAt(input, model.base, .3);
    for (auto d : allDimensions)
        input.target.windows[d] = {model.base[d], 1};
    input.target.windows[Dimension::funk].wanted = 5.2;
    input.target.windows[Dimension::body].wanted = 4.8;
    input.verdicts = scenario::verdictsFor(input);
    auto advice = adviseWith(model, input).value();
    CHECK(advice.verdicts[Dimension::funk].reason.key == "advice.verdict.leave.funk.little");
    CHECK(advice.verdicts[Dimension::body].reason.key == "advice.verdict.leave.near");
    input.target.windows[Dimension::acidity].wanted = 4;
    input.verdicts = scenario::verdictsFor(input);
    advice = adviseWith(model, input).value();
    checkSound(input, advice);
    REQUIRE(!advice.proposals.empty());
    CHECK(render(advice.verdicts[Dimension::funk].reason)
              .ends_with("below the funk target (±0.4), too little funk: the plan does not help this."));
    CHECK(advice.verdicts[Dimension::body].reason.key == "advice.verdict.beside.near");
}

TEST_CASE("what can be chance is not told as too much or too little, with a plan or without") {
    auto input = scenario::cask();
    input.withSettled = false;
    input.tastedToday = {{true, true, true}};
    FakeForecaster model(input);
    model.base = {{6, 4, 4}};
    model.perUnit["sugar"] = {{-.9, 0, 0}};
    scenario::tasteAt(input, model.base, 1); // +-1.3
    for (auto d : allDimensions)
        input.target.windows[d] = {model.base[d], .5};
    input.target.windows[Dimension::acidity].wanted = 4.9;
    input.target.windows[Dimension::funk].wanted = 5.1;
    input.verdicts = scenario::verdictsFor(input);
    CHECK(input.verdicts[Dimension::funk].reason.key == "tasting.verdict.near");
    const auto advice = adviseWith(model, input).value();
    for (auto d : {Dimension::acidity, Dimension::funk}) {
        const std::string key = advice.verdicts[d].reason.key;
        CHECK(key.find("much") == std::string::npos);
        CHECK(key.find("little") == std::string::npos);
    }
}

TEST_CASE("a score that is in place and about to leave it is moved, and the word points where the plan goes") {
    auto input = scenario::cask();
    input.withSettled = false;
    scenario::taste(input, {}, .2);
    for (auto d : allDimensions)
        input.offsets[d].cov = {{{.04, .02, 0}, {.02, .04, 0}, {0, 0, 0}}};
    input.offsets[Dimension::acidity].mean = {0, 3, 0}; // its refills are much sourer than the beer in it
    input.verdicts = scenario::verdictsFor(input);
    REQUIRE(input.verdicts[Dimension::acidity].kind == VerdictKind::hold);
    const auto advice = advise(input).value();
    checkSound(input, advice);
    REQUIRE(!advice.proposals.empty());
    CHECK(advice.verdicts[Dimension::acidity].kind == VerdictKind::move);
    CHECK_FALSE(advice.verdicts[Dimension::acidity].up);
    CHECK(advice.verdicts[Dimension::acidity].reason.key == "advice.verdict.ahead");
}

TEST_CASE("a vessel never tasted gets no proposals, one dimension never tasted steers none") {
    auto input = wanting({{-2, 2, 0}});
    scenario::see(input, {});
    auto advice = advise(input).value();
    CHECK(advice.proposals.empty());
    CHECK(hasKey(advice.notes, "advice.note.tasteFirst"));
    for (auto d : allDimensions)
        CHECK(advice.verdicts[d].kind == VerdictKind::neverTasted);
    scenario::see(input, {{true, false, true}});
    input.verdicts[Dimension::funk].reason = say("tasting.verdict.contradicted");
    advice = advise(input).value();
    checkSound(input, advice);
    CHECK(advice.verdicts[Dimension::funk].kind == VerdictKind::neverTasted);
    CHECK(advice.verdicts[Dimension::funk].reason.key == "tasting.verdict.contradicted"); // as it was said
    REQUIRE(!advice.proposals.empty());
    for (const auto& proposal : advice.proposals)
        CHECK(proposal.loss[Dimension::funk] == 0);
    CHECK(hasKey(advice.notes, "advice.note.funk.unseen"));
}

TEST_CASE("draw and interval are advised only where the owner lets them move, and can always be tried and locked") {
    auto input = wanting({{0, -2.5, 0}});
    const auto moved = [&](const char* lever) {
        const auto advice = advise(input).value();
        return std::any_of(advice.proposals.begin(), advice.proposals.end(),
                           [&](const Proposal& p) { return leversOf(p).contains(lever); });
    };
    CHECK((moved("draw") || moved("interval")));
    input.mayMoveDraw = input.mayMoveInterval = false;
    CHECK_FALSE(moved("draw"));
    CHECK_FALSE(moved("interval"));
    CHECK(TryBoard(input).trial({{"draw", 90.0}, {"interval", 180.0}}, TrialDepth::central));
    input.locks = {{"draw", 90.0}};
    CHECK(advise(input).value().leaveAlone.setting.draw.l == 90);
}

TEST_CASE("no step is larger than a brewer would take at once, unless that is switched off") {
    auto input = wanting({{-3, 2.5, 0}});
    const auto farthest = [&](const char* id) {
        double most = 0;
        for (const auto& value : advisedSteps(*findLever(id), input.base, input))
            most = std::max(most, std::abs(number(value) - number(leverValue(input.base, id, *input.pantry))));
        return most;
    };
    CHECK(farthest("sacch_temperature") == 3);
    CHECK(farthest("interval") == 60);
    CHECK(farthest("presour") == 30);
    CHECK(farthest("cellar_temperature") == 3);
    CHECK(farthest("sugar") == 15);
    const auto capped = advise(input).value();
    REQUIRE(!capped.proposals.empty());
    for (const auto& proposal : capped.proposals)
        CHECK(std::abs(proposal.setting.recipe.mash.back().temperature.c - 66) <= 3);
    input.stepCaps = false;
    CHECK(farthest("sacch_temperature") == 6);
    CHECK(farthest("presour") == 100);
    CHECK(farthest("cellar_temperature") == 6);
    for (const auto& value : advisedSteps(*findLever("mash_ph"), input.base, input)) {
        CHECK(number(value) >= 5.2 - 1e-9);
        CHECK(number(value) <= 5.6 + 1e-9);
    }
    CHECK(withLever(input.base, "mash_ph", 5.8, *input.pantry)); // to try
}

TEST_CASE("a vessel that measures sour enough gets no refill soured beforehand") {
    auto input = wanting({{2.5, 0, 0}});
    CHECK_FALSE(advisedSteps(*findLever("presour"), input.base, input).empty());
    input.measuredTa = GramsPerLitre{8.9};
    input.measuredPh = Ph{3.2};
    CHECK_FALSE(advisedSteps(*findLever("presour"), input.base, input).empty());
    input.measuredTa = GramsPerLitre{9};
    CHECK(advisedSteps(*findLever("presour"), input.base, input).empty());
    input.measuredTa = {};
    input.measuredPh = Ph{3.1};
    CHECK(advisedSteps(*findLever("presour"), input.base, input).empty());
}

TEST_CASE("the usual recipe is a plan of its own where it differs") {
    auto input = wanting({{-1.5, 0, 0}});
    input.usual = input.base;
    CHECK_FALSE(advise(input).value().usual);
    input.usual->recipe.bitterness = {14};
    const auto advice = advise(input).value();
    REQUIRE(advice.usual);
    CHECK(render(advice.usual->title) == "The usual recipe");
    CHECK(advice.usual->setting == *input.usual);
    CHECK(leversOf(*advice.usual) == std::set<std::string>{"bitterness"});
    CHECK(advice.usual->worth == Approx(advice.leaveAlone.cost - advice.usual->cost));
    CHECK(hasKey(advice.usual->reasons, "advice.reason.move"));
    CHECK(advice.usual->moves[0].next);
    CHECK_FALSE(advice.usual->moves[0].settled); // not asked for
    input.usual->recipe.grist = {{"pilsner", {.9}, false}, {"rye_malt", {.1}, false}};
    input.unavailable = {"rye_malt"};
    const auto missing = advise(input).value();
    REQUIRE(missing.usual);
    CHECK(hasKey(missing.usual->limits, "advice.limit.notAtHand"));
    input.usual->recipe.originalGravity = {14};
    input.usual->recipe.mash[0].temperature = {72};
    const auto worse = advise(input).value();
    CHECK(render(worse.usual->title) == "The usual recipe, at the cost of acidity and body");
    CHECK(worse.usual->why.key == "advice.why.worse");
    CHECK_FALSE(hasKey(missing.leaveAlone.limits, "advice.limit.notAtHand"));
}

TEST_CASE("of a usual recipe that no set of levers makes, no lever is said to do a thing that is not known") {
    auto input = wanting({{-1.5, 0, 0}});
    input.usual = input.base;
    input.usual->recipe.grist = {{"pale", {.75}, false}, {"wheat_malt", {.25}, false}};
    const auto changed = [&] {
        const auto usual = advise(input).value().usual;
        REQUIRE(usual);
        for (auto d : {Dimension::acidity, Dimension::funk, Dimension::body})
            CHECK_FALSE(hasKey(usual->reasons, fmt::format("advice.reason.{}.alone", name(d))));
        CHECK(hasKey(usual->reasons, "advice.reason.acidity.towards"));
        CHECK(usual->why.key != "advice.why.alone");
        return *usual;
    };
    CHECK(changed().moves.empty()); // another base malt is no lever
    input.usual->recipe.mash[0].temperature = {64};
    const auto both = changed();
    REQUIRE(both.moves.size() == 1);
    CHECK_FALSE(both.moves[0].next);
    CHECK_FALSE(hasKey(both.reasons, "advice.reason.move"));
}

TEST_CASE("what works against a dimension says so in its title, and nothing else does") {
    int against = 0, plain = 0;
    for (const auto& change : {Scores{{-1.5, 1.4, 0}}, Scores{{2, -2, .5}}, Scores{{-3, 0, 2.5}}}) {
        const auto advice = advise(wanting(change)).value();
        for (const auto& proposal : advice.proposals) {
            bool worse = false;
            for (auto d : allDimensions) {
                const auto off = [&](double score) { return std::abs(score - advice.windows[d].wanted); };
                const auto& alone = advice.leaveAlone;
                const bool tasted = off(proposal.next[d].value) - off(alone.next[d].value) >= .3 ||
                                    off(proposal.ahead[d]) - off(alone.ahead[d]) >= .3;
                worse = worse || (proposal.loss[d] - alone.loss[d] >= clearlyBetter && tasted);
            }
            CHECK((proposal.title.key == "advice.title.against") == worse);
            CHECK(render(proposal.why).find('{') == std::string::npos);
            ++(worse ? against : plain);
        }
    }
    CHECK(against > 0);
    CHECK(plain > 0);
}

TEST_CASE("a fault comes first and says until when") {
    auto input = wanting({{-2, 2, 0}});
    input.verdicts[Dimension::body].kind = VerdictKind::faultFirst;
    input.verdicts[Dimension::body].fault = "ropy";
    input.verdicts[Dimension::body].until = Day{std::chrono::days{20600}};
    const auto advice = advise(input).value();
    CHECK(advice.faultFirst);
    CHECK(advice.proposals.empty());
    REQUIRE(advice.notes.size() == 1);
    CHECK(advice.notes[0].key == "advice.note.fault.until");
    CHECK(render(advice.notes[0]).find("27 May 2026") != std::string::npos);
}

TEST_CASE("one more taster is asked for where he would change the plan, the working plan beside it") {
    auto input = scenario::cask();
    input.withSettled = false;
    for (auto d : allDimensions)
        input.offsets[d] = estimate::longRunPrior(input.wander[d]);
    const Scores tasted{{1, 0, 0}};
    for (auto d : allDimensions) {
        const double model = input.model[d].mean;
        learn(input.offsets[d], estimate::tasted(input.offsets[d], model + tasted[d], model, 1.04));
        input.combined[d] = {model + input.offsets[d].mean[estimate::Offset::now], input.offsets[d].sd()};
    }
    input.verdicts = scenario::verdictsFor(input);
    const auto advice = advise(input).value();
    checkSound(input, advice);
    CHECK(advice.tasting.value > constants::advice::worthTasting);
    REQUIRE(advice.tasting.dimension);
    CHECK(advice.verdicts[*advice.tasting.dimension].kind == VerdictKind::tasteAgain);
    CHECK(hasKey(advice.notes, fmt::format("advice.note.{}.oneMore", name(*advice.tasting.dimension))));
    input.tastedToday = {{true, true, true}};
    const auto today = advise(input).value();
    CHECK_FALSE(today.tasting.dimension);
    REQUIRE(today.proposals.size() == advice.proposals.size());
    for (std::size_t i = 0; i < today.proposals.size(); ++i)
        CHECK(today.proposals[i].setting == advice.proposals[i].setting);
}

TEST_CASE("what no recipe reaches is said") {
    CHECK(hasKey(advise(wanting({{0, 0, 2.2}})).value().notes, "advice.note.bodyOutOfReach"));
    CHECK_FALSE(hasKey(advise(wanting({{0, 0, 1.5}})).value().notes, "advice.note.bodyOutOfReach"));
    CHECK(hasKey(advise(wanting({{0, -2.5, 0}})).value().notes, "advice.note.funkDown"));
    auto bitter = wanting({{-2.5, 0, 0}});
    bitter.base.recipe.bitterness = {24};
    CHECK(hasKey(advise(bitter).value().notes, "advice.note.overCeiling"));
}

TEST_CASE("a diastatic yeast never leads, however good it looks") {
    auto input = wanting({{-2, 0, 0}});
    input.toThisDraw = {40};
    FakeForecaster model(input);
    for (auto d : allDimensions)
        model.base[d] = input.model[d].mean;
    model.choices[{"yeast", "saison_diastatic"}] = {{-3, 0, 0}};
    model.perUnit["sugar"] = {{-.3, 0, 0}};
    const auto advice = adviseWith(model, input).value();
    checkSound(input, advice);
    REQUIRE(advice.proposals.size() >= 2);
    CHECK(advice.proposals[0].setting.recipe.yeast != "saison_diastatic");
    CHECK(advice.proposals[1].setting.recipe.yeast == "saison_diastatic");
    CHECK(hasKey(advice.proposals[1].moves.back().cautions, "caution.yeast.diastatic"));
    model.perUnit.clear();
    CHECK(adviseWith(model, input).value().proposals.empty());
}

TEST_CASE("a killer yeast is not proposed to a sensitive house yeast") {
    auto input = wanting({{0, 0, 1.5}});
    FakeForecaster model(input);
    for (auto d : allDimensions)
        model.base[d] = input.model[d].mean;
    model.choices[{"yeast", "wine_killer_positive"}] = {{0, 0, 2}};
    CHECK(adviseWith(model, input).value().proposals.empty());
    input.houseYeastKillerSensitive = false;
    const auto advice = adviseWith(model, input).value();
    REQUIRE(!advice.proposals.empty());
    CHECK(advice.proposals[0].setting.recipe.yeast == "wine_killer_positive");
}

TEST_CASE("with every lever locked there is only leaving it alone, and it says so") {
    auto input = wanting({{-2, 2, 0}});
    for (const auto& lever : levers())
        input.locks.push_back({lever.id, leverValue(input.base, lever.id, *input.pantry)});
    const auto advice = advise(input).value();
    CHECK(advice.proposals.empty());
    CHECK(hasKey(advice.notes, "advice.note.nothingBetter"));
    CHECK(advice.leaveAlone.setting == input.base);
}

TEST_CASE("wider windows never ask for more effort") {
    const std::vector<Scores> changes = {{{-1.5, 1.4, 0}}, {{1, -1, .5}}};
    for (const auto& change : changes) {
        double first = 0, last = 1e9;
        for (double band : {.5, .8, 1.2, 2.0, 3.0}) {
            auto input = wanting(change, band);
            const double effort = firstEffort(input, advise(input).value());
            CHECK(effort <= last + 1e-9);
            last = effort;
            first = first > 0 ? first : effort;
        }
        CHECK(last < first);
    }
}

TEST_CASE("advice can be stopped") {
    std::stop_source source;
    source.request_stop();
    const auto advice = advise(wanting({{-1, 1, 0}}), source.get_token());
    REQUIRE_FALSE(advice);
    CHECK(advice.error().kind == FaultKind::notPossible);
    CHECK(builtInTexts().has(advice.error().cause.key));
}

TEST_CASE("a recipe in use that cannot be brewed is a fault with its path") {
    auto input = wanting({{-1, 1, 0}});
    input.base.recipe.mash[0].temperature = {95};
    const auto advice = advise(input);
    REQUIRE_FALSE(advice);
    CHECK(advice.error().path.starts_with("/recipe/mash/0"));
}

TEST_CASE("the rules hold for any target, verdicts and locks") {
    CHECK_PROPERTY("sound advice", [] {
        auto input = scenario::cask();
        input.withSettled = false;
        FakeForecaster model(input);
        const auto effect = [] { return .1 * *rc::gen::inRange(-6, 7); };
        for (const auto& lever : levers())
            if (!rowOf(lever).isChoice())
                model.perUnit[lever.id] = {{effect(), effect(), effect()}};
        model.choices[{"yeast", "saison"}] = {{effect(), effect(), effect()}};
        scenario::tasteAt(input, model.base, .1 * *rc::gen::inRange(1, 12));
        for (auto d : allDimensions)
            input.target.windows[d] = {model.base[d] + 5 * effect(), .5 + .25 * *rc::gen::inRange(0, 6)};
        input.verdicts = scenario::verdictsFor(input);
        input.maxMoved = *rc::gen::inRange(1, 5);
        const auto& lever = levers()[*rc::gen::inRange<std::size_t>(0, levers().size())];
        input.locks = {{lever.id, leverValue(input.base, lever.id, *input.pantry)}};
        const auto advice = adviseWith(model, input).value();
        checkSound(input, advice);
        for (const auto& proposal : advice.proposals)
            RC_ASSERT(!leversOf(proposal).contains(lever.id));
    });
}
