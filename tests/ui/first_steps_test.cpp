// SPDX-License-Identifier: GPL-3.0-or-later
// The first hour: an empty book leads from its vessel to the first tasting, and says what of it is done.
#include "ui/support.h"

#include "ui/adjust/page.h"
#include "ui/adjust/target_form.h"
#include "ui/brew/kit_editor.h"
#include "ui/brew/page.h"
#include "ui/cellar/first_steps_bar.h"
#include "ui/cellar/vessel_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/page.h"
#include "ui/taste/page.h"
#include "ui/widgets/fact_form.h"
#include "ui/window/cellar_view.h"

#include <QLineEdit>
#include <QPushButton>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct NewCellar : WindowInScratch {
    NewCellar() : WindowInScratch(false) { REQUIRE(window->newBook(scratch / "new.cellar")); }
    [[nodiscard]] FirstStepsBar& bar() const { return cellar().firstSteps(); }
    [[nodiscard]] QString state(FirstStep step) const { return accessibleName(bar().step(step)); }
    void take(FirstStep step) const { bar().step(step).click(); }
    void record(const std::string& json) const { recordAll(*window->session(), json); }
    void addVessel() const {
        record(R"({"kind": "vessel", "name": "Plover", "capacity_l": 225, "material": "oak used"})");
        cellar().showVessel("Plover");
    }
};

} // namespace

TEST_CASE("a new book shows the first steps, the vessel first", "[ui][firststeps]") {
    const NewCellar at;
    CHECK(at.bar().isVisible());
    CHECK(at.state(FirstStep::vessel) == "Vessel, next");
    CHECK(at.state(FirstStep::tasting) == "First tasting, to do");
    CHECK(at.bar().words().startsWith("Next: the vessel."));
    CHECK(part<VesselPage>(at.cellar()).isVisible());
}

TEST_CASE("each step leads to the page where it is taken, with the hand in it", "[ui][firststeps]") {
    const NewCellar at;
    at.addVessel();
    CHECK(at.state(FirstStep::vessel) == "Vessel, done");
    CHECK(at.state(FirstStep::beer) == "Beer in it, next");
    at.take(FirstStep::beer);
    CHECK(at.cellar().workPage() == PageId::drawRefill);
    CHECK(at.cellar().drawRefill().form().active());
    at.key(Qt::Key_Escape);
    at.take(FirstStep::kit);
    CHECK(at.cellar().workPage() == PageId::brew);
    CHECK(part<KitEditor>(at.cellar()).form().isVisible());
    CHECK(part<KitEditor>(at.cellar()).form().isAncestorOf(at.focus()));
    at.take(FirstStep::recipe);
    CHECK(at.cellar().brew().part() == BrewPage::Part::plan);
    CHECK(at.cellar().brew().isAncestorOf(at.focus()));
    at.take(FirstStep::tasting);
    CHECK(at.cellar().workPage() == PageId::taste);
    at.record(R"({"kind": "opening", "vessel": "Plover", "on": "2026-02-01", "volume_l": 216})");
    at.take(FirstStep::character);
    CHECK(at.cellar().workPage() == PageId::adjust);
    CHECK(part<TargetForm>(at.cellar().adjust()).isVisible());
    at.take(FirstStep::vessel);
    CHECK(part<VesselPage>(at.cellar()).isVisible());
}

TEST_CASE("the first hour by typing: vessel, takeover, kit, recipe, character, tasting", "[ui][firststeps]") {
    const NewCellar at;
    part<VesselPage>(at.cellar()).fields().line("name")->setFocus();
    at.type("Plover");
    at.key(Qt::Key_Return);
    REQUIRE(at.desk().vessel("Plover"));
    REQUIRE(at.cellar().drawRefill().form().active());
    at.type("200");
    at.key(Qt::Key_Return);
    CHECK(at.state(FirstStep::beer) == "Beer in it, done");
    at.take(FirstStep::kit); // the hand is in its first field
    at.key(Qt::Key_A, Qt::ControlModifier);
    at.type("90");
    at.key(Qt::Key_Return);
    CHECK(at.state(FirstStep::kit) == "Kit, done");
    at.take(FirstStep::recipe);
    at.tabTo("Make this the usual recipe");
    at.key(Qt::Key_Space);
    CHECK(at.state(FirstStep::recipe) == "Usual recipe, done");
    at.take(FirstStep::character);
    at.key(Qt::Key_A, Qt::ControlModifier);
    at.type("6");
    at.key(Qt::Key_Return);
    CHECK(at.state(FirstStep::character) == "Wanted character, done");
    at.take(FirstStep::tasting);
    for (int i = 0; i < 4; ++i) {
        at.type("5");
        at.key(Qt::Key_Tab);
    }
    CHECK(at.state(FirstStep::tasting) == "First tasting, done");
    CHECK(at.bar().words().startsWith("That is all it needs."));
}

TEST_CASE("put away, the steps stay away until they are asked for", "[ui][firststeps]") {
    NewCellar at;
    at.addVessel();
    at.bar().close().click();
    CHECK_FALSE(at.bar().isVisible());
    at.window->remember();
    at.open();
    REQUIRE(at.window->openBook(at.scratch / "new.cellar"));
    CHECK_FALSE(at.bar().isVisible());
    at.action("First steps").trigger();
    CHECK(at.bar().isVisible());
}

TEST_CASE("a book with years in it shows no first steps unless asked", "[ui][firststeps]") {
    const WindowInScratch w;
    CHECK_FALSE(w.cellar().firstSteps().isVisible());
    w.action("First steps").trigger();
    CHECK(w.cellar().firstSteps().isVisible());
}
