// SPDX-License-Identifier: GPL-3.0-or-later
// The Brew page's plan: each edit recalculates the flow, what is finished is stored, what is refused stays as typed.
#include "ui/brew_support.h"

#include "ui/audit.h"
#include "ui/widgets/accessible_roles.h"
#include "ui/widgets/theme.h"

#include <fmt/core.h>
#include <set>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::sheet;
using namespace staveline::ui;
using namespace staveline::testing;

TEST_CASE("the plan follows the liquid with litres and gravity at every step", "[ui][brew]") {
    const AtBrew s;
    const auto amounts = [&](FlowPage::Step step) { return amountsOf(s.flow().step(step)); };
    const BrewPlan& plan = s.plan();
    const auto shows = [&](FlowPage::Step step, auto quantity) {
        INFO(amounts(step).toStdString());
        CHECK(amounts(step).contains(s.session->amount(quantity)));
    };
    shows(FlowPage::water, plan.strikeAndInfusion + plan.sparge);
    shows(FlowPage::water, plan.sparge);
    shows(FlowPage::mash, plan.preBoilHot);
    shows(FlowPage::mash, plan.preBoilGravity);
    shows(FlowPage::kettle, plan.postBoilHot);
    shows(FlowPage::kettle, plan.originalGravity);
    shows(FlowPage::fermenter, plan.intoFermenter);
    shows(FlowPage::fermenter, plan.alcohol);
    shows(FlowPage::vessel, plan.intoVessel);
    shows(FlowPage::vessel, plan.leftOver);
    CHECK(amounts(FlowPage::water).contains("cold"));
    CHECK(amounts(FlowPage::kettle).contains("hot"));
    CHECK(amounts(FlowPage::fermenter).contains("cold"));
}

TEST_CASE("it says where the recipe comes from", "[ui][brew]") {
    const AtBrew usual;
    CHECK(usual.origin().contains("1 Feb 2023"));
    CHECK_FALSE(usual.usualButton().isEnabled()); // it is
    const AtBrew habit("Teal");
    CHECK(habit.origin().contains("No recipe is written down"));
    CHECK(habit.usualButton().isEnabled());
}

TEST_CASE("typing recalculates at once and is stored when the field is finished", "[ui][brew]") {
    const AtBrew s;
    const auto before = s.revision();
    const Kilograms grain = s.plan().gristMass;
    s.workPage->focusWork();
    CHECK(s.window.focusWidget() == s.field("/original_gravity_p")->edit());
    s.type("/original_gravity_p", "1.060", false);
    CHECK(s.plan().gristMass > grain);
    CHECK(s.revision() == before); // nothing is written by trying
    QTest::keyClick(s.window.focusWidget(), Qt::Key_Tab);
    CHECK(s.revision() > before);
    CHECK(s.recipe().originalGravity.p == Approx(14.7).margin(.1)); // 1.060 is 14.7 P (ASBC)
    CHECK(s.field("/original_gravity_p")->stored() == Approx(1.06));
    s.session->undo();
    CHECK(s.recipe().originalGravity.p == Approx(12));
    CHECK(s.field("/original_gravity_p")->edit()->text().startsWith("1.048"));
}

TEST_CASE("each number of the recipe is stored from its field", "[ui][brew]") {
    const AtBrew s;
    s.type("/bitterness_ibu", "14,5");
    s.type("/liquor_to_grist_l_kg", "3.4");
    s.type("/mash_ph", "5.4");
    s.type("/boil_min", "75");
    s.type("/sugar_share", "5");
    s.type("/pre_soured_share", "20");
    s.type("/pre_sour_ta_g_l", "6");
    s.type("/draw_l", "70");
    const Recipe now = s.recipe();
    CHECK(now.bitterness.ibu == 14.5);
    CHECK(now.liquorToGrist.lPerKg == 3.4);
    CHECK(now.mashPh.ph == 5.4);
    CHECK(now.boil.min == 75);
    CHECK(now.sugarShare.of1 == Approx(.05));
    CHECK(now.preSoured.of1 == Approx(.2));
    CHECK(now.preSourTa.gPerL == 6);
    CHECK(now.originalGravity.p == 12); // untouched fields keep their bits
}

