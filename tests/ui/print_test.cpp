// SPDX-License-Identifier: GPL-3.0-or-later
// Papers that are really printed: through a printer that writes a file, read back page by page.
#include "pdf_tools.h"
#include "ui/support.h"

#include "facts/sample.h"
#include "sheet/document.h"
#include "support/full_disk.h"
#include "ui/brew/page.h"
#include "ui/print/page_view.h"
#include "ui/print/printing.h"
#include "ui/taste/blank_sheet.h"
#include "ui/taste/page.h"
#include "ui/widgets/choice_field.h"

#include <QPrinter>
#include <QPushButton>
#include <QRegularExpression>
#include <QTextBrowser>
#include <QVBoxLayout>

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::sheet;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

/// Takes the printer that is offered and lets it write a file.
class FilePrinter : public ScriptedPrompt {
public:
    std::filesystem::path to;
    QPageLayout offered;
    QString name;

    bool setUpPrinter(QWidget*, QPrinter& printer) override {
        offered = printer.pageLayout();
        name = printer.docName();
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(qs(to.string()));
        return true;
    }
};

/// The page that holds a paper, on the sample cellar, in a window of its own.
template <class PageId> struct AtPaper : DeskInScratch {
    AtPaper() {
        REQUIRE(desk->record(*sampleCellar(today)));
        session = std::make_unique<Session>(std::move(desk));
        prompt.to = scratch / "printed.pdf";
        workPage = new PageId(*session, prompt, &window);
        (new QVBoxLayout(&window))->addWidget(workPage);
        window.resize(1100, 700);
        workPage->showVessel("Plover");
        window.show();
        REQUIRE(QTest::qWaitForWindowActive(&window));
    }
    /// The button with these words that is on show, by keyboard.
    void press(const QString& words) const {
        for (QPushButton* button : window.findChildren<QPushButton*>())
            if (button->isVisible() && button->text().remove('&') == words) {
                button->setFocus();
                QTest::keyClick(button, Qt::Key_Space);
                return;
            }
        FAIL("no button " << words.toStdString());
    }
    /// Chooses a paper by its first letter.
    void choose(PaperPage& page, PaperSize size) const {
        auto choices = page.findChildren<ChoiceField*>();
        const auto paper =
            std::find_if(choices.begin(), choices.end(), [](ChoiceField* c) { return c->accessibleName() == "Paper"; });
        REQUIRE(paper != choices.end());
        (*paper)->setFocus();
        QTest::keyClick(*paper, size == PaperSize::a4 ? Qt::Key_Up : Qt::Key_Down);
        CHECK(page.paper() == size);
    }
    FilePrinter prompt;
    std::unique_ptr<Session> session;
    QWidget window;
    PageId* workPage = nullptr;
};

/// What every printed paper must be: of its size, whole, its pages numbered, its headings in the paper's order, once.
void checkPrinted(const std::filesystem::path& pdf, const Document& document, PaperSize size, int pages) {
    REQUIRE(readAll(pdf).starts_with("%PDF-"));
    if (!hasPdfTools())
        return;
    const QString info = outputOf("pdfinfo", {qs(pdf.string())});
    INFO(info.toStdString());
    // ISO 216: 210 x 297 mm; ANSI/ASME Y14.1: 8.5 x 11 in
    CHECK(info.contains(size == PaperSize::a4 ? QRegularExpression("Page size: +59[45]\\S* x 84[12]\\S* pts")
                                              : QRegularExpression("Page size: +612 x 792 pts")));
    CHECK(info.contains(qs(document.title)));
    const QStringList found = pdfPages(pdf);
    CHECK(found.size() == pages);
    for (int i = 0; i < found.size(); ++i)
        CHECK(found[i].count(QString("page %1 of %2").arg(i + 1).arg(pages)) == 1);
    const QString whole = found.join('\n');
    CHECK(whole.trimmed().startsWith(qs(document.title)));
    qsizetype last = 0;
    for (const Block& block : document.blocks)
        if (const auto* heading = std::get_if<Heading>(&block)) {
            INFO(heading->text);
            const qsizetype at =
                whole.indexOf(QRegularExpression("^ *" + QRegularExpression::escape(qs(heading->text)) + " *$",
                                                 QRegularExpression::MultilineOption),
                              last);
            CHECK(at >= last);
            last = std::max(last, at);
        }
    for (const QString& page : found) // nothing runs over the edge into the foot
        CHECK(page.trimmed().section('\n', -4).contains("page "));
}

} // namespace

