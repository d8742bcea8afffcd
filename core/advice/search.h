// SPDX-License-Identifier: GPL-3.0-or-later
// Every plan that moves at most two levers to steps a brewer would take: screened by adding up one-lever predictions,
// the best predicted again in full. More levers, where they are allowed, are added to the best pairs.
//
// The study takes levers that save too little back from the cheapest plan, at most twice; here the answer is the
// cheapest plan of which every lever earns its place. What is left after such a dropping is itself among the plans, so
// the answer is no dearer, and no lever in it is there for nothing.
#pragma once

#include "advice/baseline.h"
#include "advice/loss.h"
#include "advice/value.h"

#include <functional>
#include <map>
#include <optional>
#include <span>

namespace staveline::advice {

/// A lever that saves less is left out [squared bands].
inline constexpr double earnsItsPlace = constants::advice::earnsItsPlace;

[[nodiscard]] Fault cancelled();
/// Units of movement times cost; a choice moves one unit.
[[nodiscard]] double effortOf(const LeverMove& move, const LeverRow& row);

/// One lever at one other value, or two where the second only acts on what the first brings: that is one step too.
struct Option {
    std::vector<LeverMove> moves;
    double effort = 0; ///< units of movement times cost
    bool neverFirst = false;
    std::optional<std::size_t> host{};     ///< the option without the second move
    std::vector<Scores> change{};          ///< of the model's coming draws, against the start
    std::vector<double> alcohol{};         ///< the same [% vol]
    const std::vector<Carried>* carried{}; ///< where it changes the share of the refill
    std::vector<double> reach{};           ///< the same: by how much more of other changes the draws then show
};

/// Positions of options, rising.
using OptionSet = std::vector<std::size_t>;

/// A plan predicted in full.
struct Scored {
    OptionSet options;
    Setting setting;
    Trajectory trajectory;
    std::vector<Expected> draws; ///< anchored, with their variances
    Scores loss;
    double effort = 0;
    double cost = 0; ///< infinite: cannot be brewed, or leaves the target's ranges
};

class Search {
public:
    /// All arguments but the stop token must outlive it; `goal` is for this input.
    Search(const AdviceInput& input, const Baseline& baseline, Forecaster& forecaster, const Goal& goal,
           std::stop_token stop);

    /// Lists the plans and predicts every option. To be called first; a fault means cancelled.
    Result<void> survey();
    using Filter = std::function<bool(const OptionSet&)>;
    /// The cheapest admissible plan that passes, among single options and the best of the screening: `rescored` of them
    /// are predicted in full, and as many again, some rounds long, while a cheaper one may be among them; first of
    /// those that promise to be admissible, then of the others. Empty: there is none.
    Result<std::optional<Scored>> best(const Filter& passes, std::size_t rescored);
    /// The same with every plan predicted in full: what `best` is measured against.
    Result<std::optional<Scored>> exhaustive(const Filter& passes);
    /// Every lever earns its place, it can be tasted, it harms nothing outside its window, and it is cheaper than
    /// leaving alone.
    [[nodiscard]] bool admissible(const Scored& plan);
    /// Taking any of its levers back costs at least earnsItsPlace.
    [[nodiscard]] bool everyLeverEarns(const Scored& plan);
    /// No score that it leaves outside the window ends farther outside than leaving alone would bring it.
    [[nodiscard]] bool guarded(const Scored& plan);
    /// Leaving alone and the cheapest plans predicted so far, as far as a tasting could choose between them.
    [[nodiscard]] std::vector<Weighed> weighed(std::size_t most);

    [[nodiscard]] const Option& option(std::size_t at) const { return options_[at]; }
    [[nodiscard]] std::size_t plans() const { return plans_.size(); }
    [[nodiscard]] std::vector<LeverMove> moves(const OptionSet& options) const;
    [[nodiscard]] std::set<const Lever*> leversOf(const OptionSet& options) const;
    /// Fully predicted; remembered. The empty set is "leave it alone".
    const Scored& scored(const OptionSet& options);
    /// Any other setting that the forecaster takes, whether it is one to advise or not; not remembered.
    [[nodiscard]] Result<Scored> predicted(const Setting& setting, double effort);

private:
    struct Screened {
        OptionSet options;
        double cost = 0;        ///< loss of the added changes, and effort
        bool promising = false; ///< as far as the added changes tell it is admissible
    };

    [[nodiscard]] bool mayMove(const Lever& lever) const;
    void addOptions(const Lever& lever);
    void addDependents(std::size_t on);
    void takeChanges(Option& option, const Scored& single);
    [[nodiscard]] bool joinable(const OptionSet& options, std::size_t more) const;
    void addPairs();
    void extendBest(std::size_t size);
    void screen(std::size_t from);
    Result<void> predictOptions();
    [[nodiscard]] std::vector<Expected> added(const OptionSet& options) const;
    [[nodiscard]] Scores addedForGood(const OptionSet& options) const;
    [[nodiscard]] double screenedCost(const OptionSet& options) const;
    [[nodiscard]] bool promising(const Screened& plan);
    [[nodiscard]] bool screenedInside(const OptionSet& options) const;
    Scored predictInFull(const OptionSet& options);
    [[nodiscard]] bool takesEffect(const Setting& setting, const OptionSet& options) const;
    [[nodiscard]] bool insideRanges(const Trajectory& trajectory);
    [[nodiscard]] bool canBeTasted(const Scored& plan);
    [[nodiscard]] bool helpsSomewhere(const Scored& plan);
    [[nodiscard]] bool harmless(const Scores& with, const Scores& without) const;
    bool brewable(const Setting& setting);
    [[nodiscard]] double effort(const OptionSet& options) const;
    const std::vector<Carried>& carriedFor(Share share);
    Result<std::optional<Scored>> cheapest(const std::vector<OptionSet>& candidates);
    [[nodiscard]] double costToBeat(const std::optional<Scored>& found);
    Result<std::optional<Scored>> cheaper(std::span<const Screened> plans, std::size_t rescored,
                                          std::optional<Scored> found);
    [[nodiscard]] bool passesAll(const Scored& plan);
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
    std::map<OptionSet, bool> admissible_;
    std::map<double, std::vector<Carried>> carried_; ///< by share of the refill
};

} // namespace staveline::advice
