// SPDX-License-Identifier: GPL-3.0-or-later
// No page of a paper is empty: each says something beyond its foot and the table heads that repeat. Spaces to write in
// are boxes, a few lines for notes stay together, and the country decides what is printed on.
#include "pdf_tools.h"
#include "ui/support.h"

#include "facts/sample.h"
#include "sheet/document.h"
#include "ui/draw_refill/ledger_paper.h"
#include "ui/draw_refill/page.h"
#include "ui/history/page.h"
#include "ui/print/paged_paper.h"
#include "ui/print/pdf.h"
#include "ui/window/cellar_view.h"

#include <QPainter>

#include <cstdlib>

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::sheet;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

QString withoutSpaces(const std::string& text) {
    return qs(text).remove(QRegularExpression("\\s"));
}

QString headOf(const Table& table) {
    std::string head;
    for (const std::string& column : table.columns)
        head += column;
    return withoutSpaces(head);
}

/// What a page says of its own: the foot is on every page, and so may be the head of a table.
QString ownWords(const QString& page, const Document& document) {
    QString words = withoutSpaces(toStd(page));
    words.remove(QRegularExpression("page\\d+of\\d+"));
    words.remove(withoutSpaces(document.footer));
    for (const Block& block : document.blocks)
        if (const auto* table = std::get_if<Table>(&block))
            words.remove(headOf(*table));
    return words;
}

/// The number of pages.
qsizetype checkNoEmptyPage(const Document& document, PaperSize size) {
    const Scratch scratch;
    REQUIRE(writePdf(document, scratch / "paper.pdf", size));
    const QStringList pages = pdfPages(scratch / "paper.pdf", "-raw");
    for (qsizetype i = 0; i < pages.size(); ++i) {
        INFO(document.title << ", " << document.subtitle << ", " << rowOf(size).name << ", page " << i + 1 << " of "
                            << pages.size() << ": " << pages[i].toStdString());
        CHECK(ownWords(pages[i], document).size() > 3);
    }
    return pages.size();
}

/// The longest upright line, in points.
int longestUpright(const Document& document) {
    const PagedPaper paper(document, PaperSize::a4);
    QImage image(paper.pagePoints().toSize() * 2, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(2, 2);
    paper.paint(painter, 0);
    int longest = 0;
    for (int x = 0; x < image.width(); ++x)
        for (int y = 0, run = 0; y < image.height(); ++y) {
            run = qGray(image.pixel(x, y)) < 160 ? run + 1 : 0;
            longest = std::max(longest, run);
        }
    return longest / 2;
}

class Environment {
public:
    Environment(const char* name, const char* value) : name_(name), before_(qgetenv(name)) { qputenv(name, value); }
    ~Environment() { before_.isNull() ? qunsetenv(name_) : qputenv(name_, before_); }
    Environment(const Environment&) = delete;
    Environment& operator=(const Environment&) = delete;

private:
    const char* name_;
    QByteArray before_;
};

} // namespace

TEST_CASE("no page of any paper is empty, whatever vessel and size", "[ui][paper]") {
    if (!hasPdfTools())
        return;
    WindowInScratch w(false);
    REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
    CellarView& cellar = *w.window->cellar();
    const desk::Desk& desk = w.window->session()->desk();
    const auto vessels = *desk.vessels();
    for (const VesselFact& vessel : vessels) {
        cellar.showVessel(vessel.name);
        cellar.showPage(PageId::drawRefill);
        const auto ledger = ledgerPaper(vessel.name, cellar.drawRefill().model(), desk.today());
        REQUIRE(ledger);
        for (const PaperSizeRow& size : paperSizes) {
            CHECK(checkNoEmptyPage(*desk.brewSheet(vessel.name), size.size) <= 3);
            CHECK(checkNoEmptyPage(desk.tastingPaper(vessel.name, true), size.size) <= 2);
            CHECK(checkNoEmptyPage(desk.tastingPaper(vessel.name, false), size.size) <= 3);
            checkNoEmptyPage(*ledger, size.size);
        }
    }
}

TEST_CASE("lines for notes are not torn, wherever they come", "[ui][paper]") {
    if (!hasPdfTools())
        return;
    for (int before = 30; before < 60; ++before) {
        Document paper;
        paper.title = "Tasting sheet for Heron";
        paper.footer = "Heron, made for a test";
        for (int i = 0; i < before; ++i)
            paper.blocks.emplace_back(Paragraph{"Line " + std::to_string(i)});
        paper.blocks.emplace_back(Heading{1, "The beer as a whole"});
        paper.blocks.emplace_back(Table{{"Would you draw it?", "In your own words"}, {4, {"", ""}}, {}});
        for (const PaperSizeRow& size : paperSizes)
            checkNoEmptyPage(paper, size.size);
    }
}

TEST_CASE("a short table is not torn, wherever it comes", "[ui][paper]") {
    if (!hasPdfTools())
        return;
    Scratch scratch;
    for (int before = 20; before < 60; ++before) {
        sheet::Document paper;
        paper.title = "Paper";
        for (int i = 0; i < before; ++i)
            paper.blocks.emplace_back(sheet::Paragraph{"A line before."});
        paper.blocks.emplace_back(sheet::Table{
            {"What", "Measured"}, {{"first row", ""}, {"second row", ""}, {"third row", ""}, {"last row", ""}}, {}});
        REQUIRE(writePdf(paper, scratch / "torn.pdf", PaperSize::letter));
        for (const QString& page : pdfPages(scratch / "torn.pdf")) {
            INFO(before << " lines before");
            CHECK(page.contains("first row") == page.contains("last row"));
        }
    }
}

TEST_CASE("a space to write in is a box, what is printed has none", "[ui][paper]") {
    Document paper;
    paper.title = "Sheet";
    Table table{{"Line", "Cold"}, {}, {}};
    for (int i = 0; i < 6; ++i)
        table.rows.push_back({"sourness", "5"});
    paper.blocks = {table};
    const int letters = longestUpright(paper);
    for (auto& row : std::get<Table>(paper.blocks.front()).rows)
        row.back().clear();
    CHECK(letters < 25); // of the title
    CHECK(longestUpright(paper) > 60);
}

TEST_CASE("the country of the machine decides on the paper", "[ui][paper]") {
    const Environment all("LC_ALL", ""), lang("LANG", "de_DE.UTF-8");
    {
        const Environment paper("LC_PAPER", "");
        CHECK(localPaper() == PaperSize::a4);
    }
    {
        const Environment paper("LC_PAPER", "en_US.UTF-8"); // it says more of paper than LANG does
        CHECK(localPaper() == PaperSize::letter);
        const Environment over("LC_ALL", "fr_FR");
        CHECK(localPaper() == PaperSize::a4);
    }
    const Environment paper("LC_PAPER", ""), none("LANG", "C.UTF-8");
    CHECK(localPaper() == PaperSize::a4);
}
