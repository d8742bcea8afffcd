// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/cpp_text.h"

#include "support/catch.h"

namespace staveline::layers {
namespace {

std::vector<std::string> literals(std::string_view source) {
    std::vector<std::string> texts;
    for (auto& literal : scanCpp(source).literals)
        texts.push_back(std::move(literal.text));
    return texts;
}
using Texts = std::vector<std::string>;

} // namespace

TEST_CASE("Comments turn to blanks of the same length") {
    CHECK(scanCpp("a // b\nc").code == "a     \nc");
    CHECK(scanCpp("a /* b\nc */ d").code == "a     \n     d");
    CHECK(scanCpp("a /* never closed").code == "a                ");
    CHECK(scanCpp("f(\"// no comment\");").code == "f(\"// no comment\");");
    CHECK(scanCpp("").code.empty());
}

TEST_CASE("Literals are found whatever they hold") {
    CHECK(literals(R"(f("a", "b\"c", "");)") == Texts{"a", "b\\\"c", ""});
    CHECK(literals("f(R\"x(a \" )\" b)x\");") == Texts{"a \" )\" b"});
    CHECK(literals("f(R\"(// a)\"); // \"b\"") == Texts{"// a"});
    CHECK(literals("char c = '\"'; f(\"a\");") == Texts{"a"});
    CHECK(literals("int n = 1'000; f(\"a\");") == Texts{"a"});
    CHECK(literals("f(VAR\"a\");") == Texts{"a"});
    CHECK(literals("f(\"never closed") == Texts{"never closed"});
    CHECK(literals("R\"never(") == Texts{""});
}

TEST_CASE("Positions of literals take in their quotes") {
    const auto scanned = scanCpp("f(\"ab\")");
    REQUIRE(scanned.literals.size() == 1);
    CHECK(scanned.literals.front().begin == 2);
    CHECK(scanned.literals.front().end == 6);
}

TEST_CASE("Includes are read with their kind and line") {
    const auto found = includesOf("#pragma once\n#include <map>\n  #  include \"a/b.h\"\n// #include <set>\n");
    REQUIRE(found.size() == 2);
    CHECK(found[0].path == "map");
    CHECK(found[0].angled);
    CHECK(found[0].line == 2);
    CHECK(found[1].path == "a/b.h");
    CHECK_FALSE(found[1].angled);
    CHECK(found[1].line == 3);
}

} // namespace staveline::layers
