// SPDX-License-Identifier: GPL-3.0-or-later
// A paper to a printer, laid out as the preview and the PDF are.
#pragma once

#include "ui/print/paper.h"

class QPrinter;

namespace staveline::ui {

/// Gives the printer the paper's size and name, before the brewer is asked which printer.
void prepare(QPrinter& printer, const Document& document, PaperSize size);
/// A printer that does not answer is a storage fault.
[[nodiscard]] Result<void> print(QPrinter& printer, const Document& document, PaperSize size);

} // namespace staveline::ui
