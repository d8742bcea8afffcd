// SPDX-License-Identifier: GPL-3.0-or-later
// What everyone expects of a program on a desktop: menus under the mouse, copying, finding, dropping a file, undo where
// one types, preferences in one place, and a window that comes back after it was killed.
#include "ui/support.h"

#include "ui/adjust/page.h"
#include "ui/adjust/proposal_list.h"
#include "ui/cellar/cellar_page.h"
#include "ui/cellar/overview_table.h"
#include "ui/cellar/rail.h"
#include "ui/cellar/start_choice.h"
#include "ui/cellar/start_page.h"
#include "ui/chart/chart_stack.h"
#include "ui/chart/event_timeline.h"
#include "ui/chart/panel_view.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/history/copy_table.h"
#include "ui/history/page.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/find_bar.h"
#include "ui/window/cellar_view.h"
#include "ui/window/help_panel.h"
#include "ui/window/help_search.h"
#include "ui/window/preferences.h"

#include <QAction>
#include <QClipboard>
#include <QComboBox>
#include <QDialog>
#include <QDropEvent>
#include <QGuiApplication>
#include <QHelpEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QToolTip>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtHeron : WindowInScratch {
    AtHeron() { window->cellar()->showVessel("Heron"); }
    void ctrl(Qt::Key pressed) const { key(pressed, Qt::ControlModifier); }
    [[nodiscard]] LedgerTable& ledger() const { return cellar().drawRefill().table(); }
};

QStringList menuOf(const QWidget& widget) {
    CHECK(widget.contextMenuPolicy() == Qt::ActionsContextMenu);
    QStringList words;
    for (const QAction* action : widget.actions())
        words << wordsOf(*action).section('\t', 0, 0).section(" (", 0, 0).section(": ", 0, 0);
    return words;
}
void trigger(const QWidget& widget, const QString& words) {
    for (QAction* action : widget.actions())
        if (wordsOf(*action).section('\t', 0, 0) == words) {
            action->trigger();
            return;
        }
    FAIL("no " << words.toStdString());
}
QString clipboard() {
    return QGuiApplication::clipboard()->text();
}
QString tipAt(QWidget& widget, const QPoint& at) {
    QToolTip::hideText();
    QHelpEvent help(QEvent::ToolTip, at, widget.mapToGlobal(at));
    QApplication::sendEvent(&widget, &help);
    return QToolTip::text();
}

} // namespace

// --- menus under the mouse, and copying ------------------------------------------------------------------------------

TEST_CASE("what can be done with a thing stands in its own menu", "[ui][habits]") {
    const AtHeron w;
    CHECK(menuOf(w.ledger()) ==
          QStringList{"Amend the entry", "Remove the entry", "Copy", "Copy the whole table", "Find", "Print"});
    CHECK(menuOf(part<Rail>(w.cellar())) ==
          QStringList{"Change the vessel", "Add a vessel", "New tasting", "Reading", "Draw-off", "Refill"});
    CHECK(menuOf(part<ProposalList>(w.cellar().adjust())) == QStringList{"Copy the proposal", "Adopt", "Brew sheet"});
    CHECK(menuOf(part<ChartStack>(w.cellar().history())) == QStringList{"Copy as a picture", "Save as a picture",
                                                                        "Save as a drawing", "Save the days as a table",
                                                                        "Find", "Print"});
    CHECK(menuOf(w.cellar().history().table()) ==
          QStringList{"Copy", "Copy the whole table", "Save the days as a table", "Find", "Print"});
}

TEST_CASE("the ledger is copied with its headings, an entry or the whole of it", "[ui][habits]") {
    const AtHeron w;
    w.ledger().selectRow(0);
    w.ledger().setFocus();
    w.ctrl(Qt::Key_C);
    QStringList copied = clipboard().split('\n');
    REQUIRE(copied.size() == 2);
    CHECK(copied[0] == "Date\tEntry\tLevel after\tMean age");
    CHECK(copied[1].startsWith("8 Jul 2025\t"));
    CHECK(copied[1].count('\t') == 3);
    trigger(w.ledger(), "Copy the whole table");
    copied = clipboard().split('\n');
    CHECK(copied.size() == 1 + w.cellar().drawRefill().model().rowCount());
}

