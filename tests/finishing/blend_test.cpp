// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing_support.h"

#include "finishing/bounded_least_squares.h"
#include "support/property.h"

#include <cmath>
#include <numeric>

namespace staveline::finishing {
namespace {

BlendQuestion three() {
    BlendQuestion question;
    question.sources = {source("Plover", 60, 9.2, 6.5, 7), source("Rail", 60, 5.0, 5.8, 3),
                        source("Wren", 60, 2.5, 5.0, 1)};
    question.aims[Trait::ta] = 6.0;
    return question;
}

double valueOf(const Blend& blend, Trait trait) {
    for (const BlendTrait& one : blend.traits)
        if (one.trait == trait)
            return one.value;
    return std::nan("");
}

BlendQuestion anyQuestion() {
    BlendQuestion question;
    const int count = *rc::gen::inRange(2, 6);
    for (int i = 0; i < count; ++i)
        question.sources.push_back(source(std::string(1, static_cast<char>('A' + i)), *rc::gen::inRange(10, 900) / 10.0,
                                          *rc::gen::inRange(20, 120) / 10.0, *rc::gen::inRange(30, 90) / 10.0,
                                          *rc::gen::inRange(0, 30)));
    question.aims[Trait::ta] = *rc::gen::inRange(10, 130) / 10.0;
    if (*rc::gen::arbitrary<bool>())
        question.aims[Trait::ph] = *rc::gen::inRange(30, 40) / 10.0;
    if (*rc::gen::arbitrary<bool>())
        question.aims[Trait::alcohol] = *rc::gen::inRange(30, 90) / 10.0;
    if (*rc::gen::arbitrary<bool>())
        question.aims[Trait::funk] = *rc::gen::inRange(0, 20) / 2.0;
    if (*rc::gen::arbitrary<bool>())
        question.litres = Litres{static_cast<double>(*rc::gen::inRange(2, 15))};
    return question;
}

/// Within what the sources have.
bool insideHull(const BlendQuestion& question, const Blend& blend, Trait trait) {
    double low = 1e9, high = -1e9;
    for (const BlendSource& one : question.sources) {
        low = std::min(low, *traitOf(one, trait));
        high = std::max(high, *traitOf(one, trait));
    }
    const double value = valueOf(blend, trait);
    return value >= low - 1e-6 && value <= high + 1e-6;
}

} // namespace

TEST_CASE("Two beers to one aim are the square of the trade", "[blend]") {
    BlendQuestion question;
    question.sources = {source("Plover", 100, 9, 6, 5), source("Rail", 100, 4, 6, 5)};
    question.aims[Trait::ta] = 6;
    const auto mixed = blend(question).value();
    CHECK(mixed.parts[0].share == Approx(.4));
    CHECK(mixed.parts[1].share == Approx(.6));
    // 100 L of the milder are three fifths
    CHECK(mixed.parts[1].takes == Litres{100});
    CHECK(mixed.parts[0].takes == Litres{66.5});
    CHECK(mixed.parts[0].remains == Litres{33.5});
    CHECK(mixed.parts[0].bench == Millilitres{400});
    CHECK(mixed.parts[1].bench == Millilitres{600});
    CHECK(mixed.reached());
}

TEST_CASE("The pH of a blend comes from its charges, not from an average", "[blend]") {
    BlendQuestion question = three();
    question.sources.pop_back();
    question.sources[1] = source("Sweet", 60, 2, 6, 3);
    const double sour = *traitOf(question.sources[0], Trait::ph), mild = *traitOf(question.sources[1], Trait::ph);
    const double half = *traitOf(question.sources, {.5, .5}, Trait::ph);
    CHECK(half == Approx(ph(blend(question.sources[0].beer, question.sources[1].beer, {.5})).ph));
    CHECK(half < (sour + mild) / 2 - .02);
    question.aims = {};
    question.aims[Trait::ph] = half;
    CHECK(blend(question)->parts[0].share == Approx(.5).margin(1e-4));
}

TEST_CASE("Stocks limit a blend, and what is missing is said in litres", "[blend]") {
    BlendQuestion question = three();
    question.sources.pop_back();
    question.sources[1].atHand = {100};
    question.aims[Trait::ta] = 8.5;
    question.litres = Litres{100};
    const auto mixed = blend(question).value();
    CHECK(mixed.parts[0].takes == Litres{60});
    REQUIRE(mixed.missing.size() == 1);
    CHECK(mixed.missing[0].key == "finishing.missing.litres");
    question.litres = Litres{50};
    CHECK(blend(question)->reached());
}

TEST_CASE("An aim beyond all sources gets the nearest, and says what is missing", "[blend]") {
    BlendQuestion question = three();
    question.aims[Trait::ta] = 11;
    auto mixed = blend(question).value();
    CHECK(mixed.parts[0].share == Approx(1));
    REQUIRE(mixed.missing.size() == 1);
    CHECK(mixed.missing[0].key == "finishing.missing.above");
    question.aims[Trait::ta] = 1;
    mixed = blend(question).value();
    CHECK(mixed.parts[2].share == Approx(1));
    CHECK(mixed.missing[0].key == "finishing.missing.below");
    // each within reach, both at once not
    question.aims[Trait::ta] = 9;
    question.aims[Trait::bitterness] = 1.5;
    mixed = blend(question).value();
    REQUIRE_FALSE(mixed.missing.empty());
    CHECK(mixed.missing[0].key == "finishing.missing.together");
}

TEST_CASE("Scores take the offset of each vessel along", "[blend]") {
    BlendQuestion question = three();
    question.sources.pop_back();
    const double before = *traitOf(question.sources, {.25, .75}, Trait::funk);
    question.sources[0].offset[Dimension::funk] = 2;
    CHECK(*traitOf(question.sources, {.25, .75}, Trait::funk) == Approx(before + .5));
}

TEST_CASE("The error of a blend is that of its parts", "[blend]") {
    BlendQuestion question = three();
    question.sources.pop_back();
    question.sources[0].sd[Trait::ta] = .3;
    question.sources[1].sd[Trait::ta] = .4;
    question.aims[Trait::ta] = 7.1; // one half of each
    const auto mixed = blend(question).value();
    for (const BlendTrait& trait : mixed.traits)
        if (trait.trait == Trait::ta)
            CHECK(trait.sd == Approx(.25));
}

TEST_CASE("A blend that cannot be is refused at its field", "[blend]") {
    BlendQuestion question = three();
    question.aims = {};
    CHECK(blend(question).error().path == "/aims");
    question.aims[Trait::ph] = 33;
    CHECK(blend(question).error().path == "/ph");
    question.aims[Trait::ph] = 3.4;
    question.aims[Trait::ta] = 41;
    CHECK(blend(question).error().path == "/ta");
    question.aims[Trait::ta].reset();
    question.aims[Trait::colour] = 12;
    CHECK(blend(question).error().path == "/colour");
    question = three();
    question.sources[1].atHand = {-4};
    CHECK(blend(question).error().path == "/from/1");
    question = three();
    question.litres = Litres{181};
    CHECK(blend(question).error().path == "/litres");
    question.litres = Litres{-5};
    CHECK(blend(question).error().path == "/litres");
    question.litres.reset();
    question.sources.resize(1);
    CHECK(blend(question).error().path == "/from");
    question.sources.resize(6, three().sources[0]);
    CHECK(blend(question).error().path == "/from");
}

TEST_CASE("No litre appears or vanishes, and a blend is inside the hull of its sources", "[blend]") {
    CHECK_PROPERTY("hull and litres", [] {
        BlendQuestion question = anyQuestion();
        const auto mixed = blend(question).value();
        double sum = 0, bench = 0;
        for (std::size_t i = 0; i < mixed.parts.size(); ++i) {
            const BlendPart& part = mixed.parts[i];
            RC_ASSERT(part.takes.l >= 0);
            RC_ASSERT(part.remains.l >= -1e-9);
            RC_ASSERT(std::abs((part.takes + part.remains - question.sources[i].atHand).l) < 1e-9);
            sum += part.takes.l;
            bench += part.bench.ml;
        }
        RC_ASSERT(std::abs(sum - mixed.litres.l) < 1e-9);
        RC_ASSERT(bench == 1000);
        if (question.litres)
            RC_ASSERT(mixed.litres <= *question.litres);
        for (const Trait trait : {Trait::ta, Trait::ph, Trait::bitterness})
            RC_ASSERT(insideHull(question, mixed, trait));
    });
}

TEST_CASE("No other shares come nearer than those found", "[blend]") {
    CHECK_PROPERTY("least squares", [] {
        const int sources = *rc::gen::inRange(2, 6), aims = *rc::gen::inRange(1, 4);
        ShareProblem problem;
        for (int r = 0; r < aims; ++r) {
            std::vector<double> row;
            for (int i = 0; i < sources; ++i)
                row.push_back(*rc::gen::inRange(-100, 100) / 10.0);
            problem.rows.push_back(row);
            problem.aims.push_back(*rc::gen::inRange(-150, 150) / 10.0);
        }
        for (int i = 0; i < sources; ++i)
            problem.most.push_back(*rc::gen::inRange(1, 11) / 10.0);
        const double room = std::accumulate(problem.most.begin(), problem.most.end(), 0.0);
        const auto best = nearestShares(problem);
        RC_ASSERT(best.has_value() == (room >= 1 - 1e-9));
        if (!best)
            return;
        RC_ASSERT(std::abs(std::accumulate(best->begin(), best->end(), 0.0) - 1) < 1e-6);
        std::vector<double> other;
        double left = 1, open = room;
        for (int i = 0; i < sources; ++i) {
            const double most = problem.most[static_cast<std::size_t>(i)];
            open -= most;
            const double low = std::max(0.0, left - open), high = std::min(most, left);
            other.push_back(low + (high - low) * *rc::gen::inRange(0, 101) / 100.0);
            left -= other.back();
        }
        RC_ASSERT(squaredMiss(problem, *best) <= squaredMiss(problem, other) + 1e-4);
    });
}

} // namespace staveline::finishing
