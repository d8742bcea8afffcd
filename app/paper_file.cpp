// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/paper_file.h"

#include "sheet/paper_format.h"

#include <cstdio>
#include <filesystem>
#include <fmt/core.h>
#include <fstream>

#ifdef STAVELINE_HAS_WINDOW
#include "ui/print/pdf.h"
#endif

namespace staveline::app {
namespace {

Result<void> writeWhole(const std::string& text, const std::string& path) {
    const std::string partial = path + ".part";
    std::ofstream out(partial, std::ios::binary | std::ios::trunc);
    out << text;
    out.close();
    std::error_code error;
    if (out)
        std::filesystem::rename(partial, path, error);
    if (!out || error) {
        std::filesystem::remove(partial, error);
        return fail(
            {FaultKind::storage, "/out", say("app.cannot_write").with("file", path), say("app.cannot_write.remedy")});
    }
    return {};
}

Result<void> writePdfFile(const Document& document, const std::string& path) {
#ifdef STAVELINE_HAS_WINDOW
    return ui::writePdfWithoutWindow(document, path);
#else
    (void)document;
    return badInput("/out", say("app.no_pdf").with("file", path), say("app.no_pdf.remedy"));
#endif
}

} // namespace

Result<void> writePaper(const Document& document, const std::string& path) {
    if (path == "-") {
        fmt::print("{}", writeMarkdown(document));
        return {};
    }
    const PaperFormatRow* format = formatOf(std::filesystem::path(path).extension().string());
    if (format)
        return format->write ? writeWhole(format->write(document), path) : writePdfFile(document, path);
    return badInput("/out", say("app.unknown_ending").with("file", path),
                    say("app.unknown_ending.remedy").with("endings", knownEndings()));
}

} // namespace staveline::app
