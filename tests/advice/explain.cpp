// SPDX-License-Identifier: GPL-3.0-or-later
// Every number that says where it comes from can be followed to the end of its explanation.
#include "advice/explain.h"
#include "advice/scenario.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <cmath>
#include <set>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::estimate;
using namespace staveline::tasting;

namespace {

struct Case {
    AdviceInput input;
    Advice advice;
};

Case tooSour() {
    auto input = scenario::cask();
    scenario::want(input, {{-1.5, 1.2, 0}});
    for (auto d : allDimensions) {
        input.evidence[d] = {{Evidence::Kind::model, input.model[d]},
                             {Evidence::Kind::sitting, input.combined[d], Day{std::chrono::days{20500}}}};
    }
    auto advice = advise(input).value();
    return {std::move(input), std::move(advice)};
}

std::set<std::string> originsOf(const std::vector<Message>& messages) {
    std::set<std::string> origins;
    for (const auto& message : messages)
        for (const auto& argument : message.arguments)
            if (argument.origin)
                origins.insert(linkOf(argument.origin));
    return origins;
}

/// Follows every explanation; returns how many links there were.
std::size_t follow(const Case& at, int proposal, std::set<std::string> open) {
    std::set<std::string> seen;
    while (!open.empty()) {
        const auto origin = *open.begin();
        open.erase(open.begin());
        if (!seen.insert(origin).second)
            continue;
        INFO(origin);
        const auto link = explain({at.input, at.advice, proposal, 0}, originFrom(origin).value());
        REQUIRE(link);
        CHECK(render(link->title).find('{') == std::string::npos);
        CHECK(render(link->title) != link->title.key);
        if (!link->formula.key.empty())
            CHECK(render(link->formula) != link->formula.key);
        for (const auto& input : link->inputs) {
            const auto text = render(input.text);
            CHECK(text.find('{') == std::string::npos);
            CHECK(text != input.text.key);
            if (input.origin)
                open.insert(linkOf(input.origin));
        }
    }
    return seen.size();
}

} // namespace

TEST_CASE("every number of every proposal can be followed to its end") {
    const auto at = tooSour();
    REQUIRE_FALSE(at.advice.proposals.empty());
    for (int number = 0; number <= static_cast<int>(at.advice.proposals.size()); ++number) {
        const auto& proposal =
            number == 0 ? at.advice.leaveAlone : at.advice.proposals[static_cast<std::size_t>(number - 1)];
        auto origins = originsOf(proposal.reasons);
        origins.merge(originsOf(proposal.limits));
        if (!proposal.moves.empty())
            origins.merge(originsOf({proposal.moves[0].wording}));
        CHECK(follow(at, number, origins) > 8);
    }
}

TEST_CASE("every number of a verdict can be followed to its end") {
    const auto at = tooSour();
    for (auto d : allDimensions)
        CHECK(follow(at, 0, originsOf({at.input.verdicts[d].reason})) >= 3);
    follow(at, 0, originsOf(at.advice.notes));
}

TEST_CASE("the links of an explanation say the numbers of the advice") {
    const auto at = tooSour();
    const auto d = Dimension::acidity;
    const auto& first = at.advice.proposals[0];
    const auto value = [&](std::string_view origin) {
        const auto link = explain({at.input, at.advice, 1, 0}, originFrom(origin).value()).value();
        for (const auto& argument : link.title.arguments)
            if (argument.name == "value")
                return std::get<Amount>(argument.value).value;
        return std::nan("");
    };
    CHECK(value("now/acidity") == at.input.combined[d].mean);
    CHECK(value("window/acidity") == at.input.target.windows[d].wanted);
    CHECK(value("prediction/next/acidity") == first.next[d].value);
    CHECK(value("alone/next/acidity") == at.advice.leaveAlone.next[d].value);
    // the model's score and what the vessel lies from it by add up to what is shown
    const auto deviation = at.input.offsets[d].mean[Offset::now]; // the same for good
    CHECK(value("model/next/acidity") + deviation == Approx(first.next[d].value).margin(1e-9));
    CHECK(value("model/alone/acidity") + deviation == Approx(at.advice.leaveAlone.next[d].value).margin(1e-9));
}

TEST_CASE("the explanation of a constant ends at its range and its source") {
    const auto at = tooSour();
    const auto link = explain({at.input, at.advice, 0, 0}, Origin::ofParameter("acidityExponent")).value();
    CHECK(render(link.title).find("0.650") != std::string::npos);
    CHECK(link.source.find("Moskowitz") != std::string::npos);
    CHECK(link.inputs.size() == 1);
}

TEST_CASE("a number from nowhere is refused, whatever it looks like") {
    const auto at = tooSour();
    for (const char* text : {"", "/", "moon", "now/moon", "moves/x/next/acidity", "model/acidity", "move/sideways"}) {
        INFO(text);
        CHECK_FALSE(originFrom(text));
    }
    for (const Origin& origin : {Origin(), Origin::ofMove(99, Dimension::acidity), Origin::ofParameter("moon")}) {
        INFO(linkOf(origin));
        const auto link = explain({at.input, at.advice, 0, 7}, origin);
        REQUIRE_FALSE(link);
        CHECK(link.error().path == "/origin");
    }
}

TEST_CASE("what would change a verdict is where the verdict changes") {
    auto input = scenario::cask();
    scenario::want(input, {{-1.5, 0, 0}});
    const auto lines = whatWouldChange(input);
    REQUIRE_FALSE(lines.empty());
    for (const auto& line : lines) {
        const auto score = std::get<Amount>(line.arguments[0].value).value;
        const auto d = line.key.find("acidity") != std::string::npos ? Dimension::acidity
                       : line.key.find("funk") != std::string::npos  ? Dimension::funk
                                                                     : Dimension::body;
        INFO(render(line));
        const auto& window = input.target.windows[d];
        const double inward = line.key.ends_with("down") ? .1 : -.1;
        const double sd = input.combined[d].sd;
        CHECK(standing(d, {score, sd}, window, {}).kind != input.verdicts[d].kind);
        if (std::abs(score + inward - input.combined[d].mean) > .06) // not where it starts
            CHECK(standing(d, {score + inward, sd}, window, {}).kind == input.verdicts[d].kind);
    }
}

TEST_CASE("faults and dates are no matter of a score: nothing would change them") {
    auto input = scenario::cask();
    for (auto d : allDimensions)
        input.verdicts[d].kind = VerdictKind::faultFirst;
    CHECK(whatWouldChange(input).empty());
}
