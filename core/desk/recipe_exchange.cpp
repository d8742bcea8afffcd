// SPDX-License-Identifier: GPL-3.0-or-later
// A refill recipe made into a card of the open formats, and made of one.
#include "desk/recipe_exchange.h"

#include "brewing/hops.h"
#include "desk/recipe_card.h"
#include "facts/ranges.h"
#include "facts/record_file.h"
#include "quantity/constants.h"
#include "quantity/density.h"
#include "quantity/text.h"
#include "quantity/words.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace staveline::desk {
namespace {

using brewing::BrewPlan;
using brewing::Recipe;
using ingredient::Grain;
using ingredient::GrainKind;
using ingredient::Pantry;
using Type = RecipeCard::Fermentable::Type;

// --- to a card ---------------------------------------------------------------------------------------------------

Type typeOf(const Grain& grain) {
    if (grain.isSugar())
        return Type::sugar;
    if (grain.kind != GrainKind::extract)
        return Type::grain;
    constexpr double wettestPowder = .1;
    return grain.moisture > wettestPowder ? Type::extract : Type::dryExtract;
}

const char* groupOf(GrainKind kind) {
    switch (kind) {
    case GrainKind::caramel:
        return "caramel";
    case GrainKind::roast:
        return "roasted";
    case GrainKind::flaked:
        return "flaked";
    case GrainKind::smoked:
        return "smoked";
    case GrainKind::unmalted:
    case GrainKind::husk:
        return "adjunct";
    case GrainKind::base:
    case GrainKind::wheat:
    case GrainKind::rye:
    case GrainKind::oat:
        return "base";
    case GrainKind::kilned:
    case GrainKind::acid:
    case GrainKind::sugar:
    case GrainKind::extract:
        break;
    }
    return "specialty";
}

RecipeCard::Fermentable fermentableOf(const Grain& grain, Kilograms mass, bool late) {
    const Type type = typeOf(grain);
    const double yield = type == Type::grain ? grain.extractDryBasis : grain.dryExtract();
    return {grain.name, grain.id, type, groupOf(grain.kind), yield, grain.colour, mass, late};
}

RecipeCard::Culture cultureOf(const ingredient::Yeast& yeast) {
    const char* type = yeast.id.starts_with("lager") ? "lager" : yeast.id.starts_with("wine") ? "wine" : "ale";
    return {yeast.name, yeast.id, type};
}

RecipeCard::Step stepOf(const brewing::MashStage& stage) {
    const bool heated = stage.how == brewing::MashStage::How::heat;
    return {stage.temperature, stage.rest, heated ? RecipeCard::Step::Type::heat : RecipeCard::Step::Type::infusion,
            stage.water};
}

/// Extract that reaches the fermenter, of all that grist and sugar hold.
Share brewhouseOf(const BrewPlan& plan, const std::vector<RecipeCard::Fermentable>& fermentables,
                  const Pantry& pantry) {
    double held = 0;
    for (const auto& each : fermentables)
        if (const auto grain = pantry.grain(each.id))
            held += each.mass.kg * grain->dryExtract();
    const double kept = plan.postBoil.l > 0 ? plan.intoFermenter.l / plan.postBoil.l : 0;
    return Share{held > 0 ? plan.extract.kg * kept / held : 0};
}

RecipeCard cardOf(const RecipeToWrite& what, const Pantry& pantry) {
    const BrewPlan& plan = what.plan;
    RecipeCard card;
    card.name = what.name;
    card.batch = plan.intoFermenter;
    card.preBoil = plan.preBoilHot;
    card.boil = what.recipe.boil;
    for (const auto& part : plan.grist)
        if (const auto grain = pantry.grain(part.id))
            card.fermentables.push_back(fermentableOf(*grain, part.mass, part.late));
    if (const auto sugar = pantry.grain(what.recipe.sugar); sugar && plan.sugar.kg > 0)
        card.fermentables.push_back(fermentableOf(*sugar, plan.sugar, false));
    for (const auto& hop : plan.hops)
        card.hops.push_back({hop.name, hop.alpha, hop.mass, hop.boiled, true});
    if (const auto yeast = pantry.yeast(what.recipe.yeast))
        card.cultures.push_back(cultureOf(*yeast));
    std::transform(plan.mash.begin(), plan.mash.end(), std::back_inserter(card.mash), stepOf);
    card.brewhouse = brewhouseOf(plan, card.fermentables, pantry);
    card.mashEfficiency = what.kit.efficiency;
    card.grainTemperature = what.kit.grainTemperature;
    card.liquor = what.recipe.liquorToGrist;
    card.mashPh = what.recipe.mashPh;
    card.original = plan.originalGravity;
    card.final = plan.finalGravity;
    card.alcohol = plan.alcohol;
    card.bitterness = plan.bitterness;
    card.colour = plan.colour;
    return card;
}

std::vector<Message> leftOf(RecipeFormat format, const Recipe& recipe) {
    std::vector<Message> left = {say("desk.recipe.left.vessel"), say("desk.recipe.left.culture")};
    if (recipe.preSoured.of1 > 0)
        left.push_back(say("desk.recipe.left.pre_soured").with("share", recipe.preSoured).with("ta", recipe.preSourTa));
    if (format == RecipeFormat::beerXml)
        for (const auto& part : recipe.grist)
            if (part.late)
                left.push_back(say("desk.recipe.left.late").with("grain", part.grain));
    const bool whole = std::all_of(recipe.mash.begin(), recipe.mash.end(),
                                   [](const auto& rest) { return rest.minutes.min == std::round(rest.minutes.min); });
    if (format == RecipeFormat::beerJson && !whole)
        left.push_back(say("desk.recipe.left.minutes"));
    return left;
}

// --- from a card -------------------------------------------------------------------------------------------------

class RecipeMaker {
public:
    RecipeMaker(const RecipeCard& card, const Pantry& pantry, const Recipe& base)
        : card_(card), pantry_(pantry), made_{card.name, base, {}} {}

