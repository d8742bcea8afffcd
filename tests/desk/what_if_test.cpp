// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel would become, run in another way. The tables are those of a well mixed vessel (mean a + t/f, variance
// t2 (1 - f)/f2) and of vessels in a row (a negative binomial), worked out and simulated apart from this program.
#include "desk/support.h"
#include "desk/what_if.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

const Day begin = day(2026, 3, 2);

/// 100 L of steel: nothing evaporates.
VesselFact tight() {
    VesselFact vessel;
    vessel.name = "Knot";
    vessel.material = Material::steel;
    vessel.capacity = Litres{100};
    vessel.evaporationPerYear = Share{0};
    return vessel;
}

WhatIf tried(double litres, double days, double refillAge, int inRow = 1) {
    WhatIf what;
    what.draw = Litres{litres};
    what.interval = Days{days};
    what.refillAge = Days{refillAge};
    what.inRow = inRow;
    return what;
}

bool says(const std::vector<Message>& words, const std::string& key) {
    return std::any_of(words.begin(), words.end(), [&](const Message& message) { return message.key == key; });
}

} // namespace

TEST_CASE("run so for years, a vessel settles as the table has it", "[desk][what_if]") {
    struct Row {
        double share, interval, refillAge, before, after, sd;
    };
    // the rows of the table with a month taken as ten days
    for (const Row& row :
         {Row{1 / 2., 20, 0, 40, 20, 28.284}, Row{1 / 3., 10, 0, 30, 20, 24.495}, Row{1 / 4., 10, 0, 40, 30, 34.641},
          Row{.3, 90, 10, 310, 220, 250.998}, Row{.4, 60, 15, 165, 105, 116.190}}) {
        CAPTURE(row.share);
        const auto p = prospectOf(tight(), tried(100 * row.share, row.interval, row.refillAge), {begin});
        REQUIRE(p);
        CHECK(p->settled.beforeDraw.d == Approx(row.before).margin(5e-3));
        CHECK(p->settled.afterRefill.d == Approx(row.after).margin(5e-3));
        CHECK(p->settled.sd.d == Approx(row.sd).margin(5e-3));
    }
    for (const auto& [share, draws] : {std::pair{.1, 29}, {.2, 14}, {.25, 11}, {.3, 9}, {1 / 3., 8}, {.4, 6}, {.5, 5}})
        CHECK(prospectOf(tight(), tried(100 * share, 90, 0), {begin})->draws == draws);
}

TEST_CASE("filled fresh, a vessel grows draw by draw as the table has it", "[desk][what_if]") {
    const auto p = prospectOf(tight(), tried(30, 90, 10), {begin});
    REQUIRE(p);
    constexpr double before[] = {100, 163, 207.1, 237.97}, after[] = {73, 117.1, 147.97, 169.579};
    REQUIRE(p->growth.size() >= 9);
    for (std::size_t n = 0; n < 4; ++n) {
        CHECK(p->growth[n].before.d == Approx(before[n]).margin(1e-6));
        CHECK(p->growth[n].after.d == Approx(after[n]).margin(1e-6));
    }
    CHECK(p->growth[3].first.of1 == Approx(.2401).margin(1e-9));
    CHECK(p->drawnPerYear.l == Approx(30 * daysPerYear / 90));
    CHECK(p->begins == begin + std::chrono::days{10}); // brewed today
    CHECK(p->waits == begin + std::chrono::days{310}); // 310 days old on that day
    CHECK(says(p->words, "desk.what_if.start"));
}

TEST_CASE("vessels in a row are as old as the table has it", "[desk][what_if]") {
    struct Row {
        int vessels;
        double share;
        std::size_t draw;
        double age, limit;
    };
    for (const Row& row : {Row{4, .5, 5, 49.375, 80}, Row{4, .25, 10, 95.928, 160}, Row{4, .1, 30, 271.512, 400},
                           Row{8, .5, 10, 99.766, 160}, Row{8, .25, 20, 197.605, 320}, Row{8, .1, 50, 490.363, 800}}) {
        CAPTURE(row.vessels, row.share);
        const auto p = prospectOf(tight(), tried(100 * row.share, 10, 0, row.vessels), {begin});
        REQUIRE(p);
        REQUIRE(p->growth.size() >= row.draw);
        CHECK(p->growth[row.draw - 1].before.d == Approx(row.age).margin(5e-3));
        CHECK(p->settled.beforeDraw.d == Approx(row.limit).margin(1e-6));
        CHECK(says(p->words, "desk.what_if.start_row"));
        CHECK_FALSE(p->waits);
    }
}

