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

ProposalWriter::ProposalWriter(const AdviceInput& input, const Baseline& baseline, Forecaster& forecaster,
                               const Goal& goal)
    : input_(input), baseline_(baseline), forecaster_(forecaster),
      goal_(goal), stock_{*input.pantry, input.unavailable} {}

Move ProposalWriter::moveOf(const LeverMove& move, const Contribution& does, const Setting& after) const {
    Move told{.lever = move.lever->id,
              .from = move.from,
              .to = move.to,
              .next = does.next,
              .settled = does.settled,
              .wording = wordingOf(*move.lever, move.from, move.to, after, stock_),
              .cautions = {}};
    if (move.lever->cautions)
        told.cautions = move.lever->cautions(move.to, after, input_);
    return told;
}

PerDimension<int> ProposalWriter::cyclesTo(const Setting& setting) {
    const auto draws = anchored(*forecaster_.trajectory(setting, 0, cyclesLookedAhead), goal_.deviation);
    PerDimension<int> cycles;
    for (auto d : allDimensions) {
        const auto& window = input_.target.windows[d];
        const auto inside = std::find_if(draws.begin(), draws.end(), [&](const Scores& scores) {
            return std::abs(scores[d] - window.wanted) <= window.band;
        });
        cycles[d] = inside == draws.end() ? 0 : static_cast<int>(inside - draws.begin()) + 1;
    }
    return cycles;
}

Proposal ProposalWriter::figures(const Scored& plan, const std::vector<LeverMove>& chosen) {
    Proposal proposal;
    const auto does = contributionsOf(forecaster_, baseline_, chosen, stock_, input_.withSettled);
    for (std::size_t i = 0; i < baseline_.forced.size(); ++i) {
        proposal.moves.push_back(moveOf(baseline_.forced[i], does.forced[i], plan.setting));
        proposal.moves.back().forced = true;
    }
    for (std::size_t i = 0; i < chosen.size(); ++i)
        proposal.moves.push_back(moveOf(chosen[i], does.chosen[i], plan.setting));
    const auto bands = bandsOf(input_, forecaster_, plan.setting);
    proposal.title = titleOf(proposal.moves);
    proposal.setting = plan.setting;
    proposal.thisDraw = bands.thisDraw;
    proposal.next = bands.next;
    proposal.settled = bands.settled;
    proposal.cost = plan.cost;
    proposal.refill = refillOf(input_, plan.setting);
    proposal.atNext = plan.trajectory.draws.front();
    proposal.cyclesNeeded = cyclesTo(plan.setting);
    return proposal;
}

void ProposalWriter::explain(Proposal& proposal, const Proposal& alone) {
    const ProposalContext context{input_, goal_, proposal, alone};
    auto reasons = reasonsOf(context);
    auto limits = limitsOf(context, baseline_.start);
    const auto sizing = forecaster_.sizing(proposal.setting);
    limits.insert(limits.end(), sizing.findings.begin(), sizing.findings.end());
    proposal.reasons = std::move(reasons);
    proposal.limits = std::move(limits);
    proposal.cautions = withoutRepeats(sizing.cautions, proposal.moves);
}

Proposal ProposalWriter::leaveAlone(const Scored& alone) {
    auto proposal = figures(alone, {});
    explain(proposal, Proposal(proposal));
    return proposal;
}

Proposal ProposalWriter::write(const Scored& plan, const std::vector<LeverMove>& chosen, const Proposal& alone) {
    auto proposal = figures(plan, chosen);
    proposal.worth = alone.cost - plan.cost;
    explain(proposal, alone);
    return proposal;
}

} // namespace staveline::advice
