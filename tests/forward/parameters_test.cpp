// SPDX-License-Identifier: GPL-3.0-or-later
#include "forward/parameters.h"
#include "support/catch.h"
#include "tasting/sitting.h"

#include <algorithm>
#include <set>

using namespace staveline;
using namespace staveline::forward;
using namespace staveline::tasting;

namespace {

const ParameterRow* rowOf(std::string_view name) {
    for (const auto& row : builtInParameterRows())
        if (row.name == name)
            return &row;
    return nullptr;
}

template <class T> std::string pathOfFault(const Result<T>& result) {
    return result ? "no fault" : result.error().path;
}

constexpr std::string_view header = "name,value,low,high,unit,source,meaning\n";
constexpr std::string_view priorHeader = "parameter,law,factor,spread,low,high,unit,source\n";

std::string pathOfParameters(std::string_view rows) {
    return pathOfFault(parseParameters(std::string(header) + std::string(rows)));
}
std::string pathOfPriors(std::string_view rows) {
    return pathOfFault(parsePriors(std::string(priorHeader) + std::string(rows)));
}

} // namespace

TEST_CASE("Every member of Parameters has a name, and no name stands for another's member", "[forward]") {
    static_assert(sizeof(Parameters) % sizeof(double) == 0);
    CHECK(parameterNames().size() == sizeof(Parameters) / sizeof(double));
    Parameters p;
    std::set<const double*> members;
    std::set<std::string_view> names;
    for (const auto& parameter : parameterNames()) {
        members.insert(&parameter.in(p));
        names.insert(parameter.name);
    }
    CHECK(members.size() == parameterNames().size());
    CHECK(names.size() == parameterNames().size());
    CHECK(findParameter("sugarLeak")->name == "sugarLeak");
    CHECK(findParameter("nobody") == nullptr);
}

TEST_CASE("Built-in parameters take their values from the table", "[forward]") {
    Parameters builtIn = builtInParameters();
    for (const auto& parameter : parameterNames())
        CHECK(parameter.in(builtIn) == rowOf(parameter.name)->value);
}

TEST_CASE("Rows of no parameter are the noise of tasters", "[forward]") {
    const TastingNoise noise;
    const std::pair<std::string, double> panel[] = {{"panel.taster", noise.taster},
                                                    {"panel.tasterByTemperature", noise.tasterByTemperature},
                                                    {"panel.residual", noise.residual},
                                                    {"panel.priorDegreesOfFreedom", noise.priorDegreesOfFreedom},
                                                    {"panel.correlation", noise.correlation}};
    for (const auto& [name, value] : panel) {
        INFO(name);
        REQUIRE(rowOf(name));
        CHECK(rowOf(name)->value == value);
    }
    CHECK(builtInParameterRows().size() == parameterNames().size() + std::size(panel));
}

TEST_CASE("Each row says what it means, in which unit and within which limits", "[forward]") {
    for (const auto& row : builtInParameterRows()) {
        INFO(row.name);
        CHECK(row.low < row.high);
        CHECK(row.low <= row.value);
        CHECK(row.value <= row.high);
        CHECK_FALSE(row.unit.empty());
        CHECK_FALSE(row.source.empty());
        CHECK(row.meaning.size() > 10);
    }
}

TEST_CASE("A bad table of parameters is a fault at its cell", "[forward]") {
    CHECK(pathOfParameters("q,0.5,0,1,g,x,y\n") == "no fault");
    CHECK(pathOfParameters("q,0.5,0,1,g,x,y\nq,0.5,0,1,g,x,y\n") == "/1/name");
    CHECK(pathOfParameters("q,2,0,1,g,x,y\n") == "/0/value");
    CHECK(pathOfParameters("souring,nan,0,1,g,x,y\n") == "/0/value");
    CHECK(pathOfParameters("q,0.5,zero,1,g,x,y\n") == "/0/low");
    CHECK(pathOfParameters("q,0.5,0\n") == "/0");
}

TEST_CASE("A bad table of priors is a fault at its cell", "[forward]") {
    CHECK(pathOfPriors("souring,lognormal,0.5,0.3,,,g,x\nmostHopTolerance,tied hopTolerance,3,,,90,IBU,x\n") ==
          "no fault");
    CHECK(pathOfPriors("souring,cauchy,0.5,0.3,,,g,x\n") == "/0/law");
    CHECK(pathOfPriors("mostHopTolerance,tied nobody,3,,,90,IBU,x\n") == "/0/law");
    CHECK(pathOfPriors("nobody,normal,0.5,0.3,,,g,x\n") == "/0/parameter");
    CHECK(pathOfPriors("souring,normal,0.5,much,,,g,x\n") == "/0/spread");
    CHECK(pathOfPriors("souring,normal,0.5,0.3,2,1,g,x\n") == "/0/low");
}

TEST_CASE("Priors hold the model's own values, and tied ones their factor") {
    REQUIRE(builtInPriors().size() > 40);
    Parameters p = builtInParameters();
    std::set<std::string> seen;
    for (const Prior& prior : builtInPriors()) {
        INFO(prior.parameter);
        CHECK(seen.insert(prior.parameter).second);
        const double centre = findParameter(prior.parameter)->in(p);
        if (prior.law == Law::tied)
            CHECK(centre == Approx(prior.factor * findParameter(prior.tiedTo)->in(p)));
        else if (prior.law != Law::uniform)
            CHECK(prior.spread > 0);
        CHECK(prior.low <= centre);
        CHECK(centre <= prior.high);
        CHECK(prior.low >= rowOf(prior.parameter)->low);
        CHECK(prior.high <= rowOf(prior.parameter)->high);
    }
}

TEST_CASE("What is known as a range only is drawn within it", "[forward]") {
    auto draws = parameterDraws(builtInParameters());
    for (const char* name : {"boilDecarboxylation", "wortBuffer", "betaStableShare", "coumaricTurnover", "alphaKept",
                             "brettGrowthPer10C", "starvedDecline", "vesselHopLoss", "coumaricPerEster"}) {
        INFO(name);
        const auto* parameter = findParameter(name);
        double least = 1e9, most = -1e9;
        for (Parameters& p : draws) {
            least = std::min(least, parameter->in(p));
            most = std::max(most, parameter->in(p));
        }
        CHECK(least >= rowOf(name)->low);
        CHECK(most <= rowOf(name)->high);
        CHECK(most - least > .3 * parameter->in(draws.front()));
    }
}
