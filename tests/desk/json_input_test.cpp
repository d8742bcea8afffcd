// SPDX-License-Identifier: GPL-3.0-or-later
// Input means what it says: nothing of a file is passed over, and a fault tells where it stands.
#include "desk/support.h"

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

Fault faultOf(const std::string& text) {
    INFO(text.substr(0, 300));
    const auto facts = parseRecords(text);
    REQUIRE_FALSE(facts);
    CHECK(facts.error().kind == FaultKind::input);
    CHECK(render(facts.error().cause).size() + facts.error().path.size() < 400); // nothing is echoed whole
    return facts.error();
}

Fault faultIn(const std::string& fields) {
    return faultOf(R"({"vessel": "P", "on": "2026-03-01", )" + fields + "}");
}

std::string allOf(const Fault& fault) {
    return fault.path + ": " + render(fault.cause) + " " + render(fault.remedy);
}

} // namespace

TEST_CASE("what is no JSON is told by line and column", "[desk][json][bad]") {
    const auto at = [](const std::string& text) { return render(faultOf(text).cause); };
    CHECK(at("[1,\n 2,\n ]") == "This is no JSON; it goes wrong at line 3, column 2.");
    CHECK(at("{\"kind\": \"dip\",}") == "This is no JSON; it goes wrong at line 1, column 16.");
    CHECK(at("{\n  \"note\": \"\u00e9\u00e9\" \"x\"}") == "This is no JSON; it goes wrong at line 2, column 18.");
    CHECK(at("[1e400]") == "1e400 is too large a number.");
    CHECK(at("// no comments\n[]") == "This is no JSON; it goes wrong at line 1, column 1.");
    CHECK(at("[{}").starts_with("This is no JSON; it goes wrong at line 1, column "));
    for (const char* empty : {"", "  \n"})
        CHECK(faultOf(empty).cause.key == "desk.empty_file");
    CHECK(faultOf(std::string("\xff\xfe[\0]\0", 6)).cause.key == "quantity.not_utf8");
}

TEST_CASE("a key given twice is a fault at its place, however deep", "[desk][json][bad]") {
    CHECK(faultIn(R"("kind": "dip", "volume_l": 100, "volume_l": 200)").path == "/volume_l");
    CHECK(faultIn(R"("kind": "dip", "kind": "sample", "volume_l": 1)").path == "/kind");
    CHECK(faultOf(R"([{"kind": "dip"}, [], 3, {"a": {}, "b": [{}, {"c": 1, "c": 1}]}])").path == "/3/b/1/c");
    CHECK(faultOf(R"({"a": 1, "\u0061": 2})").cause.key == "desk.key_twice"); // the same key, written otherwise
    CHECK_FALSE(parsePlan(R"({"draw_l": 10, "draw_l": 20})", {}));
    CHECK(parseRecords(R"([{"kind": "dip", "vessel": "P", "on": "2026-03-01", "volume_l": 1},
                           {"kind": "dip", "vessel": "P", "on": "2026-03-01", "volume_l": 1}])"));
}

TEST_CASE("brackets without end blow no stack", "[desk][json][bad]") {
    for (const char* open : {"[", "{\"a\":"}) {
        std::string text;
        for (int i = 0; i < 1000000; ++i)
            text += open;
        CHECK(faultOf(text).cause.key == "desk.deep_json");
    }
}

TEST_CASE("a gravity is given in one scale, and in the one its field names", "[desk][json][bad]") {
    CHECK(faultIn(R"("kind": "reading", "gravity_sg": 1.004, "gravity_p": 20)").path == "/gravity_sg");
    CHECK(faultIn(R"("kind": "base_recipe", "original_gravity_p": 12, "original_gravity_sg": 1.08)").path ==
          "/original_gravity_sg");
    CHECK(faultIn(R"("kind": "target", "gravity_low_p": 2, "gravity_low_sg": 1.01)").path == "/gravity_low_sg");
    CHECK(parseRecords(
        R"({"kind": "reading", "vessel": "P", "on": "2026-03-01", "gravity_sg": 1.004, "gravity_p": null})"));
    const Fault ten = faultIn(R"("kind": "base_recipe", "original_gravity_sg": 10)");
    CHECK(ten.path == "/original_gravity_sg");
    CHECK(render(ten.cause) == "10 is no gravity of beer or wort.");
}

TEST_CASE("whole numbers do not wrap", "[desk][json][bad]") {
    for (const char* severity : {"4294967299", "-4294967293", "18446744073709551615", "9223372036854775807"}) {
        const Fault fault =
            faultIn(R"("kind": "sitting", "faults": [{"fault": "ropy", "severity": )" + std::string(severity) + "}]");
        CHECK(fault.path == "/faults/0/severity");
        CHECK(fault.cause.key == "desk.out_of_range");
    }
    CHECK(faultIn(R"("kind": "choice", "proposal": 4294967297)").path == "/proposal");
}

TEST_CASE("what was written comes back in few figures and letters", "[desk][json][bad]") {
    CHECK(render(faultIn(R"("kind": "dip", "volume_l": 1e308)").cause) == "1e+308 is out of range.");
    CHECK(render(faultIn(R"("kind": "dip", "volume_l": 123456.5)").remedy) == "Give a value from 0 to 100000.");
    const std::string page(10000000, 'k');
    faultOf(R"({"kind": ")" + page + "\"}");
    faultIn(R"("kind": "dip", ")" + page + "\": 1");
    faultIn(R"("kind": "event", "what": ")" + page + "\"");
    faultIn(R"("kind": "dip", "volume_l": 1, "note": ")" + page + "\"");
}

TEST_CASE("slips of the unit and the type are met with what was meant", "[desk][json][bad]") {
    CHECK(allOf(faultOf(R"({"kind": "equipment", "on": "2026-03-01", "mash_and_lauter_efficiency": 82})")) ==
          "/mash_and_lauter_efficiency: 82 is per cent, and a share is wanted. Write 0.82: shares are parts of 1.");
    CHECK(faultOf(R"({"kind": "equipment", "on": "2026-03-01", "mash_and_lauter_efficiency": 182})").cause.key ==
          "desk.out_of_range");
    CHECK(allOf(faultOf(R"({"kind": 5})")) == "/kind: \"kind\" is of the wrong type. Write text in quotes.");
    CHECK(render(faultIn(R"("kind": "target", "wanted_traits": ["x"])").remedy) ==
          "Write fields in curly brackets: fault, severity.");
    const auto list = parsePlan("[]", {});
    REQUIRE_FALSE(list);
    CHECK(list.error().cause.key == "desk.no_plan");
    CHECK(render(faultIn(R"("kind": "dip", "volume_l": 1, "x": 2)").remedy).starts_with("Use one of: "));
}

TEST_CASE_METHOD(DeskFixture, "a gravity outside is told in both scales", "[desk][json][bad]") {
    addPlover();
    for (const auto& [plato, words, remedy] :
         {std::tuple{"40", "1.179, which is 40.0 degrees Plato, ",
                     "Use a gravity from 1.008 to 1.106, in degrees Plato 2 to 25."},
          std::tuple{"1.048", "1.048 degrees Plato is no wort",
                     "Give it as original_gravity_sg, or in degrees Plato from 2 to 25."}}) {
        const Fault fault = refused(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-03-01",
            "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
            "original_gravity_p": )" +
                                    std::string(plato) + "}");
        CHECK(fault.path == "/original_gravity_p");
        CHECK(render(fault.cause).starts_with(words));
        CHECK(render(fault.remedy) == remedy);
    }
}
