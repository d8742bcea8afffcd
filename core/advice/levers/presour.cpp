// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return 100 * setting.recipe.preSoured.of1;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.recipe.preSoured = {number(value) / 100};
}

/// A vessel that measures sour enough wants no more acid.
bool advised(const AdviceInput& input) {
    const bool sour = input.measuredTa && *input.measuredTa >= GramsPerLitre{constants::advice::sourEnoughTa};
    const bool sharp = input.measuredPh && *input.measuredPh <= Ph{constants::advice::sourEnoughPh};
    return !sour && !sharp;
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting& after, const Stock&) {
    if (number(to) <= 0)
        return say("advice.word.presour.none").with("from", Share{number(from) / 100}, OriginKind::moveFrom);
    return fromTo("advice.word.presour", Share{number(from) / 100}, Share{number(to) / 100})
        .with("ta", after.recipe.preSourTa);
}

std::vector<Message> cautions(const LeverValue& to, const Setting&, const AdviceInput&) {
    if (number(to) <= 0)
        return {};
    return {say("caution.kettle.preSour")};
}

} // namespace

Lever makeLever::presour() {
    return {.id = "presour",
            .oneCycle = true,
            .read = read,
            .apply = apply,
            .advised = advised,
            .wording = wording,
            .cautions = cautions};
}

} // namespace staveline::advice
