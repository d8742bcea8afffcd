// SPDX-License-Identifier: GPL-3.0-or-later
// One advice: its time, and how far the screened best plan is from the best of all plans predicted in full.
#include "advice/advise.h"
#include "advice/adviser.h"
#include "advice/board.h"
#include "advice/search.h"
#include "support/bench.h"
#include "tests/advice/scenario.h"

#include <cmath>
#include <ctime>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;

namespace {

struct Case {
    const char* name;
    AdviceInput input;
};

Case wanting(const char* name, Recipe recipe, const Scores& change, double share = .34) {
    Case made{name, scenario::cask(std::move(recipe))};
    made.input.base.draw = {220 * share};
    scenario::want(made.input, change);
    return made;
}

Recipe rested() {
    auto recipe = scenario::plainRecipe();
    recipe.mash = {{{45}, {20}}, {{66}, {60}}};
    recipe.grist = {{"pilsner", {.7}, false}, {"wheat_malt", {.2}, false}, {"flaked_oats", {.1}, true}};
    recipe.liquorToGrist = {2.5};
    return recipe;
}

std::vector<Case> cases() {
    return {wanting("sour and clean", scenario::plainRecipe(), {{-1.5, 1.4, 0}}),
            wanting("mild and wild", scenario::plainRecipe(), {{1.5, -1.5, 0}}),
            wanting("thin", scenario::plainRecipe(), {{0, 1, .8}}),
            wanting("a little of all", scenario::plainRecipe(), {{-.8, .8, .8}}),
            wanting("slow cask", scenario::plainRecipe(), {{-1.2, 1.2, 0}}, .22),
            wanting("rested, too wild", rested(), {{0, -2, .5}}),
            wanting("rested, far off", rested(), {{-3, 2, 1.5}})};
}

/// Cost of the first proposal's plan over that of the best plan of all, less 1.
double shortfall(const AdviceInput& input, std::size_t& plans) {
    ModelForecaster model(input);
    const auto baseline = prepare(input).value();
    const auto goal = goalOf(input);
    Search search(input, baseline, model, goal, {});
    (void)search.survey();
    const auto every = [](const OptionSet&) { return true; };
    const auto found = search.best(every, predictedInFull).value();
    plans = search.plans();
    const auto first = search.exhaustive(every).value();
    return found && first ? found->cost / first->cost - 1 : 0;
}

/// Processor time, which other work on the machine does not stretch.
double cpuMs(const AdviceInput& input, int repeats) {
    const auto start = std::clock();
    for (int i = 0; i < repeats; ++i)
        (void)advise(input);
    return 1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / repeats;
}

void timeAdvice(const Case& one, bool withSettled, const char* what) {
    auto input = one.input;
    input.withSettled = withSettled;
    const auto times = bench::timesMs(20, [&] { (void)advise(input); });
    bench::print(what, bench::quantile(times, .5), "ms", times.size(),
                 fmt::format("\"p95\": {:.4g}, \"cpu\": {:.4g}, \"case\": \"{}\"", bench::quantile(times, .95),
                             cpuMs(input, 5), one.name));
}

} // namespace

int main() {
    const auto all = cases();
    for (const auto& one : {all.front(), all.back()}) {
        timeAdvice(one, false, "advise");
        timeAdvice(one, true, "advise with settled");
        auto four = one;
        four.input.maxMoved = 4;
        timeAdvice(four, false, "advise, four levers");
    }
    auto changed = all.front().input;
    changed.withSettled = false;
    const auto tries = bench::timesMs(50, [&] {
        (void)TryBoard(changed).trial({{"gravity", 13.0}}, TrialDepth::central);
    });
    bench::print("try board, cold", bench::quantile(tries, .5), "ms", tries.size(),
                 fmt::format("\"p99\": {:.4g}", bench::quantile(tries, .99)));
    double worst = 0;
    for (const auto& one : all) {
        std::size_t plans = 0;
        const double more = shortfall(one.input, plans);
        worst = std::max(worst, more);
        bench::print("advise against exhaustive", 100 * more, "% of cost", plans,
                     fmt::format("\"case\": \"{}\"", one.name));
    }
    bench::print("advise against exhaustive, worst", 100 * worst, "% of cost", all.size());
}
