// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "desk/advice.h"
#include "desk/brew.h"
#include "desk/desk.h"
#include "desk/draw_day.h"
#include "desk/filed.h"
#include "desk/full_answer.h"
#include "desk/history.h"
#include "desk/json.h"
#include "desk/ledger.h"
#include "desk/tasting.h"
#include "facts/record_file.h"
#include "forward/predict.h"
#include "sheet/document.h"
#include "support/catch.h"
#include "support/scratch.h"

namespace staveline::testing {

inline constexpr Day day(int y, unsigned m, unsigned d) {
    return std::chrono::year{y} / static_cast<int>(m) / static_cast<int>(d);
}

/// A new book with its desk; today can be moved.
struct DeskFixture {
    Scratch scratch;
    Day now = day(2026, 3, 2);
    std::unique_ptr<desk::Desk> desk = *desk::Desk::create(scratch / "test.cellar", [this] { return now; });

    /// Records JSON and expects it to work.
    void record(const std::string& json) {
        auto facts = facts::parseRecords(json);
        INFO(json);
        REQUIRE(facts);
        auto done = desk->record(*facts);
        if (!done)
            FAIL(done.error().path << ": " << render(done.error().cause) << " " << render(done.error().remedy));
    }
    /// Records JSON and expects a fault.
    Fault refused(const std::string& json) {
        INFO(json);
        auto facts = facts::parseRecords(json);
        if (!facts)
            return facts.error();
        const auto before = desk->revision();
        auto done = desk->record(*facts);
        CHECK(desk->revision() == before);
        REQUIRE_FALSE(done);
        return done.error();
    }
    /// Chooses a setting of one's own for Plover's coming refill: the last one, changed.
    facts::ChoiceFact adopt(const std::function<void(advice::Setting&)>& change) {
        const auto asked = desk->adviceJob({"Plover", {}, {}, false});
        REQUIRE(asked);
        advice::Setting setting = asked->input.base;
        change(setting);
        const auto choice = desk->adopt(*asked, setting);
        REQUIRE(choice);
        return choice->choice;
    }
    void addPlover() {
        record(R"([{"kind": "vessel", "name": "Plover", "capacity_l": 225, "material": "oak used"},
                   {"kind": "opening", "vessel": "Plover", "on": "2025-06-01", "volume_l": 216, "age_years": 1.5,
                    "ta_g_l": 5.8, "ph": 3.34}])");
    }
};

} // namespace staveline::testing
