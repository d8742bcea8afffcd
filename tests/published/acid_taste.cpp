// SPDX-License-Identifier: GPL-3.0-or-later
// Steps of taste against published values.
#include "forward/parameters.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::forward;
using namespace staveline::tasting;

namespace {

void checkWithin(double value, double low, double high) {
    CHECK(value >= low);
    CHECK(value <= high);
}

} // namespace

TEST_CASE("One difference threshold of acid is about one point", "[published]") {
    // 21 % of the titratable acidity, 1.56 g/L at 7.4 (J. Food Sci. 1963). What one just tastes must show in the score,
    // and not as several points.
    const double step = acidityScore({7.4 + 1.56}, {0}, {5}) - acidityScore({7.4}, {0}, {5});
    checkWithin(step, .7, 1.5);
}
