// SPDX-License-Identifier: GPL-3.0-or-later
// Every constant of the brewing model has a row with unit, range and source, and the row says what the code does.
#include "brewing/primary.h"
#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <map>
#include <set>
#include <string>

using namespace staveline;

namespace {

using Values = std::map<std::string, double>;

Values mashValues() {
    const auto& k = mashConstants;
    return {{"smallGranules", k.smallGranules},
            {"largeMean", k.largeMean},
            {"largeSpread", k.largeSpread},
            {"smallMean", k.smallMean},
            {"smallSpread", k.smallSpread},
            {"gelatinise60", k.gelatinise60},
            {"gelatiniseEnergy", k.gelatiniseEnergy},
            {"gelatiniseSlope", k.gelatiniseSlope},
            {"alphaHalfLife", k.alphaHalfLife},
            {"limitHalfLife", k.limitHalfLife},
            {"alphaDeathEnergy", k.alphaDeathEnergy},
            {"betaDeathEnergy", k.betaDeathEnergy},
            {"limitDeathEnergy", k.limitDeathEnergy},
            {"thicknessExponent", k.thicknessExponent},
            {"alphaEnergy", k.alphaEnergy},
            {"betaEnergy", k.betaEnergy},
            {"limitEnergy", k.limitEnergy},
            {"alphaPolymer", k.alphaPolymer},
            {"alphaOpen", k.alphaOpen},
            {"betaPolymer", k.betaPolymer},
            {"betaOpen", k.betaOpen},
            {"limit", k.limit},
            {"alphaPh", k.alphaPh},
            {"alphaPhWidth", k.alphaPhWidth},
            {"betaPh", k.betaPh},
            {"betaPhWidth", k.betaPhWidth},
            {"limitPh", k.limitPh},
            {"limitPhWidth", k.limitPhWidth},
            {"branched", k.branched},
            {"maltose", k.maltose},
            {"maltotriose", k.maltotriose},
            {"glucose", k.glucose},
            {"openMaltotriose", k.openMaltotriose},
            {"openGlucose", k.openGlucose},
            {"lateMaltotriose", k.lateMaltotriose},
            {"lateGlucose", k.lateGlucose},
            {"lateBranched", k.lateBranched},
            {"starchShare", k.starchShare},
            {"sugarShare", k.sugarShare},
            {"starchHydration", k.starchHydration}};
}
Values phenolValues() {
    const auto& k = phenolConstants;
    return {{"release45", k.release45},     {"releaseEnergy", k.releaseEnergy}, {"esteraseDeath60", k.esteraseDeath60},
            {"deathEnergy", k.deathEnergy}, {"dissolve45", k.dissolve45},       {"dissolveEnergy", k.dissolveEnergy},
            {"releasePka", k.releasePka},   {"releasePh", k.releasePh}};
}
Values glucanValues() {
    const auto& k = glucanConstants;
    return {{"release", k.release},         {"cut45", k.cut45},         {"attack45", k.attack45},
            {"cutEnergy", k.cutEnergy},     {"rawAttack", k.rawAttack}, {"glucanaseDeath60", k.glucanaseDeath60},
            {"deathEnergy", k.deathEnergy}, {"maltAt45", k.maltAt45},   {"maltPerC", k.maltPerC},
            {"maltLow", k.maltLow},         {"maltHigh", k.maltHigh},   {"rawAt45", k.rawAt45},
            {"rawPerC", k.rawPerC},         {"rawLow", k.rawLow},       {"rawHigh", k.rawHigh}};
}
Values otherValues() {
    const auto& g = gristConstants;
    const auto& h = hexosePerGram;
    const auto& w = wortConstants;
    const auto& p = primaryConstants;
    return {{"grist.fullPower", g.fullPower},
            {"grist.mostPower", g.mostPower},
            {"grist.leastPower", g.leastPower},
            {"wort.glucose", h.glucose},
            {"wort.preformed", h.preformed},
            {"wort.maltose", h.maltose},
            {"wort.maltotriose", h.maltotriose},
            {"wort.dextrin", h.dextrin},
            {"wort.sucrose", h.sucrose},
            {"wort.ownSimple", w.ownSimple},
            {"wort.ownMaltose", w.ownMaltose},
            {"wort.ownMaltotriose", w.ownMaltotriose},
            {"wort.poorest", w.poorest},
            {"wort.esterGrist", w.esterGrist},
            {"wort.cisShare", w.cisShare},
            {"primary.everydayGlycerol", p.everydayGlycerol},
            {"primary.glucoamylaseTaste", p.glucoamylaseTaste},
            {"primary.leastAccessible", p.leastAccessible},
            {"primary.everydayLactic", p.everydayLactic},
            {"primary.vinylGuaiacolPerFerulic", vinylGuaiacolPerFerulic},
            {"primary.vinylPhenolPerCoumaric", vinylPhenolPerCoumaric}};
}
Values inCode() {
    Values all = otherValues();
    const auto add = [&](const std::string& group, const Values& values) {
        for (const auto& [name, value] : values)
            all[group + name] = value;
    };
    add("mash.", mashValues());
    add("phenol.", phenolValues());
    add("glucan.", glucanValues());
    return all;
}

CsvTable table(const char* path) {
    return CsvTable::parse(resources::find(path)).value();
}

} // namespace

TEST_CASE("Each constant in the code is the one in its row, and no row is left over", "[brewing][data]") {
    const auto rows = table("data/brewing_constants.csv");
    Values left = inCode();
    REQUIRE(rows.rows() > 0);
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        const std::string name(rows.text(i, "name"));
        INFO(name);
        REQUIRE(left.count(name) == 1);
        CHECK(left[name] == rows.number(i, "value").value());
        left.erase(name);
    }
    for (const auto& [name, value] : left)
        FAIL_CHECK("no row for " << name << " = " << value);
}

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
    CHECK(hexosePerGram.maltose == Approx(2 * glucose / (2 * glucose - water)).epsilon(1e-4));
    CHECK(hexosePerGram.maltotriose == Approx(3 * glucose / (3 * glucose - 2 * water)).epsilon(1e-4));
    CHECK(hexosePerGram.sucrose == hexosePerGram.maltose);
    CHECK(hexosePerGram.dextrin < glucose / (glucose - water));
}
