// SPDX-License-Identifier: GPL-3.0-or-later
// A paper as PDF. No window is needed: without an application the pages are painted offscreen.
#pragma once

#include "sheet/document.h"
#include "ui/print/paper.h"

namespace staveline::ui {

/// Pages with "page x of y" at the foot; see desk/whole_file.h for what is replaced and what is refused.
[[nodiscard]] Result<void> writePdf(const sheet::Document& document, const std::filesystem::path& to,
                                    PaperSize size = PaperSize::a4);
} // namespace staveline::ui
