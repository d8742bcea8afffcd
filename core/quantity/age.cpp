// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/age.h"

#include "quantity/text.h"

#include <fmt/core.h>

namespace staveline {

std::string ageText(Days age) {
    if (age.d < ageInMonthsFrom)
        return show(Amount{age});
    if (age.d < ageInYearsFrom)
        return fmt::format("{:.0f} months", age.d / daysPerMonth);
    return fmt::format("{:.1f} years", age.d / daysPerYear);
}

} // namespace staveline
