// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/priming.h"

#include "finishing/carbonation.h"
#include "finishing/kinds.h"
#include "finishing/limits.h"
#include "quantity/constants.h"
#include "quantity/density.h"
#include "quantity/language.h"

#include <algorithm>
#include <cmath>

namespace staveline::finishing {

namespace limit = constants::finishing;

namespace {

PrimingSugar sugarOf(const KindRow& row) {
    return {row.text("id"), inLanguage(row.text("name")), row.number("value"), row.number("high"), row.text("source")};
}

Result<void> tooMuch(GramsPerLitre sugar, std::string_view path) {
    const GramsPerLitre most{limit::mostPriming};
    if (sugar <= most)
        return {};
    return badInput(std::string(path), say("finishing.too_much_sugar").with("sugar", sugar).with("most", most),
                    say("finishing.too_much_sugar.remedy"));
}

Result<void> check(const PrimingWish& wish) {
    for (auto ok : {inRange("/litres", wish.beer.l, {limit::leastBatch, limit::mostBatch}),
                    inRange("/lost_l", wish.lost.l, {0, wish.beer.l}),
                    inRange("/volumes", wish.wanted.vol, {0, limit::mostVolumes}),
                    inRange("/bottle_ml", wish.package.ml, {limit::smallestBottle, limit::largestPackage}),
                    inRange("/extract_p", wish.extract.p, {limit::weakestWort, limit::strongestWort})})
        if (!ok)
            return ok;
    if (wish.wanted >= wish.residual)
        return {};
    return badInput("/volumes", say("finishing.holds_more").with("held", wish.residual).with("wanted", wish.wanted),
                    say("finishing.holds_more.remedy"));
}

double wholePackages(Litres filled, const PrimingWish& wish) {
    constexpr double rounding = 1e-9;
    return std::floor((filled - wish.lost).l * 1000 / wish.package.ml + rounding);
}

/// Litres of a liquid for each litre of beer. What it brings of CO2 is spread over its own volume too.
Result<double> liquidFor(const PrimingWish& wish) {
    const double inLitre = volumesOf(extractPerLitre(wish.extract) * wish.sugar.co2).vol;
    const double share = (wish.wanted - wish.residual).vol / (inLitre - wish.wanted.vol);
    if (inLitre > wish.wanted.vol && share <= limit::mostLiquid)
        return share;
    return badInput("/extract_p", say("finishing.thin_wort").with("extract", wish.extract).with("wanted", wish.wanted),
                    say("finishing.thin_wort.remedy"));
}

Result<Priming> withLiquid(const PrimingWish& wish) {
    const auto share = liquidFor(wish);
    if (!share)
        return fail(share.error());
    const GramsPerLitre extract = extractPerLitre(wish.extract) * *share;
    const double thinned = 1 / (1 + *share);
    return Priming{extract,
                   {extract.gPerL * thinned * wish.package.ml / 1000},
                   {extract.gPerL * wish.beer.l / 1000},
                   wish.beer * *share,
                   volumesOf(extract * (wish.sugar.co2 * thinned)),
                   volumesOf(extract * (wish.sugar.mostCo2 * thinned)),
                   wholePackages(wish.beer * (1 + *share), wish)};
}

Result<Priming> withSugar(const PrimingWish& wish) {
    const GramsPerLitre sugar = gramsOf(wish.wanted - wish.residual) / wish.sugar.co2;
    if (auto ok = tooMuch(sugar, "/volumes"); !ok)
        return fail(ok.error());
    return Priming{sugar,
                   {sugar.gPerL * wish.package.ml / 1000},
                   {sugar.gPerL * wish.beer.l / 1000},
                   {0},
                   volumesOf(sugar * wish.sugar.co2),
                   volumesOf(sugar * wish.sugar.mostCo2),
                   wholePackages(wish.beer, wish)};
}

} // namespace

bool PrimingSugar::isLiquid() const {
    return id == "wort" || id == "unfermented_beer";
}

const std::vector<PrimingSugar>& builtInSugars() {
    static const auto sugars = readKinds("data/priming_sugars.csv", sugarOf);
    return sugars;
}

Result<PrimingSugar> primingSugar(std::string_view id) {
    return kindNamed(id, builtInSugars(), "sugar");
}

Litres usualLoss(Litres beer) {
    return {std::min(beer.l, limit::bottlingLoss + limit::bottlingLossShare * beer.l)};
}

Result<Priming> prime(const PrimingWish& wish) {
    if (auto ok = check(wish); !ok)
        return fail(ok.error());
    return wish.sugar.isLiquid() ? withLiquid(wish) : withSugar(wish);
}

PercentVol alcoholWith(const Priming& priming, Litres beer, PercentVol alcohol) {
    const double mlForGram = limit::fruitAlcohol / limit::extractCo2; // of CO2
    return {alcohol.pct * (beer / (beer + priming.liquid)) + mlForGram * gramsOf(priming.gives).gPerL / 10};
}

Result<Co2Volumes> volumesWith(GramsPerLitre sugar, Co2Volumes residual, const PrimingSugar& kind) {
    if (auto ok = tooMuch(sugar, "/sugar_g_l"); !ok)
        return fail(ok.error());
    if (auto ok = inRange("/sugar_g_l", sugar.gPerL, {0, limit::mostPriming}); !ok)
        return fail(ok.error());
    return residual + volumesOf(sugar * kind.co2);
}

} // namespace staveline::finishing
