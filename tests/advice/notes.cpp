// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/notes.h"

#include "advice/scenario.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::ingredient;
using namespace staveline::tasting;

namespace {

const Day may{std::chrono::sys_days{std::chrono::year{2026} / 5 / 27}};

AdviceInput withVerdicts(VerdictKind acidity, VerdictKind funk, VerdictKind body) {
    AdviceInput input;
    input.pantry = &builtInPantry();
    input.base.recipe = scenario::plainRecipe();
    input.verdicts[Dimension::acidity].kind = acidity;
    input.verdicts[Dimension::funk].kind = funk;
    input.verdicts[Dimension::body].kind = body;
    return input;
}

/// As if the verdicts were the final words.
Advice adviceFor(const AdviceInput& input) {
    Advice advice;
    advice.verdicts = input.verdicts;
    return advice;
}

std::vector<std::string> keys(const AdviceInput& input, const Advice& advice, const Baseline& baseline = {}) {
    std::vector<std::string> found;
    for (const auto& note : notesOf(input, baseline, advice)) {
        CHECK(builtInTexts().has(note.key));
        CHECK(render(note).find('{') == std::string::npos);
        found.push_back(note.key);
    }
    return found;
}
std::vector<std::string> keys(const AdviceInput& input, const Baseline& baseline = {}) {
    return keys(input, adviceFor(input), baseline);
}
std::string firstNote(const AdviceInput& input) {
    return render(notesOf(input, {}, adviceFor(input)).at(0));
}
using Keys = std::vector<std::string>;

} // namespace

TEST_CASE("where all is clear there is nothing to say") {
    CHECK(keys(withVerdicts(VerdictKind::hold, VerdictKind::hold, VerdictKind::hold)).empty());
    CHECK(keys(withVerdicts(VerdictKind::move, VerdictKind::leaveAlone, VerdictKind::hold)).empty());
}

TEST_CASE("one more taster is asked for by the dimension it is worth it for, and the plan stays the answer") {
    const auto input = withVerdicts(VerdictKind::move, VerdictKind::tasteAgain, VerdictKind::hold);
    auto advice = adviceFor(input);
    CHECK(keys(input, advice).empty());
    advice.tasting = {.03, Dimension::funk};
    CHECK(keys(input, advice) == Keys{"advice.note.funk.oneMore", "advice.note.meanwhile.alone"});
    advice.proposals.emplace_back();
    CHECK(keys(input, advice) == Keys{"advice.note.funk.oneMore", "advice.note.meanwhile.plan"});
}

TEST_CASE("where nobody tasted in this cycle a tasting is asked for, not one more taster") {
    auto input = withVerdicts(VerdictKind::move, VerdictKind::tasteAgain, VerdictKind::hold);
    input.tastedThisCycle[Dimension::funk] = false;
    auto advice = adviceFor(input);
    advice.tasting = {.03, Dimension::funk};
    CHECK(keys(input, advice) == Keys{"advice.note.funk.taste", "advice.note.meanwhile.alone"});
}

TEST_CASE("a titration is offered for acidity only where it helps") {
    auto input = withVerdicts(VerdictKind::tasteAgain, VerdictKind::hold, VerdictKind::hold);
    auto advice = adviceFor(input);
    advice.tasting = {.03, Dimension::acidity};
    CHECK(keys(input, advice) == Keys{"advice.note.acidity.oneMore", "advice.note.meanwhile.alone"});
    input.titrationHelps = true;
    CHECK(keys(input, advice) ==
          Keys{"advice.note.acidity.oneMore", "advice.note.titrate", "advice.note.meanwhile.alone"});
    advice.tasting.dimension = Dimension::body;
    CHECK(keys(input, advice) == Keys{"advice.note.body.oneMore", "advice.note.meanwhile.alone"});
}

TEST_CASE("what was never tasted is said as such") {
    auto input = withVerdicts(VerdictKind::hold, VerdictKind::neverTasted, VerdictKind::hold);
    input.seen[Dimension::funk] = false;
    CHECK(keys(input) == Keys{"advice.note.funk.unseen"});
    input.seen = {};
    CHECK(keys(input) == Keys{"advice.note.tasteFirst"});
}

TEST_CASE("waiting names its date") {
    auto input = withVerdicts(VerdictKind::hold, VerdictKind::waitUntil, VerdictKind::hold);
    CHECK(keys(input).empty()); // no date, nothing to say
    input.verdicts[Dimension::funk].until = may;
    CHECK(keys(input) == Keys{"advice.note.funk.wait"});
    CHECK(firstNote(input) == "Funk is still on its way: wait until 27 May 2026.");
}

TEST_CASE("a wait for the gravity says so, and what it means for the draw") {
    auto input = withVerdicts(VerdictKind::waitUntil, VerdictKind::hold, VerdictKind::hold);
    input.verdicts[Dimension::acidity].until = may;
    input.verdicts[Dimension::acidity].gravityFalls = true;
    CHECK(keys(input) == Keys{"advice.note.acidity.waitGravity"});
    CHECK(firstNote(input).find("draw") != std::string::npos);
}

TEST_CASE("a fault silences everything but what was replaced") {
    auto input = withVerdicts(VerdictKind::tasteAgain, VerdictKind::waitUntil, VerdictKind::faultFirst);
    input.verdicts[Dimension::funk].until = may;
    input.verdicts[Dimension::body].fault = "ropy";
    CHECK(keys(input) == Keys{"advice.note.fault"});
    input.verdicts[Dimension::body].until = may;
    CHECK(keys(input) == Keys{"advice.note.fault.until"});
    Baseline baseline;
    baseline.notes.push_back(
        say("advice.note.replaced").with("missing", std::string("a")).with("by", std::string("b")));
    CHECK(keys(input, baseline) == Keys{"advice.note.fault.until", "advice.note.replaced"});
}

