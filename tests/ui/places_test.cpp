// SPDX-License-Identifier: GPL-3.0-or-later
// Where a brewer was comes back after a restart: the open part of a page, and how wide its parts were made.
#include "ui/support.h"
#include "ui/widgets/panes.h"

#include "ui/brew/page.h"
#include "ui/brew/plan_page.h"
#include "ui/draw_refill/page.h"
#include "ui/history/copy_table.h"
#include "ui/history/page.h"
#include "ui/widgets/theme.h"
#include "ui/window/cellar_view.h"
#include "ui/window/help_panel.h"

#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

QSplitter& splitter(const WindowInScratch& w, const char* name) {
    auto* found = w.window->findChild<QSplitter*>(QString::fromLatin1(name));
    REQUIRE(found);
    return *found;
}
/// As if the program were ended and started again.
void restart(WindowInScratch& w) {
    w.window->close();
    w.open();
    w.window->start(std::nullopt);
    QTest::qWait(10);
}
void press(const WindowInScratch& w, const QString& words) {
    for (QPushButton* button : w.window->findChildren<QPushButton*>())
        if (button->isVisible() && button->text().startsWith(words)) {
            button->setFocus();
            QTest::keyClick(button, Qt::Key_Space);
            return;
        }
    FAIL("no button " << words.toStdString());
}
/// Moves the handle by the mouse.
void drag(QSplitter& on, int by) {
    QSplitterHandle* handle = on.handle(1);
    const QPoint at = handle->rect().center();
    QTest::mousePress(handle, Qt::LeftButton, Qt::NoModifier, at);
    QTest::mouseMove(handle, at + QPoint(by, 0));
    QTest::mouseRelease(handle, Qt::LeftButton, Qt::NoModifier, at + QPoint(by, 0));
}

} // namespace

TEST_CASE("the open page of Brew comes back after a restart", "[ui][session][places]") {
    for (const auto& [words, part] : {std::pair{"Brew sheet", BrewPage::Part::sheet},
                                      {"As brewed", BrewPage::Part::asBrewed},
                                      {"Plan", BrewPage::Part::plan}}) {
        CAPTURE(words);
        WindowInScratch w;
        w.key(Qt::Key_3, Qt::ControlModifier);
        press(w, words);
        restart(w);
        const BrewPage& brew = w.window->cellar()->brew();
        const PlanPage& plan = testing::part<PlanPage>(brew);
        CHECK(w.window->cellar()->workPage() == PageId::brew);
        CHECK(brew.part() == part);
        CHECK(brew.sheet().isVisible() == (part == BrewPage::Part::sheet));
        CHECK(brew.sheet().page().printButton().isEnabled() ==
              (part == BrewPage::Part::sheet)); // only what is seen is worked out
        CHECK(plan.isVisible() == (part == BrewPage::Part::plan));
        CHECK(plan.planned().has_value() == (part == BrewPage::Part::plan));
    }
}

TEST_CASE("a part that was open behind another page is there when its page is", "[ui][session][places]") {
    WindowInScratch w;
    w.key(Qt::Key_3, Qt::ControlModifier);
    press(w, "Brew sheet");
    w.key(Qt::Key_6, Qt::ControlModifier);
    w.key(Qt::Key_T); // the table
    w.key(Qt::Key_4, Qt::ControlModifier);
    restart(w);
    CHECK(w.window->cellar()->workPage() == PageId::drawRefill);
    w.key(Qt::Key_3, Qt::ControlModifier);
    CHECK(w.window->cellar()->brew().part() == BrewPage::Part::sheet);
    CHECK(w.window->cellar()->brewSheet().page().printButton().isEnabled());
    w.key(Qt::Key_6, Qt::ControlModifier);
    const HistoryPage& history = w.window->cellar()->history();
    CHECK(history.face() == HistoryPage::Face::table);
    CHECK(history.table().isVisible());
    CHECK(history.table().currentIndex().isValid()); // at the day of the cursor, as when it is opened
}