TEST_CASE("a proposal and the charts are copied", "[ui][habits]") {
    const AtHeron w;
    w.cellar().showPage(PageId::adjust);
    REQUIRE(QTest::qWaitFor([&] { return !w.cellar().adjust().busy(); }, 20000));
    const auto& proposals = part<ProposalList>(w.cellar().adjust());
    REQUIRE(proposals.proposal(proposals.chosen()));
    trigger(proposals, "Copy the proposal");
    CHECK(clipboard().startsWith(w.window->session()->words(proposals.proposal(proposals.chosen())->title)));
    CHECK(clipboard().contains("Acidity at the next draw: "));
    w.cellar().showPage(PageId::history);
    trigger(part<ChartStack>(w.cellar().history()), "Copy as a picture");
    CHECK(QGuiApplication::clipboard()->image().width() > 400);
}

// --- find ------------------------------------------------------------------------------------------------------------

TEST_CASE("words are found in the ledger, also in its notes", "[ui][habits]") {
    const AtHeron w;
    FindBar& bar = part<FindBar>(w.cellar().drawRefill());
    CHECK_FALSE(bar.isVisible());
    w.ctrl(Qt::Key_F);
    REQUIRE(bar.isVisible());
    w.type("DRAWN");
    const int first = w.ledger().currentIndex().row();
    CHECK(bar.words() == "1 of 3");
    w.key(Qt::Key_Return);
    CHECK(bar.words() == "2 of 3");
    CHECK(w.ledger().currentIndex().row() > first);
    w.key(Qt::Key_F3);
    w.key(Qt::Key_F3);
    CHECK(bar.words() == "1 of 3"); // around the end
    w.key(Qt::Key_F3, Qt::ShiftModifier);
    CHECK(bar.words() == "3 of 3");
    w.ctrl(Qt::Key_A);
    w.type("barnyard");
    CHECK(bar.words() == "1 of 1");
    CHECK(w.cellar().drawRefill().model().at(w.ledger().currentIndex().row())->note.find("barnyard") !=
          std::string::npos);
    w.ctrl(Qt::Key_A);
    w.type("submarine");
    CHECK(bar.words() == "not found");
    w.ctrl(Qt::Key_A);
    w.type("drawn");
    REQUIRE(bar.words().endsWith(" of 3"));
    recordAll(*w.window->session(), R"({"kind": "draw_off", "vessel": "Heron", "on": "2026-03-01", "volume_l": 5})");
    CHECK(bar.words().endsWith("4")); // of the rows there are now
    w.ctrl(Qt::Key_A);
    w.key(Qt::Key_Delete); // no words find no row
    CHECK(bar.words().isEmpty());
    w.key(Qt::Key_Escape);
    CHECK_FALSE(bar.isVisible());
    CHECK(w.ledger().hasFocus());
}

TEST_CASE("finding in the history goes to its table", "[ui][habits]") {
    const AtHeron w;
    w.cellar().showPage(PageId::history);
    w.ctrl(Qt::Key_F);
    CHECK(w.cellar().history().face() == HistoryPage::Face::table);
    w.type("Jul 2025");
    CHECK(part<FindBar>(w.cellar().history()).words().endsWith(" of 2"));
    CHECK(w.cellar().history().table().currentIndex().siblingAtColumn(0).data().toString() == "8 Jul 2025");
    w.cellar().showPage(PageId::adjust);
    CHECK(wordsOf(w.action("Find")) == "Find (in Draw & refill and in History)");
    CHECK_FALSE(w.action("Find").isEnabled());
}

// --- tool tips -------------------------------------------------------------------------------------------------------

