// SPDX-License-Identifier: GPL-3.0-or-later
// The tasting sheet as data, one sitting's scores, and what they say about each dimension.
#pragma once

#include "quantity/constants.h"
#include "quantity/day.h"
#include "quantity/dimension.h"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::tasting {

inline constexpr std::array<double, 5> anchorScores = {0, 3, 5, 8, 10};

/// One line of the sheet (resources/data/attributes.csv).
struct Attribute {
    std::string code; ///< "TA1"
    std::string name;
    std::string group;                  ///< appearance, aroma, taste, mouthfeel
    std::array<std::string, 5> anchors; ///< words at 0, 3, 5, 8, 10
    bool shortSheet = false;
    bool bothTemperatures = true;
    Share coldWeight{.5};   ///< cellar weight is the rest
    double warmShift = 0;   ///< cellar minus cold, expected before any data [points]
    double warmShiftSd = 0; ///< [points]
    std::optional<Dimension> dimension;
    double weight = 0;               ///< within its dimension; sums to 1
    bool reversed = false;           ///< 10 - score counts
    std::string fault;               ///< this line also shows a fault ("ropy"); empty: none
    std::array<double, 3> faultAt{}; ///< the scores from which its severity is 1, 2, 3
    std::string source;
};
struct FaultRule {
    std::string id, name; ///< "ropy"
    std::string cause, action;
    bool blocksAdvice = false;       ///< at severity 2 and above: treat first
    bool drawAllowed = true;         ///< at severity 2 and above
    std::string refillAdvice;        ///< text key
    int waitDays = 0;                ///< when waiting is the cure
    std::optional<Dimension> spoils; ///< the dimension whose score is unusable
    std::string source;
};
struct TastingSheet {
    std::vector<Attribute> attributes;
    std::vector<FaultRule> faults;
    /// A missing column, a number out of range, a doubled code, an unknown word and weights that do not sum to 1 are
    /// faults with the row.
    static Result<TastingSheet> parse(std::string_view attributesCsv, std::string_view faultsCsv);
    [[nodiscard]] const Attribute* find(std::string_view code) const;
    [[nodiscard]] const FaultRule* findFault(std::string_view id) const;
};
[[nodiscard]] const TastingSheet& builtInSheet();
/// The anchor in words at or nearest below a score, 0..10.
[[nodiscard]] std::string_view anchorFor(const Attribute& attribute, double score);

struct Score {
    std::string taster;
    std::string attribute;              ///< code
    std::optional<double> cold, cellar; ///< 0..10 in half steps
    bool operator==(const Score&) const = default;
};
struct FaultMark {
    std::string fault;
    int severity = 0; ///< 0 none, 1 trace, 2 clear, 3 strong
    bool operator==(const FaultMark&) const = default;
};
struct Sitting {
    Day on{};
    std::vector<Score> scores;
    std::vector<FaultMark> faults;
    std::string note;
    std::optional<bool> drawIt;
    bool operator==(const Sitting&) const = default;
};

/// Spreads before any data [points]: rows "panel." of resources/data/parameters.csv.
struct TastingNoise {
    double taster = constants::panel::taster;                               ///< between tasters
    double tasterByTemperature = constants::panel::tasterByTemperature;     ///< of one taster, cold against cellar
    double residual = constants::panel::residual;                           ///< of one taster's repeated scores
    double priorDegreesOfFreedom = constants::panel::priorDegreesOfFreedom; ///< weight of these against a panel's own
    double correlation = constants::panel::correlation; ///< of one taster's errors between attributes of a dimension
};

struct DimensionReading {
    double mean = 0;
    double absoluteSe = 1;   ///< tasters random: against a target others set
    double sameTasterSe = 1; ///< taster offsets cancel: against a target these tasters set
    double degreesOfFreedom = 6;
    int tasters = 0;
    double apart = 0;  ///< the highest taster's mean above the lowest one's [points]
    Share answered{0}; ///< of the dimension's weight
};
struct SittingResult {
    PerDimension<std::optional<DimensionReading>> dimensions; ///< empty: too little answered, or spoiled
    PerDimension<std::vector<std::string>> missing; ///< codes that even the most complete taster did not score
    PerDimension<std::string> spoiledBy;            ///< the fault that makes the score unusable; empty: none
    std::vector<FaultMark> faults;                  ///< severity 1 and above, worst first
    std::optional<double> bitterness;               ///< mean of TA5
};
/// A taster counts in a dimension from half of its weight on. A temperature not tasted is filled in from the prior and
/// paid for in both errors; a taster's second score of one attribute is a second glass. Every variance is shrunk to the
/// prior, tasters far from the rest weigh less. Scores outside 0..10 never reach here (checked when recorded).
[[nodiscard]] SittingResult evaluate(const Sitting& sitting, const TastingSheet& sheet, const TastingNoise& noise = {});

/// The faults alone, worst first: marked, or shown by a line of the sheet, the worse of the two.
[[nodiscard]] std::vector<FaultMark> faultsIn(const Sitting& sitting, const TastingSheet& sheet);

/// Balanced two-way components (assessor x temperature, replicated) as printed in the worked example.
struct PanelAnova {
    double mean = 0, msAssessor = 0, msTemperature = 0, msInteraction = 0, msError = 0;
    double varAssessor = 0, varInteraction = 0, varError = 0;
    int assessors = 0, temperatures = 0, replicates = 0;
};
/// y[assessor][temperature][replicate]; all of one shape, at least 2 x 2 x 2 (a fault otherwise).
[[nodiscard]] Result<PanelAnova> panelAnova(const std::vector<std::vector<std::vector<double>>>& y);

} // namespace staveline::tasting