TEST_CASE("the open face of History comes back after a restart", "[ui][session][places]") {
    for (const auto& [key, face] :
         {std::pair{Qt::Key_T, HistoryPage::Face::table}, {Qt::Key_P, HistoryPage::Face::promises}}) {
        WindowInScratch w;
        w.key(Qt::Key_6, Qt::ControlModifier);
        w.key(key);
        restart(w);
        CHECK(w.window->cellar()->history().face() == face);
        CHECK(w.focus() != nullptr);
    }
}

TEST_CASE("the parts of a page stay as wide as they were made", "[ui][session][places]") {
    WindowInScratch w;
    w.window->cellar()->showVessel("Heron");
    w.key(Qt::Key_4, Qt::ControlModifier);
    QTest::qWait(10);
    const QList<int> before = splitter(w, "draw_refill").sizes();
    drag(splitter(w, "draw_refill"), -60);
    const QList<int> made = splitter(w, "draw_refill").sizes();
    REQUIRE(made.front() < before.front());
    restart(w);
    const QList<int> again = splitter(w, "draw_refill").sizes();
    REQUIRE(again.size() == made.size());
    for (int i = 0; i < made.size(); ++i)
        CHECK(std::abs(again[i] - made[i]) <= 4);
    // Another book in the same window, and back.
    w.window->closeBook();
    REQUIRE(w.window->openBook(w.book));
    w.window->cellar()->showPage(PageId::drawRefill);
    QTest::qWait(10);
    CHECK(std::abs(splitter(w, "draw_refill").sizes().front() - made.front()) <= 4);
}

TEST_CASE("the help stays as wide as it was made", "[ui][session][places]") {
    WindowInScratch w;
    w.key(Qt::Key_F1);
    QTest::qWait(10);
    drag(splitter(w, "help"), -80);
    const int made = w.help().width();
    w.window->remember();
    w.key(Qt::Key_Escape);
    restart(w); // closed meanwhile: what was known of it stays
    w.key(Qt::Key_F1);
    QTest::qWait(10);
    CHECK(std::abs(w.help().width() - made) <= 8);
}

TEST_CASE("sizes and pages that are damaged are as good as none", "[ui][session][places][bad]") {
    const QVariant stored = GENERATE(QVariant(QStringList{"-5", "300"}), QVariant(QStringList{"0", "0"}),
                                     QVariant(QStringList{"wide", "300"}), QVariant(QStringList{"300"}),
                                     QVariant(QStringList{"99999999", "1"}), QVariant("@ByteArray(\xff\x01)"),
                                     QVariant(QStringList{"1", "2", "3", "4", "5", "6", "7", "8", "9"}), QVariant(7.5));
    CAPTURE(stored.toString().toStdString());
    WindowInScratch w;
    w.window->cellar()->showPage(PageId::drawRefill);
    QTest::qWait(10);
    const QList<int> usual = splitter(w, "draw_refill").sizes();
    w.window->close();
    w.settings.setValue("split/draw_refill", stored);
    w.settings.setValue("split/", stored);
    w.settings.setValue("session/brew", "upside down");
    w.settings.setValue("session/history", 12);
    w.open();
    w.window->start(std::nullopt);
    QTest::qWait(10);
    CHECK(w.window->cellar()->brew().part() == BrewPage::Part::plan);
    CHECK(w.window->cellar()->history().face() == HistoryPage::Face::charts);
    for (int i = 0; i < usual.size(); ++i)
        CHECK(std::abs(splitter(w, "draw_refill").sizes()[i] - usual[i]) <= 4);
}

TEST_CASE("absurd sizes leave every part in sight", "[ui][session][places][bad]") {
    WindowInScratch w;
    w.window->close();
    w.settings.setValue("split/draw_refill", QStringList{"1", "90000"});
    w.open();
    w.window->start(std::nullopt);
    w.window->cellar()->showPage(PageId::drawRefill);
    QTest::qWait(10);
    for (const int size : splitter(w, "draw_refill").sizes())
        CHECK(size > 100);
}

