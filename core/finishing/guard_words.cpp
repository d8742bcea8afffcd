// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/guard_words.h"

namespace staveline::finishing {
namespace {

Message pressureOf(const GuardVerdict& verdict) {
    const Pressures& all = verdict.pressures;
    if (!verdict.gravity)
        return say("finishing.pack.pressure_unknown")
            .with("pressure", all.warmest)
            .with("warmest", verdict.warmest)
            .with("all", all.all());
    return say("finishing.pack.pressure")
        .with("pressure", all.warmest)
        .with("warmest", verdict.warmest)
        .with("all", all.all())
        .with("residual", all.residual)
        .with("priming", all.priming)
        .with("extract", all.extract)
        .with("fruit", all.fruit);
}

/// Both are known. How much sugar or extract is too much is said by the refusal.
Message marginOf(const GuardVerdict& verdict) {
    if (verdict.margin()->barOverAir < 0)
        return say("finishing.pack.over").with("limit", *verdict.limit).with("margin", -*verdict.margin());
    return say("finishing.pack.margin")
        .with("limit", *verdict.limit)
        .with("margin", *verdict.margin())
        .with("volumes", *verdict.marginVolumes());
}

} // namespace

Message answerWords(const GuardVerdict& verdict) {
    switch (verdict.answer) {
    case GuardAnswer::clear:
        return say("finishing.pack.clear").with("until", *verdict.until);
    case GuardAnswer::thin:
        return say("finishing.pack.thin").with("until", *verdict.until);
    case GuardAnswer::overridden:
        return say("finishing.pack.overridden").with("reason", verdict.reason);
    case GuardAnswer::refused:
        break;
    }
    return say("finishing.pack.refused");
}

std::vector<Message> pressureWords(const GuardVerdict& verdict) {
    std::vector<Message> words = {pressureOf(verdict)};
    if (verdict.margin())
        words.push_back(marginOf(verdict));
    return words;
}

Message residualWords(const Residual& residual, Co2Volumes wanted) {
    if (residual.measured)
        return say("finishing.pack.residual").with("held", residual.value);
    return say("finishing.pack.residual_guessed")
        .with("held", residual.value)
        .with("least", residual.least)
        .with("flat", wanted - (residual.value - residual.least));
}

} // namespace staveline::finishing
