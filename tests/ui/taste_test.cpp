// SPDX-License-Identifier: GPL-3.0-or-later
// The Taste page by keyboard: each score is in the book as soon as it is typed, and all of it can be taken back.
#include "ui/taste_support.h"

#include "support/full_disk.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"

#include <QAction>
#include <QClipboard>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::tasting;
using namespace staveline::ui;
using namespace staveline::testing;

TEST_CASE("the first score makes a sitting of today", "[taste]") {
    AtTaste s;
    CHECK(s.count() == 1);
    s.workPage->focusWork();
    CHECK(s.focus() == s.cell("AP4"));
    s.at("TA1");
    s.type("6");
    CHECK(s.count() == 1); // not before the brewer pauses or goes on
    s.key(Qt::Key_Tab);
    REQUIRE(s.count() == 2);
    CHECK(s.newest().on == s.today);
    CHECK(s.storedScore("TA1") == 6.0);
    CHECK(s.cell("TA1")->text() == "6.0");
    CHECK(s.session->desk().undoText() == "score for sourness at its peak, Heron");
}

TEST_CASE("Tab and Enter run down the cold column, then the cellar column", "[taste]") {
    AtTaste s;
    s.workPage->focusWork();
    s.type("1");
    s.key(Qt::Key_Tab);
    CHECK(s.focus() == s.cell("AR1"));
    s.type("2,5");
    s.key(Qt::Key_Return);
    CHECK(s.focus() == s.cell("AR2"));
    s.type("10");
    s.key(Qt::Key_Return, Qt::ShiftModifier);
    CHECK(s.focus() == s.cell("AR1"));
    s.at("MF3");
    s.key(Qt::Key_Tab);
    CHECK(s.focus() == s.cell("AR1", Glass::cellar));
    s.key(Qt::Key_Backtab, Qt::ShiftModifier);
    CHECK(s.focus() == s.cell("MF3"));
    s.key(Qt::Key_Return);
    CHECK(s.focus() == s.cell("AR1", Glass::cellar));
    CHECK(s.storedScore("AP4") == 1.0);
    CHECK(s.storedScore("AR1") == 2.5);
    CHECK(s.storedScore("AR2") == 10.0);
}

TEST_CASE("the sheet can be left by Tab after its last score, and by Enter", "[taste]") {
    AtTaste s;
    for (const Qt::Key key : {Qt::Key_Tab, Qt::Key_Return}) {
        s.at("MF3", Glass::cellar);
        s.key(key);
        CHECK(s.focus() == s.faults().header());
    }
}

TEST_CASE("a pause stores what is typed and one undo takes it back", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    QTest::qWait(750);
    CHECK(s.storedScore("TA1") == 6.0);
    s.type(".5");
    s.key(Qt::Key_Tab);
    CHECK(s.storedScore("TA1") == 6.5);
    s.session->undo();
    CHECK(s.count() == 1);
    CHECK(s.cell("TA1")->text().isEmpty());
    s.session->redo();
    CHECK(s.count() == 2);
    CHECK(s.cell("TA1")->text() == "6.5");
    CHECK(s.workPage->draft().id() == s.stored().front().id);
}

TEST_CASE("arrows step by a half and Delete clears", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.key(Qt::Key_Up); // starts in the middle
    CHECK(s.storedScore("TA1") == 5.0);
    s.key(Qt::Key_Up);
    CHECK(s.storedScore("TA1") == 5.5);
    s.key(Qt::Key_Down);
    s.key(Qt::Key_Down);
    CHECK(s.storedScore("TA1") == 4.5);
    s.type("9.5");
    s.key(Qt::Key_Up);
    s.key(Qt::Key_Up);
    CHECK(s.storedScore("TA1") == 10.0); // no further
    s.at("TA2");
    s.type("3");
    s.at("TA1");
    s.key(Qt::Key_Delete);
    CHECK_FALSE(s.storedScore("TA1"));
    CHECK(s.cell("TA1")->text().isEmpty());
    CHECK(s.storedScore("TA2") == 3.0);
}

