// SPDX-License-Identifier: GPL-3.0-or-later
// The report on a fault of the program tells of program, machine and damage, and of nothing that was recorded.
#include "desk/report.h"

#include "desk/support.h"
#include "facts/sample.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;

namespace {

bool has(const std::string& words, const std::string& part) {
    return words.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("the report names program, system and language", "[desk][report]") {
    const std::string words = reportText(reportOn(Machine{"1.2.3", "A system, x86_64", "Parts 4.5"}));
    for (const char* part : {"Staveline 1.2.3", "System: A system, x86_64", "Parts: Parts 4.5", "Language: en"})
        CHECK(has(words, std::string(part) + "\n"));
}

TEST_CASE_METHOD(DeskFixture, "the report of a sound book holds no name of it", "[desk][report]") {
    REQUIRE(desk->record(*facts::sampleCellar(now)));
    const std::string words = reportText(reportOn(*desk));
    CHECK(has(words, "no damage"));
    const auto vessels = desk->vessels();
    REQUIRE(vessels);
    for (const auto& vessel : *vessels)
        CHECK_FALSE(has(words, vessel.name));
    for (const auto& brew : desk->brews())
        CHECK_FALSE(has(words, brew.name));
    CHECK_FALSE(has(words, "test.cellar"));
}

TEST_CASE_METHOD(DeskFixture, "a finding is told by table, row and key, without what stood there", "[desk][report]") {
    addPlover();
    const auto path = desk->path();
    desk.reset();
    std::string bytes = readAll(path);
    for (auto found = bytes.find("Plover"); found != std::string::npos; found = bytes.find("Plover", found + 1))
        bytes[found + 1] = 'X';
    writeAll(path, bytes);
    desk = *desk::Desk::open(
        path, [this] { return now; }, book::OpenMode::readOnly);
    const auto check = desk->check();
    REQUIRE(check);
    REQUIRE_FALSE(check->sound());
    const std::string words = reportText(reportOn(*desk));
    CHECK(has(words, "Finding: " + check->damages.front().what.key));
    CHECK(has(words, "findings: "));
    CHECK_FALSE(has(words, "PXover"));
    CHECK_FALSE(has(words, "Plover"));
}

TEST_CASE("a book that does not open is reported by the key of its fault", "[desk][report]") {
    const Scratch scratch;
    writeAll(scratch / "noise.cellar", "this is no book");
    const auto desk = Desk::open(scratch / "noise.cellar");
    REQUIRE_FALSE(desk);
    const std::string words = reportText(reportOnRefused(desk.error()));
    CHECK(has(words, desk.error().cause.key));
    CHECK_FALSE(has(words, "noise"));
}
