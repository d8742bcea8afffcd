// SPDX-License-Identifier: GPL-3.0-or-later
// The cellar book: a durable table store in one SQLite file. Every commit is one transaction and one edit; edits are
// undone and redone across restarts by inverted changesets; every row carries a digest, every table a tally.
// It knows tables and rows, not beer: the desk gives it a schema. One thread uses a book at a time; several programs,
// or several of these objects, may share one file.
#pragma once

#include "quantity/day.h"

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace staveline::book {

/// Every bit is kept: the sign of zero, text with NUL. NaN and infinity are refused.
using Value = std::variant<std::monostate, std::int64_t, double, std::string>;
enum class ColumnType { integer, real, text, day }; ///< day: a text like 2026-03-02

struct Column {
    std::string name;
    ColumnType type = ColumnType::text;
    bool required = false;
    std::optional<double> low, high; ///< CHECK range for numbers
    std::string references;          ///< "table": foreign key to its id, ON DELETE RESTRICT
};
struct TableSpec {
    std::string name;
    std::vector<Column> columns;                   ///< beside `id` and `digest`, which the book adds
    std::vector<std::vector<std::string>> unique;  ///< column sets
    std::vector<std::vector<std::string>> indexes; ///< column sets
};
struct Schema {
    int major = 1, minor = 0; ///< user_version = 100 * major + minor; minor only adds tables or nullable columns
    std::vector<TableSpec> tables;
};

using RowId = std::int64_t;
struct Row {
    RowId id = 0;
    std::vector<Value> values; ///< in the order of TableSpec::columns
};

struct RowKey {
    std::string table;
    RowId id = 0;
    bool operator==(const RowKey&) const = default;
};

/// What an edit is called: "draw-off of 60 L from Plover".
struct EditLabel {
    std::string text;
    std::string kind;     ///< "draw_off"
    std::string subject;  ///< vessel key; empty: the book
    std::string mergeKey; ///< same key, same process, head unmoved, within 2 s: merged into the last edit; empty: never
};

/// Writes inside one commit. A refused value (missing, wrong type, out of range, not finite, not unique, a reference
/// to nothing) is a fault at "/<column>" that the body may answer; after a storage fault the commit fails whatever the
/// body does.
class Writer {
public:
    virtual ~Writer() = default;
    virtual Result<RowId> insert(const std::string& table, const std::vector<Value>& values) = 0;
    /// With the id it had in another book. One that is taken, or below 1, is refused at "/id".
    virtual Result<void> insertAs(const std::string& table, RowId id, const std::vector<Value>& values) = 0;
    virtual Result<void> update(const std::string& table, RowId id, const std::vector<Value>& values) = 0;
    virtual Result<void> remove(const std::string& table, RowId id) = 0;
};

struct EditInfo {
    std::int64_t id = 0;
    EditLabel label;
    std::string atUtc; ///< ISO 8601
    bool applied = true;
    std::vector<RowKey> rows = {}; ///< what undo() or redo() changed; some may be gone now
};

struct Damage {
    std::string table;
    RowId row = 0; ///< 0: the table as a whole
    Message what;
};
struct CheckReport {
    std::vector<Damage> damages;
    std::int64_t rowsChecked = 0;
    [[nodiscard]] bool sound() const { return damages.empty(); }
};

enum class OpenMode { readWrite, readOnly };

/// The instant of an edit, for its UTC stamp and the merging of typing; empty: this machine's clock.
using Now = std::function<std::chrono::system_clock::time_point()>;

class Book {
public:
    /// The file appears whole or not at all; an existing one is never replaced.
    static Result<std::unique_ptr<Book>> create(const std::filesystem::path& path, const Schema& schema, Now now = {});
    /// Refuses with words: no file, a folder, an empty file, not a book (application_id), another major version.
    /// Read-only with a notice: a newer minor version, a folder or file that cannot be written, damage. An older minor
    /// is migrated after a verified backup beside the file ("plover.v1.0.cellar"). Scans no table.
    static Result<std::unique_ptr<Book>> open(const std::filesystem::path& path, const Schema& schema,
                                              OpenMode mode = OpenMode::readWrite, Now now = {});
    virtual ~Book() = default;

    [[nodiscard]] virtual bool readOnly() const = 0;
    [[nodiscard]] virtual std::vector<Message> notices() const = 0;
    [[nodiscard]] virtual std::filesystem::path path() const = 0;

    /// All rows, or those with `column` = `value`, ordered by `orderBy` columns then id. Digests are verified (rows()
    /// also compares the table's tally); a row that fails is still returned, in the types of its columns, reported by
    /// damages(), and the book turns read-only.
    [[nodiscard]] virtual Result<std::vector<Row>> rows(const std::string& table) const = 0;
    [[nodiscard]] virtual Result<std::vector<Row>> rowsWhere(const std::string& table, const std::string& column,
                                                             const Value& value,
                                                             const std::vector<std::string>& orderBy = {}) const = 0;
    [[nodiscard]] virtual Result<Row> row(const std::string& table, RowId id) const = 0;
    [[nodiscard]] virtual std::vector<Damage> damages() const = 0;

    /// One transaction, one edit. A body that changes nothing leaves no edit (returns the head; 0 in an empty book).
    /// Typing that takes its own merged edit back to where it began is an undo of that edit. A head moved by another
    /// program: fault of kind changedElsewhere, nothing written; call reload() and try again.
    virtual Result<std::int64_t> commit(const EditLabel& label, const std::function<Result<void>(Writer&)>& body) = 0;
    virtual Result<EditInfo> undo() = 0;
    virtual Result<EditInfo> redo() = 0;
    [[nodiscard]] virtual std::optional<EditInfo> undoable() const = 0;
    [[nodiscard]] virtual std::optional<EditInfo> redoable() const = 0;
    /// The `last` newest edits, newest first; those undone are not applied.
    [[nodiscard]] virtual std::vector<EditInfo> edits(int last) const = 0;

    /// Always the same for this book and its copies, and no other's: the instant of its first step and what it stored.
    /// Empty: nothing in it.
    [[nodiscard]] virtual std::string identity() const = 0;
    /// Grows with every step seen by this object, own or foreign.
    [[nodiscard]] virtual std::int64_t revision() const = 0;
    /// True when another program has written since; cheap, for polling.
    [[nodiscard]] virtual bool changedElsewhere() const = 0;
    virtual void reload() = 0;

    /// Integrity, foreign keys, digests and tallies of the whole book.
    [[nodiscard]] virtual Result<CheckReport> check() const = 0;
    /// A verified copy by the backup interface; written beside the target and renamed into place.
    virtual Result<void> backup(const std::filesystem::path& to) const = 0;
};

} // namespace staveline::book
