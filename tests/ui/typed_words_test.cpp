// SPDX-License-Identifier: GPL-3.0-or-later
// Words a brewer typed are shown as typed: an ampersand is no key, angle brackets are no markup, a long name breaks
// nothing. And sessions: what a start finds when the book, the vessel or the version is not what was left.
#include "quantity/words.h"
#include "ui/support.h"

#include "desk/ledger.h"
#include "facts/codec.h"
#include "ui/adjust/page.h"
#include "ui/cellar/rail.h"
#include "ui/cellar/start_page.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/window/cellar_view.h"
#include "ui/window/notice_bar.h"
#include "ui/window/status_line.h"
#include "ui/window/vessel_header.h"

#include <QAbstractButton>
#include <QAction>
#include <QLabel>
#include <QTextDocument>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

const char* const oddName = "Rye & Oak <b>II</b>";

/// A vessel, a lot, a note and a brew with what a markup reader or a menu would take for its own.
void addOddWords(Session& session) {
    recordAll(session, R"([
      {"kind": "vessel", "name": "Rye & Oak <b>II</b>", "capacity_l": 100, "note": "<i>left</i> of the door & dry"},
      {"kind": "opening", "vessel": "Rye & Oak <b>II</b>", "on": "2025-06-01", "volume_l": 90, "age_years": 1},
      {"kind": "brew", "name": "Brew <u>1</u> & a half", "vessel": "Rye & Oak <b>II</b>", "on": "2026-02-01",
       "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]},
      {"kind": "draw_off", "vessel": "Rye & Oak <b>II</b>", "on": "2026-02-20", "volume_l": 30,
       "lot": "Draw <s>1</s> & 2", "note": "a < b & c > d"}
    ])");
}

/// What a reader sees of a label: markup taken as markup.
QString seen(const QLabel& label) {
    const bool rich =
        label.textFormat() == Qt::RichText || (label.textFormat() == Qt::AutoText && Qt::mightBeRichText(label.text()));
    if (!rich)
        return label.text();
    QTextDocument document;
    document.setHtml(label.text());
    return document.toPlainText();
}

QStringList labelsSaying(QWidget& in, const QString& part) {
    QStringList found;
    for (const auto* label : in.findChildren<QLabel*>())
        if (seen(*label).contains(part))
            found << seen(*label);
    return found;
}

/// A menu or button text as it is read: "&&" is an ampersand, one alone marks a key.
QString read(QString text) {
    return text.replace("&&", QString(QChar(1))).remove('&').replace(QChar(1), "&");
}

struct OddWords : WindowInScratch {
    OddWords() {
        addOddWords(*window->session());
        window->session()->poll();
        window->cellar()->showVessel(oddName);
        REQUIRE(window->cellar()->vessel() == oddName);
    }
};

} // namespace

TEST_CASE("a vessel's name is shown as it was typed on every page", "[ui][words]") {
    OddWords w;
    CellarView& cellar = *w.window->cellar();
    CHECK(w.window->windowTitle().contains(oddName));
    CHECK_FALSE(labelsSaying(part<VesselHeader>(cellar), oddName).isEmpty());
    for (const PageId workPage :
         {PageId::taste, PageId::adjust, PageId::brew, PageId::history, PageId::finish, PageId::drawRefill}) {
        cellar.showPage(workPage);
        if (workPage == PageId::adjust)
            REQUIRE(QTest::qWaitFor([&] { return !cellar.adjust().busy(); }, 60000));
        for (const auto* label : w.window->findChildren<QLabel*>()) {
            if (!label->isVisible() || !label->text().contains("Oak"))
                continue;
            INFO(label->text().toStdString() << " is seen as " << seen(*label).toStdString());
            CHECK(seen(*label).contains(oddName));
        }
    }
    cellar.changeVessel();
    CHECK_FALSE(labelsSaying(*w.window, QString("Change ") + oddName).isEmpty());
}

TEST_CASE("lots, brews and notes stand in the ledger as they were typed", "[ui][words]") {
    OddWords w;
    w.window->cellar()->showPage(PageId::drawRefill);
    const LedgerModel& ledger = w.window->cellar()->drawRefill().model();
    CHECK(ledger.index(0, LedgerModel::entry).data().toString().contains("Draw <s>1</s> & 2"));
    CHECK(ledger.at(0)->note == "a < b & c > d");
    for (const auto* label : w.window->findChildren<QLabel*>())
        if (label->isVisible() && label->text().contains("b & c"))
            CHECK(seen(*label).contains("a < b & c > d"));
}

TEST_CASE("an ampersand in a name is no key of a menu or button", "[ui][words][keys]") {
    OddWords w;
    w.window->cellar()->changeVessel();
    w.key(Qt::Key_Escape);
    REQUIRE(w.window->session()->record(DipFact{oddName, w.today, Litres{55}, ""}));
    const QString undo = w.action("Undo").text();
    INFO(undo.toStdString());
    CHECK(read(undo).contains(oddName));
    CHECK(undo.startsWith("&Undo"));
    w.action("Undo").trigger();
    const QString redo = w.action("Redo").text();
    INFO(redo.toStdString());
    CHECK(read(redo).contains(oddName));
    for (const auto* button : w.window->findChildren<QAbstractButton*>())
        if (button->isVisible() && button->text().contains("Oak")) {
            INFO(button->text().toStdString());
            CHECK(read(button->text()).contains(oddName));
        }
    CHECK(w.window->status().words().contains(oddName));
}

