// SPDX-License-Identifier: GPL-3.0-or-later
// Explanations and prices where locks and an empty shelf force the hand: what is shown still adds up and still ends.
#include "advice/explain.h"
#include "advice/reasons.h"
#include "advice/scenario.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <algorithm>
#include <cmath>
#include <set>

using namespace staveline;
using namespace staveline::advice;

namespace {

struct Asked {
    AdviceInput input;
    Advice advice;
};

/// Too sour and short of funk; the recipe is held 1 IBU above its own, the wheat malt is out.
Asked restricted() {
    auto input = scenario::cask();
    input.draws = 16;
    scenario::want(input, {{-1.5, 1.2, 0}});
    input.locks = {{"bitterness", 14.0}};
    input.unavailable = {"wheat_malt", "saison"};
    auto advice = advise(input);
    REQUIRE(advice);
    return {std::move(input), *std::move(advice)};
}

Asked free() {
    auto input = scenario::cask();
    input.draws = 16;
    scenario::want(input, {{-1.5, 1.2, 0}});
    auto advice = advise(input);
    REQUIRE(advice);
    return {std::move(input), *std::move(advice)};
}

double signedValue(const Message& message) {
    for (const auto& argument : message.arguments)
        if (argument.name == "value")
            if (const auto* points = std::get_if<Amount>(&argument.value))
                return points->value;
    return std::nan("");
}

/// The parts listed under a move's contribution, and the sum the explanation states for them.
struct Sum {
    double parts = 0, stated = 0;
    int count = 0;
};
Sum sumOf(const Asked& asked, int proposal, std::size_t move, Dimension d) {
    const auto origin = Origin::ofMove(move, d);
    const auto link = explain({asked.input, asked.advice, proposal, move}, origin);
    REQUIRE(link);
    Sum sum;
    for (const auto& input : link->inputs)
        if (input.text.key == "advice.explanation.input.part") {
            sum.parts += signedValue(input.text);
            ++sum.count;
        } else if (input.text.key == "advice.explanation.input.sum") {
            sum.stated = signedValue(input.text);
        }
    return sum;
}

void checkSums(const Asked& asked) {
    REQUIRE_FALSE(asked.advice.proposals.empty());
    for (std::size_t p = 0; p < asked.advice.proposals.size(); ++p)
        for (std::size_t m = 0; m < asked.advice.proposals[p].moves.size(); ++m)
            for (auto d : allDimensions) {
                INFO("proposal " << p + 1 << ", move " << m << ", " << name(d));
                const auto sum = sumOf(asked, static_cast<int>(p) + 1, m, d);
                CHECK(sum.count >= 1);
                // what was forced is in "leave it alone" too, so no sum is stated against it
                if (asked.advice.proposals[p].moves[m].forced)
                    CHECK(sum.stated == 0);
                else
                    CHECK(sum.parts == Approx(sum.stated).margin(1e-6));
            }
}

/// Every origin a proposal names leads somewhere, however it was forced.
void followAll(const Asked& asked, int number, const std::vector<Message>& messages) {
    std::set<std::string> open, seen;
    for (const auto& message : messages)
        for (const auto& argument : message.arguments)
            if (argument.origin)
                open.insert(linkOf(argument.origin));
    while (!open.empty()) {
        const auto origin = *open.begin();
        open.erase(open.begin());
        if (!seen.insert(origin).second)
            continue;
        INFO(origin);
        const auto link = explain({asked.input, asked.advice, number, 0}, originFrom(origin).value());
        REQUIRE(link);
        CHECK(render(link->title).find("nan") == std::string::npos);
        CHECK(render(link->title).find('?') == std::string::npos);
        for (const auto& input : link->inputs)
            if (input.origin)
                open.insert(linkOf(input.origin));
    }
    CHECK(seen.size() > 4);
}

} // namespace

TEST_CASE("the parts in an explanation add up to the change they are said to make") {
    checkSums(free());
}

TEST_CASE("they add up too where a lock and an empty shelf force moves of their own") {
    const auto asked = restricted();
    for (const auto& proposal : asked.advice.proposals)
        CHECK(std::count_if(proposal.moves.begin(), proposal.moves.end(), [](const Move& m) { return m.forced; }) >= 1);
    checkSums(asked);
}

TEST_CASE("every number of a restricted proposal can be followed to its end") {
    const auto asked = restricted();
    for (std::size_t i = 0; i < asked.advice.proposals.size(); ++i) {
        const auto& proposal = asked.advice.proposals[i];
        auto messages = proposal.reasons;
        messages.insert(messages.end(), proposal.limits.begin(), proposal.limits.end());
        followAll(asked, static_cast<int>(i) + 1, messages);
        for (std::size_t m = 0; m < proposal.moves.size(); ++m)
            for (const Origin& end : {Origin(OriginKind::moveTo), Origin(OriginKind::moveFrom)}) {
                const auto& words = proposal.moves[m].wording.arguments;
                if (std::none_of(words.begin(), words.end(), [&](const Argument& a) { return a.origin == end; }))
                    continue;
                CHECK(explain({asked.input, asked.advice, static_cast<int>(i) + 1, m}, end));
            }
    }
}

TEST_CASE("a number beyond what the proposal has ends with a fault, not with another number") {
    const auto asked = free();
    const auto moves = asked.advice.proposals[0].moves.size();
    for (const char* text : {"moves/-1/next/acidity", "moves//next/acidity", "verdict/acidity", "acidity"}) {
        INFO(text);
        CHECK_FALSE(originFrom(text));
    }
    CHECK_FALSE(explain({asked.input, asked.advice, 1, 0}, Origin::ofMove(moves, Dimension::acidity)));
    CHECK_FALSE(explain({asked.input, asked.advice, 1, moves}, OriginKind::moveTo));
}

TEST_CASE("a proposal nobody made is explained as leaving it alone") {
    const auto asked = free();
    for (int number : {0, 9, -3}) {
        const auto link =
            explain({asked.input, asked.advice, number, 0}, {OriginKind::predictionNext, Dimension::acidity});
        REQUIRE(link);
        for (const auto& argument : link->title.arguments)
            if (argument.name == "value")
                CHECK(std::get<Amount>(argument.value).value == asked.advice.leaveAlone.next[Dimension::acidity].value);
    }
}

TEST_CASE("what is locked is in every proposal, and its price names the lock") {
    const auto asked = restricted();
    for (const auto& proposal : asked.advice.proposals) {
        CHECK(proposal.setting.recipe.bitterness.ibu == 14);
        for (const auto& part : proposal.setting.recipe.grist)
            CHECK(part.grain != "wheat_malt");
    }
    REQUIRE(!asked.advice.prices.empty());
    for (const auto& price : asked.advice.prices) {
        CHECK((price.id == "bitterness" || price.id == "wheat_malt" || price.id == "saison"));
        CHECK(price.lock == (price.id == "bitterness"));
        CHECK(price.cost > 0);
        CHECK(render(price.withoutIt).find('{') == std::string::npos);
    }
}