TEST_CASE("what evaporates makes the beer younger and the refills larger", "[desk][what_if]") {
    // 225 L, 11.25 L (5 %) a year, 75 L drawn a year: 2.6087 years, refills of 86.25 L
    VesselFact wood;
    wood.evaporationPerYear = Share{.05};
    const auto p = prospectOf(wood, tried(75, daysPerYear, 0), {begin});
    REQUIRE(p);
    CHECK(p->settled.beforeDraw.d / daysPerYear == Approx(2.6087).margin(5e-5));
    CHECK(p->refill.l == Approx(86.25).margin(1e-9));
    CHECK(p->lostPerYear.l == Approx(11.25).margin(1e-9));
    const auto row = prospectOf(wood, tried(200, daysPerYear, 0, 4), {begin});
    REQUIRE(row);
    CHECK(row->refill.l == Approx(245).margin(1e-9));
    CHECK(says(row->doubts, "desk.what_if.overdrawn_row"));
    CHECK(says(prospectOf(wood, tried(220, daysPerYear, 0), {begin})->doubts, "desk.what_if.overdrawn"));
    CHECK(says(p->words, "desk.what_if.litres"));
    CHECK(says(prospectOf(tight(), tried(30, 90, 0), {begin})->words, "desk.what_if.litres_tight"));
    CHECK(p->doubts.empty());
}

TEST_CASE("drawn at a wanted age, the interval follows", "[desk][what_if]") {
    WhatIf what = tried(50, 240, 0);
    what.interval.reset();
    what.wanted = Days{4 * daysPerYear};
    const auto p = prospectOf(tight(), what, {begin});
    REQUIRE(p);
    CHECK(p->routine.interval.d == Approx(2 * daysPerYear)); // half every second year: four years (published)
    CHECK(p->growth.front().since.d == Approx(4 * daysPerYear));
    what.refillAge = Days{4 * daysPerYear};
    const auto never = prospectOf(tight(), what, {begin});
    REQUIRE_FALSE(never);
    CHECK(never.error().path == "/wanted_age_d");
}

TEST_CASE("younger than its refills are ready for, a vessel is drawn as often as they are", "[desk][what_if]") {
    WhatIf what;
    what.draw = Litres{30};
    what.wanted = Days{40};
    what.refillAge = Days{14};
    const auto p = prospectOf(tight(), what, {begin}); // 0.3 x (40 - 14) = 7.8 days
    REQUIRE(p);
    CHECK(p->tooYoung);
    CHECK(says(p->doubts, "desk.what_if.not_ready"));
    CHECK_FALSE(says(p->words, "desk.what_if.at_age"));
    CHECK(p->routine.interval == Days{14});
    CHECK(p->settled.beforeDraw.d == Approx(14 + 14 / .3));
    what.draw = Litres{20}; // 5.2 days
    const auto never = prospectOf(tight(), what, {begin});
    REQUIRE_FALSE(never);
    CHECK(never.error().path == "/wanted_age_d");
    CHECK(never.error().cause.key == "desk.what_if.too_often");
    what.draw = Litres{50};
    what.wanted = Days{30 * daysPerYear}; // of half drawn: every 15 years
    const auto hardly = prospectOf(tight(), what, {begin});
    REQUIRE_FALSE(hardly);
    CHECK(hardly.error().cause.key == "desk.what_if.too_rarely");
}

TEST_CASE_METHOD(DeskFixture, "a vessel in use goes on from the draw that is planned", "[desk][what_if]") {
    addPlover();
    now = day(2025, 12, 1);
    const VesselSummary plover = *desk->vessel("Plover");
    REQUIRE(plover.dates.draw == day(2026, 1, 27));
    const auto p = desk->whatIf("Plover", {});
    REQUIRE(p);
    CHECK(p->begins == now);
    CHECK(p->growth[0].since.d == 57);
    CHECK(p->growth[0].before.d == Approx(plover.now.meanAge.d + 57));
    CHECK(p->growth[1].since.d == 57 + 240);
    // 225 L, of which 9 L a year evaporate: what is missing then is filled up, too
    const double held = plover.now.volume.l - 9 / daysPerYear * 57 - 225 * .35;
    CHECK(p->growth[0].first.of1 == Approx(held / 225));
    // its own way: from here on all are within 5 %
    const auto off = [&](int draw) {
        const double before = p->growth[static_cast<std::size_t>(draw) - 1].before.d;
        return std::abs(before - p->settled.beforeDraw.d) / p->settled.beforeDraw.d;
    };
    CHECK(off(p->draws) <= .05);
    CHECK((p->draws == 1 || off(p->draws - 1) > .05));
    CHECK(p->toSettle == p->growth[static_cast<std::size_t>(p->draws) - 1].since);

    WhatIf sooner;
    sooner.interval = Days{100}; // it is due since September, and a brew of today is ready in 14 days
    CHECK(desk->whatIf("Plover", sooner)->growth[0].since.d == 14);
    CHECK(desk->whatIf("Plover", sooner)->growth[1].since.d == 114);
    REQUIRE(desk->record(DrawDateFact{"Plover", now, day(2026, 2, 10), {}}));
    CHECK(desk->whatIf("Plover", {})->growth[0].since.d == 71); // the brewer's own day
    CHECK(desk->whatIf("Plover", sooner)->growth[0].since.d == 71);
}