TEST_CASE("what cannot be brewed is said at its field, stays as typed and is not stored", "[ui][brew][bad]") {
    const AtBrew s;
    const auto before = s.revision();
    NumberField* temperature = s.field("/mash/0/temperature_c");
    s.type("/mash/0/temperature_c", "30");
    CHECK_FALSE(temperature->words().isEmpty());
    CHECK(temperature->edit()->text() == "30");
    CHECK(s.revision() == before);
    s.type("/mash/0/temperature_c", "64");
    CHECK(temperature->words().isEmpty());
    CHECK(s.revision() > before);
    CHECK(s.recipe().mash[0].temperature.c == 64);
}

TEST_CASE("a half-typed number stays while the book changes", "[ui][brew][bad]") {
    const AtBrew s;
    s.type("/bitterness_ibu", "1x", false);
    CHECK_FALSE(s.field("/bitterness_ibu")->words().isEmpty());
    REQUIRE(s.session->record(Fact{ReadingFact{"Heron", testToday, {{}, Ph{3.3}, {}, {}, {}}, ""}}));
    CHECK(s.field("/bitterness_ibu")->edit()->text() == "1x");
    CHECK(s.recipe().bitterness.ibu == 10);
}

TEST_CASE("a refused edit is made again on what the book says now", "[ui][brew][bad]") {
    const AtBrew s;
    s.type("/grist/0/share", "60");
    CHECK(s.grist().sum().words().contains("15 %"));
    CHECK(wordsOf(s.flow(), "/grist").contains("85 %"));
    CHECK(s.origin().contains("not stored"));
    Recipe changed = s.recipe();
    changed.bitterness = Ibu{7};
    REQUIRE(s.session->record(Fact{BaseRecipeFact{"Heron", testToday, changed}}));
    CHECK(s.field("/bitterness_ibu")->stored() == 7);
    CHECK(s.field("/grist/0/share")->edit()->text() == "60");
    s.grist().shareRest(1);
    CHECK(s.recipe().bitterness.ibu == 7);
    CHECK(s.recipe().grist[1].share.of1 == Approx(.4));
}

TEST_CASE("a locked plan is shown and cannot be edited", "[ui][brew]") {
    const AtBrew s;
    BrewFact brewed;
    brewed.name = "Brew 7";
    brewed.vessel = "Heron";
    brewed.on = testToday;
    brewed.recipe = s.recipe();
    REQUIRE(s.session->record(Fact{brewed}));
    REQUIRE(s.planPage().planned()->brewed);
    CHECK(s.origin().contains("Brew 7"));
    CHECK(s.origin().contains("taking the brew out")); // how it is unlocked
    for (const auto* path : {"/original_gravity_p", "/bitterness_ibu", "/draw_l", "/liquor_to_grist_l_kg", "/mash_ph",
                             "/mash/0/temperature_c", "/mash/0/minutes", "/grist/0/share", "/boil_min"})
        CHECK_FALSE(s.field(path)->edit()->isEnabled());
    for (const RestHandle* handle : handles(s.mashChart()))
        CHECK_FALSE(handle->isEnabled());
    s.workPage->focusWork();
    REQUIRE(s.window.focusWidget()); // the plan can still be read by keyboard
    CHECK(s.window.focusWidget()->isEnabled());
    const auto before = s.revision();
    QTest::keyClicks(s.field("/bitterness_ibu")->edit(), "5");
    QTest::keyClick(handles(s.mashChart()).front(), Qt::Key_Up);
    CHECK(s.revision() == before);
    CHECK(s.recipe() == brewed.recipe);
}

