// SPDX-License-Identifier: GPL-3.0-or-later
// What is half typed, pasted or no number at all: it stays where it was typed and never reaches the book.
#include "ui/bad_input_support.h"

#include <QClipboard>
#include <QSlider>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::facts;
using namespace staveline::ui;
using testing::SampleWindow;

namespace {

struct Place {
    const char* name;
    PageId workPage;
    QLineEdit* (*open)(const SampleWindow&);
};

const std::array places = {
    Place{"score", PageId::taste, [](const SampleWindow& w) { return w.scoreCell(); }},
    Place{"target", PageId::adjust, [](const SampleWindow& w) { return w.targetField(); }},
    Place{"lever", PageId::adjust, [](const SampleWindow& w) { return w.leverField(); }},
    Place{"recipe", PageId::brew, [](const SampleWindow& w) { return w.recipeField(); }},
    Place{"entry", PageId::drawRefill, [](const SampleWindow& w) { return w.entryField(); }},
};

constexpr const char* foreignReading = R"({"kind": "reading", "vessel": "Knot", "on": "2026-03-01", "ph": 3.4})";

/// Round all pages and back to the one the field is in.
void goRound(const SampleWindow& w, PageId home) {
    for (const PageId workPage : testing::allPages)
        w.go(workPage);
    w.go(home);
}

struct Pasted {
    QString text;
    std::optional<double> gravity; ///< what it is; none: not a gravity
};

QList<Pasted> pastes() {
    return {{"1,048", 1.048},
            {" 1.048\n", 1.048},
            {"1.048,5", {}},
            {"1 048", {}},
            {QString::fromUtf8("１０４８"), {}},
            {"1e3", {}},
            {"-", {}},
            {"-1.048", {}},
            {"NaN", {}},
            {QString(10000, '9'), {}},
            {QString(10000, QChar(0xe9)), {}}};
}

/// Ctrl+V into a field that is emptied first.
void paste(QLineEdit* edit, const QString& text) {
    QGuiApplication::clipboard()->setText(text);
    edit->setFocus();
    edit->selectAll();
    QTest::keyClick(edit, Qt::Key_Delete);
    QTest::keyClick(edit, Qt::Key_V, Qt::ControlModifier);
}

void expectFits(const SampleWindow& w) {
    CHECK(w.window->minimumSizeHint().width() <= 1280);
    CHECK(w.window->width() == 1280);
}

} // namespace

TEST_CASE("a half-typed number survives another program, undo and a walk through the pages", "[ui][badinput]") {
    for (const Place& place : places) {
        INFO(place.name);
        const SampleWindow w;
        const auto start = testing::fingerprint(w.desk());
        REQUIRE(w.window->session()->record(DipFact{"Plover", w.today, Litres{170}, ""}));
        QLineEdit* edit = place.open(w);
        w.put(edit, "1x");
        w.action("Undo").trigger();
        CHECK(edit->text() == "1x");
        CHECK(testing::fingerprint(w.desk()) == start);
        w.elsewhere(foreignReading);
        w.window->session()->poll();
        CHECK(w.desk().ledger("Knot")->lines.back().measured.ph == Ph{3.4});
        CHECK(edit->text() == "1x");
        const auto now = testing::fingerprint(w.desk());
        goRound(w, place.workPage);
        CHECK(edit->text() == "1x");
        w.elsewhere(R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-01", "ph": 3.3})");
        w.window->session()->poll();
        CHECK(edit->text() == "1x"); // the focus is elsewhere by now
        w.window->session()->undo();
        CHECK(testing::fingerprint(w.desk()) == now);
    }
}

