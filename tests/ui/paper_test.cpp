// SPDX-License-Identifier: GPL-3.0-or-later
// Papers: pages, text that can be found again, both sizes, and disks that refuse.
#include "pdf_tools.h"
#include "ui/support.h"

#include "support/full_disk.h"
#include "ui/print/paged_paper.h"
#include "ui/print/pdf.h"

#include <QPainter>

using namespace staveline;
using namespace staveline::sheet;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

Document longPaper(int rows) {
    Document paper;
    paper.title = "Brew sheet for Heron";
    paper.subtitle = "Refill of 12 March";
    paper.footer = "Heron, made for a test";
    paper.blocks = {Heading{1, "Mash"}, Paragraph{"Refill 88 L at 1.049, first fill of the fine cask."},
                    Caution{"Add flaked oats late."}, BulletList{{"one", "two"}}};
    Table table{{"Step", "Minutes", "Measured"}, {}, {false, true, true}};
    for (int i = 0; i < rows; ++i)
        table.rows.push_back({"Rest " + std::to_string(i), std::to_string(i), ""});
    paper.blocks.push_back(table);
    paper.blocks.push_back(Heading{2, "Afterwards"});
    paper.blocks.push_back(Paragraph{"The last words."});
    return paper;
}

QImage painted(const PagedPaper& paper, int page) {
    QImage image((paper.pagePoints() * 1.5).toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(1.5, 1.5);
    paper.paint(painter, page);
    return image;
}
/// First and last row with ink.
std::pair<int, int> inkRows(const QImage& image) {
    int first = image.height(), last = -1;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (qGray(image.pixel(x, y)) < 128) {
                first = std::min(first, y);
                last = y;
            }
    return {first, last};
}

} // namespace

TEST_CASE("a short paper is one page, a long one breaks and repeats its table head", "[ui][paper]") {
    CHECK(PagedPaper(longPaper(3), PaperSize::a4).pages() == 1);
    const PagedPaper paper(longPaper(120), PaperSize::a4);
    CHECK(paper.pages() >= 3);
    if (!hasPdfTools())
        return;
    testing::Scratch scratch;
    REQUIRE(writePdf(longPaper(120), scratch / "long.pdf"));
    const QStringList pages = pdfPages(scratch / "long.pdf");
    REQUIRE(pages.size() == paper.pages());
    for (int i = 0; i < pages.size(); ++i) {
        INFO(i);
        CHECK(pages[i].contains(QString("page %1 of %2").arg(i + 1).arg(pages.size())));
        CHECK(pages[i].contains("Heron, made for a test"));
        if (pages[i].contains("Rest "))
            CHECK(pages[i].contains("Minutes"));
    }
    for (int i = 0; i < 120; ++i)
        CHECK(pages.join(' ').count(QRegularExpression(QString("Rest %1\\b").arg(i))) == 1);
    CHECK(pages.last().contains("The last words."));
}

TEST_CASE("words in the PDF can be found letter by letter", "[ui][paper]") {
    if (!hasPdfTools())
        return;
    testing::Scratch scratch;
    REQUIRE(writePdf(longPaper(2), scratch / "short.pdf"));
    const QString text = pdfPages(scratch / "short.pdf").join(' ');
    CHECK(text.contains("Refill 88 L at 1.049, first fill of the fine cask."));
    CHECK(text.contains("Caution: Add flaked oats late."));
    CHECK_FALSE(text.contains(QChar(0xFB01))); // the joined fi
}

TEST_CASE("A4 and Letter have their sizes", "[ui][paper]") {
    // ISO 216: 210 x 297 mm; ANSI/ASME Y14.1: 8.5 x 11 in
    CHECK(PagedPaper(longPaper(1), PaperSize::a4).pagePoints().width() == Approx(210 / 25.4 * 72).margin(.6));
    CHECK(PagedPaper(longPaper(1), PaperSize::a4).pagePoints().height() == Approx(297 / 25.4 * 72).margin(.6));
    CHECK(PagedPaper(longPaper(1), PaperSize::letter).pagePoints() == QSizeF(612, 792));
    if (!hasPdfTools())
        return;
    testing::Scratch scratch;
    REQUIRE(writePdf(longPaper(1), scratch / "letter.pdf", PaperSize::letter));
    const QString said = outputOf("pdfinfo", {qs((scratch / "letter.pdf").string())});
    CHECK(said.contains("612 x 792 pts (letter)"));
    CHECK(said.contains("Brew sheet for Heron"));
}

