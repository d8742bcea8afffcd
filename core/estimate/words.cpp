// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/words.h"

#include "quantity/language.h"
#include "quantity/text.h"

#include <cmath>
#include <fmt/core.h>

namespace staveline::estimate {
namespace {

constexpr double asTheModelSays = .05; ///< shown as 0.0 points

std::string side(const Offset& offset) {
    const double by = offset.mean[Offset::now];
    return std::abs(by) < asTheModelSays ? "as" : by > 0 ? "more" : "less";
}

/// "TA 0.5 g/L", "pH 2.5" or both.
Message acid(const Doubt& doubt) {
    auto words = say(doubt.ta && doubt.ph ? "estimate.acid.both" : doubt.ta ? "estimate.acid.ta" : "estimate.acid.ph");
    if (doubt.ta)
        words.arguments.push_back({"ta", *doubt.ta, {}});
    if (doubt.ph)
        words.arguments.push_back({"ph", *doubt.ph, {}});
    return words;
}

} // namespace

Message taught(Dimension dimension, const Offset& offset, int sittings) {
    if (sittings == 0)
        return say(fmt::format("estimate.taught.{}.never", name(dimension)));
    return say(fmt::format("estimate.taught.{}.{}", name(dimension), side(offset)))
        .with("by", Points{std::abs(offset.mean[Offset::now])})
        .with("half", Points{tasting::z80 * offset.sd()})
        .with("from", render(say(sittings == 1 ? "estimate.from.one" : "estimate.from.more")
                                 .with("sittings", std::int64_t{sittings})));
}

Message told(const Doubt& doubt) {
    switch (doubt.kind) {
    case Doubt::Kind::acidRange:
        return say("estimate.doubt.range").with("on", doubt.on).with("acid", render(acid(doubt)));
    case Doubt::Kind::acidBalance:
        return say("estimate.doubt.balance").with("on", doubt.on).with("acid", render(acid(doubt)));
    case Doubt::Kind::clash:
        return say("estimate.doubt.clash")
            .with("on", doubt.on)
            .with("other", doubt.other.value_or(doubt.on))
            .with("apart", Points{std::abs(doubt.seen - doubt.expected.mean)});
    case Doubt::Kind::table:
        return say("estimate.doubt.table")
            .with("on", doubt.on)
            .with("apart", Points{doubt.seen})
            .with("what", inLanguage(name(doubt.dimension)));
    case Doubt::Kind::surprise:
        break;
    }
    return say(fmt::format("estimate.doubt.surprise.{}", name(doubt.dimension)))
        .with("on", doubt.on)
        .with("seen", Points{doubt.seen})
        .with("expected", Points{doubt.expected.mean})
        .with("half", Points{tasting::z80 * doubt.expected.sd});
}

} // namespace staveline::estimate