TEST_CASE("a half-typed number does not follow to another vessel", "[ui][badinput]") {
    for (const Place& place : places) {
        INFO(place.name);
        const SampleWindow w;
        const auto start = testing::fingerprint(w.desk());
        QPointer<QLineEdit> edit = place.open(w);
        w.put(edit, "1x");
        w.cellar().showVessel("Knot");
        REQUIRE(w.cellar().vessel() != "Plover");
        CHECK((!edit || !edit->isVisible() || edit->text() != "1x"));
        w.cellar().showVessel("Plover");
        CHECK(testing::fingerprint(w.desk()) == start);
    }
}

TEST_CASE("a half-typed number is named as a slip where it stands", "[ui][badinput]") {
    for (const Place& place : places) {
        INFO(place.name);
        const SampleWindow w;
        QLineEdit* edit = place.open(w);
        w.put(edit, "1x");
        CHECK_FALSE(edit->accessibleDescription().isEmpty());
        CHECK(testing::shownWords(*w.window).contains("1x"));
        w.put(edit, "5");
        CHECK_FALSE(testing::shownWords(*w.window).contains("1x"));
    }
}

TEST_CASE("a pasted gravity in Draw & refill is read as meant or refused", "[ui][badinput]") {
    for (const auto& [text, gravity] : pastes()) {
        INFO(text.left(20).toStdString());
        const SampleWindow w;
        const auto start = testing::fingerprint(w.desk());
        QLineEdit* edit = w.entryField("gravity");
        paste(edit, text);
        NumberField* field = w.cellar().drawRefill().form().fields().number("gravity");
        CHECK(field->stored() == gravity);
        CHECK(field->words().isEmpty() == gravity.has_value());
        CHECK(field->words().size() < 300);
        expectFits(w);
        if (gravity)
            continue;
        w.put(w.cellar().drawRefill().form().fields().number("volume_l")->edit(), "40");
        w.cellar().drawRefill().form().record();
        CHECK(w.cellar().drawRefill().form().active()); // refused as a whole
        CHECK(testing::fingerprint(w.desk()) == start);
    }
}

TEST_CASE("a pasted gravity in Brew is read as meant or refused", "[ui][badinput]") {
    for (const auto& [text, gravity] : pastes()) {
        INFO(text.left(20).toStdString());
        const SampleWindow w;
        const auto start = testing::fingerprint(w.desk());
        QLineEdit* edit = w.recipeField("/original_gravity_p");
        paste(edit, text);
        QTest::keyClick(edit, Qt::Key_Tab);
        if (gravity) {
            // 1.048 is 11.9 °P in the common table (ASBC), from memory.
            CHECK(w.desk().planned("Plover")->setting.recipe.originalGravity.p == Approx(11.9).margin(.05));
            continue;
        }
        CHECK_FALSE(w.recipeNumber("/original_gravity_p").words().isEmpty());
        CHECK(w.recipeNumber("/original_gravity_p").words().size() < 300);
        CHECK(testing::fingerprint(w.desk()) == start);
        expectFits(w);
    }
}

TEST_CASE("an emptied number is asked for and changes nothing", "[ui][badinput]") {
    for (const Place& place : places) {
        if (place.workPage == PageId::taste)
            continue; // no score is a value of its own
        INFO(place.name);
        const SampleWindow w;
        const auto start = testing::fingerprint(w.desk());
        QLineEdit* edit = place.open(w);
        w.put(edit, "");
        QTest::keyClick(edit, Qt::Key_Tab);
        CHECK(testing::fingerprint(w.desk()) == start);
        CHECK(edit->text().isEmpty());
    }
}

TEST_CASE("ten thousand characters fit nowhere and break nothing", "[ui][badinput]") {
    for (const Place& place : places) {
        INFO(place.name);
        const SampleWindow w;
        const auto start = testing::fingerprint(w.desk());
        QLineEdit* edit = place.open(w);
        paste(edit, QString(10000, '8'));
        QTest::keyClick(edit, Qt::Key_Tab);
        CHECK(testing::fingerprint(w.desk()) == start);
        CHECK(testing::shownWords(*w.window).size() < 9000);
        expectFits(w);
    }
}
