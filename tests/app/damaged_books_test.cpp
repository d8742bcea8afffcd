// SPDX-License-Identifier: GPL-3.0-or-later
// Damaged books on the command line: a script must not take a wrong answer for a right one, and nothing is written.
// STAVELINE_FLIPS sets how many bits are flipped, STAVELINE_SEED where to begin.
#include "program.h"

#include <cstdlib>
#include <nlohmann/json.hpp>
#include <random>
#include <sqlite3.h>
#include <vector>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

constexpr const char* today = "--today 2026-06-01 ";
constexpr int damaged = 3;

std::size_t setting(const char* name, std::size_t otherwise) {
    const char* text = std::getenv(name);
    return text ? std::strtoull(text, nullptr, 10) : otherwise;
}

struct Cellar : Terminal {
    Cellar() {
        expect(std::string(today) + "new s.cellar --sample");
        write("dip.json", R"({"kind": "dip", "vessel": "Plover", "on": "2026-06-01", "volume_l": 180})");
        write("plan.json", "{}");
        write("again.json", R"({"kind": "dip", "vessel": "Plover", "on": "2026-06-01", "volume_l": 181})");
        expect(std::string(today) + "record s.cellar dip.json");
        expect(std::string(today) + "record s.cellar again.json");
        expect(std::string(today) + "undo s.cellar"); // something to undo and something to redo
    }
    Answer command(const std::string& text) { return run(today + text); }
    void tamper(const std::string& sql) const {
        sqlite3* file = nullptr;
        REQUIRE(sqlite3_open((scratch / "s.cellar").c_str(), &file) == SQLITE_OK);
        REQUIRE(sqlite3_exec(file, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
        REQUIRE(sqlite3_changes(file) > 0);
        sqlite3_close(file);
    }
};

const std::vector<std::string> reading = {"status s.cellar",
                                          "history s.cellar --vessel Plover --csv",
                                          "advise s.cellar --vessel Plover",
                                          "sheet s.cellar --vessel Plover --out sheet.html",
                                          "predict s.cellar --vessel Plover --plan plan.json",
                                          "check s.cellar"};
const std::vector<std::string> writing = {"record s.cellar dip.json", "undo s.cellar", "redo s.cellar",
                                          "advise s.cellar --vessel Plover --choose 0"};

} // namespace

TEST_CASE_METHOD(Cellar, "a changed row is named by every command, and no command writes", "[app][bad]") {
    for (const std::string vessel : {"Plover", "Knot"}) {
        const std::string sound = readAll(scratch / "s.cellar");
        tamper("UPDATE draw_off SET volume_l = 10.0 WHERE vessel = (SELECT id FROM vessel WHERE name = '" + vessel +
               "')");
        const std::string before = readAll(scratch / "s.cellar");
        for (const auto& commands : {reading, writing})
            for (const auto& text : commands)
                for (const std::string json : {"", " --json"}) {
                    const Answer answer = command(text + json);
                    INFO(vessel << ": " << text << json << "\n" << answer.out << answer.err);
                    CHECK(answer.status == damaged);
                    CHECK((answer.err + answer.out).find("was changed outside Staveline.") != std::string::npos);
                    if (!json.empty())
                        CHECK(Json::accept(answer.out));
                }
        CHECK(readAll(scratch / "s.cellar") == before);
        write("s.cellar", sound);
    }
}

TEST_CASE_METHOD(Cellar, "a lost row is missed by every command", "[app][bad]") {
    tamper("DELETE FROM draw_off WHERE id = (SELECT max(id) FROM draw_off)");
    for (const auto& commands : {reading, writing})
        for (const auto& text : commands) {
            INFO(text);
            CHECK(command(text).status == damaged);
        }
}

TEST_CASE_METHOD(Cellar, "a name that is no longer text is answered in JSON", "[app][bad]") {
    tamper("UPDATE vessel SET name = CAST(x'506CFF766572' AS TEXT) WHERE name = 'Plover'");
    const Answer answer = command("status s.cellar --json");
    CHECK(answer.status == damaged);
    CHECK(Json::accept(answer.out));
}

TEST_CASE_METHOD(Cellar, "flipped bits give no wrong answer without a word, and take no write", "[app][bad]") {
    const auto seed = setting("STAVELINE_SEED", 71);
    const auto flips = setting("STAVELINE_FLIPS", 60);
    const std::string sound = readAll(scratch / "s.cellar");
    const std::vector<std::string> asked = {"status s.cellar --json", "history s.cellar --vessel Plover --json"};
    std::vector<std::string> right;
    for (const auto& text : asked)
        right.push_back(command(text).out);
    std::mt19937_64 random(seed);
    std::size_t seen = 0;
    for (std::size_t flip = 0; flip < flips; ++flip) {
        std::string bytes = sound;
        const auto bit = random() % (bytes.size() * 8);
        bytes[bit / 8] = static_cast<char>(static_cast<unsigned char>(bytes[bit / 8]) ^ (1U << bit % 8));
        write("s.cellar", bytes);
        const bool bad = command("check s.cellar").status != 0;
        seen += bad ? 1 : 0;
        INFO("STAVELINE_SEED=" << seed << ", flip " << flip << ", bit " << bit);
        for (std::size_t i = 0; i < asked.size(); ++i) {
            const Answer answer = command(asked[i]);
            CHECK(answer.status == (bad ? damaged : 0));
            if (answer.status == 0)
                CHECK(answer.out == right[i]);
        }
        if (!bad)
            continue;
        for (const auto& text : writing) {
            CHECK(command(text).status == damaged);
            CHECK(readAll(scratch / "s.cellar") == bytes);
        }
    }
    CHECK(seen > 0);
}
