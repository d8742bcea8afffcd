// SPDX-License-Identifier: GPL-3.0-or-later
// A brew as it was made: recorded from the plan, completed later, and what it means for the next draw.
#include "ui/brew_support.h"

#include "brewing/as_brewed.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtBrewed : AtBrew {
    AtBrewed() { workPage->showAsBrewed(); }
    [[nodiscard]] AsBrewedPage& page() const { return asBrewedPage(); }
    [[nodiscard]] NumberField& originalGravity() const {
        return part<NumberField>(page(), "Original gravity, measured");
    }
    [[nodiscard]] NumberField& finalGravity() const { return part<NumberField>(page(), "Final gravity, measured"); }
    [[nodiscard]] NumberField& intoFermenter() const { return part<NumberField>(page(), "Into the fermenter"); }
    [[nodiscard]] QPushButton& refillButton() const { return part<QPushButton>(page(), "Go to the refill"); }
    [[nodiscard]] BrewFact last() const { return session->desk().brews().back(); }
    [[nodiscard]] std::size_t brews() const { return session->desk().brews().size(); }
    void enter(NumberField& field, const QString& text) const { type(field.edit(), text); }
    /// A field of the recipe as brewed.
    void brewed(const std::string& path, const QString& text) const {
        REQUIRE(page().flow().fields().numberAt(path));
        type(page().flow().fields().numberAt(path)->edit(), text);
    }
};

} // namespace

TEST_CASE("a brew is recorded from the plan, with what was measured", "[ui][brew][brewed]") {
    const AtBrewed s;
    s.workPage->focusWork();
    CHECK(s.window.focusWidget() == &s.page().name());
    CHECK(s.page().name().text() == "Brew 1");
    CHECK(s.page().date().day() == testToday);
    s.enter(s.originalGravity(), "1.051");
    s.enter(s.intoFermenter(), "96");
    AtBrew::type(&s.page().note(), "slow run-off");
    CHECK(s.brews() == 0);
    part<QPushButton>(s.page(), "Record the brew").click();
    REQUIRE(s.brews() == 1);
    const BrewFact made = s.last();
    CHECK(made.name == "Brew 1");
    CHECK(made.vessel == "Heron");
    CHECK(made.originalGravity->sg == 1.051);
    CHECK_FALSE(made.finalGravity);
    CHECK(made.intoFermenter->l == 96);
    CHECK(made.note == "slow run-off");
    CHECK(withoutWeights(made.recipe) == s.recipe());
    CHECK(isWeighed(made.recipe)); // by the sheet
    CHECK(s.page().words().contains("Draw & refill"));
    CHECK(s.page().words().contains("come back for its final gravity"));
    s.session->undo();
    CHECK(s.brews() == 0);
    CHECK(s.page().name().text() == "Brew 1");
}

TEST_CASE("after recording, the way leads to the refill", "[ui][brew][brewed]") {
    const AtBrewed s;
    QSignalSpy asked(s.workPage, &BrewPage::refillAsked);
    CHECK_FALSE(s.refillButton().isVisible());
    s.page().record();
    REQUIRE(s.refillButton().isVisible());
    s.refillButton().click();
    CHECK(asked.count() == 1);
}

TEST_CASE("the recipe as brewed is edited like the plan and leaves the plan alone", "[ui][brew][brewed]") {
    const AtBrewed s;
    const auto before = s.revision();
    CHECK(s.page().flow().fields().numberAt("/draw_l") == nullptr); // nothing to plan any more
    s.brewed("/mash/0/temperature_c", "69");
    s.brewed("/bitterness_ibu", "13");
    CHECK(s.revision() == before);
    s.page().record();
    CHECK(s.last().recipe.mash[0].temperature.c == 69);
    CHECK(s.last().recipe.bitterness.ibu == 13);
    CHECK(s.recipe().mash[0].temperature.c == 66);
}

