// SPDX-License-Identifier: GPL-3.0-or-later
// From the extract a mash gives to the sugars in a litre of wort, as hexose.
#pragma once

#include "brewing/grist.h"

namespace staveline {

/// g hexose from 1 g of dry extract of each pool.
struct HexosePerGram {
    double glucose = 1.0, preformed = 1.03, maltose = 1.0526, maltotriose = 1.0714, dextrin = 1.098, sucrose = 1.0526;
};
inline constexpr HexosePerGram hexosePerGram;

/// Apparent against real fermentability: AAL = RDF / this.
inline constexpr double realPerApparent = .8192;

struct WortConstants {
    // Sugars of grain the mash does not change, split like those of a wort mashed at 65 C.
    double ownSimple = .19, ownMaltose = .65, ownMaltotriose = .16;
    double poorest = .5;    ///< conversion below which the wort is a failure and the sums no longer follow it
    double esterGrist = 50; ///< bound ferulic acid of the malt the ester level belongs to [mg/kg]
    double cisShare = .68;  ///< of the iso-alpha acids of fresh beer
};
inline constexpr WortConstants wortConstants;

/// The malt's extract in the wort; its members are shares that sum to 1.
struct MaltWort {
    MaltExtract shares;
    double conversion = 1; ///< extract won against full conversion
    double starch = 0;     ///< gelatinised but uncut, share of the starch
    [[nodiscard]] double attenuationLimit() const { return shares.fermentable() / realPerApparent; }
};
/// Mixes in the grain that keeps its own fermentability, then the brewer's calibration (a logit shift).
[[nodiscard]] MaltWort maltWort(const StarchPools& mash, const GristSums& grist, double logitShift);

/// g hexose per litre at the original gravity.
struct WortHexose {
    double simple = 0, maltose = 0, maltotriose = 0, dextrin = 0;
    double maltExtract = 0; ///< dry extract from the grist [g/L]
    [[nodiscard]] double total() const { return simple + maltose + maltotriose + dextrin; }
};
[[nodiscard]] WortHexose wortHexose(const MaltWort& malt, const BrewInput& input);

/// Gravity the grist alone must give at full conversion: without sugar, and more where the mash falls short.
[[nodiscard]] Plato gristGravity(const Recipe& recipe, double conversion);
/// kg of grist whose extract is in a litre of wort. Losses in the tun do not matter here: the acids and gums go with
/// the extract.
[[nodiscard]] double gristPerLitre(const Recipe& recipe, double conversion, const GristSums& grist);

} // namespace staveline
