// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/estimates.h"

#include <algorithm>
#include <cmath>

namespace staveline::estimate {

using tasting::Estimate;

namespace {

std::optional<Measurement> latestTitration(const KnownOfVessel& known, const EstimateConstants& by) {
    std::optional<Measurement> found;
    for (const auto& each : known.measured)
        if (each.ta && speaksFor(each.on, known.lastRefill, known.today, by))
            found = each;
    return found;
}

bool onlyTaster(const tasting::Sitting& sitting, const std::string& taster) {
    return !taster.empty() && !sitting.scores.empty() &&
           std::all_of(sitting.scores.begin(), sitting.scores.end(),
                       [&](const tasting::Score& score) { return score.taster == taster; });
}

Estimate combinedOf(const std::vector<Evidence>& evidence) {
    std::vector<Estimate> estimates;
    estimates.reserve(evidence.size());
    for (const auto& each : evidence)
        estimates.push_back(each.estimate);
    return combine(estimates);
}

/// Builds the answer part by part: the model, the titration, the sitting, then what they come to.
class Join {
public:
    Join(const KnownOfVessel& known, const EstimateConstants& by)
        : known_(known), by_(by), modelled_(scores(known.state.beer, known.parameters.score)) {
        context_.today = known.today;
        context_.gravityFalling = gravityFalling(known.measured, known.lastRefill, by);
    }

    Estimates run() {
        takeModel();
        takeTitration();
        if (known_.tasted)
            takeSitting(*known_.tasted);
        for (Dimension d : allDimensions)
            settle(d);
        return std::move(estimates_);
    }

private:
    void takeModel() {
        for (Dimension d : allDimensions) {
            estimates_.model[d] = {modelled_[d], by_.modelSd[d]};
            estimates_.evidence[d].push_back({Evidence::Kind::model, estimates_.model[d]});
        }
    }

    void takeTitration() {
        const auto titration = latestTitration(known_, by_);
        if (!titration)
            return;
        estimates_.ta = titration->ta;
        estimates_.evidence[Dimension::acidity].push_back(
            {Evidence::Kind::titration,
             titrationEstimate(*titration->ta, known_.state.beer, known_.parameters.score, by_), titration->on,
             titration->ta});
    }

    void takeSitting(const Tasted& tasted) {
        const tasting::Sitting& sitting = *tasted.sitting;
        const tasting::SittingResult result = evaluate(sitting, tasting::builtInSheet());
        estimates_.tastedOn = sitting.on;
        estimates_.sitting = result.dimensions;
        estimates_.faults = result.faults;
        // The vessel has moved since the sitting by as much as the model says.
        const Scores then = tasted.then ? scores(tasted.then->beer, known_.parameters.score) : modelled_;
        const bool same = onlyTaster(sitting, known_.target.setBy);
        for (Dimension d : allDimensions)
            if (const auto& reading = result.dimensions[d])
                estimates_.evidence[d].push_back(
                    {Evidence::Kind::sitting,
                     {reading->mean + modelled_[d] - then[d], same ? reading->sameTasterSe : reading->absoluteSe},
                     sitting.on});
        if (const auto mark = worstUnwantedFault(result, known_.target, tasting::builtInSheet())) {
            context_.fault = mark->fault;
            context_.faultRule = tasting::builtInSheet().findFault(mark->fault);
        }
    }

    void settle(Dimension d) {
        const Estimate combined = combinedOf(estimates_.evidence[d]);
        estimates_.combined[d] = combined;
        Offset& offset = estimates_.offsets[d];
        offset = longRunPrior(by_.offsets[d]);
        learn(offset, tasted(offset, combined.mean, modelled_[d], combined.sd * combined.sd));
        context_.modelArrives = modelArrival(d, known_, combined.mean - modelled_[d], by_);
        estimates_.verdicts[d] = standing(d, combined, known_.target.windows[d], context_);
    }

    const KnownOfVessel& known_;
    const EstimateConstants& by_;
    Scores modelled_;
    tasting::VerdictContext context_;
    Estimates estimates_;
};

} // namespace

bool speaksFor(Day on, std::optional<Day> lastRefill, Day today, const EstimateConstants& by) {
    return daysBetween(on, today) <= by.freshFor && (!lastRefill || on > *lastRefill);
}

Estimate titrationEstimate(GramsPerLitre ta, const Composition& beer, const tasting::ScoreParameters& p,
                           const EstimateConstants& by) {
    const GramsPerLitre acetic{beer.acetic};
    const auto score = [&](double g) { return tasting::acidityScore({g}, acetic, beer.alcohol(), p); };
    const double mean = score(ta.gPerL);
    const double slope = (score(ta.gPerL + .1) - score(ta.gPerL - .1)) / .2;
    const double effective = std::max(by.mapFrom, ta.gPerL + p.aceticWeight * beer.acetic - p.ownAcidity);
    const double map = mean * std::hypot(by.mapScale, by.mapExponent * std::log(effective));
    return {mean, std::max(by.leastTitrationSd, std::hypot(slope * by.titrationSd, map))};
}

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
    for (int days = by.arrivalStep; days <= by.arrivalHorizon; days += by.arrivalStep) {
        later = age(later, step, p.culture);
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
