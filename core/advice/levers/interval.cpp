// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return setting.interval.d;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.interval = {number(value)};
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock&) {
    return fromTo("advice.word.interval", Days{number(from)}, Days{number(to)});
}

bool advised(const AdviceInput& input) {
    return input.mayMoveInterval;
}

} // namespace

Lever makeLever::interval() {
    return {.id = "interval", .read = read, .apply = apply, .advised = advised, .wording = wording};
}

} // namespace staveline::advice
