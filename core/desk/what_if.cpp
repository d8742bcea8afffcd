// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/what_if.h"

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

std::chrono::days whole(Days days) {
    return std::chrono::days{std::lround(std::clamp(days.d, 0.0, 200 * daysPerYear))};
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
                    inRange("/interval_d", plain(what.interval, &Days::d), {7, 3650}),
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

/// Of a vessel drawn at an age: the interval that comes of it.
Result<Routine> routineOf(const VesselFact& vessel, const WhatIf& what, const Start& start) {
    Routine routine;
    routine.filled = vessel.capacity;
    routine.draw = vessel.capacity * vessel.drawShare.of1;
    routine.interval = vessel.interval;
    routine.evaporationPerYear = shapeOf(vessel).evaporationPerYear;
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
    routine.interval = *interval;
    return routine;
}

std::vector<AgePoint> rowGrowth(const Routine& routine, int vessels, int draws) {
    std::vector<AgePoint> points;
    for (int n = 1; n <= draws; ++n)
        points.push_back({n, {n * routine.interval.d}, ageInRow(routine, vessels, n), {}, {}, {}});
    return points;
}

/// A row starts full of fresh beer, as an empty vessel does.
void grow(Prospect& p, const Start& start) {
    constexpr int fewest = 6, most = 240;
    const Routine& routine = p.routine;
    const bool running = start.age && p.inRow == 1;
    const Days from = running ? *start.age : routine.refillAge;
    const Days sd = running ? start.sd.value_or(Days{0}) : Days{0};
    p.begins = running ? start.today : start.today + whole(routine.refillAge);
    p.draws = p.inRow > 1 ? drawsToSettleInRow(routine, p.inRow) : drawsToSettle(routine);
    p.toSettle = routine.interval * p.draws;
    const int shown = std::clamp(p.draws + 2, fewest, most);
    if (p.inRow > 1) {
        p.growth = rowGrowth(routine, p.inRow, shown);
    } else if (const auto wanted = wantedAge(p.vessel)) {
        p.growth = growthAtAge(routine, *wanted, shown, from, sd);
        p.draws = 1;
        p.toSettle = p.growth.front().since;
    } else {
        p.growth = vessel::growth(routine, shown, from, sd);
        if (!running)
            p.waits = p.begins + whole(Days{p.settled.beforeDraw.d - routine.refillAge.d});
    }
}

void sayWay(Prospect& p) {
    const auto wanted = wantedAge(p.vessel);
    if (wanted && p.inRow == 1)
        p.words.push_back(say("desk.what_if.at_age")
                              .with("age", Age{p.growth.front().before.d})
                              .with("on", p.begins + whole(p.growth.front().since))
                              .with("interval", Age{p.routine.interval.d}));
    else
        p.words.push_back(say("desk.what_if.way").with("draws", std::int64_t{p.draws}).with("time", Age{p.toSettle.d}));
}

void sayStart(Prospect& p, const Start& start) {
    const AgePoint& first = p.growth.front();
    if (p.inRow > 1)
        p.words.push_back(say("desk.what_if.start_row").with("on", p.begins).with("age", Age{first.before.d}));
    else if (!start.age)
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
    p.words.push_back(
        say("desk.what_if.litres").with("year", p.drawnPerYear).with("refill", p.refill).with("lost", p.lostPerYear));
    sayStart(p, start);
    if (p.refill > p.routine.filled)
        p.doubts.push_back(say("desk.what_if.overdrawn").with("refill", p.refill).with("capacity", p.routine.filled));
}

} // namespace

Result<Prospect> prospectOf(const VesselFact& vessel, const WhatIf& what, const Start& start) {
    if (auto ok = check(vessel, what); !ok)
        return fail(ok.error());
    Prospect p;
    p.vessel = asTried(vessel, what);
    auto routine = routineOf(p.vessel, what, start);
    if (!routine)
        return fail(routine.error());
    p.routine = *routine;
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
    Start start{today(), vessel.rule.primary, {}, {}};
    if (!vessel.toFill) {
        start.age = vessel.now().meanAge;
        start.sd = vessel.now().ageSd;
    }
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
              {"capacity_l", p.routine.filled.l},
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
