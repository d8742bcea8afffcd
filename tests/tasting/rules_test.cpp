// SPDX-License-Identifier: GPL-3.0-or-later
// The limits in the code are those of the tables that help shows.
#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"
#include "tasting/statistics.h"
#include "tasting/taster_reading.h"
#include "tasting/verdict.h"

#include <map>

using namespace staveline;

namespace {

using Limits = std::map<std::string, double, std::less<>>;

/// Every row whose key starts so has its limit here, with its value, and the other way round.
void checkRows(std::string_view file, std::string_view key, std::string_view prefix, const Limits& limits) {
    const auto table = CsvTable::parse(resources::find(file)).value();
    std::size_t seen = 0;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const auto id = table.text(row, key);
        if (!id.starts_with(prefix))
            continue;
        CAPTURE(id);
        REQUIRE(limits.find(id) != limits.end());
        CHECK(table.number(row, "value").value() == limits.find(id)->second);
        ++seen;
    }
    CHECK(seen == limits.size());
}

} // namespace

TEST_CASE("The limits of tasting and verdict are the rows of the rules table") {
    checkRows("data/rules.csv", "id", "tasting.",
              {{"tasting.act_outside", actOutside},
               {"tasting.lean_outside", leanOutside},
               {"tasting.sure_of_sign", sureOfSign},
               {"tasting.band_per_error", bandPerError},
               {"tasting.wait_without_model", waitWithoutModel},
               {"tasting.enough_weight", enoughWeight},
               {"tasting.full_shift_from", fullShiftFrom},
               {"tasting.huber_tuning", huberTuning}});
}

TEST_CASE("The noise of tasters is that of the parameter table") {
    const TastingNoise noise;
    checkRows("data/parameters.csv", "name", "panel.",
              {{"panel.taster", noise.taster},
               {"panel.tasterByTemperature", noise.tasterByTemperature},
               {"panel.residual", noise.residual},
               {"panel.priorDegreesOfFreedom", noise.priorDegreesOfFreedom},
               {"panel.correlation", noise.correlation}});
}
