// SPDX-License-Identifier: GPL-3.0-or-later
// Every number that a reason or limit shows is worked out again here, from the fields its origin names.
#include "advice/reasons.h"

#include "advice/board.h"
#include "advice/explain.h"
#include "advice/lever.h"

#include "advice/scenario.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <cmath>
#include <fmt/core.h>
#include <optional>
#include <set>
#include <sstream>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::tasting;

namespace {

std::vector<std::string> parts(const std::string& origin) {
    std::vector<std::string> found;
    std::istringstream in(origin);
    for (std::string part; std::getline(in, part, '/');)
        found.push_back(part);
    return found;
}

std::optional<Dimension> dimension(const std::string& word) {
    for (auto d : allDimensions)
        if (name(d) == word)
            return d;
    return {};
}

const PerDimension<Band>& bands(const Proposal& proposal, const std::string& when) {
    return when == "settled" ? proposal.settled : proposal.next;
}

/// One difference threshold: 21 % more titratable acidity, through the score map.
double threshold(const Proposal& alone) {
    const auto& at = alone.atNext;
    const GramsPerLitre acetic{at.state.beer.acetic};
    return acidityScore({1.21 * at.ta.gPerL}, acetic, at.alcohol) - acidityScore(at.ta, acetic, at.alcohol);
}

/// What the origin says the number is; empty: an origin nobody knows.
std::optional<double> resolved(const std::string& origin, const Advice& advice, const Proposal& proposal) {
    const auto p = parts(origin);
    const auto& alone = advice.leaveAlone;
    if (origin == "vessel/bitterness")
        return proposal.atNext.bitterness.ibu;
    if (origin == "alone/bitterness")
        return alone.atNext.bitterness.ibu;
    if (origin == "threshold/acidity")
        return threshold(alone);
    const auto d = dimension(p.back());
    if (!d)
        return {};
    if (p[0] == "now")
        return advice.now[*d].mean;
    if (p[0] == "window")
        return advice.windows[*d].wanted;
    if (p[0] == "prediction")
        return bands(proposal, p[1])[*d].value;
    if (p[0] == "alone")
        return bands(alone, p[1])[*d].value;
    if (p[0] == "change")
        return bands(proposal, p[1])[*d].value - bands(alone, p[1])[*d].value;
    if (p[0] == "moves")
        return proposal.moves.at(std::stoul(p[1])).next.value()[*d];
    if (p[0] == "share")
        return (proposal.next[*d].value - alone.next[*d].value) /
               (proposal.settled[*d].value - alone.settled[*d].value);
    if (p[0] == "cycles")
        return proposal.cyclesNeeded[*d];
    if (p[0] == "verdict")
        return advice.verdicts[*d].gap;
    return {};
}

double shown(const ArgumentValue& value) {
    return std::visit(
        [](const auto& v) -> double {
            using T = std::decay_t<decltype(v)>;
            if constexpr (std::is_same_v<T, Amount>)
                return v.value;
            else if constexpr (std::is_same_v<T, std::int64_t>)
                return static_cast<double>(v);
            else
                return NAN;
        },
        value);
}

void checkMessage(const Message& message, const Advice& advice, const Proposal& proposal) {
    INFO(message.key);
    CHECK(builtInTexts().has(message.key));
    CHECK(render(message).find('{') == std::string::npos);
    for (const auto& argument : message.arguments) {
        const auto origin = linkOf(argument.origin);
        if (origin.empty() || origin.starts_with("move/"))
            continue;
        INFO(origin);
        const auto value = resolved(origin, advice, proposal);
        REQUIRE(value);
        const double tolerance = origin.starts_with("share/") ? .005 + 1e-9 : 1e-9;
        CHECK(std::abs(shown(argument.value) - *value) <= tolerance);
    }
}

int checkProposal(const Advice& advice, const Proposal& proposal) {
    int numbers = 0;
    for (const auto* list : {&proposal.reasons, &proposal.limits})
        for (const auto& message : *list) {
            checkMessage(message, advice, proposal);
            for (const auto& argument : message.arguments)
                numbers += argument.origin ? 1 : 0;
        }
    CHECK(builtInTexts().has(proposal.title.key));
    for (const auto& caution : proposal.cautions)
        CHECK(builtInTexts().has(caution.key));
    return numbers;
}

AdviceInput wanting(const Scores& change) {
    auto input = scenario::cask();
    input.draws = 8;
    scenario::want(input, change);
    return input;
}

bool hasKey(const std::vector<Message>& messages, std::string_view key) {
    return std::any_of(messages.begin(), messages.end(), [&](const Message& m) { return m.key == key; });
}

} // namespace

