// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

#include <algorithm>

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return 100 * setting.recipe.sugarShare.of1;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.recipe.sugarShare = {number(value) / 100};
}

/// Without sugar in the house the lever only goes down.
void narrow(LeverRow& row, const Setting& setting, const AdviceInput& input) {
    if (input.unavailable.contains(setting.recipe.sugar))
        row.high = std::min(row.high, 100 * setting.recipe.sugarShare.of1);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock&) {
    return fromTo("advice.word.sugar", Share{number(from) / 100}, Share{number(to) / 100});
}

std::vector<Message> cautions(const LeverValue& to, const Setting&, const AdviceInput&) {
    if (number(to) <= 0)
        return {};
    return {say("caution.fermenter.sugarOut")};
}

} // namespace

Lever makeLever::sugar() {
    return {.id = "sugar", .read = read, .apply = apply, .narrow = narrow, .wording = wording, .cautions = cautions};
}

} // namespace staveline::advice
