// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/csv.h"
#include "sheet/document.h"

namespace staveline::sheet {
namespace {

constexpr std::string_view endOfRecord = "\r\n";

std::string cell(std::string_view given) {
    std::string text = withoutFormula(given);
    if (text.find_first_of(",\"\r\n") == std::string::npos)
        return text;
    std::string out = "\"";
    for (char c : text)
        out += c == '"' ? "\"\"" : std::string(1, c);
    return out + '"';
}

std::string record(const std::vector<std::string>& cells, std::size_t width) {
    std::string out;
    for (std::size_t i = 0; i < width; ++i)
        out += (i == 0 ? "" : ",") + (i < cells.size() ? cell(cells[i]) : "");
    return out + std::string(endOfRecord);
}

struct CsvWriter {
    const Document& document;

    std::string operator()(const Heading& h) const { return record({h.text}, 1); }
    std::string operator()(const Paragraph& p) const { return record({p.text}, 1); }
    std::string operator()(const Caution& c) const { return record({document.cautionWord + ": " + c.text}, 1); }
    std::string operator()(const Picture& picture) const { return record({picture.words}, 1); }
    std::string operator()(const BulletList& list) const {
        std::string out;
        for (const auto& item : list.items)
            out += list.boxes ? record({item}, 2) : record({item}, 1);
        return out;
    }
    std::string operator()(const Table& table) const {
        std::string out = record(table.columns, table.columns.size());
        for (const auto& row : table.rows)
            out += record(row, table.columns.size());
        return out + std::string(endOfRecord);
    }
};

} // namespace

std::string writeCsv(const Document& document) {
    std::string out = record({document.title}, 1);
    if (!document.subtitle.empty())
        out += record({document.subtitle}, 1);
    for (const auto& block : document.blocks)
        out += std::visit(CsvWriter{document}, block);
    if (!document.footer.empty())
        out += record({document.footer}, 1);
    return out;
}

} // namespace staveline::sheet
