// SPDX-License-Identifier: GPL-3.0-or-later
// Benchmarks print one JSON object a line; peers and ratios come from the same run.
#pragma once

#include <algorithm>
#include <chrono>
#include <fmt/core.h>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::bench {

/// Milliseconds of each of `repeats` calls of `work`, after one that does not count; sorted.
template <class Work> std::vector<double> timesMs(int repeats, Work&& work) {
    work();
    std::vector<double> times;
    for (int i = 0; i < repeats; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        times.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    }
    std::sort(times.begin(), times.end());
    return times;
}

/// The q-quantile (0..1) of sorted values.
inline double quantile(const std::vector<double>& sorted, double q) {
    return sorted.empty() ? 0.0 : sorted[static_cast<std::size_t>(q * static_cast<double>(sorted.size() - 1))];
}

inline void print(std::string_view name, double value, std::string_view unit, std::size_t n, std::string extra = {}) {
    fmt::print("{{\"bench\": \"{}\", \"value\": {:.6g}, \"unit\": \"{}\", \"n\": {}{}}}\n", name, value, unit, n,
               extra.empty() ? extra : ", " + extra);
}

} // namespace staveline::bench
