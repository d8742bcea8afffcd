// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/priming.h"

#include "finishing/carbonation.h"
#include "finishing/limits.h"
#include "quantity/constants.h"
#include "quantity/csv.h"
#include "quantity/density.h"
#include "resources/resources.h"

#include <algorithm>
#include <cmath>

namespace staveline::finishing {
namespace {

constexpr double mostLitres = 100000;

std::vector<PrimingSugar> readSugars() {
    std::vector<PrimingSugar> sugars;
    const auto table = CsvTable::parse(resources::find("data/priming_sugars.csv"));
    for (std::size_t row = 0; table && row < table->rows(); ++row) {
        const auto text = [&](std::string_view column) { return std::string(table->text(row, column)); };
        sugars.push_back({text("id"), text("name"), table->number(row, "value").value_or(0),
                          table->number(row, "high").value_or(0), text("source")});
    }
    return sugars;
}

std::string known() {
    std::string names;
    for (const PrimingSugar& sugar : builtInSugars())
        names += (names.empty() ? "" : ", ") + sugar.id;
    return names;
}

Result<void> tooMuch(GramsPerLitre sugar, std::string_view path) {
    const GramsPerLitre most{constants::finishing::mostPriming};
    if (sugar <= most)
        return {};
    return badInput(std::string(path), say("finishing.too_much_sugar").with("sugar", sugar).with("most", most),
                    say("finishing.too_much_sugar.remedy"));
}

Result<void> check(const PrimingWish& wish) {
    for (auto ok :
         {inRange("/litres", wish.beer.l, {.1, mostLitres}),
          inRange("/volumes", wish.wanted.vol, {0, constants::finishing::mostVolumes}),
          inRange("/bottle_ml", wish.package.ml, {50, 60000}), inRange("/extract_p", wish.extract.p, {1, 25})})
        if (!ok)
            return ok;
    if (wish.wanted >= wish.residual)
        return {};
    return badInput("/volumes", say("finishing.holds_more").with("held", wish.residual).with("wanted", wish.wanted),
                    say("finishing.holds_more.remedy"));
}

/// Litres of a liquid for each litre of beer. What it brings of CO2 is spread over its own volume too.
Result<double> liquidFor(const PrimingWish& wish) {
    const double inLitre = volumesOf(extractPerLitre(wish.extract) * wish.sugar.co2).vol;
    const double share = (wish.wanted - wish.residual).vol / (inLitre - wish.wanted.vol);
    if (inLitre > wish.wanted.vol && share <= .5)
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
                   std::floor(wish.beer.l * (1 + *share) * 1000 / wish.package.ml)};
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
                   std::floor(wish.beer.l * 1000 / wish.package.ml)};
}

} // namespace

bool PrimingSugar::isLiquid() const {
    return id == "wort" || id == "unfermented_beer";
}

const std::vector<PrimingSugar>& builtInSugars() {
    static const auto sugars = readSugars();
    return sugars;
}

Result<PrimingSugar> primingSugar(std::string_view id) {
    for (const PrimingSugar& sugar : builtInSugars())
        if (sugar.id == id)
            return sugar;
    return badInput("/sugar", say("finishing.unknown_sugar").with("sugar", excerpt(id)),
                    say("finishing.unknown_sugar.remedy").with("known", known()));
}

Result<Priming> prime(const PrimingWish& wish) {
    if (auto ok = check(wish); !ok)
        return fail(ok.error());
    return wish.sugar.isLiquid() ? withLiquid(wish) : withSugar(wish);
}

Result<Co2Volumes> volumesWith(GramsPerLitre sugar, Co2Volumes residual, const PrimingSugar& kind) {
    if (auto ok = tooMuch(sugar, "/sugar_g_l"); !ok)
        return fail(ok.error());
    if (auto ok = inRange("/sugar_g_l", sugar.gPerL, {0, constants::finishing::mostPriming}); !ok)
        return fail(ok.error());
    return residual + volumesOf(sugar * kind.co2);
}

Co2Volumes volumesWithLiquid(double litresPerLitre, Plato extract, Co2Volumes residual, const PrimingSugar& kind) {
    const Co2Volumes brought = volumesOf(extractPerLitre(extract) * (litresPerLitre * kind.co2));
    return (residual + brought) / (1 + litresPerLitre);
}

} // namespace staveline::finishing
