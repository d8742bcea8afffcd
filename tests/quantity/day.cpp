// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/day_limits.h"
#include "quantity/text.h"

#include "support/property.h"

namespace staveline {
namespace {

using namespace std::chrono_literals;

Day day(int year, unsigned month, unsigned dayOfMonth) {
    return Day(
        std::chrono::year_month_day(std::chrono::year(year), std::chrono::month(month), std::chrono::day(dayOfMonth)));
}
std::string keyOf(std::string_view text) {
    const auto parsed = parseDay(text);
    return parsed ? isoDay(*parsed) : parsed.error().cause.key;
}

} // namespace

TEST_CASE("ISO days are read and written") {
    CHECK(parseDay("2026-03-02").value() == day(2026, 3, 2));
    CHECK(isoDay(day(2026, 3, 2)) == "2026-03-02");
    CHECK(dayInWords(day(2026, 3, 2)) == "2 Mar 2026");
    CHECK(dayInWords(day(2024, 12, 31)) == "31 Dec 2024");
    CHECK(isoDay(day(987, 12, 31)) == "0987-12-31");
    CHECK(parseDay("1970-01-01").value() == Day{});
}

TEST_CASE("Leap days follow the Gregorian rule") {
    // ISO 8601: divisible by 4, not by 100, unless by 400.
    CHECK(parseDay("2024-02-29"));
    CHECK(parseDay("2000-02-29"));
    CHECK(keyOf("2023-02-29") == "quantity.no_such_day");
    CHECK(keyOf("1900-02-29") == "quantity.no_such_day");
    CHECK(daysBetween(day(2024, 2, 28), day(2024, 3, 1)) == 2);
    CHECK(daysBetween(day(2023, 2, 28), day(2023, 3, 1)) == 1);
}

TEST_CASE("Days that do not exist are told from texts that are no date") {
    for (const auto* text : {"2026-13-01", "2026-00-10", "2026-04-31", "2026-01-00", "2026-01-32"})
        CHECK(keyOf(text) == "quantity.no_such_day");
    for (const auto* text :
         {"", "2026-3-2", "2026-03-2", "26-03-02", "2026/03/02", "02.03.2026", "2026-03-02 ", " 2026-03-02",
          "2026-03-02T00:00", "+026-03-02", "-026-03-02", "2026-0a-02", "20260302", "about 2019"})
        CHECK(keyOf(text) == "quantity.not_a_day");
}

TEST_CASE("A slip in the year is found, and what is stored is still read") {
    for (const auto* text : {"0000-01-01", "0001-01-01", "1899-12-31", "2201-01-01", "9999-12-31"}) {
        INFO(text);
        CHECK(keyOf(text) == "quantity.day_range");
        REQUIRE(storedDay(text));
        CHECK(isoDay(*storedDay(text)) == text);
    }
    for (const auto* text : {"1900-01-01", "2200-12-31"})
        CHECK(keyOf(text) == text);
    CHECK(checkDay(lastDay, "/on"));
    CHECK(checkDay(lastDay + std::chrono::days(1), "/on").error().path == "/on");
    CHECK_FALSE(storedDay("2026-02-30"));
    CHECK_FALSE(storedDay("notaday"));
    CHECK(render(parseDay("9999-12-31").error().remedy) ==
          "Check the year: days from 1900-01-01 to 2200-12-31 are taken.");
}

TEST_CASE("A fault carries the path of its field and shows what was typed") {
    const auto fault = parseDay("soon", "/on").error();
    CHECK(fault.kind == FaultKind::input);
    CHECK(fault.path == "/on");
    CHECK(std::get<std::string>(fault.cause.arguments.at(0).value) == "soon");
    CHECK(fault.remedy.key == "quantity.day_form");
}

TEST_CASE("Distances are signed and count days") {
    CHECK(daysBetween(day(2026, 1, 1), day(2026, 12, 31)) == 364);
    CHECK(daysBetween(day(2026, 3, 2), day(2026, 3, 1)) == -1);
    CHECK(daysBetween(day(2026, 3, 2), day(2026, 3, 2)) == 0);
}

TEST_CASE("Every day comes back from its text") {
    CHECK_PROPERTY("round trip over ten thousand years", [] {
        const auto count = *rc::gen::inRange(-719'528, 2'932'897); // 0000-01-01 .. 9999-12-31
        const Day on{std::chrono::days(count)};
        const auto text = isoDay(on);
        RC_ASSERT(text.size() == 10U);
        RC_ASSERT(storedDay(text) == on);
        RC_ASSERT(parseDay(text).has_value() == (on >= firstDay && on <= lastDay));
    });
}

TEST_CASE("ISO texts sort as the days do") {
    CHECK_PROPERTY("text order is day order", [] {
        const Day a{std::chrono::days(*rc::gen::inRange(-700'000, 2'900'000))};
        const Day b{std::chrono::days(*rc::gen::inRange(-700'000, 2'900'000))};
        RC_ASSERT((isoDay(a) < isoDay(b)) == (a < b));
    });
}

TEST_CASE("A time of day is hours and minutes, and nothing else", "[day]") {
    CHECK(minuteOfDay("14:30") == 870);
    CHECK(minuteOfDay("9:05") == 545);
    CHECK(minuteOfDay("00:00") == 0);
    CHECK(minuteOfDay("23:59") == 1439);
    for (const char* text :
         {"", "24:00", "12:60", "12", "12:3", "12:345", ":30", "noon", "-1:00", "12.30", "1 2:30", "123:00"})
        CHECK_FALSE(minuteOfDay(text));
}

} // namespace staveline