TEST_CASE("what a difference means for the next draw is said with bands", "[ui][brew][brewed]") {
    const AtBrewed s;
    CHECK(s.page().meaning().score(Dimension::acidity, false) == s.page().meaning().score(Dimension::acidity, true));
    const QString body = s.page().meaning().score(Dimension::body, true);
    CHECK(body.contains(QChar(0xb1)));
    s.enter(s.originalGravity(), "1.065");
    s.enter(s.finalGravity(), "1.020");
    s.page().weighNow();
    CHECK(s.page().meaning().score(Dimension::body, true) != body);
    CHECK(s.page().meaning().score(Dimension::body, false) == body);
    CHECK(s.page().meaning().words().contains("1.065"));
}

TEST_CASE("the meaning follows when typing pauses", "[ui][brew][brewed]") {
    const AtBrewed s;
    s.enter(s.originalGravity(), "1.065");
    CHECK(QTest::qWaitFor([&] { return s.page().meaning().words().contains("1.065"); }, 3000));
}

TEST_CASE("the final gravity comes days later", "[ui][brew][brewed]") {
    AtBrewed s;
    s.page().record();
    s.today += std::chrono::days{12};
    s.page().refresh();
    REQUIRE(s.page().list().count() == 2);
    CHECK(s.page().list().item(1)->text().contains("final gravity to come"));
    s.page().list().setCurrentRow(0);
    CHECK(s.page().name().text() == "Brew 2");
    s.page().list().setFocus();
    QTest::keyClick(&s.page().list(), Qt::Key_Down);
    CHECK(s.page().name().text() == "Brew 1");
    CHECK(s.page().date().day() == testToday);
    s.enter(s.finalGravity(), "1.011");
    s.page().record();
    REQUIRE(s.brews() == 1);
    CHECK(s.last().finalGravity->sg == 1.011);
    CHECK(s.last().on == testToday);
    CHECK_FALSE(s.page().list().item(1)->text().contains("to come"));
}

TEST_CASE("a half-typed new brew is kept while an earlier one is looked at", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.page().record();
    s.page().list().setCurrentRow(0);
    s.enter(s.originalGravity(), "1.047");
    s.page().list().setCurrentRow(1);
    CHECK(s.originalGravity().edit()->text().isEmpty());
    s.page().list().setCurrentRow(0);
    CHECK(s.originalGravity().stored() == 1.047);
}

TEST_CASE("a new brew kept behind an earlier one is not lost, and stored with the rest", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.page().record(); // Brew 1
    s.page().list().setCurrentRow(0);
    s.enter(s.originalGravity(), "1.047");
    s.page().list().setCurrentRow(1); // Brew 1 again, untouched
    CHECK(s.session->unstored() == QStringList{"brew of Heron"});
    s.enter(s.finalGravity(), "1.008");
    s.page().record();
    CHECK(s.session->unstored() == QStringList{"brew of Heron"}); // the amendment does not use it up
    s.workPage->showVessel("Teal");
    s.session->storeAll();
    REQUIRE(s.brews() == 2);
    CHECK(s.session->unstored().isEmpty());
    CHECK(s.last().originalGravity == SpecificGravity{1.047});
    CHECK(s.session->desk().brews().front().finalGravity == SpecificGravity{1.008});
}

TEST_CASE("a brew in hand stays while the book changes", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.enter(s.originalGravity(), "1.047");
    AtBrew::type(&s.page().note(), "half a sen", false);
    REQUIRE(s.session->record(Fact{ReadingFact{"Heron", testToday, {{}, Ph{3.3}, {}, {}, {}}, ""}}));
    CHECK(s.originalGravity().stored() == 1.047);
    CHECK(s.page().note().text() == "half a sen");
}

TEST_CASE("what is wrong with a brew is said and it is not recorded", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.enter(s.originalGravity(), "1051x");
    s.page().record();
    CHECK(s.brews() == 0);
    CHECK_FALSE(s.originalGravity().words().isEmpty());
    s.enter(s.originalGravity(), "1,051");
    AtBrew::type(&s.page().name(), "");
    s.page().record();
    CHECK(s.brews() == 0);
    CHECK_FALSE(s.page().words().isEmpty());
    AtBrew::type(&s.page().name(), "Spring brew");
    s.brewed("/mash/0/temperature_c", "30");
    s.page().record();
    CHECK(s.brews() == 0);
    s.brewed("/mash/0/temperature_c", "65");
    s.page().record();
    REQUIRE(s.brews() == 1);
    CHECK(s.last().originalGravity->sg == 1.051);
    CHECK(s.last().name == "Spring brew");
}