TEST_CASE("the brew sheet is printed whole on either paper", "[ui][print]") {
    AtPaper<BrewPage> s;
    s.press("Brew sheet");
    PaperPage& page = s.workPage->sheet().page();
    REQUIRE(page.printButton().isEnabled());
    const Document document = *s.session->desk().brewSheet("Plover", s.session->units());
    for (const PaperSize size : {PaperSize::letter, PaperSize::a4}) {
        CAPTURE(static_cast<int>(size));
        s.choose(page, size);
        QSignalSpy said(s.session.get(), &Session::said);
        QSignalSpy failed(s.session.get(), &Session::failed);
        s.press("Print");
        CHECK(failed.isEmpty());
        REQUIRE(said.size() == 1);
        CHECK(said.front().front().toString().contains("brew sheet"));
        CHECK(s.prompt.name == qs(document.title));
        CHECK(s.prompt.offered.pageSize().id() == rowOf(size).page);
        CHECK(page.pages().pages() >= 2);
        checkPrinted(s.prompt.to, document, size, page.pages().pages());
        std::filesystem::remove(s.prompt.to);
    }
}

TEST_CASE("the tasting paper is printed whole on either paper, short and long", "[ui][print]") {
    AtPaper<TastePage> s;
    s.workPage->showBlankSheet(true);
    BlankSheet& blank = s.workPage->blankSheet();
    for (const bool shortSheet : {true, false}) {
        auto& choice = part<ChoiceField>(blank, "Lines of the sheet");
        choice.setFocus();
        QTest::keyClick(&choice, shortSheet ? Qt::Key_Up : Qt::Key_Down);
        const Document document = s.session->desk().tastingPaper("Plover", shortSheet, s.session->units());
        for (const PaperSize size : {PaperSize::letter, PaperSize::a4}) {
            CAPTURE(shortSheet, static_cast<int>(size));
            s.choose(blank.page(), size);
            s.press("Print");
            checkPrinted(s.prompt.to, document, size, blank.pages().pages());
            std::filesystem::remove(s.prompt.to);
        }
    }
}

TEST_CASE("printer, file and preview break the pages alike", "[ui][print]") {
    AtPaper<BrewPage> s;
    s.press("Brew sheet");
    if (!hasPdfTools())
        return;
    s.press("Print");
    s.prompt.answers = {s.scratch / "saved.pdf"};
    s.press("Save PDF");
    const QStringList printed = pdfPages(s.prompt.to), saved = pdfPages(s.scratch / "saved.pdf");
    REQUIRE(printed.size() == saved.size());
    for (int i = 0; i < printed.size(); ++i) // the finer grid of a printer may move a word by a hair
        CHECK(printed[i].simplified() == saved[i].simplified());
}

TEST_CASE("a printer that cannot write says so and what to do", "[ui][print][bad]") {
    AtPaper<BrewPage> s;
    s.press("Brew sheet");
    s.prompt.to = s.scratch / "nowhere" / "printed.pdf";
    QSignalSpy said(s.session.get(), &Session::said);
    QSignalSpy failed(s.session.get(), &Session::failed);
    s.press("Print");
    CHECK(said.isEmpty());
    REQUIRE(failed.size() == 1);
    const Fault fault = failed.front().front().value<Fault>();
    CHECK(fault.kind == FaultKind::storage);
    CHECK_FALSE(render(fault.remedy).empty());
}

TEST_CASE("papers say the same as text, for those who cannot see pages", "[ui][print]") {
    AtPaper<BrewPage> s;
    s.press("Brew sheet");
    s.press("As text");
    const auto browsers = s.workPage->sheet().page().findChildren<QTextBrowser*>();
    REQUIRE(browsers.size() == 1);
    REQUIRE(browsers.front()->isVisible());
    const QString text = browsers.front()->toPlainText();
    CHECK(text == qs(writeText(*s.session->desk().brewSheet("Plover", s.session->units()))));
    const QFontMetricsF letters(browsers.front()->font()); // columns stand under each other
    CHECK(letters.horizontalAdvance("iiiiiiiiii") == letters.horizontalAdvance("WWWWWWWWWW"));
    CHECK(browsers.front()->lineWrapMode() == QTextEdit::NoWrap);
    s.press("As text");
    CHECK(s.workPage->sheet().pages().isVisible());
}

TEST_CASE("every size and format is a row of one table", "[ui][print]") {
    Scratch scratch;
    Document paper;
    paper.title = "A paper";
    for (const PaperSizeRow& size : paperSizes) {
        CHECK(paperNamed(size.word) == size.size);
        CHECK(&rowOf(size.size) == &size);
    }
    for (const PaperFormatRow& format : paperFormats) {
        CAPTURE(format.name);
        CHECK(formatOf(format.ending) == &format);
        CHECK(knownEndings().find(format.ending) != std::string::npos);
        REQUIRE(writePaper(paper, scratch / ("a" + std::string(format.ending))));
    }
    CHECK(formatOf(".PDF") == &rowOf(PaperFormat::pdf));
    CHECK(formatOf(".htm") == &rowOf(PaperFormat::html));
    CHECK_FALSE(formatOf(".doc"));
    CHECK_FALSE(formatOf("pdf"));
}
