// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/printing.h"

#include "ui/present/text.h"
#include "ui/print/paged_paper.h"

#include <QPageLayout>
#include <QPainter>
#include <QPrinter>

namespace staveline::ui {

void prepare(QPrinter& printer, const Document& document, PaperSize size) {
    printer.setPageLayout(PagedPaper::layout(size));
    printer.setFullPage(true);
    printer.setDocName(qs(document.title));
}

Result<void> print(QPrinter& printer, const Document& document, PaperSize size) {
    const PagedPaper pages(document, size);
    QPainter painter;
    if (!painter.begin(&printer))
        return fail({FaultKind::storage, "", say("ui.cannot_print"), say("ui.print_as_pdf")});
    constexpr double pointsPerInch = 72;
    painter.scale(printer.resolution() / pointsPerInch, printer.resolution() / pointsPerInch);
    for (int page = 0; page < pages.pages(); ++page) {
        if (page > 0)
            printer.newPage();
        pages.paint(painter, page);
    }
    return {};
}

} // namespace staveline::ui
