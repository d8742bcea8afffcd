// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/estimates.h"

#include <algorithm>
#include <cmath>

namespace staveline::estimate {

using tasting::Estimate;

namespace {

/// Builds the answer part by part: the model, what was learned, what this cycle added, then what they come to.
class Join {
public:
    Join(const KnownOfVessel& known, const EstimateConstants& by)
        : known_(known), by_(by), modelled_(scores(known.state.beer, known.parameters.score)) {
        context_.today = known.today;
        context_.gravityFalling = gravityFalling(known.measured, known.lastRefill, by);
    }

    Estimates run() {
        takeReadings();
        takeDoubts();
        if (known_.tasted)
            takeSitting(*known_.tasted);
        for (Dimension d : allDimensions) {
            takeModel(d);
            takeLearned(d);
            takeSittings(d);
            settle(d);
        }
        takeTitrations();
        return std::move(estimates_);
    }

private:
    /// Those that were learned from: what cannot be true steers nothing.
    void takeReadings() {
        for (const AcidLesson& lesson : known_.learned.acidity)
            if (ofThisCycle(lesson.on, known_.lastRefill)) {
                estimates_.ta = lesson.ta ? lesson.ta : estimates_.ta;
                estimates_.ph = lesson.ph ? lesson.ph : estimates_.ph;
            }
    }

    void takeDoubts() {
        for (const Doubt& doubt : known_.learned.doubts)
            if (ofThisCycle(doubt.on, known_.lastRefill))
                estimates_.doubts.push_back(doubt);
    }

    void takeSitting(const tasting::Sitting& sitting) {
        const tasting::SittingResult result = evaluate(sitting, tasting::builtInSheet());
        estimates_.tastedOn = sitting.on;
        estimates_.faults = result.faults;
        if (const auto mark = worstUnwantedFault(result, known_.target, tasting::builtInSheet())) {
            context_.fault = mark->fault;
            context_.faultOn = sitting.on;
            context_.faultRule = tasting::builtInSheet().findFault(mark->fault);
        }
    }

    void takeModel(Dimension d) {
        estimates_.model[d] = {modelled_[d], longRunPrior(by_.offsets[d]).sd()};
        estimates_.evidence[d].push_back({Evidence::Kind::model, estimates_.model[d]});
    }

    void takeLearned(Dimension d) {
        const Offset& offset = known_.earlier.offsets[d];
        const int sittings = known_.earlier.sittings[d];
        // Beer that was moved here brings an offset without any sitting of its own.
        if (sittings > 0 || offset.mean[Offset::now] != 0)
            estimates_.evidence[d].push_back({.kind = Evidence::Kind::learned,
                                              .estimate = {modelled_[d] + offset.mean[Offset::now], offset.sd()},
                                              .sittings = sittings});
    }

    /// The vessel has moved since a sitting by as much as the model says.
    void takeSittings(Dimension d) {
        for (const Lesson& lesson : known_.learned.lessons) {
            if (!lesson.learned[d] || !ofThisCycle(lesson.on, known_.lastRefill))
                continue;
            const Estimate& tasted = *lesson.tasted[d];
            estimates_.evidence[d].push_back(
                {Evidence::Kind::sitting, {tasted.mean + modelled_[d] - lesson.model[d], tasted.sd}, lesson.on});
            estimates_.tastedThisCycle[d] = true;
            estimates_.tastedToday[d] = lesson.on == known_.today;
        }
    }

    void takeTitrations() {
        constexpr auto acidity = Dimension::acidity;
        for (const AcidLesson& lesson : known_.learned.acidity)
            if (ofThisCycle(lesson.on, known_.lastRefill))
                estimates_.evidence[acidity].push_back({Evidence::Kind::titration,
                                                        {modelled_[acidity] + lesson.offset.mean, lesson.offset.sd},
                                                        lesson.on,
                                                        lesson.ta});
    }

    void settle(Dimension d) {
        const Offset& offset = known_.learned.offsets[d];
        const Estimate combined{modelled_[d] + offset.mean[Offset::now], offset.sd()};
        estimates_.offsets[d] = offset;
        estimates_.sittings[d] = known_.learned.sittings[d];
        estimates_.oneMoreTaster[d] = oneMoreTaster(d, known_.learned.tasters.size() > 1);
        estimates_.combined[d] = combined;
        context_.tasted = estimates_.sittings[d] > 0;
        context_.contradicted = contradicted(estimates_.doubts, d);
        context_.modelArrives =
            context_.tasted ? modelArrival(d, known_, combined.mean - modelled_[d], by_) : std::nullopt;
        estimates_.verdicts[d] = standing(d, combined, known_.target.windows[d], context_);
    }

    const KnownOfVessel& known_;
    const EstimateConstants& by_;
    Scores modelled_;
    tasting::VerdictContext context_;
    Estimates estimates_;
};

} // namespace

bool gravityFalling(std::span<const Measurement> measured, std::optional<Day> lastRefill, const EstimateConstants& by) {
    std::vector<Measurement> points;
    for (const auto& each : measured)
        if (each.gravity && (!lastRefill || each.on > *lastRefill))
            points.push_back(each);
    if (points.size() < 2)
        return false;
    const Measurement &last = points.back(), &before = points[points.size() - 2];
    const int days = daysBetween(before.on, last.on);
    return days >= by.gravityApart && (before.gravity->sg - last.gravity->sg) / days * 30 > by.gravityFall;
}

std::optional<Day> modelArrival(Dimension d, const KnownOfVessel& known, double deviation,
                                const EstimateConstants& by) {
    const forward::Parameters& p = known.parameters;
    const tasting::TargetWindow& window = known.target.windows[d];
    const double now = scores(known.state.beer, p.score)[d] + deviation;
    if (std::abs(now - window.wanted) <= window.band)
        return {};
    culture::VesselState later = known.state;
    culture::AgeConditions step = known.cellaring;
    step.days = Days{static_cast<double>(by.arrivalStep)};
    step.from = known.today;
    for (int days = by.arrivalStep; days <= by.arrivalHorizon; days += by.arrivalStep) {
        later = age(later, step, p.culture);
        step.from += std::chrono::days{by.arrivalStep};
        const double score = scores(later.beer, p.score)[d] + deviation;
        if (std::abs(score - window.wanted) <= window.band * by.arrivalInside && std::abs(score - now) > by.arrivalMove)
            return known.today + std::chrono::days{days};
    }
    return {};
}

Estimates estimatesFrom(const KnownOfVessel& known, const EstimateConstants& by) {
    return Join(known, by).run();
}

} // namespace staveline::estimate
