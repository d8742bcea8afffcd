// SPDX-License-Identifier: GPL-3.0-or-later
// What is known about a vessel on a day: settings, schedule, chemistry, estimates, verdicts.
#include "desk/histories.h"
#include "forward/parameters.h"
#include "quantity/acid_base.h"
#include "vessel/materials.h"

#include <algorithm>
#include <cmath>

namespace staveline {
namespace {

constexpr int freshForDays = 75;    ///< a titration or a sitting older than this no longer speaks for the vessel
constexpr double titrationSd = 0.3; ///< g/L
constexpr PerDimension<double> modelSd{{1.2, 2.0, 0.55}};

/// The latest titration that still speaks for the vessel: this cycle, not too old. What is measured or tasted on the
/// day of a refill is the beer from before it.
struct Titration {
    GramsPerLitre ta;
    Day on;
};
std::optional<Titration> latestTitration(const VesselRecord& record, const LedgerState& now, Day today) {
    std::optional<Titration> found;
    for (const auto& [on, values] : measuredUpTo(record, today))
        if (values->ta && daysBetween(on, today) <= freshForDays && (!now.lastRefill || on > *now.lastRefill))
            found = Titration{*values->ta, on};
    return found;
}

const SittingFact* latestSitting(const VesselRecord& record, const LedgerState& now, Day today) {
    const SittingFact* sitting = record.latest<SittingFact>(today);
    if (!sitting || (now.lastRefill && sitting->sitting.on <= *now.lastRefill) ||
        daysBetween(sitting->sitting.on, today) > freshForDays)
        return nullptr;
    return sitting;
}

bool onlyTaster(const Sitting& sitting, const std::string& taster) {
    return !taster.empty() && !sitting.scores.empty() &&
           std::all_of(sitting.scores.begin(), sitting.scores.end(),
                       [&](const Score& score) { return score.taster == taster; });
}

Estimate titrationEstimate(GramsPerLitre ta, const Composition& beer, const ScoreParameters& p) {
    const GramsPerLitre acetic{beer.acetic};
    const auto score = [&](double g) { return acidityScore({g}, acetic, beer.alcohol(), p); };
    const double mean = score(ta.gPerL);
    const double slope = (score(ta.gPerL + .1) - score(ta.gPerL - .1)) / .2;
    // The map itself is uncertain: 15 % in its scale, 0.07 in its exponent (priors).
    const double effective = std::max(1.05, ta.gPerL + .45 * beer.acetic - p.ownAcidity);
    const double map = mean * std::hypot(.15, .07 * std::log(effective));
    return {mean, std::max(.1, std::hypot(slope * titrationSd, map))};
}

Estimate combinedOf(const std::vector<Evidence>& evidence) {
    std::vector<Estimate> estimates;
    estimates.reserve(evidence.size());
    for (const auto& each : evidence)
        estimates.push_back(each.estimate);
    return combine(estimates);
}

bool gravityFalling(const VesselRecord& record, const LedgerState& now, Day today) {
    std::vector<std::pair<Day, double>> points;
    for (const auto& [on, values] : measuredUpTo(record, today))
        if (values->gravity && (!now.lastRefill || on > *now.lastRefill))
            points.emplace_back(on, values->gravity->sg);
    if (points.size() < 2)
        return false;
    const auto& [lastDay, last] = points.back();
    const auto& [beforeDay, before] = points[points.size() - 2];
    const int days = daysBetween(beforeDay, lastDay);
    return days >= 7 && (before - last) / days * 30 > 0.001;
}

/// The day the model brings the score into the window by itself, if it moves by more than half a point on the way.
std::optional<Day> modelArrival(Dimension d, const VesselState& state, double deviation, const TargetWindow& window,
                                const VesselRecord& record, const Parameters& p, Day today) {
    const double now = scores(state.beer, p.score)[d] + deviation;
    if (std::abs(now - window.wanted) <= window.band)
        return {};
    VesselState later = state;
    const AgeConditions step{Days{15}, record.facts.temperature, oxygenOf(record.facts)};
    for (int days = 15; days <= 365; days += 15) {
        later = age(later, step, p.culture);
        const double score = scores(later.beer, p.score)[d] + deviation;
        if (std::abs(score - window.wanted) <= window.band * 0.5 && std::abs(score - now) > 0.5)
            return today + std::chrono::days{days};
    }
    return {};
}

} // namespace

Parameters parametersFor(const VesselRecord& record, Day day) {
    Parameters p = builtInParameters();
    p.culture.heldBack =
        record.facts.cultureHeldBack
            .value_or(materialFacts(wordOf(record.facts.material)).value_or(MaterialFacts{}).cultureHeldBack)
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
    if (!now.opened)
        return rule;
    const Day cycleStart = now.lastRefill.value_or(*now.opened);
    // A tasting in the first half of a cycle looks at the refill, not at the coming draw.
    const Day counts = cycleStart + std::chrono::days{static_cast<int>(rule.interval.d / 2)};
    if (const SittingFact* sitting = record.latest<SittingFact>(today); sitting && sitting->sitting.on >= counts)
        rule.sampled = sitting->sitting.on;
    if (const BrewFact* brew = brewForRefill(record, cellar, now, today))
        rule.brewed = brew->on;
    return rule;
}

Schedule datesOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today) {
    return datesOf(record, cellar, now, today, settingInUse(record, now));
}

