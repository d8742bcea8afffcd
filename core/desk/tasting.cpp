// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/tasting.h"

#include "desk/filed.h"
#include "desk/inside.h"
#include "quantity/text.h"

#include <algorithm>
#include <set>

namespace staveline::desk {

using facts::SittingFact;
using tasting::builtInSheet;
using tasting::FaultMark;
using tasting::Target;

namespace {

std::string attributeNames(const std::vector<std::string>& codes) {
    std::string text;
    for (const auto& code : codes)
        if (const tasting::Attribute* attribute = builtInSheet().find(code))
            text += (text.empty() ? "" : ", ") + attribute->name;
    return text;
}

Message saysOf(Dimension d, const tasting::SittingResult& result) {
    const std::string stem = "desk.taste." + std::string(name(d));
    if (!result.spoiledBy[d].empty()) {
        const tasting::FaultRule* rule = builtInSheet().findFault(result.spoiledBy[d]);
        return say(stem + ".spoiled").with("fault", rule ? rule->name : result.spoiledBy[d]);
    }
    const auto& reading = result.dimensions[d];
    if (!reading)
        return say(stem + ".missing").with("missing", attributeNames(result.missing[d]));
    return say(stem + ".reads")
        .with("score", Points{reading->mean})
        .with("half", Points{tasting::z80 * reading->absoluteSe});
}

/// What would help when the error cannot resolve the band.
Message helpOf(Dimension d, const tasting::SittingResult& result, const Target& target) {
    const auto& reading = result.dimensions[d];
    const double band = target.windows[d].band;
    if (!reading || reading->absoluteSe <= band / tasting::bandPerError)
        return {};
    return say("desk.taste.help")
        .with("tasters", std::int64_t{tasting::tastersNeeded({reading->mean, reading->absoluteSe}, band)})
        .with("half", Points{tasting::z80 * band / tasting::bandPerError});
}

bool isWanted(const FaultMark& mark, const Target& target) {
    return std::any_of(target.wantedTraits.begin(), target.wantedTraits.end(), [&](const FaultMark& trait) {
        return trait.fault == mark.fault && mark.severity <= trait.severity;
    });
}

FaultAdvice adviceFor(const FaultMark& mark, const Target& target) {
    FaultAdvice advice{mark, mark.fault, "", "", isWanted(mark, target), false};
    if (const tasting::FaultRule* rule = builtInSheet().findFault(mark.fault)) {
        advice.name = rule->name;
        advice.cause = rule->cause;
        advice.action = rule->action;
        advice.comesFirst = rule->blocksAdvice && mark.severity >= 2 && !advice.wanted;
    }
    return advice;
}

/// Lines of the short sheet that count for a dimension, and how many of them anyone scored.
void count(const tasting::Sitting& sitting, TasteView& view) {
    std::set<std::string> scored, tasters;
    for (const tasting::Score& score : sitting.scores)
        if (score.cold || score.cellar) {
            scored.insert(score.attribute);
            tasters.insert(score.taster);
        }
    for (const tasting::Attribute& attribute : builtInSheet().attributes)
        if (attribute.shortSheet && attribute.dimension) {
            ++view.wanted;
            view.scored += static_cast<int>(scored.count(attribute.code));
        }
    view.tasters.assign(tasters.begin(), tasters.end());
}

} // namespace

Result<std::vector<Filed<SittingFact>>> Desk::sittings(const facts::VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    std::vector<Filed<SittingFact>> all;
    for (const auto& stored : (*record)->of<SittingFact>())
        all.push_back({stored.id, stored.fact});
    std::reverse(all.begin(), all.end());
    return all;
}

Result<TasteView> Desk::taste(const SittingFact& sitting) const {
    auto record = inside_->cellar->vessel(sitting.vessel);
    if (!record)
        return fail(record.error());
    const facts::TargetFact* set = (*record)->latest<facts::TargetFact>(today());
    const Target target = set ? set->target : Target{};
    TasteView view;
    view.result = evaluate(sitting.sitting, builtInSheet());
    for (Dimension d : allDimensions) {
        view.says[d] = saysOf(d, view.result);
        view.help[d] = helpOf(d, view.result, target);
    }
    for (const FaultMark& mark : view.result.faults)
        view.faults.push_back(adviceFor(mark, target));
    count(sitting.sitting, view);
    return view;
}

} // namespace staveline::desk
