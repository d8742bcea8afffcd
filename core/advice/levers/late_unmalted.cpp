// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/grist.h"
#include "advice/lever_list.h"

#include <algorithm>

namespace staveline::advice {
namespace {

constexpr const char* afterRest = "after rest";

bool isRaw(const brewing::GristPart& part, const ingredient::Pantry& pantry) {
    const auto grain = pantry.grain(part.grain);
    return grain && grain->isRaw();
}

LeverValue read(const Setting& setting, const Stock& stock) {
    const auto& grist = setting.recipe.grist;
    const bool late = std::any_of(grist.begin(), grist.end(), [&](const brewing::GristPart& part) {
        return part.late && isRaw(part, stock.pantry);
    });
    return std::string(late ? afterRest : "start");
}

void apply(Setting& setting, const LeverValue& value, const Stock& stock) {
    for (auto& part : setting.recipe.grist)
        if (isRaw(part, stock.pantry))
            part.late = choice(value) == afterRest;
}

bool applies(const Setting& setting, const AdviceInput& input) {
    return hasLowRest(setting.recipe) && hasRawGrain(setting.recipe, *input.pantry);
}

Message wording(const LeverValue&, const LeverValue& to, const Setting&, const Stock&) {
    return say(choice(to) == afterRest ? "advice.word.lateUnmalted.late" : "advice.word.lateUnmalted.start");
}

std::vector<Message> cautions(const LeverValue& to, const Setting&, const AdviceInput&) {
    if (choice(to) != afterRest)
        return {};
    return {say("caution.mash.lateGrain")};
}

} // namespace

Lever makeLever::lateUnmalted() {
    return {.id = "late_unmalted",
            .order = 1,
            .read = read,
            .apply = apply,
            .applies = applies,
            .wording = wording,
            .cautions = cautions};
}

} // namespace staveline::advice
