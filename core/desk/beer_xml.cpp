// SPDX-License-Identifier: GPL-3.0-or-later
// BeerXML 1.0: upper-case tags with plain text, kilograms, litres, minutes, degrees Celsius, per cent, Lovibond.
#include "desk/recipe_card.h"
#include "quantity/colour.h"
#include "quantity/density.h"
#include "quantity/parse.h"

#include <cmath>
#include <fmt/format.h>
#include <pugixml.hpp>

namespace staveline::desk {
namespace {

using pugi::xml_node;
using Type = RecipeCard::Fermentable::Type;

xml_node put(xml_node in, const char* tag, const std::string& text) {
    xml_node node = in.append_child(tag);
    std::string shown;
    for (const char c : text) // what XML 1.0 has no place for
        shown += static_cast<unsigned char>(c) < ' ' && c != '\n' && c != '\t' ? ' ' : c;
    node.text().set(shown.c_str());
    return node;
}
xml_node put(xml_node in, const char* tag, double number) {
    return put(in, tag, fmt::format("{}", std::round(number * 1e6) / 1e6));
}
/// Every record has a name and the version of its form.
xml_node record(xml_node in, const char* tag, const std::string& name) {
    xml_node node = in.append_child(tag);
    put(node, "NAME", name);
    put(node, "VERSION", "1");
    return node;
}

void putFermentables(xml_node recipe, const RecipeCard& card) {
    xml_node all = recipe.append_child("FERMENTABLES");
    for (const auto& each : card.fermentables) {
        xml_node node = record(all, "FERMENTABLE", each.name);
        constexpr const char* words[] = {"Grain", "Sugar", "Extract", "Dry Extract", "Adjunct"};
        put(node, "TYPE", words[static_cast<std::size_t>(each.type)]);
        put(node, "AMOUNT", each.mass.kg);
        put(node, "YIELD", each.yieldShare.value_or(0) * 100);
        put(node, "COLOR", toLovibond(each.colour));
    }
}
void putHops(xml_node recipe, const RecipeCard& card) {
    xml_node all = recipe.append_child("HOPS");
    for (const auto& hop : card.hops) {
        xml_node node = record(all, "HOP", hop.name);
        put(node, "ALPHA", hop.alpha.of1 * 100);
        put(node, "AMOUNT", hop.mass.g / 1000);
        put(node, "USE", "Boil");
        put(node, "TIME", hop.boiled.min);
    }
}
void putYeasts(xml_node recipe, const RecipeCard& card) {
    xml_node all = recipe.append_child("YEASTS");
    for (const auto& culture : card.cultures) {
        xml_node node = record(all, "YEAST", culture.name);
        put(node, "TYPE", culture.type == "lager" ? "Lager" : culture.type == "wine" ? "Wine" : "Ale");
        put(node, "FORM", "Culture");
        put(node, "AMOUNT", 0);
        put(node, "PRODUCT_ID", culture.id);
    }
}
void putMash(xml_node recipe, const RecipeCard& card) {
    xml_node mash = record(recipe, "MASH", "Mash");
    put(mash, "GRAIN_TEMP", card.grainTemperature.c);
    if (card.mashPh)
        put(mash, "PH", card.mashPh->ph);
    xml_node steps = mash.append_child("MASH_STEPS");
    for (const auto& step : card.mash) {
        const bool heated = step.type == RecipeCard::Step::Type::heat;
        xml_node node = record(steps, "MASH_STEP", "Rest");
        put(node, "TYPE", heated ? "Temperature" : "Infusion");
        if (!heated)
            put(node, "INFUSE_AMOUNT", step.water.l);
        put(node, "STEP_TIME", step.rest.min);
        put(node, "STEP_TEMP", step.temperature.c);
    }
}
void putStyle(xml_node recipe, const RecipeCard& card) {
    xml_node style = record(recipe, "STYLE", "Mixed-culture refill");
    put(style, "CATEGORY", "Mixed culture");
    put(style, "CATEGORY_NUMBER", "0");
    put(style, "STYLE_LETTER", "A");
    put(style, "STYLE_GUIDE", "None");
    put(style, "TYPE", "Mixed");
    const auto range = [&](const std::string& name, double value) {
        put(style, (name + "_MIN").c_str(), value);
        put(style, (name + "_MAX").c_str(), value);
    };
    range("OG", toGravity(card.original.value_or(Plato{0})).sg);
    range("FG", toGravity(card.final.value_or(Plato{0})).sg);
    range("IBU", card.bitterness.value_or(Ibu{0}).ibu);
    range("COLOR", toSrm(card.colour.value_or(Ebc{0})));
}

std::string textIn(const xml_node& node, const char* tag) {
    return node.child(tag).text().as_string();
}
/// Fills a card; the first number that cannot be read is kept.
class XmlReader {
public:
    std::optional<Fault> fault;

