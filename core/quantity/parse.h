// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers as people type them: '.' and ',' are both decimal marks, there are no group separators.
#pragma once

#include "quantity/fault.h"

#include <string_view>

namespace staveline {

struct Range {
    double low = 0, high = 0; ///< both included
};
/// "1.048", "1,048", " 12 ". Faults name the field, the range and, where one clearly was meant, the value to take
/// instead (1048 in a gravity field: argument "instead" of the remedy is 1.048). NaN, infinities and a second mark
/// are faults.
[[nodiscard]] Result<double> parseNumber(std::string_view text, Range range, std::string_view path = "");
/// Gravity field: the same, with the 1048 -> 1.048 offer. 0.980..1.200.
[[nodiscard]] Result<SpecificGravity> parseGravity(std::string_view text, std::string_view path = "");

} // namespace staveline
