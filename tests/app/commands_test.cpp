// SPDX-License-Identifier: GPL-3.0-or-later
// The command line at work and under bad input: status, words, and nothing lost.
#include "program.h"

#include <nlohmann/json.hpp>

#include <map>
#include <set>
#include <sstream>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

constexpr const char* today = "--today 2026-06-01 ";

struct Sample : Terminal {
    Sample() { expect(std::string(today) + "new s.cellar --sample"); }
    Answer command(const std::string& text) { return run(today + text); }
};

} // namespace

TEST_CASE_METHOD(Sample, "the sample cellar shows one vessel due, one with a fault, one on target", "[app]") {
    const Json status = Json::parse(command("status s.cellar --json").out);
    REQUIRE(status.size() == 3);
    CHECK(status[0]["vessel"] == "Plover");
    CHECK(status[0]["due"] == "taste in 3 days");
    CHECK_FALSE(status[0].contains("fault"));
    CHECK(status[2]["fault"] == "ropy");
    const Json knot = Json::parse(command("advise s.cellar --vessel Knot --json").out);
    for (const char* dimension : {"acidity", "funk", "body"})
        CHECK(knot["verdicts"][dimension]["verdict"] == "hold");
    CHECK(knot["proposals"].empty());
}

TEST_CASE_METHOD(Sample, "status tells an age as the window does and a vessel once", "[app]") {
    const std::string words = command("status s.cellar").out;
    CHECK(words.find("cask of used oak, 20 months old on average") != std::string::npos);
    CHECK(words.find("1200 L, foeder, 3.7 years old on average") != std::string::npos);
    CHECK(words.find("keg of steel, 8 months old on average") != std::string::npos);
}

TEST_CASE_METHOD(Sample, "status tells no draw of a retired vessel", "[app]") {
    write("retire.json", R"({"kind": "retire", "vessel": "Knot", "on": "2026-06-01", "reason": "leaks"})");
    REQUIRE(command("record s.cellar retire.json").status == 0);
    std::istringstream lines(command("status s.cellar").out);
    int found = 0;
    for (std::string line; std::getline(lines, line);)
        if (line.find("Knot: ") == 0) {
            ++found;
            CHECK(line.find("retired on 1 Jun 2026") != std::string::npos);
            CHECK(line.find("draw") == std::string::npos);
        }
    CHECK(found == 1);
}

TEST_CASE_METHOD(Sample, "advice says each caution once", "[app]") {
    const std::string words = command("advise s.cellar --vessel Plover").out;
    std::istringstream lines(words);
    std::map<std::string, int> times;
    for (std::string line; std::getline(lines, line);)
        if (line.find("Caution: ") != std::string::npos)
            ++times[line];
    CHECK(times.size() >= 5);
    for (const auto& [line, count] : times) {
        INFO(line);
        CHECK(count == 1);
    }
}

TEST_CASE_METHOD(Sample, "hold and fault first are full answers", "[app]") {
    CHECK(command("advise s.cellar --vessel Knot").status == 0);
    const Answer answer = command("advise s.cellar --vessel Dunlin --json");
    CHECK(answer.status == 0);
    const Json dunlin = Json::parse(answer.out);
    CHECK(dunlin["fault_first"] == true);
    CHECK(dunlin["proposals"].empty());
    CHECK_FALSE(dunlin["notes"].empty());
    REQUIRE(dunlin["answers"].size() == 1);
    CHECK(dunlin["answers"][0]["title"].get<std::string>().starts_with("Fault first: "));
    CHECK(dunlin["answers"][0]["lines"].size() >= 5);
    const std::string words = command("advise s.cellar --vessel Dunlin").out;
    for (const auto& line : dunlin["answers"][0]["lines"])
        CHECK(words.find(line["words"].get<std::string>()) != std::string::npos);
    CHECK(command("advise s.cellar --vessel Knot").out.find("Hold: ") != std::string::npos);
}

TEST_CASE_METHOD(Sample, "a lever locked without a value is held as it is", "[app]") {
    for (const char* lever : {"draw", "interval", "yeast", "sacch_temperature"}) {
        INFO(lever);
        const Answer answer = command("advise s.cellar --vessel Plover --json --lock " + std::string(lever));
        REQUIRE(answer.status == 0);
        const Json advice = Json::parse(answer.out);
        for (const auto& proposal : advice["proposals"])
            for (const auto& move : proposal["moves"])
                CHECK(move["lever"] != lever);
    }
    CHECK(command("advise s.cellar --vessel Plover --lock acidity").status == 2);
    CHECK(command("advise s.cellar --vessel Plover --lock draw=").status == 2);
}

