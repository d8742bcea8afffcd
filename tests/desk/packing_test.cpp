// SPDX-License-Identifier: GPL-3.0-or-later
// What the book says of a vessel bears on whether its beer may go into a bottle.
#include "desk/packing.h"
#include "desk/support.h"

#include <algorithm>
#include <nlohmann/json.hpp>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;
using finishing::GuardAnswer;

namespace {

struct PackFixture : DeskFixture {
    PackFixture() { addPlover(); }

    void read(const std::string& on, double gravity) {
        record(R"({"kind": "reading", "vessel": "Plover", "on": ")" + on + R"(", "gravity_sg": )" +
               std::to_string(gravity) + "}");
    }
    void fill(const std::string& kind, const std::string& on) {
        record(R"({"kind": ")" + kind + R"(", "vessel": "Plover", "on": ")" + on + R"(", "volume_l": 5})");
    }
    static PackingRequest wish(double volumes = 2.5) {
        PackingRequest request;
        request.vessel = "Plover";
        request.litres = {40};
        request.volumes = Co2Volumes{volumes};
        request.package.rating = GaugePressure{8};
        return request;
    }
    [[nodiscard]] PackingAnswer answer(const PackingRequest& request) const {
        auto packed = desk->pack(request);
        if (!packed)
            FAIL(packed.error().path << ": " << render(packed.error().cause));
        return *packed;
    }
    [[nodiscard]] bool refusedFor(const PackingRequest& request, const std::string& key) const {
        const auto verdict = answer(request).verdict;
        return verdict.answer == GuardAnswer::refused &&
               std::any_of(verdict.refusals.begin(), verdict.refusals.end(),
                           [&](const Message& message) { return message.key == key; });
    }
    /// Three equal gravities over three months, in a vessel refilled long ago.
    void settle(double gravity) {
        fill("refill", "2025-06-20");
        for (const char* on : {"2025-11-20", "2026-01-10", "2026-03-01"})
            read(on, gravity);
    }
};

} // namespace

TEST_CASE_METHOD(PackFixture, "beer that is measured, old and dry goes into a bottle that holds it", "[desk][pack]") {
    settle(1.001);
    const auto before = desk->revision();
    PackingRequest request = wish();
    request.forced = SpecificGravity{1.001};
    const auto packed = answer(request);
    CHECK(desk->revision() == before);
    CHECK(packed.verdict.answer == GuardAnswer::clear);
    CHECK(packed.verdict.proof.whole());
    CHECK(packed.verdict.floor.sg == Approx(1.000));
    CHECK(packed.verdict.until == day(2026, 4, 1)); // 31 days after the last reading
    CHECK_FALSE(packed.cautions.empty());
    // 16 C: 0.942 volumes in the beer; 1.558 to come, 3.844 g/L each, 40 L
    CHECK(packed.residual.value.vol == Approx(.942).margin(.002));
    CHECK(packed.priming.batch.kg == Approx((2.5 - .942) * 3.844 * .04).margin(.001));
}

TEST_CASE_METHOD(PackFixture, "a bottle without rating, a vessel never measured and a young refill are refused",
                 "[desk][pack]") {
    CHECK(refusedFor(wish(), "finishing.guard.no_gravity"));
    CHECK_FALSE(answer(wish()).verdict.margin()); // no word on the extract, none on what is to spare
    CHECK(nlohmann::json::parse(toJson(answer(wish())))["guard"]["extract_vol"].is_null());
    settle(1.001);
    PackingRequest unrated = wish();
    unrated.package.rating.reset();
    CHECK(refusedFor(unrated, "finishing.guard.no_rating"));
    unrated.make = "thick";
    CHECK(answer(unrated).verdict.answer != GuardAnswer::refused);
    fill("top_up", "2026-02-20");
    CHECK(refusedFor(wish(), "finishing.guard.young"));
}

