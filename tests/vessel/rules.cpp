// SPDX-License-Identifier: GPL-3.0-or-later
// The limits in the code are those of the table that help shows.
#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"
#include "vessel/liquid.h"

#include <map>

using namespace staveline;

TEST_CASE("the ledger's limits are the rows of the rules table") {
    const auto table = CsvTable::parse(resources::find("data/rules.csv"));
    REQUIRE(table);
    const std::map<std::string, double, std::less<>> limits{
        {"ledger.rounding", roundingOfCapacity},
        {"ledger.dip", dipFindingOfCapacity},
        {"ledger.tiny_share", tinyShare},
        {"ledger.most_generations", static_cast<double>(mostGenerations)}};
    std::size_t seen = 0;
    for (std::size_t row = 0; row < table->rows(); ++row) {
        if (!table->text(row, "id").starts_with("ledger."))
            continue;
        const auto limit = limits.find(table->text(row, "id"));
        CAPTURE(table->text(row, "id"));
        REQUIRE(limit != limits.end());
        CHECK(table->number(row, "value").value() == limit->second);
        ++seen;
    }
    CHECK(seen == limits.size());
}
