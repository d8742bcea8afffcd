// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/lock_option.h"

#include "quantity/parse.h"

#include <algorithm>
#include <cctype>
#include <limits>

namespace staveline::app {
namespace {

struct UnitWords {
    std::string_view unit;  ///< as the lever's row has it
    std::string_view shown; ///< as a message names it
    std::vector<std::string_view> typed;
};

/// How units are typed behind a number, in lower case.
const UnitWords* wordsFor(std::string_view unit) {
    static const std::vector<UnitWords> all = {
        {"C", "C", {"c", "\u00b0c"}}, {"min", "min", {"min", "minutes"}},
        {"IBU", "IBU", {"ibu"}},      {"% of grist", "%", {"%"}},
        {"% of extract", "%", {"%"}}, {"%", "%", {"%"}},
        {"P", "P", {"p", "\u00b0p"}}, {"share of volume", "L", {"l", "litres", "liters"}},
        {"d", "d", {"d", "days"}}};
    const auto found = std::find_if(all.begin(), all.end(), [&](const UnitWords& each) { return each.unit == unit; });
    return found == all.end() ? nullptr : &*found;
}

bool isPartOfNumber(char c) {
    return std::isdigit(static_cast<unsigned char>(c)) != 0 || std::string_view(" .,+-").find(c) != std::string::npos;
}

/// "60 L" -> "l"
std::string unitTyped(std::string_view value) {
    const auto first = std::find_if_not(value.begin(), value.end(), isPartOfNumber);
    std::string unit(first, value.end());
    unit.erase(unit.find_last_not_of(' ') + 1);
    std::transform(unit.begin(), unit.end(), unit.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return unit;
}

Result<double> numberFor(const advice::LeverRow& lever, std::string_view value) {
    constexpr double any = std::numeric_limits<double>::infinity();
    const std::string typed = unitTyped(value);
    const auto digits = std::find_if_not(value.begin(), value.end(), isPartOfNumber) - value.begin();
    const UnitWords* unit = wordsFor(lever.unit);
    const bool power = typed.size() > 1 && typed[0] == 'e' && isPartOfNumber(typed[1]); // "1e3" is one slip, not a unit
    const bool own = typed.empty() || power ||
                     (unit && std::find(unit->typed.begin(), unit->typed.end(), typed) != unit->typed.end());
    if (digits > 0 && !own)
        return badInput("/lock", say("app.lock_unit").with("text", excerpt(value)).with("lever", lever.name),
                        say("app.lock_unit.remedy").with("unit", std::string(unit ? unit->shown : "")));
    const bool inUnit = digits > 0 && !power;
    auto number = parseNumber(inUnit ? value.substr(0, static_cast<std::size_t>(digits)) : value, {-any, any}, "/lock");
    if (!number && unit)
        number.error().remedy = say("app.lock_number.remedy").with("unit", std::string(unit->shown));
    return number;
}

} // namespace

Result<advice::LeverLock> parseLock(const std::string& text) {
    const auto equals = text.find('=');
    if (equals == std::string::npos || equals == 0 || equals + 1 == text.size())
        return badInput("/lock", say("app.lock_form").with("text", excerpt(text)), say("app.lock_form.remedy"));
    advice::LeverLock lock{text.substr(0, equals), text.substr(equals + 1)};
    const auto& rows = advice::builtInLevers();
    const auto row =
        std::find_if(rows.begin(), rows.end(), [&](const advice::LeverRow& each) { return each.id == lock.lever; });
    if (row == rows.end() || row->isChoice())
        return lock; // what it may be, and that there is no such lever, the adviser knows
    auto number = numberFor(*row, std::string_view(text).substr(equals + 1));
    if (!number)
        return fail(number.error());
    lock.value = *number;
    return lock;
}

} // namespace staveline::app