TEST_CASE("nothing is printed into the margins", "[ui][paper]") {
    const PagedPaper paper(longPaper(120), PaperSize::letter);
    for (int page = 0; page < paper.pages(); ++page) {
        const auto [first, last] = inkRows(painted(paper, page));
        CHECK(first > 1.5 * 40);
        CHECK(last < 1.5 * (792 - 40));
    }
}

TEST_CASE("a heading does not stay behind at the foot of a page", "[ui][paper]") {
    if (!hasPdfTools())
        return;
    testing::Scratch scratch;
    for (int rows = 25; rows < 45; ++rows) {
        REQUIRE(writePdf(longPaper(rows), scratch / "heading.pdf"));
        for (const QString& page : pdfPages(scratch / "heading.pdf")) {
            INFO(rows);
            CHECK(page.contains("Afterwards") == page.contains("The last words."));
        }
    }
}

TEST_CASE("an empty paper is one page", "[ui][paper][bad]") {
    testing::Scratch scratch;
    REQUIRE(writePdf(Document{}, scratch / "empty.pdf"));
    CHECK(testing::readAll(scratch / "empty.pdf").starts_with("%PDF-"));
    CHECK(PagedPaper(Document{}, PaperSize::a4).pages() == 1);
}

TEST_CASE("each ending has its format, an unknown one is said", "[ui][paper]") {
    testing::Scratch scratch;
    for (const char* name : {"a.pdf", "a.html", "a.md", "a.csv", "a.txt"}) {
        INFO(name);
        REQUIRE(writePaper(longPaper(2), scratch / name));
        CHECK_FALSE(testing::readAll(scratch / name).empty());
    }
    CHECK(testing::readAll(scratch / "a.html").find("<html") != std::string::npos);
    CHECK(testing::readAll(scratch / "a.csv").find("Rest 1,1,") != std::string::npos);
    const auto refused = writePaper(longPaper(2), scratch / "a.doc");
    REQUIRE_FALSE(refused);
    CHECK(refused.error().kind == FaultKind::input);
    CHECK(render(refused.error().remedy).find(".pdf") != std::string::npos);
    CHECK(paperNamed("letter") == PaperSize::letter);
    CHECK_FALSE(paperNamed("a5"));
}

TEST_CASE("a folder that is not there and a folder in place of a file are storage faults", "[ui][paper][bad]") {
    testing::Scratch scratch;
    for (const auto& path : {scratch / "nowhere/a.pdf", scratch.path()}) {
        const auto refused = writePdf(longPaper(2), path);
        INFO(path);
        REQUIRE_FALSE(refused);
        CHECK(refused.error().kind == FaultKind::storage);
        CHECK(render(refused.error().cause).find(path.string()) != std::string::npos);
        CHECK_FALSE(render(refused.error().remedy).empty());
    }
}

TEST_CASE("a full disk is a fault and leaves the old file whole", "[ui][paper][bad]") {
    testing::Scratch scratch;
    testing::writeAll(scratch / "sheet.pdf", "the sheet of last time");
    {
        const testing::FullDisk full(4096);
        const auto refused = writePdf(longPaper(120), scratch / "sheet.pdf");
        REQUIRE_FALSE(refused);
        CHECK(refused.error().kind == FaultKind::storage);
    }
    CHECK(testing::readAll(scratch / "sheet.pdf") == "the sheet of last time");
    CHECK(std::distance(std::filesystem::directory_iterator(scratch.path()), {}) == 1); // nothing half written
    CHECK(writePdf(longPaper(120), scratch / "sheet.pdf"));
}
