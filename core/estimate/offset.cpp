// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/offset.h"

#include "estimate/square.h"

#include <algorithm>
#include <cmath>

namespace staveline::estimate {
namespace {

using Row = Offset::Row;
using Matrix = std::array<Row, 3>;
constexpr std::array<std::size_t, 3> parts{0, 1, 2};

double dot(const Row& a, const Row& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Row times(const Matrix& m, const Row& v) {
    return {dot(m[0], v), dot(m[1], v), dot(m[2], v)};
}

/// A P A'.
Matrix carried(const Matrix& a, const Matrix& p) {
    Matrix half{}, out{};
    for (auto i : parts)
        half[i] = times(p, a[i]); // P is symmetric: column i of P A'
    for (auto i : parts)
        for (auto j : parts)
            out[i][j] = dot(a[i], half[j]);
    return out;
}

Offset prior(const OffsetRule& rule, double now, double cross, double settled) {
    Offset offset;
    const double apart = square(rule.apart);
    offset.cov = {{{now, cross, apart}, {cross, settled, apart}, {apart, apart, apart}}};
    return offset;
}

} // namespace

double Offset::sd() const {
    return std::sqrt(std::max(0.0, cov[now][now]));
}

Offset longRunPrior(const OffsetRule& rule) {
    const double level = square(rule.level);
    return prior(rule, level + square(rule.difference), level, level);
}

Offset firstFillPrior(const OffsetRule& rule) {
    const double level = square(rule.level);
    return prior(rule, level, rule.youngLink * level, level);
}

void passTime(Offset& offset, Days days, const OffsetRule& rule) {
    offset.cov[Offset::now][Offset::now] += square(rule.walkNow) * std::max(0.0, days.d) / rule.cycle;
}

void refill(Offset& offset, Share share, Days since, double settledSteps, const OffsetRule& rule) {
    const double f = std::clamp(share.of1, 0.0, 1.0);
    offset.mean[Offset::now] = (1 - f) * offset.mean[Offset::now] + f * offset.mean[Offset::settled];
    offset.cov = carried({{{1 - f, f, 0}, {0, 1, 0}, {0, 0, 1}}}, offset.cov);
    passTime(offset, since, rule);
    offset.cov[Offset::settled][Offset::settled] += settledSteps * square(rule.walkSettled);
    offset.cov[Offset::apart][Offset::apart] += settledSteps * square(rule.walkApart);
}

void takeIn(Offset& offset, const Offset& from, Share share, const OffsetRule& rule) {
    const double g = std::clamp(share.of1, 0.0, 1.0);
    if (g == 1) {
        const double now = from.cov[Offset::now][Offset::now], level = square(rule.level);
        offset = from;
        offset.mean[Offset::settled] = from.mean[Offset::now];
        offset.cov[Offset::settled][Offset::settled] = std::max(level, now);
        const double cross = rule.youngLink * std::min(level, now);
        offset.cov[Offset::now][Offset::settled] = offset.cov[Offset::settled][Offset::now] = cross;
        return;
    }
    for (auto part : {Offset::now, Offset::apart})
        offset.mean[part] = (1 - g) * offset.mean[part] + g * from.mean[part];
    offset.cov = carried({{{1 - g, 0, 0}, {0, 1, 0}, {0, 0, 1 - g}}}, offset.cov);
    for (auto i : {Offset::now, Offset::apart})
        for (auto j : {Offset::now, Offset::apart})
            offset.cov[i][j] += square(g) * from.cov[i][j];
}

void loosen(Offset& offset, const Loosening& by) {
    auto& p = offset.cov;
    p[Offset::now][Offset::now] += by.now;
    p[Offset::settled][Offset::settled] += by.settled;
    p[Offset::now][Offset::settled] += by.cross;
    p[Offset::settled][Offset::now] += by.cross;
    if (p[Offset::apart][Offset::apart] <= 0)
        return;
    p[Offset::apart][Offset::apart] += by.apart;
    for (auto part : {Offset::now, Offset::settled}) {
        p[part][Offset::apart] += by.apart;
        p[Offset::apart][part] += by.apart;
    }
}

double spreadOf(const Offset& offset, const Observation& observation) {
    return dot(observation.weights, times(offset.cov, observation.weights)) + observation.variance;
}

/// Joseph's form: the covariance stays symmetric and positive whatever is rounded.
void learn(Offset& offset, const Observation& observation) {
    const Row& h = observation.weights;
    const Row ph = times(offset.cov, h);
    const double spread = dot(h, ph) + observation.variance;
    Row gain{};
    Matrix keep{};
    for (auto i : parts) {
        gain[i] = ph[i] / spread;
        offset.mean[i] += gain[i] * observation.innovation;
        for (auto j : parts)
            keep[i][j] = (i == j ? 1.0 : 0.0) - gain[i] * h[j];
    }
    offset.cov = carried(keep, offset.cov);
    for (auto i : parts)
        for (auto j : parts)
            offset.cov[i][j] += observation.variance * gain[i] * gain[j];
}

Observation tasted(const Offset& offset, double score, double model, double variance) {
    return {{1, 0, 0}, score - model - offset.mean[Offset::now], variance};
}

Observation titrated(const Offset& offset, double ta, double model, double slope, double sd) {
    const double expected = model + (offset.mean[Offset::now] - offset.mean[Offset::apart]) / slope;
    return {{1 / slope, 0, -1 / slope}, ta - expected, square(sd)};
}

Ahead ahead(const Offset& offset, Share share, int draws) {
    const double stays = std::pow(1 - std::clamp(share.of1, 0.0, 1.0), std::max(0, draws));
    const Row weights{stays, 1 - stays, 0};
    const Row ph = times(offset.cov, weights);
    return {dot(weights, offset.mean), dot(weights, ph), ph[Offset::now]};
}

Ahead settledAhead(const Offset& offset) {
    const auto& row = offset.cov[Offset::settled];
    return {offset.mean[Offset::settled], row[Offset::settled], row[Offset::now]};
}

} // namespace staveline::estimate
