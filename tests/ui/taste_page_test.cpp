// SPDX-License-Identifier: GPL-3.0-or-later
// What stands beside the sheet: readings, verdicts, the blank sheet; books that refuse; a full table of tasters.
#include "ui/taste_support.h"

#include "support/full_disk.h"
#include "ui/audit.h"
#include "ui/print/page_view.h"
#include "ui/taste/blank_sheet.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"

#include <QAccessible>
#include <QDir>
#include <QElapsedTimer>
#include <QScrollBar>

#include <fstream>
#include <iostream>

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::sheet;
using namespace staveline::tasting;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

const char* const acidityLines[] = {"TA1", "TA2", "TA3", "AR4"};

void score(AtTaste& s, const char* code, const char* text, Glass glass = Glass::cold) {
    s.at(code, glass);
    s.type(text);
    s.key(Qt::Key_Tab);
}

SittingFact crowd(int tasters) {
    SittingFact fact{"Heron", {}};
    fact.sitting.on = testToday;
    for (int t = 0; t < tasters; ++t)
        for (const Attribute& attribute : builtInSheet().attributes) {
            const double value = (t * 7 + static_cast<int>(attribute.code.back())) % 21 * .5;
            fact.sitting.scores.push_back({"Taster " + std::to_string(t + 1), attribute.code, value,
                                           attribute.bothTemperatures ? std::optional(value) : std::nullopt});
        }
    return fact;
}

std::string contents(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

} // namespace

TEST_CASE("the reading of a dimension appears when enough of it is scored", "[taste]") {
    AtTaste s;
    SittingSummary& says = s.summary();
    const int wanted = s.session->desk().taste(s.workPage->draft().now())->wanted;
    CHECK(wanted >= 12);
    CHECK(wordsOf(says, "scored") == QString("Scored 0 of the %1 lines that count").arg(wanted));
    CHECK_FALSE(wordsOf(says, "Acidity").contains(QChar(0xb1)));
    for (const char* code : acidityLines)
        score(s, code, "6");
    CHECK(wordsOf(says, "scored") == QString("Scored 4 of the %1 lines that count").arg(wanted));
    CHECK(wordsOf(says, "Acidity").startsWith("6."));
    CHECK(wordsOf(says, "Acidity").contains(QChar(0xb1)));
    CHECK_FALSE(wordsOf(says, "Body").contains(QChar(0xb1)));
}

TEST_CASE("the reading follows each key before it is stored", "[taste]") {
    AtTaste s;
    for (const char* code : acidityLines)
        score(s, code, "6");
    const auto revision = s.session->desk().revision();
    const QString before = wordsOf(s.summary(), "Acidity");
    s.at("TA1");
    s.type("9");
    CHECK(s.session->desk().revision() == revision);
    CHECK(wordsOf(s.summary(), "Acidity") != before);
}

TEST_CASE("a line that is missing is one Enter away", "[taste]") {
    AtTaste s;
    for (const char* code : acidityLines)
        score(s, code, "6");
    MissingList& missing = s.summary().missing();
    QStringList names;
    for (int i = 0; i < missing.count(); ++i)
        names << missing.item(i)->text();
    CHECK(names.contains("fullness"));
    CHECK_FALSE(names.contains("sourness at its peak"));
    missing.setFocus();
    missing.setCurrentRow(static_cast<int>(names.indexOf("fullness")));
    s.key(Qt::Key_Return);
    CHECK(s.focus() == s.cell("MF1"));
    s.workPage->showAllTasters(true);
    missing.setFocus();
    s.key(Qt::Key_Return);
    CHECK(s.focus() == s.cell("MF1")); // back from the table
}

TEST_CASE("verdicts stand in words with their window", "[taste]") {
    AtTaste s;
    for (const char* code : acidityLines)
        for (const Glass glass : bothGlasses)
            score(s, code, "9", glass);
    const QString words = s.workPage->verdictWords();
    INFO(words.toStdString());
    const auto known = *s.session->desk().estimates("Heron");
    for (const Dimension d : allDimensions)
        CHECK(words.contains(s.session->words(known.verdicts[d].reason)));
    CHECK(words.contains(QString("Target 5.5 %1 1.0").arg(QChar(0xb1)).remove(" 1.0")));
    CHECK(words.contains("Target set on 5 Jan 2025"));
    CHECK_FALSE(words.contains("{"));
}

