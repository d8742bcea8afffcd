// SPDX-License-Identifier: GPL-3.0-or-later
// The pages beside the vessels' own: left to where they were opened from, and there for a cellar without a vessel.
#include "ui/support.h"

#include "ui/cellar/room_page.h"
#include "ui/cellar/round_page.h"
#include "ui/pantry/ingredients_page.h"
#include "ui/widgets/fact_form.h"
#include "ui/window/cellar_view.h"

#include <QCheckBox>
#include <QLineEdit>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

TEST_CASE("a page beside the vessels is left to where it was opened from", "[ui][aside]") {
    const WindowInScratch w;
    for (const Qt::Key page : {Qt::Key_R, Qt::Key_I, Qt::Key_M, Qt::Key_E, Qt::Key_N}) {
        INFO(page);
        for (const bool fromAll : {false, true}) {
            fromAll ? w.cellar().showAll() : w.cellar().showPage(PageId::taste);
            w.key(page, Qt::ControlModifier | Qt::ShiftModifier);
            REQUIRE_FALSE((w.cellar().atAll() || w.cellar().atVessel()));
            w.key(Qt::Key_Escape);
            CHECK(w.cellar().atAll() == fromAll);
            CHECK(w.cellar().atVessel() == !fromAll);
        }
    }
}

TEST_CASE("from one page beside the vessels to another the way back stays", "[ui][aside]") {
    const WindowInScratch w;
    w.cellar().showAll();
    w.cellar().showRooms();
    w.cellar().showRound();
    w.cellar().round().rows().front().purged->click();
    w.cellar().round().finish();
    CHECK(w.cellar().atAll());
}

TEST_CASE("ingredients and rooms are there before the first vessel", "[ui][aside]") {
    const WindowInScratch w(false);
    REQUIRE(w.window->newBook(w.scratch / "first.cellar"));
    w.cellar().showIngredients();
    IngredientsPage& ingredients = w.cellar().ingredients();
    ingredients.choose("pilsner");
    ingredients.makeOwn();
    w.type("Barn malt");
    w.key(Qt::Key_Return);
    CHECK_FALSE(w.desk().undoText().empty());
    CHECK(w.cellar().atIngredients()); // the book changed, the page is still in front
    w.cellar().showRooms();
    CHECK(w.cellar().atRooms());
    w.key(Qt::Key_Escape);
    CHECK_FALSE(w.cellar().atVessel());
}
