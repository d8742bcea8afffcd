// SPDX-License-Identifier: GPL-3.0-or-later
// brew(): what a recipe becomes by the time it goes into the vessel (mash -> wort -> boil -> primary).
#pragma once

#include "brewing/recipe.h"
#include "ingredient/pantry.h"
#include "quantity/composition.h"

namespace staveline {

/// Constants of mash, boil and primary. Each has a row in resources/data/parameters.csv; a neutral value (0 or 1)
/// stands for "as the model".
struct BrewParameters {
    double ethanolPerHexose = .461; ///< g/g, Balling
    double sT = .10;                ///< share of left maltotriose lactics can take
    double phi = .50;               ///< accessible share of dextrin
    double other = .12;             ///< non-carbohydrate share of malt extract
    double kBoil = .055;            ///< decarboxylation in the boil [1/h]
    double lacticFresh = .20;       ///< g/L
    double aceticFresh = .10;       ///< g/L
    double phFresh = 4.30;
    double esterShare = .05; ///< esters split by primary yeast
    double esters = 8.0;     ///< soluble esters of a 12 P pilsner wort [mg/L]
    double aalShift = 0;     ///< brewer's calibration, logit of real fermentability
    double yPof = .85, yPofNegative = .05;
    double mk = 1, mF = 1, mC = 1;  ///< multipliers: release rate, ferulic, coumaric
    double betaHalfLife65 = 10;     ///< min
    double gelatinisationShift = 0; ///< C
    double limitDextrinaseRate = 1;
    bool operator==(const BrewParameters&) const = default;
};

/// A recipe with its ingredients looked up, ready to be brewed many times.
struct BrewInput {
    struct Part {
        Grain grain;
        Share share;
        bool late = false;
        bool operator==(const Part&) const = default;
    };
    std::vector<Part> grist; ///< shares sum to 1
    Recipe recipe;           ///< its numbers; names no longer needed
    Yeast yeast;
    CelsiusPerMinute ramp = jumpRate; ///< between rests
    Grain sugar;                      ///< the simple sugar; looked up only when the recipe has a share of it
    bool operator==(const BrewInput&) const = default;
};

/// Looks everything up and checks ranges (empty grist, shares that do not sum to 1, mash above 80 C, ...).
/// Paths in faults are those of the recipe ("/grist/0/grain").
[[nodiscard]] Result<BrewInput> resolve(const Recipe& recipe, const Pantry& pantry, CelsiusPerMinute kitRate);

struct RefillBeer {
    Composition beer;
    double conversion = 1;         ///< extract won by the mash against full conversion ("ext" of the mash model)
    double attenuationLimit = .83; ///< apparent, of the malt's extract (sugar apart), 0..1
    double starch = 0;             ///< gelatinised but uncut, share of the starch; above 0.02: not converted
    double hexoseInWort = 0;       ///< g/L
    double hexoseTaken = 0;        ///< by the primary, without what pre-souring turned to acid [g/L]
    Plato finalGravity{2};         ///< apparent, after primary
    PercentVol alcohol{5};
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

} // namespace staveline
