// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/adviser.h"
#include "advice/notes.h"
#include "advice/proposals.h"
#include "advice/reasons.h"
#include "advice/words.h"

#include <algorithm>
#include <limits>

namespace staveline::advice {

using tasting::VerdictKind;

namespace {

constexpr std::size_t mostProposals = static_cast<std::size_t>(constants::advice::mostProposals);
constexpr std::size_t mostPrices = static_cast<std::size_t>(constants::advice::mostPrices);

/// What has to be waited for is all there is to say.
bool onlyWaits(const AdviceInput& input) {
    const auto& verdicts = input.verdicts.values;
    return any(input.verdicts, VerdictKind::waitUntil) &&
           std::all_of(verdicts.begin(), verdicts.end(), [](const tasting::Verdict& verdict) {
               return verdict.kind == VerdictKind::waitUntil || verdict.kind == VerdictKind::hold ||
                      verdict.kind == VerdictKind::neverTasted;
           });
}

bool mayPropose(const AdviceInput& input) {
    return !any(input.verdicts, VerdictKind::faultFirst) && anySeen(input) && !onlyWaits(input);
}

/// One question put to the forward model: where to start, what to aim at, and the plans from there.
struct Inquiry {
    AdviceInput input;
    Baseline baseline;
    Goal goal;
    std::optional<Search> search;

