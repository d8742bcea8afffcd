// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sheet/document.h"

namespace staveline::app {

/// Writes a paper in the format its ending names: .md, .html, .csv, .txt, .pdf; "-" prints Markdown.
/// What is replaced and what is refused: desk/whole_file.h; faults point at "/out".
[[nodiscard]] Result<void> writePaper(const sheet::Document& document, const std::string& path);

} // namespace staveline::app
