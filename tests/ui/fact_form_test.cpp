// SPDX-License-Identifier: GPL-3.0-or-later
// Forms are made from the description of the facts; nothing that was recorded is changed by looking at it.
#include "ui/support.h"

#include "facts/fields.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

using namespace staveline;
using namespace staveline::culture;
using namespace staveline::facts;
using namespace staveline::ui;
using staveline::testing::day;

namespace {

std::vector<Fact> ledgerFacts() {
    Measured measured;
    measured.gravity = SpecificGravity{1.0034567};
    measured.ph = Ph{3.3123};
    measured.ta = GramsPerLitre{6.123};
    measured.temperature = Celsius{14.55};
    measured.bitterness = Ibu{7.7};
    return {
        OpeningFact{"Heron", day(2023, 2, 1), Litres{214.321}, 1.6, .45, 3.5, Days{240}, Share{.353}, measured, "n"},
        DrawOffFact{"Heron", day(2025, 7, 8), Litres{80.0625}, "Draw 3", measured, "Clear."},
        RefillFact{"Heron", day(2025, 7, 8), Litres{82}, "Brew 7", "", Days{16}, "x"},
        TopUpFact{"Heron", day(2025, 9, 8), Litres{3.2}, "", "Teal", std::nullopt, ""},
        SampleFact{"Heron", day(2025, 9, 9), Litres{.2}, measured, "cold"},
        DipFact{"Heron", day(2025, 9, 10), Litres{211.5}, "stick"},
        ReadingFact{"Heron", day(2025, 9, 11), measured, ""}};
}

FormContext context() {
    FormContext made;
    made.today = testing::testToday;
    made.vessels = {"Teal"};
    made.brews = {{"Brew 7", "Brew 7"}};
    return made;
}

} // namespace

TEST_CASE("values go out of a fact and back without a changed bit", "[ui][form]") {
    for (const Fact& fact : ledgerFacts()) {
        Fact copy = fact;
        put(copy, valuesOf(fact));
        CHECK(copy == fact);
    }
}

TEST_CASE("a form filled from a fact gives the same fact, in any units", "[ui][form]") {
    DisplayUnits foreign;
    foreign.volume = DisplayUnits::Volume::usGallon;
    foreign.temperature = DisplayUnits::Temperature::fahrenheit;
    foreign.gravity = DisplayUnits::Gravity::plato;
    for (const Fact& fact : ledgerFacts()) {
        FactForm form;
        form.build(fact, context());
        CHECK(form.fact() == fact);
        form.setUnits(foreign);
        CHECK(form.fact() == fact);
        CHECK(form.usable());
    }
}

TEST_CASE("every field of a ledger entry has a label and a name", "[ui][form][a11y]") {
    for (const Fact& fact : ledgerFacts()) {
        FactForm form;
        form.build(fact, context());
        form.show();
        for (const QLabel* label : form.findChildren<QLabel*>())
            CHECK_FALSE(label->text().startsWith("ui."));
        for (QWidget* widget : form.findChildren<QWidget*>())
            if (widget->focusPolicy() & Qt::TabFocus && !widget->focusProxy() && widget->isVisible()) {
                INFO(widget->metaObject()->className());
                CHECK_FALSE(testing::accessibleName(*widget).isEmpty());
            }
    }
}

TEST_CASE("fields carry the ranges and needs of the description", "[ui][form]") {
    const auto specs = fieldsOf(DrawOffFact{});
    REQUIRE(specs.size() == 10);
    CHECK(specs[0].name == "on");
    CHECK(specs[0].kind == FieldKind::day);
    CHECK(specs[2].name == "volume_l");
    CHECK(specs[2].required);
    CHECK(specs[2].high == maxLitres);
    CHECK(specs[2].unit == UnitKind::volume);
    const auto gravity = std::find_if(specs.begin(), specs.end(), [](const auto& s) { return s.name == "gravity"; });
    REQUIRE(gravity != specs.end());
    CHECK_FALSE(gravity->required);
    CHECK(fieldsOf(Fact(SittingFact{})).empty()); // has a sheet of its own
}

TEST_CASE("a fault finds its field by path", "[ui][form]") {
    CHECK(fieldAt("/volume_l") == "volume_l");
    CHECK(fieldAt("/gravity_sg") == "gravity");
    CHECK(fieldAt("/gravity_p") == "gravity");
    CHECK(fieldAt("") == "");
    FactForm form;
    form.build(DrawOffFact{}, context());
    CHECK(form.showFault({FaultKind::input, "/volume_l", say("ui.field.enter_volume"), {}}, false));
    CHECK(form.number("volume_l")->words() == "Enter the volume.");
    CHECK(form.showFault({FaultKind::input, "/on", say("ui.field.enter_volume"), {}}, false));
    CHECK_FALSE(form.showFault({FaultKind::input, "/elsewhere", say("ui.field.enter_volume"), {}}, false));
}

