// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/current_vessel.h"

#include "desk/brought.h"
#include "desk/coming_refill.h"
#include "desk/evidence.h"
#include "desk/refits.h"
#include "estimate/estimates.h"

#include <cmath>

namespace staveline::desk {

using vessel::ScheduleRule;

namespace {

/// Days the brewer set hold for this cycle alone: the last of each.
void setDates(ScheduleRule& rule, const VesselRecord& record, const vessel::LedgerState& now, Day today) {
    const Day began = now.lastRefill.value_or(now.opened.value_or(Day::min()));
    const auto ofThisCycle = [&](Day on) { return on >= began && on <= today; };
    for (const auto& [id, set] : record.of<facts::DrawDateFact>())
        if (ofThisCycle(set.on))
            rule.fixed = set.drawOn;
    for (const auto& [id, set] : record.of<facts::WorkDateFact>())
        if (ofThisCycle(set.on))
            (set.work == facts::Work::taste ? rule.sampleFixed : rule.brewFixed) = set.workOn;
    if (rule.sampled && rule.sampleFixed && *rule.sampled < *rule.sampleFixed)
        rule.sampled.reset(); // to be tasted once more
}

std::optional<FaultFound> lastFault(const VesselRecord& record, Day today) {
    const facts::SittingFact* last = lastToLearnFrom(record, today);
    if (!last)
        return {};
    const auto& sheet = tasting::builtInSheet();
    const facts::TargetFact* target = record.latest<facts::TargetFact>(today);
    tasting::SittingResult result;
    result.faults = faultsIn(last->sitting, sheet);
    const auto mark = worstUnwantedFault(result, target ? target->target : tasting::Target{}, sheet);
    if (!mark)
        return {};
    const Day on = last->sitting.on;
    const tasting::FaultRule* rule = sheet.findFault(mark->fault);
    return FaultFound{mark->fault, rule, on, rule ? clearsOn(*rule, on) : std::nullopt};
}

/// Drawn at an age, with this setting.
std::optional<vessel::AgeAim> aimOf(const CurrentVessel& vessel, const advice::Setting& coming) {
    const facts::VesselFact& facts = vessel.record.facts;
    if (!facts.wantedAgeYears)
        return std::nullopt;
    return vessel::AgeAim{Days{*facts.wantedAgeYears * daysPerYear}, coming.draw, vessel.drawn.value_or(Litres{0}),
                          usualFill(vessel), shapeOf(facts)};
}

ScheduleRule ruleOf(const CurrentVessel& vessel, const Cellar& cellar, const advice::Setting& coming) {
    const vessel::LedgerState& now = vessel.now();
    ScheduleRule rule;
    rule.interval = vessel.leftAlone.interval;
    rule.nextInterval = coming.interval;
    rule.sampleBefore = vessel.record.facts.sampleBefore;
    if (auto yeast = cellar.shared().pantry.yeast(coming.recipe.yeast))
        rule.primary = Days{static_cast<double>(yeast->primaryDays)};
    if (vessel.brewed)
        rule.brewed = vessel.brewed->on;
    rule.aim = aimOf(vessel, coming);
    rule.empty = vessel.toFill;
    if (vessel.toFill) {
        setDates(rule, vessel.record, now, vessel.today);
        return rule;
    }
    if (vessel.drawn)
        rule.drawn = now.lastDraw;
    const facts::SittingFact* last = lastToLearnFrom(vessel.record, vessel.today);
    if (last && looksAtDraw(last->sitting.on, now, intervalOf(now, rule)))
        rule.sampled = last->sitting.on;
    if (vessel.fault && estimate::ofThisCycle(vessel.fault->on, now.lastRefill))
        rule.fault = vessel.fault->until;
    setDates(rule, vessel.record, now, vessel.today);
    return rule;
}

Due dueOf(const CurrentVessel& vessel) {
    if (vessel.record.facts.retired)
        return {vessel::DueKind::nothing, vessel.today, 0, say("desk.due.retired")};
    const vessel::NextJob next = nextJob(vessel.now(), vessel.rule, vessel.dates);
    if (vessel.toFill && next.kind == vessel::DueKind::brew)
        return {next.kind, next.on, 0, say("desk.due.empty")};
    constexpr std::array keys = {"desk.due.taste", "desk.due.brew", "desk.due.draw", "desk.due.refill"};
    const int days = daysBetween(vessel.today, next.on);
    const std::string when = days < 0 ? ".overdue" : days == 0 ? ".today" : ".in";
    const std::string key = vessel.toFill ? "desk.due.fill" : keys[static_cast<std::size_t>(next.kind)];
    return {next.kind, next.on, days,
            say(key + when).with("days", Days{std::abs(static_cast<double>(days))}).with("on", next.on)};
}

CycleWorks worksOf(const ScheduleRule& rule) {
    return {{rule.sampled.has_value(), rule.sampleFixed && !rule.sampled},
            {rule.brewed.has_value(), rule.brewFixed && !rule.brewed},
            {rule.drawn.has_value(), rule.fixed && !rule.drawn}};
}

CurrentVessel workedOut(const VesselRecord& record, const Cellar& cellar, Day today,
                        std::vector<vessel::LedgerEntry> entries, vessel::Replay replayed) {
    CurrentVessel vessel{record, today, std::move(entries), std::move(replayed), {}, {}, {}, nullptr, {}, {}, {}, {}};
    const vessel::LedgerState& now = vessel.now();
    vessel.inUse = settingInUse(record, cellar.shared().pantry, now);
    vessel.leftAlone = settingLeftAlone(record, cellar.shared(), now);
    vessel.drawn = drawnForRefill(record, now);
    vessel.brewed = brewForRefill(record, cellar, now, today);
    vessel.toFill = !now.opened || (!vessel.drawn && now.volume <= record.facts.capacity * vessel::roundingOfCapacity);
    if (vessel.toFill)
        vessel.inUse.draw = Litres{0};
    else
        vessel.fault = lastFault(record, today);
    vessel.rule = ruleOf(vessel, cellar, vessel.inUse);
    vessel.dates = schedule(now, vessel.rule, today);
    vessel.works = worksOf(vessel.rule);
    vessel.due = dueOf(vessel);
    const advice::Setting leftAlone = asSteered(vessel, cellar, vessel.leftAlone);
    vessel.inUse = asSteered(vessel, cellar, vessel.inUse);
    vessel.leftAlone = leftAlone;
    return vessel;
}

} // namespace

Result<std::shared_ptr<const CurrentVessel>> currentVessel(Cellar& cellar, const facts::VesselName& name, Day today) {
    auto found = cellar.vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    if (const auto& kept = cellar.current(); kept && &kept->record == &record && kept->today == today)
        return kept;
    auto entries = ledgerEntries(record, cellar.shared());
    bringAges(entries, record, cellar);
    vessel::Replay replayed = replayOf(entries, record, today);
    cellar.keep(std::make_shared<const CurrentVessel>(
        workedOut(record, cellar, today, std::move(entries), std::move(replayed))));
    return cellar.current();
}

CurrentVessel currentOutline(const VesselRecord& record, Cellar& cellar, Day today) {
    auto entries = ledgerEntries(record, cellar.shared());
    bringAges(entries, record, cellar);
    vessel::Replay replayed = replayNow(entries, shapesOf(record), today);
    return workedOut(record, cellar, today, {}, std::move(replayed));
}

vessel::Schedule datesWith(const CurrentVessel& vessel, const Cellar& cellar, const advice::Setting& coming) {
    return schedule(vessel.now(), ruleOf(vessel, cellar, coming), vessel.today);
}

advice::Setting asSteered(const CurrentVessel& vessel, const Cellar& cellar, advice::Setting setting) {
    if (byAge(vessel.rule)) {
        const vessel::Schedule dates = datesWith(vessel, cellar, setting);
        setting.interval = Days{static_cast<double>(daysBetween(dates.draw, dates.nextDraw))};
    }
    return setting;
}

} // namespace staveline::desk
