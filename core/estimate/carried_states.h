// SPDX-License-Identifier: GPL-3.0-or-later
// One vessel's chemistry through its history: the model carried from the opening over what went in and was measured.
#pragma once

#include "forward/predict.h"

#include <algorithm>
#include <map>
#include <vector>

namespace staveline::estimate {

/// Nothing is worked out twice, and looks may go back in time. Days are as in the ledger; `count` is how many of the
/// events have happened. Every look carries on from the last event, never from another look: a day is what it is,
/// whatever was asked before.
class CarriedStates {
public:
    using Beers = std::map<std::int64_t, brewing::RefillBeer>;

    /// `cellaring`: from the start, until an event tells another; its days do not count. `usual`: what a filling
    /// without a brew is.
    CarriedStates(std::vector<forward::BlendEvent> events, brewing::RefillBeer usual, culture::AgeConditions cellaring,
                  forward::Parameters parameters);

    /// Events up to the end of `day`, or until something goes in on it.
    [[nodiscard]] std::size_t countUntil(Day day, bool beforeFillings) const;
    [[nodiscard]] bool started() const { return !after_.empty(); }
    void start(Day on, const culture::VesselState& state) { after_ = {{on, state}}; }
    /// How many of the first `count` events are carried over already. Only when started().
    [[nodiscard]] std::size_t known(std::size_t count) const { return std::min(count, after_.size() - 1); }
    /// The vessel on `day`, not before the last of the first `count` events; `beers` has the brews of those not known.
    culture::VesselState on(Day day, std::size_t count, const Beers& beers);

    /// A brew can be given to an event until it is carried over.
    [[nodiscard]] std::vector<forward::BlendEvent>& events() { return events_; }
    [[nodiscard]] const brewing::RefillBeer& usual() const { return usual_; }
    /// At the start.
    [[nodiscard]] const forward::Parameters& parameters() const { return parameters_; }

private:
    struct Stood {
        Day on{};
        culture::VesselState state;
    };
    [[nodiscard]] forward::Parameters parametersAfter(std::size_t count) const;
    [[nodiscard]] culture::AgeConditions cellaringAfter(std::size_t count) const;
    [[nodiscard]] Stood carried(const Stood& from, std::size_t count, std::size_t events, Day day,
                                const Beers& beers) const;

    std::vector<forward::BlendEvent> events_;
    brewing::RefillBeer usual_;
    culture::AgeConditions cellaring_;
    forward::Parameters parameters_;
    std::vector<Stood> after_; ///< by how many events have happened, on the day of the last
    std::map<std::pair<Day, std::size_t>, culture::VesselState> asked_;
};

} // namespace staveline::estimate
