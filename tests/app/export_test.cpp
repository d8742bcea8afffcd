// SPDX-License-Identifier: GPL-3.0-or-later
// The whole book as a folder and back: table by table the same, digests and all, but for the log of edits.
// STAVELINE_SOAK sets how many random books.
#include "program.h"
#include "random_books.h"

#include <cstdlib>
#include <nlohmann/json.hpp>
#include <sqlite3.h>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

/// Rows of a query, cells told apart by type and content.
std::vector<std::string> rowsOf(const std::filesystem::path& file, const std::string& sql) {
    sqlite3* book = nullptr;
    REQUIRE(sqlite3_open_v2(file.c_str(), &book, SQLITE_OPEN_READONLY, nullptr) == SQLITE_OK);
    sqlite3_stmt* query = nullptr;
    REQUIRE(sqlite3_prepare_v2(book, sql.c_str(), -1, &query, nullptr) == SQLITE_OK);
    std::vector<std::string> rows;
    while (sqlite3_step(query) == SQLITE_ROW) {
        std::string row;
        for (int i = 0; i < sqlite3_column_count(query); ++i) {
            const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(query, i));
            row += std::to_string(sqlite3_column_type(query, i)) + ":" + (text ? text : "") + "|";
        }
        rows.push_back(row);
    }
    sqlite3_finalize(query);
    sqlite3_close(book);
    return rows;
}

/// Every row of every table, but for the log of edits.
std::vector<std::string> contentOf(const std::filesystem::path& file) {
    std::vector<std::string> all;
    for (const auto& table : rowsOf(file, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE "
                                          "'sqlite_%' AND name NOT IN ('edit', 'step', 'meta') ORDER BY name")) {
        const std::string name = table.substr(2, table.size() - 3);
        const std::string log = name == "tally" ? " WHERE tbl NOT IN ('edit', 'step')" : "";
        for (const auto& row : rowsOf(file, "SELECT * FROM \"" + name + "\"" + log + " ORDER BY 1"))
            all.push_back(name + " " + row);
    }
    return all;
}

struct Exported : Terminal {
    void comesBack() {
        expect("export s.cellar --out folder");
        expect("new again.cellar --from folder");
        const auto before = contentOf(scratch / "s.cellar");
        CHECK(before.size() > 1);
        CHECK(contentOf(scratch / "again.cellar") == before);
        expect("check again.cellar");
        for (const char* name : {"folder", "again.cellar", "s.cellar"})
            std::filesystem::remove_all(scratch / name);
    }
};

} // namespace

TEST_CASE_METHOD(Exported, "the sample cellar comes back from its export", "[app][export]") {
    expect("--today 2026-06-01 new s.cellar --sample");
    comesBack();
}

TEST_CASE_METHOD(Exported, "books of random facts come back from their export", "[app][export]") {
    const char* many = std::getenv("STAVELINE_SOAK");
    const std::uint64_t books = many ? std::strtoull(many, nullptr, 10) : 12;
    for (std::uint64_t seed = 1; seed <= books; ++seed) {
        INFO("seed " << seed);
        CHECK(makeRandomBook(scratch / "s.cellar", seed, "2026-06-01").taken > 5);
        comesBack();
    }
}

TEST_CASE_METHOD(Exported, "an export goes into a new folder and says so", "[app][export]") {
    expect("--today 2026-06-01 new s.cellar --sample");
    CHECK(Json::parse(expect("export s.cellar --out folder --json").out) == Json{{"folder", "folder"}});
    CHECK(std::filesystem::exists(scratch / "folder" / "contents.html"));
    CHECK(run("export s.cellar --out folder").status == 3);
    CHECK(run("new s.cellar --from folder").status == 3); // there is a book already
    CHECK(run("new t.cellar --from nowhere").status == 3);
    CHECK(run("new t.cellar --from folder --sample").status == 2);
    std::string readings = readAll(scratch / "folder" / "reading.csv");
    const auto cell = readings.find(',', readings.find("\r\n")) + 1;
    write("folder/reading.csv", readings.replace(cell, readings.find(',', cell) - cell, "Nobody"));
    const Answer answer = run("new t.cellar --from folder --json");
    CHECK(answer.status == 2);
    CHECK(answer.err.find("/reading.csv/2/vessel") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(scratch / "t.cellar"));
}

TEST_CASE_METHOD(Exported, "an empty folder one stands in is exported into", "[app][export]") {
    expect("--today 2026-06-01 new s.cellar --sample");
    std::filesystem::create_directory(scratch / "here");
    const std::string in = "cd '" + (scratch / "here").string() + "' && ";
    CHECK(std::system((in + "'" STAVELINE_PROGRAM "' export ../s.cellar --out . >../out.txt 2>&1").c_str()) == 0);
    CHECK(std::filesystem::exists(scratch / "here" / "contents.html"));
    CHECK(run("new t.cellar --from here").status == 0);
    std::filesystem::remove(scratch / "here" / "reading.csv");
    const Answer answer = run("new u.cellar --from here --json");
    CHECK(answer.status == 2);
    CHECK(answer.err.find("/reading.csv") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(scratch / "u.cellar"));
}

TEST_CASE_METHOD(Exported, "the history as a spreadsheet says what its CSV says", "[app][export]") {
    expect("--today 2026-06-01 new s.cellar --sample");
    const std::string vessel = Json::parse(expect("--today 2026-06-01 status s.cellar --json").out)[0]["vessel"];
    const std::string of = "--today 2026-06-01 history s.cellar --vessel '" + vessel + "' ";
    expect(of + "--out h.xlsx");
    expect(of + "--out h.csv");
    CHECK(run(of + "--out h.ods").status == 2);
    write("read.py", R"(
import csv, datetime, openpyxl, sys
sheet = openpyxl.load_workbook('h.xlsx').active
told = [list(row) for row in csv.reader(open('h.csv', newline=''))]
seen = list(sheet.iter_rows(values_only=True))
assert len(seen) == len(told) > 10, (len(seen), len(told))
numbers = days = 0
for row, (cells, texts) in enumerate(zip(seen, told)):
    assert len(cells) == len(texts)
    for cell, text in zip(cells, texts):
        if isinstance(cell, datetime.datetime):
            days += 1
            assert cell.date().isoformat() == text, (cell, text)
        elif isinstance(cell, (int, float)):
            numbers += 1
            assert abs(cell - float(text)) <= 1e-5 * max(1, abs(cell)), (cell, text)
        else:
            assert (cell or '') == text, (cell, text)
assert days == len(told) - 1 and numbers > 50, (days, numbers)
assert all(cell.data_type != 'f' for row in sheet.iter_rows() for cell in row)
)");
    const std::string in = "cd '" + scratch.path().string() + "' && ";
    CHECK(std::system((in + "/usr/bin/python3 read.py").c_str()) == 0);
}
