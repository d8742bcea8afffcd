// SPDX-License-Identifier: GPL-3.0-or-later
// Blending and packing from the command line: answers in words and JSON, statuses, bad input; nothing is written.
#include "program.h"

#include <nlohmann/json.hpp>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

constexpr const char* finishDay = "--today 2026-06-01 ";

struct Finish : Terminal {
    Finish() {
        expect(std::string(finishDay) + "new s.cellar --sample");
        before = readAll(scratch / "s.cellar");
    }
    ~Finish() { CHECK(readAll(scratch / "s.cellar") == before); }
    std::string before;
    Answer command(const std::string& text) { return run(finishDay + text); }
    /// The field that bad input names.
    std::string refused(const std::string& text) {
        const Answer answer = command(text);
        INFO(text << "\n" << answer.out << answer.err);
        CHECK(answer.status == 2);
        return answer.err.substr(0, answer.err.find(':'));
    }
};

} // namespace

TEST_CASE_METHOD(Finish, "a blend of two vessels is told in litres, a bench blend and what is missing",
                 "[app][blend]") {
    const Answer words = command("blend s.cellar --from Plover:60 --from Knot:10 --litres 20 --acidity 4.5");
    CHECK(words.status == 0);
    CHECK(words.out.starts_with("A blend of 20.0 L:"));
    CHECK(words.out.find(" mL Plover") != std::string::npos);
    CHECK(words.out.find("acidity ") != std::string::npos);
    CHECK(words.out.find("Caution: ") != std::string::npos);
    const Json json =
        Json::parse(command("blend s.cellar --from Plover:60 --from Knot:10 --litres 20 --ta 30 --json").out);
    CHECK(json["reached"] == false);
    REQUIRE(json["missing"].size() == 1);
    CHECK(json["missing"][0].get<std::string>().find("30.0 g/L is wanted") != std::string::npos);
    for (const auto& source : json["sources"])
        CHECK(source["ta"]["plus_minus_80"].get<double>() > 0);
    const Json coloured = Json::parse(command("blend s.cellar --from Plover --from Knot --colour 12 "
                                              "--colour-of Plover=10 --colour-of Knot=20 --json")
                                          .out);
    CHECK(coloured["blend"]["colour"]["value"].get<double>() == Approx(12).margin(.3));
}

TEST_CASE_METHOD(Finish, "bottles are primed by weight and guarded", "[app][package]") {
    const std::string ask = "package s.cellar --vessel Plover --litres 30 --volumes 2.8 --bottle-ml 750 ";
    const Answer refused = command(ask + "--gravity 1.002");
    CHECK(refused.status == 1); // a bottle nobody knows
    CHECK(refused.out.find("Refused: do not fill these bottles.") != std::string::npos);
    CHECK(refused.out.find("bottles of 750 mL") != std::string::npos);
    CHECK(refused.out.find(" g of sucrose") != std::string::npos);
    const Answer taken = command(ask + "--gravity 1.002 --override 'kept cold and drunk this week' --json");
    CHECK(taken.status == 0);
    const Json json = Json::parse(taken.out);
    CHECK(json["guard"]["answer"] == "overridden");
    CHECK(json["guard"]["override"] == "kept cold and drunk this week");
    CHECK(json["guard"]["limit_bar"].is_null());
    const Json rated = Json::parse(command(ask + "--gravity 1.000 --rating-bar 8 --warmest 22 --sugar dextrose "
                                                 "--head-bar 0.1 --head-c 15 --keg-c 4 --json")
                                       .out);
    CHECK(rated["priming"]["sugar"] == "dextrose");
    CHECK(rated["guard"]["margin_bar"].get<double>() > 0);
    CHECK(rated["residual"]["measured"] == true);
    CHECK(rated["keg_bar"].get<double>() == Approx(1.03).margin(.01));
    const Answer pounds = run(std::string(finishDay) + "--units us " + ask + "--gravity 1.000 --rating-bar 8");
    CHECK(pounds.out.find(" psi at 86 °F") != std::string::npos);
    CHECK(pounds.out.find(" bar") == std::string::npos);
}

TEST_CASE_METHOD(Finish, "the day sheet and the labels are written in every format", "[app][package][paper]") {
    const std::string ask = "package s.cellar --vessel Plover --litres 30 --volumes 2.5 --gravity 1.000 --rating-bar 8 "
                            "--name 'Plover 31' ";
    REQUIRE(command(ask).status == 0);
    for (const std::string ending : {"md", "html", "csv", "txt", "pdf"}) {
        INFO(ending);
        const Answer answer = command(ask + "--out day." + ending + " --label label." + ending + " --paper letter");
        CHECK(answer.status == 0);
        CHECK(answer.out.find("Written: day." + ending) != std::string::npos);
        CHECK(answer.out.find("Written: label." + ending) != std::string::npos);
        CHECK(readAll(scratch / ("day." + ending)).size() > 500);
    }
    CHECK(readAll(scratch / "day.pdf").starts_with("%PDF-"));
    CHECK(readAll(scratch / "day.md").starts_with("# Packaging day sheet for Plover 31"));
    CHECK(readAll(scratch / "label.md").find("computed and not measured") != std::string::npos);
    const Answer printed = command(ask + "--out -");
    CHECK(printed.out == readAll(scratch / "day.md"));
    CHECK(command(ask + "--json --out -").status == 2);
    CHECK(Json::accept(command(ask + "--json --out day.md").out));
}

