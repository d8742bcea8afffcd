// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/grist.h"
#include "advice/lever_list.h"

#include <algorithm>

namespace staveline::advice {
namespace {

constexpr Celsius restTemperature{45};

LeverValue read(const Setting& setting, const Stock&) {
    return hasLowRest(setting.recipe) ? setting.recipe.mash.front().minutes.min : 0.0;
}

/// With one rest left nothing can go in late.
void removeRest(brewing::Recipe& recipe) {
    recipe.mash.erase(recipe.mash.begin());
    if (recipe.mash.size() < 2)
        for (auto& part : recipe.grist)
            part.late = false;
}

/// A new rest is followed by a jump: slow heating after it would undo a hot saccharification.
void apply(Setting& setting, const LeverValue& value, const Stock&) {
    auto& mash = setting.recipe.mash;
    const bool present = hasLowRest(setting.recipe);
    if (number(value) <= 0) {
        if (present)
            removeRest(setting.recipe);
    } else if (present) {
        mash.front().minutes = {number(value)};
    } else {
        mash.insert(mash.begin(), {restTemperature, {number(value)}});
        setting.recipe.path = brewing::MashPath::jump;
        setting.recipe.liquorToGrist = std::min(setting.recipe.liquorToGrist, thickStart);
    }
}

bool applies(const Setting& setting, const AdviceInput&) {
    return !setting.recipe.mash.empty();
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting& after, const Stock&) {
    const Minutes was{number(from)}, now{number(to)};
    if (now.min <= 0)
        return say("advice.word.ferulicRest.none").with("from", was, OriginKind::moveFrom);
    const auto at = after.recipe.mash.front().temperature;
    if (was.min <= 0)
        return say(after.recipe.path == brewing::MashPath::jump ? "advice.word.ferulicRest.new.jump"
                                                                : "advice.word.ferulicRest.new.ramp")
            .with("to", now, OriginKind::moveTo)
            .with("at", at)
            .with("liquor", after.recipe.liquorToGrist);
    return fromTo("advice.word.ferulicRest", was, now).with("at", at);
}

/// The rest frees precursors and destroys glucan in one.
std::vector<Message> cautions(const LeverValue& to, const Setting& after, const AdviceInput& input) {
    const auto& grist = after.recipe.grist;
    const bool rawAtStart = std::any_of(grist.begin(), grist.end(), [&](const brewing::GristPart& part) {
        const auto grain = input.pantry->grain(part.grain);
        return grain && grain->isRaw() && !part.late;
    });
    if (number(to) <= 0 || !rawAtStart)
        return {};
    return {say("caution.mash.restEatsGlucan")};
}

} // namespace

Lever makeLever::ferulicRest() {
    return {.id = "ferulic_rest",
            .read = read,
            .apply = apply,
            .applies = applies,
            .wording = wording,
            .cautions = cautions};
}

} // namespace staveline::advice