    Result<ReadRecipe> make() {
        takeFermentables();
        if (made_.recipe.grist.empty())
            return badInput("/grist", say("desk.recipe.no_grain"), say("desk.recipe.no_grain.remedy"));
        takeMash();
        made_.recipe.boil = card_.boil;
        if (card_.original && !facts::extracts.holds(card_.original->p))
            return badInput("/original_gravity", say("desk.recipe.no_wort"),
                            say("desk.recipe.no_wort.remedy")
                                .with("low", Plato{facts::extracts.low})
                                .with("high", Plato{facts::extracts.high}));
        if (card_.original)
            made_.recipe.originalGravity = *card_.original;
        else
            made_.left.push_back(say("desk.recipe.left.no_gravity").with("gravity", made_.recipe.originalGravity));
        takeCulture();
        if (made_.recipe.preSoured.of1 > 0)
            made_.left.push_back(say("desk.recipe.left.pre_soured_kept")
                                     .with("share", made_.recipe.preSoured)
                                     .with("ta", made_.recipe.preSourTa));
        for (const auto& other : card_.others)
            made_.left.push_back(say("desk.recipe.left.other").with("name", other));
        if (auto hopped = takeHops(); !hopped)
            return fail(hopped.error());
        return std::move(made_);
    }

private:
    /// By id, by name, else the one of its type that is nearest in colour; null: there is none of its type.
    const Grain* grainFor(const RecipeCard::Fermentable& given) {
        for (const auto& grain : pantry_.grains())
            if (grain.id == given.id || nameKey(grain.name) == nameKey(given.name))
                return &grain;
        const Grain* nearest = nullptr;
        double least = std::numeric_limits<double>::infinity();
        for (const auto& grain : pantry_.grains()) {
            const bool sameGroup = given.group.empty() || given.group == groupOf(grain.kind);
            const double away = std::abs(grain.colour.ebc - given.colour.ebc) + (sameGroup ? 0 : 1e6);
            if (typeOf(grain) == given.type && away < least) {
                nearest = &grain;
                least = away;
            }
        }
        made_.left.push_back(
            nearest ? say("desk.recipe.left.taken_as").with("name", given.name).with("grain", nearest->name)
                    : say("desk.recipe.left.other").with("name", given.name));
        return nearest;
    }
    /// Extract of a kilogram of what is not mashed.
    double extractOf(const RecipeCard::Fermentable& given, const Grain& taken) {
        if (given.yieldShare || given.type != Type::extract)
            return given.yieldShare.value_or(taken.dryExtract());
        const Share assumed{constants::grain::liquidExtract};
        made_.left.push_back(say("desk.recipe.left.no_yield").with("name", given.name).with("share", assumed));
        return assumed.of1;
    }
    void takeSugar(const RecipeCard::Fermentable& given, const Grain& grain, double& extract) {
        if (extract > 0 && made_.recipe.sugar != grain.id)
            made_.left.push_back(say("desk.recipe.left.sugar").with("name", given.name));
        else
            made_.recipe.sugar = grain.id;
        extract += given.mass.kg * extractOf(given, grain);
    }
    Share efficiency() {
        if (card_.mashEfficiency || card_.brewhouse)
            return card_.mashEfficiency ? *card_.mashEfficiency : *card_.brewhouse;
        const Share assumed = brewing::Equipment{}.efficiency;
        made_.left.push_back(say("desk.recipe.left.no_efficiency").with("share", assumed));
        return assumed;
    }
    void takeFermentables() {
        Recipe& recipe = made_.recipe;
        recipe.grist.clear();
        recipe.sugarShare = Share{0};
        double mass = 0, extract = 0, sugar = 0;
        const double won = efficiency().of1;
        for (const auto& given : card_.fermentables) {
            const Grain* grain = grainFor(given);
            if (!grain)
                continue;
            if (grain->isSugar()) {
                takeSugar(given, *grain, sugar);
                continue;
            }
            // of an extract the dry one that brings as much
            const double kg = given.mass.kg * (grain->mashed() ? 1 : extractOf(given, *grain) / grain->dryExtract());
            recipe.grist.push_back({grain->id, Share{kg}, given.late, {}});
            mass += kg;
            extract += kg * grain->dryExtract() * (grain->mashed() ? won : 1);
        }
        for (auto& part : recipe.grist)
            part.share = Share{mass > 0 ? part.share.of1 / mass : 0};
        if (sugar > 0)
            recipe.sugarShare = Share{sugar / (sugar + extract)};
    }
    void takeMash() {
        const Range ofRests = facts::restTemperatures();
        std::vector<brewing::MashStep> steps;
        for (const auto& step : card_.mash)
            if (step.type == RecipeCard::Step::Type::other || !ofRests.holds(step.temperature.c))
                made_.left.push_back(say("desk.recipe.left.step").with("temperature", step.temperature));
            else
                steps.push_back({step.temperature, step.rest});
        if (!steps.empty())
            made_.recipe.mash = std::move(steps);
        else
            made_.left.push_back(say("desk.recipe.left.no_mash"));
        made_.recipe.mashPh = card_.mashPh.value_or(made_.recipe.mashPh);
        made_.recipe.liquorToGrist = card_.liquor.value_or(made_.recipe.liquorToGrist);
    }
    /// What each brings by Tinseth; the parts are kept, and the whole where the file does not say it.
    Result<void> takeHops() {
        const SpecificGravity gravity = toGravity(made_.recipe.originalGravity);
        const bool sized = card_.batch.l > 0;
        const Litres volume{sized ? card_.batch.l : 1}; // the parts are the same in any
        std::vector<double> brings;
        double all = 0;
        made_.recipe.hops.clear();
        for (const auto& hop : card_.hops) {
            if (!hop.inBoil || hop.boiled.min <= 0 || hop.alpha.of1 <= 0) {
                made_.left.push_back(say("desk.recipe.left.hop").with("name", hop.name));
                continue;
            }
            brings.push_back(brewing::tinsethIbu(hop.mass, hop.alpha, volume, gravity, hop.boiled).ibu);
            all += brings.back();
            made_.recipe.hops.push_back({hop.name, hop.alpha, hop.boiled, Share{0}});
        }
        for (std::size_t i = 0; i < brings.size(); ++i)
            made_.recipe.hops[i].ofBitterness =
                Share{all > 0 ? brings[i] / all : 1.0 / static_cast<double>(brings.size())};
        if (!card_.bitterness && !sized && all > 0)
            return badInput("/batch_size", say("desk.recipe.no_batch"), say("desk.recipe.no_batch.remedy"));
        made_.recipe.bitterness = card_.bitterness.value_or(Ibu{all});
        return {};
    }
    void takeCulture() {
        bool found = false;
        for (const auto& given : card_.cultures) {
            const auto& yeasts = pantry_.yeasts();
            auto at = std::find_if(yeasts.begin(), yeasts.end(), [&](const auto& yeast) {
                return yeast.id == given.id || nameKey(yeast.name) == nameKey(given.name);
            });
            const bool known = at != yeasts.end();
            if (!known)
                at = std::find_if(yeasts.begin(), yeasts.end(),
                                  [&](const auto& yeast) { return cultureOf(yeast).type == given.type; });
            if (at == yeasts.end() || found) {
                made_.left.push_back(say("desk.recipe.left.culture_of").with("name", given.name));
                continue;
            }
            if (!known)
                made_.left.push_back(say("desk.recipe.left.taken_as").with("name", given.name).with("grain", at->name));
            made_.recipe.yeast = at->id;
            found = true;
        }
        if (!found)
            made_.left.push_back(say("desk.recipe.left.no_yeast"));
    }

