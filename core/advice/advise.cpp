// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/adviser.h"
#include "advice/notes.h"
#include "advice/proposals.h"
#include "advice/reasons.h"

#include <algorithm>
#include <limits>

namespace staveline::advice {

using tasting::VerdictKind;

namespace {

constexpr std::size_t mostProposals = 3;
constexpr std::size_t mostPrices = 6;

bool every(const AdviceInput& input, std::initializer_list<VerdictKind> kinds) {
    const auto& verdicts = input.verdicts.values;
    return std::all_of(verdicts.begin(), verdicts.end(), [&](const tasting::Verdict& verdict) {
        return std::find(kinds.begin(), kinds.end(), verdict.kind) != kinds.end();
    });
}

bool isFaultFirst(const AdviceInput& input) {
    const auto& verdicts = input.verdicts.values;
    return std::any_of(verdicts.begin(), verdicts.end(),
                       [](const tasting::Verdict& verdict) { return verdict.kind == VerdictKind::faultFirst; });
}

bool onlyHolds(const AdviceInput& input) {
    return every(input, {VerdictKind::hold, VerdictKind::waitUntil});
}

/// Nothing asks for more than half a step.
bool onlyNudges(const AdviceInput& input) {
    return every(input, {VerdictKind::hold, VerdictKind::waitUntil, VerdictKind::nudge});
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
        const auto share = shareOf(input, baseline->start);
        auto inquiry =
            std::make_unique<Inquiry>(Inquiry{input, *std::move(baseline), goalFrom(input, share, *alone), {}});
        inquiry->search.emplace(inquiry->input, inquiry->baseline, forecaster, inquiry->goal, std::move(stop));
        return inquiry;
    }
};

/// Proposals stand on different levers, so that one which cannot be had leaves the others whole.
bool sharesLever(const Search& search, const OptionSet& options, const std::vector<Scored>& earlier) {
    return std::any_of(options.begin(), options.end(), [&](std::size_t i) {
        return std::any_of(earlier.begin(), earlier.end(), [&](const Scored& plan) {
            return std::any_of(plan.options.begin(), plan.options.end(), [&](std::size_t j) {
                return search.option(i).move.lever == search.option(j).move.lever;
            });
        });
    });
}

bool holdsBackFirst(const Search& search, const OptionSet& options) {
    return std::any_of(options.begin(), options.end(), [&](std::size_t i) { return search.option(i).neverFirst; });
}

Result<std::vector<Scored>> fullPlans(Search& search, double aloneCost) {
    std::vector<Scored> plans;
    while (plans.size() < mostProposals) {
        const auto filter = [&](const OptionSet& options) {
            return !sharesLever(search, options, plans) && !(plans.empty() && holdsBackFirst(search, options));
        };
        auto next = search.best(filter, plans.empty() ? predictedInFull : predictedInFull / 2);
        if (!next)
            return fail(std::move(next).error());
        if (!*next || aloneCost - (*next)->cost <= clearlyBetter)
            break;
        plans.push_back(**std::move(next));
    }
    return plans;
}

/// The least effort first, among single levers that do at least half of what the best of them does.
Result<std::vector<Scored>> nudges(Search& search, double aloneCost) {
    auto singles = search.bestOfEachLever();
    if (!singles)
        return singles;
    double most = clearlyBetter;
    for (const auto& plan : *singles)
        most = std::max(most, aloneCost - plan.cost);
    std::erase_if(*singles, [&](const Scored& plan) {
        const double worth = aloneCost - plan.cost;
        return worth <= clearlyBetter || worth < most / 2;
    });
    std::stable_sort(singles->begin(), singles->end(),
                     [](const Scored& a, const Scored& b) { return a.effort < b.effort; });
    const auto sure = std::find_if(singles->begin(), singles->end(),
                                   [&](const Scored& plan) { return !holdsBackFirst(search, plan.options); });
    if (sure != singles->end())
        std::rotate(singles->begin(), sure, sure + 1);
    else
        singles->clear();
    if (singles->size() > mostProposals)
        singles->resize(mostProposals);
    return singles;
}

Result<std::vector<Scored>> plansFor(Inquiry& inquiry) {
    auto& search = *inquiry.search;
    if (auto done = search.survey(); !done)
        return fail(std::move(done).error());
    const double aloneCost = search.scored({}).cost;
    return onlyNudges(inquiry.input) ? nudges(search, aloneCost) : fullPlans(search, aloneCost);
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
    if (!*plan || (*plan)->cost > alone)
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
        advice.notes.push_back(told({restriction.name, restriction.lock, price, without->title}));
    }
    return {};
}

Result<void> addProposals(Advice& advice, Inquiry& inquiry, ProposalWriter& writer, const std::stop_token& stop) {
    const auto plans = plansFor(inquiry);
    if (!plans)
        return fail(plans.error());
    for (const auto& plan : *plans) {
        if (stop.stop_requested())
            return fail(cancelled());
        advice.proposals.push_back(writer.write(plan, inquiry.search->moves(plan.options), advice.leaveAlone));
    }
    if (plans->empty())
        advice.notes.push_back(say("advice.note.nothingBetter"));
    return {};
}

} // namespace

Result<Advice> adviseWith(Forecaster& forecaster, const AdviceInput& input, std::stop_token stop) {
    const auto inquiry = Inquiry::open(input, forecaster, stop);
    if (!inquiry)
        return fail(inquiry.error());
    if (stop.stop_requested())
        return fail(cancelled());
    auto& asked = **inquiry;
    ProposalWriter writer(asked.input, asked.baseline, forecaster, asked.goal);
    Advice advice{.verdicts = input.verdicts,
                  .now = input.combined,
                  .windows = input.target.windows,
                  .proposals = {},
                  .leaveAlone = writer.leaveAlone(asked.search->scored({})),
                  .prices = {},
                  .notes = notesOf(input, asked.baseline),
                  .faultFirst = isFaultFirst(input)};
    if (advice.faultFirst || onlyHolds(input))
        return advice;
    if (auto done = addProposals(advice, asked, writer, stop); !done)
        return fail(std::move(done).error());
    if (input.withSettled)
        if (auto done = addPrices(advice, input, forecaster, stop); !done)
            return fail(std::move(done).error());
    return advice;
}

Result<Advice> advise(const AdviceInput& input, std::stop_token stop) {
    ModelForecaster forecaster(input);
    return adviseWith(forecaster, input, std::move(stop));
}

} // namespace staveline::advice
