// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace staveline::estimate {

[[nodiscard]] constexpr double square(double x) {
    return x * x;
}

} // namespace staveline::estimate
