// SPDX-License-Identifier: GPL-3.0-or-later
// Options as they were typed: nothing typed says nothing.
#pragma once

#include "quantity/parse.h"

#include <limits>
#include <optional>
#include <string>

namespace staveline::app {

/// Any number; what it may be is for whoever takes it to say. Fault at `path`.
[[nodiscard]] inline Result<double> anyNumber(const std::string& typed, const char* path) {
    constexpr double any = std::numeric_limits<double>::infinity();
    return parseNumber(typed, {-any, any}, path);
}

template <class Quantity>
Result<void> take(std::optional<Quantity>& to, const std::string& typed, const char* path, double inOne = 1) {
    if (typed.empty())
        return {};
    const auto number = anyNumber(typed, path);
    if (!number)
        return fail(number.error());
    to = Quantity{*number * inOne};
    return {};
}

} // namespace staveline::app
