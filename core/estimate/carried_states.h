// SPDX-License-Identifier: GPL-3.0-or-later
// One vessel's chemistry through its history: the model carried from the opening over what went in and was measured.
#pragma once

#include "forward/predict.h"

#include <map>
#include <vector>

namespace staveline {

/// Nothing is worked out twice, and looks may go back in time. Days are as in the ledger; `count` is how many of the
/// events have happened.
class CarriedStates {
public:
    struct From {
        Day on{};
        std::size_t count = 0;
        VesselState state;
    };
    using Beers = std::map<std::int64_t, RefillBeer>;

    /// `cellaring`: between the events; its days do not count. `usual`: what a filling without a brew is.
    CarriedStates(std::vector<BlendEvent> events, RefillBeer usual, AgeConditions cellaring, Parameters parameters);

    /// Events up to the end of `day`, or until something goes in on it.
    [[nodiscard]] std::size_t countUntil(Day day, bool beforeFillings) const;
    [[nodiscard]] bool started() const { return !known_.empty(); }
    void start(Day on, const VesselState& state) { known_[{on, 0}] = state; }
    /// The nearest state known already. Only when started().
    [[nodiscard]] From nearest(Day day, std::size_t count) const;
    /// Carries `from` on; `beers` has the brews of the events between.
    VesselState carry(const From& from, Day day, std::size_t count, const Beers& beers);

    /// A brew can be given to an event until it is carried over.
    [[nodiscard]] std::vector<BlendEvent>& events() { return events_; }
    [[nodiscard]] const RefillBeer& usual() const { return usual_; }
    [[nodiscard]] const Parameters& parameters() const { return parameters_; }

private:
    std::vector<BlendEvent> events_;
    RefillBeer usual_;
    AgeConditions cellaring_;
    Parameters parameters_;
    std::map<std::pair<Day, std::size_t>, VesselState> known_;
};

} // namespace staveline
