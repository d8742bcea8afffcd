// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/csv.h"
#include "sheet/csv_reader.h"
#include "sheet/document.h"
#include "sheet/html_reader.h"

#include "support/property.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::sheet;

namespace {

Document small() {
    Document d;
    d.title = "Sheet <1>";
    d.subtitle = "for Plover & Knot";
    d.footer = "end";
    d.blocks = {Heading{1, "Water"},
                Paragraph{"Two | three"},
                Table{{"What", "L"}, {{"mash, \"thick\"", "62.5 L"}, {"sparge", ""}}, {false, true}},
                Heading{2, "Then"},
                Caution{"It is hot."},
                Heading{1, "Hops"},
                BulletList{{"one", "two"}}};
    return d;
}

bool contains(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

/// Any text a brewer may type.
std::string anyText() {
    static const std::string letters = "ab <>&\"'|\\*_`#[]\n\r,;-+=1.\xC2\xB0";
    std::string out;
    for (auto n = *rc::gen::inRange(0, 9); n > 0; --n)
        out += letters[*rc::gen::inRange<std::size_t>(0, letters.size())];
    return out;
}

Table anyTable() {
    return {{anyText(), anyText(), anyText()}, {{anyText(), anyText(), anyText()}, {anyText()}}, {true}};
}

Document anyDocument() {
    Document d;
    d.title = anyText();
    d.subtitle = anyText();
    for (auto n = *rc::gen::inRange(0, 6); n > 0; --n)
        switch (*rc::gen::inRange(0, 5)) {
        case 0:
            d.blocks.emplace_back(Heading{*rc::gen::inRange(1, 4), anyText()});
            break;
        case 1:
            d.blocks.emplace_back(Paragraph{anyText()});
            break;
        case 2:
            d.blocks.emplace_back(Caution{anyText()});
            break;
        case 3:
            d.blocks.emplace_back(BulletList{{anyText(), anyText()}});
            break;
        default:
            d.blocks.emplace_back(anyTable());
        }
    return d;
}

std::size_t barePipes(std::string_view line) {
    std::size_t pipes = 0;
    for (std::size_t i = 0; i < line.size(); ++i)
        if (line[i] == '\\')
            ++i;
        else if (line[i] == '|')
            ++pipes;
    return pipes;
}

} // namespace

TEST_CASE("Plain text: aligned, ruled, with room to write") {
    CHECK(writeText(small()) == "Sheet <1>\n"
                                "=========\n"
                                "for Plover & Knot\n"
                                "\n"
                                "Water\n"
                                "=====\n"
                                "\n"
                                "Two | three\n"
                                "\n"
                                "What                L\n"
                                "-------------  ------\n"
                                "mash, \"thick\"  62.5 L\n"
                                "sparge         ______\n"
                                "\n"
                                "Then\n"
                                "----\n"
                                "\n"
                                "! Caution: It is hot.\n"
                                "\n"
                                "Hops\n"
                                "====\n"
                                "\n"
                                "- one\n"
                                "- two\n"
                                "\n"
                                "end\n");
}

TEST_CASE("Plain text wraps at words and counts characters, not bytes") {
    Document d;
    d.title = "48 \xC2\xB0"
              "C";
    d.blocks = {Caution{std::string(80, 'a') + ' ' + std::string(20, 'b')}};
    const auto text = writeText(d);
    CHECK(contains(text, "48 \xC2\xB0"
                         "C\n=====\n"));
    CHECK(contains(text, "\n  " + std::string(20, 'b') + "\n"));
}

TEST_CASE("A picture is drawn in HTML and told in words elsewhere") {
    Document d;
    d.title = "Charts";
    d.blocks = {Picture{"<svg><rect fill=\"#000\"/></svg>", "Acidity over three years."}};
    CHECK(contains(writeHtml(d), "<img alt=\"Acidity over three years.\" "
                                 "src=\"data:image/svg+xml,%3Csvg%3E%3Crect%20fill%3D%22%23000%22%2F%3E"));
    CHECK(readHtml(writeHtml(d)).wrong.empty());
    for (const auto& text : {writeText(d), writeMarkdown(d), writeCsv(d)})
        CHECK(contains(text, "Acidity over three years."));
}

TEST_CASE("Plain text has a whole line for notes") {
    Document d;
    d.blocks = {Table{{"Notes"}, {{""}}, {}}};
    CHECK(contains(writeText(d), '\n' + std::string(96, '_') + '\n'));
}

TEST_CASE("Markdown: tables, cautions and escapes") {
    const auto text = writeMarkdown(small());
    CHECK(text == "# Sheet \\<1\\>\n"
                  "\n"
                  "for Plover \\& Knot\n"
                  "\n"
                  "## Water\n"
                  "\n"
                  "Two \\| three\n"
                  "\n"
                  "| What | L |\n"
                  "| --- | ---: |\n"
                  "| mash, \"thick\" | 62.5 L |\n"
                  "| sparge |  |\n"
                  "\n"
                  "### Then\n"
                  "\n"
                  "> **Caution:** It is hot.\n"
                  "\n"
                  "## Hops\n"
                  "\n"
                  "- one\n"
                  "- two\n"
                  "\n"
                  "---\n"
                  "\n"
                  "end\n");
}

TEST_CASE("Markdown: what would start a list, a rule or a heading does not") {
    const auto line = [](std::string text) {
        Document d;
        d.blocks = {Paragraph{std::move(text)}};
        return writeMarkdown(d).substr(4);
    };
    CHECK(line("- dash") == "\\- dash\n");
    CHECK(line("+0.4 funk") == "\\+0.4 funk\n");
    CHECK(line("12. day") == "12\\. day\n");
    CHECK(line("12.5 L") == "12.5 L\n");
    CHECK(line("3)") == "3\\)\n");
    CHECK(line("=====") == "\\=====\n");
    CHECK(line("# one") == "\\# one\n");
    CHECK(line("2026-03-02") == "2026-03-02\n");
    CHECK(line("two\nlines") == "two lines\n");
}

TEST_CASE("HTML: one page, in sections, with table heads that can repeat") {
    const auto html = writeHtml(small());
    const auto page = readHtml(html);
    CHECK(page.wrong.empty());
    CHECK(contains(html, "<!DOCTYPE html>\n<html lang=\"en\">"));
    CHECK(contains(html, "<title>Sheet &lt;1&gt;</title>"));
    CHECK(contains(html, "thead { display: table-header-group; }"));
    CHECK(contains(html, "@page { margin"));
    CHECK_FALSE(contains(html, "size: A4")); // A4 and Letter alike
    CHECK_FALSE(contains(html, "http"));     // nothing is fetched
    CHECK(contains(html, "<td class=\"write\"></td>"));
    CHECK(contains(html, "<th scope=\"col\" class=\"n\">L</th>"));
    CHECK(contains(html, "<strong>Caution:</strong> It is hot."));
    CHECK(std::count(page.opened.begin(), page.opened.end(), "section") == 2);
    CHECK(std::count(page.opened.begin(), page.opened.end(), "h1") == 1);
    CHECK(std::count(page.opened.begin(), page.opened.end(), "h2") == 2);
    CHECK(std::count(page.opened.begin(), page.opened.end(), "h3") == 1);
}

TEST_CASE("HTML needs no colour to be read") {
    // Only black, white and the grey of thin rules: anything else would be lost on a laser print.
    const auto html = writeHtml(small());
    for (auto at = html.find('#'); at != std::string::npos; at = html.find('#', at + 1)) {
        const auto colour = html.substr(at, 4);
        CAPTURE(colour);
        CHECK((colour == "#000" || colour == "#fff" || colour == "#666"));
    }
}

TEST_CASE("HTML takes the language and the caution word of the document") {
    auto d = small();
    d.language = "de";
    d.cautionWord = "Vorsicht";
    CHECK(contains(writeHtml(d), "<html lang=\"de\">"));
    CHECK(contains(writeHtml(d), "<strong>Vorsicht:</strong>"));
    CHECK(contains(writeMarkdown(d), "> **Vorsicht:**"));
    CHECK(contains(writeText(d), "! Vorsicht:"));
    CHECK(contains(writeCsv(d), "Vorsicht: It is hot."));
}

TEST_CASE("CSV: records end in CRLF, an empty one ends a table") {
    CHECK(writeCsv(small()) == "Sheet <1>\r\nfor Plover & Knot\r\nWater\r\nTwo | three\r\n"
                               "What,L\r\n\"mash, \"\"thick\"\"\",62.5 L\r\nsparge,\r\n\r\n"
                               "Then\r\nCaution: It is hot.\r\nHops\r\none\r\ntwo\r\nend\r\n");
}

TEST_CASE("Short rows and empty documents are written too") {
    Document d;
    d.blocks = {Table{{"a", "b", "c"}, {{"1"}, {}}, {true, false, true, true}}, Table{}, BulletList{}};
    CHECK(contains(writeMarkdown(d), "| 1 |  |  |\n"));
    CHECK(contains(writeCsv(d), "1,,\r\n,,\r\n"));
    CHECK(contains(writeText(d), "     1  ______  ______\n"));
    for (const auto& html : {writeHtml(d), writeHtml({})})
        CHECK(readHtml(html).wrong.empty());
    CHECK(writeCsv({}) == "\r\n");
}

TEST_CASE("Any document is well formed HTML that says every word") {
    CHECK_PROPERTY("tags close, texts come back", [] {
        const auto d = anyDocument();
        const auto page = readHtml(writeHtml(d));
        RC_ASSERT(page.wrong == "");
        for (const auto& block : d.blocks)
            if (const auto* p = std::get_if<Paragraph>(&block)) {
                auto said = p->text;
                std::replace_if(
                    said.begin(), said.end(), [](char c) { return c == '\n' || c == '\r'; }, ' ');
                const bool blank = said.find_first_not_of(' ') == std::string::npos;
                RC_ASSERT(blank || std::find(page.texts.begin(), page.texts.end(), said) != page.texts.end());
            }
    });
}

namespace {

std::vector<std::string> harmless(std::vector<std::string> cells) {
    for (auto& cell : cells)
        cell = withoutFormula(cell);
    return cells;
}

} // namespace

TEST_CASE("No cell of a paper begins a formula") {
    Document d;
    d.title = "=cmd|calc!A1";
    d.blocks = {Table{{"@a", "b"}, {{"-1+1", "-0.4"}}, {}}, BulletList{{"+x"}}};
    const auto records = readCsv(writeCsv(d));
    CHECK(records[0][0] == "'=cmd|calc!A1");
    CHECK(records[1] == std::vector<std::string>({"'@a", "b"}));
    CHECK(records[2] == std::vector<std::string>({"'-1+1", "-0.4"}));
    CHECK(records.back()[0] == "'+x");
}

TEST_CASE("Any table comes back from CSV") {
    CHECK_PROPERTY("cells are the same after writing and reading", [] {
        Document d;
        d.title = "t";
        const auto table = anyTable();
        d.blocks = {table};
        const auto records = readCsv(writeCsv(d));
        RC_ASSERT(records.size() == 5U);
        RC_ASSERT(records[1] == harmless(table.columns));
        RC_ASSERT(records[2] == harmless(table.rows[0]));
        RC_ASSERT(records[3] == std::vector<std::string>({withoutFormula(table.rows[1][0]), "", ""}));
    });
}

TEST_CASE("Any table keeps its columns in Markdown") {
    CHECK_PROPERTY("every line of a table has one bar more than columns", [] {
        const auto text = writeMarkdown(anyDocument());
        for (std::size_t at = 0; at < text.size();) {
            const auto end = text.find('\n', at);
            const auto line = std::string_view(text).substr(at, end - at);
            RC_ASSERT(barePipes(line) == (line.starts_with('|') ? 4U : 0U));
            at = end + 1;
        }
    });
}

TEST_CASE("Steps have a box to tick in every format") {
    Document d;
    d.title = "Day";
    d.blocks = {BulletList{{"Weigh, then boil."}, true}};
    CHECK(contains(writeText(d), "\n[ ] Weigh, then boil.\n"));
    CHECK(contains(writeMarkdown(d), "\n- [ ] Weigh, then boil.\n"));
    CHECK(contains(writeHtml(d), "<ul class=\"steps\">"));
    CHECK(contains(writeHtml(d), ".steps { list-style: \"\\2610"));
    CHECK(contains(writeCsv(d), "\"Weigh, then boil.\",\r\n"));
}