TEST_CASE("without a target it says so and where to set one", "[taste]") {
    AtTaste s(false);
    CHECK(s.workPage->verdictWords().contains("No target is set"));
    CHECK(s.workPage->verdictWords().contains("Adjust"));
}

TEST_CASE("a vessel that was never opened says what goes here and offers the first step", "[taste]") {
    AtTaste s;
    s.workPage->showVessel("Bittern");
    QPushButton* fill = buttonIn(s.window, "Record the first fill");
    REQUIRE(fill);
    CHECK_FALSE(s.cell("TA1")->isVisible());
    s.workPage->focusWork();
    CHECK(fill->hasFocus());
    QSignalSpy asked(s.workPage, &TastePage::firstEntryAsked);
    s.key(Qt::Key_Space);
    CHECK(asked.count() == 1);
    buttonIn(s.window, "Blank sheet")->click();
    CHECK(s.workPage->blankSheet().isVisible());
    QTest::keyClick(s.focus(), Qt::Key_Escape);
    CHECK(buttonIn(s.window, "Record a takeover"));
    s.workPage->showVessel("Heron");
    CHECK(s.cell("TA1")->isVisible());
}

TEST_CASE("a book for reading only shows its sittings and takes nothing", "[taste][bad]") {
    AtTaste s(true, book::OpenMode::readOnly);
    CHECK(s.cell("TA1")->text() == "6.0");
    CHECK(s.workPage->words().contains("reading only"));
    const auto revision = s.session->desk().revision();
    s.at("TA1");
    s.type("9==");
    s.key(Qt::Key_Delete);
    s.key(Qt::Key_Up);
    s.key(Qt::Key_Tab);
    CHECK(s.cell("TA1")->text() == "6.0");
    s.faults().unfold(true);
    CHECK_FALSE(s.faults().button("ropy", 2)->isEnabled());
    CHECK(s.workPage->note().isReadOnly());
    CHECK_FALSE(s.drawIt().isEnabled());
    s.workPage->sameAgain();
    s.workPage->newSitting();
    CHECK(s.workPage->draft().id());
    CHECK(s.session->desk().revision() == revision);
}

TEST_CASE("a full disk is said at the sheet, and what is typed is stored when there is room", "[taste][bad]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    {
        const FullDisk full(static_cast<rlim_t>(std::filesystem::file_size(s.book) / 4));
        s.key(Qt::Key_Tab);
        s.type("5");
        s.key(Qt::Key_Tab);
    }
    CHECK(s.count() == 1);
    CHECK_FALSE(s.workPage->words().isEmpty());
    CHECK(s.cell("TA1")->text() == "6.0");
    CHECK(s.cell("TA2")->text() == "5.0");
    s.type("4");
    s.key(Qt::Key_Tab);
    INFO(s.workPage->words().toStdString());
    REQUIRE(s.count() == 2);
    CHECK(s.storedScore("TA1") == 6.0);
    CHECK(s.storedScore("TA2") == 5.0);
    CHECK(s.storedScore("TA3") == 4.0);
    CHECK(s.workPage->words().isEmpty());
}

TEST_CASE("what a full disk refused is still in hand after a look elsewhere", "[taste][bad]") {
    AtTaste s;
    score(s, "TA1", "6");
    s.at("TA1");
    s.type("7");
    {
        const FullDisk full(static_cast<rlim_t>(std::filesystem::file_size(s.book) / 4));
        s.key(Qt::Key_Tab);
        s.workPage->showVessel("Teal");
    }
    s.workPage->showVessel("Heron");
    CHECK(s.cell("TA1")->text() == "7.0");
    CHECK(s.storedScore("TA1") == 6.0);
    score(s, "TA2", "5");
    CHECK(s.storedScore("TA1") == 7.0);
}

