// SPDX-License-Identifier: GPL-3.0-or-later
// A constant of the core stands in one table: the code takes its value from the row, and no row is left over.
#include "layers/source_tree.h"

#include "quantity/csv.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <cctype>
#include <fmt/core.h>
#include <regex>
#include <set>

namespace staveline::layers {
namespace {

struct ConstantRow {
    std::string group, name, value; ///< "plan", "maltHeat", "0.41"
};

std::string camel(std::string_view words) {
    std::string name;
    bool up = false;
    for (char letter : words) {
        if (letter != '_')
            name += up ? static_cast<char>(std::toupper(static_cast<unsigned char>(letter))) : letter;
        up = letter == '_';
    }
    return name;
}

std::vector<ConstantRow> constantRows() {
    std::vector<ConstantRow> all;
    for (const auto& [file, key] : {std::pair{"data/parameters.csv", "name"},
                                    {"data/brewing_constants.csv", "name"},
                                    {"data/finishing_constants.csv", "name"},
                                    {"data/rules.csv", "id"}}) {
        const auto table = CsvTable::parse(resources::find(file)).value();
        for (std::size_t row = 0; row < table.rows(); ++row) {
            const std::string id(table.text(row, key));
            const auto dot = id.find('.');
            all.push_back({dot == std::string::npos ? "" : id.substr(0, dot),
                           camel(std::string_view(id).substr(dot == std::string::npos ? 0 : dot + 1)),
                           std::string(table.text(row, "value"))});
        }
    }
    return all;
}

std::string generatedConstants() {
    for (const auto& file : generatedHeaders())
        if (file.path == "core/quantity/constants.h")
            return file.text;
    return {};
}

} // namespace

TEST_CASE("Every row of a table of constants is a constant with its value") {
    const auto header = generatedConstants();
    const auto rows = constantRows();
    REQUIRE(rows.size() > 200);
    for (const auto& [group, name, value] : rows) {
        const auto definition = fmt::format("inline constexpr double {} = {};\n", name, value);
        INFO(group << "::" << name << " = " << value);
        const bool found =
            header.find(group.empty() ? "\n" + definition : fmt::format("namespace {} {{\n{}}}", group, definition)) !=
            std::string::npos;
        CHECK(found);
    }
}

TEST_CASE("Every constant is used by the program") {
    std::string core;
    for (const auto& file : filesUnder({"core", "ui", "app"}))
        core += file.text;
    std::set<std::string> used;
    const std::regex use("::([A-Za-z0-9]+)");
    for (auto at = std::sregex_iterator(core.begin(), core.end(), use); at != std::sregex_iterator(); ++at)
        used.insert((*at)[1]);
    for (const auto& [group, name, value] : constantRows()) {
        INFO(group << "::" << name);
        CHECK(used.contains(name));
    }
}

} // namespace staveline::layers
