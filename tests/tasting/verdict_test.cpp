// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/verdict.h"

#include "quantity/text.h"
#include "support/property.h"

#include <cmath>
#include <limits>

using namespace staveline;
using namespace staveline::tasting;

namespace {

const Day today = parseDay("2026-03-02").value();
constexpr auto A = Dimension::acidity;

/// Wanted 5 +-1; the estimate sits `gap` below it.
Verdict at(double gap, double sd, const VerdictContext& context = {today, {}, nullptr, false, {}}) {
    return verdict(A, {5 - gap, sd}, {5, 1}, context);
}

VerdictContext withFault(std::string id) {
    VerdictContext context;
    context.today = today;
    context.faultRule = builtInSheet().findFault(id);
    context.fault = std::move(id);
    return context;
}

} // namespace

TEST_CASE("Probability outside the band and of the sign") {
    // Worked numbers of the method, band 1; each is a difference of two printed normal probabilities.
    struct Row {
        double gap, sd, outside, sign;
    };
    for (const auto& r :
         {Row{-1.5, .52, .832, .998}, Row{.3, .35, .023, .804}, Row{.3, .6, .137, .691}, Row{1.2, .55, .642, .985},
          Row{1.2, 1.02, .593, .880}, Row{2.5, 1.02, .930, .993}, Row{.7, .2, .067, 1.000}}) {
        CAPTURE(r.gap, r.sd);
        CHECK(probabilityOutside(r.gap, r.sd, 1) == Approx(r.outside).margin(5e-4));
        CHECK(probabilitySign(r.gap, r.sd) == Approx(r.sign).margin(5e-4));
    }
    CHECK(probabilityOutside(-1.5, .5246692, 1) == Approx(.8297).margin(1e-4)); // the worked panel, absolute
    CHECK(probabilityOutside(-1.5, .2248456, 1) == Approx(.9869).margin(1e-4)); // same tasters
}

TEST_CASE("A known score is outside or not") {
    CHECK(probabilityOutside(1, 0, 1) == 0);
    CHECK(probabilityOutside(1.01, 0, 1) == 1);
    CHECK(probabilitySign(0, 0) == .5);
    CHECK(probabilitySign(-2, 0) == 1);
}

TEST_CASE("The verdict of each row of the table") {
    CHECK(at(-1.5, .52).kind == VerdictKind::move);
    CHECK(at(.3, .35).kind == VerdictKind::hold);
    CHECK(at(.3, .6).kind == VerdictKind::tasteAgain);
    CHECK(at(1.2, .55).kind == VerdictKind::nudge);
    CHECK(at(1.2, 1.02).kind == VerdictKind::tasteAgain);
    CHECK(at(2.5, 1.02).kind == VerdictKind::move);
    CHECK(at(.7, .2).kind == VerdictKind::hold);
}

TEST_CASE("One taster alone can never say hold in a band of 1") {
    CHECK(at(0, 1.02).kind == VerdictKind::tasteAgain);
    CHECK(at(0, .632).kind == VerdictKind::hold);
}

TEST_CASE("At the boundary of holding") {
    const double sd = .4;
    CHECK(at(1 - z80 * sd - 1e-9, sd).kind == VerdictKind::hold);
    CHECK(at(1 - z80 * sd + 1e-6, sd).kind != VerdictKind::hold);
    CHECK(at(-(1 - z80 * sd - 1e-9), sd).kind == VerdictKind::hold);
    CHECK(at(1, 0).kind == VerdictKind::hold);
    CHECK(at(1.001, 0).kind == VerdictKind::move);
}

TEST_CASE("Between moving, nudging and tasting again") {
    // With sd .2 the far side of the band does not matter: P(outside) = Phi((gap - 1) / .2).
    CHECK(at(1 + .2 * .6746, .2).kind == VerdictKind::move); // z of .75 is .67449
    CHECK(at(1 + .2 * .6744, .2).kind == VerdictKind::nudge);
    CHECK(at(1 - .2 * .2533, .2).kind == VerdictKind::nudge); // z of .40 is -.25335
    CHECK(at(1 - .2 * .2534, .2).kind == VerdictKind::tasteAgain);
    // Far outside, but the sign is not sure: taste again.
    CHECK(at(2, 2 / 1.2815).kind == VerdictKind::tasteAgain); // z of .90 is 1.28155
    CHECK(at(2, 2 / 1.2817).kind == VerdictKind::move);       // P(outside) is .77 in both
}

