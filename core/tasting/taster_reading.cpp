// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/taster_reading.h"

#include "tasting/statistics.h"

#include <algorithm>
#include <cmath>

namespace staveline::tasting {
namespace {

constexpr double topScore = 10;

/// Intensity grows by a factor when the glass warms, so a weak note gains less.
double expectedShift(const Attribute& a, double score) {
    return a.warmShift * std::min(1.0, score / fullShiftFrom);
}

struct Answer {
    const Attribute* attribute;
    double weight; ///< renormalised
    const std::vector<const Score*>* glasses;
};

std::vector<Answer> answered(const TastingSheet& sheet, Dimension dimension, const Answers::mapped_type& answers,
                             TasterReading& reading) {
    std::vector<Answer> found;
    for (const auto& a : sheet.attributes) {
        if (a.dimension != dimension)
            continue;
        const auto at = answers.find(a.code);
        if (at == answers.end()) {
            reading.missing.push_back(a.code);
            continue;
        }
        found.push_back({&a, a.weight, &at->second});
        reading.answered += a.weight;
    }
    for (auto& answer : found)
        answer.weight /= reading.answered;
    return found;
}

double sumOfSquaredWeights(const TastingSheet& sheet, Dimension dimension) {
    double sum = 0;
    for (const auto& a : sheet.attributes)
        if (a.dimension == dimension)
            sum += a.weight * a.weight;
    return sum;
}

double oriented(const Attribute& a, double score) {
    return a.reversed ? topScore - score : score;
}

/// The dimension in glass `index` at one temperature, over the attributes that have it; empty when too few do.
std::optional<double> atTemperature(const std::vector<Answer>& answers, std::size_t index,
                                    std::optional<double> Score::*temperature) {
    double sum = 0, weight = 0;
    for (const auto& answer : answers) {
        const auto& score = (*answer.glasses)[index]->*temperature;
        if (!score)
            continue;
        sum += answer.weight * oriented(*answer.attribute, *score);
        weight += answer.weight;
    }
    if (weight < enoughWeight - weightMargin)
        return {};
    return sum / weight;
}

/// Mean difference between the temperatures over attributes and glasses that have both.
std::optional<double> temperatureDifference(const std::vector<Answer>& answers) {
    double sum = 0, weight = 0;
    for (const auto& answer : answers) {
        std::vector<double> differences;
        for (const Score* s : *answer.glasses)
            if (s->cold && s->cellar)
                differences.push_back(oriented(*answer.attribute, *s->cellar) - oriented(*answer.attribute, *s->cold));
        if (differences.empty())
            continue;
        sum += answer.weight * meanOf(differences);
        weight += answer.weight;
    }
    if (weight < enoughWeight - weightMargin)
        return {};
    return sum / weight;
}

void compareGlasses(const std::vector<Answer>& answers, TasterReading& reading) {
    for (auto temperature : {&Score::cold, &Score::cellar}) {
        std::vector<double> glasses;
        for (std::size_t i = 0; i < static_cast<std::size_t>(reading.glasses); ++i)
            if (const auto value = atTemperature(answers, i, temperature))
                glasses.push_back(*value);
        if (glasses.size() < 2)
            continue;
        reading.ssGlasses += sumOfSquares(glasses) / reading.inflation;
        reading.dfGlasses += static_cast<double>(glasses.size()) - 1;
    }
}

/// Adds one attribute, the mean of its glasses, with its weight.
void addAnswer(const Answer& answer, TasterReading& reading) {
    const double share = answer.weight / static_cast<double>(answer.glasses->size());
    for (const Score* score : *answer.glasses) {
        const auto glass = readGlass(*answer.attribute, *score);
        reading.mean += share * glass.value;
        reading.fillSd += share * glass.fillSd;
        reading.cold += share * glass.cold;
        reading.cellar += share * glass.cellar;
    }
}

} // namespace

Answers answersOf(const Sitting& sitting, const TastingSheet& sheet) {
    Answers answers;
    for (const auto& score : sitting.scores)
        if ((score.cold || score.cellar) && sheet.find(score.attribute))
            answers[score.taster][score.attribute].push_back(&score);
    return answers;
}

GlassValue readGlass(const Attribute& a, const Score& score) {
    const double coldShare = a.coldWeight.of1, cellarShare = 1 - coldShare;
    if (score.cold && score.cellar)
        return {coldShare * oriented(a, *score.cold) + cellarShare * oriented(a, *score.cellar), 0, coldShare,
                cellarShare};
    const double up = a.reversed ? -1 : 1;
    if (score.cold) {
        const double filled = std::clamp(*score.cold + expectedShift(a, *score.cold), 0.0, topScore);
        return {coldShare * oriented(a, *score.cold) + cellarShare * oriented(a, filled),
                up * cellarShare * a.warmShiftSd, 1, 0};
    }
    const double filled = std::clamp(*score.cellar - expectedShift(a, *score.cellar), 0.0, topScore);
    return {coldShare * oriented(a, filled) + cellarShare * oriented(a, *score.cellar), -up * coldShare * a.warmShiftSd,
            0, 1};
}

TasterReading readTaster(const TastingSheet& sheet, Dimension dimension, const Answers::mapped_type& answers,
                         const TastingNoise& noise) {
    TasterReading reading;
    const auto found = answered(sheet, dimension, answers, reading);
    if (found.empty())
        return reading;
    double squares = 0;
    std::size_t glasses = found.front().glasses->size();
    for (const auto& answer : found) {
        addAnswer(answer, reading);
        squares += answer.weight * answer.weight;
        glasses = std::min(glasses, answer.glasses->size());
    }
    const auto spread = [&](double s) { return noise.correlation + (1 - noise.correlation) * s; };
    reading.inflation = spread(squares) / spread(sumOfSquaredWeights(sheet, dimension));
    reading.glasses = static_cast<int>(glasses);
    reading.difference = temperatureDifference(found);
    compareGlasses(found, reading);
    return reading;
}

} // namespace staveline::tasting
