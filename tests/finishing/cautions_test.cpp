// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/cautions.h"
#include "finishing/yeast.h"

#include "quantity/text.h"
#include "support/catch.h"

#include <algorithm>

namespace staveline::finishing {
namespace {

bool warnsOf(const PackedBeer& beer, std::string_view key) {
    const auto cautions = packingCautions(beer);
    return std::any_of(cautions.begin(), cautions.end(), [&](const Message& caution) { return caution.key == key; });
}

} // namespace

TEST_CASE("Each of acid, pH and alcohol stops bottle yeast by itself", "[cautions]") {
    CHECK_FALSE(stopsYeast({}));
    CHECK(stopsYeast({{3.15}, {6}, {6}}));
    CHECK(stopsYeast({{3.4}, {19}, {6}}));
    CHECK(stopsYeast({{3.4}, {6}, {8.5}}));
    CHECK_FALSE(stopsYeast({{3.15}, {19}, {8.5}, false})); // nothing has to ferment
}

TEST_CASE("Advice on yeast says how much for this batch, how warm, and where it comes from", "[cautions]") {
    CHECK(yeastAdvice({}, {40}).empty());
    const auto advice = yeastAdvice({{3.1}, {6}, {6}}, {40});
    REQUIRE(advice.size() == 3);
    CHECK(render(advice[0]).find("Rogers et al. 2016") != std::string::npos);
    // 0.5 to 1 million cells a mL in 40 L are 20 to 40 thousand million; 10 thousand million in a gram
    INFO(render(advice[1]));
    CHECK(render(advice[1]).starts_with("2 g to 4 g of dry"));
    CHECK(render(advice[1]).find("common practice") != std::string::npos);
}

TEST_CASE("Bottles, gas, cleaners, alcohol and local rules are always minded, fruit and kegs where they are",
          "[cautions]") {
    for (const char* key : {"caution.fill.bottles", "caution.keep.first", "caution.ready.co2", "caution.ready.law",
                            "caution.ready.cleaners", "caution.ready.alcohol"})
        CHECK(warnsOf({}, key));
    for (const char* key : {"caution.ready.fruit", "caution.fill.keg"}) {
        CHECK_FALSE(warnsOf({}, key));
        CHECK(warnsOf({{3.4}, {6}, {6}, true, true, true}, key));
    }
    CHECK(warnsOf({}, "caution.prime.weigh"));
    CHECK_FALSE(warnsOf({{3.4}, {6}, {6}, false}, "caution.prime.weigh"));
    CHECK_FALSE(warnsOf({{3.4}, {6}, {6}, true, false, false, true}, "caution.prime.weigh")); // wort
    CHECK_FALSE(blendingCautions().empty());
}

} // namespace staveline::finishing
