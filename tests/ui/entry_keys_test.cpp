// SPDX-License-Identifier: GPL-3.0-or-later
// Keys of the ledger act in the ledger, keys of the entries not while someone types, and an entry that is begun is not
// thrown away without a word.
#include "ui/support.h"

#include "ui/cellar/rail.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/draw_refill/vessel_panel.h"
#include "ui/taste/page.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"
#include "ui/window/status_line.h"

#include <QAction>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtLedger : WindowInScratch {
    AtLedger() {
        window->cellar()->showVessel("Heron");
        go(PageId::drawRefill);
        REQUIRE(table().hasFocus());
    }
    void ctrl(Qt::Key pressed) const { key(pressed, Qt::ControlModifier); }
    void go(PageId workPage) const { ctrl(static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(workPage))); }
    [[nodiscard]] DrawRefillPage& workPage() const { return window->cellar()->drawRefill(); }
    [[nodiscard]] LedgerTable& table() const { return workPage().table(); }
    [[nodiscard]] EntryForm& form() const { return workPage().form(); }
    [[nodiscard]] QLineEdit& volume() const { return *form().fields().number("volume_l")->edit(); }
    [[nodiscard]] std::string book_() const { return fingerprint(window->session()->desk()); }
    void press(const QString& words) const {
        for (QPushButton* button : window->findChildren<QPushButton*>())
            if (button->isVisible() && button->text() == words) {
                QTest::mouseClick(button, Qt::LeftButton);
                return;
            }
        FAIL("no button " << words.toStdString());
    }
    void beginDraw(const char* litres) const {
        ctrl(Qt::Key_D);
        REQUIRE(form().active());
        type(QString::fromLatin1(litres));
    }
};

const std::array entryKeys = {Qt::Key_D, Qt::Key_R, Qt::Key_T, Qt::Key_L, Qt::Key_I, Qt::Key_G, Qt::Key_H};

} // namespace

TEST_CASE("Ctrl+Backspace takes a word of what is typed and no entry", "[ui][keys][entry]") {
    const AtLedger w;
    w.table().selectRow(2);
    const auto before = w.book_();
    w.ctrl(Qt::Key_G);
    QLineEdit* note = w.form().fields().line("note");
    note->setFocus();
    w.type("good clean pellicle");
    w.ctrl(Qt::Key_Backspace);
    CHECK(note->text() == "good clean ");
    CHECK(w.book_() == before);
}

TEST_CASE("keys of the ledger do nothing at other pages and while typing", "[ui][keys][entry]") {
    const AtLedger w;
    w.table().selectRow(2);
    const auto before = w.book_();
    const auto pressAll = [&] {
        w.ctrl(Qt::Key_Backspace);
        w.key(Qt::Key_Delete);
        w.ctrl(Qt::Key_E);
        CHECK(w.book_() == before);
        CHECK_FALSE(w.form().active());
    };
    for (const PageId workPage : {PageId::taste, PageId::adjust, PageId::brew, PageId::history}) {
        CAPTURE(static_cast<int>(workPage));
        w.go(workPage);
        pressAll();
        for (const QAction* action : {&w.action("Amend the entry"), &w.action("Remove the entry")}) {
            CHECK_FALSE(action->isEnabled());
            CHECK(action->text().contains("select one in Draw && refill"));
        }
    }
    w.go(PageId::drawRefill);
    part<Rail>(*w.window->cellar()).setFocus();
    pressAll();
}

TEST_CASE("in the ledger Delete removes the entry and Ctrl+E amends it", "[ui][keys][entry]") {
    const AtLedger w;
    w.table().selectRow(2);
    const int rows = w.workPage().model().rowCount();
    CHECK(w.action("Remove the entry").isEnabled());
    w.key(Qt::Key_Delete);
    CHECK(w.workPage().model().rowCount() == rows - 1);
    w.ctrl(Qt::Key_Z);
    w.ctrl(Qt::Key_E);
    CHECK(w.form().active());
}

