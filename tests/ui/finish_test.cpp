// SPDX-License-Identifier: GPL-3.0-or-later
// Finish by real keys: what is asked of bottles and blends is answered as it is typed, and nothing is written.
#include "ui/support.h"

#include "ui/finish/answer_view.h"
#include "ui/finish/page.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"

#include <QLineEdit>
#include <QPushButton>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtFinish {
    WindowInScratch w{false};
    std::string before;

    explicit AtFinish(const char* vessel = "Plover") {
        REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
        w.cellar().showVessel(vessel);
        w.key(Qt::Key_5, Qt::ControlModifier);
        REQUIRE(w.cellar().workPage() == PageId::finish);
        before = fingerprint(w.desk());
    }
    void type(const char* field, const char* text) const {
        w.tabTo(field);
        w.key(Qt::Key_A, Qt::ControlModifier);
        w.type(text);
    }
    /// By its first letters, as a keyboard chooses.
    void choose(const char* field, const char* letters, const char* shown) const {
        w.tabTo(field);
        w.type(letters);
        CHECK(dynamic_cast<QComboBox&>(*w.focus()).currentText() == shown);
    }
    [[nodiscard]] NumberField& field(const char* name) const { return part<NumberField>(w.cellar().finish(), name); }
    [[nodiscard]] QString answer() const {
        w.cellar().finish().answerNow();
        return part<AnswerView>(w.cellar().finish()).words().join('\n');
    }
    [[nodiscard]] QString first() const { return answer().section('\n', 0, 0); }
};

} // namespace

TEST_CASE("bottles are asked about by keyboard, and the guard answers in words", "[ui][finish]") {
    const AtFinish at;
    CHECK(accessibleName(*at.w.focus()) == "Litres to pack in L");
    CHECK(at.first().startsWith("Enter the litres to pack"));
    at.w.type("60");
    CHECK(QTest::qWaitFor([&] { return at.first().startsWith("Refused"); }, 2000)); // no keystroke more
    CHECK(at.answer().contains("Nobody knows what this bottle holds."));
    at.choose("Make, not told", "thick", "thick bottle for cork and cage");
    const QString cleared = at.answer();
    INFO(cleared.toStdString());
    CHECK(cleared.startsWith("Cleared until "));
    CHECK(cleared.contains("g of sucrose"));
    CHECK(cleared.contains("Not proven to be done"));
    CHECK(cleared.contains("Weigh the sugar"));
    CHECK(cleared.contains("to spare"));
    at.type("Gravity measured today in SG", "1.010");
    CHECK(at.first().startsWith("Refused"));
    CHECK(fingerprint(at.w.desk()) == at.before);
}

TEST_CASE("volumes and weight of sugar are two ways to ask the same", "[ui][finish]") {
    const AtFinish at;
    at.w.type("60");
    (void)at.answer();
    CHECK(at.field("or weight of sugar").edit()->placeholderText() == "5.9"); // (2.5 - 1.0) * 1.977 / 0.514, rounded
    at.type("or weight of sugar in g/L", "7");
    CHECK_FALSE(at.field("Volumes of CO2").stored());
    CHECK(at.answer().contains("7.0 g/L of beer"));
    CHECK(at.field("Volumes of CO2").edit()->placeholderText() == "2.8");
    at.type("Volumes of CO2 in vol", "2.6");
    CHECK_FALSE(at.field("or weight of sugar").stored());
    CHECK(at.answer().contains("60.0 L to 2.6 vol"));
}

TEST_CASE("what cannot be packed is said beside its field", "[ui][finish][bad]") {
    const AtFinish at;
    const auto refuse = [&](const char* field, const char* text) {
        at.type(field, text);
        CHECK(at.answer() == "No answer yet: see the marked field.");
        const QString name = QString(field).section(" in ", 0, -2);
        const QString said = at.field((name.isEmpty() ? QString(field) : name).toUtf8().constData()).words();
        at.w.key(Qt::Key_A, Qt::ControlModifier);
        at.w.key(Qt::Key_Delete);
        return said;
    };
    CHECK(refuse("Litres to pack in L", "900").contains("900"));
    CHECK(refuse("Litres to pack in L", "-3").contains("-3"));
    at.type("Litres to pack in L", "60");
    CHECK(refuse("Gravity measured today in SG", "1.012").contains("still ferments"));
    CHECK(refuse("Rated by its maker for in bar", "20").contains("8.5"));
    CHECK(refuse("Size in mL", "9000").contains("6000"));
    CHECK_FALSE(refuse("or weight of sugar in g/L", "40").isEmpty());
    CHECK(at.answer() == "No answer yet: see the marked field."); // neither volumes nor weight is left
    CHECK(at.field("Volumes of CO2").words().contains("Give one of the two"));
    at.type("Volumes of CO2 in vol", "2.5");
    at.type("or pressure of its head in bar", "1");
    CHECK(at.answer() == "No answer yet: see the marked field.");
    CHECK(at.field("Beer under it at").words().contains("temperature"));
    at.type("Beer under it at in °C", "10");
    CHECK(at.first().startsWith("Refused")); // an answer again
}

TEST_CASE("beer of a keg asks for the pressure of its head", "[ui][finish]") {
    const AtFinish at("Dunlin");
    at.w.type("20");
    CHECK(at.answer() == "No answer yet: see the marked field.");
    CHECK(at.field("CO2 measured in the beer").words().contains("can hold pressure"));
}

TEST_CASE("a blend is asked about by keyboard and told in litres", "[ui][finish][blend]") {
    const AtFinish at;
    at.w.tabTo("Blend");
    at.w.key(Qt::Key_Space);
    CHECK(at.first().startsWith("Choose two to five sources"));
    at.choose("Source 2, no beer", "K", "Knot");
    at.type("Litres of 1 in L", "60");
    at.type("Litres of 2 in L", "20");
    at.type("TA in g/L", "6");
    const QString words = at.answer();
    INFO(words.toStdString());
    CHECK(words.contains("of Knot"));
    CHECK(words.contains("A litre to taste first"));
    CHECK(words.contains("6.0 g/L wanted"));
    CHECK(words.contains("Beers poured together may ferment again"));
    at.type("TA in g/L", "30");
    CHECK(at.first() == "The blend does not come to all that is aimed at.");
    CHECK(at.answer().contains("a source with more is missing"));
    at.type("Litres of 2 in L", "90000");
    CHECK(at.answer() == "No answer yet: see the marked field.");
    CHECK(at.field("Litres of 2").words().contains("Knot"));
    CHECK(fingerprint(at.w.desk()) == at.before);
}

TEST_CASE("what is asked stays with its vessel", "[ui][finish]") {
    const AtFinish at;
    at.w.type("60");
    at.w.key(Qt::Key_PageDown, Qt::ControlModifier);
    REQUIRE(at.w.cellar().vessel() != "Plover");
    CHECK_FALSE(at.field("Litres to pack").stored());
    at.w.key(Qt::Key_PageUp, Qt::ControlModifier);
    CHECK(at.field("Litres to pack").stored() == 60);
    CHECK(at.first().startsWith("Refused"));
}
