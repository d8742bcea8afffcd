// SPDX-License-Identifier: GPL-3.0-or-later
// Noise by name: the same vessel, cycle and kind give the same number whatever was asked before, so that policies meet
// the same vessels, batches and tasters, on every machine.
#pragma once

#include <cmath>
#include <cstdint>
#include <initializer_list>
#include <numbers>

namespace staveline::loop {

enum class Stream : std::uint64_t {
    character,
    usual,
    target,
    start,
    batch,
    drift,
    taster,
    glass,
    step,
    titration,
    redraw
};

class Noise {
public:
    Noise(std::uint64_t seed, int vessel) : key_(mixed(mixed(seed) ^ static_cast<std::uint64_t>(vessel))) {}

    /// 0..1, never 0.
    [[nodiscard]] double uniform(Stream stream, std::initializer_list<int> which) const {
        std::uint64_t key = mixed(key_ ^ static_cast<std::uint64_t>(stream));
        for (int i : which)
            key = mixed(key ^ static_cast<std::uint64_t>(i + 1));
        return (static_cast<double>(key >> 11) + .5) / 9007199254740992.0;
    }
    [[nodiscard]] double between(Stream stream, std::initializer_list<int> which, double low, double high) const {
        return low + (high - low) * uniform(stream, which);
    }
    /// Mean 0, sd 1 (Box and Muller).
    [[nodiscard]] double normal(Stream stream, std::initializer_list<int> which) const {
        const double radius = std::sqrt(-2 * std::log(uniform(stream, which)));
        const Noise other(key_, -7);
        return radius * std::cos(2 * std::numbers::pi * other.uniform(stream, which));
    }
    /// Mean 1.
    [[nodiscard]] double logNormal(Stream stream, std::initializer_list<int> which, double sd) const {
        return std::exp(sd * normal(stream, which) - sd * sd / 2);
    }

private:
    static std::uint64_t mixed(std::uint64_t x) {
        x += 0x9e3779b97f4a7c15ULL;
        x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9ULL;
        x = (x ^ (x >> 27)) * 0x94d049bb133111ebULL;
        return x ^ (x >> 31);
    }

    std::uint64_t key_;
};

} // namespace staveline::loop
