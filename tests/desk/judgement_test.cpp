// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of a vessel, from the facts on: every sitting counts at its own date, and nothing jumps.
#include "desk/years.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::testing;

TEST_CASE_METHOD(YearsFixture, "five stable sittings and none now: within .3 of them", "[desk][judgement]") {
    const EstimatesView never = known(now);
    const double funk = std::round(2 * never.model[Dimension::funk].mean - 4) / 2; // about two points less
    years(5.5, funk, 4.5);
    for (int since : {1, 76, 200}) { // the day after the refill, and no cliff in days
        const EstimatesView estimates = known(cycle(5, since));
        INFO(since);
        // Fresh beer thins what is in the vessel; what was learned of it stays.
        CHECK(estimates.offsets[Dimension::funk].mean[0] == Approx(-2).margin(.4));
        CHECK(z80 * estimates.combined[Dimension::funk].sd <= .7);
        CHECK(estimates.sittings[Dimension::funk] == 5);
    }
    CHECK(known(cycle(5, 200)).combined[Dimension::funk].mean == Approx(funk).margin(.3));
}

TEST_CASE_METHOD(YearsFixture, "no fact, no jump", "[desk][judgement]") {
    years(6.5, 3.5, 4, 2);
    EstimatesView before = known(cycle(2, 1));
    for (int since = 2; since < 240; ++since) {
        const EstimatesView after = known(cycle(2, since));
        for (Dimension d : allDimensions) {
            INFO(name(d) << " " << since);
            CHECK(std::abs(after.combined[d].mean - before.combined[d].mean) < .1);
        }
        before = after;
    }
}

TEST_CASE_METHOD(YearsFixture, "a titration does not move the model and is not counted twice", "[desk][judgement]") {
    years(6.5, 5, 4, 3);
    taste(cycle(3, 205), 6.5, 5, 4);
    const EstimatesView before = known(cycle(3, 208));
    record(fmt::format(R"({{"kind": "reading", "vessel": "Knot", "on": "{}", "ta_g_l": 7.4}})", isoDay(now)));
    const EstimatesView after = known(cycle(3, 208));
    constexpr auto acidity = Dimension::acidity;
    CHECK(after.model == before.model);
    CHECK(after.combined[acidity].sd <= before.combined[acidity].sd);
    CHECK(after.combined[acidity].mean < 7.3);
    CHECK(after.combined[acidity].mean > 5.7);
}

TEST_CASE_METHOD(YearsFixture, "acid written at the opening is the first thing seen, not the model",
                 "[desk][judgement]") {
    const EstimatesView plain = known(now);
    REQUIRE(desk->undo());
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225, "material": "oak used"},
               {"kind": "opening", "vessel": "Knot", "on": "2020-01-01", "volume_l": 215, "years_running": 6,
                "ta_g_l": 8}])");
    const EstimatesView sour = known(now);
    CHECK(sour.model == plain.model);
    CHECK(sour.combined[Dimension::acidity].mean > plain.combined[Dimension::acidity].mean + .3);
    CHECK(sour.evidence[Dimension::acidity].back().ta == GramsPerLitre{8});
}

TEST_CASE_METHOD(YearsFixture, "impossible acid is said and steers nothing", "[desk][judgement][bad]") {
    years(5.5, 5, 4, 2);
    const EstimatesView before = known(cycle(2, 100));
    record(fmt::format(R"({{"kind": "reading", "vessel": "Knot", "on": "{}", "ta_g_l": 0.5}})", isoDay(now)));
    const EstimatesView after = known(cycle(2, 100));
    CHECK(after.combined[Dimension::acidity].mean == Approx(before.combined[Dimension::acidity].mean));
    REQUIRE(after.doubts.size() == 1);
    CHECK(after.doubts[0].kind == estimate::Doubt::Kind::acidRange);
}

TEST_CASE_METHOD(YearsFixture, "an event opens what is known; a sitting set aside teaches nothing",
                 "[desk][judgement]") {
    years(5.5, 3.5, 4);
    const Estimate before = known(cycle(5, 20)).combined[Dimension::funk];
    record(fmt::format(R"({{"kind": "event", "vessel": "Knot", "on": "{}", "what": "racked"}})", isoDay(cycle(5, 10))));
    CHECK(known(cycle(5, 20)).combined[Dimension::funk].sd > before.sd + .5);
    REQUIRE(desk->undo());
    taste(cycle(5, 15), 9, 9, 9);
    const double moved = known(cycle(5, 20)).combined[Dimension::funk].mean;
    CHECK(moved > 4.5);
    CHECK(known(cycle(5, 20)).doubts.size() >= 1); // did something happen?
    record(fmt::format(R"({{"kind": "sitting_use", "vessel": "Knot", "sitting": "{}", "learn": false}})",
                       isoDay(cycle(5, 15))));
    const EstimatesView aside = known(cycle(5, 20));
    CHECK(aside.combined[Dimension::funk] == before);
    CHECK(aside.doubts.empty());
}

TEST_CASE_METHOD(YearsFixture, "beer moved to an empty vessel brings what was learned of it", "[desk][judgement]") {
    years(5.5, 3.5, 4);
    now = cycle(5, 30);
    record(fmt::format(R"([{{"kind": "vessel", "name": "Heron", "capacity_l": 60, "material": "steel"}},
                           {{"kind": "refill", "vessel": "Heron", "on": "{}", "volume_l": 50, "from": "Knot"}}])",
                       isoDay(now)));
    const double source = known(now).combined[Dimension::funk].mean;
    const auto moved = desk->estimates("Heron");
    REQUIRE(moved);
    CHECK(moved->combined[Dimension::funk].mean == Approx(source).margin(.15));
    CHECK(moved->sittings[Dimension::funk] == 0);
}

