// SPDX-License-Identifier: GPL-3.0-or-later
// A refill recipe: what the brewer decides, before it is sized.
#pragma once

#include "quantity/units.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::brewing {

struct GristPart {
    std::string grain;
    Share share{0};                  ///< of the grist by mass, sugars apart; parts sum to 1
    bool late = false;               ///< goes in when the last rest is reached
    std::optional<Kilograms> mass{}; ///< as weighed out; only of a brew as it was made
    bool operator==(const GristPart&) const = default;
};

struct MashStep {
    Celsius temperature{66};
    Minutes minutes{60};
    bool operator==(const MashStep&) const = default;
};

/// How the mash gets from one rest to the next: fast by hot water, or at the kit's own heating rate.
enum class MashPath { jump, ramp };

struct HopAddition {
    std::string name = "bittering hops";
    Share alpha{0.05};     ///< alpha acids, 0..0.25
    Minutes boiled{60};    ///< before flame-out
    Share ofBitterness{1}; ///< part of the recipe's IBU this addition brings; additions sum to 1
    bool operator==(const HopAddition&) const = default;
};

struct Recipe {
    std::vector<GristPart> grist;
    Share sugarShare{0}; ///< simple sugar, share of the extract, 0..0.25
    std::string sugar = "sucrose";
    std::vector<MashStep> mash;
    MashPath path = MashPath::jump;
    Ph mashPh{5.5};                       ///< 5.0..6.2
    LitresPerKilogram liquorToGrist{3.0}; ///< 1.8..8
    Plato originalGravity{12};            ///< 5..25
    Ibu bitterness{10};                   ///< 0..80
    std::vector<HopAddition> hops;        ///< empty: one addition at the start of the boil
    std::string yeast = "ale_clean";
    Minutes boil{60};
    Share preSoured{0};         ///< part of the refill soured before the boil, 0..1
    GramsPerLitre preSourTa{8}; ///< titratable acidity of that part, as lactic
    bool operator==(const Recipe&) const = default;
};

/// Rates used where the path is named, not stated [C/min].
inline constexpr CelsiusPerMinute jumpRate{10.0};

/// The rate between rests: a jump is fast whatever the kit; a ramp is the kit's.
[[nodiscard]] constexpr CelsiusPerMinute rampRate(const Recipe& recipe, CelsiusPerMinute kit) {
    return recipe.path == MashPath::jump ? jumpRate : kit;
}

struct Equipment {
    std::string name = "100 L kit";
    Litres mashTun{110};
    Litres kettle{130};
    Litres fermenter{120};
    Share efficiency{0.82}; ///< mash and lauter together, of the fine-grind extract
    LitresPerHour boilOff{9};
    Litres kettleLoss{4};  ///< trub and hops left behind, cold
    Share shrinkage{0.04}; ///< boiling to 20 C
    LitresPerKilogram absorption{0.96};
    Share fermenterLoss{0.05}; ///< yeast and trub, share of the fermenter volume
    Litres transferLoss{0.5};  ///< fermenter to vessel
    CelsiusPerMinute heatingRate{1.0};
    Kilograms tunWaterEquivalent{6}; ///< heat the tun takes, as kg of water
    Celsius grainTemperature{18};
    Celsius waterBoils{100}; ///< lower where the kit stands high: a degree for 300 m
    bool operator==(const Equipment&) const = default;
};

} // namespace staveline::brewing
