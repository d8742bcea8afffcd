// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/proposals.h"

#include "advice/cautions.h"
#include "advice/fake_forecaster.h"
#include "advice/reasons.h"
#include "advice/scenario.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <algorithm>
#include <cmath>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::tasting;

namespace {

/// Says the same caution twice, and one that a move also brings.
class TalkativeForecaster : public FakeForecaster {
public:
    using FakeForecaster::FakeForecaster;
    Sizing sizing(const Setting& setting) override {
        auto sizing = FakeForecaster::sizing(setting);
        sizing.findings = {say("caution.mash.lateGrain")};
        sizing.cautions = {say("caution.mash.acid"), say("caution.mash.acid"), say("caution.fermenter.sugarOut")};
        return sizing;
    }
};

struct Bench {
    AdviceInput input = scenario::cask();
    TalkativeForecaster model{input};
    Baseline baseline;

    Bench() {
        model.base = {{6, 4, 4}};
        model.perUnit = {{"sugar", {{-.5, -.3, -.2}}}, {"gravity", {{.5, .2, .6}}}};
        model.draws = 16;
        model.spread = .3;
        scenario::tasteAt(input, model.base, .2);
        for (auto d : allDimensions)
            input.target.windows[d] = {model.base[d], .5};
        input.target.windows[Dimension::acidity].wanted = 4.8;
        input.verdicts = scenario::verdictsFor(input);
    }
    void prepareAll() { baseline = prepare(input).value(); }
    Scored plan(const std::vector<LeverMove>& moves) {
        const Stock stock{*input.pantry, input.unavailable};
        Scored scored;
        scored.setting = applied(baseline.start, moves, stock);
        scored.trajectory = model.trajectory(scored.setting, 0, input.horizon).value();
        scored.draws = expectedDraws(scored.trajectory.draws, carriedAhead(input, shareOf(input, scored.setting)));
        scored.loss = lossOf(goalOf(input), scored.draws);
        scored.cost = 1;
        return scored;
    }
    [[nodiscard]] LeverMove move(const char* id, LeverValue to) const {
        return {findLever(id), leverValue(baseline.start, id, *input.pantry), std::move(to)};
    }
};

bool hasKey(const std::vector<Message>& messages, std::string_view key) {
    return std::any_of(messages.begin(), messages.end(), [&](const Message& m) { return m.key == key; });
}

} // namespace

TEST_CASE("a proposal carries its setting, litres, moves and worth") {
    Bench bench;
    bench.prepareAll();
    ProposalWriter writer(bench.input, bench.baseline, bench.model);
    auto alone = writer.leaveAlone(bench.plan({}));
    alone.cost = 3;
    const auto moves = std::vector<LeverMove>{bench.move("sugar", 10.0), bench.move("draw", 90.0)};
    const auto proposal = writer.write(bench.plan(moves), moves, alone);
    CHECK(proposal.setting.recipe.sugarShare.of1 == Approx(.1));
    CHECK(proposal.refill.l == Approx(95));
    CHECK(proposal.worth == Approx(2));
    REQUIRE(proposal.moves.size() == 2);
    CHECK(proposal.moves[0].lever == "sugar");
    CHECK(number(proposal.moves[0].from) == 0);
    CHECK(number(proposal.moves[0].to) == 10);
    CHECK(render(proposal.moves[1].wording) == "Draw 90.0 L instead of 74.0 L");
    CHECK(render(alone.title) == "Leave it alone");
    CHECK(alone.moves.empty());
    CHECK(alone.refill.l == Approx(79));
}

TEST_CASE("each caution is said once, at its move where there is one") {
    Bench bench;
    bench.prepareAll();
    ProposalWriter writer(bench.input, bench.baseline, bench.model);
    const auto alone = writer.leaveAlone(bench.plan({}));
    CHECK(alone.cautions.size() == 2);
    const auto moves = std::vector<LeverMove>{bench.move("sugar", 10.0)};
    const auto proposal = writer.write(bench.plan(moves), moves, alone);
    CHECK(hasKey(proposal.moves[0].cautions, "caution.fermenter.sugarOut"));
    CHECK(proposal.cautions.size() == 1);
    CHECK(hasKey(proposal.cautions, "caution.mash.acid"));
}

TEST_CASE("of the cautions those that leaving alone does not bring are added") {
    Proposal alone, plan;
    alone.cautions = {say("caution.kettle.hotWort"), say("caution.fermenter.cleaners")};
    Move sugar{.lever = "sugar", .from = 0.0, .to = 10.0, .next = {}, .settled = {}, .wording = {}, .cautions = {}};
    sugar.cautions = {say("caution.fermenter.sugarOut")};
    plan.moves = {sugar};
    plan.cautions = {say("caution.kettle.hotWort").with("volume", Litres{80}), say("caution.mash.acid")};
    const auto added = addedCautions(plan, alone);
    REQUIRE(added.size() == 2);
    CHECK(added[0].key == "caution.fermenter.sugarOut");
    CHECK(added[1].key == "caution.mash.acid");
    CHECK(cautionsOf(plan).size() == 3);
    CHECK(addedCautions(alone, alone).empty());
}

