// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/paper_file.h"

#include "desk/whole_file.h"
#include "sheet/paper_format.h"

#include <filesystem>
#include <fmt/core.h>

#ifdef STAVELINE_HAS_WINDOW
#include "ui/print/pdf.h"
#endif

namespace staveline::app {
namespace {

Result<void> writePdfFile(const sheet::Document& document, const std::string& path, const std::string& size) {
#ifdef STAVELINE_HAS_WINDOW
    return ui::writePdf(document, path, ui::paperNamed(size).value_or(ui::localPaper()));
#else
    (void)document, (void)size;
    return badInput("/out", say("app.no_pdf").with("file", path), say("app.no_pdf.remedy"));
#endif
}

} // namespace

Result<void> writePaper(const sheet::Document& document, const std::string& path, const std::string& size) {
    if (path == "-") {
        fmt::print("{}", writeMarkdown(document));
        return {};
    }
    const sheet::PaperFormatRow* format = sheet::formatOf(std::filesystem::path(path).extension().string());
    if (!format)
        return badInput("/out", say("app.unknown_ending").with("file", path),
                        say("app.unknown_ending.remedy").with("endings", sheet::knownEndings()));
    auto written = format->write ? desk::writeWhole(path, format->write(document)) : writePdfFile(document, path, size);
    if (!written)
        written.error().path = "/out";
    return written;
}

} // namespace staveline::app