TEST_CASE("two brews of one name are refused at the name", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.page().record();
    s.page().list().setCurrentRow(0);
    AtBrew::type(&s.page().name(), "Brew 1");
    s.page().record();
    CHECK(s.brews() == 1);
    CHECK_FALSE(s.page().words().isEmpty());
}

TEST_CASE("a vessel without beer can still have a brew recorded", "[ui][brew][brewed]") {
    const AtBrewed s;
    s.workPage->showVessel("Bittern");
    INFO(s.page().meaning().words().toStdString());
    s.page().record();
    CHECK(s.brews() == 1);
    CHECK(s.last().vessel == "Bittern");
}

TEST_CASE("the drawing follows what was measured, the recipe does not", "[ui][brew][brewed]") {
    const AtBrewed s;
    const auto plan = [&]() -> const BrewPlan& { return s.page().model().draft()->plan; };
    const auto amounts = [&](FlowPage::Step step) { return amountsOf(s.page().flow().step(step)); };
    const BrewPlan planned = plan();
    const double kept = 1 - s.session->desk().kit().equipment.fermenterLoss.of1;
    s.enter(s.intoFermenter(), "60");
    CHECK(plan().intoFermenter.l == 60);
    CHECK(amounts(FlowPage::fermenter).contains(s.session->amount(Litres{60})));
    CHECK(amounts(FlowPage::fermenter).contains("as measured"));
    CHECK(amounts(FlowPage::wanted).contains("60"));
    CHECK(plan().preBoilHot < planned.preBoilHot);
    CHECK(plan().gristMass.kg == Approx(planned.gristMass.kg)); // the grain was weighed, however little came of it
    // Hand: what the fermenter and the transfer keep is gone, the rest is for the vessel.
    const double gives = 60 * kept - s.session->desk().kit().equipment.transferLoss.l;
    CHECK(plan().intoVessel.l == Approx(gives));
    CHECK(plan().leftOver.l == Approx(0).margin(1e-9));
    CHECK(amounts(FlowPage::vessel).contains(s.session->amount(Litres{gives})));
    s.enter(s.originalGravity(), "1.060");
    CHECK(amounts(FlowPage::wanted).contains("1.060"));
    CHECK(amounts(FlowPage::kettle).contains("1.060"));
    CHECK(plan().alcohol > planned.alcohol);
    s.enter(s.finalGravity(), "1.020");
    CHECK(amounts(FlowPage::vessel).contains("1.020"));
    CHECK(amounts(FlowPage::fermenter).contains("Ended at 1.020"));
    s.page().record();
    REQUIRE(s.brews() == 1);
    CHECK(withoutWeights(s.last().recipe) == s.recipe()); // what was measured is no recipe
}

TEST_CASE("a brew longer than wanted leaves the rest for top-ups", "[ui][brew][brewed]") {
    const AtBrewed s;
    const Litres wanted = s.page().model().draft()->plan.intoVessel;
    s.enter(s.intoFermenter(), "115");
    const BrewPlan& plan = s.page().model().draft()->plan;
    CHECK(plan.intoVessel == wanted);
    CHECK(plan.leftOver.l > 10);
    CHECK(amountsOf(s.page().flow().step(FlowPage::vessel)).contains(s.session->amount(plan.leftOver)));
}

TEST_CASE("taking a measure back brings the planned numbers back", "[ui][brew][brewed]") {
    const AtBrewed s;
    const QString before = amountsOf(s.page().flow().step(FlowPage::mash));
    s.enter(s.intoFermenter(), "60");
    CHECK(amountsOf(s.page().flow().step(FlowPage::mash)) != before);
    s.enter(s.intoFermenter(), "");
    CHECK(amountsOf(s.page().flow().step(FlowPage::mash)) == before);
}

