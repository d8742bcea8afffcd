// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/grist.h"
#include "advice/lever_list.h"
#include "quantity/constants.h"
#include "quantity/text.h"

namespace staveline::advice {
namespace {

bool isGlucanGrain(const ingredient::Grain& grain) {
    return grain.isGlucanRich();
}

std::string filler(const Stock& stock) {
    return firstAtHand({"flaked_oats", "flaked_barley", "oat_malt"}, stock);
}

LeverValue read(const Setting& setting, const Stock& stock) {
    return percentOf(setting.recipe, stock.pantry, isGlucanGrain);
}

/// A rest at 45 C destroys glucan, so new raw grain goes in after it.
void apply(Setting& setting, const LeverValue& value, const Stock& stock) {
    const auto id = filler(stock);
    const auto grain = stock.pantry.grain(id);
    exchange(setting.recipe, {number(value), isGlucanGrain, id, grain && grain->isRaw() && hasLowRest(setting.recipe)},
             stock);
}

void narrow(LeverRow& row, const Setting& setting, const AdviceInput& input) {
    narrowByGrist(row, setting.recipe, isGlucanGrain, filler({*input.pantry, input.unavailable}), *input.pantry);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting& after, const Stock& stock) {
    auto word = fromTo(number(to) > 0 ? "advice.word.grain" : "advice.word.grain.none", Share{number(from) / 100},
                       Share{number(to) / 100});
    const auto names = namesOf(after.recipe, stock.pantry, isGlucanGrain);
    return std::move(word).with("grain",
                                names.empty() ? std::string(builtInTexts().find("advice.grain.glucan")) : names);
}

std::vector<Message> cautions(const LeverValue& to, const Setting& after, const AdviceInput&) {
    std::vector<Message> found;
    if (number(to) >= 100 * constants::plan::glucanLimit)
        found.push_back(say("caution.mash.stuckRunOff"));
    if (number(to) > 0 && hasLowRest(after.recipe))
        found.push_back(say("caution.mash.lateGrain"));
    return found;
}

} // namespace

Lever makeLever::glucanGrain() {
    return {
        .id = "glucan_grain", .read = read, .apply = apply, .narrow = narrow, .wording = wording, .cautions = cautions};
}

} // namespace staveline::advice
