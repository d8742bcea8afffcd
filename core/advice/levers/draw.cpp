// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return setting.draw.l;
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.draw = {number(value)};
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Stock&) {
    return fromTo("advice.word.draw", Litres{number(from)}, Litres{number(to)});
}

/// What is drawn cannot be drawn otherwise.
bool applies(const Setting&, const AdviceInput& input) {
    return !input.drawn;
}

bool advised(const AdviceInput& input) {
    return input.mayMoveDraw;
}

} // namespace

Lever makeLever::draw() {
    return {.id = "draw",
            .byVolume = true,
            .read = read,
            .apply = apply,
            .applies = applies,
            .advised = advised,
            .wording = wording};
}

} // namespace staveline::advice
