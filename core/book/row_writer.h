// SPDX-License-Identifier: GPL-3.0-or-later
// Writes the schema's rows, each with its digest. Private to the book.
#pragma once

#include "book/health.h"
#include "book/tables.h"
#include "book/tally.h"

#include <map>

namespace staveline::book {

class RowWriter final : public Writer {
public:
    RowWriter(Connection& connection, const Tables& tables, Health& health)
        : connection_(connection), tables_(tables), health_(health) {}

    Result<RowId> insert(const std::string& table, const std::vector<Value>& values) override;
    Result<void> insertAs(const std::string& table, RowId id, const std::vector<Value>& values) override;
    Result<void> update(const std::string& table, RowId id, const std::vector<Value>& values) override;
    Result<void> remove(const std::string& table, RowId id) override;
    /// Brings the tallies up to date. Refuses when anything failed in storage, whatever the body made of it.
    void finish();

private:
    template <class Work> auto attempt(Work&& work);
    void put(const Table& table, const std::string& sql, RowId id, const std::vector<Value>& values);
    std::int64_t soundDigest(const Table& table, RowId id);

    Connection& connection_;
    const Tables& tables_;
    Health& health_;
    std::map<std::string, Tally> changes_; ///< differences; rows may be negative
    std::optional<Fault> failed_;
};

} // namespace staveline::book
