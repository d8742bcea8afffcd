// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/csv_records.h"

#include "quantity/csv.h"

#include <algorithm>
#include <csv.h>
#include <memory>

namespace staveline::facts {
namespace {

/// What the library tells while it reads.
struct Reading {
    std::vector<CsvRecord> records;
    CsvRecord open;
    std::size_t line = 1; ///< in hand

    void cell(const char* text, std::size_t size) {
        if (open.cells.empty())
            open.line = line;
        open.cells.push_back(text ? std::optional(std::string(text, size)) : std::nullopt);
    }
    void end() {
        records.push_back(std::move(open));
        open = {};
    }
};

void onCell(void* text, std::size_t size, void* reading) {
    static_cast<Reading*>(reading)->cell(static_cast<const char*>(text), size);
}
void onEnd(int, void* reading) {
    static_cast<Reading*>(reading)->end();
}
/// Spaces belong to their cell (RFC 4180, 2.4).
int noSpace(unsigned char) {
    return 0;
}

class Parser {
public:
    explicit Parser(char separator) {
        csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI | CSV_EMPTY_IS_NULL);
        csv_set_delim(&parser_, static_cast<unsigned char>(separator));
        csv_set_space_func(&parser_, noSpace);
    }
    ~Parser() { csv_free(&parser_); }
    Parser(const Parser&) = delete;
    Parser& operator=(const Parser&) = delete;

    bool feed(std::string_view text, Reading& reading) {
        return csv_parse(&parser_, text.data(), text.size(), onCell, onEnd, &reading) == text.size();
    }
    bool finish(Reading& reading) { return csv_fini(&parser_, onCell, onEnd, &reading) == 0; }

private:
    csv_parser parser_{};
};

tl::unexpected<Fault> badQuotes(std::size_t line) {
    return badInput("/" + std::to_string(line), say("facts.csv_quotes").with("line", static_cast<std::int64_t>(line)),
                    say("facts.csv_quotes.remedy"));
}

std::string_view withoutMark(std::string_view text) {
    constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";
    return text.substr(text.starts_with(byteOrderMark) ? byteOrderMark.size() : 0);
}

std::string_view firstLine(std::string_view text) {
    return text.substr(0, text.find_first_of("\r\n"));
}

/// "sep=;", for spreadsheets.
std::optional<char> saidSeparator(std::string_view text) {
    constexpr std::string_view says = "sep=";
    const auto line = firstLine(withoutMark(text));
    const bool said = line.starts_with(says) && line.size() == says.size() + 1 && line.back() != '"';
    return said ? std::optional(line.back()) : std::nullopt;
}

std::size_t countUnquoted(std::string_view line, char wanted) {
    bool quoted = false;
    return static_cast<std::size_t>(std::count_if(line.begin(), line.end(), [&](char c) {
        quoted = quoted != (c == '"');
        return !quoted && c == wanted;
    }));
}

char likelySeparator(std::string_view text) {
    text = withoutMark(text);
    text.remove_prefix(std::min(text.find_first_not_of(",; \t\r\n"), text.size()));
    const auto line = firstLine(text);
    char likely = ',';
    for (const char each : {';', '\t'})
        if (countUnquoted(line, each) > countUnquoted(line, likely))
            likely = each;
    return likely;
}

bool saysNothing(const CsvRecord& record) {
    return std::all_of(record.cells.begin(), record.cells.end(),
                       [](const auto& cell) { return !cell || cell->find_first_not_of(' ') == cell->npos; });
}

} // namespace

Result<CsvSheet> readSheet(std::string_view text) {
    const auto said = saidSeparator(text);
    const char separator = said.value_or(likelySeparator(text));
    auto records = readCsv(text, separator);
    if (!records)
        return fail(records.error());
    if (said)
        records->erase(records->begin());
    std::erase_if(*records, saysNothing);
    return CsvSheet{separator, *std::move(records)};
}

Result<std::vector<CsvRecord>> readCsv(std::string_view text, char separator) {
    text = withoutMark(text);
    Parser parser(separator);
    Reading reading;
    while (!text.empty()) { // a line at a time, so that a record knows where it began
        const auto line = text.substr(0, text.find('\n') == text.npos ? text.size() : text.find('\n') + 1);
        if (!parser.feed(line, reading))
            return badQuotes(reading.line);
        text.remove_prefix(line.size());
        ++reading.line;
    }
    if (!parser.finish(reading))
        return badQuotes(reading.open.cells.empty() ? reading.line - 1 : reading.open.line);
    return std::move(reading.records);
}

std::string quotedCell(std::string_view text) {
    std::string out = "\"";
    for (const char c : text)
        out += c == '"' ? "\"\"" : std::string(1, c);
    return out + '"';
}

std::string csvCell(std::string_view text) {
    const bool plain = !text.empty() && text.find_first_of(",;\t\"\r\n") == std::string_view::npos;
    return plain ? std::string(text) : quotedCell(text);
}

std::string csvLine(const std::vector<std::optional<std::string>>& cells) {
    std::string out;
    for (std::size_t i = 0; i < cells.size(); ++i)
        out += (i == 0 ? "" : ",") + (cells[i] ? csvCell(*cells[i]) : "");
    return out + "\r\n";
}

std::string guarded(std::string_view text) {
    return text.starts_with('\'') ? "'" + std::string(text) : withoutFormula(text);
}

std::string withoutGuard(std::string_view cell) {
    constexpr std::string_view guardedStarts = "=+-@\t\r\n'";
    if (cell.size() > 1 && cell.front() == '\'' && guardedStarts.find(cell[1]) != std::string_view::npos)
        cell.remove_prefix(1);
    return std::string(cell);
}

} // namespace staveline::facts