TEST_CASE_METHOD(DeskFixture, "what is tried has the day that it has once it is adopted", "[desk][what_if]") {
    addPlover();
    const auto tryOut = [&](const WhatIf& what) {
        const auto p = desk->whatIf("Plover", what);
        REQUIRE(p);
        const Day first = p->begins + std::chrono::days{std::lround(p->growth[0].since.d)};
        const auto edit = adopting(desk->vessel("Plover")->facts, *p);
        REQUIRE(edit);
        REQUIRE(desk->record(*edit));
        CHECK(desk->vessel("Plover")->dates.draw == first);
    };
    for (const double interval : {30., 270., 300., 800.}) {
        WhatIf what;
        what.interval = Days{interval};
        tryOut(what);
    }
    for (const double years : {1., 2.5, 4., 9.}) {
        WhatIf what;
        what.wanted = Days{years * daysPerYear};
        tryOut(what);
    }
    WhatIf back;
    back.interval = Days{200};
    tryOut(back);
}

TEST_CASE_METHOD(DeskFixture, "a vessel is filled as it was last time, an empty one as it is filled first",
                 "[desk][what_if]") {
    addPlover();
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-02-20", "volume_l": 60})");
    record(R"({"kind": "refill", "vessel": "Plover", "on": "2026-02-20", "volume_l": 50, "age_d": 20})");
    const VesselSummary plover = *desk->vessel("Plover");
    const Litres filled = plover.now.lastFilled;
    REQUIRE(filled.l < 215);
    const auto p = desk->whatIf("Plover", {});
    REQUIRE(p);
    CHECK(p->routine.filled.l == Approx(filled.l));
    CHECK(p->lostPerYear.l == Approx(9)); // of 225 L, whatever is in it
    CHECK(p->firstRefill->takes.l == Approx(plover.refill.l));
    VesselFact rail = plover.facts;
    rail.name = "Rail";
    REQUIRE(desk->record(rail));
    CHECK(desk->whatIf("Rail", {})->routine.filled.l == Approx(desk->vessel("Rail")->refill.l));
    WhatIf smaller;
    smaller.capacity = Litres{150};
    const auto spilt = desk->whatIf("Plover", smaller);
    REQUIRE_FALSE(spilt);
    CHECK(spilt.error().path == "/capacity_l");
    CHECK(spilt.error().cause.key == "desk.capacity_below_held");
}

TEST_CASE_METHOD(DeskFixture, "a vessel that is drawn goes on from its refill", "[desk][what_if]") {
    addPlover();
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-03-02", "volume_l": 78.75})");
    const VesselSummary plover = *desk->vessel("Plover");
    REQUIRE(plover.dates.draw == day(2026, 3, 16)); // when a brew of today is ready
    const auto p = desk->whatIf("Plover", {});
    REQUIRE(p);
    CHECK(p->begins == day(2026, 3, 16));
    const double stays = (plover.now.volume.l - 9 / daysPerYear * 14) / 225;
    const double refilled = stays * (plover.now.meanAge.d + 14) + (1 - stays) * 14;
    CHECK(p->growth[0].since.d == 240);
    CHECK(p->growth[0].before.d == Approx(refilled + 240));
}

