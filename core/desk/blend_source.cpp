// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/blend_source.h"

#include "quantity/acid_base.h"
#include "tasting/score_map.h"

#include <algorithm>

namespace staveline::desk {

using finishing::BlendSource;
using finishing::Trait;

namespace {

namespace sourceError = constants::finishing;

/// With titratable acidity and pH as told: each is set by what the other leaves open, in turn.
Composition withAcid(Composition beer, GramsPerLitre ta, std::optional<Ph> measured) {
    beer = withTitratableAcidity(beer, ta);
    for (int i = 0; measured && i < 60; ++i)
        beer = withTitratableAcidity(withPh(beer, *measured), ta);
    return beer;
}

/// The titratable acidity that the estimated score stands for.
GramsPerLitre estimatedTa(const Composition& beer, double score, const tasting::ScoreParameters& map) {
    constexpr double atEnds = constants::finishing::scoreEnds;
    return titratableAcidityFor(std::clamp(score, atEnds, 10 - atEnds), {beer.acetic}, beer.alcohol(), map);
}

bool bitternessMeasured(const CurrentVessel& vessel) {
    const auto measured = measuredUpTo(vessel.record, vessel.today);
    return std::any_of(measured.begin(), measured.end(), [&](const MeasuredOn& one) {
        return one.values->bitterness && estimate::ofThisCycle(one.on, vessel.now().lastRefill);
    });
}

void addErrors(BlendSource& source, const estimate::Estimates& estimates) {
    const auto set = [&](Trait trait, bool measured, double ifMeasured, double ifNot) {
        source.measured[trait] = measured;
        source.sd[trait] = measured ? ifMeasured : ifNot;
    };
    set(Trait::ta, estimates.ta.has_value(), constants::estimate::titrationSd, sourceError::estimatedTaSd);
    set(Trait::ph, estimates.ph.has_value(), sourceError::measuredPhSd, sourceError::estimatedPhSd);
    set(Trait::alcohol, false, 0, sourceError::estimatedAlcoholSd);
    set(Trait::bitterness, source.measured[Trait::bitterness], sourceError::measuredBitternessSd,
        sourceError::estimatedBitternessSd);
    for (const auto& [trait, d] : {std::pair{Trait::acidity, Dimension::acidity},
                                   {Trait::funk, Dimension::funk},
                                   {Trait::body, Dimension::body}})
        set(trait, estimates.tastedThisCycle[d], estimates.combined[d].sd, estimates.combined[d].sd);
}

void addMeasured(BlendSource& source, Trait trait, double sd) {
    source.measured[trait] = true;
    source.sd[trait] = sd;
}

} // namespace

BlendSource sourceOf(const CurrentVessel& vessel, const estimate::KnownOfVessel& known) {
    const estimate::Estimates estimates = estimatesFrom(known);
    BlendSource source;
    source.name = vessel.record.facts.name;
    const Composition& model = known.state.beer;
    const double acidity = estimates.combined[Dimension::acidity].mean;
    source.beer =
        withAcid(model, estimates.ta.value_or(estimatedTa(model, acidity, known.parameters.score)), estimates.ph);
    const Scores own = tasting::scores(source.beer);
    for (const Dimension d : allDimensions)
        source.offset[d] = estimates.combined[d].mean - own[d];
    source.measured[Trait::bitterness] = bitternessMeasured(vessel);
    addErrors(source, estimates);
    return source;
}

void putRight(BlendSource& source, const facts::Measured& measured) {
    Composition& beer = source.beer;
    if (measured.ta || measured.ph)
        beer = withAcid(beer, measured.ta.value_or(titratableAcidity(beer)), measured.ph);
    if (const double now = beer.bitterness().ibu; measured.bitterness && now > 0) {
        beer.isoCis *= measured.bitterness->ibu / now;
        beer.isoTrans *= measured.bitterness->ibu / now;
    }
    if (measured.ta)
        addMeasured(source, Trait::ta, constants::estimate::titrationSd);
    if (measured.ph)
        addMeasured(source, Trait::ph, sourceError::measuredPhSd);
    if (measured.bitterness)
        addMeasured(source, Trait::bitterness, sourceError::measuredBitternessSd);
}

} // namespace staveline::desk
