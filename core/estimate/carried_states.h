// SPDX-License-Identifier: GPL-3.0-or-later
// One vessel's chemistry through its history: the model carried from the opening over what went in and was measured.
#pragma once

#include "forward/predict.h"

#include <map>
#include <vector>

namespace staveline::estimate {

/// Nothing is worked out twice, and looks may go back in time. Days are as in the ledger; `count` is how many of the
/// events have happened.
class CarriedStates {
public:
    struct From {
        Day on{};
        std::size_t count = 0;
        culture::VesselState state;
    };
    using Beers = std::map<std::int64_t, brewing::RefillBeer>;

    /// `cellaring`: between the events; its days do not count. `usual`: what a filling without a brew is.
    CarriedStates(std::vector<forward::BlendEvent> events, brewing::RefillBeer usual, culture::AgeConditions cellaring,
                  forward::Parameters parameters);

    /// Events up to the end of `day`, or until something goes in on it.
    [[nodiscard]] std::size_t countUntil(Day day, bool beforeFillings) const;
    [[nodiscard]] bool started() const { return !known_.empty(); }
    void start(Day on, const culture::VesselState& state) { known_[{on, 0}] = state; }
    /// The nearest state known already. Only when started().
    [[nodiscard]] From nearest(Day day, std::size_t count) const;
    /// Carries `from` on; `beers` has the brews of the events between.
    culture::VesselState carry(const From& from, Day day, std::size_t count, const Beers& beers);

    /// A brew can be given to an event until it is carried over.
    [[nodiscard]] std::vector<forward::BlendEvent>& events() { return events_; }
    [[nodiscard]] const brewing::RefillBeer& usual() const { return usual_; }
    /// At the start.
    [[nodiscard]] const forward::Parameters& parameters() const { return parameters_; }

private:
    [[nodiscard]] forward::Parameters parametersAfter(std::size_t count) const;

    std::vector<forward::BlendEvent> events_;
    brewing::RefillBeer usual_;
    culture::AgeConditions cellaring_;
    forward::Parameters parameters_;
    std::map<std::pair<Day, std::size_t>, culture::VesselState> known_;
};

} // namespace staveline::estimate
