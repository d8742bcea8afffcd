// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/funk_sides.h"
#include "tasting/statistics.h"
#include "tasting/taster_reading.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace staveline::tasting {
namespace {

struct Variances {
    double taster = 0, byTemperature = 0, residual = 0;
    /// Of a taster's mean once the taster's own offset is set aside.
    [[nodiscard]] double within(const TasterReading& r) const {
        return r.temperatureShare() * (byTemperature + residual * r.inflation / r.glasses);
    }
};

double shrunk(double prior, double priorDf, double seen, double df) {
    return (priorDf * prior + df * seen) / (priorDf + df);
}

Variances priorOf(const TastingNoise& noise) {
    return {noise.taster * noise.taster, noise.tasterByTemperature * noise.tasterByTemperature,
            noise.residual * noise.residual};
}

struct Interaction {
    double meanSquare = 0; ///< of half differences: by-temperature plus residual over glasses
    double df = 0;
    double glasses = 1; ///< mean number
};
Interaction interactionOf(const std::vector<TasterReading>& readings) {
    std::vector<double> halves, glasses;
    for (const auto& r : readings)
        if (r.difference) {
            halves.push_back(*r.difference / std::sqrt(2.0));
            glasses.push_back(r.glasses);
        }
    if (halves.size() < 2)
        return {};
    const double df = static_cast<double>(halves.size()) - 1;
    return {sumOfSquares(halves) / df, df, meanOf(glasses)};
}

/// By-temperature and residual variance. Without replicate glasses only their sum is seen: it is shrunk as a sum and
/// split as the prior splits it.
void setWithin(Variances& v, const std::vector<TasterReading>& readings, const Interaction& seen,
               const TastingNoise& noise) {
    const auto prior = priorOf(noise);
    double ss = 0, df = 0;
    for (const auto& r : readings) {
        ss += r.ssGlasses;
        df += r.dfGlasses;
    }
    if (df > 0) {
        const double residual = ss / df;
        v.residual = shrunk(prior.residual, noise.priorDegreesOfFreedom, residual, df);
        const double interaction = std::max(0.0, seen.meanSquare - residual / seen.glasses);
        v.byTemperature = shrunk(prior.byTemperature, noise.priorDegreesOfFreedom, interaction, seen.df);
        return;
    }
    const double sum = prior.byTemperature + prior.residual;
    const double scale = shrunk(sum, noise.priorDegreesOfFreedom, seen.meanSquare, seen.df) / sum;
    v.byTemperature = scale * prior.byTemperature;
    v.residual = scale * prior.residual;
}

Variances variancesOf(const std::vector<TasterReading>& readings, const TastingNoise& noise) {
    Variances v;
    const auto seen = interactionOf(readings);
    setWithin(v, readings, seen, noise);
    std::vector<double> means, within;
    for (const auto& r : readings) {
        means.push_back(r.mean);
        within.push_back(seen.df > 0 ? r.temperatureShare() * seen.meanSquare : v.within(r));
    }
    const double df = static_cast<double>(readings.size()) - 1;
    const double between = df > 0 ? std::max(0.0, sumOfSquares(means) / df - meanOf(within)) : 0;
    v.taster = shrunk(priorOf(noise).taster, noise.priorDegreesOfFreedom, between, df);
    return v;
}

/// Each taster's part of the mean: by precision, less when far from the rest. Sums to 1.
std::vector<double> partsOf(const std::vector<TasterReading>& readings, const Variances& v, const TastingNoise& noise) {
    std::vector<double> means, precisions, scales;
    const auto prior = priorOf(noise);
    for (const auto& r : readings) {
        means.push_back(r.mean);
        precisions.push_back(1 / (v.taster + v.within(r)));
        scales.push_back(std::sqrt(prior.taster + prior.within(r)));
    }
    auto parts = huberWeights(means, precisions, scales);
    double total = 0;
    for (std::size_t i = 0; i < parts.size(); ++i)
        total += parts[i] *= precisions[i];
    for (double& part : parts)
        part /= total;
    return parts;
}

DimensionReading panelReading(const std::vector<TasterReading>& readings, const TastingNoise& noise) {
    const auto v = variancesOf(readings, noise);
    const auto parts = partsOf(readings, v, noise);
    DimensionReading out;
    double same = 0, tasters = 0, fill = 0, answered = 0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        out.mean += parts[i] * readings[i].mean;
        same += parts[i] * parts[i] * v.within(readings[i]);
        tasters += parts[i] * parts[i] * v.taster;
        fill += parts[i] * readings[i].fillSd; // warming is the beer's, not the taster's: it does not average out
        answered += readings[i].answered / static_cast<double>(readings.size());
    }
    out.sameTasterSe = std::sqrt(same + fill * fill);
    out.absoluteSe = std::sqrt(same + tasters + fill * fill);
    out.degreesOfFreedom = noise.priorDegreesOfFreedom + static_cast<double>(readings.size()) - 1;
    out.tasters = static_cast<int>(readings.size());
    const auto [low, high] = std::minmax_element(readings.begin(), readings.end(),
                                                 [](const auto& a, const auto& b) { return a.mean < b.mean; });
    out.apart = high->mean - low->mean;
    out.answered = {answered};
    return out;
}

