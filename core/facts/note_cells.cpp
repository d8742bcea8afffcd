// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/note_cells.h"

#include "quantity/day_limits.h"
#include "quantity/parse.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>

namespace staveline::facts {
namespace {

using std::chrono::month;

std::vector<std::string_view> tokensOf(std::string_view text) {
    constexpr std::string_view between = " ./-,\t";
    std::vector<std::string_view> tokens;
    for (std::size_t at = text.find_first_not_of(between); at != text.npos;) {
        const auto end = std::min(text.find_first_of(between, at), text.size());
        tokens.push_back(text.substr(at, end - at));
        at = text.find_first_not_of(between, end);
    }
    return tokens;
}

std::optional<int> wholeOf(std::string_view token) {
    int number = 0;
    const auto [end, error] = std::from_chars(token.data(), token.data() + token.size(), number);
    if (error != std::errc() || end != token.data() + token.size() || number < 0)
        return std::nullopt;
    return number;
}

/// "Mar", "March", "März": in whatever language the notes were kept
std::optional<int> monthNamed(std::string_view token) {
    constexpr std::array<std::array<std::string_view, 3>, 12> months = {{{"january", "januar", "jänner"},
                                                                         {"february", "februar", "feber"},
                                                                         {"march", "märz", "maerz"},
                                                                         {"april", "april", "april"},
                                                                         {"may", "mai", "mai"},
                                                                         {"june", "juni", "juni"},
                                                                         {"july", "juli", "juli"},
                                                                         {"august", "august", "august"},
                                                                         {"september", "september", "september"},
                                                                         {"october", "oktober", "oktober"},
                                                                         {"november", "november", "november"},
                                                                         {"december", "dezember", "dezember"}}};
    std::string word(token);
    std::transform(word.begin(), word.end(), word.begin(), [](unsigned char c) { return std::tolower(c); });
    constexpr std::size_t shortest = 3;
    const auto at = std::find_if(months.begin(), months.end(), [&](const auto& names) {
        return word.size() >= shortest &&
               std::any_of(names.begin(), names.end(), [&](auto name) { return name.starts_with(word); });
    });
    return at == months.end() ? std::nullopt : std::optional(static_cast<int>(at - months.begin()) + 1);
}

int fullYear(std::string_view token, int number) {
    return token.size() > 2 ? number : number + (number < 70 ? 2000 : 1900);
}

std::optional<Day> dayOf(std::string_view yearToken, std::optional<int> m, std::optional<int> d) {
    const auto y = wholeOf(yearToken);
    if (!y || !m || !d)
        return std::nullopt;
    const std::chrono::year_month_day day{std::chrono::year{fullYear(yearToken, *y)}, month{static_cast<unsigned>(*m)},
                                          std::chrono::day{static_cast<unsigned>(*d)}};
    return day.ok() ? std::optional(Day{day}) : std::nullopt;
}

std::string_view trimmed(std::string_view text) {
    const auto begin = std::min(text.find_first_not_of(" \t"), text.size());
    return text.substr(begin, text.find_last_not_of(" \t") + 1 - begin);
}

/// Takes what a text begins with, as long as it is there.
class Taker {
public:
    explicit Taker(std::string_view text) : rest_(text) {}
    [[nodiscard]] bool isAtEnd() const { return rest_.empty(); }
    bool one(std::string_view of) {
        const bool found = !rest_.empty() && of.find(rest_.front()) != of.npos;
        rest_.remove_prefix(found ? 1 : 0);
        return found;
    }
    bool digits(std::size_t least, std::size_t most) {
        const auto count = std::min(rest_.find_first_not_of("0123456789"), rest_.size());
        const bool found = count >= least && count <= most;
        rest_.remove_prefix(found ? count : 0);
        return found;
    }

private:
    std::string_view rest_;
};

/// "14:30", "14:30:00.000+02:00", "2:30 pm"
bool isTime(std::string_view text) {
    constexpr std::size_t mostFractions = 9;
    Taker take(text);
    if (!take.digits(1, 2) || !take.one(":") || !take.digits(2, 2))
        return false;
    if (take.one(":") && (!take.digits(2, 2) || (take.one(".,") && !take.digits(1, mostFractions))))
        return false;
    take.one(" ");
    if (take.one("AaPp") && !take.one("Mm"))
        return false;
    if (take.one("+-"))
        return take.digits(2, 2) && (take.one(":"), take.digits(2, 2)) && take.isAtEnd();
    take.one("Z");
    return take.isAtEnd();
}

/// A day without the time that a spreadsheet or a logger put after it.
std::string_view withoutTime(std::string_view text) {
    text = trimmed(text);
    const auto colon = std::min(text.find(':'), text.size());
    const auto before = text.find_last_not_of("0123456789", colon == 0 ? 0 : colon - 1);
    if (colon == text.size() || before == text.npos || !isTime(text.substr(before + 1)))
        return text;
    return text[before] == ' ' || text[before] == 'T' ? text.substr(0, before) : text;
}

/// Digits before the decimal mark without what groups them; none: they are grouped otherwise.
std::optional<std::string> ungrouped(std::string_view whole, char group) {
    std::string digits;
    std::size_t since = 0; // of the last mark
    bool marked = false;
    for (const char c : whole) {
        if (c == group || c == ' ') {
            if (marked ? since != 3 : (since == 0 || since > 3))
                return std::nullopt;
            marked = true;
            since = 0;
            continue;
        }
        digits += c;
        since += std::isdigit(static_cast<unsigned char>(c)) != 0 ? 1U : 0U;
    }
    return marked && since != 3 ? std::nullopt : std::optional(digits);
}

} // namespace

std::optional<Day> readDay(std::string_view text, DateOrder order) {
    const auto t = tokensOf(withoutTime(text));
    if (t.size() != 3)
        return std::nullopt;
    if (const auto m = monthNamed(t[1]))
        return dayOf(t[2], m, wholeOf(t[0]));
    if (const auto m = monthNamed(t[0]))
        return dayOf(t[2], m, wholeOf(t[1]));
    constexpr std::size_t wholeYear = 4;
    if ((order == DateOrder::ymd) != (t[0].size() == wholeYear) &&
        (t[0].size() == wholeYear || t[2].size() == wholeYear))
        return std::nullopt;
    if (order == DateOrder::ymd)
        return dayOf(t[0], wholeOf(t[1]), wholeOf(t[2]));
    const bool dayFirst = order == DateOrder::dmy;
    return dayOf(t[2], wholeOf(t[dayFirst ? 1 : 0]), wholeOf(t[dayFirst ? 0 : 1]));
}

std::optional<double> readNumber(std::string_view text, char decimal) {
    text = trimmed(text);
    const auto mark = text.find(decimal);
    const auto whole = ungrouped(text.substr(0, mark), decimal == '.' ? ',' : '.');
    if (!whole)
        return std::nullopt;
    return plainNumber(mark == text.npos ? *whole : *whole + "." + std::string(text.substr(mark + 1)));
}

std::optional<double> readShare(std::string_view text, char decimal) {
    text = trimmed(text);
    if (!text.ends_with('%'))
        return readNumber(text, decimal);
    const auto perCent = readNumber(text.substr(0, text.size() - 1), decimal);
    return perCent ? std::optional(*perCent / 100) : std::nullopt;
}

std::optional<DateOrder> dateOrderNamed(std::string_view word) {
    for (const auto order : {DateOrder::ymd, DateOrder::dmy, DateOrder::mdy})
        if (wordOf(order) == word)
            return order;
    return std::nullopt;
}

std::string_view wordOf(DateOrder order) {
    constexpr std::array<std::string_view, 3> words = {"ymd", "dmy", "mdy"};
    return words[static_cast<std::size_t>(order)];
}

} // namespace staveline::facts
