// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/adviser.h"

#include "advice/fake_forecaster.h"
#include "advice/scenario.h"
#include "advice/search.h"
#include "quantity/text.h"
#include "support/catch.h"
#include "support/property.h"

#include <cmath>

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

/// Then the least effort leads, not the least cost.
bool onlyNudged(const AdviceInput& input) {
    const auto& verdicts = input.verdicts.values;
    return std::none_of(verdicts.begin(), verdicts.end(), [](const Verdict& v) {
        return v.kind == VerdictKind::move || v.kind == VerdictKind::tasteAgain;
    });
}

/// What must hold for any advice, whatever was asked.
void checkSound(const AdviceInput& input, const Advice& advice) {
    CHECK(leversOf(advice.leaveAlone).empty());
    CHECK(advice.leaveAlone.worth == 0);
    CHECK(advice.proposals.size() <= 3);
    std::set<std::string> used;
    double last = 0;
    for (const auto& proposal : advice.proposals) {
        const auto ids = leversOf(proposal);
        CHECK(!ids.empty());
        CHECK(static_cast<int>(ids.size()) <= input.maxMoved);
        for (const auto& id : ids)
            CHECK(used.insert(id).second); // every proposal stands on levers of its own
        CHECK(proposal.worth > clearlyBetter);
        CHECK(proposal.worth == Approx(advice.leaveAlone.cost - proposal.cost));
        CHECK((proposal.cost >= last || onlyNudged(input)));
        last = proposal.cost;
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

VerdictKind anyKind() {
    return *rc::gen::element(VerdictKind::move, VerdictKind::nudge, VerdictKind::hold, VerdictKind::tasteAgain);
}

} // namespace

TEST_CASE("advice keeps its rules in very different vessels") {
    for (const auto& change :
         {Scores{{-1.5, 1.4, 0}}, Scores{{2, -2, .5}}, Scores{{-3, 0, 2.5}}, Scores{{.8, .8, -.8}}}) {
        const auto input = wanting(change);
        const auto advice = advise(input).value();
        checkSound(input, advice);
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
                    next += move.next[d];
                    settled += move.settled[d];
                }
            CHECK(std::abs(next - (proposal.next[d].value - advice.leaveAlone.next[d].value)) < 1e-9);
            CHECK(std::abs(settled - (proposal.settled[d].value - advice.leaveAlone.settled[d].value)) < 1e-9);
        }
}

TEST_CASE("the same question has the same answer to the last bit") {
    const auto input = wanting({{-1.5, 1.4, .5}});
    const auto one = advise(input).value(), other = advise(input).value();
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
        const auto goal =
            goalFrom(input, shareOf(input, baseline.start), model.trajectory(baseline.start, 0, 3).value());
        Search search(input, baseline, model, goal, {});
        REQUIRE(search.survey());
        CHECK(search.plans() > 1000);
        const auto first = search.exhaustive([](const OptionSet&) { return true; }).value().value();
        CHECK(search.best([](const OptionSet&) { return true; }, predictedInFull).value()->cost <= first.cost * 1.001);
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
    const auto advice = advise(input).value();
    checkSound(input, advice);
    auto all = advice.proposals;
    all.push_back(advice.leaveAlone);
    for (const auto& proposal : all) {
        CHECK_FALSE(input.unavailable.contains(proposal.setting.recipe.yeast));
        for (const auto& part : proposal.setting.recipe.grist)
            CHECK_FALSE(input.unavailable.contains(part.grain));
    }
}

