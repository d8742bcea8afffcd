// SPDX-License-Identifier: GPL-3.0-or-later
// brew(): mash, wort, boil and primary in their order.
#include "brewing/gravity.h"
#include "brewing/hops.h"
#include "brewing/primary.h"
#include "quantity/acid_base.h"
#include "quantity/constants.h"
#include "quantity/density.h"

#include <algorithm>
#include <cmath>

namespace staveline::brewing {
namespace {

/// The three models that share one mash.
struct Mash {
    MashKinetics starch;
    PhenolRelease phenols;
    GlucanRelease glucan;

    Mash(const GristSums& grist, const Recipe& recipe, const BrewParameters& parameters)
        : starch(grist.first.starch, recipe.mashPh, recipe.liquorToGrist, parameters),
          phenols(grist.first.phenols, recipe.mashPh, parameters.phenolReleaseFactor), glucan(grist.first.glucan) {}

    void add(const GristSums::Portion& late) {
        starch.add(late.starch);
        phenols.add(late.phenols);
        glucan.add(late.glucan);
    }
    void advance(const MashSegment& segment) {
        starch.advance(segment);
        phenols.advance(segment);
        glucan.advance(segment);
    }
};

/// Runs the whole mash; `walk(mash, segment)` takes it through each segment, late grain already in.
template <class Walk>
Mash runMash(const BrewInput& input, const GristSums& grist, const BrewParameters& parameters, Walk&& walk) {
    Mash mash(grist, input.recipe, parameters);
    for (const auto& segment : scheduleOf(input)) {
        if (segment.opensLastRest && grist.hasLate)
            mash.add(grist.late);
        walk(mash, segment);
    }
    return mash;
}

/// Phenolic acids, their esters and vinyl phenols after boil and primary [mg/L].
void brewPhenols(Composition& beer, const BrewInput& input, const GristSums& grist, double esterGravity,
                 const BrewParameters& p) {
    const double boil = p.boilDecarboxylation * input.recipe.boil.min / 60;
    decarboxylate(beer.ferulic, beer.vinylGuaiacol, -std::expm1(-boil), constants::primary::vinylGuaiacolPerFerulic);
    decarboxylate(beer.coumaric, beer.vinylPhenol, -std::expm1(-p.coumaricTurnover * boil),
                  constants::primary::vinylPhenolPerCoumaric);

    const double esters = p.wortEsters * grist.ferulicBound / constants::wort::esterGrist * esterGravity / 12;
    beer.ferulic += p.estersSplit * esters;
    beer.esters = (1 - p.estersSplit) * esters;

    const bool clove = input.yeast.pof;
    const double ferulicTaken = clove ? p.cloveYeastTurnover : p.plainYeastTurnover;
    const double coumaricTaken = clove ? p.cloveYeastTurnover : p.coumaricTurnover * p.plainYeastTurnover;
    decarboxylate(beer.ferulic, beer.vinylGuaiacol, ferulicTaken, constants::primary::vinylGuaiacolPerFerulic);
    decarboxylate(beer.coumaric, beer.vinylPhenol, coumaricTaken, constants::primary::vinylPhenolPerCoumaric);
}

/// Lactic acid [g/L] that pre-souring adds to the whole refill: a part of the wort is brought to its titratable acidity
/// at an unchanged strong-ion difference, then blended back. It comes out of the sugar that would become alcohol.
double preSouring(const Composition& beer, const Recipe& recipe, const BrewParameters& p) {
    if (recipe.preSoured.of1 <= 0)
        return 0;
    Composition wort = beer;
    wort.buffer *= p.wortBuffer;
    wort = withPh(wort, {p.phWort});
    const double added = withTitratableAcidity(wort, recipe.preSourTa).lactic - wort.lactic;
    return std::clamp(recipe.preSoured.of1 * added, 0., beer.ethanol / p.ethanolPerHexose);
}

/// Share of the malt's extract that is no carbohydrate. Where starch stays closed more grain makes up for it, and
/// brings its own.
double otherExtract(const MaltWort& malt, const BrewParameters& p) {
    return p.otherExtract * (1 + p.otherFollowsMash * (1 / malt.conversion - 1));
}

/// Alpha acids [mg/L] that the boil leaves beside the bitterness it makes.
double alphaLeft(const Recipe& recipe) {
    if (recipe.hops.empty())
        return recipe.bitterness.ibu * alphaPerIso(recipe.boil);
    double sum = 0, left = 0;
    for (const HopAddition& hop : recipe.hops) {
        sum += hop.ofBitterness.of1;
        left += hop.ofBitterness.of1 * alphaPerIso(hop.boiled);
    }
    return sum > 0 ? recipe.bitterness.ibu * left / sum : 0;
}

/// Lactic acid [g/L] of acidulated malt in the refill; it is washed out with the extract. The mash pH is what the
/// recipe says whatever reaches it, so that only the acid that stays counts.
double maltAcid(const BrewInput& input, const GristSums& grist, const MaltWort& malt) {
    return 1000 * grist.lactic * gristPerLitre(input.recipe, malt.conversion, grist);
}

Composition composed(const BrewInput& input, const Mash& mash, const GristSums& grist, const MaltWort& malt,
                     const WortHexose& wort, const Attenuation& primary, const BrewParameters& p) {
    const Recipe& recipe = input.recipe;
    const double perLitre = gristPerLitre(recipe, malt.conversion, grist);
    const double gristPlato = gristGravity(recipe, malt.conversion).p;
    Composition beer;
    beer.lactic = p.lacticFresh;
    beer.acetic = p.aceticFresh;
    beer.original = recipe.originalGravity.p;
    beer.buffer = recipe.originalGravity.p / 12;
    beer.sid = anionCharge({p.phFresh}, beer.lactic, beer.acetic, beer.buffer);
    beer.sugar = primary.sugar;
    beer.dextrin = primary.dextrin;
    beer.residue = primary.residue;
    beer.ethanol = primary.ethanol;
    beer.otherExtract = otherExtract(malt, p) * wort.maltExtract;
    beer.glycerol = primary.glycerol;
    beer.betaGlucan = mash.glucan.dissolved() * perLitre;
    beer.arabinoxylan = grist.arabinoxylan * gristPlato / 12;
    beer.isoCis = constants::wort::cisShare * recipe.bitterness.ibu;
    beer.isoTrans = (1 - constants::wort::cisShare) * recipe.bitterness.ibu;
    beer.alphaAcids = std::min(constants::hop::alphaMost, p.alphaKept * alphaLeft(recipe));
    beer.ferulic = p.ferulicFactor * mash.phenols.ferulic() * perLitre;
    beer.coumaric = p.coumaricFactor * mash.phenols.coumaric() * perLitre;
    brewPhenols(beer, input, grist, gristPlato, p);
    beer.lactic +=
        maltAcid(input, grist, malt); // beyond what fresh beer holds anyway, as acid: the strong ions stay as they are
    return beer;
}

} // namespace

RefillBeer brew(const BrewInput& input, const BrewParameters& parameters) {
    const GristSums grist = sumsOf(input.grist);
    const Mash mash = runMash(input, grist, parameters, [](Mash& m, const MashSegment& s) { m.advance(s); });
    const MaltWort malt = maltWort(mash.starch.pools(), grist, parameters.fermentabilityShift);
    const WortHexose wort = wortHexose(malt, input);
    const Attenuation primary = attenuate(wort, input.yeast, input.recipe.originalGravity, parameters);

    RefillBeer out;
    out.beer = composed(input, mash, grist, malt, wort, primary, parameters);
    const double soured = preSouring(out.beer, input.recipe, parameters);
    out.beer.lactic += soured;
    out.beer.ethanol = std::max(0., out.beer.ethanol - parameters.ethanolPerHexose * soured);
    out.maltAcid = maltAcid(input, grist, malt);
    out.conversion = malt.conversion;
    out.attenuationLimit = malt.attenuationLimit();
    out.starch = malt.starch;
    out.opened = malt.opened;
    out.hexoseInWort = wort.total();
    out.hexoseTaken = primary.taken - soured;
    out.finalGravity = apparentGravity(out.beer);
    out.alcohol = out.beer.alcohol();
    out.enzyme = input.yeast.diastatic() ? constants::culture::diastaticOpening : 0;
    return out;
}

MashTrace traceMash(const BrewInput& input, const BrewParameters& parameters) {
    const GristSums grist = sumsOf(input.grist);
    const double perLitre = gristPerLitre(input.recipe, brew(input, parameters).conversion, grist);
    MashTrace trace;
    double clock = 0;
    const auto note = [&](const Mash& mash, double celsius) {
        const MaltExtract extract = extractOf(mash.starch.pools());
        trace.minute.push_back(clock);
        trace.temperature.push_back(celsius);
        trace.fermentable.push_back(extract.fermentable());
        trace.dextrin.push_back(extract.dextrin);
        trace.ferulic.push_back(parameters.ferulicFactor * mash.phenols.ferulic() * perLitre);
        trace.betaGlucan.push_back(mash.glucan.dissolved() * perLitre);
    };
    runMash(input, grist, parameters, [&](Mash& mash, const MashSegment& segment) {
        const int pieces = std::max(1, static_cast<int>(std::ceil(segment.minutes - 1e-9)));
        const double minutes = segment.minutes / pieces;
        if (trace.minute.empty())
            note(mash, segment.from);
        for (int i = 0; i < pieces; ++i) {
            mash.advance({segment.at(i * minutes), segment.at((i + 1) * minutes), minutes, false});
            clock += minutes;
            note(mash, segment.at((i + 1) * minutes));
        }
    });
    return trace;
}

} // namespace staveline::brewing