TEST_CASE("Gap and error say how it reads") {
    const auto v = at(-1.6, .47);
    CHECK(v.gap == Approx(-1.6));
    CHECK(render(v.reason) == "1.6 too sour, ±0.6: change the next refill.");
    CHECK(render(verdict(Dimension::funk, {3.5, .3}, {5, 1}, {today, {}, nullptr, false, {}}).reason) ==
          "1.5 too little funk, ±0.4: change the next refill.");
    CHECK(render(verdict(Dimension::body, {3.8, .55}, {5, 1}, {today, {}, nullptr, false, {}}).reason) ==
          "1.2 too thin, ±0.7: probably outside the band of ±1.0, take half a step.");
    CHECK(render(at(.1, .3).reason) == "On target: 4.9 ±0.4, wanted 5.0 ±1.0. Leave the settings.");
}

TEST_CASE("Tasting again offers a titration first and counts the tasters") {
    const auto v = at(1.2, 1.02);
    CHECK(render(v.reason) == "1.2 not sour enough, but ±1.3 is too wide to act on. A titration is the cheapest help; "
                              "otherwise 1 more at the table, each at both temperatures, for ±1.0.");
    const auto funk = verdict(Dimension::funk, {4, 2}, {5, .5}, {today, {}, nullptr, false, {}});
    CHECK(render(funk.reason).find("titration") == std::string::npos);
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
    CHECK(at(-1.5, .4, withFault("harsh_bitter")).kind == VerdictKind::move);
}

TEST_CASE("Waiting: the model's date, else sixty days") {
    VerdictContext falling{today, {}, nullptr, true, {}};
    CHECK(at(2, .2, falling).kind == VerdictKind::waitUntil);
    CHECK(at(2, .2, falling).until == today + std::chrono::days{60});
    CHECK(render(at(2, .2, falling).reason) ==
          "The gravity is still falling. Wait until 1 May 2026, then taste again.");
    VerdictContext arrives{today, {}, nullptr, false, today + std::chrono::days{100}};
    CHECK(at(2, .2, arrives).until == today + std::chrono::days{100});
    CHECK(render(at(2, .2, arrives).reason) ==
          "At 3.0 now, and moving towards 5.0 ±1.0 by itself. Wait until 10 Jun 2026.");
    falling.modelArrives = arrives.modelArrives;
    CHECK(at(2, .2, falling).until == arrives.modelArrives);
}

TEST_CASE("Estimates combine by precision") {
    const std::vector<Estimate> two{{4, 1}, {6, 2}};
    const auto both = combine(two);
    CHECK(both.mean == Approx((4 + 6 * .25) / 1.25));
    CHECK(both.sd == Approx(1 / std::sqrt(1.25)));
    CHECK(combine({}).mean == 0);
    CHECK(std::isinf(combine({}).sd));
    const auto inf = std::numeric_limits<double>::infinity();
    const std::vector<Estimate> unknown{{4, 1}, {9, inf}};
    CHECK(combine(unknown) == Estimate{4, 1});
    const std::vector<Estimate> exact{{4, 0}, {9, 1}, {6, 0}};
    CHECK(combine(exact) == Estimate{5, 0});
}

TEST_CASE("Combining never loses precision and stays between the parts") {
    CHECK_PROPERTY("mean between the extremes, sd at most the smallest", [] {
        std::vector<Estimate> parts;
        const auto n = *rc::gen::inRange(1, 6);
        double low = 10, high = 0, best = 99;
        for (int i = 0; i < n; ++i) {
            parts.push_back({*rc::gen::inRange(0, 101) / 10.0, *rc::gen::inRange(1, 50) / 10.0});
            low = std::min(low, parts.back().mean);
            high = std::max(high, parts.back().mean);
            best = std::min(best, parts.back().sd);
        }
        const auto all = combine(parts);
        RC_ASSERT(all.mean >= low - 1e-9 && all.mean <= high + 1e-9);
        RC_ASSERT(all.sd <= best + 1e-12);
    });
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
    CHECK_PROPERTY("probabilities in range; a mirrored gap gets the same verdict", [] {
        const double gap = *rc::gen::inRange(-100, 101) / 10.0, sd = *rc::gen::inRange(0, 40) / 10.0;
        const auto v = at(gap, sd), mirrored = at(-gap, sd);
        RC_ASSERT(v.pOutside >= 0 && v.pOutside <= 1 && v.pSign >= .5 && v.pSign <= 1);
        RC_ASSERT(v.kind == mirrored.kind);
        RC_ASSERT(render(v.reason).find('{') == std::string::npos);
    });
}
