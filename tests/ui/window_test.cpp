// SPDX-License-Identifier: GPL-3.0-or-later
// The whole window, driven by real key events and looked over by the audit.
#include "ui/support.h"

#include "support/full_disk.h"
#include "ui/audit.h"
#include "ui/brew_sheet/page.h"
#include "ui/cellar/rail.h"
#include "ui/cellar/start_page.h"
#include "ui/cellar/vessel_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/draw_refill/vessel_panel.h"
#include "ui/print/page_view.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/underlined_tabs.h"
#include "ui/widgets/vessel_drawing.h"
#include "ui/window/cellar_view.h"
#include "ui/window/help_panel.h"
#include "ui/window/help_search.h"
#include "ui/window/notice_bar.h"
#include "ui/window/status_line.h"
#include "ui/window/vessel_header.h"

#include <QAccessible>
#include <QAction>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include <iostream>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::sheet;
using namespace staveline::ui;
using namespace staveline::testing;

// --- one cycle by keys ---------------------------------------------------------------------------------------------

namespace {

/// A new cellar asks for its file, then for the first vessel.
void makeCellarByKeys(WindowInScratch& w) {
    w.prompt.answers = {w.book};
    w.key(Qt::Key_N, Qt::ControlModifier);
    REQUIRE(w.window->session());
}

void addVesselByKeys(const WindowInScratch& w) {
    CHECK(accessibleName(*w.focus()) == "Name");
    w.type("Godwit");
    w.tabTo("Capacity in L");
    w.key(Qt::Key_A, Qt::ControlModifier);
    w.type("60");
    w.key(Qt::Key_Return);
    REQUIRE(w.window->session()->desk().vessel("Godwit"));
    CHECK(w.window->cellar()->vessel() == "Godwit");
}

/// After the vessel its opening is in hand already.
void openVesselByKeys(const WindowInScratch& w) {
    CHECK(accessibleName(*w.focus()) == "It holds in L");
    w.type("55,5");
    w.tabTo("Mean age of the beer in years");
    w.type("1.5");
    w.tabTo("Date, year-month-day");
    w.key(Qt::Key_A, Qt::ControlModifier);
    w.type("2025-06-01");
    w.key(Qt::Key_Return);
    REQUIRE(w.window->session()->desk().vessel("Godwit")->opened);
    CHECK(w.window->cellar()->drawRefill().table().hasFocus());
}

void drawAndRefillByKeys(const WindowInScratch& w) {
    w.key(Qt::Key_D, Qt::ControlModifier);
    CHECK(accessibleName(*w.focus()) == "Drawn in L");
    w.type("20");
    w.tabTo("Gravity in SG");
    w.type("1003");
    w.key(Qt::Key_Return); // takes 1.003
    w.key(Qt::Key_Return); // records
    w.key(Qt::Key_R, Qt::ControlModifier);
    w.type("22");
    w.key(Qt::Key_Return);
    const auto& ledger = w.window->cellar()->drawRefill().model();
    REQUIRE(ledger.rowCount() == 3);
    CHECK(ledger.at(1)->measured.gravity == SpecificGravity{1.003});
}

/// The newest line is amended with Enter.
void amendByKeys(const WindowInScratch& w, const char* litres) {
    w.key(Qt::Key_Home, Qt::ControlModifier);
    w.key(Qt::Key_Return);
    w.key(Qt::Key_A, Qt::ControlModifier);
    w.type(litres);
    w.key(Qt::Key_Return);
}

/// Undo names what it takes back; the number of steps it took.
int undoAllByKeys(const WindowInScratch& w) {
    int steps = 0;
    for (; w.action("Undo").isEnabled(); ++steps) {
        CHECK(w.action("Undo").text().contains(qs(w.window->session()->desk().undoText())));
        w.key(Qt::Key_Z, Qt::ControlModifier);
        REQUIRE(steps < 20);
    }
    return steps;
}
int redoAllByKeys(const WindowInScratch& w) {
    int steps = 0;
    for (; w.action("Redo").isEnabled(); ++steps) {
        w.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
        REQUIRE(steps < 20);
    }
    return steps;
}

} // namespace

