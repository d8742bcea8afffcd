// SPDX-License-Identifier: GPL-3.0-or-later
// Analysis of variance behind the panel's error components.
#pragma once

#include "tasting/sitting.h"

#include <vector>

namespace staveline::tasting {

struct OneWayAnova {
    double ssBetween = 0, ssWithin = 0;
    double dfBetween = 0, dfWithin = 0;
    [[nodiscard]] double msBetween() const { return ssBetween / dfBetween; }
    [[nodiscard]] double msWithin() const { return ssWithin / dfWithin; }
    [[nodiscard]] double f() const { return msBetween() / msWithin(); }
    [[nodiscard]] double rSquared() const { return ssBetween / (ssBetween + ssWithin); }
};
/// At least two groups, none empty, and more values than groups.
[[nodiscard]] OneWayAnova oneWayAnova(const std::vector<std::vector<double>>& groups);

/// The three components of a balanced table from its mean squares and sizes; negative ones become 0.
void setComponents(PanelAnova& table);

} // namespace staveline::tasting
