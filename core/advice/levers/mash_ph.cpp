// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return setting.recipe.mashPh.ph;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.recipe.mashPh = {number(value)};
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock&) {
    return fromTo("advice.word.mashPh", Ph{number(from)}, Ph{number(to)});
}

} // namespace

Lever makeLever::mashPh() {
    return {.id = "mash_ph", .read = read, .apply = apply, .wording = wording};
}

} // namespace staveline::advice
