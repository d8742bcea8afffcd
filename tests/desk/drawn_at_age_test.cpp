// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel that is drawn at an age instead of an interval: one rule wherever its days are asked for, worked out anew
// with every entry.
#include "desk/support.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

constexpr double year = daysPerYear;

struct AgeFixture : DeskFixture {
    AgeFixture() {
        now = day(2025, 12, 1);
        addPlover(); // 216 L, 1.5 years old on 1 June 2025; 4 % of 225 L evaporate in a year; 78.75 L each time
    }
    void want(double years) {
        VesselEditFact edit;
        edit.vessel = "Plover";
        edit.wantedAgeYears = years;
        REQUIRE(desk->record(edit));
    }
    [[nodiscard]] VesselSummary plover() const {
        auto summary = desk->vessel("Plover");
        REQUIRE(summary);
        return *summary;
    }
    [[nodiscard]] AgeSteering steering() const {
        const auto found = plover().steering;
        REQUIRE(found);
        return *found;
    }
    void exchange(const std::string& drawn, const std::string& refilled, const std::string& age = "14") {
        record(R"([{"kind": "draw_off", "vessel": "Plover", "on": ")" + isoDay(now) + R"(", "volume_l": )" + drawn +
               R"(}, {"kind": "refill", "vessel": "Plover", "on": ")" + isoDay(now) + R"(", "volume_l": )" + refilled +
               R"(, "age_d": )" + age + "}]");
    }
    [[nodiscard]] bool says(const std::string& key) const {
        const auto words = steering().words;
        return std::any_of(words.begin(), words.end(), [&](const Message& message) { return message.key == key; });
    }
};

} // namespace

TEST_CASE_METHOD(AgeFixture, "a wanted age sets the draw, in one act that can be taken back", "[desk][age]") {
    const Day byInterval = plover().dates.draw;
    REQUIRE(byInterval == day(2026, 1, 27));
    CHECK_FALSE(plover().steering);
    want(2.5);
    CHECK(desk->undoText() == "wanted age of Plover");
    // 1.5 years on 1 June 2025; one year (365.25 d) later it is 2.5 years old: on 1 June 2026 a quarter of a day is
    // missing
    CHECK(plover().dates.draw == day(2026, 6, 2));
    CHECK(steering().reached == day(2026, 6, 2));
    CHECK(desk->vessel("Plover")->facts.wantedAgeYears == 2.5);
    REQUIRE(desk->undo());
    CHECK(plover().dates.draw == byInterval);
    REQUIRE(desk->redo());
    CHECK(plover().dates.draw == day(2026, 6, 2));
    VesselEditFact back;
    back.vessel = "Plover";
    back.clear = {"wanted_age_years"};
    REQUIRE(desk->record(back));
    CHECK(plover().dates.draw == byInterval);
    CHECK_FALSE(plover().facts.wantedAgeYears);
}

TEST_CASE_METHOD(AgeFixture, "everything that asks for the days goes by the age", "[desk][age]") {
    want(2.5);
    const auto dates = plover().dates;
    REQUIRE(dates.draw == day(2026, 6, 2));
    const auto cellar = desk->cellar();
    REQUIRE(cellar);
    CHECK(cellar->front().dates.draw == dates.draw);
    CHECK(cellar->front().dates.nextDraw == dates.nextDraw);
    CHECK(cellar->front().steering->again == steering().again);
    const auto job = desk->adviceJob({"Plover", {}, {}, false});
    REQUIRE(job);
    CHECK(job->dates.draw == dates.draw);
    CHECK(job->input.base.interval.d == daysBetween(dates.draw, dates.nextDraw));
    CHECK(job->inUse.interval.d == daysBetween(dates.draw, dates.nextDraw));
    CHECK_FALSE(job->input.mayMoveInterval);
    const auto chosen = adopt([](advice::Setting& setting) { setting.recipe.bitterness = Ibu{12}; });
    CHECK(chosen.forecast->thisDraw == dates.draw);
    CHECK(chosen.forecast->nextDraw == dates.nextDraw);
    CHECK(plover().dates.nextDraw == dates.nextDraw);
    for (const std::string& move : chosen.forecast->moves)
        CHECK(move.find("instead of 240") == std::string::npos); // nobody moved the interval
    const auto calendar = desk->calendar("Plover", {});
    REQUIRE(calendar);
    CHECK(calendar->find("DTSTART;VALUE=DATE:20260602") != std::string::npos);
    CHECK(calendar->find("mean age 30 months") != std::string::npos);
}