TEST_CASE("on hold nothing is proposed, whatever else could be done") {
    auto input = wanting({{0, 0, 0}});
    for (auto d : allDimensions)
        input.verdicts[d].kind = VerdictKind::hold;
    auto advice = advise(input).value();
    CHECK(advice.proposals.empty());
    CHECK(advice.leaveAlone.setting == input.base);
    input.verdicts[Dimension::acidity].kind = VerdictKind::waitUntil;
    input.verdicts[Dimension::acidity].until = Day{std::chrono::days{20600}};
    advice = advise(input).value();
    CHECK(advice.proposals.empty());
    CHECK(hasKey(advice.notes, "advice.note.acidity.wait"));
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

TEST_CASE("a nudge moves one lever half the way, the cheapest first") {
    auto input = scenario::cask();
    FakeForecaster model(input);
    model.base = {{6, 4, 4}};
    model.perUnit = {{"gravity", {{.4, 0, 0}}}, {"sugar", {{-.4, 0, 0}}}, {"bitterness", {{-.4, 0, 0}}}};
    input.withSettled = false;
    for (auto d : allDimensions) {
        input.model[d] = input.combined[d] = {model.base[d], .5};
        input.target.windows[d] = {model.base[d], 1};
        input.verdicts[d].kind = VerdictKind::hold;
    }
    input.target.windows[Dimension::acidity].wanted = 5;
    auto& acidity = input.verdicts[Dimension::acidity];
    acidity.kind = VerdictKind::nudge;
    acidity.gap = -1;
    const auto nudged = adviseWith(model, input).value();
    checkSound(input, nudged);
    REQUIRE(!nudged.proposals.empty());
    for (const auto& proposal : nudged.proposals)
        CHECK(proposal.moves.size() == 1);
    for (std::size_t i = 1; i < nudged.proposals.size(); ++i)
        CHECK(effortOf(input, nudged.proposals[i]) >= effortOf(input, nudged.proposals[i - 1]));
    acidity.kind = VerdictKind::move;
    const auto moved = adviseWith(model, input).value();
    CHECK(firstEffort(input, nudged) < firstEffort(input, moved));
    // Half a point wanted over three draws, .4 a unit: never past the half-way mark in the long run by more than noise.
    CHECK(nudged.proposals[0].next[Dimension::acidity].value > 5.5);
}

TEST_CASE("where the tasting cannot tell there are drafts, and a titration is offered first") {
    auto input = wanting({{-1, .5, 0}});
    for (auto d : allDimensions)
        input.verdicts[d].kind = VerdictKind::tasteAgain;
    const auto advice = advise(input).value();
    CHECK(!advice.proposals.empty());
    REQUIRE(advice.notes.size() >= 3);
    CHECK(advice.notes[0].key == "advice.note.titrate");
    CHECK(hasKey(advice.notes, "advice.note.tasters"));
    CHECK(hasKey(advice.notes, "advice.note.draft"));
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
    checkSound(input, {.verdicts = {},
                       .now = {},
                       .windows = {},
                       .proposals = {},
                       .leaveAlone = advice.leaveAlone,
                       .prices = {},
                       .notes = {},
                       .faultFirst = false});
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
        double last = 1e9;
        for (double band : {.5, .8, 1.2, 2.0, 3.0}) {
            auto input = wanting(change, band);
            for (auto d : allDimensions)
                input.verdicts[d].kind = VerdictKind::move;
            const double effort = firstEffort(input, advise(input).value());
            CHECK(effort <= last + 1e-9);
            last = effort;
        }
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
        for (auto d : allDimensions) {
            input.model[d] = input.combined[d] = {model.base[d], .5};
            input.target.windows[d] = {model.base[d] + 5 * effect(), .5 + .25 * *rc::gen::inRange(0, 6)};
            input.verdicts[d].kind = anyKind();
            input.verdicts[d].gap = input.target.windows[d].wanted - input.combined[d].mean;
        }
        const auto& lever = levers()[*rc::gen::inRange<std::size_t>(0, levers().size())];
        input.locks = {{lever.id, leverValue(input.base, lever.id, *input.pantry)}};
        const auto advice = adviseWith(model, input).value();
        checkSound(input, advice);
        for (const auto& proposal : advice.proposals)
            RC_ASSERT(!leversOf(proposal).contains(lever.id));
    });
}
