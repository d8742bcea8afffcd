// SPDX-License-Identifier: GPL-3.0-or-later
// A small schema of every kind of column, shared by the tests and by the process they kill. Entries and their twins are
// always written together, so that half an edit would show.
#pragma once

#include "book/book.h"

#include <bit>
#include <random>

namespace staveline::book::sample {

inline std::vector<Column> entryColumns() {
    return {{.name = "vessel",
             .type = ColumnType::integer,
             .required = true,
             .low = {},
             .high = {},
             .references = "vessel"},
            {.name = "litres", .type = ColumnType::real, .required = false, .low = -1e6, .high = 1e6, .references = ""},
            {.name = "minute", .type = ColumnType::integer, .required = false, .low = {}, .high = {}, .references = ""},
            {.name = "note", .type = ColumnType::text, .required = true, .low = {}, .high = {}, .references = ""}};
}

inline Schema schema() {
    Column name{.name = "name", .type = ColumnType::text, .required = true, .low = {}, .high = {}, .references = ""};
    Column litres{
        .name = "litres", .type = ColumnType::real, .required = false, .low = 0, .high = {}, .references = ""};
    return {1,
            0,
            {{"vessel", {name, litres}, {{"name"}}, {}},
             {"entry", entryColumns(), {}, {{"vessel", "minute"}}},
             {"twin", entryColumns(), {}, {}}}};
}

/// What a minor version adds: a nullable column in the middle, and a table.
inline Schema nextMinor() {
    Schema next = schema();
    next.minor = 1;
    auto& columns = next.tables[1].columns;
    columns.insert(columns.begin() + 1, columns[1]);
    columns[1].name = "ph";
    next.tables.push_back({"lot", {next.tables[0].columns[0]}, {{"name"}}, {}});
    return next;
}

inline std::vector<Value> entry(RowId vessel, double litres, const std::string& note) {
    return {vessel, litres, std::int64_t{7}, note};
}

inline void append(std::string& text, const Value& value) {
    text += static_cast<char>('0' + value.index());
    if (const auto* whole = std::get_if<std::int64_t>(&value))
        text += std::to_string(*whole);
    if (const auto* real = std::get_if<double>(&value))
        text += std::to_string(std::bit_cast<std::uint64_t>(*real));
    if (const auto* words = std::get_if<std::string>(&value))
        text += std::to_string(words->size()) + ":" + *words;
    text += ',';
}

/// Every row of every table of the schema, bit for bit.
inline std::string dump(const Book& book, const Schema& of = schema()) {
    std::string text;
    for (const TableSpec& table : of.tables) {
        const auto rows = book.rows(table.name);
        if (!rows)
            return "cannot be read: " + rows.error().cause.key;
        text.append("\n").append(table.name);
        for (const Row& row : *rows) {
            text.append("\n").append(std::to_string(row.id)).append("=");
            for (const Value& value : row.values)
                append(text, value);
        }
    }
    return text;
}

/// FNV-1a, 64 bits.
inline std::uint64_t fingerprint(const std::string& text) {
    std::uint64_t hash = 0xcbf29ce484222325ULL;
    for (const char c : text)
        hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
    return hash;
}

inline std::size_t below(std::mt19937_64& random, std::size_t limit) {
    return static_cast<std::size_t>(random() % limit);
}

inline double anyNumber(std::mt19937_64& random) {
    static const std::vector<double> awkward = {0.0, -0.0, 0.1 + 0.2, 5.0, 4.9e-324, -1.0 / 3.0, 999999.999999};
    const auto pick = below(random, awkward.size() * 2);
    return pick < awkward.size() ? awkward[pick] : static_cast<double>(random()) / 1.9e13;
}

inline std::vector<Value> anyEntry(std::mt19937_64& random) {
    const std::string note(below(random, 60), static_cast<char>(below(random, 128)));
    auto values = entry(1, anyNumber(random), note);
    if (below(random, 4) == 0)
        values[1] = {};
    values[2] = static_cast<std::int64_t>(random());
    return values;
}

inline Result<void> insertBoth(Writer& writer, const std::vector<Value>& values) {
    if (auto done = writer.insert("entry", values); !done)
        return fail(done.error());
    if (auto done = writer.insert("twin", values); !done)
        return fail(done.error());
    return {};
}

inline Result<void> updateBoth(Writer& writer, RowId id, const std::vector<Value>& values) {
    if (auto done = writer.update("entry", id, values); !done)
        return done;
    return writer.update("twin", id, values);
}

inline Result<void> removeBoth(Writer& writer, RowId id) {
    if (auto done = writer.remove("entry", id); !done)
        return done;
    return writer.remove("twin", id);
}

/// `ids` are the entries there before the edit; one that is removed is taken out of the list.
inline Result<void> randomChange(Writer& writer, std::vector<RowId>& ids, std::mt19937_64& random) {
    const auto what = below(random, ids.size() > 40 ? 2 : 3);
    if (ids.empty() || what == 2)
        return insertBoth(writer, anyEntry(random));
    const auto pick = below(random, ids.size());
    const RowId id = ids[pick];
    if (what == 1)
        return updateBoth(writer, id, anyEntry(random));
    ids.erase(ids.begin() + static_cast<std::ptrdiff_t>(pick));
    return removeBoth(writer, id);
}

inline Result<void> randomBody(Writer& writer, bool first, std::vector<RowId> ids, std::mt19937_64& random) {
    if (first)
        if (auto vessel = writer.insert("vessel", {std::string("Plover"), 225.0}); !vessel)
            return fail(vessel.error());
    for (auto changes = 1 + below(random, 4); changes > 0; --changes)
        if (auto changed = randomChange(writer, ids, random); !changed)
            return changed;
    return {};
}

/// One edit of a few rows put in, changed and taken out.
inline Result<std::int64_t> randomEdit(Book& book, std::mt19937_64& random) {
    const auto entries = book.rows("entry");
    const auto vessels = book.rows("vessel");
    if (!entries || !vessels)
        return fail(entries ? vessels.error() : entries.error());
    std::vector<RowId> ids;
    for (const Row& row : *entries)
        ids.push_back(row.id);
    return book.commit({"a random edit", "random", "Plover", ""},
                       [&](Writer& writer) { return randomBody(writer, vessels->empty(), ids, random); });
}

/// An edit, an undo or a redo; nothing to undo or redo counts as done.
inline Result<void> randomStep(Book& book, std::mt19937_64& random) {
    const auto what = below(random, 10);
    if (what < 6)
        return randomEdit(book, random).map([](std::int64_t) {});
    const auto moved = what < 8 ? book.undo() : book.redo();
    if (!moved && moved.error().kind != FaultKind::notPossible)
        return fail(moved.error());
    return {};
}

} // namespace staveline::book::sample
