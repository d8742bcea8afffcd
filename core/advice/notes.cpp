// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/notes.h"

#include "quantity/text.h"
#include "tasting/sitting.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace staveline::advice {

using tasting::VerdictKind;

namespace {

bool any(const AdviceInput& input, VerdictKind kind) {
    const auto& verdicts = input.verdicts.values;
    return std::any_of(verdicts.begin(), verdicts.end(), [&](const tasting::Verdict& v) { return v.kind == kind; });
}

Message faultNote(const tasting::Verdict& verdict) {
    const tasting::FaultRule* rule = tasting::builtInSheet().findFault(verdict.fault);
    const std::string& name = rule ? rule->name : verdict.fault;
    if (!verdict.until)
        return say("advice.note.fault").with("fault", name);
    return say("advice.note.fault.until").with("fault", name).with("until", *verdict.until);
}

std::vector<Message> faultNotes(const AdviceInput& input) {
    for (auto d : allDimensions)
        if (const auto& verdict = input.verdicts[d]; verdict.kind == VerdictKind::faultFirst)
            return {faultNote(verdict)};
    return {};
}

void waitNotes(const AdviceInput& input, std::vector<Message>& notes) {
    for (auto d : allDimensions)
        if (const auto& verdict = input.verdicts[d]; verdict.kind == VerdictKind::waitUntil && verdict.until)
            notes.push_back(say(fmt::format("advice.note.{}.wait", name(d))).with("until", *verdict.until));
}

/// A titration is the cheapest help, before more tasters.
void tastingNotes(const AdviceInput& input, std::vector<Message>& notes) {
    if (!any(input, VerdictKind::tasteAgain))
        return;
    if (input.verdicts[Dimension::acidity].kind == VerdictKind::tasteAgain)
        notes.push_back(say("advice.note.titrate"));
    if (input.verdicts[Dimension::funk].kind == VerdictKind::tasteAgain ||
        input.verdicts[Dimension::body].kind == VerdictKind::tasteAgain)
        notes.push_back(say("advice.note.tasters"));
    if (!any(input, VerdictKind::move))
        notes.push_back(say("advice.note.draft"));
}

void reachNotes(const AdviceInput& input, std::vector<Message>& notes) {
    const auto& body = input.verdicts[Dimension::body];
    if (body.kind != VerdictKind::hold && std::abs(body.gap) >= bodyOutOfReach)
        notes.push_back(say("advice.note.bodyOutOfReach")
                            .with("gap", SignedPoints{body.gap}, {OriginKind::verdictGap, Dimension::body}));
    const auto& funk = input.verdicts[Dimension::funk];
    const bool wantsLess = funk.kind == VerdictKind::move || funk.kind == VerdictKind::nudge;
    if (wantsLess && funk.gap < 0)
        notes.push_back(
            say("advice.note.funkDown").with("gap", SignedPoints{funk.gap}, {OriginKind::verdictGap, Dimension::funk}));
    if (input.base.recipe.bitterness > input.target.bitternessCeiling)
        notes.push_back(say("advice.note.overCeiling")
                            .with("bitterness", input.base.recipe.bitterness)
                            .with("ceiling", input.target.bitternessCeiling));
}

} // namespace

std::vector<Message> notesOf(const AdviceInput& input, const Baseline& baseline) {
    auto notes = faultNotes(input);
    notes.insert(notes.end(), baseline.notes.begin(), baseline.notes.end());
    if (!notes.empty() && any(input, VerdictKind::faultFirst))
        return notes;
    waitNotes(input, notes);
    tastingNotes(input, notes);
    reachNotes(input, notes);
    return notes;
}

Message told(const Price& price) {
    return say(price.lock ? "advice.note.lockPrice" : "advice.note.missingPrice")
        .with("restriction", price.restriction)
        .with("plan", render(price.withoutIt))
        .with("price", Number{price.cost, 2});
}

} // namespace staveline::advice
