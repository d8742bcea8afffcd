// SPDX-License-Identifier: GPL-3.0-or-later
// A reader of RFC 4180 of the tests' own, so that a slip in the program's cannot hide one in the writer.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace staveline {

inline std::vector<std::vector<std::string>> readCsv(std::string_view text) {
    std::vector<std::vector<std::string>> records;
    std::vector<std::string> record(1);
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (quoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"')
            record.back() += text[++i];
        else if (c == '"')
            quoted = !quoted;
        else if (!quoted && c == ',')
            record.emplace_back();
        else if (!quoted && c == '\r' && i + 1 < text.size() && text[i + 1] == '\n') {
            records.push_back(record);
            record.assign(1, "");
            ++i;
        } else
            record.back() += c;
    }
    return records;
}

} // namespace staveline
