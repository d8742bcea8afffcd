// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the Brew page: test_ui "[bench]" in a release build prints one JSON object a line.
#include "ui/brew_support.h"

#include "support/bench.h"

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

std::vector<double> timed(int times, const std::function<void(int)>& work) {
    std::vector<double> all;
    for (int i = 0; i < times; ++i) {
        QElapsedTimer timer;
        timer.start();
        work(i);
        all.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    std::sort(all.begin(), all.end());
    return all;
}
void report(const char* name, const std::vector<double>& times, double quantile) {
    bench::print(name, bench::quantile(times, quantile), "ms", times.size());
}

} // namespace

TEST_CASE("figures of the Brew page", "[.][bench][brewbench]") {
    const AtBrew s;
    recordAll(*s.session, R"([{"kind": "base_recipe", "vessel": "Heron", "on": "2026-02-01",
        "grist": [{"grain": "pilsner", "share": 0.6}, {"grain": "wheat_malt", "share": 0.3},
                  {"grain": "flaked_oats", "share": 0.1, "late": true}],
        "mash": [{"temperature_c": 45, "minutes": 15}, {"temperature_c": 63, "minutes": 40},
                 {"temperature_c": 72, "minutes": 20}], "path": "ramp", "original_gravity_p": 12, "bitterness_ibu": 10}])");
    Setting setting = s.session->desk().planned("Heron")->setting;
    const EquipmentFact kit = s.session->desk().kit();
    report("brew_draft",
           timed(50,
                 [&](int i) {
                     setting.recipe.mash[1].temperature = Celsius{60 + .1 * i};
                     REQUIRE(s.session->desk().draft("Heron", setting, kit));
                 }),
           .5);
    MashChart& chart = s.mashChart();
    const auto dragged = timed(200, [&](int i) {
        chart.move(1, {Celsius{60 + .5 * (i % 12)}, Minutes{40}});
        chart.repaint();
    });
    report("mash_drag_to_repaint_p50", dragged, .5);
    report("mash_drag_to_repaint_p99", dragged, .99);
    report("recipe_edit_stored", timed(10, [&](int i) { s.type("/bitterness_ibu", QString::number(5 + i)); }), .5);
    s.workPage->showAsBrewed();
    AsBrewedPage& brewed = s.asBrewedPage();
    report("brew_meaning", timed(5, [&](int) { brewed.weighNow(); }), .5);
}
