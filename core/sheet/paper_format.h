// SPDX-License-Identifier: GPL-3.0-or-later
// The formats a paper leaves in, once for window and command line: a new one is a row here.
#pragma once

#include "sheet/document.h"

#include <array>
#include <string_view>

namespace staveline::sheet {

enum class PaperFormat { pdf, html, markdown, csv, text };

struct PaperFormatRow {
    PaperFormat format;
    std::string_view name;   ///< on buttons
    std::string_view ending; ///< with its dot
    /// Null: pages, made by those who can paint.
    std::string (*write)(const Document&);
};
inline constexpr std::array paperFormats = {PaperFormatRow{PaperFormat::pdf, "PDF", ".pdf", nullptr},
                                            PaperFormatRow{PaperFormat::html, "HTML", ".html", writeHtml},
                                            PaperFormatRow{PaperFormat::markdown, "Markdown", ".md", writeMarkdown},
                                            PaperFormatRow{PaperFormat::csv, "CSV", ".csv", writeCsv},
                                            PaperFormatRow{PaperFormat::text, "Text", ".txt", writeText}};

[[nodiscard]] const PaperFormatRow& rowOf(PaperFormat format);
/// By a file's ending with its dot, whatever its case; null: unknown.
[[nodiscard]] const PaperFormatRow* formatOf(std::string_view ending);
/// ".pdf, .html, .md, .csv or .txt"
[[nodiscard]] std::string knownEndings();

} // namespace staveline::sheet
