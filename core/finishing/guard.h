// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a closed package can burst: all CO2 that may ever come to be in it, at its warmest, against its rating. It
// never says yes without saying what that rests on and until when.
#pragma once

#include "finishing/package.h"
#include "finishing/proof.h"

#include <string>
#include <string_view>

namespace staveline::finishing {

/// CO2 that extract makes when it ferments from one gravity to another; none upwards. As much for each point as at
/// 1.000, half a volume: further up that is a little too much.
[[nodiscard]] Co2Volumes fromExtract(SpecificGravity now, SpecificGravity floor);

struct Pressures {
    Co2Volumes residual{0}, priming{0}, extract{0}, fruit{0};
    GaugePressure warmest{0}; ///< of all of it in the package at its warmest, without headspace
    [[nodiscard]] Co2Volumes all() const { return residual + priming + extract + fruit; }
};

enum class GuardAnswer {
    clear,     ///< holds, for as long as its ground does
    thin,      ///< holds, with less margin than a reading can be off
    refused,   ///< could pass what the package holds, or nobody knows
    overridden ///< refused, and the brewer takes it on
};
[[nodiscard]] std::string_view wordOf(GuardAnswer answer);

struct GuardVerdict {
    GuardAnswer answer = GuardAnswer::refused;
    std::optional<SpecificGravity> gravity; ///< none: this beer was not measured
    SpecificGravity floor;
    Pressures pressures;
    Celsius warmest{}; ///< at which it is reckoned: the warmest storage, or that in which bottles ferment
    std::optional<GaugePressure> limit; ///< by rating and make at its warmest, the lower; none: unknown
    std::optional<Co2Volumes> limitVolumes;
    Proof proof;
    std::optional<Day> until;      ///< of clear and thin
    std::vector<Message> refusals; ///< each with its remedy
    std::vector<Message> grounds;  ///< what the answer rests on
    std::string reason;            ///< of who overrides

    /// Below 0: too much. None: no limit, or no gravity and so no word on the extract.
    [[nodiscard]] std::optional<GaugePressure> margin() const;
    [[nodiscard]] std::optional<Co2Volumes> marginVolumes() const;
};

struct GuardQuestion {
    BeerKnown beer;
    Package package;
    Co2Volumes priming{0};                 ///< the most that its sugar can give
    std::optional<std::string> override{}; ///< the reason
};
/// Faults: of the package; at "/gravity" beer that still ferments (above 1.010); at "/override" a reason without words.
[[nodiscard]] Result<GuardVerdict> guard(const GuardQuestion& question);

} // namespace staveline::finishing
