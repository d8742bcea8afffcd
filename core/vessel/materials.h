// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel is made of and what follows from it. Rows with ranges and sources in resources/data/materials.csv.
#pragma once

#include "quantity/fault.h"

#include <string>
#include <string_view>
#include <vector>

namespace staveline::vessel {

/// One number of one material, as the table has it.
struct MaterialRow {
    std::string material; ///< oak new, oak used, foeder, steel, glass, plastic
    std::string quantity; ///< evaporation, oxygen, culture held back
    double value = 0, low = 0, high = 0;
    std::string unit, source, note;
};

struct MaterialFacts {
    Share evaporationPerYear{0.04}; ///< of capacity
    double oxygenPerYear = 10;      ///< through walls and seals, tight and topped [mg/(L year)]
    Share cultureHeldBack{0.6};     ///< part of the culture that wood or lees keep at a full draw
};

/// Faults at "/<row>/<column>": a missing column, a bad number, a value outside its range, an unknown quantity or
/// unit, a material without all three.
[[nodiscard]] Result<std::vector<MaterialRow>> parseMaterials(std::string_view csv);
[[nodiscard]] const std::vector<MaterialRow>& builtInMaterials();

/// Names in the order of the table.
[[nodiscard]] std::vector<std::string> materialNames();
/// An unknown name is a fault at `path` that lists the known ones.
[[nodiscard]] Result<MaterialFacts> materialFacts(std::string_view name, std::string_view path = "");

} // namespace staveline::vessel
