// SPDX-License-Identifier: GPL-3.0-or-later
// Beer as a part of a blend: what was measured of it first, the rest estimated, each with its error.
#pragma once

#include "desk/estimates.h"
#include "finishing/blend.h"

namespace staveline::desk {

/// Of a vessel as it stands; litres and colour are left open.
[[nodiscard]] finishing::BlendSource sourceOf(const CurrentVessel& vessel, const estimate::KnownOfVessel& known);
/// With what was measured of this very beer.
void putRight(finishing::BlendSource& source, const facts::Measured& measured);

} // namespace staveline::desk
