// SPDX-License-Identifier: GPL-3.0-or-later
// Options and files of the command line mean what they say.
#include "program.h"

#include <nlohmann/json.hpp>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

constexpr const char* typingToday = "--today 2026-06-01 ";

struct Typing : Terminal {
    Typing() { expect(std::string(typingToday) + "new s.cellar --sample"); }
    Answer command(const std::string& text) { return run(typingToday + text); }
    /// The fault of bad input, in words.
    std::string refused(const std::string& text) {
        const Answer answer = run(text);
        INFO(text << "\n" << answer.out << answer.err);
        CHECK(answer.status == 2);
        CHECK(answer.err.find("..") == std::string::npos);
        return answer.err;
    }
};

} // namespace

TEST_CASE_METHOD(Typing, "what is not at hand is an id or a printed name, and anything else is a fault", "[app][bad]") {
    const std::string ask = std::string(typingToday) + "advise s.cellar --vessel Plover --json";
    const std::string byId = run(ask + " --without wheat_malt").out;
    CHECK(byId != run(ask).out);
    CHECK(run(ask + " --without 'Wheat Malt'").out == byId);
    const std::string words = refused(ask + " --without nosuch");
    CHECK(words.starts_with("/without: No malt or yeast is called \"nosuch\". Use one of: "));
    CHECK(words.find("pilsner") != std::string::npos);
    CHECK(words.find("saison") != std::string::npos);
}

TEST_CASE_METHOD(Typing, "a lever is locked once", "[app][bad]") {
    CHECK(refused(std::string(typingToday) + "advise s.cellar --vessel Plover --lock draw=60 --lock draw=70") ==
          "/lock: draw is locked twice. Leave out one of the two.\n");
}

TEST_CASE_METHOD(Typing, "only a near name is offered", "[app][bad]") {
    CHECK(refused(std::string(typingToday) + "status-of x").find("Knot") == std::string::npos);
    CHECK(refused(std::string(typingToday) + "advise s.cellar --vessel ''") ==
          "/vessel: There is no vessel \"\". Use one of: Dunlin, Knot, Plover.\n");
    CHECK(refused(std::string(typingToday) + "history s.cellar --vessel plover").find("Did you mean \"Plover\"?") !=
          std::string::npos);
}

TEST_CASE_METHOD(Typing, "today is a day this cellar can see, and is named once", "[app][bad]") {
    for (const std::string day : {"foo", "0000-01-01", "1899-12-31", "2201-01-01", "9999-12-31", "2026-02-30"}) {
        const std::string words = refused("--today " + day + " status s.cellar");
        INFO(words);
        CHECK(words.find("--today: ") != std::string::npos);
        CHECK(words.find("--today: --today") == std::string::npos);
        CHECK(words.find(day) != std::string::npos);
    }
}

TEST_CASE_METHOD(Typing, "standard output carries one answer", "[app][bad]") {
    const Answer both = command("sheet s.cellar --vessel Plover --out - --json");
    CHECK(both.status == 2);
    CHECK(Json::parse(both.out)["fault"]["path"] == "/out");
    CHECK(command("sheet s.cellar --vessel Plover --out -").status == 0);
    CHECK(Json::accept(command("sheet s.cellar --vessel Plover --out x.md --json").out));
}

TEST_CASE_METHOD(Typing, "a draw that cannot be is told without a lock nobody asked for", "[app][bad]") {
    write("plan.json", R"({"draw_l": 5000})");
    const std::string words = refused(std::string(typingToday) + "predict s.cellar --vessel Plover --plan plan.json");
    CHECK(words.starts_with("/draw_l: 5000 L is outside what can be drawn"));
    CHECK(words.find("ock") == std::string::npos);
}

TEST_CASE_METHOD(Typing, "a history in CSV begins no formula", "[app]") {
    write("dip.json", R"({"kind": "dip", "vessel": "Plover", "on": "2026-06-01", "volume_l": 180, "note": "=1+1"})");
    expect(std::string(typingToday) + "record s.cellar dip.json");
    const std::string csv = command("history s.cellar --vessel Plover --csv").out;
    CHECK(csv.find("\"'=1+1\"") != std::string::npos);
    CHECK(csv.find("\"=") == std::string::npos);
}