TEST_CASE("Left and Right change between the glasses", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Right);
    CHECK(s.focus() == s.cell("TA1", Glass::cellar));
    s.type("7");
    s.key(Qt::Key_Left);
    CHECK(s.focus() == s.cell("TA1"));
    CHECK(s.storedScore("TA1", Glass::cellar) == 7.0);
    s.at("AP4");
    s.key(Qt::Key_Right); // tasted once
    CHECK(s.focus() == s.cell("AP4"));
}

TEST_CASE("the anchor in words follows what is typed", "[taste]") {
    AtTaste s;
    s.at("TA1");
    CHECK(wordsOf(s.workPage->sheet(), "anchor of TA1").isEmpty());
    s.type("5");
    CHECK(wordsOf(s.workPage->sheet(), "anchor of TA1") == "plainly sour, like a green apple");
    CHECK(s.cell("TA1")->accessibleDescription() == "plainly sour, like a green apple");
    s.key(Qt::Key_Backspace);
    s.type("9");
    CHECK(wordsOf(s.workPage->sheet(), "anchor of TA1") == "very sour, like a grapefruit – as sour as lemon juice");
}

TEST_CASE("a sitting emptied of its last score is gone, and undo brings it back", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    REQUIRE(s.count() == 2);
    s.at("TA1");
    s.key(Qt::Key_Delete);
    CHECK(s.count() == 1);
    s.session->undo();
    CHECK(s.count() == 2);
    CHECK(s.cell("TA1")->text() == "6.0");
    s.at("TA2");
    s.type("4");
    s.key(Qt::Key_Tab);
    CHECK(s.count() == 2); // the same sitting goes on
}

TEST_CASE("what can be no score is said beside it and stays as typed", "[taste][bad]") {
    AtTaste s;
    const auto revision = s.session->desk().revision();
    s.at("TA1");
    s.type("66");
    CHECK(s.workPage->sheet().faultWords("TA1").contains("Scores go from 0 to 10"));
    s.key(Qt::Key_Tab);
    CHECK(s.cell("TA1")->text() == "66");
    CHECK(s.session->desk().revision() == revision);
    s.type("6.3");
    CHECK(s.workPage->sheet().faultWords("TA2").contains("not a whole or half score"));
    s.type("x");
    CHECK_FALSE(s.workPage->sheet().faultWords("TA2").isEmpty());
    s.at("TA3");
    s.type("1,048");
    CHECK_FALSE(s.workPage->sheet().faultWords("TA3").isEmpty());
    s.at("TA4");
    s.type("4");
    s.key(Qt::Key_Tab);
    CHECK(s.newest().scores.size() == 1); // the good one is kept
    CHECK(s.cell("TA1")->text() == "66"); // and the slip is still there to be put right
    s.at("TA1");
    s.type("6");
    CHECK(s.workPage->sheet().faultWords("TA1").isEmpty());
    s.key(Qt::Key_Tab);
    CHECK(s.storedScore("TA1") == 6.0);
}

TEST_CASE("a slip over a stored score leaves the stored one", "[taste][bad]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    s.at("TA1");
    s.type("65");
    s.key(Qt::Key_Tab);
    s.type("5");
    s.key(Qt::Key_Tab);
    CHECK(s.storedScore("TA1") == 6.0);
    CHECK(s.cell("TA1")->text() == "65");
    s.at("TA1");
    s.key(Qt::Key_Z, Qt::ControlModifier); // takes the slip back in place
    CHECK(s.cell("TA1")->text() == "6.0");
}

