// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/day.h"

#include "quantity/day_limits.h"
#include "quantity/day_words.h"
#include "quantity/language.h"
#include "quantity/parse.h"

#include <algorithm>
#include <array>
#include <fmt/core.h>

namespace staveline {
namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
/// Exactly NNNN-NN-NN, so that "2026-3-2" or a sign never slips through.
bool hasIsoShape(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return false;
    return std::count_if(text.begin(), text.end(), isDigit) == 8;
}
int digits(std::string_view text) {
    int value = 0;
    for (const char c : text)
        value = 10 * value + (c - '0');
    return value;
}

} // namespace

Result<void> checkDay(Day day, std::string_view path) {
    if (day >= firstDay && day <= lastDay)
        return {};
    return badInput(std::string(path), say("quantity.day_range").with("text", isoDay(day)),
                    say("quantity.day_range.remedy").with("first", isoDay(firstDay)).with("last", isoDay(lastDay)));
}

std::optional<Day> storedDay(std::string_view text) {
    if (!hasIsoShape(text))
        return std::nullopt;
    const std::chrono::year_month_day day{std::chrono::year(digits(text.substr(0, 4))),
                                          std::chrono::month(static_cast<unsigned>(digits(text.substr(5, 2)))),
                                          std::chrono::day(static_cast<unsigned>(digits(text.substr(8, 2))))};
    return day.ok() ? std::optional(Day(day)) : std::nullopt;
}

Result<Day> parseDay(std::string_view text, std::string_view path) {
    const auto day = storedDay(text);
    if (!day)
        return badInput(
            std::string(path),
            say(hasIsoShape(text) ? "quantity.no_such_day" : "quantity.not_a_day").with("text", excerpt(text)),
            say("quantity.day_form"));
    if (auto sensible = checkDay(*day, path); !sensible)
        return fail(sensible.error());
    return *day;
}

std::optional<int> minuteOfDay(std::string_view text) {
    const auto colon = text.find(':');
    const std::string_view hour = text.substr(0, colon), minute = colon < text.size() ? text.substr(colon + 1) : "";
    const auto allDigits = [](std::string_view part) { return std::all_of(part.begin(), part.end(), isDigit); };
    if (hour.empty() || hour.size() > 2 || minute.size() != 2 || !allDigits(hour) || !allDigits(minute) ||
        digits(hour) > 23 || digits(minute) > 59)
        return std::nullopt;
    return 60 * digits(hour) + digits(minute);
}

std::string isoDay(Day day) {
    const std::chrono::year_month_day date(day);
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                       static_cast<unsigned>(date.day()));
}

std::string dayInWords(Day day) {
    const std::chrono::year_month_day date(day);
    auto words = inLanguage("{day} {month} {year}");
    const auto fill = [&words](std::string_view slot, const std::string& value) {
        words.replace(words.find(slot), slot.size(), value);
    };
    fill("{day}", fmt::format("{}", static_cast<unsigned>(date.day())));
    fill("{month}", monthInWords(static_cast<unsigned>(date.month())));
    fill("{year}", fmt::format("{}", static_cast<int>(date.year())));
    return words;
}

std::string monthInWords(unsigned month) {
    constexpr std::array<std::string_view, 12> months = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                         "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    return inLanguage(months.at(month - 1));
}

std::string weekdayInWords(Day day) {
    constexpr std::array<std::string_view, 7> days = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    return inLanguage(days.at(std::chrono::weekday(day).c_encoding()));
}

} // namespace staveline
