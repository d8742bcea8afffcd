// SPDX-License-Identifier: GPL-3.0-or-later
// Smoke is a note of its own: it neither counts as funk nor replaces it, so the adviser never proposes it.
#include "advice/grist.h"
#include "advice/lever_list.h"

namespace staveline::advice {
namespace {

bool isSmoked(const ingredient::Grain& grain) {
    return grain.kind == ingredient::GrainKind::smoked;
}

std::string filler(const Stock& stock) {
    return firstAtHand({"smoked_malt"}, stock);
}

LeverValue read(const Setting& setting, const Stock& stock) {
    return percentOf(setting.recipe, stock.pantry, isSmoked);
}

void apply(Setting& setting, const LeverValue& value, const Stock& stock) {
    exchange(setting.recipe, {number(value), isSmoked, filler(stock)}, stock);
}

void narrow(LeverRow& row, const Setting& setting, const AdviceInput& input) {
    narrowByGrist(row, setting.recipe, isSmoked, filler({*input.pantry, input.unavailable}), *input.pantry);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock&) {
    return fromTo("advice.word.smokedMalt", Share{number(from) / 100}, Share{number(to) / 100});
}

std::vector<Message> cautions(const LeverValue& to, const Setting&, const AdviceInput&) {
    if (number(to) <= 0)
        return {};
    return {say("caution.mash.smokeNote")};
}

} // namespace

Lever makeLever::smokedMalt() {
    return {.id = "smoked_malt",
            .proposed = false,
            .read = read,
            .apply = apply,
            .narrow = narrow,
            .wording = wording,
            .cautions = cautions};
}

} // namespace staveline::advice
