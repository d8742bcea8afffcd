// SPDX-License-Identifier: GPL-3.0-or-later
// How far one dimension of a vessel lies from the model's score of it, and how that is learned: a Kalman filter of
// three numbers. Score = model + `now`. Nothing here knows what a score is made of.
#pragma once

#include "quantity/units.h"

#include <array>

namespace staveline::estimate {

/// Means [points] and covariances [points^2] of
///   now      the offset of the beer in the vessel,
///   settled  the same where it would end if refills only went in, the vessel's own,
///   apart    acidity only: how much sourer the vessel tastes than its acid; else 0 and certain.
struct Offset {
    enum Part : std::size_t { now, settled, apart };
    using Row = std::array<double, 3>;
    Row mean{};
    std::array<Row, 3> cov{};

    [[nodiscard]] double sd() const; ///< of `now`
    bool operator==(const Offset&) const = default;
};

/// Of one dimension; rows "estimate." of resources/data/rules.csv.
struct OffsetRule {
    double level = 1.2;      ///< sd of what a vessel is apart from the model [points]
    double difference = .3;  ///< sd of `now` against `settled` at the start, after a long run [points]
    double walkNow = .2;     ///< sd by which `now` wanders in a cycle [points]
    double walkSettled = .1; ///< sd by which `settled` wanders at a refill [points]
    double apart = 0;        ///< sd of `apart` at the start; 0: there is none [points]
    double walkApart = 0;    ///< sd by which `apart` wanders at a refill [points]
    double youngLink = .8;   ///< correlation of `now` and `settled` in a first fill [1]
    double cycle = 240;      ///< days for which walkNow is stated [d]
};

/// Before anything was seen of a vessel long on one recipe, or of a first fill whose culture is young.
[[nodiscard]] Offset longRunPrior(const OffsetRule& rule);
[[nodiscard]] Offset firstFillPrior(const OffsetRule& rule);

/// Time passes: `now` wanders with the days.
void passTime(Offset& offset, Days days, const OffsetRule& rule);
/// The beer is blended with a refill of `share`; the days since the fact before it count after the blending. `settled`
/// and `apart` wander as at `settledSteps` refills: 1, or less for a small top-up.
void refill(Offset& offset, Share share, Days since, double settledSteps, const OffsetRule& rule);
/// Beer of another vessel comes in and is `share` of what is in it after. Of an empty vessel all of it is the other's,
/// and what it settles at is open.
void takeIn(Offset& offset, const Offset& from, Share share, const OffsetRule& rule);
/// Something happened: variances and covariance grow by these.
struct Loosening {
    double now = 0, cross = 0, settled = 0; ///< [points^2]
    double apart = 0;                       ///< added to the variance of `apart` and its covariances, if there is one
};
void loosen(Offset& offset, const Loosening& by);

/// Something was seen: weights of the three means in what was expected, how far it came out above that, and the error's
/// variance (above 0).
struct Observation {
    Offset::Row weights{1, 0, 0};
    double innovation = 0;
    double variance = 1;
};
/// Variance of the innovation: what the offset leaves open and the error.
[[nodiscard]] double spreadOf(const Offset& offset, const Observation& observation);
void learn(Offset& offset, const Observation& observation);
/// A tasted score against the model's score plus the offset.
[[nodiscard]] Observation tasted(const Offset& offset, double score, double model, double variance);
/// A titration [g/L] against the model's; `slope` of the acidity map there [points per g/L].
[[nodiscard]] Observation titrated(const Offset& offset, double ta, double model, double slope, double sd);

/// Offset of the beer after `draws` equal draws and refills of `share`, without wandering: what plans are judged by.
struct Ahead {
    double mean = 0, variance = 0;
    double withNow = 0; ///< covariance with `now`
};
[[nodiscard]] Ahead ahead(const Offset& offset, Share share, int draws);
/// Where it ends if the same goes on for ever.
[[nodiscard]] Ahead settledAhead(const Offset& offset);

} // namespace staveline::estimate
