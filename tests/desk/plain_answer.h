// SPDX-License-Identifier: GPL-3.0-or-later
// The whole answer to a brewer's question, its plans in the words of the trade, and what every answer has to keep.
#pragma once

#include "desk/years.h"

#include "advice/adviser.h"
#include "advice/reasons.h"

#include <set>

namespace staveline::testing {

/// Moves of a plan as brewers name them: "cooler mash", "more attenuative yeast".
using Ways = std::set<std::string>;

// Common practice, no source.
inline const Ways lessSour = {"cooler mash", "more attenuative yeast", "more sugar",
                              "larger draw", "shorter interval",       "lighter refill"};
inline const Ways moreSour = {
    "hotter mash",     "less attenuative yeast", "less sugar",      "more of the refill soured beforehand",
    "longer interval", "smaller draw",           "stronger refill", "less bitterness"};
inline const Ways lessFunk = {"larger draw",          "shorter interval",        "more sugar",    "more oats",
                              "shorter ferulic rest", "less rye or kilned malt", "lighter refill"};
inline const Ways moreFunk = {"a ferulic rest",
                              "longer ferulic rest",
                              "slow heating to saccharification",
                              "higher mash pH",
                              "more rye or kilned malt",
                              "longer interval",
                              "smaller draw",
                              "fewer oats",
                              "stronger refill"};
inline const Ways thinner = {"fewer oats",          "lighter refill",         "more sugar",
                             "cooler mash",         "more attenuative yeast", "a ferulic rest",
                             "longer ferulic rest", "less rye or kilned malt"};
inline const Ways fuller = {"more oats",  "stronger refill",        "more rye or kilned malt", "hotter mash",
                            "less sugar", "less attenuative yeast", "shorter ferulic rest"};

/// What the trade would do about a score that is off.
inline const Ways& practice(Dimension d, bool tooMuch) {
    static const PerDimension<std::pair<Ways, Ways>> all{
        {std::pair{lessSour, moreSour}, {lessFunk, moreFunk}, {thinner, fuller}}};
    return tooMuch ? all[d].first : all[d].second;
}

inline bool share(const Ways& a, const Ways& b) {
    return std::any_of(a.begin(), a.end(), [&](const auto& way) { return b.contains(way); });
}

struct Answer {
    desk::AdviceJob job;
    advice::Advice advice;

    [[nodiscard]] bool leavesAlone() const { return advice.proposals.empty(); }
    /// Of the first proposal; what is forced is no choice.
    [[nodiscard]] Ways ways() const { return leavesAlone() ? Ways{} : waysOf(advice.proposals.front()); }
    [[nodiscard]] Ways waysOf(const advice::Proposal& proposal) const {
        Ways ways;
        for (const auto& move : proposal.moves)
            if (!move.forced)
                ways.insert(wayOf(move));
        return ways;
    }
    /// Of all proposals.
    [[nodiscard]] Ways anyWay() const {
        Ways ways;
        for (const auto& proposal : advice.proposals)
            ways.merge(waysOf(proposal));
        return ways;
    }
    /// How far a score is from what is wanted; more than the band is out of range.
    [[nodiscard]] double above(Dimension d) const { return advice.now[d].mean - advice.windows[d].wanted; }
    [[nodiscard]] bool outOfRange(Dimension d) const { return std::abs(above(d)) > advice.windows[d].band; }
    /// What the first proposal changes against leaving alone.
    [[nodiscard]] double change(Dimension d) const {
        return advice.proposals.front().next[d].value - advice.leaveAlone.next[d].value;
    }
    [[nodiscard]] double changeKeptUp(Dimension d) const {
        return advice.proposals.front().settled[d].value - advice.leaveAlone.settled[d].value;
    }
    [[nodiscard]] tasting::VerdictKind word(Dimension d) const { return advice.verdicts[d].kind; }