TEST_CASE("splits and pages are kept with the other settings", "[ui][session][places]") {
    Scratch scratch;
    QSettings file(qs((scratch / "s.ini").string()), QSettings::IniFormat);
    WindowSettings settings;
    settings.brewPart = BrewPage::Part::asBrewed;
    settings.historyFace = HistoryPage::Face::promises;
    settings.splits = {{"draw_refill", {700, 300}}, {"help", {900, 250}}};
    save(settings, file);
    file.sync();
    QSettings again(qs((scratch / "s.ini").string()), QSettings::IniFormat);
    const WindowSettings loaded = load(again);
    CHECK(loaded.brewPart == settings.brewPart);
    CHECK(loaded.historyFace == settings.historyFace);
    CHECK(loaded.splits == settings.splits);
}

TEST_CASE("the answers of Taste are wide enough after a run that never showed them", "[ui][session][places]") {
    WindowInScratch w;
    w.key(Qt::Key_1, Qt::ControlModifier);
    QTest::qWait(10);
    const QList<int> usual = splitter(w, "taste").sizes();
    w.key(Qt::Key_4, Qt::ControlModifier);
    w.settings.remove("split/taste");
    w.window->close();
    w.settings.remove("split/taste");
    w.open();
    w.window->start(std::nullopt);
    w.window->close(); // Taste was never in front
    CHECK_FALSE(w.settings.contains("split/taste"));
    w.open();
    w.window->start(std::nullopt);
    w.key(Qt::Key_1, Qt::ControlModifier);
    QTest::qWait(10);
    CHECK(splitter(w, "taste").sizes() == usual);
}

TEST_CASE("widths nobody could read heal", "[ui][session][places][bad]") {
    const QStringList stored = GENERATE(QStringList{"48", "48"}, QStringList{"792", "79"}, QStringList{"90000", "1"});
    WindowInScratch w;
    w.key(Qt::Key_1, Qt::ControlModifier);
    QTest::qWait(10);
    const QList<int> usual = splitter(w, "taste").sizes();
    w.window->close();
    w.settings.setValue("split/taste", stored);
    w.open();
    w.window->start(std::nullopt);
    w.key(Qt::Key_1, Qt::ControlModifier);
    QTest::qWait(10);
    CHECK(splitter(w, "taste").sizes() == usual);
    restart(w);
    CHECK(w.settings.value("split/taste").toStringList() != stored);
}

TEST_CASE("no part can be dragged too narrow, and a double click brings the usual widths back", "[ui][places]") {
    WindowInScratch w;
    w.key(Qt::Key_1, Qt::ControlModifier);
    QTest::qWait(10);
    QSplitter& taste = splitter(w, "taste");
    const QList<int> usual = taste.sizes();
    drag(taste, 2000);
    CHECK(taste.sizes().back() >= lines(taste, 14));
    CHECK(taste.sizes() != usual);
    QTest::mouseDClick(taste.handle(1), Qt::LeftButton);
    CHECK(taste.sizes() == usual);
}

TEST_CASE("widths of one's own survive a narrow window", "[ui][places]") {
    QWidget host;
    auto* row = new QVBoxLayout(&host);
    row->setContentsMargins(0, 0, 0, 0);
    auto* inHost = new Panes(QStringLiteral("two"));
    row->addWidget(inHost);
    Panes& panes = *inHost;
    panes.addPane(new QWidget, 20, 12);
    panes.addPane(new QWidget, 10, 8);
    const auto widen = [&](int text) {
        host.resize(lines(panes, text), 300);
        QTest::qWait(10);
    };
    widen(40);
    host.show();
    QTest::qWait(10);
    drag(panes, -60);
    const QList<int> own = panes.sizes();
    widen(14);
    REQUIRE(panes.stacked());
    widen(40);
    REQUIRE_FALSE(panes.stacked());
    CHECK(panes.sizes() == own);
}

TEST_CASE("a window that is killed comes back where it was", "[ui][session][places]") {
    WindowInScratch w;
    w.key(Qt::Key_6, Qt::ControlModifier);
    CHECK(QTest::qWaitFor([&] { return w.settings.value("session/station").toString() == "history"; }, 5000));
    CHECK(w.settings.value("recent").toStringList() == QStringList{qs(w.book.string())});
}
