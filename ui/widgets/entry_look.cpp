// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/entry_look.h"

#include "ui/present/text.h"

#include <algorithm>

namespace staveline::ui {

using vessel::EntryKind;

namespace {

constexpr auto looks = std::to_array<EntryLook>({
    {EntryKind::drawOff, Glyph::drawOff, QT_TRANSLATE_NOOP("Actions", "&Draw-off"), "Ctrl+D"},
    {EntryKind::refill, Glyph::refill, QT_TRANSLATE_NOOP("Actions", "&Refill"), "Ctrl+R"},
    {EntryKind::topUp, Glyph::topUp, QT_TRANSLATE_NOOP("Actions", "&Top-up"), "Ctrl+T"},
    {EntryKind::sample, Glyph::sample, QT_TRANSLATE_NOOP("Actions", "&Sample"), "Ctrl+L"},
    {EntryKind::dip, Glyph::dip, QT_TRANSLATE_NOOP("Actions", "D&ip"), "Ctrl+I"},
    {EntryKind::reading, Glyph::reading, QT_TRANSLATE_NOOP("Actions", "Readin&g"), "Ctrl+G"},
    {EntryKind::event, Glyph::event, QT_TRANSLATE_NOOP("Actions", "&Event"), "Ctrl+H"},
    {EntryKind::opening, Glyph::opening, QT_TRANSLATE_NOOP("Actions", "Take&over"), "Ctrl+Shift+O"},
});
static_assert(looks.size() == vessel::entryKinds.size() &&
                  std::all_of(vessel::entryKinds.begin(), vessel::entryKinds.end(),
                              [](const vessel::EntryTraits& entry) {
                                  return std::count_if(looks.begin(), looks.end(), [&](const EntryLook& look) {
                                             return look.kind == entry.kind;
                                         }) == 1;
                              }),
              "one look for each kind of entry");

} // namespace

std::span<const EntryLook> entryLooks() {
    return looks;
}

Glyph glyphOf(EntryKind kind) {
    return std::find_if(looks.begin(), looks.end(), [&](const EntryLook& look) { return look.kind == kind; })->glyph;
}

QString wordOf(EntryKind kind) {
    return own("ui.entry." + std::string(traitsOf(kind).word));
}

QString wordOf(EntryKind kind, bool toFill) {
    return toFill && kind == EntryKind::refill ? own("ui.entry.first_fill") : wordOf(kind);
}

} // namespace staveline::ui