TEST_CASE_METHOD(PackFixture, "pressure beyond the bottle is told as too much, without a sign", "[desk][pack]") {
    settle(1.001);
    PackingRequest request = wish();
    request.package.rating = GaugePressure{2};
    const auto packed = answer(request);
    REQUIRE(packed.verdict.margin()->barOverAir < 0);
    std::string words;
    for (const Message& message : packed.words)
        words += render(message) + '\n';
    INFO(words);
    CHECK(words.find("too much.") != std::string::npos);
    CHECK(words.find("to spare") == std::string::npos);
    CHECK(words.find(" -") == std::string::npos);
}

TEST_CASE_METHOD(PackFixture, "beer that was racked or pitched wants the proof", "[desk][pack]") {
    settle(1.001);
    record(R"({"kind": "event", "vessel": "Plover", "on": "2026-02-25", "what": "racked"})");
    CHECK(refusedFor(wish(), "finishing.guard.moved"));
    REQUIRE(desk->undo());
    for (const char* sleeps : {"tasters", "cleaned", "repaired", "leaked"}) {
        INFO(sleeps);
        record(R"({"kind": "event", "vessel": "Plover", "on": "2026-02-25", "what": ")" + std::string(sleeps) + "\"}");
        CHECK(answer(wish()).verdict.answer != GuardAnswer::refused);
        REQUIRE(desk->undo());
    }
}

TEST_CASE_METHOD(PackFixture, "diastatic yeast is never taken back, nor lost on the way from another vessel",
                 "[desk][pack]") {
    settle(1.002);
    record(R"([{"kind": "vessel", "name": "Teal", "capacity_l": 100},
               {"kind": "refill", "vessel": "Teal", "on": "2025-06-21", "volume_l": 50},
               {"kind": "culture", "vessel": "Teal", "on": "2025-06-22", "diastatic": true},
               {"kind": "top_up", "vessel": "Plover", "on": "2025-07-20", "volume_l": 2, "from": "Teal"}])");
    CHECK(answer(wish()).verdict.floor.sg == Approx(.996));
    record(R"({"kind": "culture", "vessel": "Teal", "on": "2025-07-01", "diastatic": false})");
    CHECK(answer(wish()).verdict.floor.sg == Approx(.996));
    record(R"({"kind": "top_up", "vessel": "Teal", "on": "2025-08-01", "volume_l": 2, "from": "Plover"})"); // round
    CHECK(answer(wish()).verdict.floor.sg == Approx(.996));
}

TEST_CASE_METHOD(PackFixture, "beer taken over young or of unknown age wants the proof", "[desk][pack]") {
    PackingRequest request = wish();
    request.vessel = "Teal";
    request.litres = {20};
    for (const char* age : {R"(, "age_years": 0.02)", ""}) {
        record(R"([{"kind": "vessel", "name": "Teal", "capacity_l": 100},
                   {"kind": "opening", "vessel": "Teal", "on": "2026-02-01", "volume_l": 90, "gravity_sg": 1.002)" +
               std::string(age) + "}]");
        CHECK(refusedFor(request, "finishing.guard.taken_over"));
        REQUIRE(desk->undo());
    }
}

TEST_CASE_METHOD(PackFixture, "a retired vessel is not packed, a tank is asked for its CO2, a faulty beer is told",
                 "[desk][pack][bad]") {
    settle(1.001);
    record(R"({"kind": "sitting", "vessel": "Plover", "on": "2026-02-01", "scores": [],
               "faults": [{"fault": "mousy", "severity": 3}]})");
    CHECK(answer(wish()).cautions.front().key.find("fault") != std::string::npos);
    PackingRequest frozen = wish();
    frozen.keg = Celsius{-300};
    CHECK(desk->pack(frozen).error().path == "/keg_c");
    record(R"([{"kind": "vessel", "name": "Teal", "shape": "tank", "material": "steel", "capacity_l": 100},
               {"kind": "refill", "vessel": "Teal", "on": "2025-06-21", "volume_l": 50}])");
    PackingRequest tank = wish();
    tank.vessel = "Teal";
    CHECK(desk->pack(tank).error().path == "/residual_vol");
    record(R"({"kind": "retire", "vessel": "Teal", "on": "2026-03-01"})");
    CHECK(desk->pack(tank).error().path == "/vessel");
}

