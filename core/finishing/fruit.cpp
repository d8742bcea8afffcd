// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/fruit.h"

#include "finishing/carbonation.h"
#include "finishing/limits.h"
#include "quantity/acid_base.h"
#include "quantity/constants.h"
#include "quantity/csv.h"
#include "resources/resources.h"

#include <cmath>

namespace staveline::finishing {
namespace {

namespace fruits = constants::finishing;

std::vector<Fruit> readFruits() {
    std::vector<Fruit> all;
    const auto table = CsvTable::parse(resources::find("data/fruits.csv"));
    for (std::size_t row = 0; table && row < table->rows(); ++row) {
        const auto text = [&](std::string_view column) { return std::string(table->text(row, column)); };
        const auto number = [&](std::string_view column) { return table->number(row, column).value_or(0); };
        all.push_back({text("id"),
                       text("name"),
                       number("sugar_g_kg"),
                       number("acid_g_kg"),
                       text("acid"),
                       {number("usable_share")}});
    }
    return all;
}

std::string knownFruits() {
    std::string names;
    for (const Fruit& one : builtInFruits())
        names += (names.empty() ? "" : ", ") + one.id;
    return names;
}

Acid acidOf(const Fruit& fruit) {
    return fruit.mainAcid == "citric" ? Acid::citric : fruit.mainAcid == "tartaric" ? Acid::tartaric : Acid::malic;
}

Result<void> checkAddition(const FruitAddition& a) {
    for (auto ok : {inRange("/litres", a.beer.l, {.1, 100000}), inRange("/alcohol", a.alcohol.pct, {0, 20}),
                    inRange("/temperature_c", a.temperature.c, {fruits::coldest, fruits::hottest}),
                    inRange("/vessel_l", a.vessel.l, {0, 200000})})
        if (!ok)
            return ok;
    return inRange("/fruit", a.mass.kg / a.beer.l, {.001, fruits::fruitMost});
}

Result<void> findsRoom(const FruitAddition& a, const FruitEffect& effect) {
    constexpr double perKilogram = 1; // fruit takes about its mass in litres
    const Litres needed = a.beer + Litres{a.mass.kg * perKilogram} + effect.headspace;
    if (!(a.vessel.l > 0) || needed <= a.vessel)
        return {};
    return badInput("/vessel_l", say("finishing.no_room").with("needed", needed).with("vessel", a.vessel),
                    say("finishing.no_room.remedy").with("headspace", effect.headspace));
}

} // namespace

const std::vector<Fruit>& builtInFruits() {
    static const auto all = readFruits();
    return all;
}

Result<Fruit> fruit(std::string_view id) {
    for (const Fruit& one : builtInFruits())
        if (one.id == id)
            return one;
    return badInput("/fruit", say("finishing.unknown_fruit").with("fruit", excerpt(id)),
                    say("finishing.unknown_fruit.remedy").with("known", knownFruits()));
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
    effect.sealed = volumesOf(GramsPerLitre{usable.kg * a.fruit.sugar / effect.volume.l} * fruits::extractCo2);
    effect.headspace = (a.beer + Litres{a.mass.kg}) * (fruits::fruitSurge / (1 - fruits::fruitSurge));
    effect.contact = {fruits::contactDays * std::pow(fruits::contactPer10C, (15 - a.temperature.c) / 10)};
    if (auto ok = findsRoom(a, effect); !ok)
        return fail(ok.error());
    return effect;
}

} // namespace staveline::finishing
