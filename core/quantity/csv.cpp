// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/csv.h"

#include "quantity/parse.h"

#include <algorithm>

namespace staveline {
namespace {

using Record = std::vector<std::string>;

tl::unexpected<Fault> badCsv(std::string path, std::string key, std::size_t line) {
    return badInput(std::move(path), say(std::move(key)).with("line", static_cast<std::int64_t>(line)),
                    say("quantity.csv_remedy"));
}

/// Reads RFC 4180 records one after another.
class Scanner {
public:
    explicit Scanner(std::string_view text) : text_(text) {
        constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";
        if (text_.starts_with(byteOrderMark))
            at_ = byteOrderMark.size();
    }
    [[nodiscard]] bool atEnd() const { return at_ == text_.size(); }
    [[nodiscard]] std::size_t line() const { return line_; }

    Result<Record> record() {
        Record fields;
        do {
            auto field = peek('"') ? quoted() : plain();
            if (!field)
                return fail(field.error());
            fields.push_back(std::move(*field));
        } while (take(','));
        if (!endOfRecord())
            return badCsv("", "quantity.csv_character", line_);
        return fields;
    }

private:
    [[nodiscard]] bool peek(char c) const { return at_ < text_.size() && text_[at_] == c; }
    bool take(char c) {
        if (!peek(c))
            return false;
        ++at_;
        line_ += c == '\n' ? 1 : 0;
        return true;
    }
    bool endOfRecord() { return atEnd() || take('\n') || (take('\r') && take('\n')); }

    Result<std::string> plain() {
        const auto end = std::min(text_.find_first_of(",\"\r\n", at_), text_.size());
        const auto field = text_.substr(at_, end - at_);
        at_ = end;
        return std::string(field);
    }
    Result<std::string> quoted() {
        const auto opened = line_;
        std::string field;
        take('"');
        while (!atEnd()) {
            if (take('"') && !peek('"'))
                return field;
            field += text_[at_];
            take(text_[at_]);
        }
        return badCsv("", "quantity.csv_unclosed", opened);
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
};

/// A name as one token of a JSON pointer (RFC 6901).
std::string pointerToken(std::string_view name) {
    std::string token;
    for (const char c : name)
        token += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
    return token;
}

bool hasDuplicate(Record names) {
    std::sort(names.begin(), names.end());
    return std::adjacent_find(names.begin(), names.end()) != names.end();
}

} // namespace

std::string cellPath(std::size_t row, std::string_view column) {
    return '/' + std::to_string(row) + '/' + pointerToken(column);
}

Result<CsvTable> CsvTable::parse(std::string_view text) {
    Scanner scanner(text);
    CsvTable table;
    auto header = scanner.record();
    if (!header)
        return fail(header.error());
    if (*header == Record{""})
        return badCsv("", "quantity.csv_no_header", 1);
    if (hasDuplicate(*header))
        return badCsv("", "quantity.csv_same_name", 1);
    table.header_ = std::move(*header);
    while (!scanner.atEnd()) {
        const auto line = scanner.line();
        auto record = scanner.record();
        const auto path = '/' + std::to_string(table.cells_.size());
        if (!record)
            return fail(under(path, record.error()));
        if (record->size() != table.header_.size())
            return badCsv(path, "quantity.csv_cells", line);
        table.cells_.push_back(std::move(*record));
    }
    return table;
}

std::string withoutFormula(std::string_view text) {
    const bool begins = !text.empty() && std::string_view("=+-@\t\r\n").find(text.front()) != std::string_view::npos;
    const bool number = plainNumber(text.starts_with('+') ? text.substr(1) : text).has_value();
    return (begins && !number ? "'" : "") + std::string(text);
}

bool CsvTable::hasColumn(std::string_view name) const {
    return std::find(header_.begin(), header_.end(), name) != header_.end();
}

std::string_view CsvTable::text(std::size_t row, std::string_view column) const {
    const auto found = std::find(header_.begin(), header_.end(), column);
    if (found == header_.end() || row >= cells_.size())
        return {};
    return cells_[row][static_cast<std::size_t>(found - header_.begin())];
}

Result<double> CsvTable::number(std::size_t row, std::string_view column) const {
    if (!hasColumn(column))
        return badInput(cellPath(row, column), say("quantity.csv_no_column").with("column", std::string(column)),
                        say("quantity.csv_remedy"));
    const auto cell = text(row, column);
    if (const auto value = plainNumber(cell))
        return *value;
    return badInput(cellPath(row, column), say("quantity.not_a_number").with("text", excerpt(cell)),
                    say("quantity.csv_number_form"));
}

Result<double> CsvTable::number(std::size_t row, std::string_view column, double whenEmpty) const {
    if (hasColumn(column) && row < cells_.size() && text(row, column).empty())
        return whenEmpty;
    return number(row, column);
}

} // namespace staveline
