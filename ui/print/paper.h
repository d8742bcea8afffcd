// SPDX-License-Identifier: GPL-3.0-or-later
// Papers: their sizes, and how they become files, in the format the ending names.
#pragma once

#include "sheet/document.h"
#include "sheet/paper_format.h"

#include <QPageSize>

#include <filesystem>
#include <optional>

namespace staveline::ui {

enum class PaperSize { a4, letter };

/// Every size there is, once for settings, menus, choices and pages.
struct PaperSizeRow {
    PaperSize size;
    const char* word; ///< as stored
    const char* name; ///< as shown
    QPageSize::PageSizeId page;
};
inline constexpr std::array paperSizes = {PaperSizeRow{PaperSize::a4, "a4", "A4", QPageSize::A4},
                                          PaperSizeRow{PaperSize::letter, "letter", "Letter", QPageSize::Letter}};

[[nodiscard]] const PaperSizeRow& rowOf(PaperSize size);
[[nodiscard]] std::optional<PaperSize> paperNamed(std::string_view word); ///< "a4", "letter"
/// The paper of the country this machine is set to (LC_ALL, LC_PAPER, LANG); A4 where none is.
[[nodiscard]] PaperSize localPaper();

/// Writes by the file's ending; see desk/whole_file.h for what is replaced and what is refused.
[[nodiscard]] Result<void> writePaper(const sheet::Document& document, const std::filesystem::path& to,
                                      PaperSize size = PaperSize::a4);

} // namespace staveline::ui
