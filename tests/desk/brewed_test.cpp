// SPDX-License-Identifier: GPL-3.0-or-later
// A draft as brewed: sized from the litres that were measured, with the gravities that were measured.
#include "desk/measured_brew.h"
#include "desk/support.h"
#include "quantity/density.h"

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::testing;

namespace {

struct BrewedFixture : DeskFixture {
    BrewedFixture() { addPlover(); }
    [[nodiscard]] Setting setting() const { return desk->planned("Plover")->setting; }
    [[nodiscard]] BrewDraft drafted(const BrewMeasures& measured) const {
        auto draft = draftAsBrewed(*desk, "Plover", setting(), desk->kit(), measured);
        REQUIRE(draft);
        return *draft;
    }
};

} // namespace

TEST_CASE_METHOD(BrewedFixture, "without a measure the draft as brewed is the plan", "[desk][brewed]") {
    const auto plan = desk->draft("Plover", setting(), desk->kit())->plan;
    const auto made = drafted({}).plan;
    CHECK(made.intoFermenter == plan.intoFermenter);
    CHECK(made.intoVessel == plan.intoVessel);
    CHECK(made.leftOver == plan.leftOver);
    CHECK(made.gristMass == plan.gristMass);
    CHECK(made.finalGravity == plan.finalGravity);
}

TEST_CASE_METHOD(BrewedFixture, "litres measured in the fermenter balance from kettle to vessel", "[desk][brewed]") {
    const Equipment kit = desk->kit().equipment;
    for (const double litres : {20.0, 60.0, 90.0, 120.0}) {
        const auto plan = drafted({{}, {}, Litres{litres}}).plan;
        CAPTURE(litres);
        CHECK(plan.intoFermenter.l == litres);
        CHECK(plan.postBoil.l == Approx(litres + kit.kettleLoss.l));
        CHECK(plan.intoVessel.l + plan.leftOver.l == Approx(litres * (1 - kit.fermenterLoss.of1) - kit.transferLoss.l));
        CHECK(plan.leftOver.l >= 0);
        CHECK(intoVesselFrom(Litres{litres}, kit).l == Approx(plan.intoVessel.l + plan.leftOver.l));
    }
}

TEST_CASE_METHOD(BrewedFixture, "a few litres do not make less than nothing", "[desk][brewed][bad]") {
    const auto plan = drafted({{}, {}, Litres{1}}).plan;
    CHECK(plan.intoVessel.l >= 0);
    CHECK(plan.leftOver.l >= 0);
    CHECK(intoVesselFrom(Litres{0}, desk->kit().equipment).l == 0);
}

TEST_CASE_METHOD(BrewedFixture, "beer that is made is not told to be brewed more of, and what is drawn not less",
                 "[desk][brewed]") {
    const auto shortage = [](const BrewPlan& plan) {
        for (const Message& finding : plan.findings)
            if (finding.key.starts_with("brewing.brew_short"))
                return finding.key;
        return std::string();
    };
    auto small = desk->kit();
    small.brewLength = Litres{40};
    const auto planned = [&] { return shortage(desk->draft("Plover", setting(), small)->plan); };
    CHECK(planned() == "brewing.brew_short");
    CHECK(shortage(drafted({{}, {}, Litres{40}}).plan).empty());
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-03-02", "volume_l": 79})");
    CHECK(planned() == "brewing.brew_short.drawn");
    record(R"({"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2026-03-02",
               "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    CHECK(planned().empty());
}

TEST_CASE_METHOD(BrewedFixture, "measured gravities stand as read and the alcohol follows", "[desk][brewed]") {
    const auto plan = drafted({SpecificGravity{1.060}, SpecificGravity{1.010}, {}}).plan;
    CHECK(toGravity(plan.originalGravity).sg == Approx(1.060).margin(1e-6));
    CHECK(toGravity(plan.finalGravity).sg == Approx(1.010).margin(1e-6));
    // Balling 1865: A%w = (p - q_real) / (2.0665 - 0.010665 p), q_real = 0.1808 p + 0.8192 q; 14.74 and 2.56 P.
    // 5.23 % by weight, times 1.010 / 0.7907: 6.67 % by volume.
    CHECK(plan.alcohol.pct == Approx(6.67).margin(.05));
    CHECK(setting().recipe.originalGravity != plan.originalGravity);
}

TEST_CASE_METHOD(BrewedFixture, "a measure that cannot be leaves the plan", "[desk][brewed][bad]") {
    const auto planned = drafted({}).plan;
    for (const BrewMeasures& bad : {BrewMeasures{SpecificGravity{.98}, {}, {}}, BrewMeasures{{}, {}, Litres{.2}}}) {
        const auto plan = drafted(bad).plan;
        CHECK(plan.originalGravity == planned.originalGravity);
        CHECK(plan.intoFermenter == planned.intoFermenter);
    }
}

TEST_CASE_METHOD(BrewedFixture, "a recipe that cannot be brewed is the recipe's fault", "[desk][brewed][bad]") {
    Setting broken = setting();
    broken.recipe.mash[0].temperature = Celsius{10};
    const auto draft = draftAsBrewed(*desk, "Plover", broken, desk->kit(), {SpecificGravity{1.05}, {}, Litres{80}});
    REQUIRE_FALSE(draft);
    CHECK(draft.error().path == "/mash/0/temperature_c");
}
