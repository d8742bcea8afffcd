// SPDX-License-Identifier: GPL-3.0-or-later
// What a recipe of the open formats says, and what is told of what it does not say.
#include "desk/recipe_card.h"
#include "desk/recipe_exchange.h"
#include "support/catch.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;

namespace {

std::string xmlOf(const std::string& more, const std::string& mass = "14.665828") {
    return "<RECIPES><RECIPE><NAME>Dusk</NAME>" + more +
           "<FERMENTABLES><FERMENTABLE><NAME>Pilsner malt</NAME><TYPE>Grain</TYPE><AMOUNT>" + mass +
           "</AMOUNT><COLOR>10</COLOR></FERMENTABLE></FERMENTABLES></RECIPE></RECIPES>";
}
std::string jsonOf(const std::string& more, const std::string& hops = "") {
    return R"({"beerjson": {"version": 1.0, "recipes": [{"name": "Dusk", )" + more +
           R"("ingredients": {"fermentable_additions": [{"name": "Pilsner malt", "type": "grain",
               "color": {"unit": "SRM", "value": 12.7}, "amount": {"unit": "kg", "value": 15}}],
             "hop_additions": [)" +
           hops + "]}}]}}";
}
constexpr const char* leaf = R"({"name": "Leaf", "alpha_acid": {"unit": "%", "value": 4},
    "amount": {"unit": "g", "value": 60},
    "timing": {"duration": {"unit": "min", "value": 60}, "use": "add_to_boil"}})";
constexpr const char* batch = R"("batch_size": {"unit": "l", "value": 80}, )";
constexpr const char* bitterness = R"("ibu_estimate": {"value": {"unit": "IBUs", "value": 12}}, )";

Result<ReadRecipe> read(const std::string& text, const brewing::Recipe& base = {}) {
    const auto format = text.front() == '<' ? RecipeFormat::beerXml : RecipeFormat::beerJson;
    return readRecipe(format, text, ingredient::builtInPantry(), base);
}
bool tells(const ReadRecipe& made, const std::string& key) {
    return std::any_of(made.left.begin(), made.left.end(), [&](const auto& each) { return each.key == key; });
}

} // namespace

TEST_CASE("a recipe read from a file is soured first as the present one is", "[recipe]") {
    brewing::Recipe base;
    base.preSoured = Share{.3};
    base.preSourTa = GramsPerLitre{9};
    for (const auto& text : {xmlOf(""), jsonOf("")}) {
        const auto made = read(text, base);
        REQUIRE(made);
        CHECK(made->recipe.preSoured == Share{.3});
        CHECK(made->recipe.preSourTa == GramsPerLitre{9});
        CHECK(tells(*made, "desk.recipe.left.pre_soured_kept"));
        CHECK_FALSE(tells(*read(text), "desk.recipe.left.pre_soured_kept"));
    }
}

TEST_CASE("a decimal comma in a recipe is refused where it stands", "[recipe]") {
    const auto comma = read(xmlOf("", "14,665828"));
    REQUIRE_FALSE(comma);
    CHECK(comma.error().path == "/RECIPES/RECIPE/FERMENTABLES/FERMENTABLE/AMOUNT");
    CHECK(render(comma.error().cause).find("14,665828") != std::string::npos);
    CHECK(render(comma.error().remedy).find("point") != std::string::npos);
    for (const char* bad : {"1.4.6", "14;6", "some", "1e999"})
        CHECK_FALSE(read(xmlOf("", bad)));
    for (const char* bad : {"<OG>1,048</OG>", "<BATCH_SIZE>80,5</BATCH_SIZE>", "<MASH><PH>5,4</PH></MASH>"})
        CHECK_FALSE(read(xmlOf(bad)));
    for (const char* good :
         {"14.665828", " 14.665828 \n", "+14.665828", "1.4665828E1", "14.665828 kg", "14.665828kg"}) {
        INFO(good);
        const auto card = fromBeerXml(xmlOf("<EST_OG>1.048 SG</EST_OG><IBU></IBU><NOTES>1,5 of it</NOTES>", good));
        REQUIRE(card);
        CHECK(card->fermentables.at(0).mass.kg == Approx(14.665828));
    }
}

TEST_CASE("hops without a batch size are refused unless the bitterness is said", "[recipe]") {
    const auto unsized = read(jsonOf("", leaf));
    REQUIRE_FALSE(unsized);
    CHECK(unsized.error().path == "/batch_size");
    CHECK_FALSE(read(jsonOf(R"("batch_size": {"unit": "jar", "value": 80}, )", leaf)));
    CHECK(read(jsonOf(bitterness, leaf))->recipe.bitterness == Ibu{12});
    CHECK(read(jsonOf("")));
    const auto whole = read(jsonOf(batch, leaf));
    REQUIRE(whole);
    const auto half = read(jsonOf(R"("batch_size": {"unit": "l", "value": 0.5}, )", leaf));
    CHECK(half->recipe.bitterness.ibu == Approx(160 * whole->recipe.bitterness.ibu)); // mass by volume, Tinseth
}