TEST_CASE("every number in a reason or limit follows from the fields it names") {
    for (const auto& change : {Scores{{-1.5, 1.4, 0}}, Scores{{1.2, -1.5, .9}}, Scores{{-2.5, 0, 2.2}}}) {
        const auto advice = advise(wanting(change)).value();
        REQUIRE(!advice.proposals.empty());
        int numbers = checkProposal(advice, advice.leaveAlone);
        for (const auto& proposal : advice.proposals)
            numbers += checkProposal(advice, proposal);
        CHECK(numbers > 20);
        for (const auto& note : advice.notes)
            checkMessage(note, advice, advice.leaveAlone);
    }
}

TEST_CASE("a proposal names every move once, with its effect") {
    const auto advice = advise(wanting({{-1.5, 1.4, 0}})).value();
    REQUIRE(!advice.proposals.empty());
    for (const auto& proposal : advice.proposals) {
        int told = 0;
        for (const auto& reason : proposal.reasons)
            told += reason.key == "advice.reason.move" ? 1 : 0;
        CHECK(told == static_cast<int>(proposal.moves.size()));
    }
}

TEST_CASE("an acid change below one difference threshold is never sold as tasted") {
    int sold = 0, warned = 0;
    for (const auto& change : {Scores{{-1.5, 1.4, 0}}, Scores{{-2.5, 0, 0}}, Scores{{2, 0, 0}}}) {
        const auto advice = advise(wanting(change)).value();
        const double needed = threshold(advice.leaveAlone);
        for (const auto& proposal : advice.proposals) {
            const double moved =
                std::abs(proposal.next[Dimension::acidity].value - advice.leaveAlone.next[Dimension::acidity].value);
            const bool said = hasKey(proposal.limits, "advice.limit.acidity.untasted") ||
                              hasKey(proposal.limits, "advice.limit.acidity.belowThreshold");
            CHECK(said == (moved >= leastTold && moved < needed));
            ++(said ? warned : sold);
        }
    }
    CHECK(warned > 0);
    CHECK(sold > 0);
}

TEST_CASE("one difference threshold is about a point at the published working acidity") {
    // J. Food Sci. 1963: 1.56 g/L at a titratable acidity of 7.4 g/L.
    const auto input = wanting({{0, 0, 0}});
    Proposal alone;
    alone.setting = input.base;
    alone.atNext.ta = {7.4};
    alone.atNext.alcohol = {5};
    CHECK(acidDifference * 7.4 == Approx(1.56).margin(.01));
    CHECK(acidityThreshold(input, alone) == Approx(1.0186).margin(.0005)); // our own map, regression
}

TEST_CASE("the difference threshold is that of the acidity the vessel will measure, not of the model's") {
    auto input = wanting({{0, 0, 0}});
    input.withSettled = false;
    input.offsets[Dimension::acidity] = scenario::lasting(1.5, .3);
    input.offsets[Dimension::acidity].mean[estimate::Offset::apart] = .5; // a point of it is acid
    const auto advice = advise(input).value();
    const auto& at = advice.leaveAlone.atNext;
    const auto shown = TryBoard(input).trial(std::vector<TriedValue>{}, TrialDepth::central).value().nextBeer.ta;
    CHECK(shown > at.ta + GramsPerLitre{1});
    const auto score = [&](double ta) { return acidityScore({ta}, {at.state.beer.acetic}, at.alcohol); };
    const double noticed = score(1.21 * shown.gPerL) - score(shown.gPerL);
    CHECK(acidityThreshold(input, advice.leaveAlone) == Approx(noticed));
    const auto link = explain({input, advice, 0, 0}, {OriginKind::threshold, Dimension::acidity}).value();
    CHECK(std::get<Amount>(link.inputs[0].text.arguments[0].value).value == Approx(shown.gPerL));
}

TEST_CASE("cycles needed are counted and said") {
    const auto advice = advise(wanting({{-1.5, 1.4, 0}})).value();
    REQUIRE(!advice.proposals.empty());
    for (const auto& proposal : advice.proposals)
        for (auto d : {Dimension::acidity, Dimension::funk}) {
            const int cycles = proposal.cyclesNeeded[d];
            const bool inside = std::abs(proposal.next[d].value - advice.windows[d].wanted) <= advice.windows[d].band;
            CHECK((cycles == 1) == inside);
            CHECK(hasKey(proposal.limits, fmt::format("advice.limit.{}.cycles", name(d))) == (cycles > 1));
            CHECK(hasKey(proposal.limits, fmt::format("advice.limit.{}.notReached", name(d))) == (cycles == 0));
        }
}

