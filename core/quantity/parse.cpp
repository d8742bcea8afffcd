// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/parse.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace staveline {
namespace {

constexpr Range gravityRange{0.980, 1.200};

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blank = " \t\r\n";
    const auto first = text.find_first_not_of(blank);
    return first == std::string_view::npos ? std::string_view{}
                                           : text.substr(first, text.find_last_not_of(blank) - first + 1);
}

bool isMark(char c) {
    return c == '.' || c == ',';
}
bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// Digits with at most one mark and a sign in front. Exponents are refused: "1e3" is a slip, not a brewer's number.
std::optional<double> typedNumber(std::string_view text) {
    auto digits = text;
    if (!digits.empty() && (digits.front() == '-' || digits.front() == '+'))
        digits.remove_prefix(1);
    const auto marks = std::count_if(digits.begin(), digits.end(), isMark);
    const auto figures = std::count_if(digits.begin(), digits.end(), isDigit);
    if (marks > 1 || figures == 0 || static_cast<std::size_t>(marks + figures) != digits.size())
        return std::nullopt;
    std::string plain(digits);
    std::replace(plain.begin(), plain.end(), ',', '.');
    const auto value = plainNumber(plain);
    return value && text.front() == '-' ? -*value : value;
}

/// The one value in range that differs from what was typed only by a forgotten decimal mark.
std::optional<double> withMark(std::string_view text, double value, Range range) {
    if (std::any_of(text.begin(), text.end(), isMark))
        return std::nullopt;
    std::optional<double> found;
    for (const double divisor : {10.0, 100.0, 1000.0, 10000.0}) {
        if (!range.holds(value / divisor))
            continue;
        if (found)
            return std::nullopt;
        found = value / divisor;
    }
    return found;
}

/// "1048" lacks its mark, "48" are gravity points. No offer for "104", which could be either, nor up to 25, where
/// degrees Plato may be meant.
std::optional<double> meantGravity(std::string_view text, double value) {
    if (value <= 25)
        return std::nullopt;
    const auto marked = withMark(text, value, gravityRange);
    const double asPoints = 1 + value / 1000;
    if (!gravityRange.holds(asPoints))
        return marked;
    return marked ? std::nullopt : std::optional(asPoints);
}

Message allowed(Range range) {
    if (std::isinf(range.high))
        return say("quantity.give_at_least").with("low", shortest(range.low));
    if (std::isinf(range.low))
        return say("quantity.give_at_most").with("high", shortest(range.high));
    return say("quantity.give_between").with("low", shortest(range.low)).with("high", shortest(range.high));
}

Fault notANumber(std::string_view text, std::string_view path) {
    if (text.empty())
        return {FaultKind::input, std::string(path), say("quantity.empty"), say("quantity.number_form")};
    if (std::count_if(text.begin(), text.end(), isMark) > 1)
        return {FaultKind::input, std::string(path), say("quantity.two_marks").with("text", excerpt(text)),
                say("quantity.no_groups")};
    return {FaultKind::input, std::string(path), say("quantity.not_a_number").with("text", excerpt(text)),
            say("quantity.number_form")};
}

Message offer(ArgumentValue instead) {
    return say("quantity.did_you_mean").with("instead", std::move(instead));
}

} // namespace

Fault outOfRange(std::string_view text, double value, Range range, std::string_view path) {
    auto cause = value < range.low
                     ? say("quantity.below").with("text", excerpt(text)).with("low", shortest(range.low))
                     : say("quantity.above").with("text", excerpt(text)).with("high", shortest(range.high));
    return {FaultKind::input, std::string(path), std::move(cause), allowed(range)};
}

std::optional<double> plainNumber(std::string_view text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

std::string excerpt(std::string_view text) {
    constexpr std::size_t longest = 40;
    if (text.size() <= longest)
        return std::string(text);
    auto end = longest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U)
        --end;
    return std::string(text.substr(0, end)) + "...";
}

Number shortest(double value) {
    constexpr int most = 6;
    double scale = 1;
    for (int decimals = 0; decimals < most; ++decimals, scale *= 10)
        if (std::abs(std::round(value * scale) / scale - value) < 1e-9)
            return {value, decimals};
    return {value, most};
}

Result<double> parseNumber(std::string_view text, Range range, std::string_view path) {
    text = trimmed(text);
    const auto value = typedNumber(text);
    if (!value)
        return fail(notANumber(text, path));
    if (range.holds(*value))
        return *value;
    auto fault = outOfRange(text, *value, range, path);
    if (const auto meant = withMark(text, *value, range))
        fault.remedy = offer(shortest(*meant));
    return fail(std::move(fault));
}

Result<SpecificGravity> parseGravity(std::string_view text, std::string_view path) {
    text = trimmed(text);
    const auto value = typedNumber(text);
    if (!value)
        return fail(notANumber(text, path));
    if (gravityRange.holds(*value))
        return SpecificGravity{*value};
    auto fault = outOfRange(text, *value, gravityRange, path);
    if (const auto meant = meantGravity(text, *value))
        fault.remedy = offer(SpecificGravity{*meant});
    return fail(std::move(fault));
}

} // namespace staveline