TEST_CASE("an efficiency that is not said is told", "[recipe]") {
    CHECK(tells(*read(jsonOf("")), "desk.recipe.left.no_efficiency"));
    CHECK(tells(*read(xmlOf("")), "desk.recipe.left.no_efficiency"));
    CHECK_FALSE(tells(*read(xmlOf("<EFFICIENCY>72</EFFICIENCY>")), "desk.recipe.left.no_efficiency"));
    for (const char* which : {"brewhouse", "mash"}) {
        const std::string said = std::string(R"("efficiency": {")") + which + R"(": {"unit": "%", "value": 72}}, )";
        CHECK_FALSE(tells(*read(jsonOf(said)), "desk.recipe.left.no_efficiency"));
    }
}

TEST_CASE("an original gravity of water is none", "[recipe]") {
    brewing::Recipe base;
    base.originalGravity = Plato{13};
    for (const auto& text : {xmlOf("<OG>1.000</OG>"), xmlOf("<EST_OG>1.000 sg</EST_OG>"),
                             jsonOf(R"("original_gravity": {"unit": "sg", "value": 1.000}, )"),
                             jsonOf(R"("original_gravity": {"unit": "plato", "value": 0}, )")}) {
        const auto made = read(text, base);
        REQUIRE(made);
        CHECK(made->recipe.originalGravity == Plato{13});
        CHECK(tells(*made, "desk.recipe.left.no_gravity"));
    }
    // 1.050 is 12.39 P in the table of the ASBC
    const auto either = read(xmlOf("<OG>1.050</OG><EST_OG>1.000</EST_OG>"), base);
    CHECK(either->recipe.originalGravity.p == Approx(12.39).margin(.02));
}

TEST_CASE("what is not mashed brings what its yield says, by its weight", "[recipe]") {
    // BeerXML 1.0: YIELD is the dry yield of a grain, the raw yield by weight of an extract or a sugar.
    const auto recipe = [](const std::string& syrup, const std::string& honey) {
        return xmlOf("<EFFICIENCY>72</EFFICIENCY><OG>1.050</OG>")
            .replace(xmlOf("<EFFICIENCY>72</EFFICIENCY><OG>1.050</OG>").find("</FERMENTABLES>"), 0,
                     "<FERMENTABLE><NAME>Amber syrup</NAME><TYPE>Extract</TYPE><AMOUNT>3</AMOUNT>" + syrup +
                         "</FERMENTABLE><FERMENTABLE><NAME>Honey</NAME><TYPE>Sugar</TYPE><AMOUNT>1</AMOUNT>" + honey +
                         "</FERMENTABLE>");
    };
    const auto& pantry = ingredient::builtInPantry();
    const double ofMalt = pantry.grain("pilsner")->dryExtract(),
                 ofLiquid = pantry.grain("liquid_extract")->dryExtract();
    const auto made = read(recipe("<YIELD>76</YIELD>", "<YIELD>75</YIELD>"));
    REQUIRE(made);
    CHECK_FALSE(tells(*made, "desk.recipe.left.no_yield"));
    REQUIRE(made->recipe.grist.size() == 2);
    const auto& grist = made->recipe.grist;
    CHECK(grist[1].grain == "liquid_extract");
    CHECK(grist[1].share.of1 / grist[0].share.of1 == Approx(3 * .76 / ofLiquid / 14.665828));
    CHECK(made->recipe.sugarShare.of1 == Approx(.75 / (.75 + 3 * .76 + 14.665828 * ofMalt * .72)));
    const auto unsaid = read(recipe("", ""));
    CHECK(tells(*unsaid, "desk.recipe.left.no_yield"));
    CHECK(unsaid->recipe.grist[1].share.of1 / unsaid->recipe.grist[0].share.of1 ==
          Approx(3 * .80 / ofLiquid / 14.665828)); // a liquid extract is a fifth water
    CHECK(unsaid->recipe.sugarShare.of1 <
          .79 * 1.01 / (.79 + 3 * .80 + 14.665828 * ofMalt * .72)); // honey of the pantry
    const auto json = fromBeerJson(jsonOf("").replace(jsonOf("").find(R"("type")"), 0,
                                                      R"("yield": {"fine_grind": {"unit": "%", "value": 78}}, )"));
    CHECK(json->fermentables.at(0).yieldShare == Approx(.78));
}

TEST_CASE("what is neither grain, sugar nor extract is left out of the grist", "[recipe]") {
    std::string text = jsonOf("");
    const auto made = read(text.replace(text.find("]"), 0,
                                        R"(, {"name": "Sour cherries", "type": "fruit",
                                              "amount": {"unit": "kg", "value": 9}})"));
    REQUIRE(made);
    CHECK(made->recipe.grist.size() == 1);
    CHECK(tells(*made, "desk.recipe.left.other"));
}

TEST_CASE("an original gravity that no wort has is refused", "[recipe]") {
    for (const char* bad : {"<OG>1048</OG>", "<OG>1.9</OG>"})
        CHECK(read(xmlOf(bad)).error().path == "/original_gravity");
    CHECK(read(xmlOf("<OG>1.120</OG>")));
}

TEST_CASE("colours of a recipe are on the scales of the absorbance", "[recipe]") {
    // EBC = 25 A430 and SRM = 12.7 A430 (EBC 8.5, ASBC Beer-10); malt: SRM = 1.3546 L - 0.76.
    CHECK(fromBeerJson(jsonOf(""))->fermentables.at(0).colour.ebc == Approx(25).epsilon(1e-9));
    CHECK(fromBeerXml(xmlOf(""))->fermentables.at(0).colour.ebc == Approx(12.786 * 25 / 12.7).epsilon(1e-9));
    RecipeCard card;
    card.fermentables = {{"white sugar", "sucrose", RecipeCard::Fermentable::Type::sugar, "", 1, Ebc{0}, Kilograms{1}}};
    card.colour = Ebc{25};
    const std::string text = beerXml(card, "Teal");
    CHECK(text.find("<COLOR>0</COLOR>") != std::string::npos);
    CHECK(text.find("<COLOR_MIN>12.7</COLOR_MIN>") != std::string::npos);
    CHECK(fromBeerXml(text)->fermentables.at(0).colour == Ebc{0});
}
