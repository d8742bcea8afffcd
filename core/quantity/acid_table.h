// SPDX-License-Identifier: GPL-3.0-or-later
// The acid-base terms that depend on pH alone, tabulated for the inner loop of the culture model.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

namespace staveline {

class AcidTable {
public:
    /// At one pH: hydrogen ions [mmol/L], charge of the background buffer [mEq/L] and its slope [mEq/(L pH)].
    struct Point {
        double hydrogen, charge, slope;
    };
    static constexpr double lowest = 2.0, highest = 7.0, spacing = .002;
    static constexpr double solvedLow = 2.2, solvedHigh = 6.5; ///< where Newton may go

    static const AcidTable& instance();

    /// pH outside the table, and NaN, are taken as its nearest end.
    [[nodiscard]] Point at(double ph) const {
        const double top = static_cast<double>(points_.size()) - 1.001;
        const double x = std::min(top, std::max(0.0, (ph - lowest) / spacing));
        const auto i = static_cast<std::size_t>(x);
        const double w = x - static_cast<double>(i);
        const Point &a = points_[i], &b = points_[i + 1];
        const double e = -2.302585092994046 * spacing * w; // at most 0.005: the cubic is exact to 1e-11
        return {a.hydrogen * (1 + e * (1 + e / 2 * (1 + e / 3))), a.charge + w * (b.charge - a.charge),
                a.slope + w * (b.slope - a.slope)};
    }

    /// One Newton step from `ph`, where `here` is at(ph); lactic and acetic in mmol/L.
    [[nodiscard]] static double step(double ph, const Point& here, double lacticMmol, double aceticMmol, double buffer,
                                     double sid) {
        const double h = here.hydrogen;
        const double lacticShare = lacticKa / (lacticKa + h), aceticShare = aceticKa / (aceticKa + h);
        const double lacticCharge = lacticMmol * lacticShare, aceticCharge = aceticMmol * aceticShare;
        const double excess = lacticCharge + aceticCharge + buffer * here.charge - h - sid;
        const double slope =
            2.302585092994046 * (lacticCharge * (1 - lacticShare) + aceticCharge * (1 - aceticShare) + h) +
            buffer * here.slope;
        const double move = std::min(.5, std::max(-.5, excess / slope));
        return std::min(solvedHigh, std::max(solvedLow, ph - move));
    }

    static constexpr double lacticKa = .13803842646028852;  ///< 10^-3.86 mol/L in mmol/L
    static constexpr double aceticKa = .017378008287493762; ///< 10^-4.76 mol/L in mmol/L

private:
    AcidTable();
    std::vector<Point> points_;
};

} // namespace staveline
