// SPDX-License-Identifier: GPL-3.0-or-later
// Every constant of the brewing model has a unit, a range and a source.
#include "quantity/constants.h"
#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <set>
#include <string>

using namespace staveline;

namespace {

CsvTable table(const char* path) {
    return CsvTable::parse(resources::find(path)).value();
}

} // namespace

TEST_CASE("Each row has a unit, a range around its value, a meaning and a known source", "[brewing][data]") {
    std::set<std::string, std::less<>> sources;
    const auto known = table("data/sources.csv");
    for (std::size_t i = 0; i < known.rows(); ++i)
        sources.emplace(known.text(i, "key"));
    const auto rows = table("data/brewing_constants.csv");
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        INFO(rows.text(i, "name"));
        const double value = rows.number(i, "value").value();
        CHECK(rows.number(i, "low").value() <= value);
        CHECK(rows.number(i, "high").value() >= value);
        CHECK_FALSE(rows.text(i, "unit").empty());
        CHECK_FALSE(rows.text(i, "meaning").empty());
        CHECK(sources.count(rows.text(i, "source")) == 1);
    }
}

TEST_CASE("Molar masses give the hexose factors", "[brewing][data]") {
    constexpr double glucose = 180.156, water = 18.015;
    CHECK(constants::wort::maltose == Approx(2 * glucose / (2 * glucose - water)).epsilon(1e-4));
    CHECK(constants::wort::maltotriose == Approx(3 * glucose / (3 * glucose - 2 * water)).epsilon(1e-4));
    CHECK(constants::wort::sucrose == constants::wort::maltose);
    CHECK(constants::wort::dextrin < glucose / (glucose - water));
}
