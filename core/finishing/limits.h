// SPDX-License-Identifier: GPL-3.0-or-later
// Private to the room: what is asked must lie in its range.
#pragma once

#include "quantity/parse.h"
#include "quantity/text.h"

#include <string_view>

namespace staveline::finishing {

/// The fault names the range; not a number is outside of any.
[[nodiscard]] inline Result<void> inRange(std::string_view path, double value, Range range) {
    if (range.holds(value))
        return {};
    return fail(outOfRange(show(shortest(value)), value, range, path));
}

} // namespace staveline::finishing
