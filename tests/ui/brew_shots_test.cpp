// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures of the Brew page alone: STAVELINE_SHOTS=folder test_ui "[brewshots]".
#include "ui/brew_support.h"

#include "facts/sample.h"
#include "ui/widgets/theme.h"

#include <QDir>
#include <QScrollArea>
#include <QScrollBar>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

void shoot(AtBrew& s, const QString& name) {
    QTest::qWait(50);
    const QString folder = qEnvironmentVariable("STAVELINE_SHOTS");
    const QString scale = s.window.devicePixelRatioF() > 1 ? QStringLiteral("@2x") : QString();
    REQUIRE(s.window.grab().save(folder + "/brew-" + name + scale + ".png"));
}

} // namespace

TEST_CASE("pictures of the Brew page", "[.][brewshots]") {
    REQUIRE(QDir().mkpath(qEnvironmentVariable("STAVELINE_SHOTS")));
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        install(*qApp, look);
        const QString tint = look == Appearance::dark ? "-dark" : "-light";
        AtBrew s;
        recordAll(*s.session, R"([{"kind": "base_recipe", "vessel": "Heron", "on": "2026-02-01",
            "grist": [{"grain": "pilsner", "share": 0.6}, {"grain": "wheat_malt", "share": 0.25},
                      {"grain": "flaked_oats", "share": 0.15, "late": true}],
            "mash": [{"temperature_c": 45, "minutes": 15}, {"temperature_c": 63, "minutes": 40},
                     {"temperature_c": 72, "minutes": 20}], "path": "ramp",
            "hops": [{"name": "aged hops", "alpha_share": 0.02, "minutes": 60, "bitterness_share": 0.8},
                     {"name": "garden hops", "alpha_share": 0.04, "minutes": 20, "bitterness_share": 0.2}],
            "original_gravity_p": 12.5, "bitterness_ibu": 10, "sugar_share": 0.05}])");
        auto* scroll = s.planPage().findChild<QScrollArea*>();
        for (int page = 0; page < 5; ++page) {
            scroll->verticalScrollBar()->setValue(page * scroll->viewport()->height());
            shoot(s, QStringLiteral("plan-%1").arg(page) + tint);
        }
        s.planPage().kit().unfold(true);
        QTest::qWait(20);
        scroll->verticalScrollBar()->setValue(scroll->verticalScrollBar()->maximum());
        shoot(s, "kit" + tint);
        part<MashEditor>(s.flow()).showTable(true);
        scroll->verticalScrollBar()->setValue(scroll->viewport()->height());
        s.type("/grist/0/share", "50");
        shoot(s, "table-fault" + tint);
        s.workPage->showAsBrewed();
        AtBrew::type(part<NumberField>(s.asBrewedPage(), "Original gravity, measured").edit(), "1.055");
        s.asBrewedPage().weighNow();
        shoot(s, "as-brewed" + tint);
        s.asBrewedPage().record();
        shoot(s, "as-brewed-recorded" + tint);
        s.workPage->showSheet();
        shoot(s, "sheet" + tint);
    }
    install(*qApp, Appearance::light);
}