TEST_CASE("moving the hops shows where the vessel's bitterness goes") {
    auto input = wanting({{-2.5, 0, 0}});
    input.usual = input.base;
    input.usual->recipe.bitterness = {16};
    const auto advice = advise(input).value();
    REQUIRE(advice.usual);
    CHECK(advice.usual->moves[0].lever == "bitterness");
    CHECK(hasKey(advice.usual->limits, "advice.limit.hops"));
    CHECK_FALSE(hasKey(advice.leaveAlone.limits, "advice.limit.hops"));
}

TEST_CASE("where a lever's direction is known of worts only, that is said, and an aid is said to be for once") {
    auto input = wanting({{-2.5, 0, 0}});
    input.usual = input.base;
    input.usual->recipe.sugarShare = {.1};
    auto advice = advise(input).value();
    CHECK(hasKey(advice.usual->reasons, "advice.reason.assumed"));
    CHECK_FALSE(hasKey(advice.usual->limits, "advice.limit.oneCycle"));
    CHECK_FALSE(hasKey(advice.leaveAlone.reasons, "advice.reason.assumed"));
    input.usual = input.base;
    input.usual->recipe.preSoured = {.2};
    advice = advise(input).value();
    CHECK_FALSE(hasKey(advice.usual->reasons, "advice.reason.assumed"));
    CHECK(hasKey(advice.usual->limits, "advice.limit.oneCycle"));
    CHECK_FALSE(hasKey(advice.usual->reasons, "advice.reason.repeated")); // it is not kept up
    CHECK(onlyAids(*input.usual, input.base, *input.pantry));
    CHECK_FALSE(onlyAids(input.base, input.base, *input.pantry));
    input.usual->recipe.sugarShare = {.1};
    CHECK_FALSE(onlyAids(*input.usual, input.base, *input.pantry));
    CHECK(hasKey(advise(input).value().usual->reasons, "advice.reason.repeated"));
}

TEST_CASE("a title of many moves names them all, and what it costs") {
    std::vector<Move> moves;
    for (const auto* lever : {"sugar", "gravity", "sacch_temperature"})
        moves.push_back(
            {.lever = lever, .from = 1.0, .to = 2.0, .next = {}, .settled = {}, .wording = {}, .cautions = {}});
    CHECK(render(titleOf(moves)) == "More sugar, stronger refill, hotter mash");
}

namespace {

/// Two plans of which each test says what they bring.
struct TwoPlans {
    AdviceInput input = wanting({{0, 0, 0}});
    Proposal alone, plan;

    TwoPlans() {
        plan.setting = alone.setting = input.base;
        plan.setting.interval = {200}; // another one
        for (auto d : allDimensions) {
            input.target.windows[d] = {4, 1};
            bring(d, 4, 4);
        }
    }
    /// The scores with the plan; left alone it is 4 and then 4.
    void bring(Dimension d, double next, double ahead) {
        plan.next[d].value = next;
        plan.ahead[d] = ahead;
        alone.next[d].value = alone.ahead[d] = 4;
    }
    [[nodiscard]] std::string title() const {
        return render(withCost(say("advice.title.usual"), {input, plan, alone}));
    }
    [[nodiscard]] Message why() const { return whyOf({input, plan, alone}); }
    [[nodiscard]] std::vector<Message> limits() const { return limitsOf({input, plan, alone}, input.base); }
};

} // namespace

TEST_CASE("a title names a cost that can be tasted, at the next draw or at the last planned for, and no other") {
    const std::string plain = "The usual recipe", costs = "The usual recipe, at the cost of body";
    TwoPlans two;
    two.plan.loss = {{0, -.2, .02}};
    for (const auto& [next, ahead] : {std::pair(4.2, 4.2), {4.29, 3.71}, {4.0, 4.0}}) {
        two.bring(Dimension::body, next, ahead);
        CHECK(two.title() == plain);
    }
    for (const auto& [next, ahead] : {std::pair(4.31, 4.0), {4.0, 3.69}, {3.6, 4.5}}) {
        two.bring(Dimension::body, next, ahead);
        CHECK(two.title() == costs);
    }
    two.plan.loss[Dimension::body] = .009; // it is left farther off, where that is hardly a loss
    CHECK(two.title() == plain);
    two.plan.loss = {{.02, .02, .02}};
    two.input.target.windows[Dimension::body].wanted = 5; // it comes nearer
    two.bring(Dimension::body, 4.6, 4.9);
    two.bring(Dimension::funk, 4.4, 4.4);
    two.bring(Dimension::acidity, 4.4, 4.4);
    CHECK(two.title() == "The usual recipe, at the cost of acidity and funk");
}

