// SPDX-License-Identifier: GPL-3.0-or-later
// From the extract a mash gives to the sugars in a litre of wort, as hexose.
#pragma once

#include "brewing/grist.h"

namespace staveline::brewing {

/// Apparent against real fermentability: AAL = RDF / this.
inline constexpr double realPerApparent = .8192;

/// The malt's extract in the wort; its members are shares that sum to 1.
struct MaltWort {
    MaltExtract shares;
    double conversion = 1; ///< extract won against full conversion
    double starch = 0;     ///< gelatinised but uncut, share of the starch
    double opened = 1;     ///< gelatinised, share of the starch
    [[nodiscard]] double attenuationLimit() const { return shares.fermentable() / realPerApparent; }
};
/// Mixes in the grain that keeps its own fermentability, then the brewer's calibration (a logit shift).
[[nodiscard]] MaltWort maltWort(const StarchPools& mash, const GristSums& grist, double logitShift);

/// g hexose per litre at the original gravity.
struct WortHexose {
    double simple = 0; ///< glucose, fructose and sucrose
    double maltose = 0;
    double maltotriose = 0;
    double dextrin = 0;
    double maltExtract = 0; ///< dry extract from the grist [g/L]
    [[nodiscard]] double total() const { return simple + maltose + maltotriose + dextrin; }
};
[[nodiscard]] WortHexose wortHexose(const MaltWort& malt, const BrewInput& input);

/// Gravity the grist alone must give at full conversion: without sugar, and more where the mash falls short.
[[nodiscard]] Plato gristGravity(const Recipe& recipe, double conversion);
/// kg of grist whose extract is in a litre of wort. Losses in the tun do not matter here: the acids and gums go with
/// the extract.
[[nodiscard]] double gristPerLitre(const Recipe& recipe, double conversion, const GristSums& grist);

} // namespace staveline::brewing
