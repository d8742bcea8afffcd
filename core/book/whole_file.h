// SPDX-License-Identifier: GPL-3.0-or-later
// The one way in which papers, tables and pictures become files, beside the book itself: whole or not at all.
#pragma once

#include "quantity/fault.h"

#include <filesystem>
#include <string_view>

namespace staveline::book {

/// Writes a new file, or takes the place of an earlier paper and keeps its rights. The file is made under a free name
/// beside it, synced and renamed, so that at any moment the old one or the new one is there, and nothing else after a
/// fault.
///
/// What may be replaced: an ordinary file of the one who runs the program, who may write it. Never a link (nothing is
/// written where it leads, nor is it replaced), a folder or a device, a file of another user or one protected from
/// writing, the cellar book or any other SQLite file, nor a file that another program is writing beside it
/// ("NAME.part"). All these are storage faults, as are a missing folder and a full disk.
[[nodiscard]] Result<void> writeWhole(const std::filesystem::path& to, std::string_view bytes);

} // namespace staveline::book
