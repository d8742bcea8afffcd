// SPDX-License-Identifier: GPL-3.0-or-later
// Rules about single lines of the tree: licence mark, SQL that writes, absolute paths.
#include "layers/cpp_text.h"
#include "layers/source_tree.h"

#include "support/catch.h"

#include <fmt/core.h>
#include <optional>
#include <regex>

namespace staveline::layers {
namespace {

bool isScript(const TreeFile& file) {
    return file.text.starts_with("#!");
}
bool mustCarryMark(const TreeFile& file) {
    return file.isCpp() || file.path.ends_with("CMakeLists.txt") || file.path.ends_with(".cmake") ||
           file.path.ends_with(".cmake.in") || file.path.ends_with(".py") || file.path.ends_with(".sh") ||
           file.path.ends_with(".R") || isScript(file);
}
/// The mark stands in the first line, or in the second below a script's "#!".
bool carriesMark(const TreeFile& file) {
    const auto start = isScript(file) ? file.text.find('\n') + 1 : 0;
    const auto line = file.text.substr(start, file.text.find('\n', start) - start);
    // In two parts, so that this file does not carry the mark twice.
    return line.ends_with(std::string("SPDX-License-Identifier:") + " GPL-3.0-or-later");
}

bool codeHas(const TreeFile& file, const std::regex& pattern) {
    return std::regex_search(scanCpp(file.text).code, pattern);
}
bool asksForEntryKinds(const TreeFile& file) {
    static const std::regex label(R"(\bcase EntryKind::)");
    return codeHas(file, label);
}
/// A reworded text would change what the program does.
bool decidesByKey(const TreeFile& file) {
    static const std::regex compared(R"(\b(cause|remedy|reason)\.key [=!]= )");
    return codeHas(file, compared);
}

/// A literal with an SQL statement that changes a table.
std::optional<std::string> writingSql(const TreeFile& file) {
    static const std::regex upper(R"(\b(INSERT|UPDATE|DELETE|REPLACE INTO)\b)");
    static const std::regex phrase(R"(\b(insert\s+(or\s+\w+\s+)?into|delete\s+from|update\s+\S+\s+set)\b)",
                                   std::regex::icase);
    for (const auto& literal : scanCpp(file.text).literals)
        if (std::regex_search(literal.text, upper) || std::regex_search(literal.text, phrase))
            return fmt::format("{}:{}: \"{}\"", file.path, lineOf(file.text, literal.begin), literal.text);
    return std::nullopt;
}

/// A path that exists on one machine only.
std::optional<std::string> absolutePath(const TreeFile& file) {
    static const std::regex own(R"((^|[^\w.~-])/(work|home|root|Users|mnt|srv|tmp/b)(/|\b))");
    std::smatch found;
    if (!std::regex_search(file.text, found, own))
        return std::nullopt;
    return fmt::format("{}:{}: {}", file.path, lineOf(file.text, static_cast<std::size_t>(found.position())),
                       found.str());
}

std::string slash(std::string rest) {
    return '/' + std::move(rest);
}

} // namespace

TEST_CASE("Every source, build file and script carries the licence mark") {
    std::vector<std::string> missing;
    std::size_t marked = 0;
    for (const auto& file : filesUnder({""}))
        if (mustCarryMark(file) && !carriesMark(file))
            missing.push_back(file.path);
        else if (mustCarryMark(file))
            ++marked;
    CHECK(marked > 40);
    checkNone(missing);
}

TEST_CASE("Statements that change tables are written in the book only") {
    std::vector<std::string> found;
    for (const auto& file : programSources())
        if (!file.path.starts_with("core/book/"))
            if (auto statement = writingSql(file))
                found.push_back(std::move(*statement));
    checkNone(found);
}

TEST_CASE("What differs between kinds of ledger entries stands in their table") {
    std::vector<std::string> found;
    for (const auto& file : programSources())
        if (asksForEntryKinds(file))
            found.push_back(file.path + " asks for kinds of entries one by one");
    checkNone(found);
}

TEST_CASE("No source decides by the key of a text") {
    std::vector<std::string> found;
    for (const auto& file : programSources())
        if (decidesByKey(file))
            found.push_back(file.path + " compares the key of a message");
    checkNone(found);
}

TEST_CASE("No file names a path of one machine") {
    std::vector<std::string> found;
    for (const auto& file : filesUnder({""}))
        if (file.path != "LICENSE" && !file.path.ends_with(".png"))
            if (auto path = absolutePath(file))
                found.push_back(std::move(*path));
    checkNone(found);
}

TEST_CASE("A switch over kinds of entries and a compared key are found") {
    CHECK(asksForEntryKinds({"a.cpp", "switch (kind) {\ncase EntryKind::dip:\n"}));
    CHECK_FALSE(asksForEntryKinds({"a.cpp", "if (kind == EntryKind::dip) // case EntryKind::dip:\n"}));
    CHECK(decidesByKey({"a.cpp", "if (fault.cause.key == \"a.b\")"}));
    CHECK(decidesByKey({"a.cpp", "if (fault.remedy.key != other)"}));
    CHECK_FALSE(decidesByKey({"a.cpp", "if (fault.kind == FaultKind::input) // cause.key == \"a.b\"\n"}));
}

TEST_CASE("A missing licence mark is found") {
    const std::string mark = std::string("SPDX-License-Identifier:") + " GPL-3.0-or-later";
    CHECK(carriesMark({"a.cpp", "// " + mark + "\nint a;\n"}));
    CHECK(carriesMark({"run", "#!/bin/sh\n# " + mark + "\n"}));
    CHECK_FALSE(carriesMark({"a.cpp", "int a;\n// " + mark + "\n"}));
    CHECK_FALSE(carriesMark({"a.cpp", "// SPDX-License-Identifier: MIT\n"}));
    CHECK_FALSE(carriesMark({"run", "#!/bin/sh\necho\n"}));
    CHECK_FALSE(carriesMark({"run", "#!/bin/sh"}));
    CHECK(mustCarryMark({"app/start", "#!/bin/sh\n"}));
    CHECK(mustCarryMark({"app/cmake/x.cmake", ""}));
    CHECK_FALSE(mustCarryMark({"README.md", "text"}));
}

TEST_CASE("A statement that changes a table is found, words and comments are not") {
    const auto found = [](std::string source) { return writingSql({"a.cpp", std::move(source)}).has_value(); };
    CHECK(found(R"~(run("INSERT INTO draw VALUES(1)");)~"));
    CHECK(found(R"~(run("insert or replace into draw values(1)");)~"));
    CHECK(found(R"~(run("select 1; delete  from draw");)~"));
    CHECK(found("run(R\"sql(\nUPDATE draw\nSET a = 1)sql\");"));
    CHECK_FALSE(found(R"~(run("SELECT * FROM draw");)~"));
    CHECK_FALSE(found(R"~(// "DELETE FROM draw")~"));
    CHECK_FALSE(found(R"~(show("Delete the draw and update the target?");)~"));
}

TEST_CASE("A path of one machine is found, a relative one is not") {
    const auto found = [](const std::string& text) { return absolutePath({"a.cpp", text}).has_value(); };
    CHECK(found("open(\"" + slash("work/main\");")));
    CHECK(found(slash("home/anna/book.cellar")));
    CHECK(found("cd " + slash("tmp/b/x")));
    CHECK_FALSE(found("open(\"book/work/main\");"));
    CHECK_FALSE(found("../home/book"));
    CHECK_FALSE(found("cd " + slash("tmp/shots")));
    CHECK_FALSE(found("#!/bin/sh"));
    CHECK_FALSE(found("// hops and/or fruit, home work"));
}

} // namespace staveline::layers
