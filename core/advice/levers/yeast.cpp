// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return setting.recipe.yeast;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.recipe.yeast = choice(value);
}

/// Brewed at the earliest, it is through before the draw.
bool readyInTime(const ingredient::Yeast& yeast, const AdviceInput& input) {
    return input.daysToBrew + yeast.primaryDays <= input.toThisDraw.d;
}

/// Those at hand that make no trouble: none that kills the house yeast, none that is late where the present one is not.
std::vector<std::string> choices(const AdviceInput& input) {
    const auto present = input.pantry->yeast(input.base.recipe.yeast);
    const bool inTime = present && readyInTime(*present, input);
    std::vector<std::string> ids;
    for (const auto& yeast : input.pantry->yeasts()) {
        const bool kills = yeast.killerPositive && input.houseYeastKillerSensitive;
        const bool late = inTime && !readyInTime(yeast, input);
        if (!input.unavailable.contains(yeast.id) && !kills && !late)
            ids.push_back(yeast.id);
    }
    return ids;
}

std::string nameOf(const LeverValue& value, const Stock& stock) {
    const auto yeast = stock.pantry.yeast(choice(value));
    return yeast ? yeast->name : choice(value);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock& stock) {
    return say("advice.word.yeast").with("to", nameOf(to, stock)).with("from", nameOf(from, stock));
}

std::vector<Message> cautions(const LeverValue& to, const Setting&, const AdviceInput& input) {
    std::vector<Message> found;
    const auto yeast = input.pantry->yeast(choice(to));
    if (!yeast)
        return found;
    if (yeast->diastatic())
        found.push_back(say("caution.yeast.diastatic"));
    if (yeast->killerPositive && input.houseYeastKillerSensitive)
        found.push_back(say("caution.yeast.killer"));
    if (yeast->pof && input.brettEstablished)
        found.push_back(say("caution.yeast.youngBeerOnly"));
    return found;
}

/// Its enzyme goes on opening old dextrin: the effect has no sure sign and cannot be taken back.
bool neverFirst(const LeverValue& to, const Stock& stock) {
    const auto yeast = stock.pantry.yeast(choice(to));
    return yeast && yeast->diastatic();
}

} // namespace

Lever makeLever::yeast() {
    return {.id = "yeast",
            .read = read,
            .apply = apply,
            .choices = choices,
            .wording = wording,
            .cautions = cautions,
            .neverFirst = neverFirst};
}

} // namespace staveline::advice