TEST_CASE("two hundred tasters stay usable", "[taste][bad]") {
    AtTaste s;
    REQUIRE(s.session->record(crowd(200)));
    REQUIRE(s.workPage->draft().id() == std::nullopt);
    s.workPage->openSitting(s.stored().front().id);
    CHECK(s.workPage->draft().tasters().size() == 200);
    CHECK(s.workPage->findChildren<QLineEdit*>().size() < 60); // cells for one taster only
    s.workPage->showAllTasters(true);
    CHECK(s.workPage->grid().scores().columnCount() == 2 * 200 + 2);
    s.workPage->grid().setFocus();
    s.key(Qt::Key_End, Qt::ControlModifier);
    s.key(Qt::Key_Left);
    s.key(Qt::Key_Left); // past what the whole table comes to
    s.key(Qt::Key_Return);
    CHECK(s.workPage->draft().taster() == "Taster 200");
    QElapsedTimer clock;
    clock.start();
    s.at("TA1");
    s.type("9.5");
    const auto typing = clock.restart();
    s.key(Qt::Key_Tab);
    std::cout << "200 tasters: 3 keys " << typing << " ms, storing a score " << clock.elapsed() << " ms\n";
    CHECK(s.storedScore("TA1", Glass::cold, "Taster 200") == 9.5);
    CHECK(s.workPage->width() <= s.window.width());
}

TEST_CASE("the blank sheet is seen as it prints, on either paper", "[taste]") {
    AtTaste s;
    buttonIn(s.window, "Blank sheet")->click();
    BlankSheet& blank = s.workPage->blankSheet();
    REQUIRE(blank.isVisible());
    const int shortPages = blank.pages().pages();
    CHECK(shortPages >= 1);
    part<ChoiceField>(blank, "Lines of the sheet").setFocus();
    s.key(Qt::Key_Down);
    CHECK(blank.pages().pages() >= shortPages);
    for (const PaperSize size : {PaperSize::a4, PaperSize::letter}) {
        blank.page().setPaper(size);
        CHECK(blank.page().paper() == size);
        const auto to = s.scratch / (size == PaperSize::a4 ? "a4.pdf" : "letter.pdf");
        s.prompt.answers = {to};
        buttonIn(s.window, "Save PDF")->click();
        CHECK(contents(to).starts_with("%PDF"));
        CHECK(contents(to).find(size == PaperSize::a4 ? "595" : "612") != std::string::npos);
    }
    CHECK(s.prompt.asked.back() == "Heron tasting sheet.pdf");
    s.prompt.answers = {s.scratch / "sheet.html"};
    buttonIn(s.window, "Save HTML")->click();
    CHECK(contents(s.scratch / "sheet.html").find("sourness at its peak") != std::string::npos);
    s.key(Qt::Key_Escape);
    CHECK_FALSE(blank.isVisible());
    CHECK(s.focus() == s.cell("AP4"));
}

TEST_CASE("a sheet that cannot be written is said, and a printer may be declined", "[taste][bad]") {
    AtTaste s;
    s.workPage->showBlankSheet(true);
    QSignalSpy failed(s.session.get(), &Session::failed);
    s.prompt.answers = {s.scratch / "nowhere" / "sheet.pdf"};
    s.workPage->blankSheet().page().printout().save(s.window, PaperFormat::pdf);
    CHECK(failed.count() == 1);
    s.workPage->blankSheet().page().printout().print(s.window);                  // declined
    s.workPage->blankSheet().page().printout().save(s.window, PaperFormat::pdf); // cancelled
    CHECK(failed.count() == 1);
}

TEST_CASE("a fault in the way is one answer, not one for each dimension", "[taste]") {
    AtTaste s;
    score(s, "TA1", "6");
    s.faults().unfold(true);
    s.faults().button("mousy", 3)->click();
    const QString words = s.workPage->verdictWords();
    INFO(words.toStdString());
    CHECK(words.count("mousy") == 1);
    CHECK(words.startsWith("Fault first"));
}

TEST_CASE("assistive technology hears the line, the glass, the score and its anchor", "[taste]") {
    AtTaste s;
    const auto told = [&](QWidget* widget, QAccessible::Text part) {
        return QAccessible::queryAccessibleInterface(widget)->text(part);
    };
    CHECK(told(s.cell("TA1", Glass::cellar), QAccessible::Name) == "sourness at its peak, cellar");
    CHECK(told(s.cell("TA1"), QAccessible::Description).startsWith("not scored; 0 not sour at all"));
    score(s, "TA1", "6");
    CHECK(told(s.cell("TA1"), QAccessible::Value) == "6.0");
    CHECK(told(s.cell("TA1"), QAccessible::Description).startsWith("plainly sour, like a green apple – "));
    s.faults().unfold(true);
    QAccessibleInterface* step = QAccessible::queryAccessibleInterface(s.faults().button("ropy", 2));
    CHECK(step->role() == QAccessible::RadioButton);
    CHECK(step->text(QAccessible::Name) == "ropy, oily: clear");
}

