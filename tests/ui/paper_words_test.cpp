// SPDX-License-Identifier: GPL-3.0-or-later
// Nothing that a paper says is lost on its pages: every word of every block, on either size, whatever a vessel is
// called; no caution torn, no page empty, nothing outside the margins or too small to read.
#include "pdf_tools.h"
#include "ui/support.h"

#include "desk/advice.h"
#include "desk/ledger.h"
#include "facts/sample.h"
#include "sheet/document.h"
#include "ui/print/paged_paper.h"
#include "ui/print/pdf.h"
#include "ui/print/text_document.h"

#include <QTextBlock>
#include <QTextDocument>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::facts;
using namespace staveline::sheet;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

constexpr double margin = 45, footEnds = 25, smallest = 9; // points

/// Without spaces: a line may end in the middle of what is longer than it.
QString packed(QString text) {
    return text.remove(QRegularExpression("\\s"));
}

/// Every text of a block.
struct Texts {
    std::vector<std::string> operator()(const Heading& heading) const { return {heading.text}; }
    std::vector<std::string> operator()(const Paragraph& paragraph) const { return {paragraph.text}; }
    std::vector<std::string> operator()(const Caution& caution) const { return {caution.text}; }
    std::vector<std::string> operator()(const Picture&) const { return {}; } // its words are drawn
    std::vector<std::string> operator()(const BulletList& list) const { return list.items; }
    std::vector<std::string> operator()(const Table& table) const {
        std::vector<std::string> all = table.columns;
        for (const auto& row : table.rows)
            all.insert(all.end(), row.begin(), row.end());
        return all;
    }
};

QStringList packedPages(const std::filesystem::path& pdf) {
    QStringList pages = pdfPages(pdf, "-raw");
    for (QString& page : pages)
        page = packed(page);
    return pages;
}

void checkWords(const Document& document, const QStringList& pages) {
    const QString whole = pages.join(QString());
    std::vector<std::string> texts{document.title, document.subtitle};
    for (const Block& block : document.blocks)
        for (auto& text : std::visit(Texts(), block))
            texts.push_back(std::move(text));
    for (const std::string& text : texts)
        for (const QString& word : qs(text).split(QRegularExpression("\\s+"), Qt::SkipEmptyParts))
            if (!whole.contains(word))
                FAIL_CHECK(word.toStdString() << " is lost: " << text);
    for (const Block& block : document.blocks)
        if (const auto* caution = std::get_if<Caution>(&block)) {
            INFO(caution->text);
            const QString box = packed(qs(document.cautionWord + ":" + caution->text));
            CHECK(std::any_of(pages.begin(), pages.end(), [&](const QString& page) { return page.contains(box); }));
        }
}

/// "xMin=..." of every word, as the tool measured them on the page.
void checkPlaces(const std::filesystem::path& pdf, QSizeF page) {
    static const QRegularExpression word(
        R"re(<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*)</word>)re");
    int words = 0;
    for (auto each = word.globalMatch(outputOf("pdftotext", {"-bbox", qs(pdf.string()), "-"})); each.hasNext();) {
        const auto found = each.next();
        ++words;
        // Not at the top: of a text that runs on, the last line before is drawn there too, but clipped away.
        const bool inside = found.captured(1).toDouble() >= margin - 1 &&
                            found.captured(3).toDouble() <= page.width() - margin + 1 &&
                            found.captured(4).toDouble() <= page.height() - footEnds;
        if (!inside)
            FAIL_CHECK(found.captured(0).toStdString());
    }
    CHECK(words > 0);
}

void checkSizes(const Document& document, double width) {
    const auto text = textDocument(document, width * unitsPerPoint);
    for (QTextBlock block = text->begin(); block.isValid(); block = block.next())
        for (auto part = block.begin(); !part.atEnd(); ++part) {
            INFO(part.fragment().text().toStdString());
            CHECK(part.fragment().charFormat().font().pixelSize() >= smallest * unitsPerPoint);
        }
}

