// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/mood_glyph.h"

namespace staveline::ui {

Glyph glyphOf(VesselMood mood) {
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
