// SPDX-License-Identifier: GPL-3.0-or-later
// Grist and hops in the Brew page: shares that must add up, kilograms, names that are searched.
#include "ui/brew_support.h"

#include "ui/brew/boil_timeline.h"

#include <QCompleter>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

double sum(const std::vector<GristPart>& grist) {
    double all = 0;
    for (const GristPart& part : grist)
        all += part.share.of1;
    return all;
}
ChoiceField* grain(const AtBrew& s, int number) {
    return &part<ChoiceField>(s.grist(), QString("Grain %1").arg(number + 1));
}

} // namespace

TEST_CASE("shares that do not add up are said and not stored; one key gives the rest", "[ui][brew][grist]") {
    const AtBrew s;
    const auto before = s.revision();
    CHECK(s.grist().sum().words() == "adds up to 100 %");
    CHECK_FALSE(s.grist().sum().button().isEnabled());
    s.type("/grist/0/share", "70");
    CHECK(s.grist().sum().words().contains("5 % is missing"));
    CHECK(s.revision() == before);
    QTest::keyClick(s.field("/grist/1/share")->edit(), '=');
    CHECK(s.grist().sum().words() == "adds up to 100 %");
    CHECK(s.recipe().grist[0].share.of1 == Approx(.7));
    CHECK(s.recipe().grist[1].share.of1 == Approx(.3));
    CHECK(s.field("/grist/1/share")->edit()->text() == "30");
}

TEST_CASE("the button gives the rest to the grain visited last", "[ui][brew][grist]") {
    const AtBrew s;
    s.type("/grist/1/share", "35");
    CHECK(s.grist().sum().words().contains("10 % too much"));
    s.field("/grist/0/share")->edit()->setFocus();
    s.grist().sum().button().click();
    CHECK(s.recipe().grist[0].share.of1 == Approx(.65));
    CHECK(s.recipe().grist[1].share.of1 == Approx(.35));
}

TEST_CASE("grain is added, named and taken out", "[ui][brew][grist]") {
    const AtBrew s;
    const auto before = s.revision();
    s.grist().add();
    REQUIRE(grain(s, 2));
    CHECK(s.revision() == before); // it has no share yet
    CHECK_FALSE(s.field("/grist/2/share")->words().isEmpty());
    CHECK(s.window.focusWidget() == grain(s, 2));
    s.type("/grist/2/share", "10");
    QTest::keyClick(s.field("/grist/0/share")->edit(), '=');
    REQUIRE(s.recipe().grist.size() == 3);
    CHECK(sum(s.recipe().grist) == Approx(1));
    CHECK(s.recipe().grist[0].share.of1 == Approx(.65));
    s.grist().remove(1);
    s.grist().shareRest(-1);
    REQUIRE(s.recipe().grist.size() == 2);
    CHECK(s.recipe().grist[1].share.of1 == Approx(.35));
    CHECK(s.field("/grist/1/share")->stored() == Approx(.35));
}

TEST_CASE("grain is found by any part of its name", "[ui][brew][grist]") {
    const AtBrew s;
    ChoiceField* field = grain(s, 1);
    REQUIRE(field);
    CHECK(field->completer()->filterMode() == Qt::MatchContains);
    field->completer()->setCompletionPrefix("oats");
    CHECK(field->completer()->completionCount() == 2); // flaked and raw
    field->completer()->setCompletionPrefix("ked oats");
    CHECK(field->completer()->completionCount() == 1);
    AtBrew::type(field->lineEdit(), "FLAKED OATS");
    CHECK(s.recipe().grist[1].grain == "flaked_oats");
    CHECK(field->currentText() == "flaked oats");
}

TEST_CASE("a grain nobody knows stays as typed, with the nearest one offered", "[ui][brew][grist][bad]") {
    const AtBrew s;
    const auto before = s.revision();
    ChoiceField* field = grain(s, 0);
    AtBrew::type(field->lineEdit(), "pilsnr");
    CHECK(field->currentText() == "pilsnr");
    INFO(wordsOf(s.flow(), "/grist/0/grain").toStdString());
    CHECK(wordsOf(s.flow(), "/grist/0/grain").contains("pilsner"));
    CHECK(s.revision() == before);
    AtBrew::type(field->lineEdit(), "vienna malt");
    CHECK(wordsOf(s.flow(), "/grist/0/grain").isEmpty());
    CHECK(s.recipe().grist[0].grain == "vienna");
}