void checkPaper(const Document& document) {
    const Scratch scratch;
    const auto pdf = scratch / "paper.pdf";
    for (const PaperSizeRow& size : paperSizes) {
        INFO(document.title << ", " << document.subtitle << ", " << size.name);
        REQUIRE(writePdf(document, pdf, size.size));
        const PagedPaper paper(document, size.size);
        const QStringList pages = packedPages(pdf);
        REQUIRE(pages.size() == paper.pages());
        const QString foot = packed(qs(document.footer)).left(20);
        for (const QString& page : pages)
            CHECK(page.lastIndexOf(foot) > 12); // more than its number stands above it
        checkWords(document, pages);
        checkPlaces(pdf, paper.pagePoints());
        checkSizes(document, paper.pagePoints().width() - 2 * margin);
    }
}

std::string named(int characters, const std::string& word) {
    std::string name;
    while (static_cast<int>(name.size()) < characters)
        name += word;
    return name.substr(0, static_cast<std::size_t>(characters));
}

Document titled(const std::string& title, const std::string& subtitle, const std::string& footer) {
    Document paper;
    paper.title = title;
    paper.subtitle = subtitle;
    paper.footer = footer;
    return paper;
}

} // namespace

TEST_CASE("every word of every paper is on its pages, whatever the vessel is called", "[ui][paper]") {
    if (!hasPdfTools())
        return;
    DeskInScratch s;
    REQUIRE(s.desk->record(*sampleCellar(s.today)));
    std::vector<std::string> vessels;
    const auto cellar = *s.desk->cellar();
    for (const auto& vessel : cellar)
        vessels.push_back(vessel.name);
    REQUIRE(vessels.size() == 3);
    for (std::string vessel : vessels) {
        const auto job = s.desk->adviceJob({vessel, {}, {}, true});
        REQUIRE(job);
        const auto advice = advise(job->input);
        REQUIRE(advice);
        REQUIRE(s.desk->choose(*job, *advice, advice->proposals.empty() ? 0 : 1));
        for (const std::string& name : {vessel, named(59, vessel + " of oak ") + "x", named(60, "W" + vessel)}) {
            VesselEditFact edit;
            edit.vessel = vessel;
            edit.name = name;
            edit.note = named(200, "sharp at the edge, ");
            if (name != vessel)
                REQUIRE(s.desk->record(Fact{edit}));
            vessel = name;
            checkPaper(*s.desk->brewSheet(vessel, {}));
            for (const bool shortSheet : {true, false})
                checkPaper(s.desk->tastingPaper(vessel, shortSheet, {}));
        }
    }
}

TEST_CASE("a caution stands whole on one page, wherever it comes", "[ui][paper]") {
    if (!hasPdfTools())
        return;
    for (int before = 30; before < 52; ++before) {
        Document paper = titled("Brew sheet for Heron", "Refill of 12 March", "Heron, made for a test");
        for (int i = 0; i < before; ++i)
            paper.blocks.emplace_back(Paragraph{"Line " + std::to_string(i)});
        if (before % 2 == 0)
            paper.blocks.emplace_back(Heading{2, "Draw day"});
        for (const char* step : {"first", "second", "third"})
            paper.blocks.emplace_back(
                Caution{std::string(step) + ": " + named(420, "never your head into a vessel, ")});
        paper.blocks.emplace_back(Paragraph{"The last words."});
        INFO(before);
        checkPaper(paper);
    }
}

TEST_CASE("what is longer than its line is broken, not lost", "[ui][paper]") {
    if (!hasPdfTools())
        return;
    const std::string word = named(200, "Wwm"), note = named(200, "sharp at the edge, ");
    Document paper = titled("Brew sheet for " + word, note, "made for a test, " + word);
    paper.blocks = {Heading{1, word},
                    Paragraph{note},
                    Paragraph{word},
                    Caution{word},
                    BulletList{{word, note}},
                    Table{{"Step", "Note", "Measured"}, {{word, note, ""}, {note, word.substr(0, 60), ""}}, {}},
                    Table{{"Line", "0", "2", "4", "6", "8", "Cold"}, {{word, "a", "b", "c", "d", "e", ""}}, {}}};
    checkPaper(paper);
}
