// SPDX-License-Identifier: GPL-3.0-or-later
// A room's year told in two ways, the stretches it makes of any interval, and what readings say of it.
#include "vessel/room.h"

#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::vessel;

namespace {

Day roomDay(int y, unsigned m, unsigned d) {
    return std::chrono::year{y} / static_cast<int>(m) / static_cast<int>(d);
}

} // namespace

TEST_CASE("A year between its ends is a sine through the middle of the months", "[room]") {
    const ByMonth year = yearBetween({4}, {24}, 0);
    CHECK(year[0] == Approx(4));
    CHECK(year[6] == Approx(24));
    CHECK(year[3] == Approx(14)); // half-way in spring and in autumn
    CHECK(year[9] == Approx(14));
    CHECK(year[1] == Approx(14 - 10 * std::sqrt(3) / 2));
    CHECK(meanOf(year) == Approx(14));
    CHECK(yearBetween({4}, {24}, 1)[1] == Approx(4));
    CHECK(yearBetween({4}, {24}, 1)[7] == Approx(24));
}

TEST_CASE("Months make stretches that end with them", "[room]") {
    const ByMonth year = yearBetween({4}, {24}, 0);
    const auto spells = spellsOf(year, roomDay(2024, 2, 10), {30.5}); // a leap day is in it
    REQUIRE(spells.size() == 2);
    CHECK(spells[0].from == 0);
    CHECK(spells[0].until == 20);
    CHECK(spells[0].value == year[1]);
    CHECK(spells[1].until == 30.5);
    CHECK(spells[1].value == year[2]);
    CHECK(spellsOf(year, roomDay(2024, 2, 10), {0}).empty());
    CHECK(spellsOf(year, roomDay(2025, 12, 31), {2}).back().value == year[0]);
}

TEST_CASE("Equal months are one stretch, as long as was asked", "[room][property]") {
    ByMonth even{};
    even.fill(13.7);
    CHECK(meanOf(even) == 13.7);
    CHECK_PROPERTY("one, to the last bit", [&] {
        const Days length{static_cast<double>(*rc::gen::inRange(1, 40000)) / 7};
        const Day first = roomDay(2000, 1, 1) + std::chrono::days{*rc::gen::inRange(0, 20000)};
        const auto spells = spellsOf(even, first, length);
        RC_ASSERT(spells.size() == 1);
        RC_ASSERT(spells.front().from == 0);
        RC_ASSERT(spells.front().until == length.d);
    });
    CHECK_PROPERTY("others follow without a gap", [] {
        const Days length{static_cast<double>(*rc::gen::inRange(1, 9000)) / 7};
        const auto spells = spellsOf(yearBetween({1}, {20}, 3), roomDay(2001, 3, 4), length);
        RC_ASSERT(spells.front().from == 0);
        RC_ASSERT(spells.back().until == length.d);
        for (std::size_t i = 1; i < spells.size(); ++i)
            RC_ASSERT(spells[i].from == spells[i - 1].until);
    });
}

// By hand: what was told counts as one look with 2 K, a month of readings with 1.5 K. Four months that read 2, 4, 2 and
// 4 K above: 12/2.25 / (1/4 + 4/2.25) = 2.6301, sd 1/sqrt(0.25 + 1.7778) = 0.7022.
TEST_CASE("Readings move the year as far as they are many", "[room]") {
    CHECK(offsetOf({}).value == 0);
    CHECK(offsetOf({}).sd == 2);
    std::vector<RoomReading> readings = {{roomDay(2025, 1, 3), {8}, 2},
                                         {roomDay(2025, 2, 3), {8}, 4},
                                         {roomDay(2025, 3, 3), {8}, 2},
                                         {roomDay(2026, 3, 3), {8}, 4}};
    const RoomOffset four = offsetOf(readings);
    CHECK(four.value == Approx(2.6301).epsilon(1e-4));
    CHECK(four.sd == Approx(.7022).epsilon(1e-4));
    CHECK(four.months == 4);
    readings.push_back({roomDay(2025, 1, 20), {8}, 2}); // the same month again: no further look
    CHECK(offsetOf(readings).value == Approx(four.value));
    CHECK(offsetOf(readings).months == 4);
    CHECK(offsetOf(readings).leftOut == 0);
    auto slipped = readings;
    slipped.push_back({readings.front().on, {40}, 31});
    slipped.push_back({readings.front().on, {-10}, -19});
    CHECK(offsetOf(slipped).value == Approx(four.value)); // 40 C in a barn is no weather
    CHECK(offsetOf(slipped).leftOut == 2);
    CHECK(offsetOf(std::span(readings).first(1)).value == Approx(2 / 2.25 / (.25 + 1 / 2.25)));
}
