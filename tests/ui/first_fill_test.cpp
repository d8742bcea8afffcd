// SPDX-License-Identifier: GPL-3.0-or-later
// An empty vessel in the window: what is due, what to brew, how it is filled; and a new vessel with what is asked of
// it.
#include "ui/support.h"

#include "ui/brew/flow_page.h"
#include "ui/brew/page.h"
#include "ui/cellar/new_vessel_questions.h"
#include "ui/cellar/rail.h"
#include "ui/cellar/vessel_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/page.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/cycle_timeline.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"

#include <QLabel>
#include <QLineEdit>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtEmptyVessel : WindowInScratch {
    AtEmptyVessel() { window->cellar()->showVessel("Bittern"); } // a foeder of 900 L without an entry
    [[nodiscard]] QStringList milestones() const {
        QStringList words;
        for (const MilestoneButton* each : part<CycleTimeline>(cellar()).buttons())
            words << each->text();
        return words;
    }
};

} // namespace

TEST_CASE("an empty vessel says on rail and timeline that it is to be filled", "[ui][firstfill]") {
    const AtEmptyVessel at;
    const auto summary = at.window->session()->desk().vessel("Bittern");
    CHECK(at.window->session()->words(summary->headline) == "empty: fill it");
    CHECK(part<CycleTimeline>(at.cellar()).isVisible());
    CHECK(at.milestones() == QStringList{"brew", "fill", "first tasting", "first draw"});
}

TEST_CASE("the brew page plans the first fill, without a draw", "[ui][firstfill]") {
    const AtEmptyVessel at;
    at.cellar().showPage(PageId::brew);
    auto& brew = part<BrewPage>(at.cellar());
    CHECK(part<QLabel>(brew, "origin").text().startsWith("First fill of an empty vessel."));
    CHECK(brew.notes().join(' ').contains("First fill: 855.0 L"));
    const auto shown = brew.findChildren<QLabel*>();
    CHECK(std::none_of(shown.begin(), shown.end(),
                       [](const QLabel* label) { return label->isVisible() && label->text() == "Draw"; }));
    at.cellar().showVessel("Heron");
    const auto then = brew.findChildren<QLabel*>();
    CHECK(std::any_of(then.begin(), then.end(),
                      [](const QLabel* label) { return label->isVisible() && label->text() == "Draw"; }));
}

TEST_CASE("the mark of the fill opens the first fill, and recording it starts the cycle", "[ui][firstfill]") {
    const AtEmptyVessel at;
    for (MilestoneButton* each : part<CycleTimeline>(at.cellar()).buttons())
        if (each->text() == "fill") {
            each->click();
            break;
        }
    auto& form = at.cellar().drawRefill().form();
    REQUIRE(form.active());
    at.type("850");
    at.key(Qt::Key_Return);
    CHECK_FALSE(form.active());
    CHECK(at.window->session()->desk().vessel("Bittern")->now.volume.l == Approx(850));
    CHECK(at.milestones().first() == "filled");
}

TEST_CASE("a new vessel can say at once what lives in it, what it is brewed on and what is wanted", "[ui][firstfill]") {
    AtEmptyVessel at;
    at.key(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    auto& page = part<VesselPage>(at.cellar());
    auto& questions = page.questions();
    for (const char* about : {"culture", "kit", "target"}) {
        CAPTURE(about);
        CHECK(questions.choice(about).word().empty());
    }
    CHECK_FALSE(questions.culture().isVisible());
    page.fields().line("name")->setFocus();
    at.type("Wren");
    for (const char* about : {"culture", "kit", "target"}) {
        questions.choice(about).setFocus();
        at.key(Qt::Key_Down);
    }
    CHECK(questions.culture().isVisible());
    CHECK(questions.kit().isVisible());
    QLineEdit* funk = questions.wanted(Dimension::funk).edit();
    funk->setFocus();
    funk->selectAll();
    at.type("6");
    at.key(Qt::Key_Return);
    REQUIRE(at.window->session()->desk().vessel("Wren"));
    const Desk& desk = at.window->session()->desk();
    CHECK(desk.culture("Wren"));
    CHECK((*desk.target("Wren"))->fact.target.windows[Dimension::funk].wanted == Approx(6));
    CHECK(desk.kit("Wren").on == at.today);
    CHECK(desk.undoText() == "add vessel Wren");
}

TEST_CASE("another kit for a new vessel is that vessel's own", "[ui][firstfill]") {
    AtEmptyVessel at;
    recordAll(*at.window->session(), R"({"kind": "equipment", "on": "2026-01-01", "name": "House", "mash_tun_l": 60})");
    at.key(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    auto& page = part<VesselPage>(at.cellar());
    page.fields().line("name")->setFocus();
    at.type("Wren");
    page.questions().choice("kit").setFocus();
    at.key(Qt::Key_Down);
    at.key(Qt::Key_Return);
    REQUIRE(at.desk().vessel("Wren"));
    CHECK(at.desk().kit("Wren").vessel == "Wren");
    CHECK(at.desk().kit("Heron").equipment.name == "House");
    CHECK(at.desk().kit("Heron").equipment.mashTun == Litres{60});
}

TEST_CASE("left for later, a new vessel is its own facts alone", "[ui][firstfill]") {
    AtEmptyVessel at;
    at.key(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    at.type("Wren");
    at.key(Qt::Key_Return);
    const Desk& desk = at.window->session()->desk();
    REQUIRE(desk.vessel("Wren"));
    CHECK_FALSE(desk.culture("Wren"));
    CHECK_FALSE(*desk.target("Wren"));
}