TEST_CASE("what is not at hand says so where it is chosen", "[ui][brew][grist]") {
    const AtBrew s;
    REQUIRE(s.session->record(Fact{AvailabilityFact{testToday, "rye_malt", false, std::nullopt}}));
    s.grist().showKilograms(true); // rows are made anew
    CHECK(grain(s, 0)->findText("rye malt (not at hand)") >= 0);
    CHECK(grain(s, 0)->findText("sucrose") < 0); // sugars go into the kettle
}

TEST_CASE("in kilograms what one grain takes the others give, and the plan weighs what was typed",
          "[ui][brew][grist]") {
    const AtBrew s;
    part<QPushButton>(s.grist(), "In kilograms").click();
    CHECK(part<QPushButton>(s.grist(), "In kilograms").isChecked());
    CHECK(s.field("/grist/0/share") == nullptr);
    NumberField* mass = s.field("/grist/1/mass");
    REQUIRE(mass);
    CHECK(mass->stored() == Approx(s.plan().grist[1].mass.kg));
    AtBrew::type(mass->edit(), "8");
    CHECK(sum(s.recipe().grist) == Approx(1));
    CHECK(s.plan().grist[1].mass.kg == Approx(8).epsilon(.002));
    CHECK(s.recipe().originalGravity.p == 12); // the gravity stays
    part<QPushButton>(s.grist(), "In kilograms").click();
    CHECK(s.field("/grist/1/share")->stored() == Approx(s.recipe().grist[1].share.of1));
}

TEST_CASE("more kilograms than the whole are refused", "[ui][brew][grist][bad]") {
    const AtBrew s;
    const auto before = s.revision();
    s.grist().showKilograms(true);
    s.type("/grist/0/mass", "500");
    CHECK(s.planPage().model().fault());
    CHECK(s.revision() == before);
    CHECK_FALSE(wordsOf(s.flow(), "/grist").isEmpty());
    CHECK(s.field("/grist/0/mass")->edit()->text() != "");
}

TEST_CASE("late grain without an earlier rest is refused beside the grist", "[ui][brew][grist][bad]") {
    const AtBrew s; // one rest
    const auto before = s.revision();
    part<QCheckBox>(s.flow(), "Grain 2 goes in at the last rest").click();
    CHECK(wordsOf(s.flow(), "/grist").contains("only one rest"));
    CHECK(s.revision() == before);
    part<MashEditor>(s.flow()).add();
    CHECK(s.recipe().grist[1].late);
    CHECK(s.recipe().mash.size() == 2);
}

TEST_CASE("hops nobody named are one addition; named ones say what they weigh", "[ui][brew][hops]") {
    const AtBrew s;
    CHECK(s.hops().words().contains("One addition"));
    s.hops().add();
    REQUIRE(s.recipe().hops.size() == 1);
    CHECK(s.recipe().hops[0].ofBitterness.of1 == 1);
    CHECK(s.recipe().hops[0].boiled.min == s.recipe().boil.min);
    CHECK(s.window.focusWidget() == &part<QLineEdit>(s.hops(), "Hops 1, name"));
    AtBrew::type(&part<QLineEdit>(s.hops(), "Hops 1, name"), "barn hops");
    s.type("/hops/0/alpha_share", "2.5");
    CHECK(s.recipe().hops[0].name == "barn hops");
    CHECK(s.recipe().hops[0].alpha.of1 == Approx(.025));
    CHECK(
        s.hops().timeline().accessibleDescription().contains("barn hops, " + s.session->amount(s.plan().hops[0].mass)));
}

TEST_CASE("parts of the bitterness add up like those of the grist", "[ui][brew][hops]") {
    const AtBrew s;
    s.hops().add();
    s.hops().add(); // brings nothing yet, which is allowed
    REQUIRE(s.field("/hops/1/bitterness_share"));
    s.type("/hops/1/bitterness_share", "40");
    CHECK(s.hops().sum().words().contains("40 % too much"));
    QTest::keyClick(s.field("/hops/0/bitterness_share")->edit(), '=');
    REQUIRE(s.recipe().hops.size() == 2);
    CHECK(s.recipe().hops[0].ofBitterness.of1 == Approx(.6));
    s.type("/hops/1/minutes", "90"); // longer than the boil
    CHECK_FALSE(s.field("/hops/1/minutes")->words().isEmpty());
    s.type("/hops/1/minutes", "15");
    s.hops().remove(0);
    CHECK(wordsOf(s.flow(), "/hops").contains("40 %"));
    s.hops().shareRest(0);
    REQUIRE(s.recipe().hops.size() == 1);
    CHECK(s.recipe().hops[0].boiled.min == 15);
    CHECK(s.recipe().hops[0].ofBitterness.of1 == Approx(1));
}
