// SPDX-License-Identifier: GPL-3.0-or-later
// Beside the sheet: every verdict in one sentence that says its window once, and the two sides of funk.
#include "ui/taste_support.h"

#include "tasting/funk_sides.h"
#include "ui/adjust/page.h"
#include "ui/adjust/verdict_column.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/present/score_words.h"

#include <QAccessible>
#include <QLabel>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

const QString plusMinus(QChar(0xb1));

void score(AtTaste& s, const char* code, const char* text, Glass glass = Glass::cold) {
    s.at(code, glass);
    s.type(text);
    s.key(Qt::Key_Tab);
}

EstimatesView known(const AtTaste& s) {
    return *s.session->desk().estimates("Heron");
}

/// The line of a dimension among the verdicts.
QString lineOf(const AtTaste& s, Dimension d) {
    for (const QString& line : s.workPage->verdictWords().split('\n'))
        if (line.startsWith(nameOf(d) + ":"))
            return line;
    return {};
}

/// Every line of the short sheet, some days ago: all dimensions are tasted.
void tasteAll(AtTaste& s) {
    SittingFact fact;
    fact.vessel = "Heron";
    fact.sitting.on = s.today - std::chrono::days{9};
    for (const Attribute& attribute : builtInSheet().attributes)
        if (attribute.dimension && attribute.shortSheet)
            fact.sitting.scores.push_back({"Rook", attribute.code, 5.0, 5.0});
    REQUIRE(s.session->record(Fact{fact}));
}

/// A target whose windows stand where `gap` wants them, that wide.
void want(AtTaste& s, double gap, double band) {
    Target target;
    const EstimatesView now = known(s);
    for (const Dimension d : allDimensions)
        target.windows[d] = {std::clamp(now.combined[d].mean + gap, 0.0, 10.0), band};
    REQUIRE(s.session->record(TargetFact{"Heron", s.today, target}));
}

QString windowOf(const AtTaste& s, Dimension d) {
    const TargetWindow window = (*s.session->desk().target("Heron"))->fact.target.windows[d];
    return scoreWords(window.wanted) + QLatin1Char(' ') + plusMinus + scoreWords(window.band);
}

} // namespace

TEST_CASE("a hold says its window once", "[taste]") {
    AtTaste s;
    tasteAll(s);
    want(s, 0, 4);
    for (const Dimension d : allDimensions) {
        REQUIRE(known(s).verdicts[d].kind == VerdictKind::hold);
        const QString line = lineOf(s, d);
        INFO(line.toStdString());
        CHECK(line.contains("On target"));
        CHECK(line.count(windowOf(s, d)) == 1);
        CHECK_FALSE(line.contains(" Target "));
    }
}

TEST_CASE("a score that is off says which way and then the window, once", "[taste]") {
    AtTaste s;
    want(s, -6, .25);
    int open = 0;
    for (const Dimension d : allDimensions) {
        const Verdict verdict = known(s).verdicts[d];
        const QString line = lineOf(s, d);
        INFO(line.toStdString());
        CHECK(line.contains(s.session->words(verdict.reason)));
        CHECK(line.count(windowOf(s, d)) == 1);
        open += verdict.kind == VerdictKind::open ? 1 : 0;
    }
    CHECK(open > 0);
}

TEST_CASE("what is near its window and not surely in it says so, and the window once", "[taste]") {
    AtTaste s;
    tasteAll(s);
    want(s, .2, .25);
    for (const Dimension d : allDimensions) {
        REQUIRE(known(s).verdicts[d].kind == VerdictKind::open);
        CHECK(lineOf(s, d).contains("not for sure"));
        CHECK(lineOf(s, d).count(windowOf(s, d)) == 1);
    }
}

TEST_CASE("a falling gravity is waited for, with a day", "[taste]") {
    AtTaste s;
    recordAll(*s.session, R"([
      {"kind": "reading", "vessel": "Heron", "on": "2026-02-05", "gravity_sg": 1.008},
      {"kind": "reading", "vessel": "Heron", "on": "2026-03-01", "gravity_sg": 1.004}])");
    for (const Dimension d : allDimensions) {
        const Verdict verdict = known(s).verdicts[d];
        REQUIRE(verdict.kind == VerdictKind::waitUntil);
        REQUIRE(verdict.until);
        const QString line = lineOf(s, d);
        INFO(line.toStdString());
        CHECK(line.contains("gravity is still falling"));
        CHECK(line.contains(dayWords(*verdict.until)));
        CHECK(line.count("Target ") == 1);
    }
    s.session->undo();
    CHECK_FALSE(s.workPage->verdictWords().contains("gravity is still falling"));
}

TEST_CASE("a fault in the way is said first in Taste and in Adjust, and undo takes it back by name", "[taste]") {
    AtTaste s;
    const QString before = s.workPage->verdictWords();
    score(s, "TA1", "6");
    s.faults().unfold(true);
    s.faults().button("ropy", 2)->setFocus();
    s.key(Qt::Key_3);
    CHECK(s.workPage->verdictWords().startsWith("Fault first: ropy"));
    CHECK(s.summary().faultWords().startsWith("First of all: ropy"));
    AdjustPage adjust(*s.session);
    adjust.showVessel("Heron");
    adjust.show();
    CHECK(part<VerdictPanel>(adjust).words().join(' ').contains("fault first"));
    CHECK(qs(s.session->desk().undoText()).contains("ropy"));
    s.session->undo();
    CHECK_FALSE(s.workPage->verdictWords().startsWith("Fault first"));
    s.session->undo();
    CHECK(s.workPage->verdictWords() == before);
    REQUIRE(QTest::qWaitFor([&] { return !adjust.busy(); }, 60000));
}

