// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/include_rules.h"

#include "support/catch.h"

#include <map>

namespace staveline::layers {
namespace {

using Tree = std::map<std::string, std::string>;

const Tree sample = {
    {"core/quantity/units.h", "#pragma once\n"},      {"core/vessel/ledger.h", "#pragma once\n"},
    {"core/estimate/estimates.h", "#pragma once\n"},  {"core/advice/advise.h", "#pragma once\n"},
    {"core/advice/levers/lever.h", "#pragma once\n"}, {"core/advice/search.h", "// Private to advice.\n#pragma once\n"},
    {"core/book/book.h", "#pragma once\n"},           {"core/facts/facts.h", "#pragma once\n"},
    {"core/desk/desk.h", "#pragma once\n"},           {"ui/present/model.h", "#pragma once\n"},
    {"resources/resources.h", "#pragma once\n"},      {"tests/support/catch.h", "#pragma once\n"},
};

std::string fromSample(const std::string& path) {
    const auto found = sample.find(path);
    return found == sample.end() ? "" : found->second;
}

std::size_t refused(const std::string& path, const std::string& include) {
    return includeViolations({path, "#include " + include + "\n"}, fromSample).size();
}

} // namespace

TEST_CASE("Every include of the program is in the table of allowed includes") {
    REQUIRE(programSources().size() > 30);
    Tree tree;
    for (const auto& file : filesUnder({"core", "ui", "app", "resources"}))
        tree.emplace(file.path, file.text + "\n");
    for (const auto& file : generatedHeaders())
        tree.emplace(file.path, file.text + "\n");
    const auto lookup = [&](const std::string& path) {
        const auto found = tree.find(path);
        return found == tree.end() ? std::string() : found->second;
    };
    std::vector<std::string> all;
    for (const auto& file : programSources())
        for (auto& violation : includeViolations(file, lookup))
            all.push_back(std::move(violation));
    checkNone(all);
}

TEST_CASE("Rooms may include the rooms below them and nothing else") {
    CHECK(refused("core/vessel/ledger.cpp", "\"quantity/units.h\"") == 0);
    CHECK(refused("core/vessel/ledger.cpp", "\"vessel/ledger.h\"") == 0);
    CHECK(refused("core/quantity/units.cpp", "\"resources/resources.h\"") == 0);
    CHECK(refused("core/advice/search.cpp", "\"estimate/estimates.h\"") == 0);
    CHECK(refused("core/estimate/estimates.cpp", "\"book/book.h\"") == 1);
    CHECK(refused("core/estimate/estimates.cpp", "\"desk/desk.h\"") == 1);
    CHECK(refused("core/desk/desk.cpp", "\"book/book.h\"") == 0);
    CHECK(refused("core/desk/desk.cpp", "\"facts/facts.h\"") == 0);
    CHECK(refused("core/facts/rows.cpp", "\"book/book.h\"") == 0);
    CHECK(refused("ui/vessels/rail.cpp", "\"desk/desk.h\"") == 0);
    CHECK(refused("ui/vessels/rail.cpp", "\"ui/present/model.h\"") == 0);
    CHECK(refused("app/main.cpp", "\"ui/present/model.h\"") == 0);

    CHECK(refused("core/quantity/units.cpp", "\"vessel/ledger.h\"") == 1);
    CHECK(refused("core/vessel/ledger.cpp", "\"advice/advise.h\"") == 1);
    CHECK(refused("core/sheet/sheet.cpp", "\"book/book.h\"") == 1);
    CHECK(refused("core/facts/facts.h", "\"advice/advise.h\"") == 1);
    CHECK(refused("core/facts/facts.h", "\"desk/desk.h\"") == 1);
    CHECK(refused("core/book/book.cpp", "\"facts/facts.h\"") == 1);
    CHECK(refused("core/advice/advise.cpp", "\"ui/present/model.h\"") == 1);
    CHECK(refused("ui/vessels/rail.cpp", "\"book/book.h\"") == 1);
    CHECK(refused("core/quantity/units.cpp", "\"support/catch.h\"") == 1);
    CHECK(refused("core/quantity/units.cpp", "\"tests/support/catch.h\"") == 1);
    CHECK(refused("core/cellar/new_room.cpp", "\"quantity/units.h\"") == 1);
}

TEST_CASE("Private headers serve their own room only") {
    CHECK(refused("core/advice/levers/hops.cpp", "\"advice/levers/lever.h\"") == 0);
    CHECK(refused("core/advice/levers/hops.cpp", "\"lever.h\"") == 0);
    CHECK(refused("core/advice/advise.cpp", "\"advice/search.h\"") == 0);
    CHECK(refused("core/sheet/sheet.cpp", "\"advice/advise.h\"") == 0);
    CHECK(refused("core/sheet/sheet.cpp", "\"advice/levers/lever.h\"") == 1);
    CHECK(refused("core/desk/desk.cpp", "\"advice/search.h\"") == 1);
}

TEST_CASE("System and library headers are allowed where they belong") {
    CHECK(refused("core/quantity/units.h", "<string_view>") == 0);
    CHECK(refused("core/quantity/text.cpp", "<fmt/core.h>") == 0);
    CHECK(refused("core/quantity/fault.h", "<tl/expected.hpp>") == 0);
    CHECK(refused("core/book/book.cpp", "<SQLiteCpp/SQLiteCpp.h>") == 0);
    CHECK(refused("core/desk/json.cpp", "<nlohmann/json.hpp>") == 0);
    CHECK(refused("core/forward/predict.cpp", "<boost/math/distributions/normal.hpp>") == 0);
    CHECK(refused("core/desk/desk.h", "<filesystem>") == 0);
    CHECK(refused("app/main.cpp", "<CLI/CLI.hpp>") == 0);
    CHECK(refused("ui/vessels/rail.h", "<QWidget>") == 0);
    CHECK(refused("ui/widgets/chart.cpp", "<QtCharts/QChartView>") == 0);

    CHECK(refused("core/quantity/units.h", "<QString>") == 1);
    CHECK(refused("core/desk/desk.cpp", "<QtCore/QObject>") == 1);
    CHECK(refused("core/quantity/text.cpp", "<fstream>") == 1);
    CHECK(refused("core/quantity/text.cpp", "<locale>") == 1);
    CHECK(refused("core/forward/bands.cpp", "<random>") == 1);
    CHECK(refused("core/desk/json.h", "<nlohmann/json.hpp>") == 1);
    CHECK(refused("core/desk/desk.cpp", "<sqlite3.h>") == 1);
    CHECK(refused("core/forward/predict.h", "<boost/numeric/odeint.hpp>") == 1);
    CHECK(refused("core/vessel/ledger.cpp", "<Eigen/Dense>") == 1);
    CHECK(refused("ui/vessels/rail.cpp", "<CLI/CLI.hpp>") == 1);
    CHECK(refused("core/book/book.cpp", "<sys/socket.h>") == 1);
}

TEST_CASE("An include in a comment does not count, a line number is given") {
    const TreeFile file{"core/quantity/a.cpp",
                        "// #include <QString>\n/*\n#include <QString>\n*/\n#include <QString>\n"};
    const auto found = includeViolations(file, fromSample);
    REQUIRE(found.size() == 1);
    CHECK(found.front().starts_with("core/quantity/a.cpp:5:"));
}

} // namespace staveline::layers
