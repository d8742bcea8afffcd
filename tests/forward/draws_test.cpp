// SPDX-License-Identifier: GPL-3.0-or-later
#include "forward/parameters.h"
#include "support/catch.h"

#include <algorithm>
#include <cmath>
#include <optional>

using namespace staveline;
using namespace staveline::forward;

namespace {

std::vector<double> column(std::vector<Parameters> draws, std::string_view name) {
    std::vector<double> out;
    for (Parameters& p : draws)
        out.push_back(findParameter(name)->in(p));
    return out;
}

double mean(const std::vector<double>& x) {
    double sum = 0;
    for (const double v : x)
        sum += v;
    return sum / static_cast<double>(x.size());
}

double covariance(const std::vector<double>& x, const std::vector<double>& y) {
    const double mx = mean(x), my = mean(y);
    double sum = 0;
    for (std::size_t i = 0; i < x.size(); ++i)
        sum += (x[i] - mx) * (y[i] - my);
    return sum / static_cast<double>(x.size());
}

double correlation(const std::vector<double>& x, const std::vector<double>& y) {
    return covariance(x, y) / std::sqrt(covariance(x, x) * covariance(y, y));
}

double median(std::vector<double> x) {
    std::sort(x.begin(), x.end());
    return .5 * (x[(x.size() - 1) / 2] + x[x.size() / 2]);
}

std::vector<double> logs(std::vector<double> x) {
    for (double& v : x)
        v = std::log(v);
    return x;
}

/// Values in rank space, so that limits and skew do not blur correlations.
std::vector<double> ranks(const std::vector<double>& x) {
    std::vector<double> out;
    for (const double v : x)
        out.push_back(static_cast<double>(std::count_if(x.begin(), x.end(), [v](double w) { return w < v; })));
    return out;
}

double upperEnd(std::string_view name) {
    const auto& rows = builtInParameterRows();
    return std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.name == name; })->high;
}

} // namespace

TEST_CASE("Draws are as many as asked, and the same every time", "[forward]") {
    const Parameters centre = builtInParameters();
    CHECK(parameterDraws(centre).size() == 64);
    CHECK(parameterDraws(centre, 0).empty());
    CHECK(parameterDraws(centre, -3).empty());
    CHECK(parameterDraws(centre, 200).size() == 200);
    CHECK(parameterDraws(centre) == parameterDraws(centre));
    CHECK_FALSE(parameterDraws(centre)[0] == parameterDraws(centre)[1]);
}

TEST_CASE("Every parameter with a prior varies, every other one stays", "[forward]") {
    const auto draws = parameterDraws(builtInParameters());
    for (const auto& name : parameterNames()) {
        INFO(name.name);
        const auto values = column(draws, name.name);
        const bool drawn = std::any_of(builtInPriors().begin(), builtInPriors().end(),
                                       [&](const Prior& prior) { return prior.parameter == name.name; });
        const auto [low, high] = std::minmax_element(values.begin(), values.end());
        CHECK((*low < *high) == drawn);
    }
}

TEST_CASE("Each draw holds the limits of its prior", "[forward]") {
    const auto draws = parameterDraws(builtInParameters());
    for (const Prior& prior : builtInPriors())
        for (const double value : column(draws, prior.parameter)) {
            INFO(prior.parameter);
            CHECK(value >= prior.low);
            CHECK(value <= prior.high);
        }
}

TEST_CASE("Medians and spreads over the draws are those of the priors", "[forward]") {
    const auto draws = parameterDraws(builtInParameters());
    Parameters centre = builtInParameters();
    for (const Prior& prior : builtInPriors()) {
        INFO(prior.parameter);
        const auto values = column(draws, prior.parameter);
        if (prior.law == Law::uniform) {
            CHECK(mean(values) == Approx(.5 * (prior.low + prior.high)).epsilon(1e-9));
        } else if (prior.law == Law::lognormal) {
            CHECK(median(logs(values)) == Approx(std::log(findParameter(prior.parameter)->in(centre))).margin(1e-9));
            CHECK(std::sqrt(covariance(logs(values), logs(values))) == Approx(prior.spread).epsilon(.06));
        } else if (prior.law == Law::normal) {
            CHECK(median(values) == Approx(findParameter(prior.parameter)->in(centre)).margin(1e-9));
        }
    }
}

