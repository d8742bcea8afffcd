// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/package.h"

#include "finishing/limits.h"
#include "quantity/constants.h"
#include "quantity/csv.h"
#include "resources/resources.h"

namespace staveline::finishing {
namespace {

std::vector<BottleMake> readBottles() {
    std::vector<BottleMake> all;
    const auto table = CsvTable::parse(resources::find("data/bottles.csv"));
    for (std::size_t row = 0; table && row < table->rows(); ++row)
        all.push_back({std::string(table->text(row, "id")),
                       std::string(table->text(row, "name")),
                       {table->number(row, "warn_vol").value_or(0)},
                       {table->number(row, "block_vol").value_or(0)},
                       {table->number(row, "least_ml").value_or(0)},
                       {table->number(row, "most_ml").value_or(0)}});
    return all;
}

std::string knownBottles() {
    std::string names;
    for (const BottleMake& one : builtInBottles())
        names += (names.empty() ? "" : ", ") + one.id;
    return names;
}

} // namespace

const std::vector<BottleMake>& builtInBottles() {
    static const auto all = readBottles();
    return all;
}

Result<BottleMake> bottleMake(std::string_view id) {
    for (const BottleMake& one : builtInBottles())
        if (one.id == id)
            return one;
    return badInput("/bottle", say("finishing.unknown_bottle").with("bottle", excerpt(id)),
                    say("finishing.unknown_bottle.remedy").with("known", knownBottles()));
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
