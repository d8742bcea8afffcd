// SPDX-License-Identifier: GPL-3.0-or-later
// Ingredients of one's own and what is at hand, in the window.
#include "ui/support.h"

#include "desk/stock.h"
#include "ingredient/pantry.h"
#include "ui/adjust/stock_list.h"
#include "ui/brew/page.h"
#include "ui/pantry/ingredient_lines.h"
#include "ui/pantry/ingredients_page.h"
#include "ui/pantry/stock_form.h"
#include "ui/parts.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"

#include <QCheckBox>
#include <QLineEdit>
#include <QTableWidget>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtIngredients : WindowInScratch {
    AtIngredients() {
        key(Qt::Key_I, Qt::ControlModifier | Qt::ShiftModifier);
        REQUIRE(window->cellar()->atIngredients());
    }
    [[nodiscard]] IngredientsPage& page() const { return window->cellar()->ingredients(); }
    void type(QLineEdit* field, const QString& words) const {
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, words);
    }
    void makeBarnMalt() const {
        page().choose("pilsner");
        page().makeOwn();
        type(page().form().line("name"), "Pilsner from the barn");
        type(page().form().number("extract_dry_share")->edit(), "79");
        page().keep();
    }
    [[nodiscard]] QString stockOf(const QString& name) const {
        for (int row = 0; row < page().table().rowCount(); ++row)
            if (page().table().item(row, 0)->text() == name)
                return page().table().item(row, 1)->text();
        return "no such line";
    }
};

} // namespace

TEST_CASE("a malt of one's own is made from a built-in one by keyboard, and undone by name", "[ui][ingredients]") {
    AtIngredients at;
    CHECK(at.page().table().hasFocus());
    at.page().choose("pilsner");
    at.page().makeOwn();
    CHECK(QApplication::focusWidget() == at.page().form().line("name"));
    CHECK(at.page().form().number("diastatic_power_wk")->edit()->text() == "280");
    CHECK(at.page().form().number("moisture_share")->edit()->text() == "4.5");
    QTest::keyClicks(QApplication::focusWidget(), "Pilsner from the barn");
    at.type(at.page().form().number("extract_dry_share")->edit(), "79");
    CHECK_FALSE(at.window->session()->unstored().isEmpty());
    at.page().keep();
    CHECK(at.page().words().isEmpty());
    CHECK(at.window->session()->unstored().isEmpty());
    const auto own = at.desk().pantry().grain("pilsner_from_the_barn");
    REQUIRE(own);
    CHECK(own->extractDryBasis == Approx(.79));
    CHECK(own->diastaticPowerWk == 280);
    CHECK(at.page().table().item(0, 0)->text() == "Pilsner from the barn (your own)");
    CHECK(at.desk().undoText() == "own malt or sugar Pilsner from the barn");
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK_FALSE(at.desk().pantry().grain("pilsner_from_the_barn"));
    CHECK(at.page().table().item(0, 0)->text() == "Pilsner malt");
}

TEST_CASE("what is out of its range is said beside its field and not stored", "[ui][ingredients][bad]") {
    AtIngredients at;
    at.makeBarnMalt();
    const auto revision = at.desk().revision();
    NumberField* moisture = at.page().form().number("moisture_share");
    at.type(moisture->edit(), "31");
    CHECK_FALSE(moisture->words().isEmpty());
    at.page().keep();
    CHECK(at.desk().revision() == revision);
    CHECK(moisture->edit()->hasFocus());
    at.type(moisture->edit(), "5");
    at.page().keep();
    CHECK(at.desk().pantry().grain("pilsner_from_the_barn")->moisture == Approx(.05));
    // a name that another has is told in words
    at.page().choose("pale");
    at.page().makeOwn();
    at.type(at.page().form().line("name"), "pilsner malt");
    at.page().keep();
    CHECK(at.page().words().contains("There is an ingredient called"));
    at.key(Qt::Key_Escape);
    CHECK(at.window->session()->unstored().isEmpty());
    CHECK(at.window->cellar()->atIngredients());
    at.key(Qt::Key_Escape);
    CHECK(at.window->cellar()->atVessel());
}

TEST_CASE("a change of another day is a further state, one of the same day a correction", "[ui][ingredients]") {
    AtIngredients at;
    at.makeBarnMalt();
    at.type(at.page().form().number("moisture_share")->edit(), "6");
    at.page().keep();
    CHECK(at.desk().fact("own_grain", 1).has_value());
    CHECK_FALSE(at.desk().fact("own_grain", 2).has_value());
    at.type(at.page().form().date("on")->edit(), qs(isoDay(at.desk().today() - std::chrono::days{9})));
    at.page().keep();
    CHECK(at.page().words().isEmpty());
    CHECK(at.desk().fact("own_grain", 2).has_value());
}

