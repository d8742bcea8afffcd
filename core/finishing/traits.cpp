// SPDX-License-Identifier: GPL-3.0-or-later
// What a blend is like.
#include "finishing/blend.h"

#include "quantity/acid_base.h"
#include "quantity/constants.h"
#include "quantity/density.h"
#include "quantity/language.h"
#include "tasting/score_map.h"

namespace staveline::finishing {
namespace {

struct TraitRow {
    std::string_view word, label;
    UnitKind kind;
    double tolerance;
};
constexpr std::array<TraitRow, allTraits.size()> traitTable{{
    {"ta", "TA", UnitKind::concentration, constants::finishing::taTolerance},
    {"ph", "pH", UnitKind::ph, constants::finishing::phTolerance},
    {"alcohol", "alcohol", UnitKind::alcohol, constants::finishing::alcoholTolerance},
    {"bitterness", "bitterness", UnitKind::bitterness, constants::finishing::bitternessTolerance},
    {"colour", "colour", UnitKind::colour, constants::finishing::colourTolerance},
    {"acidity", "acidity", UnitKind::points, constants::finishing::scoreTolerance},
    {"funk", "funk", UnitKind::points, constants::finishing::scoreTolerance},
    {"body", "body", UnitKind::points, constants::finishing::scoreTolerance},
}};

const TraitRow& rowOf(Trait trait) {
    return traitTable[static_cast<std::size_t>(trait)];
}

Dimension dimensionOf(Trait trait) {
    return trait == Trait::acidity ? Dimension::acidity : trait == Trait::funk ? Dimension::funk : Dimension::body;
}

double scoreOf(const Composition& beer, const Scores& offset, Trait trait) {
    const Dimension d = dimensionOf(trait);
    return tasting::scores(beer)[d] + offset[d];
}

double alcoholOf(std::span<const BlendSource> sources, const std::vector<double>& shares) {
    std::vector<Poured> parts;
    for (std::size_t i = 0; i < sources.size(); ++i)
        parts.push_back({{shares[i]}, sources[i].beer.alcohol()});
    return pouredTogether(parts).alcohol.pct;
}

std::optional<double> colourOf(std::span<const BlendSource> sources, const std::vector<double>& shares) {
    double colour = 0;
    for (std::size_t i = 0; i < sources.size(); ++i) {
        if (!sources[i].colour)
            return std::nullopt;
        colour += shares[i] * sources[i].colour->ebc;
    }
    return colour;
}

Scores offsetOf(std::span<const BlendSource> sources, const std::vector<double>& shares) {
    Scores offset;
    for (std::size_t i = 0; i < sources.size(); ++i)
        for (const Dimension d : allDimensions)
            offset[d] += shares[i] * sources[i].offset[d];
    return offset;
}

/// The mass share of alcohol whose mixture with water has this strength.
double massShareOf(PercentVol alcohol) {
    double low = 0, high = 1;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (volumeFromMassShare(middle) < alcohol ? low : high) = middle;
    }
    return (low + high) / 2;
}

} // namespace

std::string_view wordOf(Trait trait) {
    return rowOf(trait).word;
}

std::string labelOf(Trait trait) {
    return inLanguage(rowOf(trait).label);
}

Amount amountOf(Trait trait, double value) {
    return {rowOf(trait).kind, value};
}

double toleranceOf(Trait trait) {
    return rowOf(trait).tolerance;
}

Composition blended(std::span<const BlendSource> sources, const std::vector<double>& shares) {
    Composition out;
    for (const auto pool : compositionPools) {
        out.*pool = 0;
        for (std::size_t i = 0; i < sources.size(); ++i)
            out.*pool += shares[i] * sources[i].beer.*pool;
    }
    return out;
}

std::optional<double> traitOf(std::span<const BlendSource> sources, const std::vector<double>& shares, Trait trait) {
    switch (trait) {
    case Trait::ta:
        return titratableAcidity(blended(sources, shares)).gPerL;
    case Trait::ph:
        return ph(blended(sources, shares)).ph;
    case Trait::alcohol:
        return alcoholOf(sources, shares);
    case Trait::bitterness:
        return blended(sources, shares).bitterness().ibu;
    case Trait::colour:
        return colourOf(sources, shares);
    case Trait::acidity:
    case Trait::funk:
    case Trait::body:
        break;
    }
    return scoreOf(blended(sources, shares), offsetOf(sources, shares), trait);
}

std::optional<double> traitOf(const BlendSource& source, Trait trait) {
    return traitOf({&source, 1}, {1}, trait);
}

Poured pouredTogether(std::span<const Poured> parts) {
    double mass = 0, alcohol = 0; // kg
    for (const Poured& part : parts) {
        const double share = massShareOf(part.alcohol);
        const double own = part.volume.l * ethanolWaterDensity(share) / 1000;
        mass += own;
        alcohol += own * share;
    }
    if (!(mass > 0))
        return {};
    const double share = alcohol / mass;
    return {{1000 * mass / ethanolWaterDensity(share)}, volumeFromMassShare(share)};
}

} // namespace staveline::finishing
