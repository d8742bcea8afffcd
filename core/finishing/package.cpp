// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/package.h"

#include "finishing/kinds.h"
#include "finishing/limits.h"
#include "quantity/constants.h"
#include "quantity/language.h"

namespace staveline::finishing {
namespace {

BottleMake makeOf(const KindRow& row) {
    return {row.text("id"),           inLanguage(row.text("name")), {row.number("warn_vol")}, {row.number("block_vol")},
            {row.number("least_ml")}, {row.number("most_ml")}};
}

} // namespace

const std::vector<BottleMake>& builtInBottles() {
    static const auto all = readKinds("data/bottles.csv", makeOf);
    return all;
}

Result<BottleMake> bottleMake(std::string_view id) {
    return kindNamed(id, builtInBottles(), "bottle");
}

Result<void> checkPackage(const Package& package) {
    namespace rule = constants::finishing;
    const Range sizes = package.make ? Range{package.make->smallest.ml, package.make->largest.ml}
                                     : Range{rule::smallestBottle, rule::largestBottle};
    if (auto ok = inRange("/bottle_ml", package.size.ml, sizes); !ok)
        return ok;
    if (package.rating && package.rating->barOverAir > rule::mostRating)
        return badInput(
            "/rating_bar",
            say("finishing.rating").with("rating", *package.rating).with("most", GaugePressure{rule::mostRating}),
            say("finishing.rating.remedy"));
    if (package.rating)
        if (auto ok = inRange("/rating_bar", package.rating->barOverAir, {rule::leastRating, rule::mostRating}); !ok)
            return ok;
    return inRange("/warmest_c", package.warmest.c, {0, constants::finishing::hottest});
}

} // namespace staveline::finishing
