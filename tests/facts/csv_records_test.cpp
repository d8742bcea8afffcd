// SPDX-License-Identifier: GPL-3.0-or-later
// The samples of RFC 4180, section 2, points 1 to 7, as they stand there; and what files of spreadsheets have beside
// it.
#include "facts/csv_records.h"
#include "support/catch.h"
#include "support/property.h"

using namespace staveline;
using namespace staveline::facts;

namespace {

using Cells = std::vector<std::optional<std::string>>;

std::vector<Cells> cellsOf(std::string_view text, char separator = ',') {
    auto records = readCsv(text, separator);
    REQUIRE(records);
    std::vector<Cells> cells;
    for (auto& record : *records)
        cells.push_back(std::move(record.cells));
    return cells;
}

} // namespace

TEST_CASE("the samples of RFC 4180 are read", "[csv]") {
    const std::vector<Cells> two = {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
    CHECK(cellsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == two); // 1
    CHECK(cellsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx") == two);     // 2
    CHECK(cellsOf("field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")[0] ==
          Cells{"field_name", "field_name", "field_name"});                                       // 3
    CHECK(cellsOf("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx") == two);                              // 5
    CHECK(cellsOf("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx")[0][1] == "b\r\nbb");              // 6
    CHECK(cellsOf("\"aaa\",\"b\"\"bb\",\"ccc\"") == std::vector<Cells>{{"aaa", "b\"bb", "ccc"}}); // 7
}

TEST_CASE("spaces belong to their cell, as point 4 of RFC 4180 says", "[csv]") {
    CHECK(cellsOf(" a ,b\n") == std::vector<Cells>{{" a ", "b"}});
}

TEST_CASE("files of spreadsheets are read", "[csv]") {
    CHECK(cellsOf("\xEF\xBB\xBFon;ph\n2026-03-02;3,4\n", ';') ==
          std::vector<Cells>{{"on", "ph"}, {"2026-03-02", "3,4"}});
    CHECK(cellsOf("a,\"\",\n\nb,,c") == std::vector<Cells>{{"a", "", std::nullopt}, {"b", std::nullopt, "c"}});
    const auto records = readCsv("on,note\n2026-03-02,\"two\nlines\"\n2026-03-03,\n");
    REQUIRE(records->size() == 3);
    CHECK((*records)[1].line == 2);
    CHECK((*records)[2].line == 4);
}

TEST_CASE("quotes that do not pair name their line", "[csv]") {
    CHECK(readCsv("a,b\nc,\"d\ne\n").error().path == "/2");
    CHECK(readCsv("a,b\nc,\"d\"e\n").error().path == "/2");
}

TEST_CASE("no cell begins a formula, and every text comes back", "[csv]") {
    for (const char* text : {"=1+1", "+cmd", "-x", "@SUM(A1)", "\tx", "\rx"})
        CHECK(guarded(text).front() == '\'');
    CHECK_PROPERTY("a guarded text comes back", [] {
        const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("'=+-@\t1a \"")));
        RC_ASSERT(withoutGuard(guarded(text)) == text);
    });
    CHECK_PROPERTY("cells of any text come back", [] {
        const auto texts = *rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(
            rc::gen::container<std::string>(rc::gen::elementOf(std::string("'=,;\r\n\" ab")))));
        const Cells cells(texts.begin(), texts.end());
        const auto read = readCsv(csvLine(cells));
        RC_ASSERT(read && read->size() == 1 && read->front().cells == cells);
    });
}
