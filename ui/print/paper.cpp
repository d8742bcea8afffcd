// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper.h"

#include "desk/whole_file.h"
#include "sheet/document.h"
#include "ui/print/pdf.h"

namespace staveline::ui {

const PaperSizeRow& rowOf(PaperSize size) {
    return *std::find_if(paperSizes.begin(), paperSizes.end(), [&](auto& row) { return row.size == size; });
}

std::optional<PaperSize> paperNamed(std::string_view word) {
    for (const auto& row : paperSizes)
        if (row.word == word)
            return row.size;
    return std::nullopt;
}

Result<void> writePaper(const sheet::Document& document, const std::filesystem::path& to, PaperSize size) {
    const sheet::PaperFormatRow* format = sheet::formatOf(to.extension().string());
    if (!format)
        return badInput("", say("ui.unknown_ending").with("path", to.filename().string()),
                        say("ui.known_endings").with("endings", sheet::knownEndings()));
    return format->write ? desk::writeWhole(to, format->write(document)) : writePdf(document, to, size);
}

} // namespace staveline::ui
