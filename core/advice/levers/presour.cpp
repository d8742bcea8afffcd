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
    return {.id = "presour", .read = read, .apply = apply, .wording = wording, .cautions = cautions};
}

} // namespace staveline::advice
