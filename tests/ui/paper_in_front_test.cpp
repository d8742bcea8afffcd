// SPDX-License-Identifier: GPL-3.0-or-later
// Printing prints what is in front; where that is no paper, the command is off and says why.
#include "pdf_tools.h"
#include "ui/support.h"

#include "sheet/document.h"
#include "ui/brew/page.h"
#include "ui/finish/page.h"
#include "ui/history/page.h"
#include "ui/taste/page.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"
#include "ui/window/status_line.h"

#include <QAction>
#include <QPrinter>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtWindow : WindowInScratch {
    AtWindow() { window->cellar()->showVessel("Heron"); }
    /// Ctrl+Shift+P, and what it offered to call the file.
    QString savePdf() {
        prompt.asked.clear();
        prompt.answers = {scratch / "front.pdf"};
        key(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
        return prompt.asked.empty() ? QString() : prompt.asked.front();
    }
    [[nodiscard]] QString saved() const { return pdfPages(scratch / "front.pdf").join('\n'); }
    void checkOff(const QString& why) const {
        for (const char* words : {"Print", "Save as PDF", "Save as HTML", "Save as Markdown", "Save as CSV"}) {
            INFO(words);
            CHECK_FALSE(action(words).isEnabled());
            CHECK(wordsOf(action(words)) == QString("%1 (%2)").arg(words, why));
        }
    }
};

} // namespace

TEST_CASE("the paper that is printed is the one in front", "[ui][print]") {
    AtWindow w;
    const bool reads = hasPdfTools();
    const auto check = [&](const QString& file, const QString& title, const QString& name) {
        CHECK(wordsOf(w.action("Print")) == "Print: " + name);
        CHECK(w.savePdf() == file + ".pdf");
        if (reads)
            CHECK(w.saved().trimmed().startsWith(title));
    };
    w.cellar().showPage(PageId::drawRefill); // before a brew sheet was ever shown
    check("Heron ledger 2026-03-02", "Ledger of Heron", "ledger");
    w.cellar().showPage(PageId::history);
    check("Heron history 2026-03-02", "History of Heron", "history");
    w.cellar().showPage(PageId::taste);
    w.cellar().taste().showBlankSheet(true);
    check("Heron tasting sheet", "Tasting sheet for Heron", "tasting sheet");
    w.cellar().showPage(PageId::brew);
    check("Heron brew sheet 2026-03-02", "Brew sheet for Heron", "brew sheet");
    w.cellar().showBrewSheet();
    check("Heron brew sheet 2026-03-02", "Brew sheet for Heron", "brew sheet");
}

TEST_CASE("Ctrl+P goes to the printer with the paper in front", "[ui][print]") {
    class Named : public ScriptedPrompt {
    public:
        QString name;
        bool setUpPrinter(QWidget*, QPrinter& printer) override {
            name = printer.docName();
            return false;
        }
    };
    AtWindow w;
    Named prompt;
    MainWindow window([&w] { return w.today; }, prompt, w.settings);
    REQUIRE(window.openBook(w.book));
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    window.cellar()->showVessel("Heron");
    const auto printed = [&](PageId page) {
        window.cellar()->showPage(page);
        QTest::keyClick(&window, Qt::Key_P, Qt::ControlModifier);
        return std::exchange(prompt.name, {});
    };
    CHECK(printed(PageId::drawRefill) == "Ledger of Heron");
    CHECK(printed(PageId::history) == "History of Heron");
    CHECK(printed(PageId::adjust).isEmpty());
}

