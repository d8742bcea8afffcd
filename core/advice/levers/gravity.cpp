// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

#include <algorithm>

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return setting.recipe.originalGravity.p;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.recipe.originalGravity = {number(value)};
}

void narrow(LeverRow& row, const Setting&, const AdviceInput& input) {
    row.low = std::max(row.low, input.target.gravityLow.p);
    row.high = std::min(row.high, input.target.gravityHigh.p);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock&) {
    return fromTo("advice.word.gravity", Plato{number(from)}, Plato{number(to)});
}

} // namespace

Lever makeLever::gravity() {
    return {.id = "gravity", .read = read, .apply = apply, .narrow = narrow, .wording = wording};
}

} // namespace staveline::advice
