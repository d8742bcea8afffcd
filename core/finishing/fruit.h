// SPDX-License-Identifier: GPL-3.0-or-later
// Fruit in beer: what it brings and what the beer is once its sugar has fermented.
#pragma once

#include "quantity/fault.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::finishing {

/// A row of resources/data/fruits.csv.
struct Fruit {
    std::string id, name;
    double sugar = 0; ///< of what can be used [g/kg]
    double acid = 0;  ///< the same [g/kg]
    std::string mainAcid;
    Share usable{1}; ///< without stones and stems
};
[[nodiscard]] const std::vector<Fruit>& builtInFruits();
/// An unknown one is a fault at "/fruit" that lists the known ones.
[[nodiscard]] Result<Fruit> fruit(std::string_view id);

struct FruitAddition {
    Fruit fruit;
    Kilograms mass{0};
    Litres beer{0};
    PercentVol alcohol{0};          ///< of the beer
    Celsius temperature{15};        ///< at which it lies on the fruit
    std::optional<Litres> vessel{}; ///< that takes both; none: not told
};
struct FruitEffect {
    double kgPerLitre = 0;
    GramsPerLitre sugar{0};   ///< brought to each litre of beer
    GramsPerLitre acidity{0}; ///< titratable, as lactic, at most: cultures eat citric and malic acid
    Litres water{0};          ///< and all the other liquid it brings
    Litres volume{0};         ///< beer and liquid of the fruit
    PercentVol alcohol{0};    ///< when its sugar has fermented
    Litres headspace{0};      ///< for the surge
    Days contact{0};          ///< to the first taste, as common practice
};
/// Faults: "/fruit" (none, more than an addition ever is, or no room in the vessel for it and its surge), "/litres",
/// "/alcohol", "/temperature_c".
[[nodiscard]] Result<FruitEffect> withFruit(const FruitAddition& addition);

} // namespace staveline::finishing
