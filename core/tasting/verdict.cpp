// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/verdict.h"

#include "quantity/day_limits.h"
#include "quantity/text.h"
#include "tasting/statistics.h"

#include <algorithm>
#include <cmath>

namespace staveline::tasting {
namespace {

/// Texts of the tasting room inside another text: advice that is itself looked up.
std::string words(const std::string& key) {
    return render(say(key));
}

bool blocks(const VerdictContext& context) {
    return context.fault && (!context.faultRule || context.faultRule->blocksAdvice);
}

Verdict faultFirst(Verdict v, const VerdictContext& context) {
    v.kind = VerdictKind::faultFirst;
    v.fault = *context.fault;
    const auto* rule = context.faultRule;
    if (!rule) {
        v.reason = say("tasting.verdict.fault_unknown").with("fault", v.fault);
        return v;
    }
    v.until = clearsOn(*rule, context.faultOn);
    v.reason = faultWords(*rule, v.until);
    return v;
}

Verdict waitUntil(Verdict v, Dimension d, const Estimate& estimate, const TargetWindow& window,
                  const VerdictContext& context) {
    v.kind = VerdictKind::waitUntil;
    v.until = std::min(lastDay, context.modelArrives.value_or(context.today + std::chrono::days{waitWithoutModel}));
    v.gravityFalls = context.gravityFalling;
    const char* key = v.gravityFalls ? "tasting.verdict.wait_gravity" : "tasting.verdict.wait_arrives";
    v.reason = withNumbers(key, d, estimate, window).with("until", *v.until);
    return v;
}

Verdict neverTasted(Verdict v, Dimension d, bool contradicted) {
    v.kind = VerdictKind::neverTasted;
    v.gap = 0;
    v.up = false;
    v.reason = say(contradicted ? "tasting.verdict.contradicted" : "tasting.verdict.never." + std::string(name(d)));
    return v;
}

/// "tasting.verdict.open.acidity.much", or near where the score itself is inside the band.
std::string openKey(Dimension d, double gap, double sd, const TargetWindow& window) {
    if (!surelyOutside(gap, sd, window))
        return "tasting.verdict.near";
    return "tasting.verdict.open." + std::string(name(d)) + (gap < 0 ? ".much" : ".little");
}

} // namespace

std::optional<Day> clearsOn(const FaultRule& rule, Day found) {
    if (!rule.blocksAdvice || rule.waitDays <= 0)
        return {};
    return std::min(lastDay, found + std::chrono::days{rule.waitDays});
}

Message faultWords(const FaultRule& rule, std::optional<Day> until) {
    return say(until ? "tasting.verdict.fault_until" : "tasting.verdict.fault")
        .with("fault", rule.name)
        .with("action", rule.action)
        .with("draw", words(rule.drawAllowed ? "tasting.draw.allowed" : "tasting.draw.not"))
        .with("refill", words(rule.refillAdvice))
        .with("until", until.value_or(Day{}));
}

std::optional<FaultMark> worstUnwantedFault(const SittingResult& result, const Target& target,
                                            const TastingSheet& sheet) {
    const auto wanted = [&](const FaultMark& mark) {
        return std::any_of(target.wantedTraits.begin(), target.wantedTraits.end(),
                           [&](const auto& w) { return w.fault == mark.fault && mark.severity <= w.severity; });
    };
    std::optional<FaultMark> worst;
    int worstRank = 0;
    for (const auto& mark : result.faults) {
        if (mark.severity < 2 || wanted(mark))
            continue;
        const auto* rule = sheet.findFault(mark.fault);
        const int rank = mark.severity + (!rule || rule->blocksAdvice ? 10 : 0);
        if (rank > worstRank) {
            worst = mark;
            worstRank = rank;
        }
    }
    return worst;
}

int tastersNeeded(const Estimate& estimate, double band, const TastingNoise& noise) {
    const double one = noise.taster * noise.taster +
                       (noise.tasterByTemperature * noise.tasterByTemperature + noise.residual * noise.residual) / 2;
    const double wanted = bandPerError * bandPerError / (band * band);
    const double have = 1 / (estimate.sd * estimate.sd);
    return std::max(1, static_cast<int>(std::ceil((wanted - have) * one - 1e-9)));
}

bool onTarget(const Estimate& estimate, const TargetWindow& window) {
    return std::abs(window.wanted - estimate.mean) + z80 * estimate.sd <= window.band;
}

bool surelyOutside(double gap, double sd, const TargetWindow& window) {
    return std::abs(gap) > std::max(window.band, z80 * sd);
}

Message withNumbers(std::string_view key, Dimension d, const Estimate& estimate, const TargetWindow& window) {
    return say(key)
        .with("by", Points{std::abs(window.wanted - estimate.mean)}, {OriginKind::verdictGap, d})
        .with("half", Points{z80 * estimate.sd}, {OriginKind::verdictHalf, d})
        .with("score", Points{estimate.mean}, {OriginKind::now, d})
        .with("wanted", Points{window.wanted}, {OriginKind::window, d})
        .with("band", Points{window.band}, {OriginKind::window, d});
}

Verdict standing(Dimension dimension, const Estimate& estimate, const TargetWindow& window,
                 const VerdictContext& context) {
    Verdict v;
    v.gap = window.wanted - estimate.mean;
    v.sd = estimate.sd;
    v.up = v.gap > 0;
    if (blocks(context))
        return faultFirst(std::move(v), context);
    const bool hold = context.tasted && onTarget(estimate, window);
    if (!hold && (context.gravityFalling || (context.tasted && context.modelArrives)))
        return waitUntil(std::move(v), dimension, estimate, window, context);
    if (!context.tasted)
        return neverTasted(std::move(v), dimension, context.contradicted);
    v.kind = hold ? VerdictKind::hold : VerdictKind::open;
    v.reason = withNumbers(hold ? "tasting.verdict.hold" : openKey(dimension, v.gap, v.sd, window), dimension, estimate,
                           window);
    return v;
}

} // namespace staveline::tasting
