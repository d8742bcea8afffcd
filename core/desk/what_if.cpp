// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/what_if.h"

#include "desk/coming_refill.h"
#include "desk/entry_checks.h"
#include "desk/inside.h"
#include "desk/refits.h"
#include "facts/fields.h"
#include "quantity/parse.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

namespace staveline::desk {
namespace {

using facts::VesselFact;
using vessel::AgePoint;
using vessel::Routine;

constexpr Range intervals{7, 3650}; // [d] of the field

std::chrono::days whole(Days days) {
    return std::chrono::days{std::lround(std::clamp(days.d, 0.0, vessel::longestAge))};
}

Result<void> inRange(const char* path, const std::optional<double>& value, Range range) {
    if (!value || range.holds(*value))
        return {};
    return fail(outOfRange(show(shortest(*value)), *value, range, path));
}

template <class Quantity> std::optional<double> plain(const std::optional<Quantity>& value, double Quantity::*member) {
    return value ? std::optional((*value).*member) : std::nullopt;
}

Result<void> check(const VesselFact& vessel, const WhatIf& what) {
    const double capacity = what.capacity.value_or(vessel.capacity).l;
    for (auto ok : {inRange("/capacity_l", plain(what.capacity, &Litres::l), {1, facts::maxLitres}),
                    inRange("/draw_l", plain(what.draw, &Litres::l), {capacity * .01, capacity}),
                    inRange("/interval_d", plain(what.interval, &Days::d), intervals),
                    inRange("/wanted_age_d", plain(what.wanted, &Days::d), {.05 * daysPerYear, 100 * daysPerYear}),
                    inRange("/refill_age_d", plain(what.refillAge, &Days::d), {0, 20000}),
                    inRange("/in_row", static_cast<double>(what.inRow), {1, WhatIf::mostInRow})})
        if (!ok)
            return ok;
    return {};
}

VesselFact asTried(VesselFact vessel, const WhatIf& what) {
    vessel.capacity = what.capacity.value_or(vessel.capacity);
    if (what.draw)
        vessel.drawShare = Share{what.draw->l / vessel.capacity.l};
    if (what.interval) {
        vessel.interval = *what.interval;
        vessel.wantedAgeYears.reset();
    }
    if (what.wanted)
        vessel.wantedAgeYears = what.wanted->d / daysPerYear;
    return vessel;
}

std::optional<Days> wantedAge(const VesselFact& vessel) {
    return vessel.wantedAgeYears ? std::optional(Days{*vessel.wantedAgeYears * daysPerYear}) : std::nullopt;
}

Result<void> canBeKept(const Routine& routine, Days wanted, Days interval) {
    if (intervals.holds(interval.d))
        return {};
    const std::string key = interval.d < intervals.low ? "desk.what_if.too_often" : "desk.what_if.too_rarely";
    return badInput("/wanted_age_d",
                    say(key)
                        .with("wanted", Age{wanted.d})
                        .with("draw", routine.draw)
                        .with("interval", Age{interval.d})
                        .with("least", Days{intervals.low})
                        .with("most", Age{intervals.high}),
                    say(key + ".remedy"));
}

/// Of a vessel drawn at an age: the interval that comes of it.
Result<Routine> routineOf(const VesselFact& vessel, const WhatIf& what, const Start& start) {
    Routine routine;
    routine.filled = vessel.capacity * start.filled.of1;
    routine.draw = vessel.capacity * vessel.drawShare.of1;
    routine.interval = vessel.interval;
    routine.evaporationPerYear = Share{shapeOf(vessel).evaporationPerYear.of1 / start.filled.of1};
    routine.refillAge = what.refillAge.value_or(start.refillAge);
    const auto wanted = wantedAge(vessel);
    if (!wanted)
        return routine;
    const auto interval = what.inRow > 1 ? intervalForRow(routine, what.inRow, *wanted) : intervalFor(routine, *wanted);
    if (!interval)
        return badInput("/wanted_age_d",
                        say("desk.what_if.no_interval")
                            .with("wanted", Age{wanted->d})
                            .with("draw", routine.draw)
                            .with("refill", Age{routine.refillAge.d}),
                        say("desk.what_if.no_interval.remedy"));
    if (auto ok = canBeKept(routine, *wanted, *interval); !ok)
        return fail(ok.error());
    routine.interval = *interval;
    return routine;
}

Result<void> holdsWhatIsIn(const VesselFact& vessel, const Start& start) {
    if (!start.inUse || !runsOver(start.inUse->now.volume, vessel.capacity))
        return {};
    const Litres held = start.inUse->now.volume;
    return badInput("/capacity_l", say("desk.capacity_below_held").with("capacity", vessel.capacity).with("held", held),
                    say("desk.capacity_below_held.remedy").with("held", held));
}

std::vector<AgePoint> rowGrowth(const Routine& routine, int vessels, int draws) {
    std::vector<AgePoint> points;
    for (int n = 1; n <= draws; ++n)
        points.push_back({n, {n * routine.interval.d}, ageInRow(routine, vessels, n), {}, {}, {}});
    return points;
}

/// By the rules its own days go by: what the brewer set, what is brewed and a fault hold for the trial, too.
Day comingDraw(const VesselFact& vessel, const InUse& in, Day today) {
    vessel::ScheduleRule rule = in.rule;
    if (vessel.interval != in.interval)
        rule.interval = vessel.interval;
    if (const auto wanted = wantedAge(vessel)) {
        rule.aim = rule.aim.value_or(vessel::AgeAim{});
        rule.aim->wanted = *wanted;
    } else {
        rule.aim.reset();
    }
    return schedule(in.now, rule, today).draw;
}

/// A vessel in use begins as it stands: with what it holds, at its coming draw or refill.
vessel::Beginning beginningOf(Prospect& p, const Start& start) {
    const InUse& in = *start.inUse;
    const bool drawn = in.rule.drawn.has_value();
    const Day draw = comingDraw(p.vessel, in, start.today);
    const Days until{static_cast<double>(daysBetween(start.today, draw))};
    const Litres held = volumeOn(in.now, shapeOf(p.vessel), draw) - (drawn ? Litres{0} : p.routine.draw);
    const Share stays{std::clamp(held / p.routine.filled, 0.0, 1.0)};
    p.firstRefill = FirstRefill{draw, p.routine.filled * (1 - stays.of1)};
    vessel::Beginning from{in.now.meanAge, in.now.ageSd, drawn, until, Share{1 - stays.of1}};
    p.begins = start.today;
    if (drawn) {
        p.begins = draw;
        from.age = {from.age.d + until.d};
    }
    return from;
}

void growRow(Prospect& p, int fewest, int most) {
    p.draws = drawsToSettleInRow(p.routine, p.inRow);
    p.toSettle = p.routine.interval * p.draws;
    p.growth = rowGrowth(p.routine, p.inRow, std::clamp(p.draws + 2, fewest, most));
}

/// By age; where that cannot be had, by the interval that can.
bool heldAtAge(const Prospect& p) {
    return p.vessel.wantedAgeYears && !p.tooYoung;
}

/// A row starts full of fresh beer, as an empty vessel does.
void grow(Prospect& p, const Start& start) {
    constexpr int fewest = 6, most = 240, lookedAt = 1000;
    constexpr double near = .05, sameDay = 1;
    p.begins = start.today + whole(p.routine.refillAge);
    if (p.inRow > 1)
        return growRow(p, fewest, most);
    const vessel::Beginning from =
        start.inUse ? beginningOf(p, start) : vessel::Beginning{p.routine.refillAge, {}, false, {}, {}};
    const auto wanted = wantedAge(p.vessel);
    p.growth = wanted ? growthAtAge(p.routine, *wanted, lookedAt, from, start.refillAge)
                      : vessel::growth(p.routine, lookedAt, from);
    const Days settled = p.settled.beforeDraw;
    p.draws = settledFrom(p.growth, settled, Days{heldAtAge(p) ? sameDay : near * settled.d}).value_or(lookedAt);
    p.toSettle = p.growth[static_cast<std::size_t>(p.draws) - 1].since;
    p.growth.resize(static_cast<std::size_t>(std::clamp(p.draws + 2, fewest, most)));
    if (!start.inUse && !wanted)
        p.waits = p.begins + whole(Days{settled.d - p.routine.refillAge.d});
}

void sayWay(Prospect& p) {
    const char* key = p.inRow > 1 ? "desk.what_if.way_row" : heldAtAge(p) ? "desk.what_if.at_age" : "desk.what_if.way";
    p.words.push_back(say(key)
                          .with("draw", std::int64_t{p.draws})
                          .with("on", p.begins + whole(p.toSettle))
                          .with("age", Age{p.settled.beforeDraw.d})
                          .with("interval", Age{p.routine.interval.d}));
}

void sayLitres(Prospect& p) {
    constexpr double asUsual = .05;
    p.words.push_back(say(p.lostPerYear.l > 0 ? "desk.what_if.litres" : "desk.what_if.litres_tight")
                          .with("year", p.drawnPerYear)
                          .with("refill", p.refill)
                          .with("lost", p.lostPerYear)
                          .with("filled", p.routine.filled));
    if (p.firstRefill && std::abs(p.firstRefill->takes / p.refill - 1) > asUsual)
        p.words.push_back(
            say("desk.what_if.first_refill").with("on", p.firstRefill->on).with("refill", p.firstRefill->takes));
    if (p.refill > p.routine.filled)
        p.doubts.push_back(say(p.inRow > 1 ? "desk.what_if.overdrawn_row" : "desk.what_if.overdrawn")
                               .with("refill", p.refill)
                               .with("filled", p.routine.filled));
}

void sayStart(Prospect& p, const Start& start) {
    const AgePoint& first = p.growth.front();
    if (p.inRow > 1)
        p.words.push_back(say("desk.what_if.start_row").with("on", p.begins).with("age", Age{first.before.d}));
    else if (!start.inUse)
        p.words.push_back(say("desk.what_if.start")
                              .with("brew", start.today)
                              .with("fill", p.routine.filled)
                              .with("on", p.begins)
                              .with("first", p.begins + whole(first.since))
                              .with("age", Age{first.before.d}));
    if (p.waits)
        p.words.push_back(say("desk.what_if.wait").with("on", *p.waits).with("age", Age{p.settled.beforeDraw.d}));
}

void sayAll(Prospect& p, const Start& start) {
    const bool row = p.inRow > 1;
    p.words.push_back(say(row ? "desk.what_if.settles_row" : "desk.what_if.settles")
                          .with("count", std::int64_t{p.inRow})
                          .with("draw", p.routine.draw)
                          .with("interval", Age{p.routine.interval.d})
                          .with("before", Age{p.settled.beforeDraw.d})
                          .with("after", Age{p.settled.afterRefill.d})
                          .with("sd", Age{p.settled.sd.d}));
    sayWay(p);
    sayLitres(p);
    sayStart(p, start);
    if (p.tooYoung)
        p.doubts.push_back(say("desk.what_if.not_ready")
                               .with("wanted", Age{wantedAge(p.vessel)->d})
                               .with("age", Age{p.settled.beforeDraw.d})
                               .with("ready", start.refillAge));
}

} // namespace

Result<Prospect> prospectOf(const VesselFact& vessel, const WhatIf& what, const Start& start) {
    if (auto ok = check(vessel, what); !ok)
        return fail(ok.error());
    Prospect p;
    p.vessel = asTried(vessel, what);
    if (auto ok = holdsWhatIsIn(p.vessel, start); !ok)
        return fail(ok.error());
    auto routine = routineOf(p.vessel, what, start);
    if (!routine)
        return fail(routine.error());
    p.routine = *routine;
    p.tooYoung = wantedAge(p.vessel) && p.routine.interval < start.refillAge;
    if (p.tooYoung)
        p.routine.interval = start.refillAge;
    p.inRow = what.inRow;
    p.settled = p.inRow > 1 ? settledAgeInRow(p.routine, p.inRow) : settledAge(p.routine);
    p.refill = refillOfRow(p.routine, p.inRow);
    p.drawnPerYear = vessel::drawnPerYear(p.routine);
    p.lostPerYear = p.routine.filled * (p.routine.evaporationPerYear.of1 * p.inRow);
    grow(p, start);
    sayAll(p, start);
    return p;
}

std::optional<facts::VesselEditFact> adopting(const VesselFact& vessel, const Prospect& prospect) {
    const VesselFact& to = prospect.vessel;
    facts::VesselEditFact edit;
    edit.vessel = vessel.name;
    const facts::VesselEditFact nothing = edit;
    if (to.capacity != vessel.capacity)
        edit.capacity = to.capacity;
    if (to.drawShare != vessel.drawShare)
        edit.drawShare = to.drawShare;
    if (to.interval != vessel.interval)
        edit.interval = to.interval;
    if (to.wantedAgeYears && to.wantedAgeYears != vessel.wantedAgeYears)
        edit.wantedAgeYears = to.wantedAgeYears;
    if (!to.wantedAgeYears && vessel.wantedAgeYears)
        edit.clear.emplace_back(facts::factWords::wantedAge);
    return edit == nothing ? std::nullopt : std::optional(edit);
}

Result<Start> Desk::startOf(const facts::VesselName& name) const {
    const auto found = inside_->current(name);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    Start start{today(), vessel.rule.primary, Share{usualFill(vessel) / vessel.record.facts.capacity}, {}};
    if (!vessel.toFill)
        start.inUse = InUse{vessel.now(), vessel.rule, vessel.record.facts.interval};
    return start;
}

Result<Prospect> Desk::whatIf(const facts::VesselName& name, const WhatIf& what) const {
    const auto start = startOf(name);
    if (!start)
        return fail(start.error());
    const auto vessel = inside_->current(name);
    return prospectOf((*vessel)->record.facts, what, *start);
}

std::string toJson(const Prospect& p) {
    using Json = nlohmann::ordered_json;
    const bool row = p.inRow > 1;
    Json growth = Json::array();
    for (const AgePoint& point : p.growth) {
        Json json{
            {"draw", point.draw}, {"on", isoDay(p.begins + whole(point.since))}, {"before_draw_d", point.before.d}};
        if (!row) {
            json["after_refill_d"] = point.after.d;
            json["sd_d"] = point.sd.d;
            json["first_beer_share"] = point.first.of1;
        }
        growth.push_back(json);
    }
    const auto words = [](const std::vector<Message>& messages) {
        Json list = Json::array();
        for (const Message& message : messages)
            list.push_back(render(message));
        return list;
    };
    Json json{{"vessel", p.vessel.name},
              {"capacity_l", p.vessel.capacity.l},
              {"filled_l", p.routine.filled.l},
              {"draw_l", p.routine.draw.l},
              {"interval_d", p.routine.interval.d},
              {"refill_age_d", p.routine.refillAge.d},
              {"in_row", p.inRow},
              {"settled",
               {{"before_draw_d", p.settled.beforeDraw.d},
                {"after_refill_d", p.settled.afterRefill.d},
                {"sd_d", p.settled.sd.d}}},
              {"draws_to_settle", p.draws},
              {"to_settle_d", p.toSettle.d},
              {"refill_l", p.refill.l},
              {"first_refill_l", p.firstRefill ? Json(p.firstRefill->takes.l) : Json()},
              {"drawn_l_year", p.drawnPerYear.l},
              {"evaporates_l_year", p.lostPerYear.l},
              {"begins_on", isoDay(p.begins)}};
    json["settled_from_the_start_on"] = p.waits ? Json(isoDay(*p.waits)) : Json();
    json["growth"] = growth;
    json["words"] = words(p.words);
    json["doubts"] = words(p.doubts);
    return json.dump(2) + "\n";
}

} // namespace staveline::desk
