// SPDX-License-Identifier: GPL-3.0-or-later
// Papers as a document model; writers turn it into text, Markdown, HTML and CSV. The PDF is made by ui/print.
#pragma once

#include "quantity/text.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace staveline::sheet {

struct Heading {
    int level = 1; ///< 1..3
    std::string text;
};
struct Paragraph {
    std::string text;
};
/// A caution stands at the step it belongs to.
struct Caution {
    std::string text;
};
struct Table {
    std::vector<std::string> columns;
    std::vector<std::vector<std::string>> rows; ///< cells; "" is a space to write in
    std::vector<bool> numeric;                  ///< right-aligned columns; shorter than columns: the rest is not

    [[nodiscard]] bool isNumeric(std::size_t column) const { return column < numeric.size() && numeric[column]; }
};
struct BulletList {
    std::vector<std::string> items;
    bool boxes = false; ///< steps: each has a box to tick
};
/// A drawing as wide as the page. Formats without pictures say it in words.
struct Picture {
    std::string svg;   ///< a whole SVG document
    std::string words; ///< what it shows
};
using Block = std::variant<Heading, Paragraph, Caution, Table, BulletList, Picture>;

/// How cards stand on a printed page.
struct CardGrid {
    int across = 2, down = 2;
    bool repeated = false; ///< a single card fills its page
};

struct Document {
    std::string title, subtitle, footer;
    std::vector<Block> blocks;
    std::string language = "en";         ///< of the texts, BCP 47
    std::string cautionWord = "Caution"; ///< stands before every caution
    std::optional<CardGrid> cards;       ///< each section of level 1 is a card of its own
};

[[nodiscard]] std::string writeText(const Document& document);
[[nodiscard]] std::string writeMarkdown(const Document& document);
/// Self-contained, black-and-white safe, repeats table heads when printed.
[[nodiscard]] std::string writeHtml(const Document& document);
/// RFC 4180; one section a table, blocks without a table as one-cell rows. An empty record ends a table.
[[nodiscard]] std::string writeCsv(const Document& document);

} // namespace staveline::sheet
