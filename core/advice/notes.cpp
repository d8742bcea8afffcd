// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/notes.h"

#include "advice/adviser.h"
#include "advice/reasons.h"
#include "estimate/words.h"
#include "quantity/text.h"
#include "tasting/sitting.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace staveline::advice {

using tasting::VerdictKind;

namespace {

using Verdicts = PerDimension<tasting::Verdict>;

constexpr const char* tasteFirst = "advice.note.tasteFirst";

Message faultNote(const tasting::Verdict& verdict) {
    const tasting::FaultRule* rule = tasting::builtInSheet().findFault(verdict.fault);
    const std::string& name = rule ? rule->name : verdict.fault;
    if (!verdict.until)
        return say("advice.note.fault").with("fault", name);
    return say("advice.note.fault.until").with("fault", name).with("until", *verdict.until);
}

std::vector<Message> faultNotes(const Verdicts& verdicts) {
    for (auto d : allDimensions)
        if (verdicts[d].kind == VerdictKind::faultFirst)
            return {faultNote(verdicts[d])};
    return {};
}

/// What the facts leave open or contradict.
void factNotes(const AdviceInput& input, std::vector<Message>& notes) {
    for (const auto& doubt : input.doubts)
        notes.push_back(estimate::told(doubt));
    notes.insert(notes.end(), input.atVessel.begin(), input.atVessel.end());
    if (input.targetSet)
        return;
    auto note = say("advice.note.noTarget");
    for (auto d : allDimensions)
        note.arguments.push_back(
            {std::string(name(d)), Points{input.target.windows[d].wanted}, {OriginKind::window, d}});
    notes.push_back(std::move(note));
}

void neverTastedNotes(const AdviceInput& input, std::vector<Message>& notes) {
    if (!anySeen(input)) {
        notes.push_back(say(tasteFirst));
        return;
    }
    for (auto d : allDimensions)
        if (!input.seen[d] && !estimate::contradicted(input.doubts, d))
            notes.push_back(say(fmt::format("advice.note.{}.unseen", name(d))));
}

void waitNotes(const Verdicts& verdicts, std::vector<Message>& notes) {
    for (auto d : allDimensions)
        if (verdicts[d].kind == VerdictKind::waitUntil && verdicts[d].until)
            notes.push_back(
                say(fmt::format("advice.note.{}.{}", name(d), verdicts[d].gravityFalls ? "waitGravity" : "wait"))
                    .with("until", *verdicts[d].until));
}

/// One more taster, only where he is likely to change the plan.
void tastingNotes(const AdviceInput& input, const Advice& advice, std::vector<Message>& notes) {
    if (!advice.tasting.dimension)
        return;
    const auto d = *advice.tasting.dimension;
    notes.push_back(say(fmt::format("advice.note.{}.{}", name(d), input.tastedThisCycle[d] ? "oneMore" : "taste")));
    if (d == Dimension::acidity && input.titrationHelps)
        notes.push_back(say("advice.note.titrate"));
    notes.push_back(say(advice.proposals.empty() ? "advice.note.meanwhile.alone" : "advice.note.meanwhile.plan"));
}

/// What takes funk away and may be moved here, in short.
std::string meansAgainstFunk(const AdviceInput& input, const Baseline& baseline) {
    std::vector<std::string> means;
    for (const auto& [id, way] :
         {std::pair("draw", "up"), {"interval", "down"}, {"sugar", "up"}, {"glucan_grain", "up"}}) {
        const auto& lever = *findLever(id);
        if (!baseline.locked.contains(id) && (!lever.advised || lever.advised(input)))
            means.emplace_back(builtInTexts().find(fmt::format("advice.short.{}.{}", id, way)));
    }
    return listed(means);
}

void reachNotes(const AdviceInput& input, const Baseline& baseline, const Verdicts& verdicts,
                std::vector<Message>& notes) {
    const auto open = [&](Dimension d) {
        return input.seen[d] && verdicts[d].kind != VerdictKind::hold && verdicts[d].kind != VerdictKind::waitUntil;
    };
    const auto& body = verdicts[Dimension::body];
    if (open(Dimension::body) && std::abs(body.gap) >= bodyOutOfReach)
        notes.push_back(say(body.gap > 0 ? "advice.note.bodyOutOfReach" : "advice.note.bodyTooFull")
                            .with("gap", SignedPoints{body.gap}, {OriginKind::verdictGap, Dimension::body})
                            .with("reach", Points{bodyOutOfReach}));
    const auto& funk = verdicts[Dimension::funk];
    const bool outside = -funk.gap > input.target.windows[Dimension::funk].band;
    const auto means = open(Dimension::funk) && outside ? meansAgainstFunk(input, baseline) : std::string();
    if (!means.empty())
        notes.push_back(say("advice.note.funkDown")
                            .with("gap", SignedPoints{funk.gap}, {OriginKind::verdictGap, Dimension::funk})
                            .with("means", means));
    const Ibu bitterness = baseline.start.recipe.bitterness; // as locked
    if (bitterness > input.target.bitternessCeiling)
        notes.push_back(say("advice.note.overCeiling")
                            .with("bitterness", bitterness)
                            .with("ceiling", input.target.bitternessCeiling));
}

} // namespace

std::vector<Message> notesOf(const AdviceInput& input, const Baseline& baseline, const Advice& advice) {
    auto notes = faultNotes(advice.verdicts);
    factNotes(input, notes);
    notes.insert(notes.end(), baseline.notes.begin(), baseline.notes.end());
    if (any(advice.verdicts, VerdictKind::faultFirst))
        return notes;
    neverTastedNotes(input, notes);
    waitNotes(advice.verdicts, notes);
    tastingNotes(input, advice, notes);
    reachNotes(input, baseline, advice.verdicts, notes);
    return notes;
}

std::vector<Message> decisionNotes(const AdviceInput& input, const Baseline& baseline, const Advice& advice) {
    auto notes = faultNotes(advice.verdicts);
    const bool faulty = !notes.empty();
    notes.insert(notes.end(), baseline.notes.begin(), baseline.notes.end());
    if (faulty)
        return notes;
    if (!anySeen(input))
        notes.push_back(say(tasteFirst));
    tastingNotes(input, advice, notes);
    return notes;
}

Message told(const RestrictionPrice& price, const std::string& name) {
    return say(price.lock ? "advice.note.lockPrice" : "advice.note.missingPrice")
        .with("restriction", name)
        .with("plan", render(price.withoutIt))
        .with("price", Number{price.cost, 2});
}

} // namespace staveline::advice
