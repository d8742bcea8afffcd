// SPDX-License-Identifier: GPL-3.0-or-later
// What beer is filled into, and how much of CO2 it is meant for.
#pragma once

#include "quantity/constants.h"
#include "quantity/fault.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::finishing {

/// A row of resources/data/bottles.csv: bottles by their make, where the maker's rating is not known.
struct BottleMake {
    std::string id, name;
    Co2Volumes warn{0}, most{0}; ///< of all CO2 that may come to be in it; 0: never for refermentation
    Millilitres smallest{0}, largest{0};
};
[[nodiscard]] const std::vector<BottleMake>& builtInBottles();
/// An unknown one is a fault at "/bottle" that lists the known ones.
[[nodiscard]] Result<BottleMake> bottleMake(std::string_view id);

struct Package {
    Millilitres size{330};
    std::optional<GaugePressure> rating; ///< by its maker
    std::optional<BottleMake> make;
    Celsius warmest{constants::finishing::warmest}; ///< at which it will ever stand
};
/// Faults at "/bottle_ml", "/rating_bar" and "/warmest_c".
[[nodiscard]] Result<void> checkPackage(const Package& package);

} // namespace staveline::finishing