TEST_CASE_METHOD(Sample, "advice respects locks and what is not at hand, and says it again the same", "[app]") {
    const std::string ask =
        "advise s.cellar --vessel Plover --lock draw=79 --lock yeast=ale_clean --without rye_malt --json";
    const Answer first = command(ask);
    REQUIRE(first.status == 0);
    CHECK(first.out == command(ask).out);
    const Json advice = Json::parse(first.out);
    for (const auto& proposal : advice["proposals"]) {
        int moved = 0;
        for (const auto& move : proposal["moves"]) {
            CHECK(move["lever"] != "yeast");
            if (move["lever"] == "draw")
                CHECK(move["to"] == 79);
            else
                ++moved;
        }
        CHECK(moved <= 3); // two of the adviser's, and what the missing malt forces
    }
}

TEST_CASE_METHOD(Sample, "choosing stores a forecast that later advice does not change", "[app]") {
    const Json advice = Json::parse(command("advise s.cellar --vessel Plover --json").out);
    REQUIRE(advice["proposals"].size() >= 1);
    CHECK(command("advise s.cellar --vessel Plover --choose 1").status == 0);
    const Json history = Json::parse(command("history s.cellar --vessel Plover --json").out);
    const auto& forecast = history["rows"].back();
    CHECK(history["promises"].size() > 3);
    CHECK(history["promises"][0]["acidity"]["promised"].is_number());
    CHECK(history["record"].dump().find("promises inside their range") != std::string::npos);
    CHECK(history["learned"].dump().find("than the model says") != std::string::npos);
    CHECK(forecast["what"] == "forecast");
    CHECK(forecast["acidity_forecast"].get<double>() ==
          Approx(advice["proposals"][0]["next_draw"]["acidity"]["value"].get<double>()).margin(1e-9));
    CHECK(command("advise s.cellar --vessel Plover --choose 9").status == 2);
    CHECK(command("undo s.cellar").out == "Taken back: choice for Plover.\n");
    CHECK(command("advise s.cellar --vessel Knot --choose 1").status == 1); // nothing is proposed, which is no mistake
    CHECK(command("advise s.cellar --vessel Knot --choose 0").status == 0);
}

TEST_CASE_METHOD(Sample, "more levers at once are the brewer's choice", "[app]") {
    const auto levers = [&](const char* option) {
        const Json advice = Json::parse(command(std::string("advise s.cellar --vessel Plover --json") + option).out);
        std::size_t most = 0;
        for (const Json& proposal : advice["proposals"])
            most = std::max(most, proposal["moves"].size());
        return most;
    };
    CHECK(levers(" --levers 1") <= 2); // a late addition goes with its rest
    CHECK(levers(" --levers 4") >= levers(""));
    CHECK(command("advise s.cellar --vessel Plover --levers 9").status == 2);
}

TEST_CASE_METHOD(Sample, "a plan of nothing is leaving it alone", "[app]") {
    write("nothing.json", "{}");
    const Json advice = Json::parse(command("advise s.cellar --vessel Plover --json").out);
    const Json plan = Json::parse(command("predict s.cellar --vessel Plover --plan nothing.json").out);
    for (const char* dimension : {"acidity", "funk", "body"})
        for (const char* number : {"value", "low_80", "high_80"}) {
            const auto& alone = advice["leave_it_alone"];
            CHECK(plan["next_draw"]["bands"][dimension][number].get<double>() ==
                  Approx(alone["next_draw"][dimension][number].get<double>()).margin(1e-9));
            CHECK(plan["if_kept_up"][dimension][number].get<double>() ==
                  Approx(alone["if_kept_up"][dimension][number].get<double>()).margin(1e-9));
        }
}

TEST_CASE_METHOD(Sample, "the brew sheet comes in five formats", "[app][sheet]") {
    for (const std::string ending : {"md", "html", "csv", "txt", "pdf"}) {
        INFO(ending);
        CHECK(command("sheet s.cellar --vessel Plover --out sheet." + ending).status == 0);
        CHECK(readAll(scratch / ("sheet." + ending)).size() > 500);
    }
    CHECK(readAll(scratch / "sheet.pdf").starts_with("%PDF-"));
    CHECK(command("sheet s.cellar --vessel Plover --out sheet.docx").status == 2);
    CHECK(command("sheet s.cellar --vessel Plover --out no/such/folder/sheet.md").status == 3);
}

