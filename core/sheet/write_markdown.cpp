// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/document.h"

namespace staveline::sheet {
namespace {

/// One line in which no character means anything to Markdown (CommonMark escapes; tables as in GFM).
std::string escaped(std::string_view text) {
    constexpr std::string_view special = "\\`*_{}[]<>#|~&";
    std::string out;
    for (char c : text) {
        if (c == '\n' || c == '\r' || c == '\t') {
            out += ' ';
            continue;
        }
        if (special.find(c) != std::string_view::npos)
            out += '\\';
        out += c;
    }
    return out;
}

/// The same at the start of a line, where a dash, a plus, an equals sign or a number with a point mean a list or a
/// heading.
std::string escapedLine(std::string_view text) {
    std::string out = escaped(text);
    const auto digits = out.find_first_not_of("0123456789");
    const bool numbered = digits != std::string::npos && digits > 0 && (out[digits] == '.' || out[digits] == ')') &&
                          (digits + 1 == out.size() || out[digits + 1] == ' ');
    if (numbered)
        out.insert(digits, 1, '\\');
    else if (!out.empty() && (out[0] == '-' || out[0] == '+' || out[0] == '='))
        out.insert(0, 1, '\\');
    return out;
}

struct MarkdownWriter {
    const Document& document;

    std::string operator()(const Heading& h) const {
        return std::string(static_cast<std::size_t>(h.level) + 1, '#') + ' ' + escaped(h.text) + '\n';
    }
    std::string operator()(const Paragraph& p) const { return escapedLine(p.text) + '\n'; }
    std::string operator()(const Caution& c) const {
        return "> **" + escaped(document.cautionWord) + ":** " + escaped(c.text) + '\n';
    }
    std::string operator()(const Picture& picture) const { return escapedLine(picture.words) + '\n'; }
    std::string operator()(const BulletList& list) const {
        std::string out;
        for (const auto& item : list.items)
            out += (list.boxes ? "- [ ] " : "- ") + escapedLine(item) + '\n';
        return out;
    }
    std::string operator()(const Table& table) const {
        if (table.columns.empty())
            return "";
        std::string out = row(table, table.columns) + "|";
        for (std::size_t i = 0; i < table.columns.size(); ++i)
            out += table.isNumeric(i) ? " ---: |" : " --- |";
        out += '\n';
        for (const auto& cells : table.rows)
            out += row(table, cells);
        return out;
    }

private:
    static std::string row(const Table& table, const std::vector<std::string>& cells) {
        std::string out = "|";
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            const bool blank = i >= cells.size() || cells[i].empty();
            out += blank ? "  |" : ' ' + escaped(cells[i]) + " |";
        }
        return out + '\n';
    }
};

} // namespace

std::string writeMarkdown(const Document& document) {
    std::string out = "# " + escaped(document.title) + '\n';
    if (!document.subtitle.empty())
        out += '\n' + escapedLine(document.subtitle) + '\n';
    for (const auto& block : document.blocks)
        out += '\n' + std::visit(MarkdownWriter{document}, block);
    if (!document.footer.empty())
        out += "\n---\n\n" + escapedLine(document.footer) + '\n';
    return out;
}

} // namespace staveline::sheet