TEST_CASE("Quantiles of a normal prior are the textbook ones", "[forward]") {
    // With one draw the slice midpoint is the median; with two they are the quartiles, 0.6745 sd from it.
    const Parameters centre = builtInParameters();
    CHECK(parameterDraws(centre, 1)[0].brew.fermentabilityShift == Approx(0).margin(1e-12));
    auto quartiles = column(parameterDraws(centre, 2), "fermentabilityShift");
    std::sort(quartiles.begin(), quartiles.end());
    CHECK(quartiles[0] == Approx(-.12 * .6744897501960817).epsilon(1e-10));
    CHECK(quartiles[1] == Approx(.12 * .6744897501960817).epsilon(1e-10));
}

TEST_CASE("No two parameters run in parallel", "[forward]") {
    const auto draws = parameterDraws(builtInParameters());
    std::vector<std::vector<double>> columns;
    for (const Prior& prior : builtInPriors())
        if (prior.law != Law::tied)
            columns.push_back(ranks(column(draws, prior.parameter)));
    double worst = 0;
    for (std::size_t a = 0; a < columns.size(); ++a)
        for (std::size_t b = 0; b < a; ++b)
            worst = std::max(worst, std::abs(correlation(columns[a], columns[b])));
    CHECK(worst < .4);
}

TEST_CASE("Regression: draws of the shipped priors, in the middle and at both ends", "[forward][regression]") {
    // A sum over all parameters and draws, each against the upper end of its own row: a changed spread, limit or factor
    // moves one of the three.
    const auto sum = [](std::optional<double> moved) {
        Parameters centre = builtInParameters();
        double total = 0;
        if (moved)
            for (const Prior& prior : builtInPriors())
                findParameter(prior.parameter)->in(centre) = *moved;
        const auto draws = parameterDraws(centre);
        for (const Prior& prior : builtInPriors())
            for (const double value : column(draws, prior.parameter))
                total += std::abs(value) / upperEnd(prior.parameter);
        return total;
    };
    CHECK(sum({}) == Approx(1181.50253068).epsilon(1e-9));
    CHECK(sum(-1e9) == Approx(611.414302887).epsilon(1e-9));
    CHECK(sum(1e9) == Approx(3174.704093567).epsilon(1e-9));
}

TEST_CASE("A learned or stated centre moves its draws", "[forward]") {
    Parameters centre = builtInParameters(), moved = centre;
    moved.culture.souring *= 1.5;         // lognormal: a factor
    moved.brew.fermentabilityShift += .3; // normal: a shift
    moved.culture.heldBack = .3;          // another vessel
    moved.culture.hopTolerance = 10;      // with the tolerance tied to it
    const auto before = parameterDraws(centre), after = parameterDraws(moved);
    for (std::size_t i = 0; i < before.size(); ++i) {
        CHECK(after[i].culture.souring == Approx(1.5 * before[i].culture.souring));
        CHECK(after[i].brew.fermentabilityShift == Approx(before[i].brew.fermentabilityShift + .3));
        CHECK(after[i].culture.heldBack <= before[i].culture.heldBack);
        CHECK(after[i].culture.mostHopTolerance == Approx(std::min(90., 3 * after[i].culture.hopTolerance)));
        CHECK(after[i].culture.phSharpensHops == before[i].culture.phSharpensHops); // uniform: whatever the centre
    }
}

TEST_CASE("A settled culture never tolerates less than a naive one in a draw", "[forward]") {
    for (const Parameters& p : parameterDraws(builtInParameters()))
        CHECK(p.culture.mostHopTolerance >= p.culture.hopTolerance);
}
