// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of a study, each with its 95 % interval over vessels.
#pragma once

#include "benchmarks/closed_loop/study.h"

#include <functional>

namespace staveline::loop {

/// What one vessel adds to a figure: the figure is the sum of parts over the sum of wholes.
struct Part {
    double part = 0, whole = 1;
};
struct Figure {
    double value = 0, low = 0, high = 0;
    int vessels = 0;
};
/// The interval from a thousand draws of as many vessels, always the same ones.
[[nodiscard]] Figure figureOf(const std::vector<Part>& parts);

using Courses = std::vector<Course>;
[[nodiscard]] Figure overCourses(const Courses& courses, const std::function<Part(const Course&)>& part);
/// Vessel by vessel of two policies.
[[nodiscard]] Figure overPairs(const Courses& a, const Courses& b,
                               const std::function<Part(const Course&, const Course&)>& part);

/// Mean distance from the target over the dimensions, at a draw.
[[nodiscard]] double meanGap(const Course& course, std::size_t draw);

/// Prints what became of each policy, one JSON object a line. Policies that were not run are empty.
struct Outcome {
    Courses noChange, ruleOfThumb, program, oracle;
};
void print(const Cell& cell, const Outcome& outcome);

} // namespace staveline::loop
