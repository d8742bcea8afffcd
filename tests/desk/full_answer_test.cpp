// SPDX-License-Identifier: GPL-3.0-or-later
// Answers that are no recipe: what they say, for which dimensions, and in which order.
#include "desk/full_answer.h"

#include "desk/support.h"
#include "facts/sample.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::tasting;
using namespace staveline::vessel;
using namespace staveline::testing;

namespace {

/// Answers of a vessel with these verdicts.
std::vector<FullAnswer> answersWith(VerdictKind acidity, VerdictKind funk, VerdictKind body) {
    EstimatesView view;
    int at = 0;
    for (const VerdictKind kind : {acidity, funk, body}) {
        Verdict& verdict = view.verdicts.values[static_cast<std::size_t>(at++)];
        verdict.kind = kind;
        verdict.until = day(2026, 8, 1);
        verdict.gravityFalls = true;
        verdict.reason = say("tasting.verdict.wait_gravity").with("until", day(2026, 8, 1));
        verdict.fault = "ropy";
    }
    view.faults = {{"ropy", 3}};
    Schedule dates{};
    dates.draw = day(2026, 7, 4);
    dates.nextSample = day(2027, 1, 20);
    return answersOf(view.verdicts, view.faults, dates);
}

std::string lineOf(const FullAnswer& answer, const std::string& head) {
    for (const AnswerLine& line : answer.lines)
        if (line.head.key == "desk.answer.head." + head)
            return render(line.words);
    return {};
}

} // namespace

TEST_CASE("fault first says cause, treatment, drawing, refill and day, and stands alone", "[desk][answer]") {
    const auto answers = answersWith(VerdictKind::waitUntil, VerdictKind::tasteAgain, VerdictKind::faultFirst);
    REQUIRE(answers.size() == 1);
    const FaultRule& rule = *builtInSheet().findFault("ropy");
    CHECK(render(answers[0].title) == "Fault first: " + rule.name + ", strong");
    CHECK(answers[0].lines.size() == 6);
    CHECK(lineOf(answers[0], "cause").find(rule.cause.substr(1)) == 1);
    CHECK(lineOf(answers[0], "do") == rule.action);
    CHECK(lineOf(answers[0], "drawing") == render(say("tasting.draw.not")));
    CHECK(lineOf(answers[0], "refill") == render(say(rule.refillAdvice)));
    CHECK(lineOf(answers[0], "look") == "1 Aug 2026");
    CHECK_FALSE(lineOf(answers[0], "recipe").empty());
}

TEST_CASE("a fault the sheet does not know is not treated by guessing", "[desk][answer]") {
    EstimatesView view;
    view.verdicts[Dimension::funk].kind = VerdictKind::faultFirst;
    view.verdicts[Dimension::funk].fault = "smells of tin";
    const auto answers = answersOf(view.verdicts, view.faults, {});
    REQUIRE(answers.size() == 1);
    REQUIRE(answers[0].lines.size() == 1);
    CHECK(answers[0].lines[0].words.key == "desk.answer.unknown_fault");
    CHECK(render(answers[0].title) == "Fault first: smells of tin");
}

TEST_CASE("wait names what it waits for, until when, and what happens otherwise", "[desk][answer]") {
    const auto wait = answersWith(VerdictKind::waitUntil, VerdictKind::hold, VerdictKind::waitUntil);
    REQUIRE(wait.size() == 1);
    CHECK(render(wait[0].title) == "Wait: acidity and body");
    CHECK(lineOf(wait[0], "until") == "1 Aug 2026");
    CHECK(lineOf(wait[0], "else") == render(say("desk.answer.gravity_falling")));
    const auto all = answersWith(VerdictKind::waitUntil, VerdictKind::waitUntil, VerdictKind::waitUntil);
    CHECK(render(all[0].title) == "Wait: acidity, funk and body");
}

TEST_CASE("taste again names its dimension and leaves the plan beside it", "[desk][answer]") {
    const auto funk = answersWith(VerdictKind::move, VerdictKind::tasteAgain, VerdictKind::hold);
    REQUIRE(funk.size() == 1);
    CHECK(render(funk[0].title) == "Not sure enough yet: funk");
    CHECK(lineOf(funk[0], "first") == render(say("desk.answer.tasters")));
    CHECK(lineOf(funk[0], "meanwhile") == render(say("desk.answer.draft")));
    const auto both = answersWith(VerdictKind::waitUntil, VerdictKind::tasteAgain, VerdictKind::hold);
    REQUIRE(both.size() == 2);
    CHECK(both[0].verdict.kind == VerdictKind::waitUntil);
    CHECK(both[1].verdict.kind == VerdictKind::tasteAgain);
}

TEST_CASE("taste first is the answer where nothing was ever tasted", "[desk][answer]") {
    const auto never = answersWith(VerdictKind::neverTasted, VerdictKind::neverTasted, VerdictKind::neverTasted);
    REQUIRE(never.size() == 1);
    CHECK(render(never[0].title) == "Taste first: acidity, funk and body");
    CHECK(lineOf(never[0], "first") == render(say("desk.answer.taste_first")));
}

TEST_CASE("hold is an answer only when everything holds", "[desk][answer]") {
    const auto hold = answersWith(VerdictKind::hold, VerdictKind::hold, VerdictKind::hold);
    REQUIRE(hold.size() == 1);
    CHECK(lineOf(hold[0], "draw") == "4 Jul 2026");
    CHECK(lineOf(hold[0], "sample") == "20 Jan 2027");
    CHECK(answersWith(VerdictKind::move, VerdictKind::hold, VerdictKind::leaveAlone).empty());
}

TEST_CASE_METHOD(DeskFixture, "every fault of the sheet has a full answer in words", "[desk][answer]") {
    for (const FaultRule& rule : builtInSheet().faults) {
        INFO(rule.id);
        EstimatesView view;
        view.verdicts[Dimension::acidity].kind = VerdictKind::faultFirst;
        view.verdicts[Dimension::acidity].fault = rule.id;
        for (const FullAnswer& answer : answersOf(view.verdicts, view.faults, {}))
            for (const AnswerLine& line : answer.lines) {
                CHECK(builtInTexts().has(line.head.key));
                CHECK(builtInTexts().has(line.words.key));
                CHECK(render(line.words).size() > 4);
            }
    }
}
