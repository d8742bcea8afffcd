// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures for the README and for looking at: STAVELINE_SHOTS=folder test_ui "[screenshots]".
// QT_SCALE_FACTOR=2 gives the same at scale 2.
#include "ui/support.h"

#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/station.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"

#include <QDir>
#include <QLineEdit>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

class Shots {
public:
    Shots(MainWindow& window, QString folder, QString look)
        : window_(window), folder_(std::move(folder)), look_(std::move(look)) {}
    void take(const QString& name) const {
        QTest::qWait(50);
        const QImage picture = window_.grab().toImage();
        REQUIRE(picture.size() == window_.size() * window_.devicePixelRatioF());
        // A blank picture would pass unseen: a page has many colours.
        QSet<QRgb> colours;
        for (int y = 0; y < picture.height(); y += 3)
            for (int x = 0; x < picture.width(); x += 3)
                colours << picture.pixel(x, y);
        CHECK(colours.size() > 10);
        const QString scale = window_.devicePixelRatioF() > 1 ? QStringLiteral("@2x") : QString();
        REQUIRE(picture.save(folder_ + '/' + name + '-' + look_ + scale + ".png"));
    }

private:
    MainWindow& window_;
    QString folder_, look_;
};

void takeAll(WindowInScratch& w, const QString& folder, Appearance look) {
    MainWindow& window = *w.window;
    window.setAppearance(look);
    const Shots shots(window, folder, look == Appearance::dark ? "dark" : "light");
    shots.take("start");
    REQUIRE(window.sampleBook(w.scratch / "sample.cellar"));
    CellarView& cellar = *window.cellar();
    DrawRefillStation& station = cellar.drawRefill();
    const auto type = [&](const char* field, const char* text) {
        QTest::keyClicks(station.form().fields().number(field)->edit(), QString::fromLatin1(text));
    };
    for (const VesselSummary& vessel : window.session()->desk().cellar()) {
        cellar.showVessel(vessel.name);
        shots.take("ledger-" + qs(vessel.name).toLower());
    }
    cellar.showVessel(window.session()->desk().cellar().front().name);
    station.begin(EntryKind::drawOff);
    type("volume_l", "62");
    type("gravity", "1002");
    shots.take("draw");
    station.form().leave();
    station.begin(EntryKind::refill);
    type("volume_l", "4");
    shots.take("refill");
    station.form().leave();
    cellar.showBrewSheet();
    shots.take("brew-sheet");
    cellar.addVessel();
    shots.take("new-vessel");
    cellar.showStation(Station::drawRefill);
    window.toggleHelp();
    shots.take("help");
    window.toggleHelp();
    recordAll(window.session()->desk(), R"({"kind": "vessel", "name": "Curlew", "shape": "tank", "material": "steel",
        "capacity_l": 500})");
    cellar.showVessel("Curlew");
    shots.take("empty-vessel");
    station.begin(EntryKind::opening);
    shots.take("opening");
}

} // namespace

TEST_CASE("pictures of every page in both palettes", "[.][screenshots]") {
    const QString folder = qEnvironmentVariable("STAVELINE_SHOTS");
    if (folder.isEmpty())
        FAIL("STAVELINE_SHOTS names no folder");
    REQUIRE(QDir().mkpath(folder));
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        WindowInScratch w(false);
        takeAll(w, folder, look);
    }
    install(*qApp, Appearance::light);
}