TEST_CASE_METHOD(AgeFixture, "the interval the adviser may move is none where the age decides", "[desk][age]") {
    VesselEditFact may;
    may.vessel = "Plover";
    may.intervalMayMove = true;
    REQUIRE(desk->record(may));
    REQUIRE(desk->adviceJob({"Plover", {}, {}, false})->input.mayMoveInterval);
    want(2.5);
    CHECK_FALSE(desk->adviceJob({"Plover", {}, {}, false})->input.mayMoveInterval);
}

TEST_CASE_METHOD(AgeFixture, "an interval that a plan chose does not outlive the wish for an age", "[desk][age]") {
    adopt([](advice::Setting& setting) { setting.interval = Days{120}; });
    want(2.5);
    VesselEditFact back;
    back.vessel = "Plover";
    back.clear = {"wanted_age_years"};
    REQUIRE(desk->record(back));
    const auto dates = plover().dates;
    CHECK(daysBetween(dates.draw, dates.nextDraw) == 240);
}

TEST_CASE_METHOD(AgeFixture, "each entry moves the day: refill, top-up, beer from another vessel", "[desk][age]") {
    want(2);
    now = day(2025, 12, 1); // 183 days after the takeover: 1.5 x 365.25 + 183 = 730.875 days old
    CHECK(steering().reached == day(2025, 12, 1));
    // 216 - 4 % x 225 x 183 / 365.25 = 211.4908 L held. Half a vessel out, filled up with 14 days old:
    exchange("100", "110"); // (111.4908 x 730.875 + 110 x 14) / 221.4908 = 374.8514 d; 730.5 - that = 355.6 d
    CHECK(plover().now.meanAge.d == Approx(374.8514).margin(1e-3));
    CHECK(plover().dates.draw == day(2025, 12, 1) + std::chrono::days{356});
    now = day(2026, 1, 31); // 61 days: 435.8514 d, 219.9878 L
    record(R"({"kind": "top_up", "vessel": "Plover", "on": "2026-01-31", "volume_l": 4, "age_d": 200})");
    CHECK(plover().now.meanAge.d == Approx((219.9878 * 435.8514 + 4 * 200) / 223.9878).margin(1e-2)); // 431.64
    CHECK(plover().dates.draw == day(2026, 1, 31) + std::chrono::days{299});
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 50, "material": "steel"},
               {"kind": "opening", "vessel": "Knot", "on": "2026-01-31", "volume_l": 50, "age_years": 4},
               {"kind": "draw_off", "vessel": "Plover", "on": "2026-01-31", "at": "23:00", "volume_l": 50},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-31", "at": "23:30", "volume_l": 30,
                "from": "Knot"}])");
    // (173.9878 x 431.64 + 30 x 1461) / 203.9878 = 583.02 d
    CHECK(plover().now.meanAge.d == Approx(583.02).margin(.02));
    CHECK(plover().dates.draw == day(2026, 1, 31) + std::chrono::days{148});
    REQUIRE(desk->undo());
    CHECK(plover().dates.draw == day(2026, 1, 31) + std::chrono::days{299});
}

TEST_CASE_METHOD(AgeFixture, "older than wanted it is due now, with the draw that brings it back", "[desk][age]") {
    want(1.75);
    CHECK(says("desk.age.older"));
    CHECK(plover().dates.drawDue == steering().reached);
    CHECK(plover().due.kind == vessel::DueKind::taste);
    CHECK(plover().due.inDays < 0);
    const AgeSteering told = steering();
    REQUIRE(told.brings);
    now = plover().dates.draw;
    const double held = plover().now.volume.l;
    exchange(std::to_string(told.brings->l), std::to_string(225 - held + told.brings->l));
    CHECK(plover().now.meanAge.d == Approx(1.75 * year).margin(.05));
}

TEST_CASE_METHOD(AgeFixture, "the draw that keeps the age has it on the day of the interval", "[desk][age]") {
    want(2.5);
    const AgeSteering told = steering();
    REQUIRE(told.keeps);
    CHECK(says("desk.age.keeps"));
    CHECK_FALSE(told.brings);
    CHECK(told.byInterval == plover().dates.draw + std::chrono::days{240});
    now = plover().dates.draw;
    const double held = plover().now.volume.l;
    exchange(std::to_string(told.keeps->l), std::to_string(225 - held + told.keeps->l));
    CHECK(std::abs(daysBetween(plover().dates.draw, told.byInterval)) <= 1);
    now = told.byInterval;
    CHECK(plover().now.meanAge.d == Approx(2.5 * year).margin(1));
}