TEST_CASE("what the kit says stands among the limits") {
    Bench bench;
    bench.prepareAll();
    ProposalWriter writer(bench.input, bench.baseline, bench.model);
    CHECK(hasKey(writer.leaveAlone(bench.plan({})).limits, "caution.mash.lateGrain"));
}

TEST_CASE("forced moves come first in every proposal and are marked") {
    Bench bench;
    bench.input.locks = {{"gravity", 13.5}};
    bench.prepareAll();
    ProposalWriter writer(bench.input, bench.baseline, bench.model);
    const auto alone = writer.leaveAlone(bench.plan({}));
    REQUIRE(alone.moves.size() == 1);
    CHECK(alone.moves[0].forced);
    CHECK(render(alone.title) == "Leave it alone");
    const auto moves = std::vector<LeverMove>{bench.move("sugar", 10.0)};
    const auto proposal = writer.write(bench.plan(moves), moves, alone);
    REQUIRE(proposal.moves.size() == 2);
    CHECK(proposal.moves[0].forced);
    CHECK_FALSE(proposal.moves[1].forced);
    CHECK(render(proposal.title) == "More sugar");
    // Two units of gravity, settled.
    CHECK(proposal.moves[0].settled.value()[Dimension::body] == Approx(1.2));
}

TEST_CASE("cycles are counted to the first draw inside the window") {
    Bench bench;
    bench.input.target.windows[Dimension::acidity] = {5, .2};
    bench.prepareAll();
    ProposalWriter writer(bench.input, bench.baseline, bench.model);
    const auto alone = writer.leaveAlone(bench.plan({}));
    CHECK(alone.cyclesNeeded[Dimension::acidity] == 0);
    CHECK(alone.cyclesNeeded[Dimension::funk] == 1);
    // Two units of sugar take a point in the long run: .2 is left when (1 - f)^n first is at most .2.
    const auto moves = std::vector<LeverMove>{bench.move("sugar", 10.0)};
    const int expected = static_cast<int>(std::ceil(std::log(.2) / std::log(1 - bench.model.share())));
    const auto proposal = writer.write(bench.plan(moves), moves, alone);
    CHECK(proposal.cyclesNeeded[Dimension::acidity] == expected);
    CHECK(hasKey(proposal.limits, "advice.limit.acidity.cycles"));
    CHECK(hasKey(alone.limits, "advice.limit.acidity.notReached"));
    CHECK_FALSE(hasKey(alone.limits, "advice.limit.funk.notReached"));
}

TEST_CASE("a lever at its bound is named, one inside is not") {
    Bench bench;
    bench.prepareAll();
    ProposalWriter writer(bench.input, bench.baseline, bench.model);
    const auto alone = writer.leaveAlone(bench.plan({}));
    for (double sugar : {10.0, 15.0}) {
        const auto moves = std::vector<LeverMove>{bench.move("sugar", sugar)};
        const auto proposal = writer.write(bench.plan(moves), moves, alone);
        CHECK(hasKey(proposal.limits, "advice.limit.bound") == (sugar == 15));
    }
    const auto moves = std::vector<LeverMove>{bench.move("bitterness", 20.0)}; // the ceiling of the target
    const auto proposal = writer.write(bench.plan(moves), moves, alone);
    REQUIRE(hasKey(proposal.limits, "advice.limit.bound"));
    for (const auto& limit : proposal.limits)
        if (limit.key == "advice.limit.bound")
            CHECK(render(limit) == "At its limit: bitterness of the refill, 20 IBU.");
}

TEST_CASE("without settled columns nothing is said about years") {
    Bench bench;
    for (bool settled : {true, false}) {
        bench.input.withSettled = settled;
        bench.prepareAll();
        ProposalWriter writer(bench.input, bench.baseline, bench.model);
        const auto alone = writer.leaveAlone(bench.plan({}));
        const auto moves = std::vector<LeverMove>{bench.move("sugar", 10.0)};
        const auto proposal = writer.write(bench.plan(moves), moves, alone);
        CHECK(hasKey(proposal.reasons, "advice.reason.repeated") == settled);
        CHECK(hasKey(proposal.reasons, "advice.reason.acidity.slow") == settled);
        CHECK(proposal.moves[0].settled.has_value() == settled);
        CHECK((!settled || proposal.moves[0].settled.value()[Dimension::acidity] != 0));
        CHECK_FALSE(hasKey(alone.reasons, "advice.reason.repeated"));
    }
}

TEST_CASE("the slow share is the share of a cycle where effects only blend in") {
    Bench bench;
    bench.prepareAll();
    ProposalWriter writer(bench.input, bench.baseline, bench.model);
    const auto alone = writer.leaveAlone(bench.plan({}));
    const auto moves = std::vector<LeverMove>{bench.move("sugar", 10.0)};
    const auto reasons = writer.write(bench.plan(moves), moves, alone).reasons;
    const auto slow = std::find_if(reasons.begin(), reasons.end(),
                                   [](const Message& m) { return m.key == "advice.reason.acidity.slow"; });
    REQUIRE(slow != reasons.end());
    CHECK(std::get<Amount>(slow->arguments[0].value).value == Approx(bench.model.share()).margin(.005));
}
