// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper.h"

#include "desk/whole_file.h"
#include "sheet/document.h"
#include "ui/print/pdf.h"

#include <algorithm>
#include <cstdlib>

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

PaperSize localPaper() {
    // Countries whose offices print on Letter: Unicode CLDR, paper sizes by territory.
    static constexpr std::array<std::string_view, 14> onLetter = {"BZ", "CA", "CL", "CO", "CR", "GT", "MX",
                                                                  "NI", "PA", "PH", "PR", "SV", "US", "VE"};
    for (const char* name : {"LC_ALL", "LC_PAPER", "LANG"}) {
        const char* set = std::getenv(name);
        const std::string_view locale = set ? set : "";
        if (locale.empty())
            continue;
        const auto underscore = locale.find('_'); // "en_US.UTF-8"
        const auto country = underscore == std::string_view::npos ? "" : locale.substr(underscore + 1, 2);
        const bool letter = std::find(onLetter.begin(), onLetter.end(), country) != onLetter.end();
        return letter ? PaperSize::letter : PaperSize::a4;
    }
    return PaperSize::a4;
}

Result<void> writePaper(const sheet::Document& document, const std::filesystem::path& to, PaperSize size) {
    const sheet::PaperFormatRow* format = sheet::formatOf(to.extension().string());
    if (!format)
        return badInput("", say("ui.unknown_ending").with("path", to.filename().string()),
                        say("ui.known_endings").with("endings", sheet::knownEndings()));
    return format->write ? desk::writeWhole(to, format->write(document)) : writePdf(document, to, size);
}

} // namespace staveline::ui