TEST_CASE("a fault that spoils a dimension takes its sides with it", "[taste]") {
    AtTaste s;
    for (const char* code : {"AR1", "AR2", "AR3", "TA4"})
        score(s, code, "4");
    REQUIRE_FALSE(s.summary().sidesWords().isEmpty());
    s.faults().unfold(true);
    s.faults().button("mouldy", 2)->click();
    CHECK(s.summary().sidesWords().isEmpty());
    CHECK_FALSE(wordsOf(s.summary(), "Funk").contains(plusMinus));
    s.faults().button("mouldy", 1)->click();
    CHECK_FALSE(s.summary().sidesWords().isEmpty());
}

TEST_CASE("spice and horse stand under funk as soon as their line is scored", "[taste]") {
    AtTaste s;
    SittingSummary& says = s.summary();
    CHECK(says.sidesWords().isEmpty());
    score(s, "TA4", "4");
    CHECK(says.sidesWords().isEmpty()); // of both and of neither
    score(s, "AR1", "5", Glass::cold);
    score(s, "AR1", "6", Glass::cellar);
    // By hand: .3 x 5 + .7 x 6, and 1.28 times the error of a single line, 1.219.
    CHECK(says.sidesWords() == "horse 5.7 " + plusMinus + "1.6");
    score(s, "AR2", "2", Glass::cold);
    score(s, "AR2", "2", Glass::cellar);
    CHECK(says.sidesWords() == "spice 2.0 " + plusMinus + "1.6, horse 5.7 " + plusMinus + "1.6");
    QLabel* shown = nullptr;
    for (QLabel* label : says.findChildren<QLabel*>())
        if (label->text() == says.sidesWords())
            shown = label;
    REQUIRE(shown);
    CHECK(shown->isVisible());
    CHECK(QAccessible::queryAccessibleInterface(shown)->text(QAccessible::Name) == says.sidesWords());
    s.at("AR2", Glass::cellar);
    s.key(Qt::Key_Delete);
    s.at("AR2", Glass::cold);
    s.key(Qt::Key_Delete);
    s.key(Qt::Key_Tab);
    CHECK(says.sidesWords().startsWith("horse"));
}

TEST_CASE("the sides follow each key before it is stored, and what is no score leaves them", "[taste][bad]") {
    AtTaste s;
    score(s, "AR1", "5");
    const QString before = s.summary().sidesWords();
    const auto revision = s.session->desk().revision();
    s.at("AR1");
    s.type("8");
    CHECK(s.summary().sidesWords() != before);
    CHECK(s.session->desk().revision() == revision);
    s.type("8"); // 88 is no score: what the book holds counts again
    CHECK(s.summary().sidesWords() == before);
}

TEST_CASE("several tasters narrow the sides", "[taste]") {
    AtTaste s;
    score(s, "AR1", "5", Glass::cold);
    score(s, "AR1", "5", Glass::cellar);
    const auto one = funkSides(s.workPage->draft().now().sitting, builtInSheet());
    buttonIn(s.window, "Another taster")->click();
    s.type("Wren");
    s.key(Qt::Key_Return);
    score(s, "AR1", "6", Glass::cold);
    score(s, "AR1", "6", Glass::cellar);
    const auto two = funkSides(s.newest(), builtInSheet());
    REQUIRE(two.horse);
    CHECK(two.horse->tasters == 2);
    CHECK(two.horse->mean == Approx(5.5));
    CHECK(two.horse->absoluteSe < one.horse->absoluteSe);
    CHECK(s.summary().sidesWords().startsWith("horse 5.5"));
}

TEST_CASE("Adjust shows the sides of the sitting its verdicts rest on, with its day", "[ui][adjust]") {
    AtTaste s;
    AdjustPage adjust(*s.session);
    adjust.resize(1000, 600);
    adjust.showVessel("Heron");
    adjust.show();
    const auto sides = [&](Dimension of = Dimension::funk) {
        return wordsOf(part<VerdictPanel>(adjust).column(of), "sides");
    };
    CHECK(sides().isEmpty()); // last autumn nobody scored them
    score(s, "AR1", "5", Glass::cold);
    score(s, "AR1", "6", Glass::cellar);
    score(s, "AR2", "2", Glass::cellar);
    CHECK(sides() == s.summary().sidesWords() + ", tasted 2 Mar 2026");
    CHECK(sides(Dimension::acidity).isEmpty());
    adjust.showVessel("Teal");
    CHECK(sides().isEmpty());
    adjust.showVessel("Heron");
    CHECK(sides().startsWith("spice"));
    while (s.session->desk().sittings("Heron")->size() > 1)
        s.session->undo();
    CHECK(sides().isEmpty());
    REQUIRE(QTest::qWaitFor([&] { return !adjust.busy(); }, 60000));
}

TEST_CASE("dimensions have the same names in Taste and Adjust", "[taste]") {
    AtTaste s;
    AdjustPage adjust(*s.session);
    adjust.showVessel("Heron");
    const QStringList verdicts = part<VerdictPanel>(adjust).words();
    QStringList shown;
    for (const QLabel* label : s.summary().findChildren<QLabel*>())
        shown << label->text();
    for (std::size_t i = 0; i < allDimensions.size(); ++i) {
        const QString name = nameOf(allDimensions[i]);
        CHECK(shown.contains(name));
        CHECK_FALSE(lineOf(s, allDimensions[i]).isEmpty());
        CHECK(verdicts[static_cast<qsizetype>(i)].startsWith(name + ":"));
    }
    REQUIRE(QTest::qWaitFor([&] { return !adjust.busy(); }, 60000));
}
