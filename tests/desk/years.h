// SPDX-License-Identifier: GPL-3.0-or-later
// A cask over the years, as its brewer would tell it: tasted, drawn and refilled.
#pragma once

#include "desk/support.h"

#include <fmt/format.h>

namespace staveline::testing {

using Tasters = std::vector<std::string>;
inline const Tasters fourTasters = {"Rook", "Wren", "Teal", "Jay"};

/// The short sheet with every line of a dimension scored alike, in half steps.
inline std::string sittingJson(const std::string& vessel, Day on, double acidity, double funk, double body,
                               const Tasters& tasters) {
    std::string scores;
    for (const auto& taster : tasters)
        for (const auto& attribute : tasting::builtInSheet().attributes)
            if (attribute.dimension && attribute.shortSheet) {
                const double wanted = *attribute.dimension == Dimension::acidity ? acidity
                                      : *attribute.dimension == Dimension::funk  ? funk
                                                                                 : body;
                const double said = attribute.reversed ? 10 - wanted : wanted;
                scores += fmt::format(R"({}{{"taster": "{}", "attribute": "{}", "cold": {:.1f}, "cellar": {:.1f}}})",
                                      scores.empty() ? "" : ", ", taster, attribute.code, said, said);
            }
    return fmt::format(R"({{"kind": "sitting", "vessel": "{}", "on": "{}", "scores": [{}]}})", vessel, isoDay(on),
                       scores);
}

/// The same sitting with a note, so that it is another one.
inline std::string noted(std::string json, int number) {
    return json.insert(json.rfind('}'), fmt::format(R"(, "note": "glass {}")", number));
}

/// Five cycles of 240 days on the usual recipe, tasted a month before each draw; the last one is not tasted yet.
struct YearsFixture : DeskFixture {
    YearsFixture() {
        now = day(2020, 1, 1);
        record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225, "material": "oak used"},
                   {"kind": "opening", "vessel": "Knot", "on": "2020-01-01", "volume_l": 215, "years_running": 6}])");
    }
    Day cycle(int number, int days) const { return day(2020, 1, 1) + std::chrono::days{240 * number + days}; }
    void taste(Day on, double acidity, double funk, double body, const Tasters& by = fourTasters) {
        now = std::max(now, on);
        record(sittingJson("Knot", on, acidity, funk, body, by));
    }
    void refill(Day on) {
        now = std::max(now, on);
        record(fmt::format(R"([{{"kind": "draw_off", "vessel": "Knot", "on": "{0}", "volume_l": 78}},
                               {{"kind": "refill", "vessel": "Knot", "on": "{0}", "volume_l": 80}}])",
                           isoDay(on)));
    }
    void years(double acidity, double funk, double body, int cycles = 5, const Tasters& by = fourTasters) {
        for (int i = 0; i < cycles; ++i) {
            taste(cycle(i, 210), acidity, funk, body, by);
            refill(cycle(i + 1, 0));
        }
    }
    desk::EstimatesView known(Day on) {
        now = on;
        auto estimates = desk->estimates("Knot");
        REQUIRE(estimates);
        return *estimates;
    }
};

} // namespace staveline::testing
