// SPDX-License-Identifier: GPL-3.0-or-later
// What goes in comes out, bit for bit; what does not fit is refused with words at its field.
#include "book/helpers.h"

#include <cmath>
#include <limits>

namespace staveline::book {

namespace {

using Limits = std::numeric_limits<double>;

Schema openSchema() {
    Schema schema{1, 0, {{"value", {{}, {}, {}}, {}, {}}}};
    auto& columns = schema.tables[0].columns;
    columns[0].name = "whole";
    columns[0].type = ColumnType::integer;
    columns[1].name = "real";
    columns[1].type = ColumnType::real;
    columns[2].name = "text";
    return schema;
}

/// Stores one row, closes, opens, reads it.
std::vector<Value> roundTrip(const std::vector<Value>& values) {
    const Scratch scratch;
    const auto file = scratch / "values.cellar";
    {
        const auto book = created(file, openSchema());
        const auto done = book->commit({"value", "value", "", ""}, [&](Writer& writer) -> Result<void> {
            return writer.insert("value", values).map([](RowId) {});
        });
        REQUIRE(keyOf(done).empty());
    }
    const auto book = opened(file, openSchema());
    const auto rows = book->rows("value");
    REQUIRE(rows);
    REQUIRE(rows->size() == 1);
    CHECK(book->damages().empty());
    return rows->front().values;
}

void checkReal(double value) {
    const auto back = std::get<double>(roundTrip({std::int64_t{0}, value, std::string()})[1]);
    CHECK(std::bit_cast<std::uint64_t>(back) == std::bit_cast<std::uint64_t>(value));
}

std::string refusal(const std::vector<Value>& values, std::string* path = nullptr) {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(addVessel(*book, "Plover"));
    const auto done = book->commit({"entry", "entry", "Plover", ""}, [&](Writer& writer) -> Result<void> {
        return writer.insert("entry", values).map([](RowId) {});
    });
    REQUIRE_FALSE(done);
    CHECK(done.error().kind == FaultKind::input);
    CHECK(book->rows("entry")->empty());
    CHECK(book->edits(9).size() == 1);
    if (path != nullptr)
        *path = done.error().path;
    return keyOf(done);
}

} // namespace

TEST_CASE("Every double comes back with its own bits") {
    for (const double value : {0.0, -0.0, 5.0, -7.0, 0.1 + 0.2, 1e300, Limits::denorm_min(), -Limits::denorm_min(),
                               Limits::min(), Limits::max(), Limits::lowest(), 9007199254740993.0, 9.3e18})
        checkReal(value);
}

TEST_CASE("The extremes of whole numbers come back") {
    using Whole = std::numeric_limits<std::int64_t>;
    for (const std::int64_t value : {Whole::min(), Whole::max(), std::int64_t{0}, std::int64_t{-1}})
        CHECK(roundTrip({value, 1.0, std::string()})[0] == Value(value));
}

TEST_CASE("Text comes back whole: empty, with NUL, a megabyte, any bytes") {
    std::string all;
    for (int c = 0; c < 256; ++c)
        all += static_cast<char>(c);
    const std::string megabyte(std::size_t{1} << 20, 'x');
    for (const std::string& text : {std::string(), std::string("a\0b\0", 4), megabyte, all, std::string("Gär\"'{;--")})
        CHECK(roundTrip({std::int64_t{1}, 1.0, text})[2] == Value(text));
}

TEST_CASE("Not measured comes back as not measured") {
    const auto values = roundTrip({Value(), Value(), Value()});
    CHECK(values == std::vector<Value>{Value(), Value(), Value()});
}

TEST_CASE("A row can be given the id it had elsewhere, once") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    const auto addAs = [&](RowId id) {
        return book->commit({"vessel", "vessel", "", ""}, [&](Writer& writer) -> Result<void> {
            return writer.insertAs("vessel", id, {"Plover " + std::to_string(id), 225.0});
        });
    };
    REQUIRE(addAs(7));
    CHECK(book->row("vessel", 7)->values.front() == Value(std::string("Plover 7")));
    CHECK(keyOf(addAs(7)) == "book.id_taken");
    CHECK(addAs(0).error().path == "/id");
    REQUIRE(addAs(3));
    REQUIRE(addVessel(*book, "Knot"));
    CHECK(book->rows("vessel")->back().id == 8); // the next after the highest
    CHECK(book->check()->sound());
}

TEST_CASE("NaN and infinity are refused at their field") {
    std::string path;
    for (const double value : {Limits::quiet_NaN(), Limits::infinity(), -Limits::infinity()}) {
        CHECK(refusal(sample::entry(1, value, ""), &path) == "book.value_not_finite");
        CHECK(path == "/litres");
    }
}

TEST_CASE("A value that does not fit its column is refused at its field") {
    std::string path;
    CHECK(refusal(sample::entry(1, 2e6, ""), &path) == "book.value_range");
    CHECK(path == "/litres");
    CHECK(refusal({std::int64_t{1}, std::string("much"), Value(), std::string()}, &path) == "book.value_type");
    CHECK(path == "/litres");
    CHECK(refusal({std::int64_t{1}, 1.0, 1.5, std::string()}, &path) == "book.value_type");
    CHECK(path == "/minute");
    CHECK(refusal({std::int64_t{1}, 1.0, Value(), Value()}, &path) == "book.value_missing");
    CHECK(path == "/note");
    CHECK(refusal(sample::entry(99, 1.0, ""), &path) == "book.reference_missing");
    CHECK(path == "/vessel");
}