TEST_CASE("a change of funk or body that is told and cannot be tasted is called so") {
    for (auto d : {Dimension::funk, Dimension::body}) {
        const auto key = fmt::format("advice.limit.{}.untasted", name(d));
        for (auto kind : {VerdictKind::move, VerdictKind::hold})
            for (const auto& [change, small] : {std::pair(.04, false), {.06, true}, {-.29, true}, {.31, false}}) {
                INFO(key << " " << change);
                TwoPlans two;
                two.input.verdicts[d].kind = kind;
                two.bring(d, 4 + change, 4);
                CHECK(hasKey(two.limits(), key) == (small && kind == VerdictKind::move));
            }
    }
}

TEST_CASE("the sentence why never says towards of a score that goes away") {
    TwoPlans two;
    two.input.target.windows[Dimension::funk].wanted = 5;
    two.plan.loss = {{0, -.3, 0}};
    two.bring(Dimension::funk, 4.4, 4.8);
    CHECK(render(two.why()) == "Funk comes to 4.4 at the next draw instead of 4.0; target 5.0.");
    two.bring(Dimension::funk, 3.9, 4.8); // away at first
    CHECK(render(two.why()) == "Funk comes to 4.8 in 4 draws instead of 4.0; target 5.0.");
    two.bring(Dimension::funk, 4.02, 4.8); // nothing to speak of at first
    CHECK(two.why().key == "advice.why.funk.ahead");
    two.bring(Dimension::funk, 4.0, 4.0); // on the way only
    CHECK(render(two.why()) == "Over the next 4 draws this keeps funk nearer the target of 5.0.");
    two.bring(Dimension::funk, 5.4, 6.2); // past what is wanted, and nearer to it
    CHECK(two.why().key == "advice.why.funk");
}

TEST_CASE("why says of a plan that it is worse, that it gains too little, or that it is no change") {
    TwoPlans two;
    two.plan.loss = {{.3, -.02, 0}};
    two.bring(Dimension::funk, 4.6, 4.8);
    CHECK(two.why().key == "advice.why.worse");
    two.plan.loss = {{.009, 0, 0}};
    CHECK(two.why().key == "advice.why.little");
    two.plan.setting = two.alone.setting;
    CHECK(two.why().key == "advice.why.alone");
}

TEST_CASE("titles say the direction in words") {
    Move cooler{.lever = "sacch_temperature",
                .from = 66.0,
                .to = 63.0,
                .next = {},
                .settled = {},
                .wording = {},
                .cautions = {}};
    Move rest{
        .lever = "ferulic_rest", .from = 0.0, .to = 20.0, .next = {}, .settled = {}, .wording = {}, .cautions = {}};
    CHECK(render(titleOf({cooler, rest})) == "Cooler mash, a ferulic rest");
    CHECK(render(titleOf({rest})) == "A ferulic rest");
    rest.from = 10.0;
    CHECK(render(titleOf({rest})) == "Longer ferulic rest");
    rest.forced = true;
    CHECK(render(titleOf({rest})) == "Leave it alone");
    CHECK(render(titleOf({})) == "Leave it alone");
}

TEST_CASE("every lever has a short phrase for each way it can go") {
    for (const auto& lever : levers()) {
        INFO(lever.id);
        Move move;
        move.lever = lever.id;
        std::set<std::string> ways;
        if (rowOf(lever).isChoice()) {
            for (const auto& choice : rowOf(lever).choices) {
                move.to = choice;
                ways.insert(shortPhrase(move));
            }
            CHECK(ways.size() == rowOf(lever).choices.size());
        } else {
            move.from = 1.0;
            for (double to : {2.0, .5}) {
                move.to = to;
                ways.insert(shortPhrase(move));
            }
            CHECK(ways.size() == 2);
        }
        CHECK_FALSE(ways.contains(rowOf(lever).name));
    }
}
