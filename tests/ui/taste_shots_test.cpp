// SPDX-License-Identifier: GPL-3.0-or-later
// The Taste page as it stands in the window, to look at: STAVELINE_SHOTS=folder test_ui "[taste-window]".
#include "ui/support.h"

#include "ui/taste/page.h"
#include "ui/window/cellar_view.h"

#include <QDir>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

TEST_CASE("pictures of the Taste page in the window", "[.][taste-window]") {
    const QString folder = qEnvironmentVariable("STAVELINE_SHOTS");
    REQUIRE(QDir().mkpath(folder));
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        WindowInScratch w(false);
        w.window->setAppearance(look);
        REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
        CellarView& cellar = *w.window->cellar();
        cellar.showPage(PageId::taste);
        cellar.focusWork();
        w.type("0");
        w.key(Qt::Key_Tab);
        w.type("3.5");
        w.key(Qt::Key_Tab);
        w.type("==");
        QTest::qWait(50);
        CHECK(cellar.taste().draft().storable());
        const QString end = look == Appearance::dark ? "-dark.png" : "-light.png";
        REQUIRE(w.window->grab().save(folder + "/taste-window" + end));
    }
    install(*qApp, Appearance::light);
}
