// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/materials.h"
#include "quantity/csv.h"
#include "quantity/text.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <set>
#include <string>

using namespace staveline;
using namespace staveline::vessel;

namespace {

const std::string header = "material,quantity,value,low,high,unit,source,note\n";
const std::string evaporation = "tin,evaporation,1,0,2,% of capacity/year,practice,\n";
const std::string oxygen = "tin,oxygen,1,0,2,mg/(L year),practice,\n";
const std::string held = "tin,culture held back,.1,0,.2,share,practice,\n";

Fault refused(const std::string& csv) {
    const auto rows = parseMaterials(csv);
    REQUIRE_FALSE(rows);
    CHECK(builtInTexts().has(rows.error().cause.key));
    CHECK(builtInTexts().has(rows.error().remedy.key));
    return rows.error();
}

} // namespace

TEST_CASE("the six materials have all three facts") {
    CHECK(materialNames() == std::vector<std::string>{"oak new", "oak used", "foeder", "steel", "glass", "plastic"});
    for (const auto& name : materialNames()) {
        CAPTURE(name);
        const auto facts = materialFacts(name);
        REQUIRE(facts);
        CHECK(facts->evaporationPerYear.of1 >= 0);
        CHECK(facts->evaporationPerYear.of1 < .1);
        CHECK(facts->oxygenPerYear > 0);
        CHECK(facts->cultureHeldBack.of1 > 0);
        CHECK(facts->cultureHeldBack.of1 < 1);
    }
}

TEST_CASE("wood breathes and holds back, steel does not") {
    CHECK(materialFacts("oak used")->evaporationPerYear.of1 == Approx(.04));
    CHECK(materialFacts("steel")->evaporationPerYear.of1 == 0);
    CHECK(materialFacts("foeder")->evaporationPerYear < materialFacts("oak used")->evaporationPerYear);
    CHECK(materialFacts("foeder")->oxygenPerYear < materialFacts("oak used")->oxygenPerYear);
    CHECK(materialFacts("oak used")->oxygenPerYear < materialFacts("plastic")->oxygenPerYear);
    CHECK(materialFacts("oak used")->cultureHeldBack > materialFacts("steel")->cultureHeldBack);
}

TEST_CASE("an unknown material is refused with the known ones named") {
    const auto facts = materialFacts("lead", "/material");
    REQUIRE_FALSE(facts);
    CHECK(facts.error().path == "/material");
    CHECK(render(facts.error().cause).find("lead") != std::string::npos);
    CHECK(render(facts.error().remedy).find("oak used") != std::string::npos);
    CHECK_FALSE(materialFacts(""));
    CHECK_FALSE(materialFacts("Oak used"));
}

TEST_CASE("every source of the materials table resolves") {
    const auto sources = CsvTable::parse(resources::find("data/sources.csv"));
    REQUIRE(sources);
    std::set<std::string, std::less<>> keys;
    for (std::size_t row = 0; row < sources->rows(); ++row)
        keys.emplace(sources->text(row, "key"));
    CHECK(builtInMaterials().size() == 18);
    for (const auto& row : builtInMaterials()) {
        CAPTURE(row.material, row.quantity, row.source);
        CHECK(keys.contains(row.source));
    }
}

TEST_CASE("a whole table is read, a spoiled one refused at its cell") {
    REQUIRE(parseMaterials(header + evaporation + oxygen + held));
    CHECK(refused(header + evaporation + oxygen).path == "/0/quantity");
    CHECK(refused(header + evaporation + oxygen + held + oxygen).path == "/3/quantity");
    CHECK(refused(header + "tin,evaporation,x,0,2,% of capacity/year,practice,\n").path == "/0/value");
    CHECK(refused(header + "tin,evaporation,3,0,2,% of capacity/year,practice,\n").path == "/0/value");
    CHECK(refused(header + "tin,evaporation,-1,-2,2,% of capacity/year,practice,\n").path == "/0/value");
    CHECK(refused(header + "tin,culture held back,1.2,0,2,share,practice,\n").path == "/0/value");
    CHECK(refused(header + "tin,evaporation,1,0,2,L/year,practice,\n").path == "/0/unit");
    CHECK(refused(header + "tin,colour,1,0,2,share,practice,\n").path == "/0/quantity");
    CHECK(refused(header + ",oxygen,1,0,2,mg/(L year),practice,\n").path == "/0/material");
    CHECK(refused(header + "tin,oxygen,1,0,2,mg/(L year),,\n").path == "/0/source");
}