TEST_CASE_METHOD(YearsFixture, "history tells what was expected of each sitting and a run on one side",
                 "[desk][judgement]") {
    for (int i = 0; i < 6; ++i) {
        taste(cycle(i, 210), 5 + .5 * i, 4, 4);
        refill(cycle(i + 1, 0));
    }
    const auto history = desk->history("Knot");
    REQUIRE(history);
    std::vector<HistoryRow> sittings;
    for (const auto& row : history->rows)
        if (row.kind == HistoryKind::sitting)
            sittings.push_back(row);
    REQUIRE(sittings.size() == 6);
    CHECK(sittings[5].expected[Dimension::acidity]->mean < sittings[5].tasted[Dimension::acidity]->mean);
    CHECK(sittings[5].offset[Dimension::acidity]->mean > sittings[0].offset[Dimension::acidity]->mean);
    std::string all;
    for (const auto& line : history->learned)
        all += render(line.words) + "\n";
    INFO(all);
    CHECK(all.find("from 6 sittings") != std::string::npos);
    CHECK(all.find("all came out above") != std::string::npos);
    for (const auto& line : history->learned)
        CHECK(line.run == (render(line.words).find("all came out") != std::string::npos));
}

TEST_CASE_METHOD(YearsFixture, "two hundred sittings in a month are as much as their tasters",
                 "[desk][judgement][bad]") {
    years(5.5, 3.5, 4, 1);
    now = cycle(1, 100);
    for (int i = 0; i < 200; ++i)
        record(noted(sittingJson("Knot", cycle(1, 60 + i % 30), 6, 6, 6, {"Rook"}), i));
    const EstimatesView estimates = known(cycle(1, 100));
    for (Dimension d : allDimensions) {
        CHECK(std::isfinite(estimates.combined[d].mean));
        CHECK(estimates.combined[d].sd > .1);
    }
}

TEST_CASE_METHOD(YearsFixture, "a pH written down beside a titration does not count again", "[desk][judgement]") {
    years(5.5, 4, 4, 2);
    const auto reading = [&](const char* kind, const char* values) {
        record(fmt::format(R"({{"kind": "{}", "vessel": "Knot", "on": "{}", {}}})", kind, isoDay(now), values));
    };
    now = cycle(2, 100);
    reading("reading", R"("ta_g_l": 6.5)");
    const EstimatesView alone = known(now);
    reading("sample", R"("volume_l": 0.3, "ph": 3.25)");
    CHECK(known(now).combined == alone.combined);
    REQUIRE(desk->undo());
    reading("sample", R"("volume_l": 0.3, "ph": 3.9)"); // and cannot be true beside it
    REQUIRE(known(now).doubts.size() == 1);
    CHECK(known(now).doubts[0].kind == estimate::Doubt::Kind::acidBalance);
}

TEST_CASE_METHOD(DeskFixture, "a reading or a sitting of an empty vessel says nothing", "[desk][judgement][bad]") {
    record(R"([{"kind": "vessel", "name": "Wren", "capacity_l": 60, "material": "steel"},
               {"kind": "reading", "vessel": "Wren", "on": "2026-02-01", "gravity_sg": 1.002}])");
    CHECK(desk->estimates("Wren").error().cause.key == "desk.not_opened");
    CHECK(refused(sittingJson("Wren", day(2026, 2, 2), 5, 5, 5, fourTasters)).cause.key == "desk.not_opened");
    record(R"({"kind": "refill", "vessel": "Wren", "on": "2026-02-10", "volume_l": 50})");
    const auto plain = desk->estimates("Wren");
    REQUIRE(plain);
    REQUIRE(desk->undo());
    REQUIRE(desk->undo()); // without the reading it is the same
    record(R"([{"kind": "vessel", "name": "Wren", "capacity_l": 60, "material": "steel"},
               {"kind": "refill", "vessel": "Wren", "on": "2026-02-10", "volume_l": 50}])");
    CHECK(desk->estimates("Wren")->model == plain->model);
}

TEST_CASE_METHOD(DeskFixture, "Brettanomyces pitched between two entries is in the beer of the sitting after it",
                 "[desk][judgement]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225, "material": "oak used"},
               {"kind": "culture", "vessel": "Knot", "on": "2024-06-01", "name": "lactics", "brettanomyces": "none"},
               {"kind": "opening", "vessel": "Knot", "on": "2024-06-01", "volume_l": 215, "years_running": 4},
               {"kind": "culture", "vessel": "Knot", "on": "2025-04-01", "name": "mixed", "brettanomyces": "young"}])");
    now = day(2025, 12, 1);
    const auto before = desk->estimates("Knot");
    REQUIRE(before);
    const double funk = std::round(2 * before->model[Dimension::funk].mean) / 2;
    REQUIRE(funk > 1); // it has grown in
    record(sittingJson("Knot", now, 5, funk, 5, fourTasters));
    CHECK(desk->estimates("Knot")->model[Dimension::funk].mean == Approx(before->model[Dimension::funk].mean));
    CHECK(desk->estimates("Knot")->combined[Dimension::funk].mean == Approx(funk).margin(.3));
}