TEST_CASE("two points of body are out of reach, up or down, unless they are in place") {
    auto input = withVerdicts(VerdictKind::hold, VerdictKind::hold, VerdictKind::move);
    for (double gap : {2.0, -2.3}) {
        input.verdicts[Dimension::body].gap = gap;
        CHECK(keys(input) == Keys{gap > 0 ? "advice.note.bodyOutOfReach" : "advice.note.bodyTooFull"});
        CHECK(firstNote(input).find("so 2.0 points or more are out of reach") != std::string::npos);
        CHECK((firstNote(input).find("Oats") != std::string::npos) == (gap > 0));
        input.verdicts[Dimension::body].kind = VerdictKind::waitUntil; // may still come by itself
        CHECK(keys(input).empty());
        input.verdicts[Dimension::body].kind = VerdictKind::move;
    }
    input.verdicts[Dimension::body].gap = 1.9;
    CHECK(keys(input).empty());
    input.verdicts[Dimension::body] = {};
    input.verdicts[Dimension::body].kind = VerdictKind::hold;
    input.verdicts[Dimension::body].gap = 2.4;
    CHECK(keys(input).empty());
}

TEST_CASE("funk that is too high for sure is told to go slowly") {
    auto input = withVerdicts(VerdictKind::hold, VerdictKind::move, VerdictKind::hold);
    input.verdicts[Dimension::funk].gap = -1.2;
    CHECK(keys(input) == Keys{"advice.note.funkDown"});
    CHECK(firstNote(input).find("-1.2") != std::string::npos);
    input.verdicts[Dimension::funk].gap = 1.2;
    CHECK(keys(input).empty());
    input.verdicts[Dimension::funk].gap = -1.2;
    input.verdicts[Dimension::funk].kind = VerdictKind::waitUntil;
    CHECK(keys(input).empty());
}

TEST_CASE("against funk only that is named which may be moved in this vessel") {
    auto input = withVerdicts(VerdictKind::hold, VerdictKind::move, VerdictKind::hold);
    input.verdicts[Dimension::funk].gap = -1.2;
    const auto ends = [&](const std::string& means, const Baseline& baseline = {}) {
        return render(notesOf(input, baseline, adviceFor(input)).at(0))
            .ends_with("What else lowers it: " + means + ".");
    };
    CHECK(ends("more sugar and more oats"));
    input.mayMoveDraw = true;
    CHECK(ends("larger draw, more sugar and more oats"));
    input.mayMoveInterval = true;
    CHECK(ends("larger draw, shorter interval, more sugar and more oats"));
    Baseline locked;
    locked.locked = {"draw", "sugar", "glucan_grain"};
    CHECK(ends("shorter interval", locked));
    locked.locked.insert("interval");
    CHECK(notesOf(input, locked, adviceFor(input)).empty());
}

TEST_CASE("a recipe above the bitterness ceiling is named with both numbers") {
    auto input = withVerdicts(VerdictKind::move, VerdictKind::hold, VerdictKind::hold);
    Baseline baseline;
    baseline.start.recipe.bitterness = {24}; // the recipe's or a lock's
    CHECK(keys(input, baseline) == Keys{"advice.note.overCeiling"});
    const auto text = render(notesOf(input, baseline, adviceFor(input)).at(0));
    CHECK(text.find("24 IBU") != std::string::npos);
    CHECK(text.find("15 IBU") != std::string::npos);
}

TEST_CASE("prices tell a lock from something that is not at hand") {
    const auto title = say("advice.title.one").with("first", std::string("Longer ferulic rest"));
    const auto lock = render(told({"mash_ph", true, .254, title}, "mash pH"));
    CHECK(lock.find("lock on mash pH") != std::string::npos);
    CHECK(lock.find("0.25") != std::string::npos);
    CHECK(lock.find("Longer ferulic rest") != std::string::npos);
    const auto missing = render(told({"rye_malt", false, .254, title}, "rye malt"));
    CHECK(missing.find("Not having rye malt") != std::string::npos);
    CHECK(missing.find("lock") == std::string::npos);
}

TEST_CASE("the notes that word the decision are told apart from those beside it") {
    auto input = withVerdicts(VerdictKind::move, VerdictKind::waitUntil, VerdictKind::hold);
    input.verdicts[Dimension::funk].until = may;
    input.targetSet = false;
    auto advice = adviceFor(input);
    advice.tasting = {.03, Dimension::acidity};
    Baseline baseline;
    baseline.notes.push_back(say("advice.note.replaced").with("missing", "wheat").with("by", "oats"));
    const auto inDecision = [&] {
        Keys found;
        const auto all = notesOf(input, baseline, advice);
        for (const auto& note : decisionNotes(input, baseline, advice)) {
            CHECK(std::find(all.begin(), all.end(), note) != all.end());
            found.push_back(note.key);
        }
        return found;
    };
    CHECK(inDecision() == Keys{"advice.note.replaced", "advice.note.acidity.oneMore", "advice.note.meanwhile.alone"});
    input.seen = {};
    advice.tasting = {};
    CHECK(inDecision() == Keys{"advice.note.replaced", "advice.note.tasteFirst"});
    advice.verdicts[Dimension::body].kind = VerdictKind::faultFirst;
    advice.verdicts[Dimension::body].fault = "ropy";
    CHECK(inDecision() == Keys{"advice.note.fault", "advice.note.replaced"});
}