TEST_CASE("an edit is for this refill, the usual recipe stays", "[ui][brew]") {
    const AtBrew s("Teal");
    s.type("/bitterness_ibu", "12", true);
    const auto planned = s.session->desk().planned("Teal");
    CHECK(planned->from == PlannedRecipe::From::choice);
    CHECK_FALSE(planned->usual);
    CHECK(s.origin().contains("Your own setting, adopted on"));
    CHECK(s.usualButton().isEnabled());
}

TEST_CASE("the plan in hand becomes the usual recipe", "[ui][brew]") {
    const AtBrew s("Teal");
    s.type("/bitterness_ibu", "12", false);
    s.planPage().makeUsual();
    CHECK(s.session->desk().planned("Teal")->usual);
    CHECK(s.origin().contains("The usual recipe, adopted on"));
    CHECK_FALSE(s.usualButton().isEnabled());
    CHECK(s.recipe("Teal").bitterness.ibu == 12);
}

TEST_CASE("units change what is shown, not what is stored", "[ui][brew]") {
    const AtBrew s;
    const Recipe before = s.recipe();
    const auto revision = s.revision();
    s.session->setUnits({DisplayUnits::Volume::usGallon, DisplayUnits::Temperature::fahrenheit,
                         DisplayUnits::Gravity::plato, DisplayUnits::Colour::srm});
    CHECK(s.field("/mash/0/temperature_c")->edit()->text() == "150.8");
    CHECK(s.field("/original_gravity_p")->edit()->text() == "12");
    CHECK(amountsOf(s.flow().step(FlowPage::vessel)).contains("US gal"));
    CHECK(amountsOf(s.flow().step(FlowPage::wanted)).contains("SRM"));
    CHECK(s.revision() == revision);
    CHECK(s.recipe() == before);
    s.type("/mash/0/temperature_c", "152");
    CHECK(s.recipe().mash[0].temperature.c == Approx((152 - 32) / 1.8));
}

TEST_CASE("cautions and findings stand at their step", "[ui][brew]") {
    const AtBrew s;
    CHECK(s.flow().step(FlowPage::mash).notes().join(' ').contains("scalds"));
    CHECK(FlowPage::stepOf("caution.kettle.boilOver") == FlowPage::kettle);
    CHECK(FlowPage::stepOf("caution.refill.keg") == FlowPage::vessel);
    CHECK(FlowPage::stepOf("something.new") == FlowPage::wanted); // nothing is lost
    s.type("/pre_soured_share", "30");
    CHECK(s.flow().step(FlowPage::kettle).notes().join(' ').contains("pH 4.5"));
    s.type("/draw_l", "170");
    CHECK(s.flow().step(FlowPage::mash).notes().join(' ').contains("too large for the tun"));
    CHECK(s.flow().step(FlowPage::fermenter).notes().join(' ').contains("more than the fermenter holds"));
    CHECK(s.workPage->notes().size() >= 5);
}

TEST_CASE("every finding and caution of the texts has its step", "[ui][brew]") {
    // Those of finishing have their steps on the packaging day sheet (tests/sheet/packing_sheet_test.cpp).
    const std::set<std::string> finishing{"blend", "ready", "prime", "fill", "keep"};
    for (const auto& [key, words] : builtInTexts().all())
        if (key.starts_with("caution.")) {
            INFO(key);
            const bool ofBrewing = !finishing.contains(key.substr(8, key.find('.', 8) - 8));
            CHECK((FlowPage::stepOf(key) != FlowPage::wanted) == ofBrewing);
        }
}

TEST_CASE("the yeast says what it does", "[ui][brew]") {
    const AtBrew s;
    auto* yeast = &part<ChoiceField>(s.flow(), "Yeast");
    REQUIRE(yeast);
    CHECK(s.flow().yeast().words().contains("Makes no clove"));
    yeast->setFocus();
    yeast->setWord("saison_diastatic");
    Q_EMIT yeast->activated(yeast->currentIndex());
    CHECK(s.recipe().yeast == "saison_diastatic");
    CHECK(s.flow().yeast().words().contains("Diastatic"));
    CHECK(s.flow().step(FlowPage::fermenter).notes().join(' ').contains("cannot be taken back"));
}

