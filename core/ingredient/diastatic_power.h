// SPDX-License-Identifier: GPL-3.0-or-later
// Scales of enzyme power on malt certificates: Windisch-Kolbach [WK] and Lintner; WK = 3.5 Lintner - 16.
#pragma once

namespace staveline::ingredient {

[[nodiscard]] constexpr double windischKolbach(double lintner) {
    return 3.5 * lintner - 16;
}
[[nodiscard]] constexpr double lintner(double windischKolbach) {
    return (windischKolbach + 16) / 3.5;
}

} // namespace staveline::ingredient
