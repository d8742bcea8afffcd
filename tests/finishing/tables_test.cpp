// SPDX-License-Identifier: GPL-3.0-or-later
// What the tables of the room hold is read whole, and rises where it must.
#include "finishing/fruit.h"
#include "finishing/package.h"
#include "finishing/priming.h"

#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"

namespace staveline::finishing {

TEST_CASE("The tables of sugars, bottles and fruits are read row by row", "[tables]") {
    const auto rows = [](std::string_view file) { return CsvTable::parse(resources::find(file)).value().rows(); };
    CHECK(builtInSugars().size() == rows("data/priming_sugars.csv"));
    CHECK(builtInBottles().size() == rows("data/bottles.csv"));
    CHECK(builtInFruits().size() == rows("data/fruits.csv"));
    for (const PrimingSugar& sugar : builtInSugars()) {
        INFO(sugar.id);
        CHECK(sugar.co2 > 0);
        CHECK(sugar.mostCo2 >= sugar.co2);
        CHECK(sugar.mostCo2 < .52); // more than sucrose gives none
        CHECK_FALSE(sugar.source.empty());
    }
    for (const BottleMake& make : builtInBottles()) {
        INFO(make.id);
        CHECK(make.warn <= make.most);
    }
    for (const Fruit& one : builtInFruits()) {
        INFO(one.id);
        CHECK(one.sugar > one.acid);
        CHECK(one.usable.of1 > 0);
    }
}

} // namespace staveline::finishing
