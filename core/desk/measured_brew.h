// SPDX-License-Identifier: GPL-3.0-or-later
// A brew as it came out: what was measured takes the place of what was planned, and the rest follows from it.
#pragma once

#include "desk/brew.h"
#include "desk/desk.h"

namespace staveline::desk {

struct BrewMeasures {
    std::optional<SpecificGravity> originalGravity, finalGravity;
    std::optional<Litres> intoFermenter;
    bool operator==(const BrewMeasures&) const = default;
};
[[nodiscard]] BrewMeasures measuresOf(const facts::BrewFact& brew);

/// What the kit's losses leave of these litres in the fermenter for the vessel.
[[nodiscard]] Litres intoVesselFrom(Litres intoFermenter, const brewing::Equipment& kit);

/// The recipe as brewed, its litres worked back and forth from those measured in the fermenter, its gravities as
/// measured, the alcohol from both, its kilograms as weighed; what was not measured is as planned. A measure with which
/// nothing can be brewed (a misread hydrometer) is left out of the draft.
[[nodiscard]] Result<BrewDraft> draftAsBrewed(const Desk& desk, const facts::VesselName& vessel,
                                              const advice::Setting& setting, const facts::EquipmentFact& kit,
                                              const BrewMeasures& measured);

} // namespace staveline::desk
