// SPDX-License-Identifier: GPL-3.0-or-later
// The shape that stands for the state of a vessel, on the rail and in the table of all vessels.
#pragma once

#include "ui/present/cellar_model.h"
#include "ui/widgets/glyph.h"

namespace staveline::ui {

[[nodiscard]] Glyph glyphOf(VesselMood mood);

} // namespace staveline::ui