    const RecipeCard& card_;
    const Pantry& pantry_;
    ReadRecipe made_;
};

} // namespace

std::optional<RecipeFormat> recipeFormatOf(std::string_view ending) {
    const std::string key = nameKey(ending);
    if (key == ".json")
        return RecipeFormat::beerJson;
    return key == ".xml" ? std::optional(RecipeFormat::beerXml) : std::nullopt;
}

WrittenRecipe writeRecipe(RecipeFormat format, const RecipeToWrite& what, const Pantry& pantry) {
    RecipeCard card = cardOf(what, pantry);
    WrittenRecipe written{{}, leftOf(format, what.recipe)};
    for (const auto& message : written.left)
        card.notes += (card.notes.empty() ? "" : "\n") + render(message);
    const std::string brewer = what.brewer.empty() ? render(say("desk.recipe.no_brewer")) : what.brewer;
    written.text = format == RecipeFormat::beerJson ? beerJson(card, brewer) : beerXml(card, brewer);
    return written;
}

Result<ReadRecipe> readRecipe(RecipeFormat format, std::string_view text, const Pantry& pantry, const Recipe& base) {
    const auto card = format == RecipeFormat::beerJson ? fromBeerJson(text) : fromBeerXml(text);
    if (!card)
        return fail(card.error());
    return RecipeMaker(*card, pantry, base).make();
}

} // namespace staveline::desk
