// SPDX-License-Identifier: GPL-3.0-or-later
// Parameter draws for bands. Plain Halton columns of large bases run in parallel over 64 points, so the digits are
// scrambled; ranking each column then gives every parameter exactly one value in each of `count` equal slices.
#include "forward/parameters.h"

#define BOOST_MATH_NO_LONG_DOUBLE_MATH_FUNCTIONS // doubles are enough, and valgrind has no long ones
#include <boost/math/special_functions/erf.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <numeric>

namespace staveline::forward {
namespace {

/// A small integer generator (splitmix64), the same on every machine.
class Mixer {
public:
    explicit Mixer(std::uint64_t seed) : state_(seed) {}
    std::uint64_t below(std::uint64_t bound) {
        state_ += 0x9e3779b97f4a7c15U;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
        return (z ^ (z >> 31U)) % bound;
    }

private:
    std::uint64_t state_;
};

std::vector<int> firstPrimes(std::size_t count) {
    std::vector<int> primes;
    for (int n = 2; primes.size() < count; ++n)
        if (std::none_of(primes.begin(), primes.end(), [n](int p) { return n % p == 0; }))
            primes.push_back(n);
    return primes;
}

std::vector<int> shuffledDigits(int base, Mixer& mixer) {
    std::vector<int> digits(static_cast<std::size_t>(base));
    std::iota(digits.begin(), digits.end(), 0);
    for (std::size_t i = digits.size() - 1; i > 0; --i)
        std::swap(digits[i], digits[mixer.below(i + 1)]);
    return digits;
}

/// The radical inverse of `index` with its digits exchanged, leading zeros too: they differ from column to column.
double scrambledInverse(int index, int base, const std::vector<int>& digits) {
    double value = 0;
    for (double place = 1.0 / base; place > 1e-9; index /= base, place /= base)
        value += digits[static_cast<std::size_t>(index % base)] * place;
    return value;
}

/// Slice midpoints (rank + 1/2) / count in the order of the scrambled column.
std::vector<double> slices(int count, int base, Mixer& mixer) {
    const auto digits = shuffledDigits(base, mixer);
    std::vector<double> column;
    for (int i = 1; i <= count; ++i)
        column.push_back(scrambledInverse(i, base, digits));
    std::vector<std::size_t> order(column.size());
    std::iota(order.begin(), order.end(), 0U);
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return column[a] < column[b]; });
    std::vector<double> midpoints(column.size());
    for (std::size_t rank = 0; rank < order.size(); ++rank)
        midpoints[order[rank]] = (static_cast<double>(rank) + .5) / count;
    return midpoints;
}

double normalQuantile(double p) {
    return std::numbers::sqrt2 * boost::math::erf_inv(2 * p - 1);
}

double drawn(const Prior& prior, double centre, double u) {
    switch (prior.law) {
    case Law::lognormal:
        return std::clamp(centre * std::exp(prior.spread * normalQuantile(u)), prior.low, prior.high);
    case Law::normal:
        return std::clamp(centre + prior.spread * normalQuantile(u), prior.low, prior.high);
    case Law::uniform:
        return prior.low + u * (prior.high - prior.low);
    case Law::tied:
        break;
    }
    return centre;
}

void tie(Parameters& p, const Prior& prior) {
    const double value = prior.factor * findParameter(prior.tiedTo)->in(p);
    findParameter(prior.parameter)->in(p) = std::clamp(value, prior.low, prior.high);
}

} // namespace

std::vector<Parameters> parameterDraws(const Parameters& centre, int count) {
    // Chosen among 4000 for the smallest greatest correlation between two parameters over 64 draws.
    constexpr std::uint64_t seed = 413;
    std::vector<Parameters> draws(static_cast<std::size_t>(std::max(0, count)), centre);
    const auto& priors = builtInPriors();
    const auto primes = firstPrimes(priors.size());
    Mixer mixer(seed);
    for (std::size_t k = 0; k < priors.size(); ++k) {
        if (priors[k].law == Law::tied)
            continue;
        const auto* parameter = findParameter(priors[k].parameter);
        const auto u = slices(count, primes[k], mixer);
        for (std::size_t i = 0; i < draws.size(); ++i)
            parameter->in(draws[i]) = drawn(priors[k], parameter->in(draws[i]), u[i]);
    }
    for (const Prior& prior : priors)
        if (prior.law == Law::tied)
            for (Parameters& p : draws)
                tie(p, prior);
    return draws;
}

} // namespace staveline::forward
