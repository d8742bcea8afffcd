// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sheet/document.h"

namespace staveline::app {

/// Writes a paper in the format its ending names: .md, .html, .csv, .txt, .pdf; "-" prints Markdown. `size` of a PDF's
/// pages: "a4" or "letter"; empty: that of the country this machine is set to.
/// What is replaced and what is refused: desk/whole_file.h; faults point at "/out".
[[nodiscard]] Result<void> writePaper(const sheet::Document& document, const std::string& path,
                                      const std::string& size);

} // namespace staveline::app