TEST_CASE_METHOD(Finish, "a refused package is written as refused, and has no labels", "[app][package][paper]") {
    const Answer answer = command("package s.cellar --vessel Plover --litres 30 --volumes 2.5 --gravity 1.002 "
                                  "--out day.md --label label.pdf");
    CHECK(answer.status == 1);
    CHECK(readAll(scratch / "day.md").starts_with("# Refused: Plover is not to be packed"));
    CHECK(answer.err.starts_with("/label: "));
    CHECK_FALSE(std::filesystem::exists(scratch / "label.pdf"));
}

TEST_CASE_METHOD(Finish, "what cannot be blended or packed names its field", "[app][bad]") {
    CHECK(refused("blend s.cellar --from Plover --ta 5") == "/from");
    CHECK(refused("blend s.cellar --from Plover:-5 --from Knot --ta 5") == "/from/0");
    CHECK(refused("blend s.cellar --from Plover --from Nobody --ta 5") == "/from/1");
    CHECK(refused("blend s.cellar --from Plover --from Knot --ta sour") == "/ta");
    CHECK(refused("blend s.cellar --from Plover --from Knot --ph 33") == "/ph");
    CHECK(refused("blend s.cellar --from Plover --from Knot --colour 12") == "/colour");
    CHECK(refused("blend s.cellar --from Plover --from Knot --colour 12 --colour-of Wren=4") == "/colour_of");
    CHECK(refused("blend s.cellar --from Plover --from Knot --ta 5 --litres 9000") == "/litres");
    const std::string ask = "package s.cellar --vessel Plover --litres 30 ";
    CHECK(refused(ask) == "/volumes");
    CHECK(refused(ask + "--sugar-g-l 40") == "/sugar_g_l");
    CHECK(refused(ask + "--volumes 2.5 --gravity 1.012 --rating-bar 8") == "/gravity");
    CHECK(refused(ask + "--volumes 2.5 --rating-bar -3") == "/rating_bar");
    CHECK(refused(ask + "--volumes 2.5 --head-bar 1") == "/head_c");
    CHECK(refused(ask + "--volumes 2.5 --forced-test 1.001 --forced-on soon") == "/forced_on");
    CHECK(refused(ask + "--volumes 2.5 --forced-on 2026-05-01") == "/forced_on");
    CHECK(refused(ask + "--volumes 2.5 --lost 31") == "/lost_l");
    CHECK(refused(ask + "--volumes 2.5 --gravity 1.000 --rating-bar 8 --out day.docx") == "/out");
    CHECK(refused(ask + "--volumes 2.5 --gravity 1.000 --rating-bar 8 --label day.docx") == "/label");
    CHECK(refused(ask + "--volumes 2.5 --fruit sour_cherry") == "/fruit");
    CHECK(refused("package s.cellar --vessel Plover --litres -3 --volumes 2.5") == "/litres");
}

TEST_CASE_METHOD(Finish, "the sample cellar has lots in all states", "[app][lots]") {
    const Answer all = command("lots s.cellar");
    CHECK(all.status == 0);
    CHECK(all.out.find("Sour cherry 26: ") != std::string::npos);
    CHECK(all.out.find("taste the fruit in 6 days") != std::string::npos);
    CHECK(all.out.find("Plover 25 of 2 Sep 2025: 58 of 72 bottles of 750 mL left") != std::string::npos);
    CHECK(all.out.find("Plover draw 7: all of it packed") != std::string::npos);
    const Json blend = Json::parse(command("lots s.cellar --lot 'Winter blend' --json").out);
    CHECK(blend["litres"].get<double>() == Approx(83));
    REQUIRE(blend["parts"].size() == 2);
    CHECK(blend["parts"][0]["share"].get<double>() + blend["parts"][1]["share"].get<double>() == Approx(1));
    CHECK(blend["beer"]["ta"]["measured"] == true);
    const Answer cherry = command("lots s.cellar --lot 'Sour cherry 26'");
    CHECK(cherry.out.find("8.00 kg of sour cherries added") != std::string::npos);
    CHECK(cherry.out.find("40.0 L came from Plover draw 8") != std::string::npos);
    CHECK(command("status s.cellar").out.find("Sour cherry 26: ") != std::string::npos);
    CHECK(refused("lots s.cellar --lot Nobody") == "/lot");
}

TEST_CASE_METHOD(Finish, "a lot is packed and blended by its name", "[app][lots][package]") {
    const std::string held = "package s.cellar --lot 'Dunlin draw 6' --litres 15 --sugar-g-l 4 --bottle sparkling "
                             "--bottle-ml 750 --residual 1 ";
    const Answer falling = command(held);
    CHECK(falling.status == 1);
    CHECK(falling.out.find("The gravity still falls.") != std::string::npos);
    const Answer blend = command("blend s.cellar --from 'Winter blend:60' --from 'Plover draw 8' --litres 40 --ta 7");
    CHECK(blend.status == 0);
    CHECK(blend.out.find(" L of Winter blend") != std::string::npos);
    CHECK(refused("package s.cellar --litres 15 --sugar-g-l 4") == "/vessel");
    CHECK(refused("package s.cellar --lot 'Plover draw 7' --litres 15 --sugar-g-l 4") == "/lot");
    CHECK(refused("blend s.cellar --from 'Winter blend:90' --from Plover --ta 7") == "/from/0");
}