TEST_CASE("the cell being typed keeps its text when the book changes", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    s.type("7");
    auto other = *Desk::open(s.book, [] { return testToday; });
    recordAll(*other, R"({"kind": "dip", "vessel": "Heron", "on": "2026-03-01", "volume_l": 201})");
    s.session->poll();
    CHECK(s.cell("TA2")->text() == "7");
    s.key(Qt::Key_Tab);
    CHECK(s.storedScore("TA2") == 7.0);
    CHECK(s.storedScore("TA1") == 6.0);
}

TEST_CASE("same again in two keys takes over what is not scored, as one edit", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("7");
    s.key(Qt::Key_Tab);
    s.type("=");
    CHECK(s.workPage->words().contains("6 of the scores of 5 Nov 2025"));
    CHECK(s.newest().scores.size() == 1); // the first key only says what would happen
    s.type("=");
    CHECK(s.storedScore("TA1") == 7.0);
    CHECK(s.storedScore("TA1", Glass::cellar) == 6.5);
    CHECK(s.storedScore("MF1", Glass::cellar) == 4.0);
    CHECK(s.session->desk().undoText() == "last scores copied, Heron");
    s.session->undo();
    CHECK(s.newest().scores.size() == 1);
    CHECK(s.cell("MF1")->text().isEmpty());
    s.type("==");
    s.type("=");
    CHECK(s.workPage->words().contains("Nothing is left"));
    s.at("TA2");
    s.type("=");
    s.at("TA3"); // another key in between: no longer offered
    s.type("=");
    CHECK(s.storedScore("TA2") == 5.5);
}

TEST_CASE("same again has nothing to give a taster who was not there", "[taste]") {
    AtTaste s;
    s.workPage->header().name().setFocus();
    s.workPage->header().name().selectAll();
    s.type("Wren");
    s.key(Qt::Key_Return);
    s.workPage->sameAgain();
    CHECK(s.workPage->words().contains("no earlier tasting"));
    CHECK(s.count() == 1);
}

TEST_CASE("several tasters score side by side", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    buttonIn(s.window, "Another taster")->click();
    CHECK(s.focus() == &s.workPage->header().name());
    s.type("Wren");
    s.key(Qt::Key_Return);
    CHECK(s.cell("TA1")->text().isEmpty());
    s.at("TA1");
    s.type("7.5");
    s.key(Qt::Key_Tab);
    CHECK(s.storedScore("TA1", Glass::cold, "Wren") == 7.5);
    CHECK(s.storedScore("TA1") == 6.0);
    CHECK(s.session->desk().undoText() == "Wren's score for sourness at its peak, Heron");
    s.workPage->showAllTasters(true);
    const TasterModel& model = s.workPage->grid().scores();
    REQUIRE(model.columnCount() == 6); // two glasses each, the mean, and how far apart they are
    const int row = 5;                 // sourness at its peak on the short sheet
    const auto head = [&](int column) { return model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString(); };
    CHECK(model.headerData(row, Qt::Vertical, Qt::DisplayRole).toString() == "sourness at its peak");
    CHECK(head(0) == "Rook\ncold");
    CHECK(head(1) == "\ncellar");
    CHECK(head(2) == "Wren\ncold");
    CHECK(model.index(row, 2).data().toString() == "7.5");
    CHECK(model.index(row, 3).data().toString().isEmpty());
    CHECK(model.index(row, 2).data(Qt::AccessibleTextRole).toString().contains("Wren, cold: 7.5"));
    CHECK(head(4) == "mean");
    CHECK(model.index(row, 4).data().toString() == "6.8"); // of 6.0 and 7.5, as shown
    CHECK(head(5) == "apart");
    CHECK(model.index(row, 5).data().toString() == "1.5");
    s.workPage->grid().setFocus();
    s.workPage->grid().setCurrentIndex(model.index(row, 0));
    s.key(Qt::Key_Return);
    CHECK(s.workPage->draft().taster() == "Rook");
    CHECK(s.focus() == s.cell("TA1", Glass::cellar)); // the first glass without a score
    CHECK(s.cell("TA1")->text() == "6.0");
}

