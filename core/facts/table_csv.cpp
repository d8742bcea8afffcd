// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/table_csv.h"

#include "facts/csv_records.h"
#include "facts/field_kinds.h"
#include "facts/json_syntax.h"
#include "quantity/day_limits.h"

#include <algorithm>
#include <charconv>
#include <fmt/core.h>
#include <set>

namespace staveline::facts {
namespace {

using book::Column;
using book::ColumnType;
using book::Row;
using book::TableSpec;
using book::Value;

constexpr std::string_view ending = ".csv";
constexpr std::string_view contentsName = "tables.csv"; ///< which tables there are, and their version
using NamesById = std::map<book::RowId, std::string>;
using IdsByName = std::map<std::string, book::RowId, std::less<>>;

/// Who is referred to, by name; a damaged book may refer to nobody.
std::string nameOf(book::RowId id, const Column& column, const Names& names) {
    const NamesById& all = column.references == "vessel" ? names.vesselNames : names.brewNames;
    const auto at = all.find(id);
    return at == all.end() ? std::string() : at->second;
}

std::optional<std::string> cellOf(const Value& value, const Column& column, const Names& names) {
    if (const auto* whole = std::get_if<std::int64_t>(&value))
        return column.references.empty() ? fmt::format("{}", *whole) : guarded(nameOf(*whole, column, names));
    if (const auto* real = std::get_if<double>(&value))
        return fmt::format("{}", *real);
    if (const auto* text = std::get_if<std::string>(&value))
        return guarded(*text);
    return std::nullopt;
}

std::string tableText(const TableSpec& table, const std::vector<Row>& rows, const Names& names) {
    std::vector<std::optional<std::string>> cells = {"id"};
    for (const auto& column : table.columns)
        cells.emplace_back(column.name);
    std::string text = csvLine(cells);
    for (const auto& row : rows) {
        cells.assign(1, std::to_string(row.id));
        for (std::size_t i = 0; i < row.values.size(); ++i)
            cells.push_back(cellOf(row.values[i], table.columns[i], names));
        text += csvLine(cells);
    }
    return text;
}

/// The names that other tables refer to by id.
void takeNames(const TableSpec& table, const std::vector<Row>& rows, Names& names) {
    if (table.name != "vessel" && table.name != "brew")
        return;
    const auto at = std::find_if(table.columns.begin(), table.columns.end(),
                                 [](const Column& column) { return column.name == "name"; });
    const auto place = static_cast<std::size_t>(at - table.columns.begin());
    for (const auto& row : rows)
        if (const auto* name = std::get_if<std::string>(&row.values[place]))
            table.name == "vessel" ? names.addVessel(row.id, *name) : names.addBrew(row.id, *name);
}

template <class Number> std::optional<Number> wholeCell(std::string_view cell) {
    Number number{};
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), number);
    if (error != std::errc() || end != cell.data() + cell.size())
        return std::nullopt;
    return number;
}

/// Where a comma does not part cells it is the decimal mark of a spreadsheet.
std::optional<double> realCell(std::string cell, char separator) {
    const auto comma = separator == ',' || cell.find('.') != cell.npos ? cell.npos : cell.find(',');
    if (comma != cell.npos)
        cell[comma] = '.';
    return plainNumber(cell);
}

Fault badCell(std::string path, std::string_view cell) {
    return {FaultKind::input, std::move(path), say("facts.csv_cell").with("text", excerpt(cell)),
            say("facts.csv_cell.remedy")};
}

/// One cell as its column has it; none: it cannot be.
std::optional<Value> valueOf(const Column& column, const std::optional<std::string>& cell, const Names& names,
                             char separator) {
    const bool isText = column.type == ColumnType::text && column.references.empty();
    if (isText && (cell || column.required)) // a spreadsheet that saves the file again drops the two quotes
        return Value{withoutGuard(cell.value_or(""))};
    if (!cell || cell->empty())
        return Value{};
    if (!column.references.empty()) {
        const IdsByName& ids = column.references == "vessel" ? names.vessels : names.brews;
        const auto at = ids.find(withoutGuard(*cell));
        return at == ids.end() ? std::nullopt : std::optional(Value{at->second});
    }
    if (column.type == ColumnType::integer) {
        const auto whole = wholeCell<std::int64_t>(*cell);
        return whole ? std::optional(Value{*whole}) : std::nullopt;
    }
    if (column.type == ColumnType::real) {
        const auto number = realCell(*cell, separator);
        return number ? std::optional(Value{*number}) : std::nullopt;
    }
    return storedDay(*cell) ? std::optional(Value{*cell}) : std::nullopt;
}

