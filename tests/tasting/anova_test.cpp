// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/anova.h"

#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::tasting;

namespace {

using Cube = std::vector<std::vector<std::vector<double>>>;
const Cube worked{{{5.2, 5.6}, {6.0, 5.8}}, {{4.4, 4.0}, {5.0, 4.8}}, {{6.2, 5.6}, {6.4, 7.0}}};

} // namespace

TEST_CASE("The panel table of the worked example, as R aov prints it") {
    // Computed once with R 4.2.2: aov(y ~ assessor * temperature). Our own made-up scores.
    const auto table = panelAnova(worked).value();
    CHECK(table.mean == Approx(5.5).margin(1e-12));
    CHECK(table.msAssessor == Approx(3.13).margin(1e-9));
    CHECK(table.msTemperature == Approx(4.0 / 3).margin(1e-9));
    CHECK(table.msInteraction == Approx(.0233333333).margin(1e-9));
    CHECK(table.msError == Approx(.0933333333).margin(1e-9));
    CHECK(table.varAssessor == Approx(.7766666667).margin(1e-9));
    CHECK(table.varInteraction == 0);
    CHECK(table.varError == Approx(.0933333333).margin(1e-9));
    CHECK(std::sqrt(table.msAssessor / 12) == Approx(.5107185).margin(1e-6));
    CHECK(std::sqrt(table.msError / 12) == Approx(.0881917).margin(1e-6));
    CHECK(table.assessors == 3);
    CHECK(table.temperatures == 2);
    CHECK(table.replicates == 2);
}

TEST_CASE("A table that is not full is a fault in words") {
    Cube ragged = worked;
    ragged[1][1].pop_back();
    for (const auto& y : {Cube{}, Cube{worked[0]}, Cube{{{1, 2}}, {{1, 2}}}, Cube{{{1}, {2}}, {{1}, {2}}}, ragged}) {
        const auto table = panelAnova(y);
        REQUIRE_FALSE(table.has_value());
        CHECK(table.error().kind == FaultKind::input);
        CHECK(table.error().cause.key == "tasting.panel.shape");
    }
}

TEST_CASE("Mean squares add up to the whole scatter") {
    CHECK_PROPERTY("sums of squares of the parts are the total", [] {
        const auto n = *rc::gen::inRange<std::size_t>(2, 6), t = *rc::gen::inRange<std::size_t>(2, 4),
                   r = *rc::gen::inRange<std::size_t>(2, 4);
        Cube y(n, std::vector<std::vector<double>>(t, std::vector<double>(r)));
        std::vector<std::vector<double>> whole(1);
        for (auto& a : y)
            for (auto& c : a)
                for (auto& v : c)
                    whole[0].push_back(v = *rc::gen::inRange(0, 21) / 2.0);
        const auto table = panelAnova(y).value();
        const auto dn = static_cast<double>(n), dt = static_cast<double>(t), dr = static_cast<double>(r);
        const double parts = table.msAssessor * (dn - 1) + table.msTemperature * (dt - 1) +
                             table.msInteraction * (dn - 1) * (dt - 1) + table.msError * dn * dt * (dr - 1);
        RC_ASSERT(std::abs(parts - oneWayAnova(whole).ssWithin) < 1e-8);
        RC_ASSERT(table.varAssessor >= 0 && table.varInteraction >= 0);
    });
}

TEST_CASE("One-way table by hand") {
    const auto table = oneWayAnova({{1, 2, 3}, {4, 5, 6}});
    CHECK(table.ssBetween == Approx(13.5));
    CHECK(table.ssWithin == Approx(4));
    CHECK(table.dfBetween == 1);
    CHECK(table.dfWithin == 4);
    CHECK(table.f() == Approx(13.5));
    CHECK(table.rSquared() == Approx(13.5 / 17.5));
}