TEST_CASE("one in a recipe stays, and says in which", "[ui][ingredients][bad]") {
    AtIngredients at;
    at.makeBarnMalt();
    recordAll(*at.window->session(), R"({"kind": "base_recipe", "vessel": "Heron", "on": ")" +
                                         isoDay(at.desk().today()) + R"(", "yeast": "ale_clean",
        "grist": [{"grain": "pilsner_from_the_barn", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    at.page().removeChosen();
    CHECK(at.page().words().contains("is in a recipe of Heron"));
    at.key(Qt::Key_Z, Qt::ControlModifier);
    at.page().removeChosen();
    CHECK_FALSE(at.desk().pantry().grain("pilsner_from_the_barn"));
}

TEST_CASE("what is counted stands in the list, and what is past its day says so", "[ui][ingredients][stock]") {
    AtIngredients at;
    at.page().choose("pilsner");
    StockForm& stock = at.page().stock();
    CHECK(stock.words().startsWith("Not counted yet."));
    stock.count();
    CHECK(stock.words().contains("Enter what it weighs"));
    at.type(stock.mass().edit(), "25");
    stock.count();
    CHECK(at.stockOf("Pilsner malt").startsWith("25.0 kg, counted on "));
    stock.dated().setChecked(true);
    stock.bestBefore().setDay(at.desk().today() - std::chrono::days{1});
    at.type(stock.mass().edit(), "20");
    stock.count();
    CHECK(at.stockOf("Pilsner malt").contains("Past its day"));
    CHECK(at.desk().stock().front().counted.mass == Kilograms{20});
    at.page().sort().setCurrentIndex(2);
    at.page().choose("ale_clean");
    at.type(stock.packs().edit(), "3");
    stock.count();
    CHECK(at.stockOf("Ale yeast, clean").startsWith("3 packs"));
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.stockOf("Ale yeast, clean").isEmpty());
}

TEST_CASE("the choices of a recipe follow what the book has", "[ui][ingredients]") {
    AtIngredients at;
    at.window->cellar()->showVessel("Heron");
    at.window->cellar()->showPage(PageId::brew);
    const auto offers = [&](const QString& words) {
        const auto fields = at.window->cellar()->brew().findChildren<ChoiceField*>();
        return std::any_of(fields.begin(), fields.end(),
                           [&](const ChoiceField* field) { return field->findText(words) >= 0; });
    };
    CHECK(offers("wheat malt"));
    CHECK_FALSE(offers("wheat from the barn"));
    recordAll(*at.window->session(),
              R"([{"kind": "own_grain", "on": ")" + isoDay(at.desk().today()) +
                  R"(", "ingredient": "barn_wheat", "name": "wheat from the barn", "like": "wheat_malt"},
        {"kind": "own_yeast", "on": ")" +
                  isoDay(at.desk().today()) +
                  R"(", "ingredient": "loft_ale", "name": "ale yeast from the loft", "like": "ale_clean"}])");
    CHECK(offers("wheat from the barn"));
    CHECK(offers("ale yeast from the loft"));
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK_FALSE(offers("wheat from the barn"));
}

TEST_CASE("what is used up is said where plans are made", "[ui][ingredients][stock]") {
    AtIngredients at;
    at.page().choose("rye_malt");
    at.type(at.page().stock().mass().edit(), "0");
    at.page().stock().count();
    at.window->cellar()->showVessel("Heron");
    at.window->cellar()->showPage(PageId::adjust);
    CHECK(part<StockList>(*at.window).words().join('\n').contains("Rye malt, used up"));
    at.window->cellar()->showPage(PageId::brew);
    const auto fields = at.window->cellar()->brew().findChildren<ChoiceField*>();
    CHECK(std::any_of(fields.begin(), fields.end(),
                      [](const ChoiceField* field) { return field->findText("rye malt (not at hand)") >= 0; }));
}

TEST_CASE("a short name is made of the name and is nobody else's", "[ui][ingredients]") {
    const ingredient::Pantry& pantry = ingredient::builtInPantry();
    CHECK(shortName("Pilsner, from the barn!", pantry) == "pilsner_from_the_barn");
    CHECK(shortName("  Saison ", pantry) == "saison_2");
    CHECK(shortName("\u00e9\u00e9", pantry) == "own");
}
