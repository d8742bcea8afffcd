// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/paper_format.h"

#include <algorithm>
#include <cctype>

namespace staveline::sheet {

const PaperFormatRow& rowOf(PaperFormat format) {
    return *std::find_if(paperFormats.begin(), paperFormats.end(), [&](auto& row) { return row.format == format; });
}

const PaperFormatRow* formatOf(std::string_view ending) {
    std::string wanted(ending);
    std::transform(wanted.begin(), wanted.end(), wanted.begin(), [](unsigned char c) { return std::tolower(c); });
    if (wanted == ".htm")
        wanted = ".html";
    for (const auto& row : paperFormats)
        if (row.ending == wanted)
            return &row;
    return nullptr;
}

std::string knownEndings() {
    std::string words;
    for (std::size_t i = 0; i < paperFormats.size(); ++i)
        words += (i == 0 ? "" : i + 1 == paperFormats.size() ? " or " : ", ") + std::string(paperFormats[i].ending);
    return words;
}

} // namespace staveline::sheet
