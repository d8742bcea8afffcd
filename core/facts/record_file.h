// SPDX-License-Identifier: GPL-3.0-or-later
// `record` files: a JSON object or an array of them, each {"kind": ..., fields with their unit in the name}; and the
// plan file, a recipe with its handling.
#pragma once

#include "facts/fact_list.h"

#include <string>
#include <string_view>
#include <vector>

namespace staveline::facts {

/// An unknown kind or field, a wrong type or a value out of range is a fault with its JSON pointer.
[[nodiscard]] Result<std::vector<Fact>> parseRecords(std::string_view json);
[[nodiscard]] std::string writeRecords(const std::vector<Fact>& facts);

/// What is planned for a refill.
struct RefillPlan {
    brewing::Recipe recipe;
    Litres draw{0};
    Days interval{240};
    Celsius temperature{16};
};
/// What the file does not name stays as in `base`; faults as above.
[[nodiscard]] Result<RefillPlan> parsePlan(std::string_view json, const RefillPlan& base);

} // namespace staveline::facts
