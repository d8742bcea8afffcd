// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/document.h"

#include <algorithm>

namespace staveline::sheet {
namespace {

constexpr std::size_t pageWidth = 96;

bool startsCharacter(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
}
/// Characters, not bytes: degree signs and plus-minus are one wide.
std::size_t width(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), startsCharacter));
}

std::string padded(std::string_view text, std::size_t to, bool right) {
    const std::string fill(to - std::min(to, width(text)), ' ');
    return right ? fill + std::string(text) : std::string(text) + fill;
}

std::vector<std::string> wordsOf(std::string_view text) {
    std::vector<std::string> words(1);
    for (char c : text)
        if (c == ' ' || c == '\n' || c == '\t' || c == '\r')
            words.emplace_back();
        else
            words.back() += c;
    std::erase(words, "");
    return words;
}

/// `first` stands before the first line, as many spaces before the others.
std::string wrapped(std::string_view text, const std::string& first) {
    std::string out = first, line;
    const std::string indent(width(first), ' ');
    for (const auto& word : wordsOf(text)) {
        if (!line.empty() && indent.size() + width(line) + 1 + width(word) > pageWidth) {
            out.append(line).append(1, '\n').append(indent);
            line.clear();
        }
        line += line.empty() ? "" : " ";
        line += word;
    }
    return out + line + '\n';
}

std::string underlined(const std::string& text, char with) {
    return text + '\n' + std::string(width(text), with) + '\n';
}

struct TextWriter {
    const Document& document;

    std::string operator()(const Heading& h) const {
        return h.level == 1 ? underlined(h.text, '=') : underlined(h.text, '-');
    }
    std::string operator()(const Paragraph& p) const { return wrapped(p.text, ""); }
    std::string operator()(const Caution& c) const { return wrapped(document.cautionWord + ": " + c.text, "! "); }
    std::string operator()(const Picture& picture) const { return wrapped(picture.words, ""); }
    std::string operator()(const BulletList& list) const {
        std::string out;
        for (const auto& item : list.items)
            out += wrapped(item, list.boxes ? "[ ] " : "- ");
        return out;
    }
    std::string operator()(const Table& table) const {
        const bool forNotes = table.columns.size() == 1;
        std::vector<std::size_t> widths(table.columns.size(), forNotes ? pageWidth : 6); // room to write in
        const auto widen = [&](const std::vector<std::string>& cells) {
            for (std::size_t i = 0; i < std::min(cells.size(), widths.size()); ++i)
                widths[i] = std::max(widths[i], width(cells[i]));
        };
        widen(table.columns);
        for (const auto& row : table.rows)
            widen(row);
        std::string out = line(table, table.columns, widths);
        for (std::size_t w : widths)
            out += std::string(w, '-') + "  ";
        out.resize(out.size() - std::min<std::size_t>(2, widths.size()));
        out += '\n';
        for (const auto& row : table.rows)
            out += line(table, row, widths);
        return out;
    }

private:
    static std::string line(const Table& table, const std::vector<std::string>& cells,
                            const std::vector<std::size_t>& widths) {
        std::string out;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            const bool blank = i >= cells.size() || cells[i].empty();
            out += (i == 0 ? "" : "  ");
            out += blank ? std::string(widths[i], '_') : padded(cells[i], widths[i], table.isNumeric(i));
        }
        out.erase(out.find_last_not_of(' ') + 1);
        return out + '\n';
    }
};

} // namespace

std::string writeText(const Document& document) {
    std::string out = underlined(document.title, '=');
    if (!document.subtitle.empty())
        out += wrapped(document.subtitle, "");
    for (const auto& block : document.blocks)
        out += '\n' + std::visit(TextWriter{document}, block);
    if (!document.footer.empty())
        out += '\n' + wrapped(document.footer, "");
    return out;
}

} // namespace staveline::sheet
