// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever_list.h"

#include <algorithm>

namespace staveline::advice {
namespace {

/// The longest rest between 60 C and mash-out; the first of equals. Null: the mash has none.
template <class Mash> auto saccharification(Mash& mash) -> decltype(mash.data()) {
    decltype(mash.data()) found = nullptr;
    for (auto& step : mash)
        if (step.temperature.c >= 60 && step.temperature.c < 75 && (!found || step.minutes > found->minutes))
            found = &step;
    return found;
}

/// A cooler rest converts more slowly and needs longer.
Minutes timeAt(Celsius temperature) {
    return temperature.c < 64 ? Minutes{75} : temperature.c <= 68 ? Minutes{60} : Minutes{45};
}

LeverValue read(const Setting& setting, const Stock&) {
    const auto* step = saccharification(setting.recipe.mash);
    return step ? step->temperature.c : 0.0;
}

void apply(Setting& setting, const LeverValue& value, const Stock& stock) {
    if (sameValue(value, read(setting, stock)))
        return;
    if (auto* step = saccharification(setting.recipe.mash))
        *step = {{number(value)}, timeAt({number(value)})};
}

bool applies(const Setting& setting, const AdviceInput&) {
    return saccharification(setting.recipe.mash) != nullptr;
}

/// Rests only rise: it stays between its neighbours.
void narrow(LeverRow& row, const Setting& setting, const AdviceInput&) {
    const auto& mash = setting.recipe.mash;
    const auto* step = saccharification(mash);
    if (!step)
        return;
    const auto at = static_cast<std::size_t>(step - mash.data());
    if (at > 0)
        row.low = std::max(row.low, mash[at - 1].temperature.c);
    if (at + 1 < mash.size())
        row.high = std::min(row.high, mash[at + 1].temperature.c);
}

Message wording(const LeverValue& from, const LeverValue& to, const Setting& after, const Stock&) {
    const auto* step = saccharification(after.recipe.mash);
    return fromTo("advice.word.sacchTemperature", Celsius{number(from)}, Celsius{number(to)})
        .with("minutes", step ? step->minutes : timeAt({number(to)}));
}

} // namespace

Lever makeLever::sacchTemperature() {
    return {.id = "sacch_temperature",
            .read = read,
            .apply = apply,
            .applies = applies,
            .narrow = narrow,
            .wording = wording};
}

} // namespace staveline::advice
