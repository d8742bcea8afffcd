// SPDX-License-Identifier: GPL-3.0-or-later
// What is known about a vessel on a day: settings, schedule, chemistry, estimates, verdicts.
#include "desk/chemistry.h"
#include "forward/parameters.h"
#include "vessel/materials.h"

#include <algorithm>
#include <cmath>

namespace staveline {
namespace {

std::vector<Measurement> measurements(const VesselRecord& record, Day today) {
    std::vector<Measurement> all;
    for (const auto& [on, values] : measuredUpTo(record, today))
        all.push_back({on, values->gravity, values->ta});
    return all;
}

/// The latest sitting, with the vessel as it was then.
std::optional<Tasted> tastedLast(const VesselRecord& record, const LedgerState& now, Chemistry& chemistry, Day today) {
    const SittingFact* fact = record.latest<SittingFact>(today);
    if (!fact || !speaksFor(fact->sitting.on, now.lastRefill, today))
        return {};
    const auto then = chemistry.on(record, fact->sitting.on);
    return Tasted{&fact->sitting, then ? std::optional(*then) : std::nullopt};
}

} // namespace

Parameters parametersFor(const VesselRecord& record, Day day) {
    Parameters p = builtInParameters();
    p.culture.heldBack = record.facts.cultureHeldBack
                             .value_or(materialFacts(record.facts.material).value_or(MaterialFacts{}).cultureHeldBack)
                             .of1;
    if (const CultureFact* culture = record.latest<CultureFact>(day); culture && culture->hopTolerance)
        p.culture.hopTolerance = culture->hopTolerance->ibu;
    return p;
}

ScheduleRule ruleOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today,
                    const Setting& coming) {
    ScheduleRule rule;
    rule.interval = settingLeftAlone(record, now).interval;
    rule.nextInterval = coming.interval;
    rule.sampleBefore = record.facts.sampleBefore;
    if (auto yeast = cellar.shared().pantry.yeast(coming.recipe.yeast))
        rule.primary = Days{static_cast<double>(yeast->primaryDays)};
    rule.drawn = drawnForRefill(record, now) ? now.lastDraw : std::nullopt;
    if (!now.opened)
        return rule;
    if (const SittingFact* last = record.latest<SittingFact>(today);
        last && looksAtDraw(last->sitting.on, now, rule.interval))
        rule.sampled = last->sitting.on;
    if (const BrewFact* brew = brewForRefill(record, cellar, now, today))
        rule.brewed = brew->on;
    return rule;
}

Schedule datesOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today) {
    return datesOf(record, cellar, now, today, settingInUse(record, now));
}

Schedule datesOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today,
                 const Setting& coming) {
    return schedule(now, ruleOf(record, cellar, now, today, coming), today);
}

Due dueOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today) {
    if (record.facts.retired || !now.opened)
        return {DueKind::nothing, today, 0, say(now.opened ? "desk.due.retired" : "desk.due.opening")};
    const ScheduleRule rule = ruleOf(record, cellar, now, today, settingInUse(record, now));
    const NextJob next = nextJob(now, rule, schedule(now, rule, today));
    constexpr std::array keys = {"desk.due.taste", "desk.due.brew", "desk.due.draw", "desk.due.refill"};
    const int days = daysBetween(today, next.on);
    const std::string when = days < 0 ? ".overdue" : days == 0 ? ".today" : ".in";
    return {next.kind, next.on, days,
            say(keys[static_cast<std::size_t>(next.kind)] + when)
                .with("days", Days{std::abs(static_cast<double>(days))})
                .with("on", next.on)};
}

Result<EstimatesView> estimatesOf(const VesselRecord& record, Cellar& cellar, Day today) {
    Chemistry chemistry(cellar, today);
    auto state = chemistry.on(record, today);
    if (!state)
        return fail(state.error());
    const LedgerState now = replayOf(record, cellar.shared(), today).now;
    KnownOfVessel known;
    known.today = today;
    known.lastRefill = now.lastRefill;
    known.state = *state;
    known.cellaring.temperature = record.facts.temperature;
    known.cellaring.oxygenPerYear = oxygenOf(record.facts);
    known.measured = measurements(record, today);
    known.tasted = tastedLast(record, now, chemistry, today);
    if (const TargetFact* target = record.latest<TargetFact>(today))
        known.target = target->target;
    known.parameters = parametersFor(record, today);
    return estimatesFrom(known);
}

} // namespace staveline
