// SPDX-License-Identifier: GPL-3.0-or-later
// What one taster says about one dimension, and how well it is supported.
#pragma once

#include "quantity/constants.h"
#include "tasting/sitting.h"

#include <map>
#include <string>
#include <vector>

namespace staveline::tasting {

// Rows "tasting." of resources/data/rules.csv.
inline constexpr double enoughWeight =
    constants::tasting::enoughWeight; ///< of a dimension, for a taster or a temperature to count
inline constexpr double fullShiftFrom =
    constants::tasting::fullShiftFrom;       ///< score from which the expected warming is a fixed step
inline constexpr double weightMargin = 1e-9; ///< weights are sums of decimals

/// taster -> attribute code -> the glasses scored, in order. Sorted, so that the order of entry changes nothing.
using Answers = std::map<std::string, std::map<std::string, std::vector<const Score*>>>;
[[nodiscard]] Answers answersOf(const Sitting& sitting, const TastingSheet& sheet);

/// One attribute of one glass, turned so that more counts upward.
struct GlassValue {
    double value = 0;
    double fillSd = 0;           ///< signed: how much one sd of the unknown warming moves the value
    double cold = 0, cellar = 0; ///< how much each temperature supports it; together 1
};
/// Needs a score at one temperature at least.
[[nodiscard]] GlassValue readGlass(const Attribute& attribute, const Score& score);

struct TasterReading {
    double mean = 0;
    double answered = 0; ///< share of the dimension's weight
    double fillSd = 0;
    double cold = 0, cellar = 0;
    double inflation = 1;             ///< of the residual variance, for what was left out
    int glasses = 1;                  ///< replicates
    std::optional<double> difference; ///< cellar minus cold, where both support it
    double ssGlasses = 0;             ///< between glasses at one temperature
    double dfGlasses = 0;
    std::vector<std::string> missing;

    /// Share of an independent error per temperature that stays in the mean.
    [[nodiscard]] double temperatureShare() const { return cold * cold + cellar * cellar; }
};
/// Weights are renormalised over what was answered; nothing answered gives answered 0.
[[nodiscard]] TasterReading readTaster(const TastingSheet& sheet, Dimension dimension,
                                       const Answers::mapped_type& answers, const TastingNoise& noise);

} // namespace staveline::tasting