TEST_CASE_METHOD(PackFixture, "a yeast counts as it was when it went in", "[desk][pack][own]") {
    settle(1.002);
    record(R"([{"kind": "own_yeast", "on": "2025-01-01", "ingredient": "mine", "name": "mine", "like": "ale_clean",
                "takes_dextrin": 0.5},
               {"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2025-06-21", "yeast": "mine",
                "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
                "original_gravity_p": 12},
               {"kind": "top_up", "vessel": "Plover", "on": "2025-07-20", "volume_l": 2, "brew": "Brew 1"}])");
    CHECK(answer(wish()).verdict.floor.sg == Approx(.996));
    record(R"({"kind": "own_yeast", "on": "2026-03-01", "ingredient": "mine", "name": "mine", "like": "ale_clean",
               "takes_dextrin": 0})");
    CHECK(answer(wish()).verdict.floor.sg == Approx(.996)); // the beer has the yeast of its day
}

TEST_CASE_METHOD(PackFixture, "beer holds the CO2 of the month that its room has", "[desk][pack][room]") {
    settle(1.001);
    record(R"([{"kind": "room", "on": "2025-01-01", "name": "Barn", "coldest_c": 4, "warmest_c": 28,
                "coldest_month": "march"},
               {"kind": "refit", "vessel": "Plover", "on": "2026-03-01", "room": "Barn"}])");
    // By Henry's law cold beer holds more: at 16 C, the mean of the year, .942 volumes; at 4 C about 1.4.
    CHECK(answer(wish()).residual.value.vol > 1.3);
}

TEST_CASE_METHOD(PackFixture, "the lowest gravity of earlier beer, the culture and its sugar set the floor",
                 "[desk][pack]") {
    settle(1.002);
    CHECK(answer(wish()).verdict.floor.sg == Approx(.998)); // no earlier beer was measured
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2025-06-15", "gravity_sg": 0.999})");
    CHECK(answer(wish()).verdict.floor.sg == Approx(.998));
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2025-06-16", "gravity_sg": 0.997})");
    CHECK(answer(wish()).verdict.floor.sg == Approx(.996));
    REQUIRE(desk->undo());
    record(R"({"kind": "culture", "vessel": "Plover", "on": "2025-06-02", "diastatic": true})");
    CHECK(answer(wish()).verdict.floor.sg == Approx(.996));
    REQUIRE(desk->undo());
    record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2025-06-02", "original_gravity_p": 12,
               "sugar_share": 0.2, "grist": [{"grain": "pilsner", "share": 1}],
               "mash": [{"temperature_c": 66, "minutes": 60}], "yeast": "ale_clean"})");
    CHECK(answer(wish()).verdict.floor.sg == Approx(.996));
}

TEST_CASE_METHOD(PackFixture, "fruit counts until it is gone, and a reason overrides", "[desk][pack]") {
    settle(1.001);
    PackingRequest request = wish();
    request.make = "heavy";
    request.forced = SpecificGravity{1.001};
    CHECK(answer(request).verdict.answer != GuardAnswer::refused);
    request.fruit = "sour_cherry";
    request.fruitKgPerLitre = .2;
    CHECK(refusedFor(request, "finishing.guard.bursts"));
    request.override = "drunk cold the same evening";
    const auto packed = answer(request);
    CHECK(packed.verdict.answer == GuardAnswer::overridden);
    const auto json = nlohmann::json::parse(toJson(packed));
    CHECK(json["guard"]["override"] == "drunk cold the same evening");
    CHECK(json["guard"]["margin_bar"].get<double>() < 0);
}

