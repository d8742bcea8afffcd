// SPDX-License-Identifier: GPL-3.0-or-later
// The tables a file really holds, beside what the schema asks for. A file of an older minor version lacks columns,
// one of a newer minor has more; digests cover what is in the file. Private to the book.
#pragma once

#include "book/connection.h"

#include <map>

namespace staveline::book {

struct Table {
    std::string name;
    const TableSpec* spec = nullptr;  ///< none: the edit log, or a table of a newer version
    std::vector<std::string> columns; ///< in the file's order, without id and digest: the places of the digest
    std::vector<std::optional<std::size_t>> places; ///< of each column of the spec; none: the file has no such column
    std::string select;                             ///< "SELECT id, columns, digest FROM name"

    [[nodiscard]] int digestIndex() const { return static_cast<int>(columns.size()) + 1; }
    /// A column by name for use in a query; NULL when the file has none. Refuses what the schema does not know.
    [[nodiscard]] std::string reference(const std::string& column) const;
};

/// All tables with an id and a digest, the edit log among them.
class Tables {
public:
    /// `schema` must outlive the result.
    static Tables read(Connection& connection, const Schema& schema);

    /// None: the schema knows the table, but the file is older. Refuses a name the schema does not know.
    [[nodiscard]] const Table* find(const std::string& name) const;
    [[nodiscard]] const Table& require(const std::string& name) const;
    [[nodiscard]] const Table& edit() const { return all_.at("edit"); }
    [[nodiscard]] const Table& step() const { return all_.at("step"); }
    [[nodiscard]] const std::map<std::string, Table>& all() const { return all_; }
    /// False when a table or column the schema needs is not there; an older file may lack what a minor version adds.
    [[nodiscard]] bool fit(const Schema& schema, bool older) const;

private:
    std::map<std::string, Table> all_;
    const Schema* schema_ = nullptr;
};

/// Kept by the book itself, not by the schema.
[[nodiscard]] bool isLogTable(const std::string& name);

} // namespace staveline::book
