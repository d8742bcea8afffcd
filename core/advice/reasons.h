// SPDX-License-Identifier: GPL-3.0-or-later
// Why a proposal is made and where it ends, in messages whose numbers say where they come from.
//
// Origins, all of them fields of the advice or of the proposal at hand (D is a dimension, N the position of a move):
//   now/D, window/D                 the combined estimate, the target
//   prediction/next/D               the proposal's value at the next draw; prediction/settled/D if kept up
//   alone/next/D, alone/settled/D   the same if left alone
//   change/next/D, change/settled/D the proposal's value minus that of leaving it alone
//   moves/N/next/D                  what a move contributes
//   share/D                         change/next over change/settled, to the hundredth
//   cycles/D                        the proposal's cyclesNeeded
//   vessel/bitterness               of the vessel at the next draw, with the proposal
//   alone/bitterness                the same if left alone
//   threshold/acidity               one difference threshold above the acidity it will measure if left alone
//   move/from, move/to              the two values of the move whose wording it is
#pragma once

#include "advice/lever.h"
#include "advice/outlook.h"
#include "quantity/constants.h"

namespace staveline::advice {

/// Changes below this are not tasted [points].
inline constexpr double untasted = constants::advice::untasted;
/// Changes below this are not told [points].
inline constexpr double leastTold = constants::advice::leastTold;
/// A difference of acidity is noticed from this share of the titratable acidity on.
inline constexpr double acidDifference = constants::advice::acidDifference;
/// So many draws are looked ahead for the first one inside its window.
inline constexpr int cyclesLookedAhead = static_cast<int>(constants::advice::cyclesLookedAhead);

/// What a message about a proposal may look at.
struct ProposalContext {
    const AdviceInput& input;
    const Proposal& proposal;
    const Proposal& alone;
};

/// "a, b and c".
[[nodiscard]] std::string listed(const std::vector<std::string>& words);
/// The chosen moves in short, the one that does most first.
[[nodiscard]] Message titleOf(const std::vector<Move>& moves);
/// "longer ferulic rest"; the lever's name where there is no short text.
[[nodiscard]] std::string shortPhrase(const Move& move);
/// The same, said to work against the dimensions that lose by it and end farther from what is wanted than leaving
/// alone would leave them, by as much as can be tasted.
[[nodiscard]] Message withCost(Message title, const ProposalContext& context);
/// One sentence: what the proposal is for.
[[nodiscard]] Message whyOf(const ProposalContext& context);
[[nodiscard]] std::vector<Message> reasonsOf(const ProposalContext& context);
[[nodiscard]] std::vector<Message> limitsOf(const ProposalContext& context, const Setting& start);
/// Grain, sugar and yeast of the setting that are missing.
[[nodiscard]] std::vector<Message> notAtHand(const Setting& setting, const Stock& stock);

/// Titratable acidity that the vessel will measure at the next draw, as the try board shows it.
[[nodiscard]] GramsPerLitre acidityAtNext(const AdviceInput& input, const Proposal& proposal);
/// The change of the acidity score that one difference threshold makes, from what leaving it alone gives [points].
[[nodiscard]] double acidityThreshold(const AdviceInput& input, const Proposal& alone);

} // namespace staveline::advice
