// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/grist.h"
#include "advice/lever_list.h"

namespace staveline::advice {
namespace {

LeverValue read(const Setting& setting, const Stock&) {
    return std::string(setting.recipe.path == brewing::MashPath::jump ? "jump" : "ramp");
}

void apply(Setting& setting, const LeverValue& value, const Stock&) {
    setting.recipe.path = choice(value) == "jump" ? brewing::MashPath::jump : brewing::MashPath::ramp;
}

/// With one rest there is no way to go.
bool applies(const Setting& setting, const AdviceInput&) {
    return setting.recipe.mash.size() > 1;
}

Message wording(const LeverValue&, const LeverValue& to, const Setting&, const Stock&) {
    return say("advice.word.sacchPath." + choice(to));
}

} // namespace

Lever makeLever::sacchPath() {
    return {.id = "sacch_path", .order = 1, .read = read, .apply = apply, .applies = applies, .wording = wording};
}

} // namespace staveline::advice
