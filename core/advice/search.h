// SPDX-License-Identifier: GPL-3.0-or-later
// Every plan that moves at most two levers to brewable steps: screened by adding up one-lever predictions, the best
// predicted again in full.
#pragma once

#include "advice/baseline.h"
#include "advice/goal.h"
#include "quantity/constants.h"

#include <functional>
#include <map>
#include <optional>

namespace staveline::advice {

/// Parameter draws that tell how uncertain a lever is; a part of those for the bands is enough for a variance.
inline constexpr auto lossDraws = static_cast<std::size_t>(constants::advice::lossDraws);

[[nodiscard]] Fault cancelled();

/// One lever at one other value.
struct Option {
    LeverMove move;
    double effort = 0; ///< units of movement times cost
    bool neverFirst = false;
    bool alone = true;             ///< can be moved by itself; false: only acts on what another option brings
    std::vector<Scores> change{};  ///< of the coming draws, against the start
    std::vector<double> alcohol{}; ///< the same [% vol]
};

/// Positions of one or two options.
using OptionSet = std::vector<std::size_t>;

/// A plan predicted in full.
struct Scored {
    OptionSet options;
    Setting setting;
    Trajectory trajectory;
    double effort = 0;
    double cost = 0; ///< infinite: cannot be brewed, or leaves the target's ranges
};

class Search {
public:
    /// All arguments but the stop token must outlive it; `goal` is for this baseline.
    Search(const AdviceInput& input, const Baseline& baseline, Forecaster& forecaster, const Goal& goal,
           std::stop_token stop);

    /// Lists the plans and predicts every option. To be called first; a fault means cancelled.
    Result<void> survey();
    using Filter = std::function<bool(const OptionSet&)>;
    /// The cheapest plan that passes; the `rescored` best of the screening are predicted in full. Empty: none passes.
    Result<std::optional<Scored>> best(const Filter& passes, std::size_t rescored);
    /// The same with every plan predicted in full: what `best` is measured against.
    Result<std::optional<Scored>> exhaustive(const Filter& passes);
    /// The cheapest one-lever plan of each lever, in the order of the levers.
    Result<std::vector<Scored>> bestOfEachLever();

    [[nodiscard]] const Option& option(std::size_t at) const { return options_[at]; }
    [[nodiscard]] std::size_t plans() const { return plans_.size(); }
    [[nodiscard]] std::vector<LeverMove> moves(const OptionSet& options) const;
    /// Fully predicted; remembered. The empty set is "leave it alone".
    const Scored& scored(const OptionSet& options);

private:
    struct Screened {
        OptionSet options;
        double cost = 0; ///< gaps of the added changes, and effort
    };

    void addOptions(const Lever& lever, const Setting& after, bool alone);
    void addDependents(std::size_t on);
    void addPairs();
    Result<void> predictOptions();
    [[nodiscard]] double screenedCost(const OptionSet& options) const;
    [[nodiscard]] bool screenedInside(const OptionSet& options) const;
    Scored predictInFull(const OptionSet& options);
    [[nodiscard]] bool takesEffect(const Setting& setting, const OptionSet& options) const;
    [[nodiscard]] bool insideRanges(const Trajectory& trajectory);
    bool brewable(const Setting& setting);
    double loss(const OptionSet& options);
    const std::vector<Scores>& effectInDraws(std::size_t reference);
    [[nodiscard]] std::size_t referenceOf(std::size_t option) const;
    [[nodiscard]] double effort(const OptionSet& options) const;
    Result<std::optional<Scored>> cheapest(const std::vector<OptionSet>& candidates);
    [[nodiscard]] Result<void> going() const;

    const AdviceInput& input_;
    const Baseline& baseline_;
    Forecaster& forecaster_;
    const Goal& goal_;
    std::stop_token stop_;
    Stock stock_;
    std::vector<Option> options_;
    std::vector<Screened> plans_; ///< cheapest first
    std::optional<Sizing> aloneSizing_;
    std::map<OptionSet, Scored> scored_;
    std::map<std::size_t, std::vector<Scores>> effects_; ///< by reference option: one entry a parameter draw
};

} // namespace staveline::advice
