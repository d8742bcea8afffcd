// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of sugars, bottles and fruits: kinds by their names.
#pragma once

#include "quantity/csv.h"
#include "quantity/fault.h"
#include "quantity/parse.h"
#include "resources/resources.h"

#include <string>
#include <string_view>
#include <vector>

namespace staveline::finishing {

/// A row of a table as its kind reads it.
class KindRow {
public:
    KindRow(const CsvTable& table, std::size_t row) : table_(table), row_(row) {}
    [[nodiscard]] std::string text(std::string_view column) const { return std::string(table_.text(row_, column)); }
    [[nodiscard]] double number(std::string_view column) const { return table_.number(row_, column).value_or(0); }

private:
    const CsvTable& table_;
    std::size_t row_;
};

/// `file` of the resources, row by row.
template <class Kind> [[nodiscard]] std::vector<Kind> readKinds(std::string_view file, Kind (*read)(const KindRow&)) {
    std::vector<Kind> all;
    const auto table = CsvTable::parse(resources::find(file));
    for (std::size_t row = 0; table && row < table->rows(); ++row)
        all.push_back(read(KindRow(*table, row)));
    return all;
}

/// "light, heavy, thick"
template <class Kind> [[nodiscard]] std::string idsOf(const std::vector<Kind>& all) {
    std::string ids;
    for (const Kind& one : all)
        ids += (ids.empty() ? "" : ", ") + one.id;
    return ids;
}

/// `what`: sugar, bottle or fruit. An unknown one is a fault at "/<what>" that lists the known ones.
template <class Kind>
[[nodiscard]] Result<Kind> kindNamed(std::string_view id, const std::vector<Kind>& all, const std::string& what) {
    for (const Kind& one : all)
        if (one.id == id)
            return one;
    return badInput("/" + what, say("finishing.unknown." + what).with("id", excerpt(id)),
                    say("finishing.unknown.remedy." + what).with("known", idsOf(all)));
}

} // namespace staveline::finishing
