// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

#include <algorithm>

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return setting.recipe.bitterness.ibu;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.recipe.bitterness = {number(value)};
}

void narrow(LeverRow& row, const Setting&, const AdviceInput& input) {
    row.high = std::min(row.high, input.target.bitternessCeiling.ibu);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock&) {
    return fromTo("advice.word.bitterness", Ibu{number(from)}, Ibu{number(to)});
}

} // namespace

Lever makeLever::bitterness() {
    return {.id = "bitterness", .read = read, .apply = apply, .narrow = narrow, .wording = wording};
}

} // namespace staveline::advice