TEST_CASE("a whole cycle by keyboard alone, and all of it back", "[ui][driven]") {
    WindowInScratch w(false);
    makeCellarByKeys(w);
    const Desk& desk = w.window->session()->desk();
    const auto empty = fingerprint(desk);
    addVesselByKeys(w);
    openVesselByKeys(w);
    drawAndRefillByKeys(w);
    const auto whole = fingerprint(desk);
    CHECK(undoAllByKeys(w) == 4); // vessel, opening, draw, refill
    CHECK(fingerprint(desk) == empty);
    CHECK(redoAllByKeys(w) == 4);
    CHECK(fingerprint(desk) == whole);
}

TEST_CASE("an amended line comes back by one undo", "[ui][driven]") {
    WindowInScratch w(false);
    makeCellarByKeys(w);
    addVesselByKeys(w);
    openVesselByKeys(w);
    drawAndRefillByKeys(w);
    const auto whole = fingerprint(w.window->session()->desk());
    amendByKeys(w, "23");
    CHECK(fingerprint(w.window->session()->desk()) != whole);
    w.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(fingerprint(w.window->session()->desk()) == whole);
}

TEST_CASE("first start offers three ways to begin", "[ui][start]") {
    WindowInScratch w(false);
    QStringList choices;
    for (const auto* button : w.window->startPage().findChildren<QAbstractButton*>())
        choices << button->text().remove('&');
    CHECK(choices.mid(0, 3) == QStringList{"New cellar", "Sample cellar", "Open a book"});
    CHECK(w.focus());
    CHECK_FALSE(w.action("Undo").isEnabled());
    CHECK_FALSE(w.action("Draw-off").isEnabled());
}

TEST_CASE("the first page is worked by keyboard and shows the books used lately", "[ui][start]") {
    WindowInScratch w;
    w.window->closeBook();
    QAbstractButton* recent = nullptr;
    for (auto* button : w.window->startPage().findChildren<QAbstractButton*>())
        if (button->text() == "heron.cellar")
            recent = button;
    REQUIRE(recent);
    CHECK(recent->accessibleDescription() == qs(w.book.string())); // the whole path, for books of one name
    recent->setFocus();
    CHECK(w.focus() == recent);
    w.key(Qt::Key_Space);
    QStringList said;
    for (const auto* label : w.window->startPage().findChildren<QLabel*>())
        said << label->text();
    INFO(said.join("|").toStdString());
    REQUIRE(w.window->session());
    w.window->closeBook();
    w.prompt.answers = {w.book};
    for (auto* button : w.window->startPage().findChildren<QAbstractButton*>())
        if (button->text() == "Open a book") {
            button->setFocus();
            w.key(Qt::Key_Return); // Enter chooses as Space does
            break;
        }
    CHECK(w.window->session());
}

TEST_CASE("a book used lately is opened from the menu while another is open", "[ui][start]") {
    WindowInScratch w;
    {
        auto other = *Desk::create(w.scratch / "other.cellar", [&w] { return w.today; });
        recordAll(*other, R"({"kind": "vessel", "name": "Avocet", "capacity_l": 30, "shape": "bucket"})");
    }
    REQUIRE(w.window->openBook(w.scratch / "other.cellar"));
    CHECK(w.window->cellar()->vessel() == "Avocet");
    for (QAction* action : w.window->findChildren<QAction*>())
        if (action->text().startsWith("heron.cellar (")) {
            action->trigger();
            break;
        }
    QTest::qWait(20); // the menu is filled anew first
    CHECK(w.window->session()->desk().path() == w.book);
    CHECK(w.window->settings().recent.front() == qs(w.book.string()));
}