TEST_CASE("a needed field that is empty is said when one tries, not before", "[ui][form][bad]") {
    FactForm form;
    form.build(DrawOffFact{"Heron", testing::testToday, Litres{0}, "", {}, ""}, context());
    CHECK_FALSE(form.usable());
    CHECK(form.number("volume_l")->words().isEmpty());
    form.complain();
    CHECK_FALSE(form.number("volume_l")->words().isEmpty());
    CHECK_FALSE(form.number("ph")->fault());
}

TEST_CASE("clearing an optional number clears it in the fact", "[ui][form]") {
    FactForm form;
    form.build(ledgerFacts()[1], context());
    form.show();
    auto* edit = form.number("ph")->edit();
    edit->selectAll();
    QTest::keyClick(edit, Qt::Key_Delete);
    const auto fact = std::get<DrawOffFact>(form.fact());
    CHECK_FALSE(fact.measured.ph);
    CHECK(fact.measured.ta);
}

TEST_CASE("Tab runs through the fields in reading order, also after the form was made anew", "[ui][form][a11y]") {
    QWidget page;
    QVBoxLayout column(&page);
    auto* before = new QPushButton("before");
    auto* form = new FactForm;
    auto* after = new QPushButton("after");
    for (QWidget* widget : {static_cast<QWidget*>(before), static_cast<QWidget*>(form), static_cast<QWidget*>(after)})
        column.addWidget(widget);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    for (const Fact& fact : ledgerFacts()) {
        form->build(fact, context());
        before->setFocus();
        std::size_t fields = 0;
        int line = 0, across = 0;
        for (QTest::keyClick(page.focusWidget(), Qt::Key_Tab); page.focusWidget() != after && fields < 30; ++fields) {
            const QPoint at = page.focusWidget()->mapTo(&page, QPoint(0, 0));
            CHECK((at.y() > line || (at.y() == line && at.x() > across)));
            line = at.y();
            across = at.x();
            QTest::keyClick(page.focusWidget(), Qt::Key_Tab);
        }
        CHECK(fields == fieldsOf(fact).size());
    }
}

TEST_CASE("the focus begins at what is asked first, after the date", "[ui][form]") {
    FactForm form;
    form.build(ledgerFacts()[1], context());
    form.show();
    REQUIRE(QTest::qWaitForWindowActive(&form));
    form.focusFirst();
    CHECK(form.focusWidget() == form.number("volume_l")->edit());
}

TEST_CASE("a slip in a field that is not needed does not hide what the entry would do", "[ui][form]") {
    FactForm form;
    form.build(ledgerFacts()[1], context());
    form.show();
    auto* edit = form.number("gravity")->edit();
    edit->selectAll();
    QTest::keyClicks(edit, "1003");
    CHECK_FALSE(form.usable());
    CHECK(form.previewable());
    CHECK_FALSE(std::get<DrawOffFact>(form.fact()).measured.gravity);
    form.number("volume_l")->edit()->selectAll();
    QTest::keyClick(form.number("volume_l")->edit(), Qt::Key_Delete);
    CHECK_FALSE(form.previewable());
}

TEST_CASE("what another check found is taken back when the form is judged anew", "[ui][form]") {
    FactForm form;
    form.build(ledgerFacts()[1], context());
    REQUIRE(form.showFault({FaultKind::input, "/volume_l", say("ui.field.enter_volume"), {}}, false));
    REQUIRE(form.showFault({FaultKind::input, "/on", say("ui.field.enter_volume"), {}}, false));
    CHECK_FALSE(form.usable());
    form.recheck();
    CHECK(form.usable());
    CHECK(form.number("volume_l")->words().isEmpty());
    CHECK(form.date("on")->words().isEmpty());
    CHECK(form.fact() == ledgerFacts()[1]);
}

TEST_CASE("choices keep what is recorded, also when it is not offered", "[ui][form]") {
    FactForm form;
    RefillFact refill;
    refill.brew = "Brew 99";
    refill.volume = Litres{5};
    form.build(refill, context());
    CHECK(std::get<RefillFact>(form.fact()).brew == "Brew 99");
    form.choice("brew")->setWord("");
    form.choice("from")->setWord("Teal");
    CHECK(std::get<RefillFact>(form.fact()).from == "Teal");
    CHECK(std::get<RefillFact>(form.fact()).brew.empty());
}