TEST_CASE_METHOD(DeskFixture, "a vessel that is not full says what its first refill takes", "[desk][what_if]") {
    addPlover();
    record(R"({"kind": "dip", "vessel": "Plover", "on": "2026-02-28", "volume_l": 220})");
    CHECK_FALSE(says(desk->whatIf("Plover", {})->words, "desk.what_if.first_refill"));
    record(R"({"kind": "dip", "vessel": "Plover", "on": "2026-03-01", "volume_l": 180})");
    const auto p = desk->whatIf("Plover", {});
    REQUIRE(p);
    REQUIRE(p->firstRefill);
    const int until = daysBetween(now, desk->vessel("Plover")->dates.draw);
    CHECK(p->firstRefill->on == desk->vessel("Plover")->dates.draw);
    CHECK(p->firstRefill->takes.l == Approx(225 - (180 - 9 / daysPerYear * (until + 1) - 78.75)));
    CHECK(says(p->words, "desk.what_if.first_refill"));
}

TEST_CASE_METHOD(DeskFixture, "older than wanted, it is drawn with the next brew and comes down refill by refill",
                 "[desk][what_if]") {
    addPlover();
    WhatIf what;
    what.wanted = Days{daysPerYear};
    const auto p = desk->whatIf("Plover", what);
    REQUIRE(p);
    CHECK(p->growth[0].since.d == 14);
    REQUIRE(p->growth[0].before.d > 2 * daysPerYear);
    for (std::size_t n = 1; n < p->growth.size(); ++n)
        CHECK(p->growth[n].since.d - p->growth[n - 1].since.d >= 14); // of primary
    REQUIRE(p->draws > 1);
    const auto before = [&](int draw) { return p->growth[static_cast<std::size_t>(draw) - 1].before.d; };
    CHECK(before(p->draws) == Approx(daysPerYear).margin(1));
    CHECK(before(p->draws - 1) > daysPerYear + 1);
    CHECK(render(p->words[1]).starts_with("It is 12 months old at each draw from draw " + std::to_string(p->draws)));
}

TEST_CASE("what cannot be tried is refused at its number", "[desk][what_if][bad]") {
    const auto path = [](const WhatIf& what) {
        const auto p = prospectOf(tight(), what, {begin});
        return p ? std::string() : p.error().path;
    };
    CHECK(path(tried(101, 90, 0)) == "/draw_l");
    CHECK(path(tried(0, 90, 0)) == "/draw_l");
    CHECK(path(tried(30, 0, 0)) == "/interval_d");
    CHECK(path(tried(30, 90, -1)) == "/refill_age_d");
    CHECK(path(tried(30, 90, 0, 0)) == "/in_row");
    CHECK(path(tried(30, 90, 0, 13)) == "/in_row");
    WhatIf what;
    what.capacity = Litres{0};
    CHECK(path(what) == "/capacity_l");
    what = {};
    what.wanted = Days{0};
    CHECK(path(what) == "/wanted_age_d");
}

TEST_CASE_METHOD(DeskFixture, "nothing is written until it is adopted, in one edit", "[desk][what_if]") {
    addPlover();
    const auto revision = desk->revision();
    WhatIf what;
    what.draw = Litres{60};
    what.interval = Days{300};
    const auto p = desk->whatIf("Plover", what);
    REQUIRE(p);
    CHECK(desk->revision() == revision);
    CHECK(p->begins == now); // it holds beer
    CHECK_FALSE(p->waits);
    // every 300 days from 1 June 2025: 28 March 2026
    CHECK(p->growth.front().before.d == Approx(desk->vessel("Plover")->now.meanAge.d + 26));
    const auto edit = adopting(desk->vessel("Plover")->facts, *p);
    REQUIRE(edit);
    REQUIRE(desk->record(*edit));
    CHECK(desk->vessel("Plover")->facts.interval == Days{300});
    CHECK(desk->vessel("Plover")->facts.drawShare.of1 == Approx(60 / 225.));
    CHECK_FALSE(adopting(desk->vessel("Plover")->facts, *desk->whatIf("Plover", what)));
    what = {};
    what.wanted = Days{3 * daysPerYear};
    REQUIRE(desk->record(*adopting(desk->vessel("Plover")->facts, *desk->whatIf("Plover", what))));
    CHECK(desk->vessel("Plover")->facts.wantedAgeYears == Approx(3));
    what = {};
    what.interval = Days{300};
    REQUIRE(desk->record(*adopting(desk->vessel("Plover")->facts, *desk->whatIf("Plover", what))));
    CHECK_FALSE(desk->vessel("Plover")->facts.wantedAgeYears);
    REQUIRE(desk->undo());
    CHECK(desk->vessel("Plover")->facts.wantedAgeYears == Approx(3));
}
