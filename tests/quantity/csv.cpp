// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/csv.h"

#include "support/property.h"

#include <fmt/core.h>

namespace staveline {
namespace {

CsvTable table(std::string_view text) {
    const auto parsed = CsvTable::parse(text);
    REQUIRE(parsed);
    return *parsed;
}
Fault faultOf(std::string_view text) {
    const auto parsed = CsvTable::parse(text);
    REQUIRE_FALSE(parsed);
    return parsed.error();
}
std::int64_t lineIn(const Fault& fault) {
    return std::get<std::int64_t>(fault.cause.arguments.at(0).value);
}

std::string quoted(const std::string& cell) {
    std::string out = "\"";
    for (const char c : cell)
        out += c == '"' ? "\"\"" : std::string(1, c);
    return out + '"';
}

} // namespace

// The rules and examples of RFC 4180, section 2.
TEST_CASE("RFC 4180 rules 1 and 2: records end with CRLF, the last may do without") {
    for (const auto* text : {"a,b,c\r\nzzz,yyy,xxx\r\n", "a,b,c\r\nzzz,yyy,xxx", "a,b,c\nzzz,yyy,xxx\n"}) {
        const auto rows = table(text);
        CHECK(rows.rows() == 1);
        CHECK(rows.text(0, "a") == "zzz");
        CHECK(rows.text(0, "c") == "xxx");
    }
}

TEST_CASE("RFC 4180 rule 3: the first record names the columns") {
    const auto rows = table("field_name,other name\r\naaa,bbb\r\n");
    CHECK(rows.header() == std::vector<std::string>{"field_name", "other name"});
    CHECK(rows.hasColumn("other name"));
    CHECK_FALSE(rows.hasColumn("aaa"));
}

TEST_CASE("RFC 4180 rule 4: spaces belong to a field, every record has as many fields as the first") {
    CHECK(table("a,b\n x , y\n").text(0, "a") == " x ");
    CHECK(table("a,b\n,\n").text(0, "b").empty());
    CHECK(faultOf("a,b\n1,2\n1,2,3\n").path == "/1");
    CHECK(faultOf("a,b\n1\n").path == "/0");
    CHECK(faultOf("a,b\n1,2,\n").cause.key == "quantity.csv_cells");
    CHECK(faultOf("a,b\n\n1,2\n").path == "/0");
}

TEST_CASE("RFC 4180 rules 5 to 7: quotes hold commas, line ends and doubled quotes") {
    CHECK(table("a,b\r\n\"aaa\",bbb\r\n").text(0, "a") == "aaa");
    CHECK(table("a,b\r\n\"aa,a\",bbb\r\n").text(0, "a") == "aa,a");
    CHECK(table("a,b\r\n\"b\r\nbb\",zzz").text(0, "a") == "b\r\nbb");
    CHECK(table("a,b\r\n\"b\"\"bb\",zzz").text(0, "a") == "b\"bb");
    CHECK(table("a,b\r\n\"\",\"\"\"\"").text(0, "b") == "\"");
    CHECK(table("\"a\",\"b,c\"\r\n1,2\r\n").text(0, "b,c") == "2");
}

TEST_CASE("A byte order mark does not become part of the first name") {
    CHECK(table("\xEF\xBB\xBF"
                "a,b\n1,2\n")
              .hasColumn("a"));
}

TEST_CASE("A table of one column may hold empty cells, a header alone has no rows") {
    CHECK(table("a\n\nx\n").rows() == 2);
    CHECK(table("a,b").rows() == 0);
    CHECK(table("a,b\r\n").rows() == 0);
}

TEST_CASE("Malformed tables are refused with their line") {
    CHECK(faultOf("").cause.key == "quantity.csv_no_header");
    CHECK(faultOf("\n1\n").cause.key == "quantity.csv_no_header");
    CHECK(faultOf("a,b,a\n1,2,3\n").cause.key == "quantity.csv_same_name");

    const auto open = faultOf("a,b\n1,2\n\"3\n\n,4\n");
    CHECK(open.cause.key == "quantity.csv_unclosed");
    CHECK(lineIn(open) == 3);
    CHECK(open.path == "/1");

    const auto behind = faultOf("a,b\n\"1\"x,2\n");
    CHECK(behind.cause.key == "quantity.csv_character");
    CHECK(lineIn(behind) == 2);
    CHECK(faultOf("a,b\n1\"2,3\n").cause.key == "quantity.csv_character");
    CHECK(faultOf("a,b\n1,2\rx,3\n").cause.key == "quantity.csv_character");

    CHECK(lineIn(faultOf("a,b\n\"x\ny\",2\n1\n")) == 4);
    CHECK(faultOf("a,b\n1\n").kind == FaultKind::input);
    CHECK(faultOf("a,b\n1\n").remedy.key == "quantity.csv_remedy");
}

TEST_CASE("Numbers in cells are read whole and with a point only") {
    const auto rows = table("n,empty,list\n1.5,,\n-2e-3,,\n\"1,5\",,\nabc,,\n1.5 ,,\nnan,,\ninf,,\n0x10,,\n1e999,,\n");
    CHECK(rows.number(0, "n").value() == 1.5);
    CHECK(rows.number(1, "n").value() == -0.002);
    for (std::size_t row = 2; row < rows.rows(); ++row) {
        INFO("row " << row);
        REQUIRE_FALSE(rows.number(row, "n"));
        CHECK(rows.number(row, "n").error().path == fmt::format("/{}/n", row));
        CHECK(rows.number(row, "n").error().cause.key == "quantity.not_a_number");
    }
}

TEST_CASE("An empty cell is a number only where that is allowed") {
    const auto rows = table("n,m\n,7\nx,8\n");
    CHECK_FALSE(rows.number(0, "n"));
    CHECK(rows.number(0, "n", -1).value() == -1);
    CHECK(rows.number(0, "m", -1).value() == 7);
    CHECK_FALSE(rows.number(1, "n", -1));
}

TEST_CASE("A missing column or row is never taken for an empty cell") {
    const auto rows = table("a\n1\n");
    CHECK(rows.text(0, "b").empty());
    CHECK(rows.text(1, "a").empty());
    CHECK(rows.number(0, "b").error().cause.key == "quantity.csv_no_column");
    CHECK_FALSE(rows.number(0, "b", 3));
    CHECK_FALSE(rows.number(1, "a", 3));
}

TEST_CASE("Paths to cells escape what a JSON pointer escapes") {
    // RFC 6901, section 3: '~' is written ~0 and '/' is written ~1.
    CHECK(cellPath(2, "ta_g/L") == "/2/ta_g~1L");
    CHECK(cellPath(0, "a~b") == "/0/a~0b");
    CHECK(table("g/L\nx\n").number(0, "g/L").error().path == "/0/g~1L");
}

TEST_CASE("Whatever is quoted comes back") {
    CHECK_PROPERTY("one row of any cells", [](const std::vector<std::string>& cells) {
        std::string header = "c", row = quoted("first");
        for (std::size_t i = 0; i < cells.size(); ++i) {
            header += fmt::format(",c{}", i);
            row += ',' + quoted(cells[i]);
        }
        const auto parsed = CsvTable::parse(header + "\r\n" + row + "\r\n");
        RC_ASSERT(parsed);
        RC_ASSERT(parsed->rows() == 1U);
        for (std::size_t i = 0; i < cells.size(); ++i)
            RC_ASSERT(parsed->text(0, fmt::format("c{}", i)) == cells[i]);
    });
}

TEST_CASE("Any text is either a table or a fault") {
    CHECK_PROPERTY("no crash, no ragged row", [](const std::string& text) {
        const auto parsed = CsvTable::parse(text);
        if (!parsed) {
            RC_ASSERT_FALSE(parsed.error().cause.key.empty());
            return;
        }
        for (std::size_t row = 0; row < parsed->rows(); ++row)
            for (const auto& name : parsed->header())
                (void)parsed->text(row, name);
    });
}

TEST_CASE("No cell begins a formula, and numbers stay numbers") {
    for (const char* formula : {"=1+1", "+1+1", "-1+1", "@sum(a1)", "=cmd|calc!A1", "\t=tab", "\r=x", "\n=x", "=", "-"})
        CHECK(withoutFormula(formula) == std::string("'") + formula);
    for (const char* plain : {"", "Plover", "1+1", "a=b", "-0.4", "+0.4", "-18", "12", "'=x", " =1"})
        CHECK(withoutFormula(plain) == plain);
}

} // namespace staveline
