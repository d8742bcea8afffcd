// SPDX-License-Identifier: GPL-3.0-or-later
// The adviser's own constants are those of resources/data/rules.csv.
#include "advice/adviser.h"
#include "advice/grist.h"
#include "advice/notes.h"
#include "advice/reasons.h"
#include "advice/search.h"
#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <map>

using namespace staveline;

TEST_CASE("each constant of the adviser has its row, inside its range, and each row its constant") {
    const AdviceInput usual;
    std::map<std::string, double> expected = {{"untasted", untasted},
                                              {"acid_difference", acidDifference},
                                              {"clearly_better", clearlyBetter},
                                              {"cycles_looked_ahead", cyclesLookedAhead},
                                              {"body_out_of_reach", bodyOutOfReach},
                                              {"lambda", usual.lambda},
                                              {"horizon", usual.horizon},
                                              {"draws", usual.draws},
                                              {"loss_draws", lossDraws},
                                              {"most_moved", usual.maxMoved},
                                              {"glucan_rich", glucanRich},
                                              {"days_to_brew", usual.daysToBrew},
                                              {"thick_start", thickStart.lPerKg}};
    const auto table = CsvTable::parse(resources::find("data/rules.csv")).value();
    for (std::size_t i = 0; i < table.rows(); ++i) {
        const std::string id(table.text(i, "id"));
        if (!id.starts_with("advice."))
            continue;
        INFO(id);
        REQUIRE(expected.contains(id.substr(7)));
        const double value = table.number(i, "value").value();
        CHECK(expected.at(id.substr(7)) == value);
        CHECK(value >= table.number(i, "low").value());
        CHECK(value <= table.number(i, "high").value());
        expected.erase(id.substr(7));
    }
    CHECK(expected.empty());
}
