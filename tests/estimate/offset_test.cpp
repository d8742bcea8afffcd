// SPDX-License-Identifier: GPL-3.0-or-later
// The offset's filter against vectors worked out apart from it: a prototype in double precision with matrices of a
// general library, to the digits it printed.
#include "estimate/offset.h"

#include "support/catch.h"

using namespace staveline;
using namespace staveline::estimate;

namespace {

constexpr double digits = 5.1e-7;

void check(const Offset& offset, double now, double settled, double nowNow, double nowSettled, double settledSettled) {
    CHECK(offset.mean[Offset::now] == Approx(now).margin(digits));
    CHECK(offset.mean[Offset::settled] == Approx(settled).margin(digits));
    CHECK(offset.cov[Offset::now][Offset::now] == Approx(nowNow).margin(digits));
    CHECK(offset.cov[Offset::now][Offset::settled] == Approx(nowSettled).margin(digits));
    CHECK(offset.cov[Offset::settled][Offset::now] == Approx(nowSettled).margin(digits));
    CHECK(offset.cov[Offset::settled][Offset::settled] == Approx(settledSettled).margin(digits));
}

} // namespace

TEST_CASE("a sitting, refills, an event and a sitting again, to the digits", "[offset]") {
    const OffsetRule rule; // 1.2, .3; .2 a cycle of 240 days, .1 a refill
    Offset offset = longRunPrior(rule);
    check(offset, 0, 0, 1.53, 1.44, 1.44);
    CHECK(offset.cov[Offset::apart] == Offset::Row{}); // where nothing is said of it there is none

    const Observation first = tasted(offset, 6.2, 5.1, .25);
    CHECK(first.innovation == Approx(1.1));
    CHECK(spreadOf(offset, first) == Approx(1.78));
    learn(offset, first);
    check(offset, .945506, .889888, .214888, .202247, .275056);

    refill(offset, {.35}, {240}, 1, rule);
    CHECK(offset.cov[Offset::apart] == Offset::Row{});
    check(offset, .926039, .889888, .256507, .227730, .285056);
    CHECK(4.8 + offset.mean[Offset::now] == Approx(5.726039).margin(digits));
    CHECK(offset.sd() == Approx(.506465).margin(digits));
    const Observation second = tasted(offset, 5.4, 4.8, .81);
    CHECK(std::sqrt(spreadOf(offset, second)) == Approx(1.032718).margin(digits));
    learn(offset, second);
    check(offset, .847623, .820269, .194814, .172959, .236429);

    refill(offset, {.25}, {120}, 1, rule);
    check(offset, .840785, .820269, .209219, .188826, .246429);

    refill(offset, {.35}, {240}, 1, rule);
    loosen(offset, {1, .7, 1, 0});
    check(offset, .833604, .820269, 1.244499, .908987, 1.256429);
    learn(offset, tasted(offset, 6.9, 5.0, .25));
    check(offset, 1.721613, 1.468874, .208180, .152056, .703563);
}

TEST_CASE("a titration and then a sitting, to the digits", "[offset]") {
    OffsetRule rule;
    rule.apart = .9;
    Offset offset = longRunPrior(rule);
    learn(offset, titrated(offset, 6.8, 5.9, .755, .3));
    check(offset, .634304, .555016, .857890, .851904, .925416);
    CHECK(offset.mean[Offset::apart] == Approx(0).margin(digits));
    CHECK(offset.cov[Offset::now][Offset::apart] == Approx(.81).margin(digits));
    CHECK(offset.cov[Offset::apart][Offset::apart] == Approx(.81).margin(digits));
    learn(offset, tasted(offset, 6.6, 5.1, .25));
    check(offset, 1.304652, 1.220686, .193586, .192236, .270351);
    CHECK(offset.mean[Offset::apart] == Approx(.632927).margin(digits));
    CHECK(offset.cov[Offset::now][Offset::apart] == Approx(.182780).margin(digits));
    CHECK(offset.cov[Offset::settled][Offset::apart] == Approx(.187157).margin(digits));
    CHECK(offset.cov[Offset::apart][Offset::apart] == Approx(.217793).margin(digits));
}

