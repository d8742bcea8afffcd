// SPDX-License-Identifier: GPL-3.0-or-later
// Papers as files, in the format their ending names.
#pragma once

#include "sheet/document.h"

#include <filesystem>
#include <optional>
#include <string_view>

namespace staveline::ui {

enum class PaperSize { a4, letter };
[[nodiscard]] std::optional<PaperSize> paperNamed(std::string_view name); ///< "a4", "letter"

/// A folder that cannot be written and a full disk are storage faults; an existing file stays whole until the new one
/// is complete.
[[nodiscard]] Result<void> saveFile(const std::filesystem::path& to, std::string_view bytes);

enum class PaperFormat { pdf, html, markdown, csv, text };
/// By the file's ending; none: unknown.
[[nodiscard]] std::optional<PaperFormat> formatOf(const std::filesystem::path& path);
/// Writes by the file's ending (.pdf, .html, .md, .csv, .txt).
[[nodiscard]] Result<void> writePaper(const Document& document, const std::filesystem::path& to,
                                      PaperSize size = PaperSize::a4);

} // namespace staveline::ui