TEST_CASE("the wheel changes no choice while it scrolls the sheet", "[taste]") {
    AtTaste s;
    score(s, "TA1", "6");
    for (QWidget* over : {static_cast<QWidget*>(&s.drawIt()), static_cast<QWidget*>(&s.glasses()),
                          static_cast<QWidget*>(s.cell("TA1"))}) {
        QWheelEvent turn(QPointF(5, 5), over->mapToGlobal(QPointF(5, 5)), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                         Qt::NoScrollPhase, false);
        QApplication::sendEvent(over, &turn);
    }
    CHECK(s.drawIt().word() == "open");
    CHECK(s.glasses().word() == "both");
    CHECK(s.cell("TA1")->text() == "6.0");
}

TEST_CASE("the Taste page passes the audit in light and dark", "[taste][audit]") {
    for (const Appearance palette : {Appearance::light, Appearance::dark}) {
        install(*qApp, palette);
        AuditReport all;
        AtTaste s;
        const auto look = [&] {
            QTest::qWait(0); // the layout follows the words
            all.add(audit(s.window));
        };
        score(s, "TA1", "66");
        score(s, "TA2", "5");
        look();
        s.faults().unfold(true);
        s.faults().button("ropy", 2)->click();
        buttonIn(s.window, "Another taster")->click();
        s.workPage->showLongSheet(true);
        look();
        s.workPage->showAllTasters(true);
        look();
        s.workPage->showAllTasters(false);
        s.workPage->showBlankSheet(true);
        look();
        s.workPage->showBlankSheet(false);
        s.workPage->showVessel("Bittern");
        look();
        std::cout << all.summary().toStdString() << '\n';
        for (const QString& finding : all.findings)
            UNSCOPED_INFO(finding.toStdString());
        CHECK(all.findings.isEmpty());
    }
    install(*qApp, Appearance::light);
}

TEST_CASE("pictures of the Taste page", "[.][taste-shots]") {
    const QString folder = qEnvironmentVariable("STAVELINE_SHOTS");
    REQUIRE(QDir().mkpath(folder));
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        install(*qApp, look);
        AtTaste s;
        const QString end = look == Appearance::dark ? "-dark.png" : "-light.png";
        const auto take = [&](const char* name) {
            QTest::qWait(30);
            REQUIRE(s.window.grab().save(folder + "/taste-" + name + end));
        };
        s.workPage->focusWork();
        take("blank");
        for (const Glass glass : bothGlasses)
            for (const char* code : {"AP4", "AR1", "AR2", "AR3", "AR4", "TA1", "TA2", "TA3"})
                if (s.cell(code, glass))
                    score(s, code, code[1] == 'R' ? "3.5" : "6", glass);
        s.at("TA4");
        s.type("66");
        s.at("TA1");
        take("half");
        s.faults().unfold(true);
        s.faults().button("ropy", 2)->click();
        s.faults().button("ropy", 2)->setFocus();
        take("faults");
        s.faults().unfold(false);
        s.workPage->note().setFocus();
        take("note");
        buttonIn(s.window, "Another taster")->click();
        s.type("Wren");
        s.key(Qt::Key_Return);
        score(s, "TA1", "7");
        s.type("=");
        take("two");
        s.workPage->showAllTasters(true);
        take("grid");
        s.workPage->showAllTasters(false);
        s.workPage->showBlankSheet(true);
        take("paper");
        s.workPage->showVessel("Bittern");
        take("empty");
    }
    install(*qApp, Appearance::light);
}

TEST_CASE("before any vessel is shown nothing can be scored and nothing breaks", "[taste][bad]") {
    AtTaste made;
    TastePage workPage(*made.session, made.prompt);
    workPage.show();
    workPage.newSitting();
    workPage.sameAgain();
    workPage.removeSitting();
    CHECK_FALSE(workPage.draft().changed());
    CHECK(made.count() == 1);
}
