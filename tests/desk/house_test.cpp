// SPDX-License-Identifier: GPL-3.0-or-later
// Brews measured before calibrate the plan of the coming refill, and the plan says so.
#include "desk/support.h"

#include <fmt/format.h>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;

namespace {

struct HouseFixture : DeskFixture {
    HouseFixture() {
        addPlover();
        record(R"({"kind": "equipment", "on": "2025-06-01", "name": "120 L kit", "mash_and_lauter_efficiency": 0.8})");
    }
    /// Four brews of the usual recipe, each with these measures.
    void brewFour(const std::string& measures) {
        for (int i = 0; i < 4; ++i)
            record(fmt::format(R"({{"kind": "brew", "name": "Brew {0}", "on": "2025-{2}-01", "original_gravity_p": 12,
                                    "bitterness_ibu": 10, "grist": [{{"grain": "pilsner", "share": 1}}],
                                    "mash": [{{"temperature_c": 66, "minutes": 60}}], "yeast": "ale_clean", {1}}})",
                               i, measures, 8 + i < 10 ? fmt::format("0{}", 8 + i) : fmt::format("{}", 8 + i)));
    }
    [[nodiscard]] brewing::BrewPlan plan() const { return *desk->brewPlan("Plover"); }
    [[nodiscard]] static bool has(const brewing::BrewPlan& plan, std::string_view key) {
        return std::any_of(plan.assumptions.begin(), plan.assumptions.end(),
                           [&](const Message& m) { return m.key == key; });
    }
};

} // namespace

TEST_CASE_METHOD(HouseFixture, "brews that came out weaker and drier change the plan and are named in it",
                 "[desk][house]") {
    const auto before = plan();
    brewFour(R"("measured_original_gravity_sg": 1.042, "measured_final_gravity_sg": 1.006)");
    const auto after = plan();
    CHECK(after.gristMass > 1.1 * before.gristMass);
    CHECK(after.gristMass < 1.2 * before.gristMass);
    CHECK(after.finalGravity < before.finalGravity);
    CHECK(after.originalGravity == before.originalGravity);
    CHECK(has(after, "brewing.house.extract.low"));
    CHECK(has(after, "brewing.house.final.low"));
    const auto draft = desk->draft("Plover", desk->planned("Plover")->setting, desk->kit());
    REQUIRE(draft);
    CHECK(draft->plan.gristMass == after.gristMass);
    CHECK(draft->plan.finalGravity == after.finalGravity);
    CHECK(has(draft->plan, "brewing.house.final.low"));
}

TEST_CASE_METHOD(HouseFixture, "a kit recorded anew starts its efficiency afresh", "[desk][house]") {
    const auto before = plan();
    brewFour(R"("measured_original_gravity_sg": 1.042)");
    record(R"({"kind": "equipment", "on": "2026-02-01", "name": "120 L kit", "mash_and_lauter_efficiency": 0.8})");
    CHECK(plan().gristMass == before.gristMass);
    CHECK_FALSE(has(plan(), "brewing.house.extract.low"));
}

TEST_CASE_METHOD(HouseFixture, "brews that were not measured teach nothing", "[desk][house]") {
    const auto before = plan();
    brewFour(R"("note": "not measured")");
    CHECK(plan().gristMass == before.gristMass);
    CHECK(plan().finalGravity == before.finalGravity);
}

TEST_CASE_METHOD(HouseFixture, "the brew sheet says what the plan counts on", "[desk][house]") {
    brewFour(R"("measured_original_gravity_sg": 1.042, "measured_final_gravity_sg": 1.006)");
    const auto sheet = desk->brewSheet("Plover");
    REQUIRE(sheet);
    std::string paragraphs;
    for (const auto& block : sheet->blocks)
        if (const auto* paragraph = std::get_if<sheet::Paragraph>(&block))
            paragraphs += paragraph->text;
    CHECK(paragraphs.find("4 measured brews ended") != std::string::npos);
    CHECK(paragraphs.find("points low in 4 measured brews") != std::string::npos);
}

TEST_CASE_METHOD(HouseFixture, "a brew that won more than there was teaches no efficiency", "[desk][house]") {
    const auto weighed = [&](const std::string& kilograms) {
        record(R"({"kind": "brew", "name": "Brew 1", "on": "2026-02-01", "original_gravity_p": 12, "bitterness_ibu": 10,
                   "grist": [{"grain": "pilsner", "share": 1, "mass_kg": )" +
               kilograms + R"(}], "mash": [{"temperature_c": 66, "minutes": 60}], "yeast": "ale_clean",
                   "measured_original_gravity_sg": 1.048, "into_fermenter_l": 80})");
        const auto planned = plan();
        REQUIRE(desk->undo());
        return planned;
    };
    const auto impossible = weighed("4"), possible = weighed("14");
    CHECK(impossible.gristMass.kg == Approx(plan().gristMass.kg).epsilon(.02)); // its gravity is about as planned
    CHECK_FALSE(has(impossible, "brewing.house.extract.high.one"));
    CHECK(has(possible, "brewing.house.extract.high.one"));
}
