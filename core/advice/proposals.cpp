// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/proposals.h"

#include "advice/bands.h"
#include "advice/reasons.h"

#include <algorithm>
#include <cmath>

namespace staveline::advice {
namespace {

/// Each caution once: those of the moves stand at the moves.
std::vector<Message> withoutRepeats(std::vector<Message> cautions, const std::vector<Move>& moves) {
    std::vector<Message> kept;
    for (auto& caution : cautions) {
        const auto sameKey = [&](const Message& other) { return other.key == caution.key; };
        const bool atMove = std::any_of(moves.begin(), moves.end(), [&](const Move& move) {
            return std::any_of(move.cautions.begin(), move.cautions.end(), sameKey);
        });
        if (!atMove && std::none_of(kept.begin(), kept.end(), sameKey))
            kept.push_back(std::move(caution));
    }
    return kept;
}

} // namespace

ProposalWriter::ProposalWriter(const AdviceInput& input, const Baseline& baseline, Forecaster& forecaster)
    : input_(input), baseline_(baseline), forecaster_(forecaster), stock_{*input.pantry, input.unavailable} {}

Move ProposalWriter::moveOf(const LeverMove& move, const Setting& after) const {
    Move told{.lever = move.lever->id,
              .from = move.from,
              .to = move.to,
              .next = {},
              .settled = {},
              .wording = wordingOf(*move.lever, move.from, move.to, after, stock_),
              .cautions = {}};
    if (move.lever->cautions)
        told.cautions = move.lever->cautions(move.to, after, input_);
    return told;
}

PerDimension<int> ProposalWriter::cyclesTo(const Setting& setting) {
    const auto trajectory = forecaster_.trajectory(setting, 0, cyclesLookedAhead);
    PerDimension<int> cycles;
    for (int h = cyclesLookedAhead; h > 0; --h) {
        const auto carried = carriedTo(input_, shareOf(input_, setting), h);
        const auto scores = plus(trajectory->draws[static_cast<std::size_t>(h - 1)].scores, carried.mean);
        for (auto d : allDimensions)
            if (std::abs(scores[d] - input_.target.windows[d].wanted) <= input_.target.windows[d].band)
                cycles[d] = h;
    }
    return cycles;
}

/// What no set of levers makes (a recipe written by hand) cannot be told lever by lever.
void ProposalWriter::addMoves(Proposal& proposal, const std::vector<LeverMove>& chosen) {
    const bool made = applied(baseline_.start, chosen, stock_) == proposal.setting;
    const auto does = contributionsOf(input_, forecaster_, baseline_, made ? chosen : std::vector<LeverMove>{});
    const auto add = [&](const LeverMove& move, const Contribution* part) {
        auto& told = proposal.moves.emplace_back(moveOf(move, proposal.setting));
        if (part)
            told.next = part->next;
        if (part && input_.withSettled)
            told.settled = part->settled;
    };
    for (std::size_t i = 0; i < baseline_.forced.size(); ++i) {
        add(baseline_.forced[i], &does.forced[i]);
        proposal.moves.back().forced = true;
    }
    for (std::size_t i = 0; i < chosen.size(); ++i)
        add(chosen[i], made ? &does.chosen[i] : nullptr);
}

Proposal ProposalWriter::figures(const Scored& plan, const std::vector<LeverMove>& chosen) {
    Proposal proposal;
    proposal.setting = plan.setting;
    addMoves(proposal, chosen);
    const auto bands = bandsOf(input_, forecaster_, plan.setting);
    proposal.title = titleOf(proposal.moves);
    proposal.thisDraw = bands.thisDraw;
    proposal.next = bands.next;
    proposal.settled = bands.settled;
    proposal.ahead = plan.draws.back().mean;
    proposal.loss = plan.loss;
    proposal.cost = plan.cost;
    proposal.refill = refillOf(input_, plan.setting);
    proposal.atNext = plan.trajectory.draws.front();
    proposal.cyclesNeeded = cyclesTo(plan.setting);
    return proposal;
}

void ProposalWriter::explain(Proposal& proposal, const Proposal& alone) {
    const ProposalContext context{input_, proposal, alone};
    auto why = whyOf(context);
    auto reasons = reasonsOf(context);
    auto limits = limitsOf(context, baseline_.start);
    const auto sizing = forecaster_.sizing(proposal.setting);
    limits.insert(limits.end(), sizing.findings.begin(), sizing.findings.end());
    proposal.why = std::move(why);
    proposal.reasons = std::move(reasons);
    proposal.limits = std::move(limits);
    proposal.cautions = withoutRepeats(sizing.cautions, proposal.moves);
}

Proposal ProposalWriter::leaveAlone(const Scored& alone) {
    auto proposal = figures(alone, {});
    explain(proposal, Proposal(proposal));
    return proposal;
}

Proposal ProposalWriter::compared(Proposal proposal, const Proposal& alone) {
    proposal.worth = alone.cost - proposal.cost;
    explain(proposal, alone);
    proposal.title = withCost(std::move(proposal.title), {input_, proposal, alone});
    return proposal;
}

Proposal ProposalWriter::write(const Scored& plan, const std::vector<LeverMove>& chosen, const Proposal& alone) {
    return compared(figures(plan, chosen), alone);
}

Proposal ProposalWriter::usual(const Scored& plan, const std::vector<LeverMove>& differs, const Proposal& alone) {
    auto proposal = figures(plan, differs);
    proposal.title = say("advice.title.usual");
    return compared(std::move(proposal), alone);
}

} // namespace staveline::advice