TEST_CASE("renaming a taster renames the scores, and two cannot have one name", "[taste][bad]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    QLineEdit& name = s.workPage->header().name();
    const auto rename = [&](const char* to) {
        name.setFocus();
        name.selectAll();
        s.type(to);
        s.key(Qt::Key_Return);
    };
    rename("Raven");
    CHECK(s.storedScore("TA1", Glass::cold, "Raven") == 6.0);
    s.session->undo();
    CHECK(name.text() == "Rook");
    s.session->redo();
    buttonIn(s.window, "Another taster")->click();
    rename("Raven");
    CHECK(s.workPage->header().name().accessibleDescription().contains("another taster of that name"));
    CHECK(name.text() == "Raven"); // typed text stays
    rename("Wren");
    CHECK(s.workPage->header().name().accessibleDescription().isEmpty());
    CHECK(s.workPage->draft().tasters() == std::vector<std::string>{"Raven", "Wren"});
}

TEST_CASE("the taster's name is waiting from the last sitting", "[taste]") {
    AtTaste s;
    CHECK(s.workPage->header().name().text() == "Rook");
    AtTaste fresh(false);
    CHECK(fresh.workPage->header().name().text().isEmpty());
    CHECK(fresh.workPage->words().contains("Nothing is tasted here yet"));
    fresh.at("TA1");
    fresh.type("6");
    fresh.key(Qt::Key_Tab);
    CHECK(fresh.storedScore("TA1", Glass::cold, "") == 6.0); // alone, no name is needed
    CHECK(fresh.workPage->words().isEmpty());
}

TEST_CASE("faults are marked by keys and show their cause and usual action", "[taste]") {
    AtTaste s;
    FaultList& faults = s.faults();
    faults.header()->setFocus();
    s.key(Qt::Key_Space);
    CHECK(faults.button("acetic", 0)->isVisible());
    s.key(Qt::Key_Tab);
    CHECK(s.focus() == faults.button("acetic", 0));
    s.key(Qt::Key_Down);
    s.key(Qt::Key_Down);
    CHECK(s.focus() == faults.button("ropy", 0));
    s.key(Qt::Key_2);
    REQUIRE(s.count() == 2);
    CHECK(s.newest().faults == std::vector<FaultMark>{{"ropy", 2}});
    CHECK(faults.wordsOf("ropy").contains("slime of young Pediococcus"));
    CHECK(s.summary().faultWords().startsWith("First of all: ropy"));
    s.key(Qt::Key_Right);
    CHECK(s.newest().faults == std::vector<FaultMark>{{"ropy", 3}});
    faults.unfold(false);
    CHECK(faults.button("ropy", 3)->isVisible()); // what is marked stays in sight
    CHECK_FALSE(faults.button("acetic", 0)->isVisible());
    s.session->undo();
    CHECK_FALSE(s.newest().faults == std::vector<FaultMark>{{"ropy", 3}});
    faults.unfold(true);
    faults.button("ropy", 0)->click();
    CHECK(s.count() == 1); // nothing is left of the sitting
}

TEST_CASE("a note waits for the first score and is stored with it", "[taste]") {
    AtTaste s;
    s.workPage->note().setFocus();
    s.type("hazy, lively");
    s.at("TA1");
    CHECK(s.count() == 1);
    s.workPage->showVessel("Teal");
    s.workPage->showVessel("Heron");
    CHECK(s.workPage->note().toPlainText() == "hazy, lively"); // kept in hand
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    CHECK(s.newest().note == "hazy, lively");
    s.workPage->note().setFocus();
    s.workPage->note().moveCursor(QTextCursor::End);
    s.type(" still");
    QTest::qWait(750);
    CHECK(s.newest().note == "hazy, lively still");
    s.session->undo();
    CHECK(s.workPage->note().toPlainText() == "hazy, lively");
}

