// SPDX-License-Identifier: GPL-3.0-or-later
// Adaptive integration of small, mildly stiff systems: Bogacki-Shampine 3(2) with its last rate reused.
// No allocation; the same input gives the same steps and the same bits.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace staveline::brewing {

/// Advances `y` by `duration`. `rates(t, y)` gives dy/dt with t counted from the start of the call; `size(y, error)`
/// says how much the error of one step matters, `tolerance` how much is allowed.
template <std::size_t N, class Rates, class Size>
void integrate(std::array<double, N>& y, double duration, double tolerance, Rates&& rates, Size&& size) {
    using State = std::array<double, N>;
    constexpr double safety = .9, slowest = .2, fastest = 5;
    double t = 0, step = duration / 64;
    State k1 = rates(t, y);
    while (t < duration) {
        const bool last = t + step * (1 + 1e-9) >= duration;
        const double h = last ? duration - t : step;
        State z, error;
        for (std::size_t i = 0; i < N; ++i)
            z[i] = y[i] + h / 2 * k1[i];
        const State k2 = rates(t + h / 2, z);
        for (std::size_t i = 0; i < N; ++i)
            z[i] = y[i] + 3 * h / 4 * k2[i];
        const State k3 = rates(t + 3 * h / 4, z);
        for (std::size_t i = 0; i < N; ++i)
            z[i] = y[i] + h / 9 * (2 * k1[i] + 3 * k2[i] + 4 * k3[i]);
        const State k4 = rates(t + h, z);
        for (std::size_t i = 0; i < N; ++i)
            error[i] = h * (-5. / 72 * k1[i] + k2[i] / 12 + k3[i] / 9 - k4[i] / 8);
        const double off = size(z, error);
        if (off <= tolerance) {
            y = z;
            k1 = k4;
            t = last ? duration : t + h;
        }
        step = h * std::clamp(safety * std::cbrt(tolerance / std::max(off, 1e-300)), slowest, fastest);
    }
}

} // namespace staveline::brewing
