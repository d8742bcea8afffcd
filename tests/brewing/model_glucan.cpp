// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/glucan.h"

#include "model_support.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using reference::allOf;
using reference::between;
using reference::brewed;

namespace {

MashSegment rest(double celsius, double minutes) {
    return {celsius, celsius, minutes, false};
}
double dissolved(const GlucanPortion& in, std::initializer_list<MashSegment> segments) {
    GlucanRelease glucan(in);
    for (const auto& segment : segments)
        glucan.advance(segment);
    return glucan.dissolved();
}
constexpr GlucanPortion pilsner{3.5, 0, 1};

/// Beta-glucan [mg/L] in 12 P wort of Pilsner malt and flaked oats, heated at 1 C/min, fully converted.
double oats(double share, const std::vector<std::pair<double, double>>& rests, bool late = false) {
    const GlucanPortion malt{(1 - share) * 3.5, 0, 1 - share}, flakes{0, share * 42, 0};
    const double litrePerGrist = .12558 / ((1 - share) * .80 + share * .70);
    GlucanRelease glucan(malt);
    if (!late)
        glucan.add(flakes);
    for (std::size_t i = 0; i < rests.size(); ++i) {
        const auto [celsius, minutes] = rests[i];
        if (i > 0)
            glucan.advance({rests[i - 1].first, celsius, celsius - rests[i - 1].first, false});
        if (late && i + 1 == rests.size())
            glucan.add(flakes);
        glucan.advance(rest(celsius, minutes));
    }
    return 1000 * litrePerGrist * glucan.dissolved();
}

} // namespace

TEST_CASE("Glucan in the wort stays between nothing and all of it", "[brewing][glucan]") {
    CHECK_PROPERTY("any mash, any grain", [] {
        const GlucanPortion in{between(0, 10), between(0, 20), between(0, 1)};
        GlucanRelease glucan(in);
        for (const auto& step : reference::anyMash())
            glucan.advance(rest(step.temperature.c, step.minutes.min));
        RC_ASSERT(glucan.dissolved() >= 0);
        RC_ASSERT(glucan.dissolved() <= in.malt + in.raw);
    });
}

TEST_CASE("Without glucanase the loose share comes out by a first-order law", "[brewing][glucan]") {
    // At 65 C 65 % of malt glucan and 60 % of raw glucan can come loose, 6 % of that a minute.
    const double after30 = 1 - std::exp(-.06 * 30);
    CHECK(dissolved({4, 0, 0}, {rest(65, 30)}) == Approx(4 * .65 * after30).epsilon(1e-4));
    CHECK(dissolved({0, 10, 0}, {rest(65, 30)}) == Approx(10 * .60 * after30).epsilon(1e-4));
}

TEST_CASE("Rests in pieces give the same glucan", "[brewing][glucan]") {
    CHECK_PROPERTY("one rest or many", [] {
        const GlucanPortion in{between(1, 10), between(0, 20), between(.1, 1)};
        const double celsius = between(40, 75), minutes = between(5, 90);
        GlucanRelease pieces(in);
        for (int i = 0; i < 23; ++i)
            pieces.advance(rest(celsius, minutes / 23));
        RC_ASSERT(std::abs(pieces.dissolved() - dissolved(in, {rest(celsius, minutes)})) < 2e-3);
    });
}

TEST_CASE("A rest at 45 C lowers glucan, the longer the more", "[brewing][glucan]") {
    CHECK_PROPERTY("monotone in the rest", [] {
        const GlucanPortion in{between(1, 10), between(0, 20), between(.3, 1)};
        const double minutes = between(5, 60);
        const double shorter = dissolved(in, {rest(45, minutes), rest(65, 60)});
        RC_ASSERT(dissolved(in, {rest(45, minutes + 10), rest(65, 60)}) < shorter);
        RC_ASSERT(shorter < dissolved(in, {rest(65, 60)}));
    });
}

TEST_CASE("A hotter mash-in gives more glucan above 48 C", "[brewing][glucan]") {
    double before = 0;
    for (double celsius = 48; celsius <= 72; celsius += 2) {
        const double now = dissolved(pilsner, {rest(celsius, 60)});
        CHECK(now > before);
        before = now;
    }
}

TEST_CASE("Late flakes keep glucan that a rest would destroy", "[brewing][glucan]") {
    CHECK_PROPERTY("more than early, less than with no rest at all", [] {
        const double share = between(.05, .25);
        Recipe recipe = allOf("pilsner", {{{45}, {between(10, 60)}}, {{66}, {60}}});
        recipe.grist = {{"pilsner", {1 - share}}, {"flaked_oats", {share}}};
        const double early = brewed(recipe).beer.betaGlucan;
        recipe.grist[1].late = true;
        const double late = brewed(recipe).beer.betaGlucan;
        recipe.grist[1].late = false;
        recipe.mash = {{{66}, {60}}};
        const double noRest = brewed(recipe).beer.betaGlucan;
        RC_ASSERT(late > 1.02 * early);
        RC_ASSERT(late < noRest);
    });
}

TEST_CASE("Regression: glucan of the reference model", "[brewing][glucan][regression]") {
    const std::vector<std::pair<double, double>> single = {{65, 60}}, rested = {{45, 20}, {65, 60}};
    CHECK(oats(0, single) == Approx(324).margin(1.5));
    CHECK(oats(0, rested) == Approx(115).margin(1.5));
    CHECK(oats(.15, single) == Approx(861).margin(5));
    CHECK(oats(.15, rested) == Approx(569).margin(5));
    CHECK(oats(.15, rested, true) == Approx(705).margin(5));
    const std::vector<std::pair<double, double>> steps = {{45, 20}, {62, 40}, {72, 20}};
    CHECK(oats(0, steps) == Approx(142).margin(1.5));
    CHECK(oats(.10, steps) == Approx(512).margin(2));
    CHECK(oats(.40, steps) == Approx(1782).margin(4));
}