TEST_CASE("The bounds themselves are inside") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(addVessel(*book, "Plover"));
    for (const double value : {1e6, -1e6})
        CHECK(book->commit({"entry", "entry", "", ""}, [&](Writer& writer) -> Result<void> {
            return writer.insert("entry", sample::entry(1, value, "")).map([](RowId) {});
        }));
    CHECK(book->rows("entry")->size() == 2);
}

TEST_CASE("The tables guard themselves, not only the program") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    created(file).reset();
    sqlite3* raw = nullptr;
    REQUIRE(sqlite3_open(file.c_str(), &raw) == SQLITE_OK);
    const auto run = [&](const char* sql) { return sqlite3_exec(raw, sql, nullptr, nullptr, nullptr); };
    CHECK(run("INSERT INTO vessel VALUES (1, 'Plover', 225.0, 0)") == SQLITE_OK);
    CHECK(run("INSERT INTO vessel VALUES (2, 'Wren', -1.0, 0)") == SQLITE_CONSTRAINT);   // range
    CHECK(run("INSERT INTO vessel VALUES (2, 'Wren', 225, 0)") == SQLITE_CONSTRAINT);    // whole, not real
    CHECK(run("INSERT INTO vessel VALUES (2, 'Wren', 'much', 0)") == SQLITE_CONSTRAINT); // text, not real
    CHECK(run("INSERT INTO vessel VALUES (2, NULL, 1.0, 0)") == SQLITE_CONSTRAINT);      // required
    CHECK(run("INSERT INTO vessel VALUES (2, 'Plover', 1.0, 0)") == SQLITE_CONSTRAINT);  // unique
    CHECK(run("INSERT INTO vessel VALUES (2, 'Wren', 1.0, NULL)") == SQLITE_CONSTRAINT); // digest
    CHECK(run("INSERT INTO vessel VALUES (2, 'Wren', 1.0, 'x')") == SQLITE_CONSTRAINT);  // STRICT
    CHECK(run("PRAGMA foreign_keys=ON; INSERT INTO twin VALUES (1, 9, 1.0, 1, '', 0)") == SQLITE_CONSTRAINT);
    sqlite3_close(raw);
}

TEST_CASE("A taken name, an entry still used and an entry not there are told apart") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(addVessel(*book, "Plover"));
    const auto again = addVessel(*book, "Plover");
    CHECK(keyOf(again) == "book.not_unique");
    CHECK(again.error().path == "/name");
    REQUIRE(book->commit({"e", "e", "", ""},
                         [](Writer& writer) { return sample::insertBoth(writer, sample::entry(1, 1, "")); }));
    const auto remove = [&](RowId id) {
        return keyOf(book->commit({"r", "r", "", ""}, [&](Writer& writer) { return writer.remove("vessel", id); }));
    };
    CHECK(remove(1) == "book.still_used");
    CHECK(remove(2) == "book.no_such_row");
    CHECK(keyOf(book->row("vessel", 2)) == "book.no_such_row");
    CHECK(keyOf(book->row("barrel", 1)) == "book.no_such_table");
    CHECK(keyOf(book->rowsWhere("vessel", "colour", std::string("red"))) == "book.no_such_column");
    CHECK(keyOf(book->rowsWhere("vessel", "litres", std::string("much"))) == "book.value_type");
}

TEST_CASE("Rows are found by value and come in order") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(addVessel(*book, "Plover"));
    REQUIRE(addVessel(*book, "Wren"));
    REQUIRE(book->commit({"e", "e", "", ""}, [](Writer& writer) -> Result<void> {
        for (const auto& [vessel, minute] : {std::pair<RowId, std::int64_t>{1, 9}, {2, 1}, {1, 3}, {1, 9}, {1, -4}})
            if (auto done = writer.insert("entry", {vessel, Value(), minute, std::string("n")}); !done)
                return fail(done.error());
        return {};
    }));
    const auto ids = [](const Result<std::vector<Row>>& rows) {
        std::vector<RowId> all;
        for (const Row& row : *rows)
            all.push_back(row.id);
        return all;
    };
    CHECK(ids(book->rowsWhere("entry", "vessel", std::int64_t{1}, {"minute"})) == std::vector<RowId>{5, 3, 1, 4});
    CHECK(ids(book->rowsWhere("entry", "vessel", std::int64_t{1})) == std::vector<RowId>{1, 3, 4, 5});
    CHECK(ids(book->rowsWhere("entry", "litres", Value())).size() == 5);
    CHECK(ids(book->rowsWhere("entry", "id", std::int64_t{3})) == std::vector<RowId>{3});
    CHECK(ids(book->rowsWhere("vessel", "name", std::string("Wren"))) == std::vector<RowId>{2});
    CHECK(ids(book->rowsWhere("entry", "vessel", std::int64_t{3})).empty());
    CHECK(book->row("vessel", 2)->values[0] == Value(std::string("Wren")));
}

} // namespace staveline::book