TEST_CASE_METHOD(Sample, "a sheet comes on the paper asked for, else on that of the country", "[app][sheet]") {
    const auto sizeOf = [&](const std::string& arguments, const std::string& before) {
        REQUIRE(run(today + ("sheet s.cellar --vessel Plover --out s.pdf" + arguments), before).status == 0);
        const std::string pdf = readAll(scratch / "s.pdf");
        const auto at = pdf.find("/MediaBox [");
        REQUIRE(at != std::string::npos);
        return pdf.substr(at + 11, pdf.find(']', at) - at - 11);
    };
    // ANSI/ASME Y14.1: 8.5 x 11 in; ISO 216: 210 x 297 mm
    CHECK(sizeOf(" --paper letter", "").find("612") != std::string::npos);
    CHECK(sizeOf(" --paper a4", "LC_ALL=en_US.UTF-8").find("595") != std::string::npos);
    CHECK(sizeOf("", "LC_ALL=en_US.UTF-8").find("612") != std::string::npos);
    CHECK(sizeOf("", "LC_ALL=de_DE.UTF-8").find("595") != std::string::npos);
    const Answer refused = command("sheet s.cellar --vessel Plover --out t.pdf --paper a5");
    CHECK(refused.status == 2);
    CHECK(refused.err.find("letter") != std::string::npos);
}

TEST_CASE_METHOD(Sample, "a sheet is written without a word of the toolkit", "[app][sheet]") {
    const Answer answer = run(std::string(today) + "sheet s.cellar --vessel Plover --out s.pdf",
                              "env -u XDG_RUNTIME_DIR -u DISPLAY -u WAYLAND_DISPLAY");
    CHECK(answer.status == 0);
    CHECK(answer.err.empty());
}

TEST_CASE_METHOD(Sample, "version, units and paper are told by the help", "[app]") {
    const Answer version = run("--version");
    CHECK(version.status == 0);
    CHECK(version.out.starts_with("staveline "));
    CHECK(run("--help").out.find("--units") != std::string::npos);
    CHECK(run("--help").out.find("US gallons") != std::string::npos);
    CHECK(run("sheet --help").out.find("--paper") != std::string::npos);
    CHECK(command("status s.cellar --units us").out.find("US gal") != std::string::npos);
}

TEST_CASE_METHOD(Sample, "faults go to their field with an exit status of their own", "[app][bad]") {
    struct Bad {
        std::string command;
        int status;
        std::string words;
    };
    write("future.json", R"({"kind": "dip", "vessel": "Plover", "on": "2030-01-01", "volume_l": 5})");
    write("broken.json", R"({"kind": "dip",)");
    write("garbage.cellar", "this is no book");
    write("empty.cellar", "");
    const Bad bad[] = {
        {"status missing.cellar", 3, ""},
        {"status garbage.cellar", 3, ""},
        {"status empty.cellar", 3, ""},
        {"status .", 3, ""},
        {"new s.cellar", 3, ""},
        {"new no/such/folder/x.cellar", 3, ""},
        {"record s.cellar missing.json", 3, "missing.json"},
        {"record s.cellar broken.json", 2, "JSON"},
        {"record s.cellar future.json", 2, "/on"},
        {"advise s.cellar --vessel Plovr", 2, "Did you mean \"Plover\"?"},
        {"advise s.cellar --vessel Plover --lock moon=3", 2, ""},
        {"advise s.cellar --vessel Plover --lock bitterness=900", 2, ""},
        {"advise s.cellar --vessel Plover --lock moon", 2, "LEVER=VALUE"},
        {"advise s.cellar", 2, "--vessel"},
        {"predict s.cellar --vessel Plover --plan broken.json", 2, "JSON"},
        {"frobnicate s.cellar", 2, ""},
        {"--today 2026-13-01 status s.cellar", 2, ""},
    };
    const std::string before = readAll(scratch / "s.cellar");
    for (const auto& one : bad) {
        const Answer answer = command(one.command);
        INFO(one.command << "\n" << answer.out << answer.err);
        CHECK(answer.status == one.status);
        CHECK((answer.err + answer.out).find(one.words) != std::string::npos);
        CHECK((answer.err + answer.out).size() > 10);
    }
    CHECK(readAll(scratch / "s.cellar") == before);
    CHECK(readAll(scratch / "garbage.cellar") == "this is no book");
}