Schedule datesOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today,
                 const Setting& coming) {
    const ScheduleRule rule = ruleOf(record, cellar, now, today, coming);
    if (!drawnForRefill(record, now))
        return schedule(now, rule, today);
    // Drawn early or late: the refill is due since then, whatever the interval says.
    LedgerState asDrawn = now;
    asDrawn.lastRefill = *now.lastDraw - std::chrono::days{std::lround(rule.interval.d)};
    return schedule(asDrawn, rule, today);
}

Due dueOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today) {
    if (record.facts.retired || !now.opened)
        return {DueKind::nothing, today, 0, say(now.opened ? "desk.due.retired" : "desk.due.opening")};
    const ScheduleRule rule = ruleOf(record, cellar, now, today, settingInUse(record, now));
    const Schedule dates = schedule(now, rule, today);
    const auto due = [&](DueKind kind, Day on, const std::string& key) {
        const int days = daysBetween(today, on);
        const std::string when = days < 0 ? ".overdue" : days == 0 ? ".today" : ".in";
        return Due{kind, on, days,
                   say(key + when).with("days", Days{std::abs(static_cast<double>(days))}).with("on", on)};
    };
    if (drawnForRefill(record, now))
        return due(DueKind::refill, *now.lastDraw, "desk.due.refill");
    if (!rule.sampled)
        return due(DueKind::taste, dates.sampleDue, "desk.due.taste");
    if (!rule.brewed)
        return due(DueKind::brew, dates.brew, "desk.due.brew");
    return due(DueKind::draw, dates.drawDue, "desk.due.draw");
}

Result<EstimatesView> estimatesOf(const VesselRecord& record, Cellar& cellar, Day today) {
    Histories histories(cellar, today);
    auto state = histories.on(record, today);
    if (!state)
        return fail(state.error());
    const Parameters p = parametersFor(record, today);
    const LedgerState now = replayOf(record, cellar.shared(), today).now;
    const TargetFact* targetFact = record.latest<TargetFact>(today);
    const Target target = targetFact ? targetFact->target : Target{};
    const Scores modelled = scores(state->beer, p.score);
    EstimatesView view;
    for (Dimension d : allDimensions) {
        view.model[d] = {modelled[d], modelSd[d]};
        view.evidence[d].push_back({Evidence::Kind::model, view.model[d]});
    }
    if (const auto titration = latestTitration(record, now, today)) {
        view.ta = titration->ta;
        view.evidence[Dimension::acidity].push_back({Evidence::Kind::titration,
                                                     titrationEstimate(titration->ta, state->beer, p.score),
                                                     titration->on, titration->ta});
    }
    VerdictContext context;
    context.today = today;
    if (const SittingFact* sitting = latestSitting(record, now, today)) {
        const SittingResult result = evaluate(sitting->sitting, builtInSheet());
        view.tastedOn = sitting->sitting.on;
        view.sitting = result.dimensions;
        view.faults = result.faults;
        // The vessel has moved since the sitting by as much as the model says.
        auto then = histories.on(record, sitting->sitting.on);
        const Scores at = then ? scores(then->beer, p.score) : modelled;
        const bool same = onlyTaster(sitting->sitting, target.setBy);
        for (Dimension d : allDimensions)
            if (const auto& reading = result.dimensions[d])
                view.evidence[d].push_back(
                    {Evidence::Kind::sitting,
                     {reading->mean + modelled[d] - at[d], same ? reading->sameTasterSe : reading->absoluteSe},
                     sitting->sitting.on});
        if (const auto mark = worstUnwantedFault(result, target, builtInSheet())) {
            context.fault = mark->fault;
            context.faultRule = builtInSheet().findFault(mark->fault);
        }
    }
    context.gravityFalling = gravityFalling(record, now, today);
    for (Dimension d : allDimensions) {
        view.combined[d] = combinedOf(view.evidence[d]);
        context.modelArrives =
            modelArrival(d, *state, view.combined[d].mean - modelled[d], target.windows[d], record, p, today);
        view.verdicts[d] = verdict(d, view.combined[d], target.windows[d], context);
    }
    return view;
}

} // namespace staveline
