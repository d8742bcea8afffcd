// SPDX-License-Identifier: GPL-3.0-or-later
// One scale: what the sheet says in words, what the calibration glass holds and what the score map computes.
#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"
#include "tasting/score_map.h"
#include "tasting/sitting.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::tasting;

namespace {

constexpr double paleBeerTa = 1.95; ///< of the glass the lactic acid goes into [g/L]
constexpr PercentVol paleBeerAlcohol{5};

double acidityOfGlass(double lactic) {
    return acidityScore({paleBeerTa + lactic}, {0}, paleBeerAlcohol);
}

double funkOfGlass(std::string_view substance, double dose) {
    Composition beer;
    (substance == "4-ethylphenol" ? beer.ethylPhenol : beer.ethylGuaiacol) = dose;
    return scores(beer)[Dimension::funk];
}

double mapped(std::string_view substance, double dose) {
    return substance == "lactic acid" ? acidityOfGlass(dose) : funkOfGlass(substance, dose);
}

} // namespace

TEST_CASE("Sheet, glass and map agree (regression: doses computed from our own map)") {
    const auto glasses = CsvTable::parse(resources::find("data/calibration.csv")).value();
    REQUIRE(glasses.rows() == 10);
    for (std::size_t i = 0; i < glasses.rows(); ++i) {
        const auto code = glasses.text(i, "attribute"), substance = glasses.text(i, "substance");
        const double score = glasses.number(i, "score").value(), dose = glasses.number(i, "value").value();
        CAPTURE(code, score, dose);
        const auto* line = builtInSheet().find(code);
        REQUIRE(line);
        CHECK(line->dimension == (substance == "lactic acid" ? Dimension::acidity : Dimension::funk));
        CHECK(std::count(anchorScores.begin(), anchorScores.end(), score) == 1);
        CHECK(mapped(substance, dose) == Approx(score).margin(.1));
        CHECK(mapped(substance, glasses.number(i, "low").value()) == Approx(score - .5).margin(.1));
        CHECK(mapped(substance, glasses.number(i, "high").value()) == Approx(std::min(10.0, score + .5)).margin(.1));
    }
}

TEST_CASE("Lactic doses of the corrected scale") {
    // 1.5, 3.8, 8.3 and 11.9 g/L for sour 3, 5, 8 and 10: inverse of the map less the beer's own acid.
    for (const auto& [score, dose] : {std::pair{3.0, 1.5}, {5.0, 3.8}, {8.0, 8.3}, {10.0, 11.9}})
        CHECK(titratableAcidityFor(score, {0}, paleBeerAlcohol).gPerL - paleBeerTa == Approx(dose).margin(.1));
}

TEST_CASE("Funk glasses stop at 8 and rise with the score") {
    const auto glasses = CsvTable::parse(resources::find("data/calibration.csv")).value();
    double before = 0;
    std::string_view code;
    for (std::size_t i = 0; i < glasses.rows(); ++i) {
        if (glasses.text(i, "attribute") != code)
            before = 0;
        code = glasses.text(i, "attribute");
        CHECK(glasses.number(i, "value").value() > before);
        before = glasses.number(i, "value").value();
        if (code != "TA1")
            CHECK(glasses.number(i, "score").value() <= 8);
        CHECK(code != "MF1"); // no single substance stands for body
    }
}
