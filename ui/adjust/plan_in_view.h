// SPDX-License-Identifier: GPL-3.0-or-later
// The plan in view in a brewer's words: what it is, why, what moves, and what is not at hand for it.
#pragma once

#include "ui/adjust/trial_runner.h"

namespace staveline::ui {

struct PlannedMove {
    QString lever;       ///< "Saccharification temperature"
    Message change;      ///< "66 °C → 63 °C"
    QString does;        ///< "acidity -0.2 next, -0.5 over the years"
    bool tasted = false; ///< next or over the years
};
struct PlanInView {
    Message sentence;  ///< "For this refill: cooler mash and longer ferulic rest."
    Message meanwhile; ///< the same where one more taster goes before it; empty: it is not what is advised
    Message why;       ///< empty: nothing to say
    std::vector<PlannedMove> moves;
    std::vector<Message> missing; ///< what it uses that is not at hand
};

/// Where a plan of the answer stands in it.
enum class PlanRank { best, proposal, alone, usual };
[[nodiscard]] PlanInView planInView(const Answer& answer, const advice::Proposal& proposal, PlanRank rank,
                                    const DisplayUnits& units);
/// What the board tries.
[[nodiscard]] PlanInView planInView(const desk::AdviceJob& job, const advice::Trial& trial,
                                    const std::vector<advice::Move>& moves, const DisplayUnits& units);

/// Of each dimension that will be tasted: "acidity -0.2 next, -0.5 over the years".
[[nodiscard]] QString effectWords(const Scores& next, const std::optional<Scores>& settled);
/// One more taster: what he would settle, or that he would not change the plan; empty where nobody can help today.
[[nodiscard]] Message oneMoreTaster(const advice::Advice& advice, const advice::AdviceInput& input);
/// What the answer notes, and what limits one of its plans, without what the decision says of it.
[[nodiscard]] std::vector<Message> notesBeside(const Answer& answer);
[[nodiscard]] std::vector<Message> limitsBeside(const Answer& answer, const advice::Proposal& proposal);

} // namespace staveline::ui
