// SPDX-License-Identifier: GPL-3.0-or-later
// The shape that stands for the state of a vessel, on the rail and in the table of all vessels.
#pragma once

#include "ui/present/cellar_model.h"
#include "ui/widgets/glyph.h"

namespace staveline::ui {

[[nodiscard]] constexpr Glyph glyphOf(VesselMood mood) {
    switch (mood) {
    case VesselMood::fault:
        return Glyph::fault;
    case VesselMood::overdue:
        return Glyph::overdue;
    case VesselMood::soon:
        return Glyph::soon;
    case VesselMood::calm:
        break;
    }
    return Glyph::calm;
}

} // namespace staveline::ui