TEST_CASE_METHOD(AgeFixture, "no draw keeps a young age over a long interval", "[desk][age]") {
    want(.6); // 219 days; the interval is 240
    CHECK_FALSE(steering().keeps);
    CHECK(says("desk.age.keeps_not"));
}

TEST_CASE_METHOD(AgeFixture, "an age below what goes in is never reached: it is said, and the interval goes on",
                 "[desk][age][bad]") {
    const auto byInterval = plover().dates;
    want(.05); // 18.3 days; the usual yeast is ready after 14
    CHECK(steering().reachable);
    CHECK(plover().dates.drawDue < byInterval.drawDue);
    record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2025-12-01", "yeast": "saison_diastatic",
               "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 65, "minutes": 60}]})"); // 21
    CHECK_FALSE(steering().reachable);
    CHECK(plover().dates.draw == byInterval.draw);
    CHECK(plover().dates.nextDraw == byInterval.nextDraw);
    REQUIRE(steering().words.size() == 1);
    CHECK(render(steering().words.front()) ==
          "It never comes down to 18 days: what goes in is 21 days old. The dates go by the interval; want it older, "
          "or refill it younger.");
}

TEST_CASE_METHOD(AgeFixture, "a vessel is made, filled and first drawn at an age", "[desk][age]") {
    record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 100, "wanted_age_years": 1})");
    const auto knot = desk->vessel("Knot");
    REQUIRE(knot);
    CHECK(knot->toFill);
    CHECK(knot->dates.draw == now + std::chrono::days{14});
    CHECK(knot->dates.nextDraw == now + std::chrono::days{366}); // from today's brew day
    REQUIRE(knot->steering);
    CHECK(render(knot->steering->words.front()) ==
          "Filled on 15 Dec 2025 with beer 14 days old, it is 12 months old on 2 Dec 2026: the first draw.");
}

TEST_CASE_METHOD(AgeFixture, "drawn already, it says what the refill makes of it", "[desk][age]") {
    want(2.5);
    const auto planned = plover().dates;
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-12-01", "volume_l": 78.75})");
    CHECK(says("desk.age.refilled"));
    CHECK_FALSE(steering().keeps);
    CHECK(plover().dates.drawDue == now);
    // refilled in 14 days: 211.4908 L held before (evaporation of 14 days: 0.345 L), 745 days old then
    const double kept = 211.4908 - 78.75 - .345, after = (kept * 744.875 + (225 - kept) * 14) / 225;
    CHECK(steering().afterRefill.d == Approx(after).margin(.1));
    CHECK(planned.draw > plover().dates.draw);
}

TEST_CASE_METHOD(AgeFixture, "what is wrong about a wanted age is said at its field", "[desk][age][bad]") {
    for (const char* years : {"0", "-1", "101"})
        CHECK(refused(std::string(R"({"kind": "vessel_edit", "vessel": "Plover", "wanted_age_years": )") + years + "}")
                  .path.find("/wanted_age_years") != std::string::npos);
    CHECK(refused(R"({"kind": "vessel_edit", "vessel": "Plover", "wanted_age_years": 2,
                      "clear": ["wanted_age_years"]})")
              .path.find("/clear/0") != std::string::npos);
    CHECK(refused(R"({"kind": "refit", "vessel": "Plover", "on": "2025-11-01", "clear": ["wanted_age_years"]})")
              .cause.key == "desk.not_clearable");
}

TEST_CASE_METHOD(AgeFixture, "the answer for machines has the days, the ages and the draws", "[desk][age][json]") {
    CHECK_FALSE(nlohmann::json::parse(toJson(*desk->cellar())).front().contains("by_age"));
    want(2.5);
    const auto json = nlohmann::json::parse(toJson(*desk->cellar())).front().at("by_age");
    CHECK(json.at("wanted_age_d") == 2.5 * year);
    CHECK(json.at("reached_on") == "2026-06-02");
    CHECK(json.at("draw_to_keep_l").get<double>() == Approx(steering().keeps->l));
    CHECK(json.at("draw_to_bring_back_l").is_null());
    CHECK(json.at("words").size() == steering().words.size());
}