TEST_CASE("an earlier brew is drawn as it was measured", "[ui][brew][brewed]") {
    const AtBrewed s;
    s.enter(s.intoFermenter(), "61");
    s.enter(s.finalGravity(), "1.013");
    s.page().record();
    s.page().list().setFocus();
    QTest::keyClick(&s.page().list(), Qt::Key_Up);
    CHECK_FALSE(amountsOf(s.page().flow().step(FlowPage::fermenter)).contains("measured"));
    QTest::keyClick(&s.page().list(), Qt::Key_Down);
    CHECK(s.page().model().draft()->plan.intoFermenter.l == 61);
    CHECK(amountsOf(s.page().flow().step(FlowPage::fermenter)).contains("Ended at 1.013"));
}

TEST_CASE("a measure nothing can be brewed with is recorded and not drawn", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    const QString before = amountsOf(s.page().flow().step(FlowPage::mash));
    s.enter(s.originalGravity(), "0.985");
    CHECK_FALSE(s.page().model().fault());
    CHECK(amountsOf(s.page().flow().step(FlowPage::mash)) == before);
    s.page().record();
    REQUIRE(s.brews() == 1);
    CHECK(s.last().originalGravity->sg == .985);
}

// --- the brew that waits

TEST_CASE("the page opens at the brew that waits, and its final gravity makes no second one", "[ui][brew][brewed]") {
    AtBrewed s;
    s.page().record();
    s.today += std::chrono::days{12};
    s.workPage->showVessel("Teal");
    s.workPage->showVessel("Heron");
    CHECK(s.page().name().text() == "Brew 1");
    CHECK(s.page().list().currentRow() == 1);
    CHECK(part<QPushButton>(s.page(), "Amend the brew").isEnabled());
    s.enter(s.finalGravity(), "1.011");
    s.page().record();
    REQUIRE(s.brews() == 1);
    CHECK(s.last().finalGravity->sg == 1.011);
}

TEST_CASE("a brew without final gravity waits also after it was poured; a finished one does not",
          "[ui][brew][brewed]") {
    AtBrewed s;
    s.page().record();
    REQUIRE(s.session->record({Fact{DrawOffFact{"Heron", testToday, Litres{40}, "", {}, ""}},
                               Fact{RefillFact{"Heron", testToday, Litres{40}, "Brew 1", "", {}, ""}}}));
    s.workPage->showVessel("Teal");
    s.workPage->showVessel("Heron");
    CHECK(s.page().name().text() == "Brew 1");
    s.enter(s.finalGravity(), "1.011");
    s.page().record();
    s.workPage->showVessel("Teal");
    s.workPage->showVessel("Heron");
    CHECK(s.page().name().text() == "Brew 2");
}

TEST_CASE("who asks for a new brew gets it, whatever waits", "[ui][brew][brewed]") {
    const AtBrewed s;
    s.page().record();
    s.page().list().setCurrentRow(0);
    REQUIRE(s.session->record(Fact{ReadingFact{"Heron", testToday, {{}, Ph{3.3}, {}, {}, {}}, ""}}));
    CHECK(s.page().name().text() == "Brew 2");
}

TEST_CASE("a brew recorded with its final gravity is not asked for it", "[ui][brew][brewed]") {
    const AtBrewed s;
    s.enter(s.originalGravity(), "1.048");
    s.enter(s.finalGravity(), "1.011");
    s.page().record();
    CHECK(s.page().words().contains("Draw & refill"));
    CHECK_FALSE(s.page().words().contains("final gravity"));
}

