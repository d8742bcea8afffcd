// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/data_rules.h"
#include "layers/source_tree.h"

#include "quantity/text.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <map>

namespace staveline::layers {
namespace {

struct DataTable {
    std::string name; ///< without folder and ending
    CsvTable rows;
};

/// All CSV tables of resources/data; one that cannot be read fails the case.
std::vector<DataTable> dataTables() {
    std::vector<DataTable> tables;
    for (const auto& file : filesUnder({"resources/data"})) {
        if (!file.path.ends_with(".csv"))
            continue;
        auto rows = CsvTable::parse(file.text);
        if (!rows)
            FAIL_CHECK(file.path << rows.error().path << ": " << render(rows.error().cause));
        else
            tables.push_back({file.path.substr(15, file.path.size() - 19), std::move(*rows)});
    }
    return tables;
}

std::set<std::string> sourceKeys() {
    const auto sources = CsvTable::parse(resources::find("data/sources.csv"));
    REQUIRE(sources);
    std::set<std::string> keys;
    for (std::size_t row = 0; row < sources->rows(); ++row)
        keys.emplace(sources->text(row, "key"));
    return keys;
}

CsvTable table(std::string_view csv) {
    return CsvTable::parse(csv).value();
}

} // namespace

TEST_CASE("Every number of the data tables has a unit and lies in its range") {
    const auto tables = dataTables();
    REQUIRE(tables.size() >= 5);
    std::vector<std::string> all;
    for (const auto& [name, rows] : tables)
        if (name != "columns")
            for (auto& violation : rangeViolations(name, rows, builtInColumns()))
                all.push_back(std::move(violation));
    checkNone(all);
}

TEST_CASE("Every row of the data tables names a source that sources.csv explains") {
    const auto known = sourceKeys();
    std::vector<std::string> all;
    for (const auto& [name, rows] : dataTables())
        if (name != "sources")
            for (auto& violation : sourceViolations(name, rows, known))
                all.push_back(std::move(violation));
    checkNone(all);
}

TEST_CASE("The list of sources is sound") {
    checkNone(sourceTableViolations(table(resources::find("data/sources.csv"))));
}

TEST_CASE("Every row of columns.csv describes a column that exists, with a unit") {
    std::map<std::string, CsvTable> tables;
    for (auto& [name, rows] : dataTables())
        tables.emplace(name, std::move(rows));
    const auto& columns = tables.at("columns");
    REQUIRE(columns.rows() > 20);
    for (std::size_t row = 0; row < columns.rows(); ++row) {
        const std::string name(columns.text(row, "table")), column(columns.text(row, "column"));
        INFO(name << "." << column);
        CHECK_FALSE(columns.text(row, "unit").empty());
        REQUIRE(tables.contains(name));
        CHECK(tables.at(name).hasColumn(column));
    }
}

TEST_CASE("Embedded tables are the files of the tree") {
    for (const auto& file : filesUnder({"resources/data", "resources/texts"})) {
        INFO(file.path);
        const bool same = resources::find(file.path.substr(10)) == file.text; // compared here to keep a failure short
        CHECK(same);
    }
}

TEST_CASE("A number without unit or range is found") {
    const auto specs = ColumnSpecs::parse("table,column,unit,low,high\nt,mass_kg,kg,0,10\n").value();
    CHECK(rangeViolations("t", table("id,mass_kg,note\na,5,x\nb,,2 x\n"), specs).empty());
    CHECK(rangeViolations("t", table("id,mass_kg\na,11\n"), specs).size() == 1);
    CHECK(rangeViolations("t", table("id,mass_kg\na,x\n"), specs).size() == 1);
    CHECK(rangeViolations("t", table("id,length_m\na,5\n"), specs).size() == 1);
    CHECK(rangeViolations("t", table("id,length_m\na,\n"), specs).empty());
    CHECK(rangeViolations("u", table("id,mass_kg\na,5\n"), specs).size() == 1);
}

TEST_CASE("A table with unit and limits in each row is held to them") {
    const auto none = ColumnSpecs::parse("table,column,unit,low,high\n").value();
    CHECK(rangeViolations("t", table("id,value,unit,low,high\na,5,kg,1,9\n"), none).empty());
    CHECK(rangeViolations("t", table("id,value,unit,low,high\na,5,kg,6,9\n"), none).size() == 1);
    CHECK(rangeViolations("t", table("id,value,unit,low,high,cost\na,5,kg,1,9,3\n"), none).size() == 1);
    CHECK(rangeViolations("t", table("id,value,unit,low\na,5,kg,1\n"), none).size() == 2);
}

TEST_CASE("A missing or unknown source is found") {
    CHECK(sourceViolations("t", table("id,source\na,memory\n"), {"memory"}).empty());
    CHECK(sourceViolations("t", table("id,source\na,\nb,memroy\n"), {"memory"}).size() == 2);
    CHECK(sourceViolations("t", table("id\na\n"), {"memory"}).size() == 1);
}

TEST_CASE("A slip in the list of sources is found") {
    CHECK(sourceTableViolations(table("key,kind,text\na,memory,x\nb,published,y\n")).empty());
    CHECK(sourceTableViolations(table("key,kind,text\na,memory,x\na,memory,y\n")).size() == 1);
    CHECK(sourceTableViolations(table("key,kind,text\na,hearsay,x\n")).size() == 1);
    CHECK(sourceTableViolations(table("key,kind,text\na,memory,\n")).size() == 1);
}

} // namespace staveline::layers
