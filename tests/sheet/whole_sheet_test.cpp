// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for a whole sheet in each of its formats.
#include "quantity/csv.h"
#include "sheet/csv_reader.h"
#include "sheet/html_reader.h"
#include "sheet/sample_packing.h"
#include "sheet/sample_sheet.h"
#include "sheet/tasting_paper.h"

#include "support/catch.h"

#include <algorithm>
#include <set>

using namespace staveline;
using namespace staveline::sheet;

namespace {

Document wholeSheet() {
    const auto chosen = sample::proposal();
    return brewSheet(sample::input(&chosen), {}, sample::texts());
}

/// Every word of the blocks, in order; "" is a space to write in.
std::vector<std::string> textsOf(const Document& document) {
    std::vector<std::string> texts;
    struct Collect {
        std::vector<std::string>& out;
        void operator()(const Heading& h) const { out.push_back(h.text); }
        void operator()(const Paragraph& p) const { out.push_back(p.text); }
        void operator()(const Caution& c) const { out.push_back(c.text); }
        void operator()(const BulletList& list) const { out.insert(out.end(), list.items.begin(), list.items.end()); }
        void operator()(const Picture& picture) const { out.push_back(picture.words); }
        void operator()(const Table& table) const {
            out.insert(out.end(), table.columns.begin(), table.columns.end());
            for (const auto& row : table.rows)
                out.insert(out.end(), row.begin(), row.end());
        }
    };
    for (const auto& block : document.blocks)
        std::visit(Collect{texts}, block);
    std::erase(texts, "");
    return texts;
}

std::vector<Document> papers() {
    TastingPaperInput longPaper;
    longPaper.shortSheet = false;
    return {wholeSheet(),
            brewSheet(sample::input(nullptr), {}, sample::texts()),
            tastingPaper({}),
            tastingPaper(longPaper),
            packingSheet(sample::packing(), {}, sample::texts()),
            packingSheet(sample::refusedPacking(), {}, sample::texts())};
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

} // namespace

TEST_CASE("HTML says every word of the paper, in order") {
    for (const auto& paper : papers()) {
        const auto page = readHtml(writeHtml(paper));
        CHECK(page.wrong.empty());
        auto at = page.texts.begin();
        for (const auto& text : textsOf(paper)) {
            CAPTURE(text);
            // A caution's text follows its word after a space.
            at = std::find_if(at, page.texts.end(), [&](const auto& t) { return t == text || t == ' ' + text; });
            REQUIRE(at != page.texts.end());
            ++at;
        }
    }
}

TEST_CASE("CSV holds every word of the paper") {
    for (const auto& paper : papers()) {
        std::set<std::string> cells;
        for (const auto& record : readCsv(writeCsv(paper)))
            cells.insert(record.begin(), record.end());
        for (const auto& text : textsOf(paper)) {
            CAPTURE(text);
            CHECK((cells.contains(text) || cells.contains(paper.cautionWord + ": " + text)));
        }
    }
}

TEST_CASE("A table cut out of the CSV is a table for any reader") {
    const auto csv = writeCsv(wholeSheet());
    const auto begin = csv.find("Grain,Mass"), end = csv.find("\r\n\r\n", begin);
    REQUIRE(end != std::string::npos);
    const auto grist = CsvTable::parse(std::string_view(csv).substr(begin, end + 2 - begin));
    REQUIRE(grist.has_value());
    CHECK(grist->rows() == 4);
    CHECK(grist->text(2, "Grain") == "Flaked oats");
    CHECK(grist->text(2, "Mass") == "2.20 kg");
    CHECK(grist->text(2, "Weighed").empty());
}

TEST_CASE("Plain text keeps to the page, tables apart") {
    for (auto paper : papers()) {
        std::erase_if(paper.blocks, [](const Block& block) { return std::holds_alternative<Table>(block); });
        const auto text = writeText(paper);
        for (std::size_t at = 0; at < text.size();) {
            const auto end = text.find('\n', at);
            const auto line = std::string_view(text).substr(at, end - at);
            CAPTURE(line);
            CHECK(characters(line) <= 96);
            CHECK_FALSE(line.ends_with(' '));
            at = end + 1;
        }
    }
}

TEST_CASE("Columns of a plain text table begin under each other") {
    const auto text = writeText(wholeSheet());
    const auto head = text.find("Grain  ");
    REQUIRE(head != std::string::npos);
    std::vector<std::string> lines;
    for (auto at = head; text[at] != '\n';) {
        const auto end = text.find('\n', at);
        lines.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    REQUIRE(lines.size() == 6);
    const auto column = lines.front().find("Goes in");
    CHECK(lines[2].find("at the start") == column);
    CHECK(lines[4].find("at the last rest") == column);
    // Numbers end under each other.
    const auto massEnd = lines.front().find("Mass") + 4;
    CHECK(lines[2].find("15.4 kg") + 7 == massEnd);
    CHECK(lines[4].find("2.20 kg") + 7 == massEnd);
}

TEST_CASE("Ten sections, and a heading for each") {
    const auto page = readHtml(writeHtml(wholeSheet()));
    CHECK(std::count(page.opened.begin(), page.opened.end(), "section") == 10);
    CHECK(std::count(page.opened.begin(), page.opened.end(), "h2") == 10);
    CHECK(std::count(page.opened.begin(), page.opened.end(), "h3") == 0);
    CHECK(std::count(page.opened.begin(), page.opened.end(), "thead") ==
          std::count(page.opened.begin(), page.opened.end(), "table"));
}

TEST_CASE("A catalogue in another language reaches the whole sheet") {
    const std::vector<std::string_view> files{"sheet.section.grist\tSch\xC3\xBCttung\nsheet.caution\tVorsicht\n"};
    const auto catalogue = Catalogue::parse(files);
    const auto text = writeMarkdown(brewSheet(sample::input(nullptr), {}, catalogue));
    CHECK(text.find("## Sch\xC3\xBCttung") != std::string::npos);
    CHECK(text.find("> **Vorsicht:**") != std::string::npos);
    CHECK(text.find("Grist") == std::string::npos);
}

TEST_CASE("Oxygen in the air that would follow a draw") {
    // 75 L of air hold 21 g of oxygen: 75 x 1.2 g/L x 0.23, by hand.
    CHECK(75 * oxygenInAir == Approx(21));
}
