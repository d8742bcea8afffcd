// SPDX-License-Identifier: GPL-3.0-or-later
// What holds of any estimate and any advice, shown through the desk.
#include "desk/plain_answer.h"

#include "advice/search.h"

#include <numeric>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::testing;
using desk::EstimatesView;

namespace {

double squaredBands(const Scores& loss) {
    return std::accumulate(loss.values.begin(), loss.values.end(), 0.0);
}

const std::vector<Scores> vesselsOff = {{{7, 2, 4}}, {{3, 4, 2.5}}, {{6.5, 2.5, 5.5}}};

} // namespace

TEST_CASE_METHOD(PlainFixture, "a tasting and a titration that fits never widen what is known",
                 "[desk][plain][property]") {
    years(6, 3.5, 4, 2);
    EstimatesView before = known(cycle(2, 205));
    const auto narrower = [&] {
        const EstimatesView after = known(cycle(2, 205));
        for (Dimension d : allDimensions)
            CHECK(after.combined[d].sd <= before.combined[d].sd);
        before = after;
    };
    taste(cycle(2, 205), 6.5, 4, 4.5);
    narrower();
    titrate(cycle(2, 205), 7.3);
    narrower();
    taste(cycle(2, 205), 6, 3.5, 4, {"Wren"});
    narrower();
}

TEST_CASE_METHOD(PlainFixture, "an estimate lies between what was expected and what was seen",
                 "[desk][plain][property]") {
    years(5.5, 4, 4, 2);
    const EstimatesView expected = known(cycle(2, 205));
    const double score = GENERATE(2.0, 4.0, 6.0, 8.0);
    taste(cycle(2, 205), score, score, score);
    const EstimatesView tasted = known(cycle(2, 205));
    for (Dimension d : allDimensions) {
        const double seen = score, before = expected.combined[d].mean;
        INFO(name(d) << " " << before << " " << seen);
        CHECK(tasted.combined[d].mean >= std::min(before, seen) - 1e-9);
        CHECK(tasted.combined[d].mean <= std::max(before, seen) + 1e-9);
    }
}

TEST_CASE_METHOD(PlainFixture, "which came first in one week does not matter", "[desk][plain][property]") {
    years(6, 4, 4, 2);
    taste(cycle(2, 205), 6.5, 4, 4);
    titrate(cycle(2, 208), 7.6);
    const EstimatesView tastedFirst = known(cycle(2, 212));
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    titrate(cycle(2, 205), 7.6);
    taste(cycle(2, 208), 6.5, 4, 4);
    const EstimatesView titratedFirst = known(cycle(2, 212));
    CHECK(tastedFirst.combined[acidity].mean == Approx(titratedFirst.combined[acidity].mean).margin(.1));
    CHECK(tastedFirst.combined[acidity].sd == Approx(titratedFirst.combined[acidity].sd).margin(.05));
}

TEST_CASE("facts written down late teach the same as in time", "[desk][plain][property]") {
    PlainFixture inTime, late;
    const auto sitting = [](PlainFixture& book, int number) {
        book.taste(book.cycle(number, 210), 6.5 - .5 * number, 3, 4);
    };
    for (int i = 0; i < 3; ++i) {
        sitting(inTime, i);
        inTime.refill(inTime.cycle(i + 1, 0));
        late.refill(late.cycle(i + 1, 0));
    }
    for (int i : {2, 0, 1})
        sitting(late, i);
    const EstimatesView then = inTime.known(inTime.cycle(3, 100));
    CHECK(late.known(late.cycle(3, 100)).combined == then.combined);
}

TEST_CASE_METHOD(PlainFixture, "a sitting taken out and put back teaches what it taught", "[desk][plain][property]") {
    years(6, 3, 4, 4);
    const EstimatesView before = known(cycle(4, 100));
    const auto sitting = desk->sittings("Knot")->at(2);
    REQUIRE(desk->remove("sitting", sitting.id));
    CHECK_FALSE(known(cycle(4, 100)).combined == before.combined);
    REQUIRE(desk->record(facts::Fact{sitting.fact}));
    CHECK(known(cycle(4, 100)).combined == before.combined);
}

TEST_CASE_METHOD(PlainFixture, "five sittings by one taster and none now: within .3 of them",
                 "[desk][plain][property]") {
    const EstimatesView model = known(cycle(0, 210));
    const double off = GENERATE(-1.0, .5, 1.0);
    Scores said;
    for (Dimension d : allDimensions)
        said[d] = std::round(2 * (model.model[d].mean + off)) / 2;
    years(said[acidity], said[funk], said[body], 5, {"Rook"});
    const EstimatesView still = known(cycle(5, 210));
    for (Dimension d : allDimensions) {
        INFO(name(d) << " " << off);
        CHECK(still.combined[d].mean == Approx(said[d]).margin(.3));
        CHECK(tasting::z80 * still.combined[d].sd <= .7);
    }
}

TEST_CASE_METHOD(PlainFixture, "no fact, no other plan: the days alone turn nothing round", "[desk][plain][property]") {
    years(7, 2, 4, 2);
    taste(cycle(2, 100), 7, 2, 4);
    now = cycle(2, 170);
    Answer before = asked();
    for (int since : {175, 176, 177, 190, 191}) { // 75 days after the tasting, and what lies around it
        now = cycle(2, since);
        Answer after = asked();
        INFO(since << "\n" << before.text() << "\n\n" << after.text());
        for (Dimension d : allDimensions)
            CHECK(before.change(d) * after.change(d) >= -.01);
        before = std::move(after);
    }
}

TEST_CASE_METHOD(PlainFixture, "the first plan is the cheapest shown", "[desk][plain][property]") {
    const Scores& off = vesselsOff[GENERATE(range(std::size_t{0}, vesselsOff.size()))];
    tasted(off[acidity], off[funk], off[body]);
    const Answer answer = asked();
    REQUIRE_FALSE(answer.leavesAlone());
    const auto& first = answer.advice.proposals.front();
    CHECK(first.worth == Approx(answer.advice.leaveAlone.cost - first.cost).margin(1e-9));
    for (const auto& proposal : answer.advice.proposals)
        CHECK(first.cost <= proposal.cost + 1e-9);
}

TEST_CASE_METHOD(PlainFixture, "each lever of a plan earns its place", "[desk][plain][property]") {
    const Scores& off = vesselsOff[GENERATE(range(std::size_t{0}, vesselsOff.size()))];
    tasted(off[acidity], off[funk], off[body]);
    const Answer answer = asked();
    for (const auto& proposal : answer.advice.proposals)
        for (const auto& move : proposal.moves) {
            const auto without = withLever(proposal.setting, move.lever, move.from, *answer.job.pantry);
            if (!without) // what depends on it goes with it
                continue;
            const auto trial = desk->predict("Knot", *without);
            REQUIRE(trial);
            INFO(render(proposal.title) << " without " << move.lever);
            CHECK(squaredBands(trial->loss) - squaredBands(proposal.loss) >= earnsItsPlace - 1e-9);
        }
}
