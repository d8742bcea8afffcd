// SPDX-License-Identifier: GPL-3.0-or-later
#include "ingredient/pantry.h"

#include "quantity/text.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <algorithm>
#include <set>

namespace staveline {
using namespace ingredient;
namespace {

const std::string grainHeader =
    "id,name,kind,extract_db_pct,extract_low_pct,extract_high_pct,moisture_pct,extract_as_is,colour_ebc,colour_low_ebc,"
    "colour_high_ebc,diastatic_power_wk,power_low_wk,power_high_wk,ferulic_free_mg_kg,ferulic_bound_mg_kg,esterase_rel,"
    "coumaric_free_mg_kg,coumaric_bound_mg_kg,beta_glucan_kg_kg,glucanase_rel,arabinoxylan_g_l_at_12p,lactic_pct,"
    "lactic_low_pct,lactic_high_pct,own_rdf,"
    "max_share_of_extract,source\n";
const std::string grainRow =
    "best,Best malt,base,81,79,83,4.5,0.8,3,2.5,4,280,220,350,4,50,1,3,46,0.0035,1,0.35,2,1,4,,1,memory\n";
const std::string yeastHeader = "id,name,takes_maltose,takes_maltotriose,takes_dextrin,pof,glycerol_g_l_at_12p,killer,"
                                "primary_days,note,source\n";
const std::string yeastRow = "clean,clean yeast,1,0.75,0,0,2,sensitive,14,,memory\n";

Result<Pantry> parse(const std::string& grainRows, const std::string& yeastRows = yeastRow) {
    return Pantry::parse(grainHeader + grainRows, yeastHeader + yeastRows);
}
/// The sample grain with its first `from` replaced.
std::string grainWith(std::string_view from, std::string_view to) {
    auto row = grainRow;
    const auto at = row.find(from);
    REQUIRE(at != std::string::npos);
    return row.replace(at, from.size(), to);
}
std::string yeastWith(std::string_view from, std::string_view to) {
    auto row = yeastRow;
    const auto at = row.find(from);
    REQUIRE(at != std::string::npos);
    return row.replace(at, from.size(), to);
}
Fault grainFault(const std::string& rows) {
    const auto parsed = parse(rows);
    REQUIRE_FALSE(parsed);
    return parsed.error();
}
Fault yeastFault(const std::string& rows) {
    const auto parsed = parse(grainRow, rows);
    REQUIRE_FALSE(parsed);
    return parsed.error();
}
std::string argument(const Message& message, std::string_view name) {
    for (const auto& given : message.arguments)
        if (given.name == name)
            return show(given.value);
    return "";
}

} // namespace

TEST_CASE("A grain row is read into its units") {
    const auto grain = parse(grainRow).value().grain("best").value();
    CHECK(grain.name == "Best malt");
    CHECK(grain.kind == GrainKind::base);
    CHECK(grain.extractDryBasis == Approx(0.81));
    CHECK(grain.moisture == Approx(0.045));
    CHECK(grain.extractAsIs == 0.8);
    CHECK(grain.colour == Ebc{3});
    CHECK(grain.diastaticPowerWk == 280);
    CHECK(grain.ferulicFree == 4);
    CHECK(grain.ferulicBound == 50);
    CHECK(grain.esterase == 1);
    CHECK(grain.coumaricFree == 3);
    CHECK(grain.coumaricBound == 46);
    CHECK(grain.betaGlucan == 0.0035);
    CHECK(grain.glucanase == 1);
    CHECK(grain.arabinoxylan == 0.35);
    CHECK(grain.lactic == 0.02);
    CHECK(grain.ownRdf < 0);
    CHECK(grain.maxShare == 1);
    CHECK(grain.source == "memory");
}

TEST_CASE("A yeast row is read") {
    const auto yeast =
        parse(grainRow, "x,Xenia,0.98,0.1,0.5,1,2.3,positive,21,Careful.,memory\n").value().yeast("x").value();
    CHECK(yeast.name == "Xenia");
    CHECK(yeast.takesMaltose == 0.98);
    CHECK(yeast.takesMaltotriose == 0.1);
    CHECK(yeast.takesDextrin == 0.5);
    CHECK(yeast.diastatic());
    CHECK(yeast.pof);
    CHECK(yeast.glycerolAt12P == 2.3);
    CHECK(yeast.killerPositive);
    CHECK(yeast.primaryDays == 21);
    CHECK(yeast.note == "Careful.");
    CHECK_FALSE(parse(grainRow).value().yeast("clean").value().killerPositive);
    CHECK_FALSE(parse(grainRow).value().yeast("clean").value().diastatic());
}

TEST_CASE("Bad cells of a grain are refused at their row and column") {
    CHECK(grainFault(grainRow + grainWith("best", "other") + grainWith("280", "lots")).path ==
          "/grains/2/diastatic_power_wk");
    CHECK(grainFault(grainWith("base", "barley")).cause.key == "ingredient.unknown_kind");
    CHECK(grainFault(grainWith("best,", ",")).path == "/grains/0/id");
    CHECK(grainFault(grainWith("Best malt", "")).path == "/grains/0/name");
    CHECK(grainFault(grainWith("memory", "")).path == "/grains/0/source");
    CHECK(grainFault(grainWith("4,,1", "4,,")).path == "/grains/0/max_share_of_extract");
    CHECK(grainFault(grainRow + grainRow).cause.key == "quantity.csv_row_twice");
    CHECK(grainFault("best,Best malt\n").cause.key == "quantity.csv_cells");
}

TEST_CASE("Values outside the range of their column or of their row are refused") {
    const auto moisture = grainFault(grainWith("4.5", "45"));
    CHECK(moisture.path == "/grains/0/moisture_pct");
    CHECK(moisture.cause.key == "quantity.above");
    const auto extract = grainFault(grainWith("81,", "83.5,"));
    CHECK(extract.path == "/grains/0/extract_db_pct");
    CHECK(render(extract.remedy) == "Give a value from 79 to 83.");
    CHECK(grainFault(grainWith("0.8,3,", "0.8,5,")).path == "/grains/0/colour_ebc");
    CHECK(grainFault(grainWith("280", "200")).path == "/grains/0/diastatic_power_wk");
    CHECK(grainFault(grainWith("0.35,2,1,4", "0.35,5,1,4")).path == "/grains/0/lactic_pct");
    CHECK(grainFault(grainWith("4,,", "4,1.01,")).path == "/grains/0/own_rdf");
}

TEST_CASE("A missing column is refused, in either table") {
    auto header = grainHeader;
    header.replace(header.find("colour_ebc"), 10, "color_ebcx");
    CHECK(Pantry::parse(header + grainRow, yeastHeader + yeastRow).error().cause.key == "quantity.csv_no_column");
    header = yeastHeader;
    header.replace(header.find("killer"), 6, "killed");
    CHECK(Pantry::parse(grainHeader + grainRow, header + yeastRow).error().path == "/yeasts/0/killer");
    CHECK_FALSE(Pantry::parse("", yeastHeader));
    CHECK_FALSE(Pantry::parse(grainHeader, ""));
}

TEST_CASE("Bad cells of a yeast are refused at their row and column") {
    CHECK(yeastFault(yeastWith("sensitive", "fierce")).cause.key == "ingredient.unknown_killer");
    CHECK(yeastFault(yeastWith("14", "14.5")).cause.key == "ingredient.not_whole");
    CHECK(yeastFault(yeastWith("0.75,0,0", "0.75,0,0.5")).path == "/yeasts/0/pof");
    CHECK(yeastFault(yeastWith("0.75", "7.5")).path == "/yeasts/0/takes_maltotriose");
    CHECK(yeastFault(yeastWith("14", "400")).path == "/yeasts/0/primary_days");
    CHECK(yeastFault(yeastRow + yeastRow).path == "/yeasts/1/id");
}

TEST_CASE("Empty tables make an empty pantry, which says what to do") {
    const auto pantry = parse("", "").value();
    CHECK(pantry.grains().empty());
    CHECK(pantry.grain("pilsner").error().remedy.key == "ingredient.none_known");
}

TEST_CASE("An unknown ingredient is a fault that offers the nearest one") {
    const auto& pantry = builtInPantry();
    const auto grain = pantry.grain("pilsener", "/grist/0/grain");
    REQUIRE_FALSE(grain);
    CHECK(grain.error().kind == FaultKind::input);
    CHECK(grain.error().path == "/grist/0/grain");
    CHECK(render(grain.error().cause) == "No malt, grain or sugar is called \"pilsener\".");
    CHECK(render(grain.error().remedy) == "Did you mean \"pilsner\" (Pilsner malt)?");
    CHECK(argument(pantry.grain("Flaked Oats").error().remedy, "nearest") == "flaked_oats");
    CHECK(argument(pantry.grain("rye").error().remedy, "nearest") == "rye_malt");
    CHECK(argument(pantry.yeast("saisson").error().remedy, "nearest") == "saison");
    CHECK(pantry.yeast("saisson").error().cause.key == "ingredient.unknown_yeast");
    CHECK_FALSE(pantry.grain(""));
    CHECK_FALSE(pantry.grain("PILSNER")); // ids are exact; the offer is one key away
}

TEST_CASE("What the brewer adds stands beside or in place of the built-in") {
    Pantry pantry = builtInPantry();
    const auto count = pantry.grains().size();
    auto own = pantry.grain("pilsner").value();
    own.diastaticPowerWk = 310;
    pantry.put(own);
    CHECK(pantry.grains().size() == count);
    CHECK(pantry.grain("pilsner").value().diastaticPowerWk == 310);
    own.id = "my_malt";
    pantry.put(own);
    CHECK(pantry.grains().size() == count + 1);
    CHECK(pantry.grain("my_malt").value() == own);

    Yeast house;
    house.id = "house";
    pantry.put(house);
    CHECK(pantry.yeast("house").value() == house);
    CHECK_FALSE(builtInPantry().yeast("house"));
}

TEST_CASE("The built-in tables are read whole") {
    const auto& pantry = builtInPantry();
    CHECK(pantry.grains().size() == 49);
    CHECK(pantry.yeasts().size() == 10);
    CHECK(Pantry::parse(resources::find("data/grains.csv"), resources::find("data/yeasts.csv")));
    std::set<GrainKind> kinds;
    for (const auto& grain : pantry.grains())
        kinds.insert(grain.kind);
    CHECK(kinds.size() == grainKinds.size());
    CHECK(pantry.hops().size() == 9);
}

TEST_CASE("Built-in grains keep what their kind means") {
    for (const auto& grain : builtInPantry().grains()) {
        INFO(grain.id);
        if (grain.isSugar() || grain.kind == GrainKind::extract)
            CHECK(grain.ownRdf >= 0);
        if (grain.isSugar())
            CHECK(grain.diastaticPowerWk + grain.ferulicBound + grain.betaGlucan == 0);
        CHECK((grain.lactic > 0) == (grain.kind == GrainKind::acid));
        if (grain.kind == GrainKind::husk)
            CHECK(grain.dryExtract() == 0);
        if (grain.isRaw())
            CHECK(grain.glucanase == 0);
        if (grain.kind == GrainKind::flaked)
            CHECK(grain.diastaticPowerWk == 0); // rolled hot: no enzyme is left
        if (grain.kind == GrainKind::caramel || grain.kind == GrainKind::roast) {
            CHECK(grain.diastaticPowerWk == 0);
            CHECK(grain.esterase == 0);
            CHECK(grain.ownRdf > 0);
        }
    }
}

TEST_CASE("Enzymes fall and colour grows with kilning") {
    const auto& pantry = builtInPantry();
    const char* const kilned[] = {"pilsner", "pale", "vienna", "munich_light", "munich_dark", "melanoidin"};
    for (std::size_t i = 1; i < std::size(kilned); ++i) {
        const auto lighter = pantry.grain(kilned[i - 1]).value(), darker = pantry.grain(kilned[i]).value();
        INFO(darker.id);
        CHECK(darker.diastaticPowerWk < lighter.diastaticPowerWk);
        CHECK(darker.colour > lighter.colour);
        CHECK(darker.esterase <= lighter.esterase);
    }
}

TEST_CASE("Diastatic yeasts say that they cannot be taken back") {
    for (const auto& yeast : builtInPantry().yeasts()) {
        INFO(yeast.id);
        CHECK(yeast.diastatic() == (yeast.note.find("cannot be taken back") != std::string::npos));
        CHECK(yeast.killerPositive == (yeast.id == "wine_killer_positive"));
        CHECK(yeast.takesMaltose >= yeast.takesMaltotriose - 0.5);
    }
}

TEST_CASE("Extract as is of the phenol and glucan models: the reference model's values") {
    const auto asIs = [](std::string_view id) { return builtInPantry().grain(id).value().extractAsIs; };
    CHECK(asIs("pilsner") == 0.80);
    CHECK(asIs("pale") == 0.80);
    CHECK(asIs("vienna") == 0.79);
    CHECK(asIs("wheat_malt") == 0.83);
    CHECK(asIs("raw_wheat") == 0.77);
    CHECK(asIs("rye_malt") == 0.81);
    CHECK(asIs("oat_malt") == 0.62);
    CHECK(asIs("flaked_oats") == 0.70);
    CHECK(asIs("flaked_barley") == 0.72);
    CHECK(asIs("roasted") == 0.70);
}

} // namespace staveline