    /// All that is said, a line each.
    [[nodiscard]] std::vector<std::string> lines() const {
        std::vector<std::string> all;
        const auto add = [&](const std::vector<Message>& messages) {
            for (const auto& message : messages)
                all.push_back(render(message));
        };
        const auto addProposal = [&](const advice::Proposal& proposal) {
            add({proposal.title, proposal.why});
            for (const auto& move : proposal.moves)
                add({move.wording});
            for (const auto* list : {&proposal.reasons, &proposal.limits, &proposal.cautions})
                add(*list);
        };
        for (Dimension d : allDimensions)
            add({advice.verdicts[d].reason});
        add(advice.notes);
        for (const auto& answer : desk::answersOf(advice.verdicts, job.estimates.faults, job.dates)) {
            add({answer.title});
            for (const auto& line : answer.lines)
                add({line.head, line.words});
        }
        for (const auto& proposal : advice.proposals)
            addProposal(proposal);
        addProposal(advice.leaveAlone);
        return all;
    }
    [[nodiscard]] std::string text() const { return fmt::format("{}", fmt::join(lines(), "\n")); }
    [[nodiscard]] bool says(const std::string& words) const { return text().find(words) != std::string::npos; }

private:
    [[nodiscard]] std::string wayOf(const advice::Move& move) const {
        if (move.lever != "yeast")
            return advice::shortPhrase(move);
        const auto attenuation = [&](const advice::LeverValue& id) {
            const auto yeast = job.pantry->yeast(std::get<std::string>(id));
            return yeast->takesMaltose + yeast->takesMaltotriose + yeast->takesDextrin;
        };
        const double more = attenuation(move.to) - attenuation(move.from);
        return more > 0 ? "more attenuative yeast" : more < 0 ? "less attenuative yeast" : "another yeast";
    }
};

/// No empty text, no name of an argument left in it, no number that is none.
inline void saysWholeSentences(const Answer& answer) {
    for (const auto& line : answer.lines()) {
        INFO(line);
        CHECK_FALSE(line.empty());
        CHECK(line.find_first_of("{}") == std::string::npos);
        CHECK(line.find("nan") == std::string::npos);
        CHECK(line.find("inf ") == std::string::npos);
    }
}

inline void hasNumbersOnly(const Answer& answer) {
    auto plans = answer.advice.proposals;
    plans.push_back(answer.advice.leaveAlone);
    for (const auto& plan : plans) {
        CHECK(std::isfinite(plan.cost));
        for (Dimension d : allDimensions)
            for (const auto& band : {plan.thisDraw[d], plan.next[d], plan.settled[d]}) {
                CHECK(std::isfinite(band.value));
                CHECK(band.low <= band.value);
                CHECK(band.value <= band.high);
                CHECK(band.high - band.low < 20);
            }
    }
    for (Dimension d : allDimensions) {
        CHECK(std::isfinite(answer.advice.now[d].mean));
        CHECK(answer.advice.now[d].sd > 0);
        CHECK(std::isfinite(answer.advice.now[d].sd));
    }
}

/// Words, chevrons and plans come from one calculation.
inline void agreesWithItself(const Answer& answer) {
    using tasting::VerdictKind;
    bool moves = false;
    for (Dimension d : allDimensions) {
        INFO(name(d));
        const auto& verdict = answer.advice.verdicts[d];
        if (verdict.kind == VerdictKind::move) {
            moves = true;
            REQUIRE_FALSE(answer.leavesAlone());
            CHECK((verdict.up ? 1 : -1) * answer.change(d) > -.1);
            CHECK((verdict.up ? 1 : -1) * answer.changeKeptUp(d) > -.1);
        }
        if (verdict.kind == VerdictKind::hold)
            CHECK_FALSE(answer.outOfRange(d));
        if (answer.outOfRange(d) && verdict.kind != VerdictKind::neverTasted)
            CHECK(verdict.up == (answer.above(d) < 0));
    }
    const bool asks = answer.advice.tasting.dimension.has_value();
    CHECK((moves || asks || answer.leavesAlone()));
    std::set<std::set<std::string>> kinds;
    for (const auto& proposal : answer.advice.proposals) {
        std::set<std::string> levers;
        for (const auto& move : proposal.moves)
            if (!move.forced)
                levers.insert(move.lever);
        CHECK_FALSE(levers.empty());
        CHECK(kinds.insert(levers).second);
        CHECK(proposal.worth >= advice::clearlyBetter);
    }
}

/// Nothing out of range goes the wrong way, nothing in range is led out of it; at the next draw or kept up.
inline void harmsNothing(const Answer& answer) {
    if (answer.leavesAlone())
        return;
    constexpr double notNoticed = .1;
    const auto& first = answer.advice.proposals.front();
    for (Dimension d : allDimensions) {
        if (!answer.job.input.seen[d])
            continue;
        INFO(name(d) << ", " << render(first.title));
        const auto& window = answer.advice.windows[d];
        if (answer.outOfRange(d)) {
            const double wrong = answer.above(d) > 0 ? 1 : -1;
            CHECK(wrong * answer.change(d) <= notNoticed);
            CHECK(wrong * answer.changeKeptUp(d) <= notNoticed);
            continue;
        }
        const auto off = [&](const advice::Band& band) { return std::abs(band.value - window.wanted); };
        CHECK(off(first.next[d]) <= std::max(window.band, off(answer.advice.leaveAlone.next[d]) + notNoticed));
        CHECK(off(first.settled[d]) <= std::max(window.band, off(answer.advice.leaveAlone.settled[d]) + notNoticed));
    }
}

/// Every move is one that the trade would make for something that is off.
inline void followsPractice(const Answer& answer) {
    Ways allowed;
    for (Dimension d : allDimensions)
        if (answer.outOfRange(d) || answer.word(d) == tasting::VerdictKind::move) {
            const Ways& ways = practice(d, answer.outOfRange(d) ? answer.above(d) > 0 : !answer.advice.verdicts[d].up);
            allowed.insert(ways.begin(), ways.end());
        }
    for (const auto& way : answer.ways()) {
        INFO(way);
        CHECK(allowed.contains(way));
    }
}

inline void keepsItsWord(const Answer& answer) {
    INFO(answer.text());
    saysWholeSentences(answer);
    hasNumbersOnly(answer);
    agreesWithItself(answer);
    harmsNothing(answer);
}

inline Answer answerOf(const desk::Desk& desk, const desk::AdviceRequest& request) {
    auto job = desk.adviceJob(request);
    REQUIRE(job);
    auto advice = advice::advise(job->input);
    REQUIRE(advice);
    return {*std::move(job), *std::move(advice)};
}

/// A cask with a target and a usual recipe, asked about a month before its draw.
struct PlainFixture : YearsFixture {
    static constexpr auto acidity = Dimension::acidity, funk = Dimension::funk, body = Dimension::body;

