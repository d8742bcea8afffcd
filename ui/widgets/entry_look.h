// SPDX-License-Identifier: GPL-3.0-or-later
// How an entry of the ledger looks and is begun: one row for each kind.
#pragma once

#include "ui/widgets/glyph.h"
#include "vessel/entry_kind.h"

#include <span>

namespace staveline::ui {

struct EntryLook {
    vessel::EntryKind kind;
    Glyph glyph;
    const char* action; ///< in the menu, to be translated in "Actions"
    const char* keys;
};
/// In the order of the menu.
[[nodiscard]] std::span<const EntryLook> entryLooks();
[[nodiscard]] Glyph glyphOf(vessel::EntryKind kind);
[[nodiscard]] QString wordOf(vessel::EntryKind kind); ///< "Draw-off"
/// "First fill" for the refill of an empty vessel.
[[nodiscard]] QString wordOf(vessel::EntryKind kind, bool toFill);

} // namespace staveline::ui
