// SPDX-License-Identifier: GPL-3.0-or-later
// Who steers: nobody, a crude rule of thumb, or one who knows the truth. The program is in program.h.
#pragma once

#include "benchmarks/closed_loop/truth.h"
#include "tasting/sitting.h"
#include "tasting/verdict.h"

#include <optional>

namespace staveline::loop {

inline constexpr double sampledBefore = 30; ///< the draw [d]

/// One tasting, a month before a draw.
struct Occasion {
    int cycle = 0;
    const TrueVessel& vessel; ///< the truth: its target is open to all, the rest to the oracle only
    tasting::Sitting sitting; ///< its day is open
    std::optional<GramsPerLitre> ta{};
    Handling inUse; ///< of the last refill, without what was for that one only
};
using Estimated = PerDimension<tasting::Estimate>;
struct Decision {
    Handling handling;                          ///< of the coming refill
    std::optional<Estimated> before{}, after{}; ///< the tasting, where there is an estimate
    bool asked = false;                         ///< for one more tasting
};

class Steering {
public:
    virtual ~Steering() = default;
    virtual Decision decide(const Occasion& occasion) = 0;
};

class NoChange : public Steering {
public:
    Decision decide(const Occasion& occasion) override { return {occasion.inUse}; }
};

/// Dead band of half a point, one fixed step a dimension: what a brewer without a tool would do.
class RuleOfThumb : public Steering {
public:
    Decision decide(const Occasion& occasion) override;
};

/// Knows the vessel and looks four draws ahead; moves one or two levers a cycle, to brewable values.
class Oracle : public Steering {
public:
    Decision decide(const Occasion& occasion) override;
};

} // namespace staveline::loop
