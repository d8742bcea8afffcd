// SPDX-License-Identifier: GPL-3.0-or-later
// Beers of vessels and lots as they stand today, blended to a target: measured values first, else estimates with their
// error.
#pragma once

#include "facts/facts.h"
#include "finishing/blend.h"

namespace staveline::desk {

struct BlendFrom {
    facts::VesselName vessel;     ///< or the name of a lot
    std::optional<Litres> litres; ///< none: all that is in it
    std::optional<Ebc> colour;    ///< none: not known
};
struct BlendRequest {
    std::vector<BlendFrom> from;
    finishing::PerTrait<std::optional<double>> aims;
    std::optional<Litres> litres; ///< none: as much as there is
};
struct BlendAnswer {
    std::vector<finishing::BlendSource> sources;
    finishing::Blend blend;
    std::vector<Message> words; ///< sources, parts, what comes of it
    std::vector<Message> cautions;
};

/// One object, for machines.
[[nodiscard]] std::string toJson(const BlendAnswer& answer);

} // namespace staveline::desk
