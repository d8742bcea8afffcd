// SPDX-License-Identifier: GPL-3.0-or-later
// Beer that is to be packed, out of a vessel or a lot, and what the guard says of a filling as it is recorded.
#pragma once

#include "desk/cellar.h"
#include "desk/packing.h"

namespace staveline::desk {

struct PackedBeer {
    std::string name; ///< of the vessel or lot
    Litres held{0};
    PercentVol alcohol{0};
    Ph ph{3.5};
    GramsPerLitre ta{0};
    Celsius warmth{15};             ///< by which its residual CO2 is reckoned
    bool underPressure = false;     ///< it stood in what can hold pressure
    finishing::BeerKnown known;     ///< its residual CO2 is left open
    std::optional<Message> caution; ///< of a fault that was tasted
};
/// On a day. Faults at "/vessel" and "/lot".
[[nodiscard]] Result<PackedBeer> packedBeer(const PackingRequest& request, Cellar& cellar, Day today);
/// All but that there is as much.
[[nodiscard]] Result<PackingAnswer> packed(const PackingRequest& request, const PackedBeer& beer);

/// The filling with what the guard says of it on its day. Refused and without a reason to go on: fault at
/// "/override_reason" that names what speaks against it.
[[nodiscard]] Result<facts::PackagingFact> guarded(facts::PackagingFact filling, const Cellar& cellar);

} // namespace staveline::desk