TEST_CASE("what is cut or only a mark says the rest as a tool tip", "[ui][habits]") {
    const AtHeron w;
    Rail& rail = part<Rail>(w.cellar());
    const QString tip = rail.model()->index(0, 0).data(Qt::ToolTipRole).toString();
    CHECK(tip.startsWith("Heron\n"));
    CHECK(tip.contains(" of 225.0 L"));
    w.cellar().showPage(PageId::history);
    QTest::qWait(20);
    PanelView* acid = nullptr;
    for (PanelView* panel : part<ChartStack>(w.cellar().history()).panels())
        if (!panel->panel().empty() && panel->isVisible()) {
            acid = panel;
            break;
        }
    REQUIRE(acid);
    const QRectF area = acid->frame().area;
    CHECK(tipAt(*acid, area.center().toPoint()).startsWith(acid->panel().title));
    EventTimeline& marks = part<EventTimeline>(w.cellar().history());
    bool told = false;
    for (int x = 0; x < marks.width() && !told; x += 3)
        told = tipAt(marks, {x, marks.height() / 2}).contains("2025: ");
    CHECK(told);
}

// --- books -----------------------------------------------------------------------------------------------------------

namespace {

void drop(QWidget& on, const QList<QUrl>& urls) {
    QMimeData dragged;
    dragged.setUrls(urls);
    const QPoint at(20, 20);
    QDragEnterEvent enter(at, Qt::CopyAction, &dragged, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&on, &enter);
    if (!enter.isAccepted())
        return;
    QDropEvent dropped(at, Qt::CopyAction, &dragged, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&on, &dropped);
    QTest::qWait(20);
}
QUrl urlOf(const std::filesystem::path& path) {
    return QUrl::fromLocalFile(qs(path.string()));
}

} // namespace

TEST_CASE("a book dropped on the window is opened", "[ui][habits]") {
    AtHeron w;
    const auto other = w.scratch / "other.cellar";
    {
        auto desk = *Desk::create(other, [&w] { return w.today; });
        recordAll(*desk, R"({"kind": "vessel", "name": "Avocet", "capacity_l": 30})");
    }
    writeAll(w.scratch / "notes.txt", "no book");
    drop(*w.window, {urlOf(w.scratch / "notes.txt")});
    drop(*w.window, {urlOf(other), urlOf(w.book)});
    CHECK(w.window->session()->desk().path() == w.book);
    w.ctrl(Qt::Key_D); // something is begun
    w.type("60");
    drop(*w.window, {urlOf(other)});
    CHECK(w.prompt.unstored.size() == 1);
    CHECK(w.window->session()->desk().path() == w.book); // the brewer stays
    w.prompt.leaving = Leaving::without;
    drop(*w.window, {urlOf(other)});
    CHECK(w.window->session()->desk().path() == other);
    w.window->closeBook();
    drop(*w.window, {urlOf(w.book)});
    REQUIRE(w.window->session());
    CHECK(w.window->session()->desk().path() == w.book);
}

TEST_CASE("recent books are told apart by their folder", "[ui][habits][start]") {
    const AtHeron w;
    const QString folder = qs(w.scratch.path().string());
    bool inMenu = false;
    for (const QAction* action : w.window->findChildren<QAction*>())
        inMenu |= action->text() == "heron.cellar (" + folder + ")";
    CHECK(inMenu);
    w.ctrl(Qt::Key_W);
    CHECK_FALSE(w.window->session());
    QStringList labels;
    for (const auto* label : w.window->startPage().findChildren<QLabel*>())
        labels << label->text();
    CHECK(labels.contains(folder));
}

TEST_CASE("the choices of the first page show all their words, however narrow", "[ui][start]") {
    WindowInScratch w(false);
    w.key(Qt::Key_F1);
    w.window->resize(w.window->minimumSizeHint().width(), 800);
    QTest::qWait(20);
    for (const auto* choice : w.window->startPage().findChildren<StartChoice*>()) {
        const int line = choice->fontMetrics().height();
        const QRect words = choice->fontMetrics().boundingRect(QRect(0, 0, choice->width() - 2 * line - 2, 10000),
                                                               Qt::TextWordWrap, choice->accessibleDescription());
        CAPTURE(choice->width(), words.height(), line);
        CHECK(choice->height() >= words.height() + 2 * line);
    }
}

