// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/columns.h"

#include "support/catch.h"

namespace staveline {
namespace {

const auto* const specText = "table,column,unit,low,high\n"
                             "grains,moisture_pct,%,0,20\n"
                             "grains,colour_ebc,EBC,0,1800\n"
                             "yeasts,pof,0 or 1,0,1\n";

ColumnSpecs specs() {
    return ColumnSpecs::parse(specText).value();
}
Result<void> check(std::string_view csv) {
    return specs().check("grains", CsvTable::parse(csv).value());
}
std::string keyOf(std::string_view csv) {
    const auto parsed = ColumnSpecs::parse(csv);
    return parsed ? "no fault" : parsed.error().cause.key;
}

} // namespace

TEST_CASE("A column has its unit and range by table and name") {
    const auto all = specs();
    const auto* moisture = all.find("grains", "moisture_pct");
    REQUIRE(moisture);
    CHECK(moisture->unit == "%");
    CHECK(moisture->range == Range{0, 20});
    CHECK(all.find("yeasts", "moisture_pct") == nullptr);
    CHECK(all.find("grains", "pof") == nullptr);
}

TEST_CASE("Cells in range, empty ones and columns not listed pass") {
    CHECK(check("id,moisture_pct,colour_ebc\na,0,0\nb,20,1800\nc,,\n"));
    CHECK(check("id,other\na,1e9\n"));
}

TEST_CASE("The first cell out of range is named with its range") {
    const auto checked = check("id,moisture_pct\na,4.5\nb,20.1\nc,99\n");
    REQUIRE_FALSE(checked);
    CHECK(checked.error().path == "/1/moisture_pct");
    CHECK(checked.error().cause.key == "quantity.above");
    CHECK(checked.error().remedy.key == "quantity.give_between");
    CHECK(check("id,moisture_pct\na,-1\n").error().cause.key == "quantity.below");
}

TEST_CASE("Text in a listed column is no number") {
    CHECK(check("id,moisture_pct\na,wet\n").error().cause.key == "quantity.not_a_number");
    CHECK(check("id,moisture_pct\na,\"4,5\"\n").error().path == "/0/moisture_pct");
}

TEST_CASE("A bad list of columns is refused") {
    CHECK(keyOf("table,column,unit,low,high\nt,c,kg,0,x\n") == "quantity.not_a_number");
    CHECK(keyOf("table,column,unit,low,high\nt,c,kg,,1\n") == "quantity.not_a_number");
    CHECK(keyOf("table,column,unit,low,high\nt,c,kg,2,1\n") == "quantity.low_above_high");
    CHECK(keyOf("table,column,unit,low,high\nt,c,kg,0,1\nt,c,kg,0,2\n") == "quantity.csv_row_twice");
    CHECK(keyOf("table,column,unit,low\nt,c,kg,0\n") == "quantity.csv_no_column");
    CHECK(keyOf("") == "quantity.csv_no_header");
    CHECK(keyOf("table,column,unit,low,high\nt,c,kg,0,1\nu,c,kg,0,2\n") == "no fault");
}

TEST_CASE("The built-in list knows the grain table") {
    const auto* column = builtInColumns().find("grains", "diastatic_power_wk");
    REQUIRE(column);
    CHECK(column->unit == "WK");
    CHECK(column->range.holds(280));
    CHECK_FALSE(column->range.holds(-1));
}

} // namespace staveline