/// Which fields are kept as JSON.
struct NestedFields : PassesBy {
    std::set<std::string_view> names;
    template <class T> void list(const Field& f, std::vector<T>&) { names.insert(f.name); }
    template <class T> void nested(const Field& f, T&) { names.insert(f.name); }
    template <class T> void object(const Field& f, std::optional<T>&) { names.insert(f.name); }
};

/// What the columns cannot say: ranges inside lists, required fields, names that may be.
template <class F> Result<void> checkRow(const TableSpec& table, const Row& row, const Names& names) {
    F fact{};
    NestedFields nested;
    describe(nested, fact);
    for (std::size_t i = 0; i < row.values.size(); ++i)
        if (const auto* text = std::get_if<std::string>(&row.values[i]);
            text && nested.names.contains(table.columns[i].name))
            if (auto sound = checkJson(*text); !sound)
                return fail(under("/" + table.columns[i].name, sound.error()));
    return checkFields(fromRow<F>(row, names));
}

Result<void> checkAny(const TableSpec& table, const Row& row, const Names& names) {
    Result<void> checked;
    forEachFact([&]<class F>(std::type_identity<F>) {
        if constexpr (factTraits<F>.stored())
            if (table.name == tableOf<F>)
                checked = checkRow<F>(table, row, names);
    });
    return checked;
}

/// What an export says that it holds.
struct Contents {
    std::int64_t version = tablesMinor;
    std::set<std::string, std::less<>> files;
    [[nodiscard]] bool isOlder() const { return version < tablesMinor; }
};

class TableReader {
public:
    /// A table of an older version may lack columns that need no value.
    TableReader(const TableSpec& table, Names& names, bool isOlder) : table_(table), names_(names), isOlder_(isOlder) {}

    Result<std::vector<Row>> read(std::string_view text) {
        auto sheet = readSheet(text);
        if (!sheet)
            return fail(sheet.error());
        const auto& records = sheet->records;
        separator_ = sheet->separator;
        if (records.empty())
            return badInput("/1", say("facts.csv_empty"), say("facts.csv_cell.remedy"));
        if (auto header = readHeader(records.front()); !header)
            return fail(under("/" + std::to_string(records.front().line), header.error()));
        std::vector<Row> rows;
        for (auto record = records.begin() + 1; record != records.end(); ++record) {
            auto row = readRow(*record);
            if (!row)
                return fail(under("/" + std::to_string(record->line), row.error()));
            rows.push_back(*std::move(row));
        }
        takeNames(table_, rows, names_);
        return rows;
    }
    /// After the names of all tables are known that these rows may refer to.
    Result<void> check(const std::vector<Row>& rows) const {
        for (const auto& row : rows)
            if (auto sound = checkAny(table_, row, names_); !sound)
                return fail(under("/id " + std::to_string(row.id), sound.error()));
        return {};
    }

private:
    Result<void> readHeader(const CsvRecord& header) {
        std::vector<std::string> known = {"id"};
        for (const auto& column : table_.columns)
            known.push_back(column.name);
        for (std::size_t i = 0; i < header.cells.size(); ++i) {
            const std::string name = header.cells[i].value_or("");
            if (std::find(known.begin(), known.end(), name) == known.end() || !places_.try_emplace(name, i).second)
                return badInput("/" + excerpt(name), say("desk.unknown_field").with("field", excerpt(name)),
                                offerName(name, known));
        }
        width_ = header.cells.size();
        for (const auto& name : known)
            if (!places_.contains(name) && !mayLack(name))
                return badInput("/" + name, say("facts.csv_no_column").with("field", name),
                                say("facts.csv_missing.remedy"));
        return {};
    }
    [[nodiscard]] bool mayLack(const std::string& name) const {
        const auto column = std::find_if(table_.columns.begin(), table_.columns.end(),
                                         [&](const Column& each) { return each.name == name; });
        return isOlder_ && column != table_.columns.end() && !column->required;
    }
    [[nodiscard]] std::optional<std::string> cell(const CsvRecord& record, const std::string& column) const {
        const auto at = places_.find(column);
        return at == places_.end() ? std::nullopt : record.cells[at->second];
    }
    Result<Row> readRow(const CsvRecord& record) {
        if (record.cells.size() != width_)
            return badInput("", say("facts.csv_width"), say("facts.csv_cell.remedy"));
        const auto id = wholeCell<book::RowId>(cell(record, "id").value_or(""));
        if (!id || *id < 1 || !ids_.insert(*id).second)
            return fail(badCell("/id", cell(record, "id").value_or("")));
        Row row{*id, {}};
        for (const auto& column : table_.columns) {
            const auto given = cell(record, column.name);
            auto value = valueOf(column, given, names_, separator_);
            if (!value)
                return fail(badCell("/" + column.name, given.value_or("")));
            row.values.push_back(*std::move(value));
        }
        return row;
    }

