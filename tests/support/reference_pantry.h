// SPDX-License-Identifier: GPL-3.0-or-later
// Grain, yeasts and recipes of the reference model, frozen: the regression vectors hold for these numbers only, not
// for the ones in resources/data.
#pragma once

#include "brewing/refill_beer.h"

namespace staveline::reference {

struct GrainRow {
    const char* id;
    ingredient::GrainKind kind;
    double extract, power, ferulicFree, ferulicBound, esterase, coumaricFree, coumaricBound, glucan, glucanase, xylan;
};
inline constexpr GrainRow grainRows[] = {
    {"pilsner", ingredient::GrainKind::base, .80, 280, 4.0, 50, 1.00, 3.0, 46, .0035, 1.0, .35},
    {"pale", ingredient::GrainKind::base, .80, 230, 4.2, 50, .85, 3.1, 46, .0035, .85, .35},
    {"vienna", ingredient::GrainKind::kilned, .79, 210, 4.4, 48, .65, 3.2, 44, .0035, .6, .35},
    {"munich", ingredient::GrainKind::kilned, .79, 130, 4.2, 46, .40, 3.2, 42, .0035, .35, .35},
    {"melanoidin", ingredient::GrainKind::kilned, .77, 40, 3.0, 40, .10, 2.4, 36, .0030, .05, .35},
    {"caramel", ingredient::GrainKind::caramel, .75, 0, 2.5, 30, 0, 1.9, 26, .0025, 0, .35},
    {"roasted", ingredient::GrainKind::roast, .70, 0, 1.0, 10, 0, .8, 8, .0010, 0, .35},
    {"wheat_malt", ingredient::GrainKind::wheat, .83, 250, 2.0, 38, .60, 1.6, 24, .0035, .3, .45},
    {"raw_wheat", ingredient::GrainKind::unmalted, .77, 70, 1.4, 30, .15, .8, 13, .007, 0, .60},
    {"rye_malt", ingredient::GrainKind::rye, .81, 200, 5.0, 75, .90, 1.6, 20, .010, .5, 1.6},
    {"raw_rye", ingredient::GrainKind::unmalted, .76, 50, 2.0, 60, .20, .9, 14, .018, 0, 2.6},
    {"oat_malt", ingredient::GrainKind::oat, .62, 60, 3.0, 35, .45, 2.2, 22, .012, .5, .5},
    {"flaked_oats", ingredient::GrainKind::flaked, .70, 0, 1.5, 22, 0, .7, 9, .042, 0, .5},
    {"raw_barley", ingredient::GrainKind::unmalted, .76, 0, 1.5, 40, .25, 1.3, 38, .042, 0, .5},
    {"flaked_barley", ingredient::GrainKind::flaked, .72, 0, 1.5, 38, 0, 1.3, 36, .042, 0, .5},
};

inline ingredient::Grain grain(const GrainRow& row) {
    ingredient::Grain out;
    out.id = out.name = row.id;
    out.kind = row.kind;
    out.diastaticPowerWk = row.power;
    out.ferulicFree = row.ferulicFree;
    out.ferulicBound = row.ferulicBound;
    out.esterase = row.esterase;
    out.coumaricFree = row.coumaricFree;
    out.coumaricBound = row.coumaricBound;
    out.betaGlucan = row.glucan;
    out.glucanase = row.glucanase;
    out.arabinoxylan = row.xylan;
    out.extractAsIs = row.extract;
    return out;
}
inline ingredient::Grain sugar(const char* id, double fermentability) {
    ingredient::Grain out;
    out.id = out.name = id;
    out.kind = ingredient::GrainKind::sugar;
    out.ownRdf = fermentability;
    return out;
}
inline ingredient::Yeast yeast(const char* id, double maltose, double maltotriose, double dextrin, bool pof,
                               double glycerol) {
    ingredient::Yeast out;
    out.id = out.name = id;
    out.takesMaltose = maltose;
    out.takesMaltotriose = maltotriose;
    out.takesDextrin = dextrin;
    out.pof = pof;
    out.glycerolAt12P = glycerol;
    return out;
}

inline ingredient::Pantry makePantry() {
    ingredient::Pantry pantry;
    for (const auto& row : grainRows)
        pantry.put(grain(row));
    pantry.put(sugar("sucrose", 1.0));
    pantry.put(sugar("honey", .95));
    pantry.put(sugar("maltodextrin", .08));
    pantry.put(yeast("low", .98, .10, 0, false, 2.0));
    pantry.put(yeast("clean", 1, .75, 0, false, 2.0));
    pantry.put(yeast("high", 1, .95, 0, false, 2.0));
    pantry.put(yeast("saison", 1, .95, 0, true, 2.3));
    pantry.put(yeast("diastatic", 1, 1, .5, true, 2.5));
    pantry.put(yeast("wine", 1, .20, 0, false, 5.5));
    return pantry;
}
inline const ingredient::Pantry& pantry() {
    static const ingredient::Pantry made = makePantry();
    return made;
}

/// The base of the vectors: pilsner 75, wheat malt 25, 60 min at 66 C, 12 P, clean yeast, 10 IBU.
inline brewing::Recipe baseRecipe() {
    brewing::Recipe recipe;
    recipe.grist = {{"pilsner", {.75}}, {"wheat_malt", {.25}}};
    recipe.mash = {{{66}, {60}}};
    recipe.yeast = "clean";
    return recipe;
}
/// V2: rye, a ferulic rest, sugar and a diastatic yeast.
inline brewing::Recipe ryeRecipe() {
    brewing::Recipe recipe = baseRecipe();
    recipe.grist = {{"pilsner", {.60}}, {"wheat_malt", {.15}}, {"rye_malt", {.25}}};
    recipe.mash = {{{45}, {20}}, {{66}, {60}}};
    recipe.mashPh = {5.8};
    recipe.originalGravity = {14};
    recipe.sugarShare = {.10};
    recipe.yeast = "diastatic";
    recipe.bitterness = {20};
    return recipe;
}
/// V3: a hot mash and a weak yeast.
inline brewing::Recipe hotRecipe() {
    brewing::Recipe recipe = baseRecipe();
    recipe.mash = {{{72}, {60}}};
    recipe.yeast = "low";
    return recipe;
}

/// Throws on a recipe that does not resolve: a mistake in the test.
inline brewing::BrewInput inputFor(const brewing::Recipe& recipe, CelsiusPerMinute kitRate = {1}) {
    return resolve(recipe, pantry(), kitRate).value();
}

} // namespace staveline::reference