TEST_CASE("where no paper is in front printing is off and says why", "[ui][print]") {
    AtWindow w;
    w.cellar().showPage(PageId::taste);
    w.checkOff("open the blank sheet first");
    w.cellar().showPage(PageId::adjust);
    w.checkOff("the brew sheet says what changes");
    CHECK(w.savePdf().isEmpty());
    w.cellar().showPage(PageId::brew);
    w.cellar().brew().showAsBrewed();
    w.checkOff("the plan and the brew sheet can be printed");
    w.cellar().showVessel("Bittern"); // nothing is in it
    w.cellar().showPage(PageId::drawRefill);
    w.checkOff("nothing is recorded yet");
    w.cellar().addVessel();
    w.checkOff("this page has no paper");
    w.window->closeBook();
    w.checkOff("no book is open");
}

TEST_CASE("the paper of Finish is the day sheet of what is asked about a filling", "[ui][print][finish]") {
    AtWindow w;
    w.cellar().showPage(PageId::finish);
    w.checkOff("ask about a filling first");
    part<NumberField>(w.cellar().finish(), "Litres to pack").setStored(20);
    part<NumberField>(w.cellar().finish(), "Volumes of CO2").setStored(2.2);
    w.cellar().finish().answerNow();
    CHECK(wordsOf(w.action("Print")) == "Print: packaging sheet");
    CHECK(w.savePdf() == "Heron packaging 2026-03-02.pdf");
    if (hasPdfTools())
        CHECK(w.saved().contains("Refused: Heron is not to be packed")); // nobody said in what
    const QAction& labels = w.action("Save the bottle labels as PDF");
    CHECK_FALSE(labels.isEnabled());
    part<ChoiceField>(w.cellar().finish(), "Make").setWord("sparkling");
    part<NumberField>(w.cellar().finish(), "Gravity measured today").setStored(1.0);
    w.cellar().finish().answerNow();
    INFO(w.saved().toStdString());
    REQUIRE(labels.isEnabled());
    w.prompt.asked.clear();
    w.prompt.answers = {w.scratch / "labels.pdf"};
    w.action("Save the bottle labels as PDF").trigger();
    CHECK(w.prompt.asked.front() == "Heron labels 2026-03-02.pdf");
    if (hasPdfTools())
        CHECK(pdfPages(w.scratch / "labels.pdf").join('\n').contains("As local law asks"));
    w.cellar().showPage(PageId::history);
    CHECK_FALSE(labels.isEnabled());
}

TEST_CASE("what a paper cannot be saved as is off and says so", "[ui][print]") {
    AtWindow w;
    w.cellar().showPage(PageId::drawRefill);
    CHECK(wordsOf(w.action("Save as CSV")) == "Save as CSV (the ledger has no such file)");
    CHECK_FALSE(w.action("Save as CSV").isEnabled());
    CHECK(w.action("Save as Markdown").isEnabled());
}

TEST_CASE("the history leaves with its charts, and as figures for other programs", "[ui][print][history]") {
    AtWindow w;
    w.cellar().showPage(PageId::history);
    w.prompt.answers = {w.scratch / "h.csv", w.scratch / "h.html"};
    w.action("Save as CSV").trigger();
    CHECK(readAll(w.scratch / "h.csv") == toCsv(w.window->session()->desk().history("Heron")->rows));
    w.action("Save as HTML").trigger();
    const std::string page = readAll(w.scratch / "h.html");
    CHECK(page.find("data:image/svg+xml,") != std::string::npos);
    CHECK(page.find("Charts of Heron, ") != std::string::npos);
    CHECK(page.find("8\u00a0Jul\u00a02025") != std::string::npos);
}

TEST_CASE("notes stand under their entry in the printed ledger", "[ui][print]") {
    AtWindow w;
    w.cellar().showPage(PageId::drawRefill);
    w.prompt.answers = {w.scratch / "l.md"};
    w.action("Save as Markdown").trigger();
    const std::string page = readAll(w.scratch / "l.md");
    const std::size_t note = page.find("Clear, firm, a little barnyard.");
    REQUIRE(note != std::string::npos);
    const std::size_t row = page.rfind('\n', note) + 1;
    CHECK(page.substr(row, 15) == "| 8 Jul 2025 | ");
}
