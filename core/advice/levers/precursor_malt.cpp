// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/grist.h"
#include "advice/lever_list.h"
#include "quantity/constants.h"
#include "quantity/text.h"

namespace staveline {
namespace {

bool isPrecursorMalt(const Grain& grain) {
    return grain.kind == GrainKind::rye || grain.kind == GrainKind::kilned;
}

std::string filler(const Larder& larder) {
    return firstAtHand({"rye_malt", "munich_light", "vienna", "munich_dark"}, larder);
}

LeverValue read(const Setting& setting, const Larder& larder) {
    return percentOf(setting.recipe, larder.pantry, isPrecursorMalt);
}

void apply(Setting& setting, const LeverValue& value, const Larder& larder) {
    exchange(setting.recipe, {number(value), isPrecursorMalt, filler(larder)}, larder);
}

void narrow(LeverRow& row, const Setting& setting, const AdviceInput& input) {
    narrowByGrist(row, setting.recipe, isPrecursorMalt, filler({*input.pantry, input.unavailable}), *input.pantry);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting& after, const Larder& larder) {
    auto word = fromTo(number(to) > 0 ? "advice.word.grain" : "advice.word.grain.none", Share{number(from) / 100},
                       Share{number(to) / 100});
    const auto names = namesOf(after.recipe, larder.pantry, isPrecursorMalt);
    return std::move(word).with("grain",
                                names.empty() ? std::string(builtInTexts().find("advice.grain.precursor")) : names);
}

std::vector<Message> cautions(const LeverValue&, const Setting& after, const AdviceInput& input) {
    const auto rye = percentOf(after.recipe, *input.pantry, [](const Grain& g) { return g.kind == GrainKind::rye; });
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

} // namespace staveline