void evaluateDimension(Dimension d, const Answers& answers, const TastingSheet& sheet, const TastingNoise& noise,
                       SittingResult& out) {
    TasterReading most = readTaster(sheet, d, {}, noise);
    std::vector<TasterReading> readings;
    for (const auto& [taster, own] : answers) {
        const auto reading = readTaster(sheet, d, own, noise);
        if (reading.answered > most.answered)
            most = reading;
        if (reading.answered >= enoughWeight - weightMargin)
            readings.push_back(reading);
    }
    out.missing[d] = most.missing;
    if (!readings.empty())
        out.dimensions[d] = panelReading(readings, noise);
}

/// Mean over tasters of one attribute as scored.
std::optional<double> meanScore(const Attribute& attribute, const Answers& answers) {
    std::vector<double> tasters;
    for (const auto& [taster, own] : answers) {
        const auto at = own.find(attribute.code);
        if (at == own.end())
            continue;
        std::vector<double> glasses;
        for (const Score* score : at->second)
            glasses.push_back(readGlass(attribute, *score).value);
        tasters.push_back(meanOf(glasses));
    }
    if (tasters.empty())
        return {};
    return meanOf(tasters);
}

std::vector<FaultMark> faultsOf(const Sitting& sitting, const Answers& answers, const TastingSheet& sheet) {
    std::vector<FaultMark> found;
    const auto note = [&](const std::string& fault, int severity) {
        const auto at = std::find_if(found.begin(), found.end(), [&](const auto& m) { return m.fault == fault; });
        if (at == found.end())
            found.push_back({fault, severity});
        else
            at->severity = std::max(at->severity, severity);
    };
    for (const auto& mark : sitting.faults)
        note(mark.fault, mark.severity);
    for (const auto& a : sheet.attributes) {
        const auto score = a.fault.empty() ? std::nullopt : meanScore(a, answers);
        if (score)
            note(a.fault, static_cast<int>(std::count_if(a.faultAt.begin(), a.faultAt.end(),
                                                         [&](double from) { return *score >= from; })));
    }
    std::erase_if(found, [](const auto& m) { return m.severity < 1; });
    const auto rank = [&](const FaultMark& m) {
        const auto* rule = sheet.findFault(m.fault);
        return 2 * m.severity + (!rule || rule->blocksAdvice ? 1 : 0);
    };
    std::stable_sort(found.begin(), found.end(), [&](const auto& a, const auto& b) { return rank(a) > rank(b); });
    return found;
}

/// The fault that makes a dimension's score unusable; empty: none.
std::string spoilerOf(Dimension d, const std::vector<FaultMark>& faults, const TastingSheet& sheet) {
    for (const auto& mark : faults)
        if (const auto* rule = sheet.findFault(mark.fault); mark.severity >= 2 && rule && rule->spoils == d)
            return mark.fault;
    return {};
}

/// The scores of the lines behind spice, horse and faults: a full table has many others.
Sitting ofSides(const Sitting& sitting, const TastingSheet& sheet) {
    const auto counts = [&](const Score& score) {
        if (score.attribute == spiceLine || score.attribute == horseLine)
            return true;
        const Attribute* line = sheet.find(score.attribute);
        return line && !line->fault.empty();
    };
    Sitting part;
    part.faults = sitting.faults;
    std::copy_if(sitting.scores.begin(), sitting.scores.end(), std::back_inserter(part.scores), counts);
    return part;
}

/// The dimension as if the sheet had this line only.
std::optional<DimensionReading> lineReading(std::string_view code, Dimension d, const Answers& answers,
                                            const TastingSheet& sheet, const TastingNoise& noise) {
    std::vector<TasterReading> readings;
    for (const auto& [taster, own] : answers)
        if (const auto at = own.find(std::string(code)); at != own.end())
            readings.push_back(readTaster(sheet, d, {*at}, noise));
    if (readings.empty())
        return {};
    return panelReading(readings, noise);
}

} // namespace

FunkSides funkSides(const Sitting& whole, const TastingSheet& sheet, const TastingNoise& noise) {
    const Sitting sitting = ofSides(whole, sheet);
    const auto answers = answersOf(sitting, sheet);
    if (!spoilerOf(Dimension::funk, faultsOf(sitting, answers, sheet), sheet).empty())
        return {};
    return {lineReading(spiceLine, Dimension::funk, answers, sheet, noise),
            lineReading(horseLine, Dimension::funk, answers, sheet, noise)};
}

std::vector<FaultMark> faultsIn(const Sitting& sitting, const TastingSheet& sheet) {
    return faultsOf(sitting, answersOf(sitting, sheet), sheet);
}

SittingResult evaluate(const Sitting& sitting, const TastingSheet& sheet, const TastingNoise& noise) {
    SittingResult out;
    const auto answers = answersOf(sitting, sheet);
    for (auto d : allDimensions)
        evaluateDimension(d, answers, sheet, noise, out);
    out.faults = faultsOf(sitting, answers, sheet);
    for (auto d : allDimensions) {
        out.spoiledBy[d] = spoilerOf(d, out.faults, sheet);
        if (!out.spoiledBy[d].empty())
            out.dimensions[d].reset();
    }
    if (const auto* bitterness = sheet.find("TA5"))
        out.bitterness = meanScore(*bitterness, answers);
    return out;
}

} // namespace staveline::tasting