    static Result<std::unique_ptr<Inquiry>> open(const AdviceInput& input, Forecaster& forecaster,
                                                 std::stop_token stop) {
        auto baseline = prepare(input);
        if (!baseline)
            return fail(std::move(baseline).error());
        // What locks do is told against the settings before them, so those have to be a beer too.
        const auto before = forecaster.trajectory(baseline->before, 0, 1);
        const auto alone = forecaster.trajectory(baseline->start, 0, input.horizon);
        if (!before || !alone)
            return fail(!before ? before.error() : alone.error());
        auto inquiry = std::make_unique<Inquiry>(Inquiry{input, *std::move(baseline), goalOf(input), {}});
        inquiry->search.emplace(inquiry->input, inquiry->baseline, forecaster, inquiry->goal, std::move(stop));
        return inquiry;
    }
};

using Levers = std::set<const Lever*>;

bool meet(const Levers& a, const Levers& b) {
    return std::any_of(a.begin(), a.end(), [&](const Lever* lever) { return b.contains(lever); });
}

bool holdsBackFirst(const Search& search, const OptionSet& options) {
    return std::any_of(options.begin(), options.end(), [&](std::size_t i) { return search.option(i).neverFirst; });
}

/// On levers of their own, so that one which cannot be had leaves the others whole; where there is none left, at least
/// not on the same ones.
Result<std::optional<Scored>> nextPlan(Search& search, const std::vector<Levers>& shown) {
    const auto rescored = shown.empty() ? predictedInFull : predictedInFull / 2;
    auto apart = search.best(
        [&](const OptionSet& options) {
            const auto levers = search.leversOf(options);
            return !(shown.empty() && holdsBackFirst(search, options)) &&
                   std::none_of(shown.begin(), shown.end(), [&](const Levers& other) { return meet(levers, other); });
        },
        rescored);
    if (!apart || *apart || shown.empty())
        return apart;
    return search.best(
        [&](const OptionSet& options) {
            return std::find(shown.begin(), shown.end(), search.leversOf(options)) == shown.end();
        },
        rescored);
}

Result<std::vector<Scored>> plansFor(Search& search) {
    std::vector<Scored> plans;
    std::vector<Levers> shown;
    while (plans.size() < mostProposals) {
        auto next = nextPlan(search, shown);
        if (!next)
            return fail(std::move(next).error());
        if (!*next)
            break;
        shown.push_back(search.leversOf((*next)->options));
        plans.push_back(**std::move(next));
    }
    std::stable_sort(plans.begin(), plans.end(), [](const Scored& a, const Scored& b) { return a.cost < b.cost; });
    const auto leads = std::find_if(plans.begin(), plans.end(),
                                    [&](const Scored& plan) { return !holdsBackFirst(search, plan.options); });
    if (leads != plans.end())
        std::rotate(plans.begin(), leads, leads + 1);
    return plans;
}

/// The same question without one lock or with one more thing at hand.
struct Restriction {
    std::string id, name;
    bool lock = false;
    AdviceInput without;
};

std::vector<Restriction> restrictionsOf(const AdviceInput& input) {
    std::vector<Restriction> all;
    for (const auto& lock : input.locks) {
        const auto& lever = *findLever(lock.lever);
        if (!lever.proposed)
            continue;
        Restriction each{lever.id, rowOf(lever).name, true, input};
        std::erase_if(each.without.locks, [&](const LeverLock& other) { return other.lever == lock.lever; });
        all.push_back(std::move(each));
    }
    for (const auto& id : input.unavailable) {
        const auto yeast = input.pantry->yeast(id);
        const auto grain = input.pantry->grain(id);
        if (!yeast && !grain)
            continue;
        Restriction each{id, yeast ? yeast->name : grain->name, false, input};
        each.without.unavailable.erase(id);
        all.push_back(std::move(each));
    }
    if (all.size() > mostPrices)
        all.resize(mostPrices);
    return all;
}

/// What the best plan would cost, and which it is.
struct Best {
    double cost = 0;
    Message title;
};

Result<Best> bestWithout(const Restriction& restriction, Forecaster& forecaster, const std::stop_token& stop) {
    auto inquiry = Inquiry::open(restriction.without, forecaster, stop);
    if (!inquiry)
        return fail(std::move(inquiry).error());
    auto& search = *(*inquiry)->search;
    if (auto done = search.survey(); !done)
        return fail(std::move(done).error());
    const auto alone = search.scored({}).cost;
    auto plan = search.best([&](const OptionSet& o) { return !holdsBackFirst(search, o); }, predictedInFull);
    if (!plan)
        return fail(std::move(plan).error());
    if (!*plan)
        return Best{alone, say("advice.title.alone")};
    std::vector<Move> moves;
    for (const auto& move : search.moves((*plan)->options))
        moves.push_back({.lever = move.lever->id,
                         .from = move.from,
                         .to = move.to,
                         .next = {},
                         .settled = {},
                         .wording = {},
                         .cautions = {}});
    return Best{(*plan)->cost, titleOf(moves)};
}

Result<void> addPrices(Advice& advice, const AdviceInput& input, Forecaster& forecaster, const std::stop_token& stop) {
    const double best = advice.proposals.empty() ? advice.leaveAlone.cost : advice.proposals.front().cost;
    for (const auto& restriction : restrictionsOf(input)) {
        const auto without = bestWithout(restriction, forecaster, stop);
        if (!without && stop.stop_requested())
            return fail(without.error());
        const double price = without ? best - without->cost : 0;
        if (price <= clearlyBetter)
            continue;
        advice.prices.push_back({restriction.id, restriction.lock, price, without->title});
        advice.notes.push_back(told(advice.prices.back(), restriction.name));
    }
    return {};
}

/// How far the usual recipe is from leaving alone, lever by lever.
std::vector<LeverMove> differences(const Setting& from, const Setting& to, const Stock& stock) {
    std::vector<LeverMove> moves;
    for (const auto& lever : levers())
        if (auto then = lever.read(from, stock), now = lever.read(to, stock); !sameValue(then, now))
            moves.push_back({&lever, std::move(then), std::move(now)});
    return moves;
}

void addUsual(Advice& advice, Inquiry& asked, ProposalWriter& writer) {
    const auto& usual = asked.input.usual;
    if (!usual || *usual == asked.baseline.start)
        return;
    const auto moves = differences(asked.baseline.start, *usual, {*asked.input.pantry, asked.input.unavailable});
    double effort = 0;
    for (const auto& move : moves)
        effort += effortOf(move, narrowedRow(*move.lever, asked.baseline.start, asked.input));
    if (const auto plan = asked.search->predicted(*usual, effort))
        advice.usual = writer.usual(*plan, moves, advice.leaveAlone);
}

Result<void> addProposals(Advice& advice, Inquiry& asked, ProposalWriter& writer, const std::stop_token& stop) {
    auto& search = *asked.search;
    if (auto done = search.survey(); !done)
        return done;
    const auto plans = plansFor(search);
    if (!plans)
        return fail(plans.error());
    for (const auto& plan : *plans) {
        if (stop.stop_requested())
            return fail(cancelled());
        advice.proposals.push_back(writer.write(plan, search.moves(plan.options), advice.leaveAlone));
    }
    advice.tasting = valueOfTasting(asked.input, asked.goal,
                                    search.weighed(static_cast<std::size_t>(constants::advice::plansWeighed)));
    advice.verdicts =
        wordsOf(asked.input, search.scored({}), plans->empty() ? nullptr : &plans->front(), advice.tasting);
    return {};
}

/// Nobody has to be told that nothing is better where all is in place.
bool allHold(const Advice& advice) {
    const auto& verdicts = advice.verdicts.values;
    return std::all_of(verdicts.begin(), verdicts.end(),
                       [](const tasting::Verdict& verdict) { return verdict.kind == VerdictKind::hold; });
}

} // namespace

bool anySeen(const AdviceInput& input) {
    return std::any_of(allDimensions.begin(), allDimensions.end(), [&](Dimension d) { return input.seen[d]; });
}

bool any(const PerDimension<tasting::Verdict>& verdicts, VerdictKind kind) {
    return std::any_of(verdicts.values.begin(), verdicts.values.end(),
                       [&](const tasting::Verdict& verdict) { return verdict.kind == kind; });
}

Result<Advice> adviseWith(Forecaster& forecaster, const AdviceInput& input, std::stop_token stop) {
    const auto inquiry = Inquiry::open(input, forecaster, stop);
    if (!inquiry)
        return fail(inquiry.error());
    if (stop.stop_requested())
        return fail(cancelled());
    auto& asked = **inquiry;
    ProposalWriter writer(asked.input, asked.baseline, forecaster);
    const auto& alone = asked.search->scored({});
    Advice advice;
    advice.now = input.combined;
    advice.windows = input.target.windows;
    advice.leaveAlone = writer.leaveAlone(alone);
    advice.faultFirst = any(input.verdicts, VerdictKind::faultFirst);
    advice.verdicts = wordsOf(asked.input, alone, nullptr, {});
    addUsual(advice, asked, writer);
    const bool open = mayPropose(input);
    if (open)
        if (auto done = addProposals(advice, asked, writer, stop); !done)
            return fail(std::move(done).error());
    advice.notes = notesOf(input, asked.baseline, advice);
    if (open && advice.proposals.empty() && !allHold(advice))
        advice.notes.push_back(say("advice.note.nothingBetter"));
    if (open && input.withSettled)
        if (auto done = addPrices(advice, input, forecaster, stop); !done)
            return fail(std::move(done).error());
    return advice;
}

Result<Advice> advise(const AdviceInput& input, std::stop_token stop) {
    ModelForecaster forecaster(input);
    return adviseWith(forecaster, input, std::move(stop));
}

} // namespace staveline::advice