TEST_CASE("a half-typed brew stays while another vessel is in front", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.enter(s.originalGravity(), "1.047");
    s.brewed("/grist/0/mass_kg", "5.10");
    const auto typed = s.page().model().recipe();
    s.workPage->showVessel("Teal");
    CHECK(s.originalGravity().edit()->text().isEmpty());
    CHECK(s.session->unstored() == QStringList{"brew of Heron"});
    AtBrew::type(&s.page().note(), "of Teal");
    CHECK(s.session->unstored().size() == 2);
    s.workPage->showVessel("Heron");
    CHECK(s.originalGravity().stored() == 1.047);
    CHECK(s.page().model().recipe() == typed);
    s.session->storeAll();
    REQUIRE(s.brews() == 2);
    CHECK(s.session->unstored().isEmpty());
    CHECK(s.last().vessel == "Teal");
    CHECK(s.last().note == "of Teal");
}

TEST_CASE("an amendment half typed stays an amendment", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.page().record();
    s.enter(s.finalGravity(), "1.011");
    s.workPage->showVessel("Teal");
    s.workPage->showVessel("Heron");
    CHECK(s.finalGravity().stored() == 1.011);
    s.page().record();
    REQUIRE(s.brews() == 1);
    CHECK(s.last().finalGravity->sg == 1.011);
}

TEST_CASE("a brew taken out unlocks the plan, and comes back by undo", "[ui][brew][brewed]") {
    const AtBrewed s;
    CHECK_FALSE(part<QPushButton>(s.page(), "Take the brew out").isVisible());
    s.page().record();
    CHECK(s.session->desk().planned("Heron")->brewed);
    part<QPushButton>(s.page(), "Take the brew out").click();
    CHECK(s.brews() == 0);
    CHECK_FALSE(s.session->desk().planned("Heron")->brewed);
    s.session->undo();
    CHECK(s.brews() == 1);
}

TEST_CASE("a brew taken out while it is amended leaves nothing half done", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.page().record();
    s.enter(s.finalGravity(), "1.008");
    part<QPushButton>(s.page(), "Take the brew out").click();
    CHECK(s.brews() == 0);
    CHECK(s.session->unstored().isEmpty());
    CHECK(s.page().name().text() == "Brew 1"); // a new one, by the plan
    CHECK_FALSE(s.finalGravity().stored());
}

// --- kilograms

TEST_CASE("kilograms of one grain are nothing to the others", "[ui][brew][brewed]") {
    const AtBrewed s;
    const auto mass = [&](std::size_t i) { return s.page().model().recipe().grist[i].mass->kg; };
    const double wheat = mass(1);
    CHECK(mass(0) == Approx(s.page().model().draft()->plan.grist[0].mass.kg));
    s.brewed("/grist/0/mass_kg", "5.10");
    CHECK(mass(0) == 5.10);
    CHECK(mass(1) == wheat);
    s.enter(s.originalGravity(), "1.043");
    s.enter(s.intoFermenter(), "34");
    CHECK(mass(0) == 5.10);
    CHECK(mass(1) == wheat);
    s.brewed("/grist/1/mass_kg", "3.41");
    CHECK(mass(0) == 5.10);
    CHECK(amountsOf(s.page().flow().step(FlowPage::mash)).contains("8.51 kg"));
    s.page().record();
    CHECK(s.last().recipe.grist[0].mass == Kilograms{5.10});
    CHECK(s.last().recipe.grist[1].mass == Kilograms{3.41});
    CHECK(s.last().recipe.grist[0].share.of1 == Approx(5.10 / 8.51));
}

