// SPDX-License-Identifier: GPL-3.0-or-later
// Fruit in beer: what it brings and what the beer is once its sugar has fermented.
#pragma once

#include "quantity/fault.h"

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
    PercentVol alcohol{0};   ///< of the beer
    Celsius temperature{15}; ///< at which it lies on the fruit
    Litres vessel{0};        ///< that takes both; 0: not said
};
struct FruitEffect {
    double kgPerLitre = 0;
    GramsPerLitre sugar{0};   ///< brought to each litre of beer
    GramsPerLitre acidity{0}; ///< titratable, as lactic, at most: cultures eat citric and malic acid
    Litres water{0};          ///< and all the other liquid it brings
    Litres volume{0};         ///< beer and liquid of the fruit
    PercentVol alcohol{0};    ///< when its sugar has fermented
    Co2Volumes sealed{0};     ///< that its sugar would make in a closed bottle
    Litres headspace{0};      ///< for the surge
    Days contact{0};          ///< to the first taste, as common practice
};
/// Faults: "/fruit" (none, or more than an addition ever is), "/litres", "/alcohol", "/temperature_c"; at "/vessel_l"
/// a vessel that has no room for fruit and surge.
[[nodiscard]] Result<FruitEffect> withFruit(const FruitAddition& addition);

} // namespace staveline::finishing
