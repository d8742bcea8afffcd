// SPDX-License-Identifier: GPL-3.0-or-later
// brew(): what a recipe becomes by the time it goes into the vessel (mash -> wort -> boil -> primary).
#pragma once

#include "brewing/recipe.h"
#include "ingredient/pantry.h"
#include "quantity/composition.h"
#include "quantity/constants.h"

namespace staveline::brewing {

/// Constants of mash, boil and primary. Rows of resources/data/parameters.csv; a neutral value (0 or 1) stands for "as
/// the model".
struct BrewParameters {
    double ethanolPerHexose = constants::ethanolPerHexose; ///< alcohol from a gram of hexose in the primary [g/g]
    double maltotrioseForLactics =
        constants::maltotrioseForLactics; ///< share of the maltotriose left by the primary that lactics can take
    double accessibleDextrin = constants::accessibleDextrin; ///< share of the dextrin that the culture opens with ease
    double otherExtract = constants::otherExtract;           ///< share of the malt extract that is no carbohydrate
    double otherFollowsMash = constants::otherFollowsMash;   ///< other extract follows the grain a poor mash needs
    double alphaKept = constants::alphaKept; ///< share of the alpha acids not isomerised that stay in the beer
    double boilDecarboxylation =
        constants::boilDecarboxylation; ///< ferulic acid turned into vinyl guaiacol in the boil [1/h]
    double coumaricTurnover =
        constants::coumaricTurnover;             ///< of p-coumaric against ferulic acid, by boil and plain yeast
    double lacticFresh = constants::lacticFresh; ///< lactic acid in fresh beer [g/L]
    double aceticFresh = constants::aceticFresh; ///< acetic acid in fresh beer [g/L]
    double phFresh = constants::phFresh;         ///< pH of fresh beer [pH]
    double wortBuffer = constants::wortBuffer;   ///< buffer of wort against that of the beer it becomes
    double phWort = constants::phWort;           ///< pH of wort before it is soured [pH]
    double estersSplit = constants::estersSplit; ///< feruloyl esters split by the primary yeast
    double wortEsters = constants::wortEsters;   ///< soluble feruloyl esters in the wort of a 12 P pilsner beer [mg/L]
    double fermentabilityShift = constants::fermentabilityShift; ///< brewer's calibration of fermentability (logit)
    double cloveYeastTurnover = constants::cloveYeastTurnover;   ///< ferulic acid a clove-forming yeast turns over
    double plainYeastTurnover = constants::plainYeastTurnover;   ///< ferulic acid any other yeast turns over
    double phenolReleaseFactor = constants::phenolReleaseFactor; ///< rate of release in the mash against the model
    double ferulicFactor = constants::ferulicFactor;             ///< ferulic acid against the model
    double coumaricFactor = constants::coumaricFactor;           ///< coumaric acid against the model
    double betaHalfLife65 = constants::betaHalfLife65;         ///< half-life of most of the beta-amylase at 65 C [min]
    double betaStableShare = constants::betaStableShare;       ///< share of the beta-amylase that lasts
    double betaStableHalfLife = constants::betaStableHalfLife; ///< half-life of that share at 65 C [min]
    double gelatinisationShift = constants::gelatinisationShift; ///< gelatinisation of this malt against the model [C]
    double limitDextrinaseRate = constants::limitDextrinaseRate; ///< limit dextrinase against the model
    bool operator==(const BrewParameters&) const = default;
};

/// A recipe with its ingredients looked up, ready to be brewed many times.
struct BrewInput {
    struct Part {
        ingredient::Grain grain;
        Share share;
        bool late = false;
        bool operator==(const Part&) const = default;
    };
    std::vector<Part> grist; ///< shares sum to 1
    Recipe recipe;           ///< its numbers; names no longer needed
    ingredient::Yeast yeast;
    CelsiusPerMinute ramp = jumpRate; ///< between rests
    ingredient::Grain sugar;          ///< the simple sugar; looked up only when the recipe has a share of it
    bool operator==(const BrewInput&) const = default;
};

/// Looks everything up and checks ranges (empty grist, shares that do not sum to 1, mash above 80 C, ...).
/// Paths in faults are those of the recipe ("/grist/0/grain").
[[nodiscard]] Result<BrewInput> resolve(const Recipe& recipe, const ingredient::Pantry& pantry,
                                        CelsiusPerMinute kitRate);

struct RefillBeer {
    Composition beer;
    double conversion = 1;         ///< extract won by the mash against full conversion ("ext" of the mash model)
    double attenuationLimit = .83; ///< apparent, of the malt's extract (sugar apart), 0..1
    double starch = 0;             ///< gelatinised but uncut, share of the starch
    double opened = 1;             ///< gelatinised, share of the starch
    double hexoseInWort = 0;       ///< g/L
    double hexoseTaken = 0;        ///< by the primary, without what pre-souring turned to acid [g/L]
    double maltAcid = 0;           ///< lactic acid that the malt brought, in the beer above [g/L]
    Plato finalGravity{2};         ///< apparent, after primary
    PercentVol alcohol{5};
    double lactics = 0, brett = 0; ///< what lives in it, against a full culture: beer out of another vessel
    double enzyme = 0;             ///< opening of accessible dextrin by what diastatic yeast lives in it [1/d]

    /// Little enough starch is left.
    [[nodiscard]] bool converted() const { return starch <= constants::plan::starchLimit; }
    /// Little enough starch stays closed in the grain.
    [[nodiscard]] bool opens() const { return opened >= constants::plan::openingLimit; }
};

/// Pure and deterministic; total for a BrewInput that `resolve` made. The model's reference boil is 60 min.
/// Late grain misses every rest but the last, with its starch, its enzymes and its precursors.
[[nodiscard]] RefillBeer brew(const BrewInput& input, const BrewParameters& parameters = {});

/// The mash alone over time, for drawing: one point a minute or closer, from mash-in to the end of the last rest.
struct MashTrace {
    std::vector<double> minute, temperature; ///< min, C
    std::vector<double> fermentable;         ///< share of the extract that full conversion would give
    std::vector<double> dextrin;             ///< the same, uncut starch included
    std::vector<double> ferulic;             ///< free acid in the wort [mg/L]
    std::vector<double> betaGlucan;          ///< in the wort [g/L]
};
[[nodiscard]] MashTrace traceMash(const BrewInput& input, const BrewParameters& parameters = {});

} // namespace staveline::brewing