TEST_CASE("a vessel is refused in words where its page can say them", "[ui][start][bad]") {
    WindowInScratch w;
    const int before = static_cast<int>(w.window->session()->desk().cellar()->size());
    w.key(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    VesselPage& page = part<VesselPage>(*w.window->cellar());
    w.key(Qt::Key_Return); // no name
    CHECK_FALSE(page.words().isEmpty());
    w.type("Heron"); // taken
    CHECK(page.words().isEmpty());
    w.key(Qt::Key_Return);
    CHECK_FALSE(page.words().isEmpty());
    w.type("II");
    w.tabTo("Capacity in L");
    w.key(Qt::Key_A, Qt::ControlModifier);
    w.type("-5");
    w.key(Qt::Key_Return);
    CHECK_FALSE(page.fields().number("capacity_l")->words().isEmpty());
    CHECK(static_cast<int>(w.window->session()->desk().cellar()->size()) == before);
    w.key(Qt::Key_Escape);
    CHECK(w.window->cellar()->atVessel());
}

TEST_CASE("the sample cellar is made once and opened again as it was left", "[ui][start]") {
    WindowInScratch w(false);
    const auto sample = w.scratch / "share/sample.cellar";
    REQUIRE(w.window->sampleBook(sample));
    REQUIRE(w.window->session()->desk().cellar()->size() >= 3);
    const VesselName first = w.window->session()->desk().cellar()->front().name;
    REQUIRE(w.window->session()->record(ReadingFact{first, w.today, {{}, Ph{3.3}, {}, {}, {}}, "mine"}));
    const auto left = fingerprint(w.window->session()->desk());
    w.window->closeBook();
    REQUIRE(w.window->sampleBook(sample));
    CHECK(fingerprint(w.window->session()->desk()) == left);
}

TEST_CASE("a book that cannot be opened is said on the first page", "[ui][start][bad]") {
    WindowInScratch w(false);
    writeAll(w.scratch / "letter.cellar", "Dear brewer, this is no book.");
    CHECK_FALSE(w.window->openBook(w.scratch / "letter.cellar"));
    CHECK_FALSE(w.window->openBook(w.scratch / "nowhere.cellar"));
    CHECK_FALSE(w.window->session());
    QStringList words;
    for (const auto* label : w.window->startPage().findChildren<QLabel*>())
        words << label->text();
    CHECK(words.join(' ').contains("nowhere.cellar"));
    CHECK_FALSE(w.window->newBook(w.scratch / "nowhere/new.cellar"));
    CHECK(readAll(w.scratch / "letter.cellar").starts_with("Dear brewer"));
}

TEST_CASE("a book that cannot be opened leaves the open one in hand", "[ui][start][bad]") {
    WindowInScratch w;
    CHECK_FALSE(w.window->openBook(w.scratch / "nowhere.cellar"));
    REQUIRE(w.window->session());
    CHECK(w.window->session()->desk().path() == w.book);
    CHECK(w.window->notices().isVisible());
    CHECK(w.window->notices().words().contains("nowhere.cellar"));
}

TEST_CASE("the last session comes back after a restart, undo included", "[ui][session]") {
    WindowInScratch w;
    w.window->cellar()->showVessel("Teal");
    w.window->cellar()->showBrewSheet();
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    w.window->setUnits(units);
    REQUIRE(w.window->session()->record(DipFact{"Teal", w.today, Litres{44}, ""}));
    w.window->close();
    w.open();
    w.window->start(std::nullopt);
    REQUIRE(w.window->session());
    CHECK(w.window->cellar()->vessel() == "Teal");
    CHECK(w.window->cellar()->workPage() == PageId::brew);
    CHECK(w.window->session()->units().volume == DisplayUnits::Volume::usGallon);
    CHECK(w.action("Undo").isEnabled());
    CHECK(w.window->settings().recent == QStringList{qs(w.book.string())});
}

TEST_CASE("damaged settings are as good as none", "[ui][session][bad]") {
    WindowInScratch w(false);
    w.window.reset();
    const auto ini = w.scratch / "window.ini";
    for (const std::string& garbage :
         {std::string(
              "[session]\nbook=@Invalid()\ngeometry=@ByteArray(\\0\\1zz)\nstation=bogus\nvessel=\x01\xff\n"
              "[units]\nvolume=barrels\ngravity=7\n[General]\nrecent=@Variant(\\0\\0\\0\\x7f)\nappearance=pink\n"
              "[advice]\nmost_moved=many\n"),
          std::string("\x00\xff\xfe{{{{[[[===", 14), std::string(100000, '['), std::string()}) {
        writeAll(ini, garbage);
        QSettings settings(qs(ini.string()), QSettings::IniFormat);
        const WindowSettings loaded = load(settings);
        CHECK(loaded.units == DisplayUnits{});
        CHECK(loaded.appearance == Appearance::system);
        CHECK(loaded.lastPage == PageId::drawRefill);
        CHECK(loaded.mostMoved == 2);
        MainWindow window([&w] { return w.today; }, w.prompt, settings);
        window.start(std::nullopt);
        window.show();
        CHECK(window.isVisible());
        CHECK_FALSE(window.session());
    }
}

TEST_CASE("settings that cannot be written cost nothing", "[ui][session][bad]") {
    WindowInScratch w;
    QSettings nowhere(qs((w.scratch / "book.cellar/window.ini").string()), QSettings::IniFormat);
    writeAll(w.scratch / "book.cellar", "a file where a folder should be");
    MainWindow window([&w] { return w.today; }, w.prompt, nowhere);
    REQUIRE(window.openBook(w.book));
    window.close();
    CHECK_FALSE(window.isVisible());
}

TEST_CASE("settings keep every choice", "[ui][session]") {
    Scratch scratch;
    QSettings file(qs((scratch / "s.ini").string()), QSettings::IniFormat);
    WindowSettings settings;
    settings.units = {DisplayUnits::Volume::hectolitre, DisplayUnits::Temperature::fahrenheit,
                      DisplayUnits::Gravity::plato, DisplayUnits::Colour::srm, DisplayUnits::Pressure::psi};
    settings.appearance = Appearance::dark;
    settings.paper = PaperSize::letter;
    settings.lastPage = PageId::brew;
    settings.mostMoved = 4;
    for (int i = 0; i < 12; ++i)
        settings.use(QString("book %1.cellar").arg(i % 10));
    save(settings, file);
    const WindowSettings loaded = load(file);
    CHECK(loaded.units == settings.units);
    CHECK(loaded.appearance == Appearance::dark);
    CHECK(loaded.paper == PaperSize::letter);
    CHECK(loaded.lastPage == PageId::brew);
    CHECK(loaded.mostMoved == 4);
    CHECK(loaded.recent.size() == 8);
    CHECK(loaded.recent.front() == "book 1.cellar");
    CHECK(loaded.lastBook == "book 1.cellar");
}

TEST_CASE("the units menu changes what is shown and no stored bit", "[ui][units]") {
    WindowInScratch w;
    const auto before = readAll(w.book);
    const auto trigger = [&](const QString& words) {
        for (QAction* action : w.window->findChildren<QAction*>())
            if (action->text().remove('&') == words)
                action->trigger();
    };
    const auto shown = [&] {
        QStringList words;
        for (const auto* label : w.window->findChildren<QLabel*>())
            words << label->text();
        return words.join(' ');
    };
    trigger("US gallons");
    CHECK(shown().contains("59.4 US gal")); // 225 L
    trigger("Hectolitres");
    CHECK(shown().contains("2.25 hL"));
    trigger("°Plato");
    CHECK(w.window->settings().units.gravity == DisplayUnits::Gravity::plato);
    CHECK(w.window->settings().units.volume == DisplayUnits::Volume::hectolitre); // one choice keeps the other
    trigger("Litres");
    trigger("Specific gravity");
    CHECK(shown().contains("225.0 L"));
    CHECK(readAll(w.book) == before);
}

TEST_CASE("status line: stored, done, undo and redo by name", "[ui][status]") {
    WindowInScratch w;
    CHECK(w.window->status().words().contains("all changes stored"));
    REQUIRE(w.window->session()->record(DipFact{"Heron", w.today, Litres{200}, ""}));
    CHECK(w.window->status().words().contains("Recorded: "));
    CHECK(w.action("Undo").text().startsWith("&Undo: "));
    w.action("Undo").trigger();
    CHECK(w.window->status().words().contains("Undone: "));
    CHECK(w.action("Redo").text().startsWith("&Redo: "));
    w.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(w.window->status().words().contains("nothing to save"));
}

TEST_CASE("the dates of the cellar are saved as a calendar file from the menu", "[ui][window]") {
    WindowInScratch w;
    const auto file = w.scratch / "dates.ics";
    w.prompt.answers = {file};
    w.action("Save the dates as a calendar file").trigger();
    CHECK(readAll(file) == *w.desk().calendar());
    CHECK(readAll(file).find("SUMMARY:Taste Heron") != std::string::npos);
    CHECK(w.window->status().words().contains("dates.ics"));
    const auto before = readAll(w.book);
    w.prompt.answers = {w.book}; // a book is no place for it
    w.action("Save the dates as a calendar file").trigger();
    CHECK(readAll(w.book) == before);
    CHECK(w.window->notices().words().contains("book"));
}

TEST_CASE("a book for reading only says so and writes nothing", "[ui][readonly]") {
    WindowInScratch w;
    w.window->closeBook();
    const auto readOnly = w.scratch / "newer.cellar";
    std::filesystem::copy_file(w.book, readOnly);
    {
        // A book of a newer minor version is opened for reading only.
        std::fstream file(readOnly, std::ios::in | std::ios::out | std::ios::binary);
        file.seekg(60);
        char version[4];
        file.read(version, 4);
        version[3] = static_cast<char>(version[3] + 1);
        file.seekp(60);
        file.write(version, 4);
    }
    const auto before = readAll(readOnly);
    REQUIRE(w.window->openBook(readOnly));
    CHECK(w.window->session()->desk().readOnly());
    CHECK(w.window->notices().isVisible());
    CHECK_FALSE(w.window->notices().words().isEmpty());
    QStringList offered;
    for (const QAction* action : w.window->actions())
        if (action->isEnabled())
            offered << wordsOf(*action);
    CHECK(offered.join(", ") == "New cellar, Open a book, Sample cellar, Save a copy, Save the dates as a calendar "
                                "file, Export whole book, New cellar from an exported folder, Check the book for "
                                "damage, "
                                "Close book, Saved automatically, Quit, Find, Find next, Find previous, Preferences, "
                                "Ingredients and stock, Next vessel, Previous vessel, All vessels, Taste, Adjust, "
                                "Brew, Draw & refill, Finish, History, Brew sheet, Reset to current settings, "
                                "Next part of the window, Previous part of the window, Print: ledger, "
                                "Save as PDF: ledger, Save as HTML: ledger, Save as Markdown: ledger, "
                                "Print the vessel cards, Save the vessel cards as PDF, "
                                "Help for this page, What is new, Report a fault of the program, About Staveline");
    CHECK(w.window->status().words().contains("reading only"));
    w.key(Qt::Key_D, Qt::ControlModifier);
    CHECK_FALSE(w.window->cellar()->drawRefill().form().active());
    w.window->closeBook();
    CHECK(readAll(readOnly) == before);
}

TEST_CASE("F1 opens help for the page in hand, Esc closes it", "[ui][help]") {
    WindowInScratch w;
    w.key(Qt::Key_F1);
    REQUIRE(w.help().isVisible());
    CHECK(w.help().words().startsWith("Draw & refill"));
    CHECK(w.help().words().contains("Ctrl+D"));
    w.window->cellar()->showBrewSheet();
    CHECK(w.help().words().startsWith("Brew sheet"));
    for (const auto& [workPage, title] :
         std::array{std::pair(PageId::taste, "Taste"), std::pair(PageId::adjust, "Adjust"),
                    std::pair(PageId::finish, "Finish"), std::pair(PageId::history, "History")}) {
        w.window->cellar()->showPage(workPage);
        CHECK(w.help().words().startsWith(title));
    }
    w.key(Qt::Key_F1);
    CHECK_FALSE(w.help().isVisible());
    w.key(Qt::Key_F1);
    w.key(Qt::Key_Escape);
    CHECK_FALSE(w.help().isVisible());
    for (const char* page : {"start", "cellar", "vessel", "taste", "adjust", "brew", "draw_refill", "finish", "history",
                             "brew_sheet", "about"})
        CHECK(helpFor(page).size() >= 2);
}

TEST_CASE("F6 goes round the parts of the window, Ctrl+Page through the cellar", "[ui][keys]") {
    WindowInScratch w;
    CellarView& cellar = *w.window->cellar();
    CHECK(cellar.drawRefill().table().hasFocus());
    w.key(Qt::Key_F6);
    CHECK(part<Rail>(cellar).hasFocus());
    w.key(Qt::Key_F6);
    CHECK(part<UnderlinedTabs>(cellar).hasFocus());
    w.key(Qt::Key_F6, Qt::ShiftModifier);
    CHECK(part<Rail>(cellar).hasFocus());
    const VesselName first = cellar.vessel();
    w.key(Qt::Key_PageDown, Qt::ControlModifier);
    CHECK(cellar.vessel() != first);
    w.key(Qt::Key_PageUp, Qt::ControlModifier);
    CHECK(cellar.vessel() == first);
    for (const auto& [key, workPage] :
         std::array{std::pair(Qt::Key_1, PageId::taste), std::pair(Qt::Key_2, PageId::adjust),
                    std::pair(Qt::Key_3, PageId::brew), std::pair(Qt::Key_6, PageId::history),
                    std::pair(Qt::Key_4, PageId::drawRefill), std::pair(Qt::Key_5, PageId::finish)}) {
        w.key(key, Qt::ControlModifier);
        CHECK(cellar.workPage() == workPage);
    }
}

TEST_CASE("a milestone of the timeline opens the work that belongs to it", "[ui][timeline]") {
    WindowInScratch w;
    CellarView& cellar = *w.window->cellar();
    cellar.showVessel("Heron");
    for (MilestoneButton* milestone : part<VesselHeader>(cellar).timeline().buttons())
        if (milestone->milestone().kind == MilestoneKind::brew) {
            milestone->setFocus();
            w.key(Qt::Key_Space);
            break;
        }
    CHECK(cellar.workPage() == PageId::brew);
    for (MilestoneButton* milestone : part<VesselHeader>(cellar).timeline().buttons())
        if (milestone->milestone().kind == MilestoneKind::draw) {
            milestone->setFocus();
            w.key(Qt::Key_Space);
            break;
        }
    CHECK(cellar.workPage() == PageId::drawRefill);
    CHECK(cellar.drawRefill().form().active());
}

TEST_CASE("the brew sheet is shown as pages and leaves in every format", "[ui][sheet]") {
    WindowInScratch w;
    w.window->cellar()->showVessel("Heron");
    w.key(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
    BrewSheetPage& sheet = w.window->cellar()->brewSheet();
    INFO(sheet.words().toStdString());
    REQUIRE(sheet.page().printButton().isEnabled());
    CHECK(sheet.pages().pages() >= 1);
    CHECK(sheet.pages().accessibleDescription().contains("page"));
    w.prompt.answers = {w.scratch / "s.pdf", w.scratch / "s.html", w.scratch / "s.md", w.scratch / "s.csv"};
    w.key(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    w.action("Save as HTML").trigger();
    w.action("Save as Markdown").trigger();
    w.action("Save as CSV").trigger();
    CHECK(w.prompt.asked.at(0).contains("Heron"));
    CHECK(readAll(w.scratch / "s.pdf").starts_with("%PDF-"));
    CHECK(readAll(w.scratch / "s.html").find("<html") != std::string::npos);
    CHECK(readAll(w.scratch / "s.md").starts_with("# "));
    CHECK_FALSE(readAll(w.scratch / "s.csv").empty());
    CHECK(w.window->status().words().contains("s.csv"));
    const auto document = w.window->session()->desk().brewSheet("Heron");
    REQUIRE(document);
    CHECK(readAll(w.scratch / "s.md") == writeMarkdown(*document));
}

TEST_CASE("a sheet that cannot be written or is not wanted changes nothing", "[ui][sheet][bad]") {
    WindowInScratch w;
    w.window->cellar()->showVessel("Heron");
    w.key(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
    w.action("Save as PDF").trigger(); // cancelled
    CHECK_FALSE(w.window->notices().isVisible());
    w.prompt.answers = {w.scratch / "nowhere/s.pdf"};
    w.action("Save as PDF").trigger();
    CHECK(w.window->notices().words().contains("nowhere"));
    w.action("Print").trigger(); // no printer chosen
}

TEST_CASE("where there can be no sheet it says why and writes nothing", "[ui][sheet][bad]") {
    WindowInScratch w;
    w.window->cellar()->showBrewSheet();
    BrewSheetPage& sheet = w.window->cellar()->brewSheet();
    CHECK(sheet.page().printButton().isEnabled());
    sheet.showVessel("Nobody");
    CHECK_FALSE(sheet.page().printButton().isEnabled());
    CHECK(sheet.words().contains("Nobody"));
    w.action("Save as PDF").trigger();
    CHECK(w.prompt.asked.empty());
}

TEST_CASE("a copy of the book opens with the same content", "[ui][book]") {
    WindowInScratch w;
    w.prompt.answers = {w.scratch / "copy.cellar"};
    w.key(Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
    REQUIRE(QTest::qWaitFor([&] { return w.window->status().words().contains("Copied to"); }, 20000));
    const auto whole = fingerprint(w.window->session()->desk());
    REQUIRE(w.window->openBook(w.scratch / "copy.cellar"));
    CHECK(fingerprint(w.window->session()->desk()) == whole);
    w.action("Check the book for damage").trigger();
    CHECK(QTest::qWaitFor([&] { return w.window->status().words().contains("No damage"); }, 20000));
}

TEST_CASE("assistive technology meets tables, lists and drawings for what they are", "[ui][a11y]") {
    WindowInScratch w;
    CellarView& cellar = *w.window->cellar();
    cellar.showVessel("Heron");
    QTest::qWait(20);
    QAccessibleInterface* ledger = QAccessible::queryAccessibleInterface(&cellar.drawRefill().table());
    REQUIRE(ledger);
    REQUIRE(ledger->tableInterface());
    CHECK(ledger->role() == QAccessible::Table);
    CHECK(ledger->tableInterface()->rowCount() == 9);
    QStringList heads;
    for (int c = 0; c < ledger->tableInterface()->columnCount(); ++c)
        heads << ledger->tableInterface()->columnDescription(c);
    CHECK(heads == QStringList{"Date", "Entry", "Level after", "Mean age"});
    CHECK(ledger->tableInterface()->cellAt(0, LedgerModel::entry)->text(QAccessible::Name).contains("82"));
    QAccessibleInterface* rail = QAccessible::queryAccessibleInterface(&part<Rail>(cellar));
    REQUIRE(rail);
    CHECK(rail->role() == QAccessible::List);
    QStringList heard;
    for (int i = 0; i < rail->childCount(); ++i)
        heard << rail->child(i)->text(QAccessible::Name);
    CHECK(heard.filter("Heron, ").size() == 1);
    QAccessibleInterface* drawing =
        QAccessible::queryAccessibleInterface(&testing::part<VesselDrawing>(cellar.drawRefill().panel()));
    CHECK(drawing->role() == QAccessible::Graphic);
    CHECK(drawing->text(QAccessible::Description).contains(" L of 225.0 L; "));
}

TEST_CASE("a book removed under the window does no harm to the window", "[ui][bad]") {
    WindowInScratch w;
    std::filesystem::remove(w.book);
    const auto recorded = w.window->session()->record(DipFact{"Heron", w.today, Litres{200}, ""});
    if (!recorded)
        CHECK_FALSE(render(recorded.error().remedy).empty());
    w.window->session()->poll();
    w.window->cellar()->showVessel("Teal");
    CHECK(w.window->cellar()->vessel() == "Teal");
    w.prompt.answers = {w.scratch / "kept.cellar"};
    w.action("Save a copy").trigger(); // what is in hand can still be kept, or it says why not
    CHECK((std::filesystem::exists(w.scratch / "kept.cellar") || w.window->notices().isVisible()));
}

TEST_CASE("a full disk is said, and work goes on when there is room", "[ui][bad]") {
    WindowInScratch w;
    const auto before = fingerprint(w.window->session()->desk());
    {
        const FullDisk full(static_cast<rlim_t>(std::filesystem::file_size(w.book) / 4));
        const auto refused = w.window->session()->record(DipFact{"Heron", w.today, Litres{200}, ""});
        REQUIRE_FALSE(refused);
        CHECK(refused.error().kind == FaultKind::storage);
        CHECK_FALSE(render(refused.error().remedy).empty());
        w.window->cellar()->showVessel("Teal"); // the window goes on
    }
    CHECK(fingerprint(w.window->session()->desk()) == before);
    CHECK(w.window->session()->record(DipFact{"Heron", w.today, Litres{200}, ""}));
}

TEST_CASE("menus, keys and texts are complete", "[ui][keys]") {
    WindowInScratch w;
    for (const QAction* action : w.window->findChildren<QAction*>()) {
        INFO(action->text().toStdString());
        CHECK_FALSE(action->text().startsWith("ui."));
    }
    for (const auto* label : w.window->findChildren<QLabel*>())
        CHECK_FALSE(label->text().contains("ui."));
}