TEST_CASE_METHOD(Typing, "where a file stops being JSON is told by line and column", "[app][bad]") {
    write("dip.json", "[\n  {\"kind\": \"dip\",\n   \"volume_l\": 3,}\n]\n");
    const Answer answer = command("record s.cellar dip.json");
    CHECK(answer.status == 2);
    CHECK(answer.err.starts_with("This is no JSON; it goes wrong at line 3, column 18. Look just before it"));
}

TEST_CASE_METHOD(Typing, "a number out of any range is told as one, not as broken JSON", "[app][bad]") {
    write("huge.json", R"({"kind": "dip", "vessel": "Plover", "on": "2026-06-01", "volume_l": 1e400})");
    CHECK(refused(std::string(typingToday) + "record s.cellar huge.json") ==
          "/volume_l: 1e400 is too large a number. Check its digits.\n");
}

TEST_CASE_METHOD(Typing, "a specific gravity typed as degrees Plato is recognised", "[app][bad]") {
    write("brew.json", R"({"kind": "brew", "name": "Brew 99", "on": "2026-06-01", "original_gravity_p": 1.048,
        "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    CHECK(refused(std::string(typingToday) + "record s.cellar brew.json") ==
          "/original_gravity_p: 1.048 degrees Plato is no wort; it looks like a specific gravity. Give it as "
          "original_gravity_sg, or in degrees Plato from 2 to 25.\n");
}

TEST_CASE_METHOD(Typing, "a lock that is no number says in what unit the number is wanted", "[app][bad]") {
    for (const std::string draw : {"abc", "nan", "1e308"}) {
        const std::string words =
            refused(std::string(typingToday) + "advise s.cellar --vessel Plover --lock draw=" + draw);
        CHECK(words == "/lock: \"" + draw + "\" is not a number. Give it in L: digits with a point or a comma.\n");
    }
}

TEST_CASE_METHOD(Typing, "what does not agree in a ledger is told in words by every command that shows it", "[app]") {
    write("dip.json", R"({"kind": "dip", "vessel": "Plover", "on": "2026-06-01", "volume_l": 100})");
    const std::string words = "The dip of 1 Jun 2026 says 100.0 L where ";
    const auto says = [&](const std::string& text) { return text.find(words) != std::string::npos; };
    CHECK(says(expect(std::string(typingToday) + "record s.cellar dip.json").out));
    CHECK(says(command("status s.cellar").out));
    CHECK(says(command("advise s.cellar --vessel Plover").out));
    const Answer table = command("history s.cellar --vessel Plover --csv");
    CHECK(says(table.err));
    CHECK_FALSE(says(table.out));
    for (const std::string text : {"status s.cellar --json", "advise s.cellar --vessel Plover --json",
                                   "history s.cellar --vessel Plover --json"})
        CHECK(says(command(text).out));
}

TEST_CASE_METHOD(Typing, "progress is shown on a terminal while a long file is recorded, and nowhere else", "[app]") {
    Json facts = Json::array();
    for (int i = 0; i < 80000; ++i)
        facts.push_back({{"kind", "reading"}, {"vessel", "Plover"}, {"on", "2026-05-01"}, {"note", std::to_string(i)}});
    write("long.json", facts.dump());
    const std::string line = std::string(typingToday) + "record s.cellar long.json";
    CHECK(expect(line).err.empty());
    expect(std::string(typingToday) + "undo s.cellar");
    const std::string shown = "cd '" + scratch.path().string() + "' && script -qec \"'" STAVELINE_PROGRAM "' " + line +
                              "\" shown.txt >/dev/null 2>&1 </dev/null";
    REQUIRE(std::system(shown.c_str()) == 0);
    const std::string seen = readAll(scratch / "shown.txt");
    CHECK(seen.find(" of 80000 entries") != std::string::npos);
    CHECK(seen.find("\033[KRecorded: 80000 entries.") != std::string::npos); // and is gone in the end
}
