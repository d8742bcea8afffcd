// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return setting.temperature.c;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.temperature = {number(value)};
}

bool applies(const Setting&, const AdviceInput& input) {
    return input.canChangeTemperature;
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock&) {
    return fromTo("advice.word.cellarTemperature", Celsius{number(from)}, Celsius{number(to)});
}

} // namespace

Lever makeLever::cellarTemperature() {
    return {.id = "cellar_temperature", .read = read, .apply = apply, .applies = applies, .wording = wording};
}

} // namespace staveline::advice