TEST_CASE("whether to draw is part of the sitting", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.drawIt().setFocus();
    s.key(Qt::Key_Down);
    CHECK(s.newest().drawIt == true);
    s.key(Qt::Key_Down);
    CHECK(s.newest().drawIt == false);
    s.session->undo();
    CHECK(s.drawIt().word() != "no");
}

TEST_CASE("the day can be set, but not into the future", "[taste][bad]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    DateField& date = s.workPage->header().date();
    date.edit()->setFocus();
    s.key(Qt::Key_Down);
    CHECK(s.newest().on == s.today - std::chrono::days{1});
    s.key(Qt::Key_PageUp);
    CHECK(date.words().contains("future"));
    CHECK(s.newest().on == s.today - std::chrono::days{1});
    s.key(Qt::Key_PageDown);
    CHECK(date.words().isEmpty());
    s.workPage->newSitting();
    date.edit()->setFocus();
    s.key(Qt::Key_Up);
    CHECK(date.words().contains("future")); // said before anything is scored
}

TEST_CASE("earlier sittings can be looked at and amended", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("7");
    s.key(Qt::Key_Tab);
    ChoiceField& choice = s.workPage->header().sittings();
    REQUIRE(choice.count() == 2);
    CHECK(choice.itemText(1) == "5 Nov 2025, Rook");
    choice.setFocus();
    s.key(Qt::Key_Down);
    CHECK(s.cell("TA1")->text() == "6.0");
    CHECK(s.workPage->note().toPlainText() == "Firm.");
    s.at("TA1");
    s.type("5");
    s.key(Qt::Key_Tab);
    CHECK(s.stored()[1].fact.sitting.scores[1].cold == 5.0);
    CHECK(s.storedScore("TA1") == 7.0);
    s.workPage->newSitting();
    CHECK(s.cell("TA1")->text().isEmpty());
    CHECK(choice.currentText() == "New tasting");
    CHECK(s.focus() == s.cell("AP4"));
}

TEST_CASE("a half-filled sitting of today goes on after a restart", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    TastePage again(*s.session, s.prompt);
    again.showVessel("Heron");
    again.show();
    CHECK(again.sheet().cell("TA1", Glass::cold)->text() == "6.0");
    CHECK(again.draft().id() == s.stored().front().id);
}

TEST_CASE("going to another vessel stores what is being typed", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.workPage->showVessel("Teal");
    CHECK(s.storedScore("TA1") == 6.0);
    CHECK(s.cell("TA1")->text().isEmpty());
    s.workPage->showVessel("Heron");
    CHECK(s.cell("TA1")->text() == "6.0");
}

TEST_CASE("the short sheet comes first; the long one shows where it is needed", "[taste]") {
    AtTaste s;
    CHECK(s.cell("TA1")->isVisible());
    CHECK_FALSE(s.cell("AR5")->isVisible());
    s.workPage->showLongSheet(true);
    CHECK(s.cell("AR5")->isVisible());
    s.at("AR5");
    s.type("3");
    s.key(Qt::Key_Tab);
    s.workPage->showLongSheet(false);
    CHECK(s.cell("AR5")->isVisible()); // no score is hidden
    s.workPage->newSitting();
    CHECK_FALSE(s.cell("AR5")->isVisible());
}

TEST_CASE("one temperature is enough when alone", "[taste]") {
    AtTaste s;
    ChoiceField& glasses = s.glasses();
    glasses.setFocus();
    s.key(Qt::Key_Down); // cold only
    CHECK_FALSE(s.cell("TA1", Glass::cellar)->isVisible());
    s.at("MF3");
    s.key(Qt::Key_Return);
    CHECK(s.focus() == s.faults().header());
    glasses.setFocus();
    s.key(Qt::Key_Down); // cellar only
    CHECK_FALSE(s.cell("TA1")->isVisible());
    CHECK(s.cell("AP4")->isVisible()); // tasted once, whatever the glass
    s.at("AP4");
    s.type("0");
    s.key(Qt::Key_Tab);
    CHECK(s.focus() == s.cell("AR1", Glass::cellar));
    s.workPage->openSitting(s.stored()[1].id);
    CHECK(s.cell("TA1")->isVisible()); // it was tasted at both
}