    RecipeCard read(const xml_node& recipe) {
        RecipeCard card;
        card.name = textIn(recipe, "NAME");
        card.batch = Litres{number(recipe, "BATCH_SIZE").value_or(0)};
        card.boil = Minutes{number(recipe, "BOIL_TIME").value_or(card.boil.min)};
        if (const auto efficiency = number(recipe, "EFFICIENCY"); efficiency && *efficiency > 0)
            card.brewhouse = Share{*efficiency / 100};
        takeIngredients(recipe, card);
        takeMash(recipe.child("MASH"), card);
        for (const char* tag : {"OG", "EST_OG"})
            if (const auto gravity = number(recipe, tag); gravity && *gravity > 1) // 1.000 is what was never filled in
                card.original = toPlato(SpecificGravity{*gravity});
        if (const auto ibu = number(recipe, "IBU"))
            card.bitterness = Ibu{*ibu};
        return card;
    }

private:
    /// The number a text begins with, before its unit: "1.048 SG". None: there is no text.
    std::optional<double> number(const xml_node& node, const char* tag) {
        const std::string text = textIn(node, tag);
        const auto begin = text.find_first_not_of(" \t\r\n");
        if (begin == text.npos)
            return std::nullopt;
        const auto end = std::min(text.find_first_not_of("+-.0123456789eE", begin), text.size());
        const auto read = plainNumber(text.substr(text[begin] == '+' ? begin + 1 : begin, end - begin));
        const bool onlyUnit = text.find_first_of(",;.0123456789", end) == text.npos;
        if ((!read || !onlyUnit) && !fault)
            fault = Fault{FaultKind::input, node.path() + "/" + tag,
                          say("desk.recipe.number").with("text", excerpt(text)), say("desk.recipe.number.remedy")};
        return read;
    }
    RecipeCard::Fermentable fermentable(const xml_node& node) {
        RecipeCard::Fermentable each{textIn(node, "NAME"), ""};
        const std::string type = textIn(node, "TYPE");
        each.type = type == "Grain"         ? Type::grain
                    : type == "Sugar"       ? Type::sugar
                    : type == "Extract"     ? Type::extract
                    : type == "Dry Extract" ? Type::dryExtract
                    : type == "Adjunct"     ? Type::grain
                                            : Type::other;
        if (type == "Adjunct")
            each.group = "adjunct";
        each.mass = Kilograms{number(node, "AMOUNT").value_or(0)};
        if (const auto yield = number(node, "YIELD"); yield && *yield > 0)
            each.yieldShare = *yield / 100;
        if (const auto colour = number(node, "COLOR"))
            each.colour = ebcOfLovibond(*colour);
        return each;
    }
    RecipeCard::Hop hop(const xml_node& node) {
        const std::string use = textIn(node, "USE");
        return {textIn(node, "NAME"), Share{number(node, "ALPHA").value_or(0) / 100},
                Grams{number(node, "AMOUNT").value_or(0) * 1000}, Minutes{number(node, "TIME").value_or(0)},
                use == "Boil" || use == "First Wort"};
    }
    void takeIngredients(const xml_node& recipe, RecipeCard& card) {
        for (const auto& node : recipe.child("FERMENTABLES").children("FERMENTABLE"))
            card.fermentables.push_back(fermentable(node));
        for (const auto& node : recipe.child("HOPS").children("HOP"))
            card.hops.push_back(hop(node));
        for (const auto& node : recipe.child("YEASTS").children("YEAST")) {
            const std::string type = textIn(node, "TYPE");
            card.cultures.push_back({textIn(node, "NAME"), textIn(node, "PRODUCT_ID"),
                                     type == "Lager"                         ? "lager"
                                     : type == "Wine" || type == "Champagne" ? "wine"
                                                                             : "ale"});
        }
        for (const auto& [list, tag] : {std::pair("MISCS", "MISC"), std::pair("WATERS", "WATER")})
            for (const auto& node : recipe.child(list).children(tag))
                card.others.push_back(textIn(node, "NAME"));
    }
    void takeMash(const xml_node& mash, RecipeCard& card) {
        if (const auto ph = number(mash, "PH"))
            card.mashPh = Ph{*ph};
        for (const auto& node : mash.child("MASH_STEPS").children("MASH_STEP")) {
            RecipeCard::Step step;
            step.type =
                textIn(node, "TYPE") == "Infusion" ? RecipeCard::Step::Type::infusion : RecipeCard::Step::Type::heat;
            step.temperature = Celsius{number(node, "STEP_TEMP").value_or(-100)}; // then it is left out
            step.rest = Minutes{number(node, "STEP_TIME").value_or(0)};
            card.mash.push_back(step);
        }
    }
};

} // namespace

std::string beerXml(const RecipeCard& card, const std::string& brewer) {
    pugi::xml_document file;
    xml_node declaration = file.append_child(pugi::node_declaration);
    declaration.append_attribute("version") = "1.0";
    declaration.append_attribute("encoding") = "UTF-8";
    xml_node recipe = record(file.append_child("RECIPES"), "RECIPE", card.name);
    put(recipe, "TYPE", "All Grain");
    putStyle(recipe, card);
    put(recipe, "BREWER", brewer);
    put(recipe, "BATCH_SIZE", card.batch.l);
    put(recipe, "BOIL_SIZE", card.preBoil.l);
    put(recipe, "BOIL_TIME", card.boil.min);
    put(recipe, "EFFICIENCY", card.brewhouse.value_or(Share{0}).of1 * 100);
    putHops(recipe, card);
    putFermentables(recipe, card);
    recipe.append_child("MISCS");
    putYeasts(recipe, card);
    recipe.append_child("WATERS");
    putMash(recipe, card);
    put(recipe, "NOTES", card.notes);
    if (card.original)
        put(recipe, "EST_OG", fmt::format("{:.5f} sg", toGravity(*card.original).sg));
    if (card.final)
        put(recipe, "EST_FG", fmt::format("{:.5f} sg", toGravity(*card.final).sg));
    if (card.bitterness) {
        put(recipe, "IBU", fmt::format("{:.1f} IBU", card.bitterness->ibu));
        put(recipe, "IBU_METHOD", "Tinseth");
    }
    struct Text : pugi::xml_writer {
        std::string all;
        void write(const void* data, std::size_t size) override { all.append(static_cast<const char*>(data), size); }
    } text;
    file.save(text, " ", pugi::format_default, pugi::encoding_utf8);
    return text.all;
}

Result<RecipeCard> fromBeerXml(std::string_view text) {
    pugi::xml_document file;
    const auto parsed = file.load_buffer(text.data(), text.size());
    if (!parsed)
        return badInput("", say("desk.recipe.no_xml").with("at", static_cast<std::int64_t>(parsed.offset)),
                        say("desk.recipe.no_xml.remedy"));
    const xml_node recipe = file.child("RECIPES").child("RECIPE");
    if (!recipe)
        return badInput("/RECIPES", say("desk.recipe.none"), say("desk.recipe.none.remedy"));
    XmlReader reader;
    RecipeCard card = reader.read(recipe);
    if (reader.fault)
        return fail(*reader.fault);
    return card;
}

} // namespace staveline::desk
