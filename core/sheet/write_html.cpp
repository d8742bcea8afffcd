// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/document.h"

#include <cctype>

namespace staveline::sheet {
namespace {

/// Rules for screen and paper: no colour carries meaning, no page size is forced, table heads repeat.
constexpr std::string_view style = R"(
  :root { color-scheme: light; }
  body { font: 11pt/1.4 "Liberation Serif", Georgia, serif; color: #000; background: #fff;
         max-width: 48rem; margin: 2rem auto; padding: 0 1rem; }
  h1 { font-size: 1.6em; margin: 0; }
  h2 { font-size: 1.2em; margin: 1.4em 0 .4em; border-bottom: 1px solid #000; }
  h3, h4 { font-size: 1em; margin: 1em 0 .3em; }
  p { margin: .4em 0; }
  .caution { border: 2px solid #000; border-left-width: 8px; padding: .3em .6em; margin: .5em 0; }
  table { border-collapse: collapse; width: 100%; margin: .5em 0; }
  th, td { border: 1px solid #666; padding: .25em .5em; text-align: left; vertical-align: top; }
  th { border-bottom: 2px solid #000; }
  .n { text-align: right; font-variant-numeric: tabular-nums; }
  .steps { list-style: "\2610\00a0\00a0"; }
  .write { min-width: 4em; height: 1.6em; border-bottom: 1px dotted #000; }
  img { max-width: 100%; }
  footer { margin-top: 2em; border-top: 1px solid #000; font-size: .85em; }
  @page { margin: 15mm; }
  @media print {
    body { margin: 0; padding: 0; max-width: none; font-size: 10pt; }
    thead { display: table-header-group; }
    tr, .caution, li { break-inside: avoid; }
    h2, h3, h4 { break-after: avoid; }
  }
)";

/// Text for content and attributes; control characters that HTML forbids become spaces.
std::string escaped(std::string_view text) {
    std::string out;
    for (char c : text) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        default:
            out += static_cast<unsigned char>(c) < 0x20 || c == 0x7F ? ' ' : c;
        }
    }
    return out;
}

/// The drawing inside the page itself, so that the file stands alone.
std::string dataUri(std::string_view svg) {
    constexpr std::string_view digits = "0123456789ABCDEF";
    std::string out = "data:image/svg+xml,";
    for (const char c : svg) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) != 0 || std::string_view("-._~").find(c) != std::string_view::npos)
            out += c;
        else
            out.append(1, '%').append(1, digits[byte >> 4U]).append(1, digits[byte & 15U]);
    }
    return out;
}

std::string element(std::string_view name, std::string_view attributes, const std::string& inside) {
    return '<' + std::string(name) + std::string(attributes) + '>' + inside + "</" + std::string(name) + '>';
}

/// Sections open at headings of level 1 and close at the next.
class HtmlWriter {
public:
    explicit HtmlWriter(const Document& document) : document_(document) {}

    std::string operator()(const Heading& h) {
        const auto tag = "h" + std::to_string(h.level + 1);
        if (h.level != 1)
            return element(tag, "", escaped(h.text)) + '\n';
        const auto id = "section-" + std::to_string(++sections_);
        return closeSection() + "<section aria-labelledby=\"" + id + "\">\n" +
               element(tag, " id=\"" + id + '"', escaped(h.text)) + '\n';
    }
    std::string operator()(const Paragraph& p) { return element("p", "", escaped(p.text)) + '\n'; }
    std::string operator()(const Caution& c) {
        const auto word = element("strong", "", escaped(document_.cautionWord) + ':');
        return element("p", " class=\"caution\" role=\"note\"", word + ' ' + escaped(c.text)) + '\n';
    }
    std::string operator()(const Picture& picture) {
        const auto attributes = " alt=\"" + escaped(picture.words) + "\" src=\"" + dataUri(picture.svg) + "\">";
        return "<img" + attributes + '\n';
    }
    std::string operator()(const BulletList& list) {
        std::string items = "\n";
        for (const auto& item : list.items)
            items += element("li", "", escaped(item)) + '\n';
        return element("ul", list.boxes ? " class=\"steps\"" : "", items) + '\n';
    }
    std::string operator()(const Table& table) {
        std::string head;
        for (std::size_t i = 0; i < table.columns.size(); ++i)
            head += element("th", std::string(" scope=\"col\"") + (table.isNumeric(i) ? " class=\"n\"" : ""),
                            escaped(table.columns[i]));
        std::string body = "\n";
        for (const auto& row : table.rows)
            body += element("tr", "", cells(table, row)) + '\n';
        return element("table", "",
                       '\n' + element("thead", "", element("tr", "", head)) + '\n' + element("tbody", "", body) +
                           '\n') +
               '\n';
    }
    [[nodiscard]] std::string closeSection() const { return sections_ > 1 ? "</section>\n" : ""; }
    [[nodiscard]] std::string closeLast() const { return sections_ > 0 ? "</section>\n" : ""; }

private:
    static std::string cells(const Table& table, const std::vector<std::string>& row) {
        std::string out;
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            if (i >= row.size() || row[i].empty())
                out += element("td", " class=\"write\"", "");
            else
                out += element("td", table.isNumeric(i) ? " class=\"n\"" : "", escaped(row[i]));
        }
        return out;
    }

    const Document& document_;
    int sections_ = 0;
};

} // namespace

std::string writeHtml(const Document& document) {
    std::string out = "<!DOCTYPE html>\n<html lang=\"" + escaped(document.language) + "\">\n<head>\n";
    out += "<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
    out += element("title", "", escaped(document.title)) + '\n';
    out += element("style", "", std::string(style)) + "\n</head>\n<body>\n";
    out += "<header>\n" + element("h1", "", escaped(document.title)) + '\n';
    if (!document.subtitle.empty())
        out += element("p", "", escaped(document.subtitle)) + '\n';
    out += "</header>\n<main>\n";
    HtmlWriter writer(document);
    for (const auto& block : document.blocks)
        out += std::visit(writer, block);
    out += writer.closeLast() + "</main>\n";
    if (!document.footer.empty())
        out += element("footer", "", element("p", "", escaped(document.footer))) + '\n';
    return out + "</body>\n</html>\n";
}

} // namespace staveline::sheet
