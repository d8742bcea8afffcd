// SPDX-License-Identifier: GPL-3.0-or-later
// Vessels steered for some cycles by one policy under one set of circumstances, and what came of it.
#pragma once

#include "benchmarks/closed_loop/program.h"
#include "benchmarks/closed_loop/tasters.h"

#include <string>
#include <vector>

namespace staveline::loop {

enum class Policy { noChange, ruleOfThumb, program, oracle };

/// Circumstances.
struct Cell {
    Table table;
    bool titration = false; ///< at every tasting
    Freedom freedom;
    [[nodiscard]] std::string name() const;
};
struct Extent {
    int vessels = 24, cycles = 12;
    std::uint64_t seed = 1;
    unsigned workers = 2;
};

/// An estimate against the truth of its day.
struct Look {
    double error = 0, sd = 1;
};
/// One vessel's way. Draw 0 is the one before anything that was decided shows.
struct Course {
    std::vector<Scores> gaps;                      ///< wanted - true, at draws 0..cycles
    std::vector<PerDimension<Look>> before, after; ///< the tastings 0..cycles; empty without an estimate
    std::vector<int> moved;                        ///< levers, at decisions 1..cycles
    std::vector<bool> takenBack;                   ///< some lever against its last move
    std::vector<bool> asked, soured;               ///< one more tasting asked for; refill soured beforehand
    int far = 0, wrong = 0; ///< true gaps above a point at a decision; of those, it was made wider by the plan
};
[[nodiscard]] Course steered(const Cell& cell, Policy policy, const Extent& extent, int vessel);
/// One vessel by one hand; `usualTa`: of the beer it was run on, if titrations are taken.
[[nodiscard]] Course steered(const Cell& cell, Steering& steering, TrueVessel& vessel, int cycles, double usualTa = 0);

/// All vessels, several at a time; in their order.
[[nodiscard]] std::vector<Course> steeredAll(const Cell& cell, Policy policy, const Extent& extent);

/// How far the plan moves a score in the truth, against going on as before: the farther of next and fourth draw
/// against the gap, 0 if neither is [points].
[[nodiscard]] double harm(const TrueVessel& vessel, const Handling& before, const Handling& plan, Dimension dimension);

} // namespace staveline::loop
