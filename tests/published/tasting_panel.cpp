// SPDX-License-Identifier: GPL-3.0-or-later
// Outside checks of the panel components.
#include "support/catch.h"
#include "tasting/anova.h"

#include <cmath>
#include <cstdio>
#include <memory>
#include <sstream>

using namespace staveline;
using namespace staveline::tasting;

namespace {

/// Bitterness of nine judges, four ways of making the wine, two bottles: derived numbers of Randall 1989,
/// "The analysis of sensory data by generalised linear model", Biometrical Journal 31(7):781-793, response / 10;
/// computed with R 4.2.2 from package ordinal (2022.11-16).
PanelAnova randall1989() {
    PanelAnova table;
    table.assessors = 9;
    table.temperatures = 4; // here: ways of making
    table.replicates = 2;
    table.msAssessor = 7.3874306;
    table.msTemperature = 42.944815;
    table.msInteraction = 1.7083565;
    table.msError = 1.3958333;
    return table;
}

std::string outputOf(const char* command) {
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command, "r"), pclose);
    std::string text;
    for (int c = pipe ? std::fgetc(pipe.get()) : EOF; c != EOF; c = std::fgetc(pipe.get()))
        text += static_cast<char>(c);
    return text;
}

/// The scores by judge, way of making and bottle, when R and the data package are on this machine; else empty.
std::vector<double> randallScores() {
    std::istringstream in(outputOf("Rscript -e 'suppressMessages(library(ordinal)); "
                                   "w <- wine[order(wine$judge, wine$temp, wine$contact, wine$bottle), ]; "
                                   "cat(w$response / 10)' 2>/dev/null"));
    std::vector<double> scores;
    for (double v = 0; in >> v;)
        scores.push_back(v);
    return scores;
}

} // namespace

TEST_CASE("Components of Randall 1989 from its mean squares") {
    auto table = randall1989();
    setComponents(table);
    CHECK(table.varAssessor == Approx(.70988).margin(1e-5));
    CHECK(table.varInteraction == Approx(.15626).margin(1e-5));
    CHECK(table.varError == Approx(1.39583).margin(1e-5));
    // Standard error of one way's mean and of a difference of two, as R prints them.
    CHECK(std::sqrt((table.msAssessor + 3 * table.msInteraction) / 72) == Approx(.416875).margin(1e-6));
    CHECK(std::sqrt(2 * table.msInteraction / 18) == Approx(.435680).margin(1e-6));
}

TEST_CASE("Mean squares of Randall 1989 from the scores, where R has them") {
    const auto scores = randallScores();
    if (scores.empty()) {
        WARN("R or its package ordinal is not installed: the scores were not checked");
        return;
    }
    REQUIRE(scores.size() == 72);
    std::vector<std::vector<std::vector<double>>> y(9, std::vector<std::vector<double>>(4, std::vector<double>(2)));
    for (std::size_t i = 0; i < scores.size(); ++i)
        y[i / 8][i / 2 % 4][i % 2] = scores[i];
    const auto table = panelAnova(y).value();
    const auto derived = randall1989();
    CHECK(table.msAssessor == Approx(derived.msAssessor).epsilon(1e-7));
    CHECK(table.msTemperature == Approx(derived.msTemperature).epsilon(1e-7));
    CHECK(table.msInteraction == Approx(derived.msInteraction).epsilon(1e-7));
    CHECK(table.msError == Approx(derived.msError).epsilon(1e-7));
}
