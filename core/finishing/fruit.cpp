// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/fruit.h"

#include "finishing/kinds.h"
#include "finishing/limits.h"
#include "quantity/acid_base.h"
#include "quantity/constants.h"
#include "quantity/language.h"

#include <cmath>

namespace staveline::finishing {
namespace {

namespace fruits = constants::finishing;

Fruit fruitOf(const KindRow& row) {
    return {row.text("id"),   inLanguage(row.text("name")), row.number("sugar_g_kg"), row.number("acid_g_kg"),
            row.text("acid"), {row.number("usable_share")}};
}

Acid acidOf(const Fruit& fruit) {
    return fruit.mainAcid == "citric" ? Acid::citric : fruit.mainAcid == "tartaric" ? Acid::tartaric : Acid::malic;
}

Result<void> checkAddition(const FruitAddition& a) {
    for (auto ok : {inRange("/litres", a.beer.l, {fruits::leastBatch, fruits::mostBatch}),
                    inRange("/alcohol", a.alcohol.pct, {0, fruits::strongest}),
                    inRange("/temperature_c", a.temperature.c, {fruits::coldest, fruits::hottest})})
        if (!ok)
            return ok;
    return inRange("/fruit", a.mass.kg / a.beer.l, {fruits::fruitLeast, fruits::fruitMost});
}

Litres bulkOf(Kilograms fruit) {
    return {fruit.kg * fruits::fruitBulk};
}

Result<void> findsRoom(const FruitAddition& a, const FruitEffect& effect) {
    const Litres needed = a.beer + bulkOf(a.mass) + effect.headspace;
    if (!a.vessel || needed <= *a.vessel)
        return {};
    return badInput("/fruit", say("finishing.no_room").with("needed", needed).with("vessel", *a.vessel),
                    say("finishing.no_room.remedy").with("headspace", effect.headspace));
}

} // namespace

const std::vector<Fruit>& builtInFruits() {
    static const auto all = readKinds("data/fruits.csv", fruitOf);
    return all;
}

Result<Fruit> fruit(std::string_view id) {
    return kindNamed(id, builtInFruits(), "fruit");
}

Result<FruitEffect> withFruit(const FruitAddition& a) {
    if (auto ok = checkAddition(a); !ok)
        return fail(ok.error());
    const Kilograms usable = a.mass * a.fruit.usable.of1;
    FruitEffect effect;
    effect.kgPerLitre = a.mass.kg / a.beer.l;
    effect.sugar = {usable.kg * a.fruit.sugar / a.beer.l};
    effect.water = {usable.kg * fruits::fruitJuice};
    effect.volume = a.beer + effect.water;
    effect.acidity = asLactic({usable.kg * a.fruit.acid / effect.volume.l}, acidOf(a.fruit));
    const double ethanolMl = 10 * a.alcohol.pct * a.beer.l + fruits::fruitAlcohol * usable.kg * a.fruit.sugar;
    effect.alcohol = {ethanolMl / (10 * effect.volume.l)};
    effect.headspace = (a.beer + bulkOf(a.mass)) * (fruits::fruitSurge / (1 - fruits::fruitSurge));
    effect.contact = {fruits::contactDays * std::pow(fruits::contactPer10C, (15 - a.temperature.c) / 10)};
    if (auto ok = findsRoom(a, effect); !ok)
        return fail(ok.error());
    return effect;
}

} // namespace staveline::finishing
