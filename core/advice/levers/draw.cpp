// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

namespace staveline {
namespace {

LeverValue read(const Setting& setting, const Larder&) {
    return setting.draw.l;
}

void apply(Setting& setting, const LeverValue& value, const Larder&) {
    setting.draw = {number(value)};
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting&, const Larder&) {
    return fromTo("advice.word.draw", Litres{number(from)}, Litres{number(to)});
}

/// What is drawn cannot be drawn otherwise.
bool applies(const Setting&, const AdviceInput& input) {
    return !input.drawn;
}

} // namespace

Lever makeLever::draw() {
    return {.id = "draw", .byVolume = true, .read = read, .apply = apply, .applies = applies, .wording = wording};
}

} // namespace staveline