TEST_CASE_METHOD(PackFixture, "a weight of sugar answers with its volumes, a keg with its pressure", "[desk][pack]") {
    settle(1.001);
    PackingRequest request = wish();
    request.volumes.reset();
    request.sugarWeight = GramsPerLitre{6.15};
    request.residual = finishing::ResidualKnown(Co2Volumes{.9});
    request.keg = Celsius{(40 - 32) / 1.8};
    const auto packed = answer(request);
    CHECK(packed.wanted.vol == Approx(.9 + 6.15 / 3.844).margin(1e-3)); // 2.50
    CHECK(packed.priming.perLitre.gPerL == Approx(6.15));
    // 40 F and 2.5 volumes: 12.27 psi by a public fit of the pressure to the chart of CO2 in beer (homebrewtalk 152427)
    CHECK(packed.keg->barOverAir == Approx(12.27 * .0689476).margin(.02));
}

TEST_CASE_METHOD(PackFixture, "the day sheet and the labels say what was answered", "[desk][pack][paper]") {
    settle(1.001);
    PackingRequest request = wish();
    request.name = "Plover 31";
    request.lost = Litres{2};
    request.forced = SpecificGravity{1.001};
    request.make = "sparkling";
    request.package.size = {750};
    const auto packed = answer(request);
    REQUIRE(packed.verdict.answer != GuardAnswer::refused);
    CHECK(packed.priming.packages == 50); // 38 L
    const std::string sheet = sheet::writeMarkdown(desk->packingSheet(packed));
    CHECK(sheet.starts_with("# Packaging day sheet for Plover 31"));
    CHECK(sheet.find("sparkling-wine bottle, rated for 8.0 bar") != std::string::npos);
    CHECK(sheet.find("Fill 50 bottles of 750 mL") != std::string::npos);
    CHECK(sheet.find(show(packed.priming.perLitre)) != std::string::npos);
    const std::string label = sheet::writeMarkdown(*desk->bottleLabels(packed));
    CHECK(label.find("Plover 31") != std::string::npos);
    CHECK(label.find("from 20 Jun 2025") != std::string::npos); // its last refill
    CHECK(label.find("computed and not measured") != std::string::npos);
}

TEST_CASE_METHOD(PackFixture, "a refused package has a sheet that says so and no labels", "[desk][pack][paper][bad]") {
    const auto packed = answer(wish()); // never measured
    CHECK(desk->packingSheet(packed).title.starts_with("Refused: "));
    const auto labels = desk->bottleLabels(packed);
    REQUIRE_FALSE(labels);
    CHECK(labels.error().kind == FaultKind::notPossible);
    CHECK(labels.error().path == "/label");
}

TEST_CASE_METHOD(PackFixture, "the label's alcohol has what the priming adds, and says whether it was measured",
                 "[desk][pack][paper]") {
    settle(1.001);
    const auto computed = answer(wish()).alcohol;
    CHECK_FALSE(computed.measured);
    CHECK(computed.spread.pct == Approx(.64).margin(.01)); // half a per cent, four times in five
    PackingRequest request = wish();
    request.alcohol = PercentVol{6};
    const auto measured = answer(request).alcohol;
    CHECK(measured.measured);
    // (2.5 - .942) volumes: 3.08 g/L of CO2 and, 46.07 to 44.01, 3.22 g/L or 0.408 % vol of alcohol
    CHECK(measured.value.pct == Approx(6.408).margin(.01));
    CHECK(measured.spread < computed.spread);
    request.alcohol = PercentVol{60};
    CHECK(desk->pack(request).error().path == "/alcohol");
}

TEST_CASE_METHOD(PackFixture, "beer that is hard on yeast is told what to do", "[desk][pack]") {
    settle(1.001);
    CHECK(answer(wish()).yeast.empty());
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-01", "ph": 3.1})");
    const auto packed = answer(wish());
    REQUIRE_FALSE(packed.yeast.empty());
    CHECK(std::count(packed.words.begin(), packed.words.end(), packed.yeast.front()) == 1);
    CHECK(nlohmann::json::parse(toJson(packed))["yeast"].size() == packed.yeast.size());
}