TEST_CASE("a book asked for opens at its vessels, the most urgent in front", "[ui][start]") {
    WindowInScratch w(false);
    REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
    w.window->cellar()->showVessel("Knot");
    w.window->close();
    w.open();
    w.window->start(w.scratch / "sample.cellar");
    REQUIRE(w.window->session());
    CHECK(w.cellar().atAll());
    REQUIRE(QTest::qWaitFor([&] { return w.cellar().all().model().isWorkedOut(); }, 30000));
    const auto first = w.cellar().all().table().model()->index(0, OverviewModel::name);
    CHECK(first.data().toString() == "Plover"); // to be tasted in three days
    w.cellar().all().table().setCurrentIndex(first);
    w.key(Qt::Key_Return);
    CHECK(w.cellar().vessel() == "Plover");
    CHECK(w.cellar().workPage() == PageId::taste);
}

TEST_CASE("a book of one vessel opens where its work is due", "[ui][start]") {
    WindowInScratch w(false);
    REQUIRE(w.window->newBook(w.scratch / "one.cellar"));
    recordAll(*w.window->session(), R"([{"kind": "vessel", "name": "Wren", "capacity_l": 225},
      {"kind": "opening", "vessel": "Wren", "on": "2025-08-01", "volume_l": 220}])");
    w.window->close();
    w.open();
    w.window->start(w.scratch / "one.cellar");
    CHECK_FALSE(w.cellar().atAll());
    CHECK(w.cellar().vessel() == "Wren");
    CHECK(w.cellar().workPage() == PageId::taste);
}

TEST_CASE("what the window remembers is stored before it is closed", "[ui][session]") {
    AtHeron w;
    w.window->cellar()->showVessel("Teal");
    w.window->cellar()->showPage(PageId::history);
    w.window->setPaper(PaperSize::letter);
    const auto stored = [&] { return load(QSettings(qs((w.scratch / "window.ini").string()), QSettings::IniFormat)); };
    CHECK(QTest::qWaitFor([&] { return stored().lastVessel == "Teal"; }, 6000));
    CHECK(stored().lastBook == qs(w.book.string()));
    CHECK(stored().lastPage == PageId::history);
    CHECK(stored().paper == PaperSize::letter);
    CHECK(stored().recent == QStringList{qs(w.book.string())});
    w.window->setAppearance(Appearance::dark); // alone, too
    CHECK(QTest::qWaitFor([&] { return stored().appearance == Appearance::dark; }, 6000));
    w.window->setAppearance(Appearance::system);
}

// --- undo ------------------------------------------------------------------------------------------------------------

TEST_CASE("Ctrl+Z takes back typing first, then what is in the book; Ctrl+Y brings it again", "[ui][habits]") {
    const AtHeron w;
    const auto before = fingerprint(w.window->session()->desk());
    REQUIRE(w.window->session()->record(DipFact{"Heron", w.today, Litres{200}, ""}));
    const auto dipped = fingerprint(w.window->session()->desk());
    w.ctrl(Qt::Key_G);
    QLineEdit* note = w.cellar().drawRefill().form().fields().line("note");
    note->setFocus();
    w.type("cloudy");
    w.ctrl(Qt::Key_Z);
    CHECK(note->text().isEmpty());
    CHECK(fingerprint(w.window->session()->desk()) == dipped);
    w.ctrl(Qt::Key_Z); // nothing typed is left
    CHECK(fingerprint(w.window->session()->desk()) == before);
    w.key(Qt::Key_Escape);
    w.ctrl(Qt::Key_Y);
    CHECK(fingerprint(w.window->session()->desk()) == dipped);
}

TEST_CASE("undo goes to the vessel it acts on", "[ui][habits]") {
    const AtHeron w;
    REQUIRE(w.window->session()->record(DipFact{"Heron", w.today, Litres{200}, ""}));
    w.cellar().showVessel("Teal");
    w.ctrl(Qt::Key_Z);
    CHECK(w.cellar().vessel() == "Heron");
    w.cellar().showVessel("Teal");
    w.ctrl(Qt::Key_Y);
    CHECK(w.cellar().vessel() == "Heron");
}

