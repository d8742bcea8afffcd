// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/verdict.h"

#include "quantity/text.h"
#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::tasting;

namespace {

const Day today = parseDay("2026-03-02").value();
constexpr auto A = Dimension::acidity;

/// Wanted 5 +-1; the estimate sits `gap` below it.
Verdict at(double gap, double sd, const VerdictContext& context = {today, {}, nullptr, false, {}, true}) {
    return standing(A, {5 - gap, sd}, {5, 1}, context);
}

VerdictContext withFault(std::string id) {
    VerdictContext context;
    context.today = today;
    context.faultRule = builtInSheet().findFault(id);
    context.faultOn = today;
    context.fault = std::move(id);
    return context;
}

} // namespace

TEST_CASE("An estimate is on target for sure, or open") {
    CHECK(at(-1.5, .52).kind == VerdictKind::open);
    CHECK(at(.3, .35).kind == VerdictKind::hold);
    CHECK(at(.3, .6).kind == VerdictKind::open);
    CHECK(at(1.2, .55).kind == VerdictKind::open);
    CHECK(at(2.5, 1.02).kind == VerdictKind::open);
    CHECK(at(.7, .2).kind == VerdictKind::hold);
}

TEST_CASE("One taster alone can never say hold in a band of 1") {
    CHECK(at(0, 1.02).kind == VerdictKind::open);
    CHECK(at(0, .632).kind == VerdictKind::hold);
}

TEST_CASE("At the boundary of holding") {
    const double sd = .4;
    CHECK(at(1 - z80 * sd - 1e-9, sd).kind == VerdictKind::hold);
    CHECK(at(1 - z80 * sd + 1e-6, sd).kind != VerdictKind::hold);
    CHECK(at(-(1 - z80 * sd - 1e-9), sd).kind == VerdictKind::hold);
    CHECK(at(1, 0).kind == VerdictKind::hold);
    CHECK(at(1.001, 0).kind == VerdictKind::open);
}

TEST_CASE("What was never tasted is said as such, whatever the model thinks of it") {
    VerdictContext never;
    never.today = today;
    never.tasted = false;
    for (double gap : {0.0, 3.0}) {
        const auto v = at(gap, .1, never);
        CHECK(v.kind == VerdictKind::neverTasted);
        CHECK(v.gap == 0);
        CHECK(render(v.reason).find("never tasted") != std::string::npos);
    }
    never.modelArrives = today + std::chrono::days{90}; // of a score nobody knows
    CHECK(at(3, .1, never).kind == VerdictKind::neverTasted);
    never.gravityFalling = true;
    CHECK(at(3, .1, never).kind == VerdictKind::waitUntil);
    auto faulty = withFault("ropy");
    faulty.tasted = false;
    CHECK(at(3, .1, faulty).kind == VerdictKind::faultFirst);
}

TEST_CASE("A falling gravity is no reason to wait for what is on target") {
    VerdictContext falling;
    falling.today = today;
    falling.gravityFalling = true;
    CHECK(at(.1, .2, falling).kind == VerdictKind::hold);
    CHECK(at(2, .2, falling).kind == VerdictKind::waitUntil);
}

TEST_CASE("Gap and error say how it reads") {
    const auto v = at(-1.6, .47);
    CHECK(v.gap == Approx(-1.6));
    CHECK_FALSE(v.up);
    CHECK(render(v.reason) ==
          "1.6 above the acidity target (±0.6), too sour: Adjust says whether the refill should change.");
    const auto funk = standing(Dimension::funk, {3.5, .3}, {5, 1}, {today, {}, nullptr, false, {}, true});
    CHECK(funk.up);
    CHECK(render(funk.reason) ==
          "1.5 below the funk target (±0.4), too little funk: Adjust says whether the refill should change.");
    CHECK(render(at(.5, .55).reason) == "Reads 4.5 ±0.7; target 5.0 ±1.0. Near it, but not for sure.");
    CHECK(render(at(.1, .3).reason) == "On target: 4.9 ±0.4, target 5.0 ±1.0. No change.");
}

TEST_CASE("Tasters needed to resolve a band") {
    // One more taster has 1.04 of variance; 1 / .5917 of precision is wanted for a band of 1. By hand.
    CHECK(tastersNeeded({5, 1.0198039}, 1) == 1);  // (1.69 - .9615) x 1.04 = .758
    CHECK(tastersNeeded({5, 1.0198039}, .5) == 7); // (6.76 - .9615) x 1.04 = 6.03
    CHECK(tastersNeeded({5, 3}, 1) == 2);          // (1.69 - .1111) x 1.04 = 1.642
    CHECK(tastersNeeded({5, .2}, 1) == 1);         // never fewer than one
}

TEST_CASE("That many tasters do resolve it, and one fewer does not") {
    CHECK_PROPERTY("precision adds up to what the band asks", [] {
        const double sd = *rc::gen::inRange(10, 400) / 100.0, band = *rc::gen::inRange(25, 400) / 100.0;
        const int n = tastersNeeded({5, sd}, band);
        const auto sdWith = [&](int tasters) { return 1 / std::sqrt(1 / (sd * sd) + tasters / 1.04); };
        RC_ASSERT(sdWith(n) <= band / 1.3 + 1e-6);
        RC_ASSERT(n == 1 || sdWith(n - 1) > band / 1.3 - 1e-6);
    });
}