TEST_CASE_METHOD(PackFixture, "fruit tells its surge and its time, and finds room or is refused", "[desk][pack][bad]") {
    settle(1.001);
    PackingRequest request = wish();
    request.fruit = "sour_cherry";
    request.fruitKgPerLitre = .2;
    request.fruitVessel = Litres{60}; // 40 L of beer, 8 kg of fruit and a fifth of headspace: 60 L
    const auto packed = answer(request);
    CHECK(packed.fruit->headspace.l == Approx(12));
    const auto said = std::find_if(packed.words.begin(), packed.words.end(),
                                   [](const Message& words) { return words.key == "finishing.pack.fruit"; });
    REQUIRE(said != packed.words.end());
    CHECK(render(*said).find(show(packed.fruit->headspace) + " of headspace for the surge") != std::string::npos);
    CHECK(render(*said).find("tasted after " + show(packed.fruit->contact)) != std::string::npos);
    request.fruitVessel = Litres{59};
    CHECK(desk->pack(request).error().path == "/fruit");
}

TEST_CASE_METHOD(PackFixture, "the CO2 of beer in a keg is told, not guessed", "[desk][pack]") {
    record(R"([{"kind": "vessel", "name": "Knot", "shape": "keg", "material": "steel", "capacity_l": 50},
               {"kind": "opening", "vessel": "Knot", "on": "2025-06-01", "volume_l": 45, "age_years": 1}])");
    PackingRequest request = wish(3);
    request.vessel = "Knot";
    request.gravity = SpecificGravity{1.000};
    CHECK(desk->pack(request).error().path == "/residual_vol");
    // at 1 bar and 4 C it holds 2.75 volumes: under air at 16 C it would have been 0.94
    request.residual = finishing::UnderHead{{1}, {4}};
    CHECK(answer(request).verdict.pressures.residual.vol == Approx(2.75).margin(.01));
}

TEST_CASE_METHOD(PackFixture, "what cannot be packed is refused at its field", "[desk][pack]") {
    settle(1.001);
    const auto pathOf = [&](const auto& change) {
        PackingRequest request = wish();
        change(request);
        const auto packed = desk->pack(request);
        REQUIRE_FALSE(packed);
        CHECK_FALSE(render(packed.error().remedy).empty());
        return packed.error().path;
    };
    CHECK(pathOf([](auto& r) { r.litres = {-4}; }) == "/litres");
    CHECK(pathOf([](auto& r) { r.litres = {400}; }) == "/litres");
    CHECK(pathOf([](auto& r) { r.volumes.reset(); }) == "/volumes");
    CHECK(pathOf([](auto& r) { r.volumes = Co2Volumes{12}; }) == "/volumes");
    CHECK(pathOf([](auto& r) { r.gravity = SpecificGravity{1.012}; }) == "/gravity");
    CHECK(pathOf([](auto& r) { r.sugar = "syrup"; }) == "/sugar");
    CHECK(pathOf([](auto& r) { r.make = "jug"; }) == "/bottle");
    CHECK(pathOf([](auto& r) { r.fruit = "durian"; }) == "/fruit");
    CHECK(pathOf([](auto& r) { r.override = ""; }) == "/override");
    CHECK(pathOf([](auto& r) { r.forcedOn = day(2026, 2, 1); }) == "/forced_on"); // no gravity of that test
    CHECK(pathOf([](auto& r) { r.lost = Litres{41}; }) == "/lost_l");
    CHECK(pathOf([](auto& r) {
              r.volumes.reset();
              r.sugarWeight = GramsPerLitre{40};
          }) == "/sugar_g_l");
    CHECK(pathOf([](auto& r) { r.vessel = "Nobody"; }) == "/vessel");
}
