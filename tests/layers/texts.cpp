// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/cpp_text.h"
#include "layers/text_rules.h"

#include "quantity/csv.h"
#include "quantity/words.h"
#include "support/catch.h"

#include <algorithm>
#include <array>
#include <map>
#include <regex>

namespace staveline::layers {
namespace {

std::vector<TreeFile> textFiles() {
    return filesUnder({"resources/texts/en"});
}

/// Keys that no literal of the program shows, with the reason.
constexpr std::array<std::string_view, 0> listed{};

std::set<std::string> mentionedInProgram() {
    std::set<std::string> mentioned(listed.begin(), listed.end());
    for (const auto& file : programSources())
        for (auto& literal : scanCpp(file.text).literals)
            mentioned.insert(std::move(literal.text));
    return mentioned;
}

void addCells(std::string_view csv, std::set<std::string>& cells) {
    const auto table = CsvTable::parse(csv);
    if (!table)
        return;
    for (std::size_t row = 0; row < table->rows(); ++row)
        for (const auto& column : table->header())
            cells.emplace(table->text(row, column));
}

std::size_t violations(const std::string& source) {
    const Templates templates = {
        {"room.plain", "Nothing to fill in."}, {"room.one", "{a} is one."}, {"room.why.hops", "Because."}};
    return sayingViolations({"core/room/a.cpp", source}, templates).size();
}

} // namespace

TEST_CASE("Every text of resources/texts is a key, a tab and a template") {
    const auto files = textFiles();
    REQUIRE(files.size() >= 10);
    checkNone(templateViolations(files));
}

TEST_CASE("Everything said has a template, and gets the arguments that the template names") {
    const auto templates = readTemplates(textFiles());
    REQUIRE(templates.size() > 20);
    std::vector<std::string> all;
    std::size_t sayings = 0;
    for (const auto& file : programSources()) {
        sayings += sayingsOf(file.text).size();
        for (auto& violation : sayingViolations(file, templates))
            all.push_back(std::move(violation));
    }
    CHECK(sayings > 20);
    checkNone(all);
}

TEST_CASE("Every template is said somewhere") {
    auto mentioned = mentionedInProgram();
    for (const auto& file : filesUnder({"resources/data"}))
        addCells(file.text, mentioned);
    checkNone(unusedKeys(readTemplates(textFiles()), mentioned));
}

TEST_CASE("The help names every library that the program is made of") {
    const auto text = nameKey(readTemplates(textFiles()).at("ui.help.about.4"));
    const std::map<std::string, std::string> calledOtherwise = {{"nlohmann-json3", "json for modern c++"},
                                                                {"qt6opengl6", "qt"},
                                                                {"qt6-base", "qt"},
                                                                {"qt6-charts", "qt charts"},
                                                                {"qt6-svg", "qt"},
                                                                {"fonts-dejavu-core", "dejavu fonts"},
                                                                {"sqlite3", "sqlite"}};
    const auto files = filesUnder({"app"});
    const auto list =
        std::find_if(files.begin(), files.end(), [](const auto& file) { return file.path == "app/packages.txt"; });
    REQUIRE(list != files.end());
    std::vector<std::string> unnamed;
    static const std::regex library("(^|\\n)(?:lib)?([a-z0-9-]+)-dev(?=\\n)|(fonts-[a-z-]+)");
    for (std::sregex_iterator at(list->text.begin(), list->text.end(), library), end; at != end; ++at) {
        const std::string package = (*at)[2].matched ? (*at)[2].str() : (*at)[3].str();
        if (package == "dpkg") // makes the package; nothing of it is in the program
            continue;
        const auto other = calledOtherwise.find(package);
        if (text.find(nameKey(other == calledOtherwise.end() ? package : other->second)) == text.npos)
            unnamed.push_back(package);
    }
    checkNone(unnamed);
}

TEST_CASE("Every cause and every remedy ends as a sentence") {
    const auto templates = readTemplates(textFiles());
    const auto keys = faultKeys(programSources(), templates);
    CHECK(keys.size() > 250);
    checkNone(unendedTexts(templates, keys));
}

TEST_CASE("No text has a term that readers did not understand") {
    std::vector<std::string> all;
    std::size_t read = 0;
    const auto look = [&](const std::string& where, const std::string& text) {
        ++read;
        if (const auto term = unclearTerm(text))
            all.push_back(where + " says \"" + *term + "\": " + text);
    };
    for (const auto& [key, text] : readTemplates(textFiles()))
        look(key, text);
    for (const auto& file : programSources())
        for (const auto& text : windowTexts(file.text))
            look(file.path, text);
    for (const auto& file : filesUnder({"resources/data"})) {
        std::set<std::string> cells;
        if (file.path.ends_with("/attributes.csv") || file.path.ends_with("/faults.csv"))
            addCells(file.text, cells);
        for (const auto& cell : cells)
            look(file.path, cell);
    }
    CHECK(read > 1500);
    checkNone(all);
}

TEST_CASE("An unclear term and a missing full stop are found") {
    CHECK(unclearTerm("Funk does not reach its window this way."));
    CHECK(unclearTerm("If kept up, acidity falls."));
    CHECK(unclearTerm("looks"));
    CHECK_FALSE(unclearTerm("Open the window; it looks fine in {band}."));
    CHECK(windowTexts(R"~(f(tr("one " "text"), tr(key)); // tr("no"))~") == std::vector<std::string>{"one text"});
    const Templates templates = {
        {"a.one", "No stop"}, {"a.one.remedy", "Stop."}, {"a.two", "Said"}, {"a.three", "Other"}};
    const auto keys =
        faultKeys({{"core/a.cpp", R"~(badInput("/x", say("a.two"), say(r)); say("a.three");)~"}}, templates);
    CHECK(keys == std::set<std::string>{"a.one", "a.one.remedy", "a.two"});
    CHECK(unendedTexts(templates, keys).size() == 2);
}

TEST_CASE("A key without a template is found") {
    CHECK(violations(R"~(f(say("room.plain"));)~") == 0);
    CHECK(violations(R"~(f(say("room.plian"));)~") == 1);
    CHECK(violations(R"~(f(say(late ? "room.plain" : "room.plian"));)~") == 1);
    CHECK(violations(R"~(f(say("room.why." + lever));)~") == 0);
    CHECK(violations(R"~(f(say("room.how." + lever));)~") == 1);
    CHECK(violations(R"~(// f(say("room.plian"));)~") == 0);
    CHECK(violations(R"~(f(say(key));)~") == 0);
    CHECK(violations(R"~(f(say(kind == "room.plian" ? "room.plain" : "room.why." + lever));)~") == 0);
    CHECK(violations(R"~(f(say(late ? "room.plian" : "room.how." + lever));)~") == 2);
    CHECK(violations(R"~(f(say(key + ".plian"));)~") == 0);
    CHECK(violations(R"~(f(say(about("room.plian", d) + (late ? ".a" : ".b")));)~") == 0);
    CHECK(violations(R"~(f(say(textOf("room.plian")));)~") == 0);
    CHECK(violations(R"~(f(essay("room.plian"));)~") == 0);
}

TEST_CASE("A placeholder that is not given is found") {
    CHECK(violations(R"~(f(say("room.one").with("a", g(1, ")")));)~") == 0);
    CHECK(violations("f(say(\"room.one\")\n      .with(\"b\", 1)\n      .with(\"a\", 2));") == 0);
    CHECK(violations(R"~(f(say("room.one"));)~") == 1);
    CHECK(violations(R"~(f(say("room.one").with("b", 1));)~") == 1);
    CHECK(violations(R"~(f(say("room.one").with("b", say("x.y").with("a", 1)));)~") == 2);
    CHECK(violations(R"~(auto m = say("room.one");)~") == 0);
}

