// SPDX-License-Identifier: GPL-3.0-or-later
// Outlines of the vessels in a unit box, and how high liquid stands in the drawing: a fifth of the beer is a fifth of
// the drawn surface.
#pragma once

#include "facts/words.h"

#include <QPainterPath>

#include <vector>

namespace staveline::ui {

class VesselShapeDrawing {
public:
    [[nodiscard]] static const VesselShapeDrawing& of(facts::VesselForm shape);

    [[nodiscard]] const QPainterPath& outline() const { return outline_; }
    /// Hoops, seams, legs and bung: lines only.
    [[nodiscard]] const QPainterPath& details() const { return details_; }
    [[nodiscard]] double widthToHeight() const { return widthToHeight_; }
    /// Height of the liquid's surface in the unit box, 1 the bottom .. 0 the top, for a fill of 0..1.
    [[nodiscard]] double surface(double fill) const;

private:
    VesselShapeDrawing(const QPainterPath& outline, const QPainterPath& details, double widthToHeight);

    QPainterPath outline_, details_;
    double widthToHeight_;
    std::vector<double> filledBelow_; ///< share of the surface below each row, from the bottom up
};

} // namespace staveline::ui
