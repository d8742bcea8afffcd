// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/cautions.h"

#include "support/catch.h"

#include <algorithm>

namespace staveline::finishing {
namespace {

bool warnsOf(const PackedBeer& beer, std::string_view key) {
    const auto cautions = packingCautions(beer);
    return std::any_of(cautions.begin(), cautions.end(), [&](const Message& caution) { return caution.key == key; });
}
bool warnsOfYeast(const PackedBeer& beer) {
    return warnsOf(beer, "finishing.caution.yeast");
}

} // namespace

TEST_CASE("Published: sour beer in which bottle yeast stops, and in which it works", "[cautions]") {
    // Rogers, Veatch, Covey, Staton & Bochman 2016, Food Microbiol.: pH 2.95 to 3.17 with 23.8 to 25.4 g/L of acid and
    // up to 8.4 % did not condition; pH 3.23 with 14.3 g/L and 6.84 % did (means).
    CHECK(warnsOfYeast({{2.95}, {25.4}, {6.5}}));
    CHECK(warnsOfYeast({{3.17}, {23.8}, {8.4}}));
    CHECK_FALSE(warnsOfYeast({{3.23}, {14.3}, {6.84}}));
}

TEST_CASE("Each of acid, pH and alcohol stops bottle yeast by itself", "[cautions]") {
    CHECK_FALSE(warnsOfYeast({}));
    CHECK(warnsOfYeast({{3.15}, {6}, {6}}));
    CHECK(warnsOfYeast({{3.4}, {19}, {6}}));
    CHECK(warnsOfYeast({{3.4}, {6}, {8.5}}));
    CHECK_FALSE(warnsOfYeast({{3.15}, {19}, {8.5}, false})); // nothing has to ferment
}

TEST_CASE("Bottles, gas and local rules are always minded, fruit where it is", "[cautions]") {
    for (const char* key : {"finishing.caution.bottles", "finishing.caution.first_bottle", "finishing.caution.co2",
                            "finishing.caution.law"})
        CHECK(warnsOf({}, key));
    CHECK_FALSE(warnsOf({}, "finishing.caution.fruit"));
    CHECK(warnsOf({{3.4}, {6}, {6}, true, true}, "finishing.caution.fruit"));
    CHECK_FALSE(blendingCautions().empty());
}

} // namespace staveline::finishing