TEST_CASE("Slips in a text file are found") {
    const auto slips = [](std::string text) {
        return templateViolations({{"texts/room.tsv", std::move(text)}}).size();
    };
    CHECK(slips("# comment\n\nroom.key\tText {a}, {b}.\nroom.other\tText\n") == 0);
    CHECK(slips("room.key Text\n") == 1);
    CHECK(slips("room.key\t\n") == 1);
    CHECK(slips("room.key\tText\tmore\n") == 1);
    CHECK(slips("key\tText\n") == 1);
    CHECK(slips("room.key\tText {a\n") == 1);
    CHECK(slips("room.key\tText\r\nroom.two\tText\n") == 1);
    CHECK(slips("room.key\tText\nroom.key\tText\n") == 1);
}

TEST_CASE("A template that nothing says is found") {
    const Templates templates = {{"room.a", ""}, {"room.why.hops", ""}, {"room.b.remedy", ""}};
    const std::vector<std::string> unused = {"nothing says \"room.b.remedy\""};
    CHECK(unusedKeys(templates, {"room.a", "room.why.", "room.b.remedy"}).empty());
    CHECK(unusedKeys(templates, {"room.a", "room.why.", "room.b", ".remedy"}).empty());
    CHECK(unusedKeys(templates, {"room.a", "room.why", "hops", "room.b", "remedy"}).empty());
    CHECK(unusedKeys(templates, {"room.a", "room.why.", "room.b", "emedy", "the remedy"}) == unused);
    CHECK(unusedKeys(templates, {"room.a", "room.{}.hops", "room.b.{}"}).empty());
    CHECK(unusedKeys(templates, {"room.a", "room.why."}) == unused);
    CHECK(unusedKeys(templates, {"room.a", "room.why.", "room.b"}) == unused);
    CHECK(unusedKeys(templates, {"room.a", "room.why.", ".remedy"}) == unused);
    CHECK(unusedKeys(templates, {"room.a", "room.why.", "room.b.remed", ".remedy"}) == unused);
    CHECK(unusedKeys(templates, {"room", "r", ".", "{}"}).size() == 3);
}

} // namespace staveline::layers
