// SPDX-License-Identifier: GPL-3.0-or-later
// Sizing: from the litres the vessel needs back to kilograms, litres and degrees on the brew day.
// Litres of water and wort are at 20 C (a litre of water is a kilogram) unless the name says hot.
#pragma once

#include "brewing/refill_beer.h"
#include "quantity/fault.h"

#include <optional>

namespace staveline::brewing {

struct BatchNeed {
    Litres intoVessel{0};                  ///< what the refill must fill, incl. evaporation
    Share margin{0.05};                    ///< for trub and the unforeseen between fermenter and vessel
    std::optional<Litres> fixedBrewLength; ///< into the fermenter; if the brewer always brews the same
};

struct WeighedGrain {
    std::string id;
    std::string name;
    Kilograms mass{0};
    Share share{0};
    bool late = false;
};
struct MashStage {
    Celsius temperature{66};
    Minutes rest{60};
    enum class How { strike, infusion, heat } how = How::strike;
    Litres water{0}; ///< strike or infusion water
    Celsius waterTemperature{72};
    Minutes heating{0};   ///< when heated
    Litres mashVolume{0}; ///< after this stage, grain displacement included
};
struct WeighedHops {
    std::string name;
    Grams mass{0};
    Share alpha{0};
    Minutes boiled{0};
    Ibu brings{0};
};

struct BrewPlan {
    Litres intoVessel{0}, intoFermenter{0};
    Litres leftOver{0}; ///< for top-ups: what the fermenter gives beyond `intoVessel`
    Litres postBoilHot{0}, preBoilHot{0}, sparge{0}, strikeAndInfusion{0}, mashVolume{0};
    Litres postBoil{0}; ///< cooled, with what the kettle keeps: the volume of the gravity and the bitterness
    std::vector<WeighedGrain> grist;
    Kilograms gristMass{0}, sugar{0};
    Kilograms extract{0}; ///< in the kettle, sugar included: original gravity times `postBoil`
    std::string sugarName;
    std::vector<MashStage> mash;
    std::vector<WeighedHops> hops;
    Plato preBoilGravity{10}; ///< sugar included
    Plato originalGravity{12}, finalGravity{2};
    PercentVol alcohol{5};
    Ibu bitterness{10};
    Ebc colour{6};
    std::string yeastName;
    int primaryDays = 14;
    std::optional<Fault> cannot;      ///< the mash cannot be struck: no step to print
    std::vector<Message> findings;    ///< "does not fit the mash tun by 12 L", "stuck run-off likely", ...
    std::vector<Message> assumptions; ///< what it counts on beside kit and model: "brewing.house."
    std::vector<Message> cautions;    ///< safety, each at its step: keys "caution.mash.", "caution.kettle.", ...
};

/// Hops that are to bring bitterness are boiled for it and have alpha acids.
[[nodiscard]] Result<void> checkHopsBring(const Recipe& recipe);
/// Wort into the fermenter that kettle and fermenter take at one go; 0 where the boil leaves nothing. [cold litres]
[[nodiscard]] Litres mostAtOnce(const Equipment& equipment, Minutes boil);

/// A batch that cannot be made at all (no positive volume, a kit without efficiency, hops that cannot bring their
/// part) is a fault; one that does not fit is a finding with by how much and what helps.
[[nodiscard]] Result<BrewPlan> planBrew(const BrewInput& input, const RefillBeer& beer, const Equipment& equipment,
                                        const BatchNeed& need);

} // namespace staveline::brewing