TEST_CASE("the efficiency of the day is said and given to the kit by name", "[ui][brew][brewed]") {
    const AtBrewed s;
    const auto& button = part<QPushButton>(s.page(), "use efficiency");
    CHECK(wordsOf(s.page(), "efficiency").isEmpty());
    s.brewed("/grist/0/mass_kg", "5.10");
    s.brewed("/grist/1/mass_kg", "3.41");
    s.enter(s.originalGravity(), "1.043");
    s.enter(s.intoFermenter(), "34");
    const auto day = s.session->desk().efficiency([&] {
        BrewFact made;
        made.vessel = "Heron";
        made.on = testToday;
        made.recipe = s.page().model().recipe();
        made.originalGravity = SpecificGravity{1.043};
        made.intoFermenter = Litres{34};
        return made;
    }());
    REQUIRE(day);
    REQUIRE(day->offer);
    CHECK(wordsOf(s.page(), "efficiency").startsWith(s.session->amount(day->won.efficiency)));
    REQUIRE(button.isVisible());
    CHECK(button.text() == QString("Use %1 for this kit").arg(s.session->amount(*day->offer)));
    const Share before = s.session->desk().kit().equipment.efficiency;
    const_cast<QPushButton&>(button).click();
    CHECK(s.session->desk().kit().equipment.efficiency == *day->offer);
    CHECK(qs(s.session->desk().undoText()).contains("efficiency of " + s.session->amount(*day->offer)));
    CHECK_FALSE(button.isVisible());
    CHECK(s.originalGravity().stored() == 1.043); // what is typed stays
    s.session->undo();
    CHECK(s.session->desk().kit().equipment.efficiency == before);
    CHECK(button.isVisible());
}

TEST_CASE("a grain whose kilograms are missing is gone to", "[ui][brew][brewed][bad]") {
    const AtBrewed s;
    s.brewed("/grist/1/mass_kg", "");
    s.page().record();
    CHECK(s.brews() == 0);
    CHECK(s.page().flow().fields().numberAt("/grist/1/mass_kg")->words().contains("kilograms"));
}

TEST_CASE("a vessel gets a kit of its own by name, the others keep theirs", "[ui][brew]") {
    const AtBrew s;
    KitEditor& kit = s.planPage().kit();
    kit.button().click();
    auto& own = part<QPushButton>(kit, "own kit");
    REQUIRE(own.isVisible());
    CHECK(own.text() == "A kit of its own for Heron");
    own.click();
    CHECK(s.session->desk().kit("Heron").vessel == "Heron");
    CHECK(kit.button().text() == "Kit: Heron kit, for Heron alone");
    CHECK_FALSE(own.isVisible());
    AtBrew::type(kit.form().number("mash_tun_l")->edit(), "34");
    CHECK(s.session->desk().kit("Heron").equipment.mashTun == Litres{34});
    CHECK(s.session->desk().kit().equipment.mashTun != Litres{34});
    const auto house = s.session->desk().kit().equipment;
    QLineEdit* tun = kit.form().number("mash_tun_l")->edit();
    AtBrew::type(tun, "x", false); // unusable, and left so
    s.workPage->showVessel("Teal");
    CHECK(own.isVisible());
    CHECK_FALSE(kit.button().text().contains("alone"));
    AtBrew::type(kit.form().number("mash_tun_l")->edit(), "77"); // of the kit that is told, not of Heron's
    CHECK(s.session->desk().kit("Heron").equipment.mashTun == Litres{34});
    CHECK(s.session->desk().kit().equipment.mashTun == Litres{77});
    CHECK(house.mashTun != Litres{77});
}

TEST_CASE("strike water above boiling is a fault at the water, with its remedy and no step", "[ui][brew][bad]") {
    const AtBrew s;
    REQUIRE(s.plan().mash.front().waterTemperature < Celsius{100});
    EquipmentFact kit = s.session->desk().kit();
    kit.equipment.tunWaterEquivalent = Kilograms{60};
    kit.equipment.grainTemperature = Celsius{2};
    REQUIRE(s.session->setToday(Fact{kit}, {}));
    REQUIRE(s.plan().cannot);
    const QString said = s.flow().step(FlowPage::water).fault().words();
    CHECK(said.contains("boils at 100"));
    CHECK(said.contains("infusion, decoction or direct heat"));
    CHECK_FALSE(
        amountsOf(s.flow().step(FlowPage::water)).contains(s.session->amount(s.plan().mash.front().waterTemperature)));
    s.workPage->showSheet();
    CHECK(s.workPage->sheet().words().contains("boils at 100"));
    s.workPage->showPlan();
    kit.equipment.tunWaterEquivalent = Kilograms{2};
    REQUIRE(s.session->setToday(Fact{kit}, {}));
    CHECK(s.flow().step(FlowPage::water).fault().words().isEmpty());
}