TEST_CASE("keys of the entries do nothing while someone types", "[ui][keys][entry]") {
    const AtLedger w;
    const auto expectNothing = [&](PageId workPage) {
        const auto before = w.book_();
        QWidget* field = w.focus();
        for (const Qt::Key pressed : entryKeys)
            w.ctrl(pressed);
        CHECK(w.focus() == field);
        CHECK(w.window->cellar()->workPage() == workPage);
        CHECK(w.book_() == before);
    };
    w.beginDraw("60");
    expectNothing(PageId::drawRefill);
    CHECK(w.volume().text() == "60");
    w.key(Qt::Key_Escape);
    w.go(PageId::taste);
    expectNothing(PageId::taste); // in a score
    w.window->cellar()->taste().note().setFocus();
    expectNothing(PageId::taste);
    w.go(PageId::history); // no field there
    w.ctrl(Qt::Key_D);
    CHECK(w.window->cellar()->workPage() == PageId::drawRefill);
    CHECK(w.form().active());
}

TEST_CASE("an entry that is begun is asked about before another takes its place", "[ui][keys][entry]") {
    const AtLedger w;
    w.beginDraw("60");
    w.press("Refill");
    REQUIRE(w.form().asking());
    CHECK(w.volume().text() == "60");
    w.key(Qt::Key_Return); // go on with it
    CHECK_FALSE(w.form().asking());
    CHECK(w.focus() == &w.volume());
    w.press("Refill");
    w.key(Qt::Key_Escape); // the same
    CHECK(w.form().active());
    CHECK(w.volume().text() == "60");
    w.table().setFocus();
    w.key(Qt::Key_Return); // amend what is selected
    CHECK(w.form().asking());
    w.press("Refill");
    w.press("Cancel and start: Refill");
    CHECK_FALSE(w.form().asking());
    CHECK(std::holds_alternative<RefillFact>(w.form().fields().fact()));
    CHECK(w.volume().text().isEmpty());
}

TEST_CASE("an entry nobody typed in gives way without a question", "[ui][keys][entry]") {
    const AtLedger w;
    w.ctrl(Qt::Key_D);
    w.press("Refill");
    CHECK_FALSE(w.form().asking());
    CHECK(std::holds_alternative<RefillFact>(w.form().fields().fact()));
}

TEST_CASE("an entry that is begun waits behind other pages and with its vessel", "[ui][keys][entry]") {
    const AtLedger w;
    w.beginDraw("6x"); // half typed, and no number
    w.go(PageId::history);
    w.go(PageId::drawRefill);
    CHECK(w.focus() == &w.volume());
    CHECK(w.volume().text() == "6x");
    w.ctrl(Qt::Key_PageDown);
    REQUIRE(w.window->cellar()->vessel() != "Heron");
    CHECK_FALSE(w.form().active());
    CHECK(w.window->status().words().contains("not stored yet: draw-off of Heron"));
    w.ctrl(Qt::Key_PageUp);
    REQUIRE(w.window->cellar()->vessel() == "Heron");
    CHECK(w.form().active());
    CHECK(w.volume().isVisible());
    CHECK(w.volume().text() == "6x");
    w.volume().setFocus();
    w.key(Qt::Key_Escape);
    CHECK(w.window->status().words().contains("all changes stored"));
}

TEST_CASE("two vessels may each have an entry begun", "[ui][keys][entry]") {
    const AtLedger w;
    w.beginDraw("60");
    w.window->cellar()->showVessel("Teal");
    w.table().setFocus();
    w.beginDraw("5");
    w.window->cellar()->showVessel("Heron");
    CHECK(w.volume().text() == "60");
    w.volume().setFocus();
    w.key(Qt::Key_Return);
    CHECK_FALSE(w.form().active());
    w.window->cellar()->showVessel("Teal");
    CHECK(w.volume().text() == "5");
    CHECK(wordsOf(w.workPage().panel(), "level").contains(QChar(0x2192)));
}
