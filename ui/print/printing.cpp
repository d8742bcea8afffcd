// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/printing.h"

#include "ui/present/text.h"
#include "ui/print/paged_paper.h"

#include <QPageLayout>
#include <QPainter>
#include <QPrinter>

namespace staveline::ui {

bool paintPages(QPagedPaintDevice& device, const sheet::Document& document, PaperSize size) {
    const PagedPaper pages(document, size);
    QPainter painter;
    if (!painter.begin(&device))
        return false;
    constexpr double pointsPerInch = 72;
    painter.scale(device.logicalDpiX() / pointsPerInch, device.logicalDpiY() / pointsPerInch);
    for (int page = 0; page < pages.pages(); ++page) {
        if (page > 0 && !device.newPage())
            return false;
        pages.paint(painter, page);
    }
    return painter.end();
}

void prepare(QPrinter& printer, const sheet::Document& document, PaperSize size) {
    printer.setPageLayout(PagedPaper::layout(size));
    printer.setFullPage(true);
    printer.setDocName(qs(document.title));
    printer.setCreator(QStringLiteral("Staveline"));
}

Result<void> print(QPrinter& printer, const sheet::Document& document, PaperSize size) {
    if (!paintPages(printer, document, size))
        return fail({FaultKind::storage, "", say("ui.cannot_print"), say("ui.print_as_pdf")});
    return {};
}

} // namespace staveline::ui
