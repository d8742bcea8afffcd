// SPDX-License-Identifier: GPL-3.0-or-later
// BeerJSON 1.0 (schema of the npm package @beerjson/beerjson 1.0.2): values are {unit, value}, times whole numbers.
#include "desk/recipe_card.h"
#include "facts/json_syntax.h"
#include "quantity/colour.h"
#include "quantity/density.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

namespace staveline::desk {
namespace {

using Json = nlohmann::ordered_json;
using Type = RecipeCard::Fermentable::Type;

/// As many digits as brewing has.
double rounded(double value) {
    constexpr double digits = 1e6;
    return std::round(value * digits) / digits;
}
Json measure(const char* unit, double value) {
    return {{"unit", unit}, {"value", rounded(value)}};
}
Json minutes(Minutes time) {
    return {{"unit", "min"}, {"value", std::lround(time.min)}};
}
Json perCent(Share share) {
    return measure("%", share.of1 * 100);
}

constexpr std::array<const char*, 5> typeWords = {"grain", "sugar", "extract", "dry extract", "other"};

Json fermentableJson(const RecipeCard::Fermentable& each, std::size_t rests) {
    Json json{{"name", each.name},
              {"type", typeWords[static_cast<std::size_t>(each.type)]},
              {"product_id", each.id},
              {"yield", {{"fine_grind", perCent(Share{each.yieldShare.value_or(0)})}}},
              {"color", measure("EBC", each.colour.ebc)},
              {"amount", measure("kg", each.mass.kg)}};
    if (each.type == Type::grain)
        json["grain_group"] = each.group;
    if (each.late)
        json["timing"] = {{"use", "add_to_mash"}, {"step", rests}};
    return json;
}

Json stepJson(const RecipeCard::Step& step, const RecipeCard& card, bool first) {
    const bool heated = step.type == RecipeCard::Step::Type::heat;
    Json json{{"name", "rest"},
              {"type", heated ? "temperature" : "infusion"},
              {"step_temperature", measure("C", step.temperature.c)},
              {"step_time", minutes(step.rest)}};
    if (!heated)
        json["amount"] = measure("l", step.water.l);
    if (first && card.liquor)
        json["water_grain_ratio"] = measure("l/kg", raw(*card.liquor));
    if (first && card.mashPh)
        json["start_ph"] = measure("pH", card.mashPh->ph);
    return json;
}

Json ingredientsJson(const RecipeCard& card) {
    Json fermentables = Json::array(), hops = Json::array(), cultures = Json::array();
    for (const auto& each : card.fermentables)
        fermentables.push_back(fermentableJson(each, card.mash.size()));
    for (const auto& hop : card.hops)
        hops.push_back({{"name", hop.name},
                        {"alpha_acid", perCent(hop.alpha)},
                        {"amount", measure("g", hop.mass.g)},
                        {"timing", {{"use", "add_to_boil"}, {"duration", minutes(hop.boiled)}}}});
    for (const auto& culture : card.cultures)
        cultures.push_back({{"name", culture.name},
                            {"type", culture.type},
                            {"form", "culture"},
                            {"product_id", culture.id},
                            {"amount", measure("each", 1)}});
    return {{"fermentable_additions", fermentables}, {"hop_additions", hops}, {"culture_additions", cultures}};
}

// --- reading -----------------------------------------------------------------------------------------------------

const Json& at(const Json& json, const char* key) {
    static const Json none;
    const auto found = json.is_object() ? json.find(key) : json.end();
    return json.is_object() && found != json.end() ? *found : none;
}
std::string textAt(const Json& json, const char* key) {
    const Json& text = at(json, key);
    return text.is_string() ? text.get<std::string>() : std::string();
}

struct UnitFactor {
    std::string_view unit;
    double factor;
};
// US customary and imperial measures by their definitions (NIST Handbook 44, Appendix C; Weights and Measures Act
// 1985).
constexpr std::array<UnitFactor, 21> factors = {{{"l", 1},
                                                 {"ml", .001},
                                                 {"tsp", .00492892159},
                                                 {"tbsp", .0147867648},
                                                 {"floz", .0295735296},
                                                 {"cup", .236588236},
                                                 {"pt", .473176473},
                                                 {"qt", .946352946},
                                                 {"gal", 3.785411784},
                                                 {"bbl", 117.347765},
                                                 {"igal", 4.54609},
                                                 {"ibbl", 163.65924},
                                                 {"kg", 1},
                                                 {"g", .001},
                                                 {"mg", 1e-6},
                                                 {"lb", .45359237},
                                                 {"oz", .028349523125},
                                                 {"min", 1},
                                                 {"sec", 1 / 60.0},
                                                 {"hr", 60},
                                                 {"day", 1440}}};

/// In litres, kilograms or minutes; none: no number or an unknown unit.
std::optional<double> measured(const Json& json) {
    const Json& value = at(json, "value");
    const std::string unit = textAt(json, "unit");
    if (!value.is_number())
        return std::nullopt;
    for (const auto& known : factors)
        if (known.unit == unit)
            return value.get<double>() * known.factor;
    return std::nullopt;
}
std::optional<double> numberIn(const Json& json, std::string_view unit) {
    const Json& value = at(json, "value");
    return value.is_number() && textAt(json, "unit") == unit ? std::optional(value.get<double>()) : std::nullopt;
}
std::optional<Celsius> temperatureOf(const Json& json) {
    if (const auto celsius = numberIn(json, "C"))
        return Celsius{*celsius};
    const auto fahrenheit = numberIn(json, "F");
    return fahrenheit ? std::optional(Celsius{(*fahrenheit - 32) / 1.8}) : std::nullopt;
}
std::optional<Plato> extractOf(const Json& json) {
    if (const auto gravity = numberIn(json, "sg"))
        return toPlato(SpecificGravity{*gravity});
    const auto plato = numberIn(json, "plato");
    const auto brix = numberIn(json, "brix");
    return plato ? std::optional(Plato{*plato}) : brix ? std::optional(Plato{*brix}) : std::nullopt;
}
std::optional<Ebc> colourOf(const Json& json) {
    if (const auto ebc = numberIn(json, "EBC"))
        return Ebc{*ebc};
    if (const auto srm = numberIn(json, "SRM"))
        return ebcOfSrm(*srm);
    const auto lovibond = numberIn(json, "Lovi");
    return lovibond ? std::optional(ebcOfLovibond(*lovibond)) : std::nullopt;
}
std::optional<Share> efficiencyOf(const Json& recipe, const char* which) {
    const auto perCent = numberIn(at(at(recipe, "efficiency"), which), "%");
    return perCent && *perCent > 0 ? std::optional(Share{*perCent / 100}) : std::nullopt;
}

RecipeCard::Fermentable fermentableFrom(const Json& json) {
    RecipeCard::Fermentable each{textAt(json, "name"), textAt(json, "product_id")};
    const std::string type = textAt(json, "type");
    const auto word = std::find(typeWords.begin(), typeWords.end(), type);
    each.type = type == "honey"           ? Type::sugar
                : word == typeWords.end() ? Type::other
                                          : static_cast<Type>(word - typeWords.begin());
    each.group = textAt(json, "grain_group");
    each.colour = colourOf(at(json, "color")).value_or(each.colour);
    each.mass = Kilograms{measured(at(json, "amount")).value_or(0)};
    if (const auto yield = numberIn(at(at(json, "yield"), "fine_grind"), "%"); yield && *yield > 0)
        each.yieldShare = *yield / 100;
    const Json& timing = at(json, "timing");
    each.late = textAt(timing, "use") == "add_to_mash" && at(timing, "step").is_number() && at(timing, "step") > 1;
    return each;
}

RecipeCard::Hop hopFrom(const Json& json) {
    const Json& timing = at(json, "timing");
    const auto boiled = measured(at(timing, at(timing, "duration").is_null() ? "time" : "duration"));
    return {textAt(json, "name"), Share{numberIn(at(json, "alpha_acid"), "%").value_or(0) / 100},
            Grams{measured(at(json, "amount")).value_or(0) * 1000}, Minutes{boiled.value_or(0)},
            textAt(timing, "use") == "add_to_boil"};
}

RecipeCard::Step stepFrom(const Json& json) {
    using StepType = RecipeCard::Step::Type;
    const std::string type = textAt(json, "type");
    RecipeCard::Step step;
    step.type = type == "infusion"                             ? StepType::infusion
                : type == "temperature" || type == "decoction" ? StepType::heat
                                                               : StepType::other;
    step.temperature = temperatureOf(at(json, "step_temperature")).value_or(Celsius{-100}); // then it is left out
    step.rest = Minutes{measured(at(json, "step_time")).value_or(0)};
    return step;
}

void takeMash(const Json& mash, RecipeCard& card) {
    for (const Json& step : at(mash, "mash_steps")) {
        card.mash.push_back(stepFrom(step));
        if (const auto ratio = numberIn(at(step, "water_grain_ratio"), "l/kg"); ratio && !card.liquor)
            card.liquor = LitresPerKilogram{*ratio};
        if (const auto ph = numberIn(at(step, "start_ph"), "pH"); ph && !card.mashPh)
            card.mashPh = Ph{*ph};
    }
}

void takeIngredients(const Json& ingredients, RecipeCard& card) {
    for (const Json& each : at(ingredients, "fermentable_additions"))
        card.fermentables.push_back(fermentableFrom(each));
    for (const Json& each : at(ingredients, "hop_additions"))
        card.hops.push_back(hopFrom(each));
    for (const Json& each : at(ingredients, "culture_additions"))
        card.cultures.push_back({textAt(each, "name"), textAt(each, "product_id"), textAt(each, "type")});
    for (const char* kind : {"miscellaneous_additions", "water_additions"})
        for (const Json& each : at(ingredients, kind))
            card.others.push_back(textAt(each, "name"));
}

} // namespace

std::string beerJson(const RecipeCard& card, const std::string& brewer) {
    Json steps = Json::array();
    for (const auto& step : card.mash)
        steps.push_back(stepJson(step, card, steps.empty()));
    Json recipe{
        {"name", card.name},
        {"type", "all grain"},
        {"author", brewer},
        {"efficiency", {{"brewhouse", perCent(card.brewhouse.value_or(Share{0}))}}},
        {"batch_size", measure("l", card.batch.l)},
        {"boil", {{"pre_boil_size", measure("l", card.preBoil.l)}, {"boil_time", minutes(card.boil)}}},
        {"ingredients", ingredientsJson(card)},
        {"mash",
         {{"name", "mash"}, {"grain_temperature", measure("C", card.grainTemperature.c)}, {"mash_steps", steps}}},
        {"notes", card.notes}};
    if (card.mashEfficiency)
        recipe["efficiency"]["mash"] = perCent(*card.mashEfficiency);
    if (card.original)
        recipe["original_gravity"] = measure("plato", card.original->p);
    if (card.final)
        recipe["final_gravity"] = measure("plato", card.final->p);
    if (card.alcohol)
        recipe["alcohol_by_volume"] = measure("%", raw(*card.alcohol));
    if (card.bitterness)
        recipe["ibu_estimate"] = {{"method", "Tinseth"}, {"value", measure("IBUs", card.bitterness->ibu)}};
    if (card.colour)
        recipe["color_estimate"] = measure("EBC", card.colour->ebc);
    const Json file{{"beerjson", {{"version", 1.0}, {"recipes", Json::array({recipe})}}}};
    return file.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Result<RecipeCard> fromBeerJson(std::string_view text) {
    if (auto sound = facts::checkJson(text); !sound)
        return fail(sound.error());
    const Json file = Json::parse(text);
    const Json& recipes = at(at(file, "beerjson"), "recipes");
    if (!recipes.is_array() || recipes.empty())
        return badInput("/beerjson/recipes", say("desk.recipe.none"), say("desk.recipe.none.remedy"));
    const Json& recipe = recipes.front();
    RecipeCard card;
    card.name = textAt(recipe, "name");
    card.batch = Litres{measured(at(recipe, "batch_size")).value_or(0)};
    card.brewhouse = efficiencyOf(recipe, "brewhouse");
    card.mashEfficiency = efficiencyOf(recipe, "mash");
    card.boil = Minutes{measured(at(at(recipe, "boil"), "boil_time")).value_or(card.boil.min)};
    takeIngredients(at(recipe, "ingredients"), card);
    takeMash(at(recipe, "mash"), card);
    card.original = extractOf(at(recipe, "original_gravity"));
    if (card.original && card.original->p <= 0) // water is what was never filled in
        card.original.reset();
    if (const auto ibu = numberIn(at(at(recipe, "ibu_estimate"), "value"), "IBUs"))
        card.bitterness = Ibu{*ibu};
    return card;
}

} // namespace staveline::desk