TEST_CASE("a book named with an ampersand is found in the menu and on the first page", "[ui][words][start]") {
    WindowInScratch w;
    const auto odd = w.scratch / "salt & smoke.cellar";
    (void)*Desk::create(odd, [&w] { return w.today; });
    REQUIRE(w.window->openBook(odd));
    const auto inMenu = [&] {
        for (QAction* action : w.window->findChildren<QAction*>())
            if (read(action->text()).startsWith("salt & smoke.cellar ("))
                return true;
        return false;
    };
    CHECK(inMenu());
    w.window->closeBook();
    QAbstractButton* button = nullptr;
    for (auto* each : w.window->startPage().findChildren<QAbstractButton*>())
        if (read(each->text()) == "salt & smoke.cellar")
            button = each;
    REQUIRE(button);
    button->click();
    REQUIRE(w.window->session());
    CHECK(w.window->session()->desk().path() == odd);
}

TEST_CASE("the longest name there can be, in any script, fits into the window", "[ui][words]") {
    WindowInScratch w;
    const QSize before = w.window->minimumSizeHint();
    VesselFact fact;
    fact.name = toStd(QString("Ålesund大桶חבית").repeated(25).left(staveline::longestName));
    REQUIRE(w.window->session()->record(fact));
    w.window->cellar()->showVessel(fact.name);
    CHECK(w.window->cellar()->vessel() == fact.name);
    for (const PageId workPage :
         {PageId::taste, PageId::adjust, PageId::brew, PageId::history, PageId::finish, PageId::drawRefill})
        w.window->cellar()->showPage(workPage);
    QTest::qWait(10);
    CHECK(w.window->minimumSizeHint().width() <= std::max(before.width(), 1280));
    const auto* header = w.window->findChild<VesselHeader*>();
    REQUIRE(header);
    CHECK(header->minimumSizeHint().width() <= 1280);
}

// --- what a start finds

TEST_CASE("a last vessel renamed or retired since gives way to another", "[ui][session]") {
    WindowInScratch w;
    w.window->cellar()->showVessel("Teal");
    w.window->close();
    {
        auto desk = *Desk::open(w.book, [&w] { return w.today; });
        recordAll(*desk, R"({"kind": "vessel_edit", "vessel": "Teal", "name": "Garganey"})");
    }
    w.open();
    w.window->start(std::nullopt);
    REQUIRE(w.window->session());
    CHECK(w.window->session()->desk().vessel(w.window->cellar()->vessel()));
}

TEST_CASE("a last book that is gone leads to the first page, which still names it", "[ui][session][bad]") {
    WindowInScratch w;
    w.window->close();
    std::filesystem::rename(w.book, w.scratch / "moved.cellar");
    w.open();
    w.window->start(std::nullopt);
    CHECK_FALSE(w.window->session());
    QAbstractButton* recent = nullptr;
    for (auto* button : w.window->startPage().findChildren<QAbstractButton*>())
        if (button->text() == "heron.cellar")
            recent = button;
    REQUIRE(recent);
    recent->click();
    CHECK_FALSE(w.window->session());
    CHECK_FALSE(labelsSaying(w.window->startPage(), "heron.cellar").isEmpty());
}

TEST_CASE("a book named at the start that cannot be opened is said, and the last one is not opened instead",
          "[ui][session][bad]") {
    WindowInScratch w;
    w.window->close();
    w.open();
    w.window->start(w.scratch / "nowhere.cellar");
    CHECK_FALSE(w.window->session());
    CHECK_FALSE(labelsSaying(w.window->startPage(), "nowhere.cellar").isEmpty());
}

TEST_CASE("a book of a version to come is refused in words and left alone", "[ui][session][bad]") {
    WindowInScratch w(false);
    auto schema = cellarSchema();
    schema.major += 1;
    const auto path = w.scratch / "next.cellar";
    REQUIRE(book::Book::create(path, schema));
    const auto before = readAll(path);
    CHECK_FALSE(w.window->openBook(path));
    CHECK_FALSE(labelsSaying(w.window->startPage(), "Update Staveline").isEmpty());
    CHECK(readAll(path) == before);
    CHECK(w.window->settings().recent.isEmpty());
}

TEST_CASE("a book of a little later version opens for reading, and says which can write it", "[ui][session]") {
    WindowInScratch w(false);
    auto schema = cellarSchema();
    schema.minor += 1;
    const auto path = w.scratch / "later.cellar";
    REQUIRE(book::Book::create(path, schema));
    REQUIRE(w.window->openBook(path));
    CHECK(w.window->session()->desk().readOnly());
    CHECK(w.window->notices().words().contains("A newer Staveline can write it"));
    CHECK_FALSE(w.action("Add a vessel").isEnabled());
}
