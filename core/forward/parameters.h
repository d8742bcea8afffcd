// SPDX-License-Identifier: GPL-3.0-or-later
// All constants of the forward model by name, their rows in resources/data, and the draws that make bands.
#pragma once

#include "brewing/refill_beer.h"
#include "culture/vessel_state.h"
#include "quantity/constants.h"
#include "tasting/score_map.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::forward {

struct Parameters {
    brewing::BrewParameters brew;
    culture::CultureParameters culture;
    tasting::ScoreParameters score;
    double beerBuffer = constants::beerBuffer; ///< buffer of fresh beer against the 12 P reference at the same gravity
    bool operator==(const Parameters&) const = default;
};

/// A constant's name, as in parameters.csv, and the member it fills.
struct ParameterName {
    std::string_view name;
    double& (*in)(Parameters&);
};
/// Every member of Parameters once.
[[nodiscard]] std::span<const ParameterName> parameterNames();
/// Null when there is no such name.
[[nodiscard]] const ParameterName* findParameter(std::string_view name);

/// One row of resources/data/parameters.csv, for help and editing. Names that are not in parameterNames() belong to
/// other rooms ("panel.": the noise of tasters).
struct ParameterRow {
    std::string name;
    double value = 0, low = 0, high = 0;
    std::string unit, source, meaning;
};
/// Repeated names, bad numbers and values outside their own range are faults at "/<row>/<column>".
[[nodiscard]] Result<std::vector<ParameterRow>> parseParameters(std::string_view csv);
[[nodiscard]] const std::vector<ParameterRow>& builtInParameterRows();
/// As the table has them; the same as Parameters{}.
[[nodiscard]] const Parameters& builtInParameters();

enum class Law {
    lognormal, ///< multiplies the centre by exp(spread z)
    normal,    ///< adds spread z to the centre
    uniform,   ///< low..high whatever the centre
    tied       ///< a factor times another parameter; no draw of its own
};
/// One row of resources/data/priors.csv; the centre is the parameter itself. Limits hold after the law; a missing limit
/// is infinite.
struct Prior {
    std::string parameter;
    Law law = Law::normal;
    std::string tiedTo;
    double factor = 0; ///< of a tied one
    double spread = 0, low = 0, high = 0;
    std::string unit, source;
};
[[nodiscard]] Result<std::vector<Prior>> parsePriors(std::string_view csv);
[[nodiscard]] const std::vector<Prior>& builtInPriors();

/// Quasi-random parameter sets for bands: always the same `count` draws around `centre`, from priors.csv. Each
/// parameter visits `count` equally likely slices of its prior once, in the order of a scrambled Halton sequence.
[[nodiscard]] std::vector<Parameters> parameterDraws(const Parameters& centre, int count = 64);

} // namespace staveline::forward