TEST_CASE("what lies ahead is what refills make of it, without their wandering", "[offset]") {
    OffsetRule still;
    still.walkNow = still.walkSettled = 0;
    Offset offset = longRunPrior(still);
    learn(offset, tasted(offset, 7, 5, .5));
    for (int draws : {0, 1, 4}) {
        Offset refilled = offset;
        for (int i = 0; i < draws; ++i)
            refill(refilled, {.3}, {240}, 1, still);
        const Ahead then = ahead(offset, {.3}, draws);
        CHECK(then.mean == Approx(refilled.mean[Offset::now]));
        CHECK(then.variance == Approx(refilled.cov[Offset::now][Offset::now]));
    }
    CHECK(ahead(offset, {.3}, 0).withNow == Approx(offset.cov[Offset::now][Offset::now]));
    CHECK(settledAhead(offset).mean == Approx(ahead(offset, {.3}, 400).mean));
    CHECK(settledAhead(offset).withNow == Approx(offset.cov[Offset::settled][Offset::now]));
    CHECK(ahead(offset, {.3}, 2).withNow ==
          Approx(.49 * offset.cov[Offset::now][Offset::now] + .51 * offset.cov[Offset::settled][Offset::now]));
    CHECK(ahead(offset, {1.5}, 1).mean == Approx(offset.mean[Offset::settled])); // no more than all of it
    CHECK(ahead(offset, {-.5}, 1).mean == Approx(offset.mean[Offset::now]));
    CHECK(ahead(offset, {.3}, -1).mean == Approx(offset.mean[Offset::now]));
    CHECK(settledAhead(offset).variance == Approx(ahead(offset, {.3}, 400).variance));
}

TEST_CASE("moved beer brings its offset", "[offset]") {
    const OffsetRule rule;
    Offset source = longRunPrior(rule), receiver = longRunPrior(rule);
    learn(source, tasted(source, 8, 5, .1));
    learn(receiver, tasted(receiver, 5, 5, .1));
    const Offset before = receiver;
    takeIn(receiver, source, {.25}, rule);
    CHECK(receiver.mean[Offset::now] == Approx(.75 * before.mean[Offset::now] + .25 * source.mean[Offset::now]));
    CHECK(receiver.mean[Offset::settled] == before.mean[Offset::settled]);
    CHECK(receiver.cov[Offset::now][Offset::now] ==
          Approx(.5625 * before.cov[Offset::now][Offset::now] + .0625 * source.cov[Offset::now][Offset::now]));
    CHECK(receiver.cov[Offset::now][Offset::settled] == Approx(.75 * before.cov[Offset::now][Offset::settled]));

    OffsetRule palate;
    palate.apart = .9;
    Offset tongue = longRunPrior(palate), other = longRunPrior(palate);
    learn(other, titrated(other, 7, 6, .7, .3));
    learn(other, tasted(other, 8, 5, .1));
    takeIn(tongue, other, {.25}, palate);
    CHECK(tongue.mean[Offset::apart] == Approx(.25 * other.mean[Offset::apart]));
    CHECK(tongue.cov[Offset::apart][Offset::apart] ==
          Approx(.5625 * .81 + .0625 * other.cov[Offset::apart][Offset::apart]));
    CHECK(tongue.cov[Offset::now][Offset::apart] ==
          Approx(.5625 * .81 + .0625 * other.cov[Offset::now][Offset::apart]));

    Offset empty = longRunPrior(rule);
    takeIn(empty, source, {1}, rule);
    CHECK(empty.mean[Offset::now] == source.mean[Offset::now]);
    CHECK(empty.cov[Offset::now][Offset::now] == source.cov[Offset::now][Offset::now]);
    CHECK(empty.cov[Offset::settled][Offset::settled] == Approx(1.44));
    CHECK(empty.mean[Offset::settled] == source.mean[Offset::now]);
    CHECK(empty.cov[Offset::now][Offset::settled] == Approx(.8 * source.cov[Offset::now][Offset::now]));
    CHECK(empty.cov[Offset::settled][Offset::now] == empty.cov[Offset::now][Offset::settled]);
    // A source that is less known than any vessel: neither certain of its future nor more doubtful than it is.
    Offset vague = longRunPrior(rule);
    loosen(vague, {3, 0, 0, 0});
    takeIn(empty, vague, {1}, rule);
    CHECK(empty.cov[Offset::settled][Offset::settled] == Approx(4.53));
    CHECK(empty.cov[Offset::now][Offset::settled] == Approx(.8 * 1.44));
}

TEST_CASE("what is seen never widens what is known of it", "[offset]") {
    OffsetRule rule;
    rule.apart = .9;
    Offset offset = longRunPrior(rule);
    for (int i = 0; i < 12; ++i) {
        const double before = offset.sd();
        learn(offset, i % 2 ? tasted(offset, 3 + i, 5, .3) : titrated(offset, 4 + i, 6, .7, .3));
        CHECK(offset.sd() <= before);
        refill(offset, {.35}, {240}, 1, rule);
    }
}

TEST_CASE("a vessel that stays apart from the model by the same is learned", "[offset]") {
    Offset offset = longRunPrior({});
    for (int i = 0; i < 12; ++i) {
        refill(offset, {.35}, {240}, 1, {});
        learn(offset, tasted(offset, 6.5, 5, .25));
    }
    CHECK(offset.mean[Offset::now] == Approx(1.5).margin(.02));
}
