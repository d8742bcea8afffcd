// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/draw_day.h"

#include "advice/board.h"
#include "advice/forecaster.h"
#include "desk/advice.h"
#include "desk/brew.h"
#include "desk/estimates.h"
#include "desk/inside.h"

#include <algorithm>
#include <cmath>

namespace staveline::desk {
using advice::Setting;

namespace {

constexpr double largerDraw = 1.2;                                          ///< as much more shows which way it goes
constexpr int freshFor = static_cast<int>(constants::desk::freshOnDrawDay); // [d]

void sayTasted(const estimate::Estimates& estimates, Day today, DrawDayView& view) {
    if (!estimates.tastedOn)
        view.findings.push_back(say("desk.draw_day.not_tasted"));
    else if (daysBetween(*estimates.tastedOn, today) > freshFor)
        view.findings.push_back(say("desk.draw_day.taste_again").with("on", *estimates.tastedOn));
}

/// By one that was learned from: what cannot be, or contradicts the tasting, is asked for again.
void sayTitrated(const estimate::Estimates& estimates, Day today, DrawDayView& view) {
    const auto& evidence = estimates.evidence[Dimension::acidity];
    const bool titrated = std::any_of(evidence.begin(), evidence.end(), [&](const estimate::Evidence& part) {
        return part.ta && daysBetween(*part.on, today) <= freshFor;
    });
    if (!titrated)
        view.findings.push_back(say("desk.draw_day.titrate"));
}

/// Real litres against planned ones, and the draw that would fit.
void sayLitres(const advice::AdviceInput& in, DrawDayView& view) {
    if (!view.drawn && view.plannedDraw > view.held)
        view.findings.push_back(
            say("desk.draw_day.more_than_held").with("draw", view.plannedDraw).with("held", view.held));
    if (!view.brewed) {
        view.findings.push_back(say("desk.draw_day.no_brew"));
        return;
    }
    if (!view.brewGives) {
        view.findings.push_back(say("desk.draw_day.no_litres").with("brew", view.brewed->name));
        return;
    }
    if (view.refill.l - view.brewGives->l <= .005 * in.fillTo.l)
        return;
    if (view.drawn) {
        view.findings.push_back(say("desk.draw_day.short.drawn")
                                    .with("gives", *view.brewGives)
                                    .with("refill", view.refill)
                                    .with("missing", view.refill - *view.brewGives));
        return;
    }
    const Litres fits{std::max(0.0, in.volumeAtDraw.l + view.brewGives->l - in.fillTo.l)};
    view.findings.push_back(say("desk.draw_day.short")
                                .with("gives", *view.brewGives)
                                .with("refill", view.refill)
                                .with("fits", fits)
                                .with("planned", view.plannedDraw));
}

void sayPromise(DrawDayView& view) {
    if (!view.choice || !view.choice->forecast)
        return;
    const facts::Forecast& told = *view.choice->forecast;
    PerDimension<std::optional<double>> now;
    Scores least;
    for (Dimension d : allDimensions) {
        if (view.expected[d])
            now[d] = view.expected[d]->value;
        least[d] = tasting::z80 * told.sd[d];
    }
    for (Message& moved : movedPromises(told, now, least))
        view.findings.push_back(std::move(moved));
}

/// Which way more of the old beer taken out turns each score at the next draw, as far as it is told.
void sayLargerDraw(const advice::AdviceInput& in, const Setting& inUse, DrawDayView& view) {
    const auto next = [&](const Setting& setting) {
        return advice::TryBoard(in).trial(setting, advice::TrialDepth::central);
    };
    Setting larger = inUse;
    larger.draw = inUse.draw * largerDraw;
    const auto planned = next(inUse), more = next(larger);
    if (!planned || !more)
        return;
    for (Dimension d : allDimensions) {
        const double change = more->next[d].value - planned->next[d].value;
        if (std::abs(change) >= constants::advice::leastTold)
            view.planB.push_back(
                say("desk.plan_b.larger." + std::string(name(d)) + (change < 0 ? ".lowers" : ".raises"))
                    .with("litres", larger.draw - inUse.draw)
                    .with("points", SignedPoints{change}));
    }
}

void addPlanB(const AdviceJob& job, DrawDayView& view) {
    const estimate::Estimates& estimates = job.estimates;
    for (Dimension d : allDimensions) {
        const tasting::Verdict& verdict = estimates.verdicts[d];
        if (verdict.kind == tasting::VerdictKind::faultFirst) {
            view.planB = {verdict.reason, say("desk.plan_b.keep_brew"), say("caution.refill.hold")};
            return;
        }
        if (!view.drawn && verdict.kind == tasting::VerdictKind::waitUntil && verdict.until)
            view.planB.push_back(say("desk.plan_b.wait." + std::string(name(d))).with("until", *verdict.until));
    }
    if (view.drawn)
        return;
    sayLargerDraw(job.input, job.inUse, view);
    view.planB.push_back(say("desk.plan_b.top_up"));
    view.planB.push_back(say("desk.plan_b.keep_brew"));
    view.planB.push_back(say("caution.refill.hold"));
}

} // namespace

std::vector<Message> movedPromises(const facts::Forecast& told, const PerDimension<std::optional<double>>& now,
                                   const Scores& least) {
    std::vector<Message> moved;
    for (Dimension d : allDimensions)
        if (now[d] && std::abs(*now[d] - told.mean[d]) > least[d])
            moved.push_back(say("desk.draw_day.promise." + std::string(name(d)))
                                .with("told", Points{told.mean[d]})
                                .with("now", Points{*now[d]}));
    return moved;
}

Result<DrawDayView> Desk::drawDay(const facts::VesselName& name) const {
    auto job = adviceJob({name, {}, {}, false, true});
    if (!job)
        return fail(job.error());
    auto found = inside_->current(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = (*found)->record;
    const vessel::LedgerState& now = (*found)->now();
    const advice::AdviceInput& in = job->input;
    DrawDayView view;
    if (const facts::ChoiceFact* choice = openChoice(record, now))
        view.choice = *choice;
    view.brewed = job->brewed;
    view.held = now.volume;
    view.drawn = in.drawn;
    view.plannedDraw = job->inUse.draw;
    view.refill = refillOf(in, job->inUse);
    view.estimates = job->estimates;
    if (view.brewed) {
        view.brewGives = givesOf(*view.brewed, inside_->cellar->shared());
        if (const auto meant = meaning(*view.brewed))
            for (Dimension d : allDimensions)
                view.expected[d] = meant->asBrewed[d];
    } else if (const auto trial = advice::TryBoard(in).trial(job->inUse, advice::TrialDepth::next)) {
        for (Dimension d : allDimensions)
            view.expected[d] = trial->next[d];
    }
    if (!view.drawn) // else too late to taste before the draw
        sayTasted(job->estimates, today(), view);
    sayTitrated(job->estimates, today(), view);
    sayLitres(in, view);
    sayPromise(view);
    addPlanB(*job, view);
    return view;
}

} // namespace staveline::desk
