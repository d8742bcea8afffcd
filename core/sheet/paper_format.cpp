// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/paper_format.h"

#include "quantity/language.h"

#include <algorithm>
#include <cctype>
#include <fmt/core.h>

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
        words += (i == 0                         ? std::string()
                  : i + 1 == paperFormats.size() ? fmt::format(" {} ", inLanguage("or"))
                                                 : std::string(", ")) +
                 std::string(paperFormats[i].ending);
    return words;
}

} // namespace staveline::sheet
