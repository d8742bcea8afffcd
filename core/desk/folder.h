// SPDX-License-Identifier: GPL-3.0-or-later
// A folder of texts, written whole or not at all, and read.
#pragma once

#include "desk/desk.h"
#include "facts/table_csv.h"

#include <filesystem>

namespace staveline::desk {

/// Names may lead into folders below ("cycles/plover-1-02.html"). An empty folder is filled where it is. Refused, at
/// "/out": a folder that holds something, a file or link in its place, a missing folder above it.
[[nodiscard]] Result<void> writeFolder(const std::filesystem::path& to, const std::vector<facts::TextFile>& files);
/// The files that lie in it and end like this; not those of folders below. Faults at "/from".
[[nodiscard]] Result<std::vector<facts::TextFile>> readFolder(const std::filesystem::path& from,
                                                              std::string_view ending);
/// A new book, the same as the one whose export lies in the folder. It appears whole or not at all.
[[nodiscard]] Result<std::unique_ptr<Desk>> bookFromFolder(const std::filesystem::path& book,
                                                           const std::filesystem::path& folder,
                                                           const Clock& clock = systemToday);

} // namespace staveline::desk
