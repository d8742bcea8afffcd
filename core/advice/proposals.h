// SPDX-License-Identifier: GPL-3.0-or-later
// From a plan to a proposal a brewer can read: bands, contributions, reasons, limits, cautions.
#pragma once

#include "advice/contributions.h"
#include "advice/search.h"

namespace staveline::advice {

class ProposalWriter {
public:
    /// All arguments must outlive it.
    ProposalWriter(const AdviceInput& input, const Baseline& baseline, Forecaster& forecaster);

    [[nodiscard]] Proposal leaveAlone(const Scored& alone);
    [[nodiscard]] Proposal write(const Scored& plan, const std::vector<LeverMove>& chosen, const Proposal& alone);
    /// The usual recipe; `differs`: from leaving alone, lever by lever.
    [[nodiscard]] Proposal usual(const Scored& plan, const std::vector<LeverMove>& differs, const Proposal& alone);

private:
    void explain(Proposal& proposal, const Proposal& alone);
    /// Title, worth and words against leaving alone.
    [[nodiscard]] Proposal compared(Proposal proposal, const Proposal& alone);
    Proposal figures(const Scored& plan, const std::vector<LeverMove>& chosen);
    void addMoves(Proposal& proposal, const std::vector<LeverMove>& chosen);
    [[nodiscard]] Move moveOf(const LeverMove& move, const Setting& after) const;
    [[nodiscard]] PerDimension<int> cyclesTo(const Setting& setting);

    const AdviceInput& input_;
    const Baseline& baseline_;
    Forecaster& forecaster_;
    Stock stock_;
};

} // namespace staveline::advice
