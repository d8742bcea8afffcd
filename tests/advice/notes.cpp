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

std::vector<std::string> keys(const AdviceInput& input, const Baseline& baseline = {}) {
    std::vector<std::string> found;
    for (const auto& note : notesOf(input, baseline)) {
        CHECK(builtInTexts().has(note.key));
        CHECK(render(note).find('{') == std::string::npos);
        found.push_back(note.key);
    }
    return found;
}
using Keys = std::vector<std::string>;

} // namespace

TEST_CASE("where all is clear there is nothing to say") {
    CHECK(keys(withVerdicts(VerdictKind::hold, VerdictKind::hold, VerdictKind::hold)).empty());
    CHECK(keys(withVerdicts(VerdictKind::move, VerdictKind::nudge, VerdictKind::hold)).empty());
}

TEST_CASE("a titration is offered for acidity, another taster for the rest") {
    CHECK(keys(withVerdicts(VerdictKind::tasteAgain, VerdictKind::hold, VerdictKind::hold)) ==
          Keys{"advice.note.titrate", "advice.note.draft"});
    CHECK(keys(withVerdicts(VerdictKind::hold, VerdictKind::tasteAgain, VerdictKind::hold)) ==
          Keys{"advice.note.tasters", "advice.note.draft"});
    CHECK(keys(withVerdicts(VerdictKind::tasteAgain, VerdictKind::hold, VerdictKind::tasteAgain)) ==
          Keys{"advice.note.titrate", "advice.note.tasters", "advice.note.draft"});
}

TEST_CASE("with one dimension that clearly has to move the proposals are no drafts") {
    CHECK(keys(withVerdicts(VerdictKind::tasteAgain, VerdictKind::move, VerdictKind::hold)) ==
          Keys{"advice.note.titrate"});
}

TEST_CASE("waiting names its date") {
    auto input = withVerdicts(VerdictKind::hold, VerdictKind::waitUntil, VerdictKind::hold);
    CHECK(keys(input).empty()); // no date, nothing to say
    input.verdicts[Dimension::funk].until = may;
    CHECK(keys(input) == Keys{"advice.note.funk.wait"});
    CHECK(render(notesOf(input, {})[0]) == "Funk is still on its way: wait until 27 May 2026.");
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
        CHECK(keys(input) == Keys{"advice.note.bodyOutOfReach"});
    }
    input.verdicts[Dimension::body].gap = 1.9;
    CHECK(keys(input).empty());
    input.verdicts[Dimension::body] = {};
    input.verdicts[Dimension::body].kind = VerdictKind::hold;
    input.verdicts[Dimension::body].gap = 2.4;
    CHECK(keys(input).empty());
}

TEST_CASE("too much funk is told to go by draw, wait and dilution only") {
    auto input = withVerdicts(VerdictKind::hold, VerdictKind::move, VerdictKind::hold);
    input.verdicts[Dimension::funk].gap = -1.2;
    CHECK(keys(input) == Keys{"advice.note.funkDown"});
    CHECK(render(notesOf(input, {})[0]).find("-1.2") != std::string::npos);
    input.verdicts[Dimension::funk].gap = 1.2;
    CHECK(keys(input).empty());
}

TEST_CASE("a recipe above the bitterness ceiling is named with both numbers") {
    auto input = withVerdicts(VerdictKind::move, VerdictKind::hold, VerdictKind::hold);
    input.base.recipe.bitterness = {24};
    CHECK(keys(input) == Keys{"advice.note.overCeiling"});
    const auto text = render(notesOf(input, {})[0]);
    CHECK(text.find("24 IBU") != std::string::npos);
    CHECK(text.find("15 IBU") != std::string::npos);
}

TEST_CASE("prices tell a lock from something that is not at hand") {
    const auto title = say("advice.title.one").with("first", std::string("Longer ferulic rest"));
    const auto lock = render(told({"mash pH", true, .254, title}));
    CHECK(lock.find("lock on mash pH") != std::string::npos);
    CHECK(lock.find("0.25") != std::string::npos);
    CHECK(lock.find("Longer ferulic rest") != std::string::npos);
    const auto missing = render(told({"rye malt", false, .254, title}));
    CHECK(missing.find("Not having rye malt") != std::string::npos);
    CHECK(missing.find("lock") == std::string::npos);
}
