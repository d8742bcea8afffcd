// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel drawn at an age, and one that is thought over, from the command line.
#include "program.h"

#include <nlohmann/json.hpp>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

/// 225 L of steel, so that nothing evaporates; full of beer a year old.
struct Steel : Terminal {
    Steel() {
        expect("--today 2026-06-01 new s.cellar");
        record(R"([{"kind": "vessel", "name": "Knot", "shape": "tank", "material": "steel", "capacity_l": 225,
                    "evaporation_per_year": 0, "interval_d": 240, "draw_share": 0.4},
                   {"kind": "opening", "vessel": "Knot", "on": "2026-06-01", "volume_l": 225, "age_years": 1}])");
    }
    void record(const std::string& facts) {
        write("f.json", facts);
        expect("--today 2026-06-01 record s.cellar f.json");
    }
    Json answer(const std::string& command) { return Json::parse(expect("--today 2026-06-01 " + command).out); }
};

} // namespace

TEST_CASE_METHOD(Steel, "status, advice and calendar say when a wanted age is reached", "[app][age]") {
    record(R"({"kind": "vessel_edit", "vessel": "Knot", "wanted_age_years": 1.5})");
    // 182.6 days later, so on the 183rd: 1 December 2026
    const Json status = answer("status s.cellar --json").front();
    CHECK(status.at("by_age").at("reached_on") == "2026-12-01");
    CHECK(status.at("dates").at("draw") == "2026-12-01");
    // 90 of 225 L: (365.25 + 183) x 0.6 + 14 x 0.4 = 334.55 d, 213.3 more until 547.875
    CHECK(status.at("by_age").at("age_after_refill_d").get<double>() == Approx(334.55));
    CHECK(status.at("dates").at("next_draw") == "2027-07-03");
    // to be 547.875 days old 240 days later: (548.25 - 307.875) / (548.25 - 14) of 225 L
    CHECK(status.at("by_age").at("draw_to_keep_l").get<double>() == Approx(225 * 240.375 / 534.25));
    CHECK(expect("--today 2026-06-01 status s.cellar").out.find("The beer is 18 months old on 1 Dec 2026.") !=
          std::string::npos);
    const Json advice = answer("advise s.cellar --vessel Knot --json");
    CHECK(advice.at("draw_on") == "2026-12-01");
    CHECK(advice.at("by_age") == status.at("by_age"));
    expect("--today 2026-06-01 calendar s.cellar --out c.ics");
    CHECK(readAll(scratch / "c.ics").find("mean age 18 months") != std::string::npos);
}

TEST_CASE_METHOD(Steel, "a vessel thought over answers with its curve and writes nothing", "[app][what_if]") {
    const std::string before = readAll(scratch / "s.cellar");
    // 30 % every 90 days with refills of 30 days: 330 days in the long run, 240 after the refill, sd 251.0
    const Json trial = answer("whatif s.cellar --vessel Knot --draw 67.5 --every 90 --refill-age 30 --json");
    CHECK(trial.at("settled").at("before_draw_d").get<double>() == Approx(330));
    CHECK(trial.at("settled").at("after_refill_d").get<double>() == Approx(240));
    CHECK(trial.at("settled").at("sd_d").get<double>() == Approx(250.998).margin(1e-3));
    CHECK(trial.at("draws_to_settle") == 7); // 125.25 x 0.7^6 = 14.7 d off, of the 16.5 d that are 5 %
    CHECK(trial.at("growth").front().at("before_draw_d").get<double>() == Approx(365.25 + 90));
    CHECK(trial.at("growth").front().at("on") == "2026-08-30");
    // half of it every second year: four years (published)
    const Json half = answer("whatif s.cellar --vessel Knot --draw 112,5 --wanted-age 4 --refill-age 0 --json");
    CHECK(half.at("interval_d").get<double>() == Approx(730.5));
    const Json row = answer("whatif s.cellar --vessel Knot --draw 56.25 --every 100 --refill-age 0 --in-row 4 --json");
    CHECK(row.at("growth")[9].at("before_draw_d").get<double>() == Approx(959.28).margin(.01));
    CHECK(
        expect("--today 2026-06-01 whatif s.cellar --vessel Knot --draw 60").out.find("60.0 L drawn every 8 months") !=
        std::string::npos);
    CHECK(readAll(scratch / "s.cellar") == before);
}

TEST_CASE_METHOD(Steel, "what cannot be tried is bad input, named by its option", "[app][what_if][bad]") {
    for (const char* bad : {"--draw 226", "--draw x", "--every 0", "--refill-age -1", "--in-row 0", "--in-row 13",
                            "--wanted-age 0", "--capacity 0", "--wanted-age 2 --every 90"})
        CHECK(run(std::string("whatif s.cellar --vessel Knot ") + bad).status == 2);
    CHECK(run("whatif s.cellar --vessel Nobody").status == 2);
    CHECK(run("whatif s.cellar --vessel Knot --draw 226").err.find("/draw") == 0);
    CHECK(run("whatif s.cellar --vessel Knot --wanted-age 0.06 --refill-age 30").err.find("/wanted_age") == 0);
}