TEST_CASE("Fault first comes before everything, with draw, refill and date") {
    auto context = withFault("ropy");
    context.gravityFalling = true;
    const auto v = at(0, .2, context);
    CHECK(v.kind == VerdictKind::faultFirst);
    CHECK(v.fault == "ropy");
    CHECK(v.until == today + std::chrono::days{90});
    CHECK(render(v.reason) == "Fault first: ropy, oily. Leave it alone; Brettanomyces clears it in time. Do not draw. "
                              "No refill, or a small and mild one. Taste again on 31 May 2026.");
    const auto acetic = at(2, .2, withFault("acetic"));
    CHECK(acetic.kind == VerdictKind::faultFirst);
    CHECK_FALSE(acetic.until);
    CHECK(render(acetic.reason).find("Drawing is fine. Refill to the brim") != std::string::npos);
}

TEST_CASE("Every blocking fault gives a whole sentence") {
    for (const auto& rule : builtInSheet().faults) {
        CAPTURE(rule.id);
        const auto v = at(2, .2, withFault(rule.id));
        CHECK((v.kind == VerdictKind::faultFirst) == rule.blocksAdvice);
        const auto text = render(v.reason);
        CHECK(text.find('{') == std::string::npos);
        CHECK(text.find("tasting.") == std::string::npos);
        CHECK(v.until.has_value() == (rule.blocksAdvice && rule.waitDays > 0));
    }
}

TEST_CASE("A fault the sheet does not know stops advice too") {
    const auto v = at(2, .2, withFault("blue"));
    CHECK(v.kind == VerdictKind::faultFirst);
    CHECK(render(v.reason).find("blue") != std::string::npos);
}

TEST_CASE("A fault the recipe cures does not stop the recipe") {
    CHECK(at(-1.5, .4, withFault("harsh_bitter")).kind == VerdictKind::open);
}

TEST_CASE("Waiting: the model's date, else sixty days") {
    VerdictContext falling{today, {}, nullptr, true, {}, true};
    CHECK(at(2, .2, falling).kind == VerdictKind::waitUntil);
    CHECK(at(2, .2, falling).until == today + std::chrono::days{60});
    CHECK(render(at(2, .2, falling).reason) ==
          "The gravity is still falling. Wait until 1 May 2026, then taste again.");
    VerdictContext arrives{today, {}, nullptr, false, today + std::chrono::days{100}, true};
    CHECK(at(2, .2, arrives).until == today + std::chrono::days{100});
    CHECK(render(at(2, .2, arrives).reason) ==
          "3.0 now, and moving to its target of 5.0 ±1.0 by itself. Wait until 10 Jun 2026.");
    falling.modelArrives = arrives.modelArrives;
    CHECK(at(2, .2, falling).until == arrives.modelArrives);
}

TEST_CASE("The worst unwanted fault: wanted traits pass, blocking faults first") {
    const auto worst = [](std::vector<FaultMark> marks, std::vector<FaultMark> wanted) {
        Sitting sitting;
        sitting.faults = std::move(marks);
        Target target;
        target.wantedTraits = std::move(wanted);
        return worstUnwantedFault(evaluate(sitting, builtInSheet()), target, builtInSheet());
    };
    CHECK_FALSE(worst({}, {}));
    CHECK_FALSE(worst({{"acetic", 1}}, {}));
    CHECK(worst({{"acetic", 2}}, {}) == FaultMark{"acetic", 2});
    CHECK_FALSE(worst({{"acetic", 2}}, {{"acetic", 2}}));
    CHECK(worst({{"acetic", 3}}, {{"acetic", 2}}) == FaultMark{"acetic", 3});
    CHECK(worst({{"harsh_bitter", 3}, {"ropy", 2}}, {}) == FaultMark{"ropy", 2});
    CHECK(worst({{"mousy", 2}, {"diacetyl", 3}}, {}) == FaultMark{"diacetyl", 3});
    CHECK(worst({{"harsh_bitter", 2}}, {}) == FaultMark{"harsh_bitter", 2});
    CHECK(worst({{"blue", 2}, {"gushing", 3}}, {}) == FaultMark{"blue", 2});
}

TEST_CASE("Verdicts of any numbers") {
    CHECK_PROPERTY("a mirrored gap stands the same, pointing the other way", [] {
        const double gap = *rc::gen::inRange(-100, 101) / 10.0, sd = *rc::gen::inRange(0, 40) / 10.0;
        const auto v = at(gap, sd), mirrored = at(-gap, sd);
        RC_ASSERT(v.up == (gap > 0) && mirrored.up == (gap < 0));
        RC_ASSERT(v.kind == mirrored.kind);
        RC_ASSERT(render(v.reason).find('{') == std::string::npos);
    });
}