TEST_CASE("the kit is edited below the flow and holds from today", "[ui][brew]") {
    const AtBrew s;
    KitEditor& kit = s.planPage().kit();
    kit.button().click();
    const auto before = s.revision();
    NumberField* efficiency = kit.form().number("mash_and_lauter_efficiency");
    const Kilograms grain = s.plan().gristMass;
    AtBrew::type(efficiency->edit(), "70", false);
    CHECK(s.plan().gristMass > grain);
    CHECK(s.revision() == before);
    QTest::keyClick(efficiency->edit(), Qt::Key_Return);
    CHECK(s.session->desk().kit().equipment.efficiency.of1 == Approx(.7));
    CHECK(s.session->desk().kit().on == testToday);
    AtBrew::type(kit.form().number("brew_length_l")->edit(), "100");
    CHECK(s.session->desk().kit().brewLength->l == 100);
    CHECK(s.plan().intoFermenter.l == Approx(100));
    CHECK(amountsOf(s.flow().step(FlowPage::fermenter)).contains("fixed by the kit"));
    s.session->undo();
    s.session->undo();
    CHECK(s.plan().gristMass.kg == Approx(grain.kg));
    CHECK(efficiency != kit.form().number("mash_and_lauter_efficiency")); // the fields follow the book
    CHECK(kit.form().number("mash_and_lauter_efficiency")->stored() == Approx(.82));
}

TEST_CASE("a kit that cannot be brewed on is said at its field", "[ui][brew][bad]") {
    const AtBrew s;
    KitEditor& kit = s.planPage().kit();
    kit.unfold(true);
    const auto before = s.revision();
    AtBrew::type(kit.form().number("mash_and_lauter_efficiency")->edit(), "7");
    CHECK_FALSE(kit.form().number("mash_and_lauter_efficiency")->words().isEmpty());
    AtBrew::type(kit.form().number("mash_tun_l")->edit(), "");
    CHECK(s.revision() == before);
}

TEST_CASE("the sheet is the second part of the page and still saves", "[ui][brew]") {
    AtBrew s;
    s.workPage->showSheet();
    CHECK(s.workPage->part() == BrewPage::Part::sheet);
    REQUIRE(s.workPage->sheet().page().printButton().isEnabled());
    s.prompt.answers = {s.scratch / "sheet.pdf"};
    s.workPage->sheet().page().printout().save(s.window, PaperFormat::pdf);
    CHECK(std::filesystem::file_size(s.scratch / "sheet.pdf") > 1000);
    s.workPage->showPlan();
    CHECK(s.workPage->part() == BrewPage::Part::plan);
}

TEST_CASE("another vessel stores what is in hand and shows its own plan", "[ui][brew]") {
    const AtBrew s;
    s.type("/bitterness_ibu", "15", false);
    s.workPage->showVessel("Teal");
    CHECK(s.recipe("Heron").bitterness.ibu == 15);
    CHECK(s.field("/bitterness_ibu")->stored() == s.recipe("Teal").bitterness.ibu);
}

TEST_CASE("the Brew page is fit for everyone", "[ui][brew][audit]") {
    installAccessibleRoles();
    AtBrew s;
    AuditReport all;
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        install(*qApp, look);
        QTest::qWait(0);
        for (const auto part : {BrewPage::Part::plan, BrewPage::Part::sheet, BrewPage::Part::asBrewed}) {
            if (part == BrewPage::Part::plan)
                s.workPage->showPlan();
            else if (part == BrewPage::Part::sheet)
                s.workPage->showSheet();
            else
                s.workPage->showAsBrewed();
            s.planPage().kit().unfold(true);
            QTest::qWait(20);
            all.add(audit(s.window));
        }
    }
    install(*qApp, Appearance::light);
    fmt::print("Brew: {}\n", all.summary().toStdString());
    INFO(all.findings.join('\n').toStdString());
    CHECK(all.findings.isEmpty());
}
