// SPDX-License-Identifier: GPL-3.0-or-later
// A paper to whatever takes pages: a printer, a file. All lay it out as the preview does.
#pragma once

#include "sheet/document.h"
#include "ui/print/paper.h"

class QPagedPaintDevice;
class QPrinter;

namespace staveline::ui {

/// False: the device takes no page, or not all of them.
[[nodiscard]] bool paintPages(QPagedPaintDevice& device, const sheet::Document& document, PaperSize size);

/// Gives the printer the paper's size and name, before the brewer is asked which printer.
void prepare(QPrinter& printer, const sheet::Document& document, PaperSize size);
/// A printer that does not answer is a storage fault.
[[nodiscard]] Result<void> print(QPrinter& printer, const sheet::Document& document, PaperSize size);

} // namespace staveline::ui
