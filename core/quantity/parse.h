// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers as people type them: '.' and ',' are both decimal marks, there are no group separators.
#pragma once

#include "quantity/fault.h"

#include <optional>
#include <string_view>

namespace staveline {

struct Range {
    double low = 0, high = 0; ///< both included; infinite: no limit on that side
    [[nodiscard]] constexpr bool holds(double value) const { return value >= low && value <= high; }
    bool operator==(const Range&) const = default;
};
/// "1.048", "1,048", " 12 ". Faults name the field, the range and, where one clearly was meant, the value to take
/// instead (1048 in a gravity field: argument "instead" of the remedy is 1.048). NaN, infinities and a second mark
/// are faults.
[[nodiscard]] Result<double> parseNumber(std::string_view text, Range range, std::string_view path = "");
/// Gravity field: the same, with the 1048 -> 1.048 offer; 48 offers 1.048 too. 0.980..1.200.
[[nodiscard]] Result<SpecificGravity> parseGravity(std::string_view text, std::string_view path = "");

/// The fault for `value`, typed as `text`, outside `range`; its remedy states the range.
[[nodiscard]] Fault outOfRange(std::string_view text, double value, Range range, std::string_view path);
/// The whole text as one finite number with '.' as its only mark and an optional exponent, as in data files;
/// the same in every locale.
[[nodiscard]] std::optional<double> plainNumber(std::string_view text);
/// What was typed, short enough to repeat in a message; never cut inside a UTF-8 character.
[[nodiscard]] std::string excerpt(std::string_view text);
/// A value with as many decimals as it needs, at most six.
[[nodiscard]] Number shortest(double value);

} // namespace staveline