TEST_CASE("groups fold and are passed over", "[taste]") {
    AtTaste s;
    FoldButton* aroma = &part<FoldButton>(s.workPage->sheet(), "aroma");
    aroma->setFocus();
    s.key(Qt::Key_Space);
    CHECK_FALSE(s.cell("AR1")->isVisible());
    s.at("AP4");
    s.key(Qt::Key_Tab);
    CHECK(s.focus() == s.cell("TA1"));
    CHECK(aroma->text().contains("0 of 4"));
    s.workPage->sheet().focusLine("AR2");
    CHECK(s.focus() == s.cell("AR2")); // unfolded to go there
}

TEST_CASE("a sitting is removed without a question, and undo brings it back", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    s.workPage->note().setFocus();
    s.type("hazy");
    s.at("TA1");
    const auto id = s.workPage->draft().id();
    REQUIRE(id);
    s.workPage->removeSitting();
    CHECK(s.count() == 1);
    CHECK(s.cell("TA1")->text().isEmpty());
    CHECK(s.workPage->note().toPlainText().isEmpty());
    s.session->undo();
    CHECK(s.count() == 2);
    CHECK(s.cell("TA1")->text() == "6.0");
    CHECK(s.workPage->note().toPlainText() == "hazy");
    CHECK(s.workPage->draft().id() == id);
}

TEST_CASE("what is typed is stored when another page comes to the front", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.workPage->hide();
    CHECK(s.storedScore("TA1") == 6.0);
    s.session->undo();
    s.workPage->show();
    CHECK(s.cell("TA1")->text().isEmpty());
}

TEST_CASE("a page left open overnight begins the sitting on the day it is tasted", "[taste]") {
    AtTaste s;
    s.today += std::chrono::days{3};
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    CHECK(s.newest().on == s.today);
    CHECK(s.workPage->header().date().day() == s.today);
}

TEST_CASE("a click selects the score, so that the next number replaces it", "[taste]") {
    AtTaste s;
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    QTest::mouseClick(s.cell("TA1"), Qt::LeftButton);
    QTest::qWait(10);
    s.type("7");
    s.key(Qt::Key_Tab);
    CHECK(s.storedScore("TA1") == 7.0);
}

TEST_CASE("what is pasted is judged like what is typed", "[taste][bad]") {
    AtTaste s;
    const auto paste = [&](const char* words) {
        QApplication::clipboard()->setText(QString::fromLatin1(words));
        s.at("TA1");
        s.cell("TA1")->selectAll();
        s.cell("TA1")->paste();
    };
    paste("1,048");
    CHECK_FALSE(s.workPage->sheet().faultWords("TA1").isEmpty());
    paste("six");
    CHECK(s.workPage->sheet().faultWords("TA1").contains("Scores go from 0 to 10"));
    paste(" 6,5 ");
    CHECK(s.workPage->sheet().faultWords("TA1").isEmpty());
    s.key(Qt::Key_Tab);
    CHECK(s.storedScore("TA1") == 6.5);
    CHECK(s.cell("TA1")->text() == "6.5");
}

TEST_CASE("an undo key in a score stores what is typed and leaves the undoing to the window", "[taste]") {
    AtTaste s;
    QAction undo(&s.window);
    undo.setShortcut(QKeySequence::Undo);
    s.window.addAction(&undo);
    QObject::connect(&undo, &QAction::triggered, s.session.get(), [&] { s.session->undo(); });
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    s.type("7");
    s.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(s.cell("TA2")->text().isEmpty());
    CHECK(s.storedScore("TA1") == 6.0);
    s.workPage->note().setFocus();
    s.type("hazy");
    s.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(s.workPage->note().toPlainText().isEmpty());
    s.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(s.count() == 1);
}