TEST_CASE_METHOD(Sample, "faults are machine-readable with --json", "[app][bad]") {
    const Answer answer = command("advise s.cellar --vessel Plovr --json");
    const Json fault = Json::parse(answer.out)["fault"];
    CHECK(fault["path"] == "/vessel");
    CHECK_FALSE(fault["cause"].get<std::string>().empty());
    CHECK_FALSE(fault["remedy"].get<std::string>().empty());
}

TEST_CASE_METHOD(Sample, "a plan of your own is predicted for this and the next draw", "[app]") {
    write("same.json", "{}");
    write("bitter.json", R"({"bitterness_ibu": 40})");
    const Json same = Json::parse(command("predict s.cellar --vessel Plover --plan same.json").out);
    const Json bitter = Json::parse(command("predict s.cellar --vessel Plover --plan bitter.json").out);
    CHECK(same["this_draw"] == bitter["this_draw"]);
    CHECK(bitter["next_draw"]["bitterness_ibu"] > same["next_draw"]["bitterness_ibu"]);
    CHECK(bitter["next_draw"]["scores"]["acidity"] < same["next_draw"]["scores"]["acidity"]);
}

TEST_CASE_METHOD(Sample, "without a display the window says so and names the commands", "[app]") {
    const Answer answer = [&] {
        const std::string command = "cd '" + scratch.path().string() +
                                    "' && env -u DISPLAY -u WAYLAND_DISPLAY -u QT_QPA_PLATFORM '" STAVELINE_PROGRAM
                                    "' open s.cellar >out.txt 2>err.txt";
        const int raw = std::system(command.c_str());
        return Answer{WEXITSTATUS(raw), readAll(scratch / "out.txt"), readAll(scratch / "err.txt")};
    }();
    CHECK(answer.status == 1);
    CHECK(answer.err.find("advise") != std::string::npos);
}

TEST_CASE_METHOD(Terminal, "answers are JSON whatever a vessel or a book is called", "[app]") {
    const Json made = Json::parse(expect("new 'five \"inch\".cellar' --json").out);
    CHECK(made["book"] == "five \"inch\".cellar");
    write("keg.json", R"({"kind": "vessel", "name": "5\" keg \\ left", "capacity_l": 20, "shape": "keg"})");
    const Json recorded = Json::parse(expect("record 'five \"inch\".cellar' keg.json --json").out);
    CHECK(recorded["edit"].get<std::string>().find("5\" keg \\ left") != std::string::npos);
    const Json undone = Json::parse(expect("undo 'five \"inch\".cellar' --json").out);
    CHECK(undone["edit"] == recorded["edit"]);
}

TEST_CASE_METHOD(Terminal, "the advice in words says nothing twice before its plans", "[app][advise]") {
    expect("--today 2026-11-30 new s.cellar --sample");
    for (const std::string vessel : {"Plover", "Knot", "Dunlin"}) {
        const std::string words = expect("--today 2026-11-30 advise s.cellar --vessel " + vessel).out;
        std::istringstream lines(words.substr(0, words.find("\n\n")));
        std::set<std::string> said;
        for (std::string line; std::getline(lines, line);) {
            const auto from = line.find(": ");
            const std::string sentence =
                line.substr(from == std::string::npos ? line.find_first_not_of(' ') : from + 2);
            INFO(words);
            CHECK(said.insert(sentence).second);
        }
    }
}

TEST_CASE_METHOD(Terminal, "where nobody tasted in this cycle the advice asks for a tasting", "[app][advise]") {
    expect("--today 2026-11-30 new s.cellar --sample");
    const std::string words = expect("--today 2026-11-30 advise s.cellar --vessel Plover").out;
    CHECK(words.find("Taste before you brew") != std::string::npos);
    CHECK(words.find("ne more taster") == std::string::npos);
}

TEST_CASE_METHOD(Sample, "a report tells of the program and the check, and of nothing recorded", "[app]") {
    const Answer answer = expect("report s.cellar");
    for (const char* part : {"Staveline ", "no damage", "Vessels in the book: 3"})
        CHECK(answer.out.find(part) != std::string::npos);
    for (const char* name : {"Plover", "Knot", "s.cellar"})
        CHECK(answer.out.find(name) == std::string::npos);
    write("noise.cellar", "this is no book");
    CHECK(expect("report noise.cellar").out.find("The book does not open: ") != std::string::npos);
    CHECK(expect("report").out.find("No book was named.") != std::string::npos);
    expect("report s.cellar --out report.txt");
    CHECK(readAll(scratch / "report.txt") == answer.out);
}
