// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/words.h"

#include "advice/adviser.h"

#include <cmath>
#include <fmt/core.h>

namespace staveline::advice {

using tasting::Verdict;
using tasting::VerdictKind;

namespace {

Message numbers(const AdviceInput& input, Dimension d, std::string_view key) {
    return withNumbers(key, d, input.combined[d], input.target.windows[d]);
}

/// "advice.verdict.move.acidity.much".
std::string directed(std::string_view word, Dimension d, const Verdict& verdict) {
    return fmt::format("advice.verdict.{}.{}.{}", word, name(d), verdict.gap < 0 ? "much" : "little");
}

/// Which way follows from the plan: a score that is in place now may be about to leave it.
Verdict move(const AdviceInput& input, Dimension d, const Expected& alone, const Expected& with) {
    auto verdict = input.verdicts[d];
    verdict.kind = VerdictKind::move;
    verdict.up = with.mean[d] > alone.mean[d];
    const tasting::TargetWindow& window = input.target.windows[d];
    const bool asItTastes = std::abs(verdict.gap) > window.band && verdict.up == (verdict.gap > 0);
    if (asItTastes)
        verdict.reason = numbers(input, d,
                                 surelyOutside(verdict.gap, verdict.sd, window) ? directed("move", d, verdict)
                                                                                : "advice.verdict.lean");
    else
        verdict.reason = numbers(input, d, "advice.verdict.ahead")
                             .with("draws", std::int64_t{input.horizon})
                             .with("alone", Points{alone.mean[d]})
                             .with("with", Points{with.mean[d]});
    return verdict;
}

/// Beside a plan for another score nothing is said of what else could be brewed.
Verdict leave(const AdviceInput& input, Dimension d, bool planned) {
    auto verdict = input.verdicts[d];
    verdict.kind = VerdictKind::leaveAlone;
    const char* word = planned ? "beside" : "leave";
    verdict.reason =
        numbers(input, d,
                surelyOutside(verdict.gap, verdict.sd, input.target.windows[d]) ? directed(word, d, verdict)
                : planned                                                       ? "advice.verdict.beside.near"
                                                                                : "advice.verdict.leave.near");
    return verdict;
}

Verdict again(const AdviceInput& input, Dimension d) {
    auto verdict = input.verdicts[d];
    verdict.kind = VerdictKind::tasteAgain;
    verdict.firstOfCycle = !input.tastedThisCycle[d];
    const bool titrate = d == Dimension::acidity && input.titrationHelps;
    verdict.reason = numbers(input, d,
                             verdict.firstOfCycle ? "advice.verdict.again.first"
                             : titrate            ? "advice.verdict.again.titrate"
                                                  : "advice.verdict.again");
    return verdict;
}

} // namespace

PerDimension<Verdict> wordsOf(const AdviceInput& input, const Scored& alone, const Scored* plan,
                              const TastingValue& value) {
    auto words = input.verdicts;
    for (auto d : allDimensions) {
        const auto kind = words[d].kind;
        if (kind == VerdictKind::faultFirst || kind == VerdictKind::waitUntil || kind == VerdictKind::neverTasted)
            continue;
        if (value.dimension == d)
            words[d] = again(input, d);
        else if (plan && alone.loss[d] - plan->loss[d] >= clearlyBetter)
            words[d] = move(input, d, alone.draws.back(), plan->draws.back());
        else if (kind != VerdictKind::hold)
            words[d] = leave(input, d, plan != nullptr);
    }
    return words;
}

} // namespace staveline::advice
