// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/age_steering.h"

#include "desk/current_vessel.h"

#include <algorithm>
#include <cmath>

namespace staveline::desk {
namespace {

using vessel::Exchange;

Days between(Day from, Day to) {
    return {static_cast<double>(daysBetween(from, to))};
}

Age aged(Days days) {
    return Age{days.d};
}

void sayReached(AgeSteering& s, const CurrentVessel& vessel) {
    if (s.reached < vessel.today && !vessel.drawn)
        s.words.push_back(say("desk.age.older")
                              .with("age", aged(vessel.now().meanAge))
                              .with("wanted", aged(s.wanted))
                              .with("on", s.reached));
    else if (!vessel.drawn)
        s.words.push_back(say("desk.age.reached").with("wanted", aged(s.wanted)).with("on", s.reached));
    if (s.brings)
        s.words.push_back(say("desk.age.brings").with("draw", *s.brings).with("wanted", aged(s.wanted)));
}

void sayAfter(AgeSteering& s, const CurrentVessel& vessel) {
    s.words.push_back(say(vessel.drawn ? "desk.age.refilled" : "desk.age.drawn")
                          .with("draw", vessel.inUse.draw)
                          .with("on", vessel.dates.draw)
                          .with("after", aged(s.afterRefill))
                          .with("wanted", aged(s.wanted))
                          .with("again", s.again));
    if (vessel.drawn)
        return;
    s.words.push_back(
        s.keeps ? say("desk.age.keeps").with("draw", *s.keeps).with("wanted", aged(s.wanted)).with("on", s.byInterval)
                : say("desk.age.keeps_not").with("wanted", aged(s.wanted)).with("on", s.byInterval));
}

void sayFill(AgeSteering& s, const CurrentVessel& vessel) {
    s.words.push_back(say("desk.age.fill")
                          .with("on", vessel.dates.draw)
                          .with("age", aged(s.afterRefill))
                          .with("wanted", aged(s.wanted))
                          .with("again", s.again));
}

/// A day of the interval by which no draw comes below what goes in is none.
void work(AgeSteering& s, const CurrentVessel& vessel, const vessel::AgeAim& aim) {
    const vessel::Schedule& dates = vessel.dates;
    const Days interval = vessel.record.facts.interval;
    const Exchange exchange = exchangeOn(vessel.now(), aim, dates.draw, between(dates.brew, dates.draw));
    s.reached = vessel.toFill ? dates.nextDraw : ageReached(vessel.now(), s.wanted);
    s.afterRefill = ageAfter(exchange, aim.draw);
    s.atDraw = vessel.toFill ? s.afterRefill : exchange.age;
    s.again = dates.nextDraw;
    s.atNextDraw = s.afterRefill + between(dates.draw, s.again);
    s.byInterval = dates.draw + std::chrono::days{std::lround(interval.d)};
    if (vessel.toFill || vessel.drawn)
        return;
    s.keeps = drawToReach(exchange, Days{s.wanted.d - interval.d});
    if (exchange.age.d >= s.wanted.d + 1) // a day is no difference
        s.brings = drawToReach(exchange, s.wanted);
}

} // namespace

std::optional<AgeSteering> steeringOf(const CurrentVessel& vessel) {
    if (!vessel.rule.aim || vessel.record.facts.retired)
        return std::nullopt;
    AgeSteering s;
    s.wanted = vessel.rule.aim->wanted;
    s.reachable = byAge(vessel.rule);
    work(s, vessel, *vessel.rule.aim);
    if (!s.reachable) {
        s.words.push_back(
            say("desk.age.never").with("wanted", aged(s.wanted)).with("refill", aged(vessel.rule.primary)));
        return s;
    }
    if (vessel.toFill) {
        sayFill(s, vessel);
        return s;
    }
    sayReached(s, vessel);
    sayAfter(s, vessel);
    return s;
}

} // namespace staveline::desk
