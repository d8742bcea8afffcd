// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/grist.h"
#include "advice/lever_list.h"
#include "quantity/constants.h"
#include "quantity/text.h"

namespace staveline::advice {
namespace {

bool isPrecursorMalt(const ingredient::Grain& grain) {
    return grain.kind == ingredient::GrainKind::rye || grain.kind == ingredient::GrainKind::kilned;
}

std::string filler(const Stock& stock) {
    return firstAtHand({"rye_malt", "munich_light", "vienna", "munich_dark"}, stock);
}

LeverValue read(const Setting& setting, const Stock& stock) {
    return percentOf(setting.recipe, stock.pantry, isPrecursorMalt);
}

void apply(Setting& setting, const LeverValue& value, const Stock& stock) {
    exchange(setting.recipe, {number(value), isPrecursorMalt, filler(stock)}, stock);
}

void narrow(LeverRow& row, const Setting& setting, const AdviceInput& input) {
    narrowByGrist(row, setting.recipe, isPrecursorMalt, filler({*input.pantry, input.unavailable}), *input.pantry);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting& after, const Stock& stock) {
    auto word = fromTo(number(to) > 0 ? "advice.word.grain" : "advice.word.grain.none", Share{number(from) / 100},
                       Share{number(to) / 100});
    const auto names = namesOf(after.recipe, stock.pantry, isPrecursorMalt);
    return std::move(word).with("grain",
                                names.empty() ? std::string(builtInTexts().find("advice.grain.precursor")) : names);
}

std::vector<Message> cautions(const LeverValue&, const Setting& after, const AdviceInput& input) {
    const auto rye = percentOf(after.recipe, *input.pantry,
                               [](const ingredient::Grain& g) { return g.kind == ingredient::GrainKind::rye; });
    if (rye < 100 * constants::plan::ryeLimit)
        return {};
    return {say("caution.mash.stuckRunOff")};
}

} // namespace

Lever makeLever::precursorMalt() {
    return {.id = "precursor_malt",
            .read = read,
            .apply = apply,
            .narrow = narrow,
            .wording = wording,
            .cautions = cautions};
}

} // namespace staveline::advice