    const TableSpec& table_;
    Names& names_;
    const bool isOlder_;
    std::map<std::string, std::size_t, std::less<>> places_;
    std::size_t width_ = 0;
    char separator_ = ',';
    std::set<book::RowId> ids_;
};

std::string fileOf(const TableSpec& table) {
    return table.name + std::string(ending);
}

const TextFile* fileNamed(const std::vector<TextFile>& files, std::string_view name) {
    const auto at = std::find_if(files.begin(), files.end(), [&](const TextFile& each) { return each.name == name; });
    return at == files.end() ? nullptr : &*at;
}

TextFile contentsOf(const std::vector<TextFile>& tables) {
    std::string text = csvLine({"version", "file"});
    for (const auto& table : tables)
        text += csvLine({std::to_string(tablesMinor), table.name});
    return {std::string(contentsName), text};
}

/// Where nothing is said all that this version has is to be there.
Result<Contents> readContents(const std::vector<TextFile>& files) {
    Contents contents;
    const TextFile* file = fileNamed(files, contentsName);
    if (!file)
        return contents;
    const auto sheet = readSheet(file->text);
    if (!sheet)
        return fail(sheet.error());
    for (const auto& record : sheet->records) {
        if (&record == &sheet->records.front())
            continue; // the heading
        const std::string at = "/" + std::to_string(record.line);
        const std::string given = record.cells.front().value_or("");
        const auto version = wholeCell<std::int64_t>(given);
        const bool isSame = contents.files.empty() || version == contents.version;
        if (!version || *version < 0 || *version > tablesMinor || !isSame)
            return fail(badCell(at + "/version", given));
        if (record.cells.size() < 2)
            return badInput(at, say("facts.csv_width"), say("facts.csv_cell.remedy"));
        contents.version = *version;
        contents.files.insert(record.cells[1].value_or(""));
    }
    return contents;
}

/// The file of a table; null: an older export that never had it.
Result<const TextFile*> fileFor(const TableSpec& table, const std::vector<TextFile>& files, const Contents& contents) {
    const std::string name = fileOf(table);
    const TextFile* file = fileNamed(files, name);
    if (!file && (!contents.isOlder() || contents.files.contains(name)))
        return badInput("/" + name, say("facts.no_table").with("file", name), say("facts.csv_missing.remedy"));
    return file;
}

} // namespace

Result<std::vector<TextFile>> writeTables(const book::Book& book) {
    std::vector<TextFile> files;
    Names names;
    for (const auto& table : cellarSchema().tables) {
        const auto rows = book.rows(table.name);
        if (!rows)
            return fail(rows.error());
        takeNames(table, *rows, names);
        files.push_back({fileOf(table), tableText(table, *rows, names)});
    }
    files.push_back(contentsOf(files));
    return files;
}

Result<TableRows> readTables(const std::vector<TextFile>& files) {
    const auto& tables = cellarSchema().tables;
    if (std::none_of(tables.begin(), tables.end(), [&](const auto& each) { return fileNamed(files, fileOf(each)); }))
        return badInput("", say("facts.no_tables"), say("facts.no_tables.remedy"));
    const auto contents = readContents(files);
    if (!contents)
        return fail(under("/" + std::string(contentsName), contents.error()));
    TableRows all;
    Names names;
    for (const auto& table : tables) {
        const auto file = fileFor(table, files, *contents);
        if (!file)
            return fail(file.error());
        if (!*file)
            continue;
        TableReader reader(table, names, contents->isOlder());
        auto rows = reader.read((*file)->text);
        auto sound = rows ? reader.check(*rows) : Result<void>(fail(rows.error()));
        if (!sound)
            return fail(under("/" + (*file)->name, sound.error()));
        all.emplace(table.name, *std::move(rows));
    }
    return all;
}

} // namespace staveline::facts