    PlainFixture() {
        target(5, 4, 4);
        usualRecipe(66, 10);
    }
    void target(double sour, double funky, double full) {
        record(fmt::format(
            R"({{"kind": "target", "vessel": "Knot", "on": "2020-01-01", "acidity": {}, "funk": {}, "body": {},
                 "bitterness_ceiling_ibu": 15, "set_by": "Rook"}})",
            sour, funky, full));
    }
    void usualRecipe(double mash, double bitterness, double sugar = 0) {
        record(fmt::format(
            R"({{"kind": "base_recipe", "vessel": "Knot", "on": "2020-01-01", "original_gravity_p": 12,
                 "bitterness_ibu": {}, "grist": [{{"grain": "pilsner", "share": 0.75}},
                 {{"grain": "wheat_malt", "share": 0.25}}], "mash": [{{"temperature_c": {}, "minutes": 60}}],
                 "path": "jump", "yeast": "ale_clean", "sugar_share": {}}})",
            bitterness, mash, sugar));
    }
    void titrate(Day on, double ta) {
        now = std::max(now, on);
        record(fmt::format(R"({{"kind": "reading", "vessel": "Knot", "on": "{}", "ta_g_l": {}}})", isoDay(on), ta));
    }
    /// A month before the first draw.
    [[nodiscard]] Day tastingDay() const { return cycle(0, 210); }
    void tasted(double sour, double funky, double full, const Tasters& by = fourTasters) {
        taste(tastingDay(), sour, funky, full, by);
    }

    /// The answer today, which keeps what every answer has to.
    [[nodiscard]] Answer asked(std::vector<advice::LeverLock> locks = {}, std::vector<std::string> without = {}) const {
        Answer answer = answerOf(*desk, {"Knot", std::move(locks), std::move(without)});
        keepsItsWord(answer);
        return answer;
    }
};

} // namespace staveline::testing