TEST_CASE("the next entry of a vessel starts at the day typed last", "[ui][habits]") {
    const AtHeron w;
    const EntryForm& form = w.cellar().drawRefill().form();
    const auto dayShown = [&] { return part<DateField>(form).day(); };
    const auto dip = [&](const QString& date) {
        w.ctrl(Qt::Key_I);
        w.type("200");
        if (!date.isEmpty()) {
            w.tabTo("Date, year-month-day");
            w.ctrl(Qt::Key_A);
            w.type(date);
        }
        w.key(Qt::Key_Return);
        REQUIRE_FALSE(form.active());
    };
    dip("2025-12-24");
    w.ctrl(Qt::Key_G);
    CHECK(dayShown() == day(2025, 12, 24));
    w.key(Qt::Key_Escape);
    w.cellar().showVessel("Teal");
    w.ctrl(Qt::Key_G);
    CHECK(dayShown() == w.today); // another notebook
    w.key(Qt::Key_Escape);
    w.cellar().showVessel("Heron");
    dip("2026-03-02"); // today
    w.ctrl(Qt::Key_G);
    CHECK(dayShown() == w.today);
}

// --- preferences, help -----------------------------------------------------------------------------------------------

TEST_CASE("preferences hold at once, and the menus show them", "[ui][habits]") {
    const AtHeron w;
    w.ctrl(Qt::Key_Comma);
    auto& preferences = part<Preferences>(*w.window);
    const auto choose = [&](const char* name, Qt::Key letter) {
        auto& field = part<QComboBox>(preferences, name);
        field.setFocus();
        QTest::keyClick(&field, letter);
    };
    choose("Volumes", Qt::Key_U);
    choose("Gravities", Qt::Key_Down);
    choose("Pressures", Qt::Key_P);
    choose("Paper", w.window->settings().paper == PaperSize::a4 ? Qt::Key_L : Qt::Key_A);
    CHECK(w.window->session()->units().volume == DisplayUnits::Volume::usGallon);
    CHECK(w.window->session()->units().gravity == DisplayUnits::Gravity::plato); // one choice keeps the others
    CHECK(w.window->session()->units().pressure == DisplayUnits::Pressure::psi);
    CHECK(w.cellar().drawRefill().model().index(0, LedgerModel::level).data().toString().contains("US gal"));
    int offered = 0;
    for (QAction* action : w.window->findChildren<QAction*>())
        if (wordsOf(*action) == "US gallons") {
            Q_EMIT qobject_cast<QMenu*>(action->associatedObjects().front())->aboutToShow();
            CHECK(action->isChecked());
            ++offered;
        }
    CHECK(offered == 1);
    QTest::keyClick(&preferences, Qt::Key_Escape);
    CHECK_FALSE(preferences.isVisible());
}

TEST_CASE("help names the keys of the page in front", "[ui][help]") {
    const AtHeron w;
    w.key(Qt::Key_F1);
    CHECK(w.help().words().contains("Delete"));
    CHECK(w.help().words().contains("Keys on this page"));
    w.cellar().showPage(PageId::history);
    CHECK(w.help().words().contains("the promises, or back to the charts"));
    CHECK_FALSE(w.help().words().contains("remove the entry"));
    CHECK(w.help().words().contains("Ctrl+Shift+Z, Ctrl+Y"));
    for (const char* page :
         {"start", "cellar", "vessel", "taste", "adjust", "brew", "draw_refill", "history", "brew_sheet"})
        for (const QString& line : keysOf(page))
            CHECK(line.indexOf(": ") > 0);
}

TEST_CASE("About says the version and the licences", "[ui][help]") {
    const AtHeron w;
    w.action("About Staveline").trigger();
    CHECK(w.help().words().contains(QRegularExpression("Version \\d+\\.\\d+\\.\\d+\\.")));
    for (const char* word : {"GNU General Public License", "Qt", "SQLite", "Boost", "MIT", "utf8proc", "CLI11"})
        CHECK(w.help().words().contains(word));
    CHECK_FALSE(w.help().words().contains("Keys"));
}

TEST_CASE("a file dialog says what kind of file it asks for", "[ui][habits]") {
    CHECK(fileKind(".cellar") == "Cellar book (*.cellar)");
    CHECK(fileKind(".pdf") == "PDF page (*.pdf)");
}
