// SPDX-License-Identifier: GPL-3.0-or-later
// The tasting sheet as data, one sitting's scores, and what they say about each dimension.
#pragma once

#include "quantity/day.h"
#include "quantity/dimension.h"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace staveline {

/// One line of the sheet (resources/data/attributes.csv).
struct Attribute {
    std::string code; ///< "TA1"
    std::string name;
    std::string group;                  ///< appearance, aroma, taste, mouthfeel
    std::array<std::string, 5> anchors; ///< words at 0, 3, 5, 8, 10
    bool shortSheet = false;
    bool bothTemperatures = true;
    Share coldWeight{.5}; ///< cellar weight is the rest
    std::optional<Dimension> dimension;
    double weight = 0;     ///< within its dimension; sums to 1
    bool reversed = false; ///< 10 - score counts
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

/// Variances before any data, in score points (resources/data/parameters.csv).
struct TastingNoise {
    double taster = .80, tasterByTemperature = .40, residual = .80;
    double priorDegreesOfFreedom = 6;
};

struct DimensionReading {
    double mean = 0;
    double absoluteSe = 1;   ///< tasters random: against a target others set
    double sameTasterSe = 1; ///< taster offsets cancel: against a target these tasters set
    double degreesOfFreedom = 6;
    int tasters = 0;
    Share answered{0}; ///< of the dimension's weight
};
struct SittingResult {
    PerDimension<std::optional<DimensionReading>> dimensions; ///< empty: less than half of its weight answered
    PerDimension<std::vector<std::string>> missing;           ///< attribute codes not scored
    std::vector<FaultMark> faults;                            ///< severity 1 and above, worst first
    std::optional<double> bitterness;                         ///< mean of TA5
};
/// Shrinks every variance to the prior; scores above 10 or below 0 never reach here (checked when recorded).
[[nodiscard]] SittingResult evaluate(const Sitting& sitting, const TastingSheet& sheet, const TastingNoise& noise = {});

/// Balanced two-way components (assessor x temperature, replicated) as printed in the worked example.
struct PanelAnova {
    double mean = 0, msAssessor = 0, msTemperature = 0, msInteraction = 0, msError = 0;
    double varAssessor = 0, varInteraction = 0, varError = 0;
    int assessors = 0, temperatures = 0, replicates = 0;
};
/// y[assessor][temperature][replicate]; all of one shape, at least 2 x 2 x 2 (a fault otherwise).
[[nodiscard]] Result<PanelAnova> panelAnova(const std::vector<std::vector<std::vector<double>>>& y);

} // namespace staveline
