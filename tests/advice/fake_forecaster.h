// SPDX-License-Identifier: GPL-3.0-or-later
// A forward model so simple that its best plan can be worked out by hand: every lever adds its effect, a third of which
// shows at each draw.
#pragma once

#include "advice/forecaster.h"
#include "advice/lever.h"

#include <cmath>
#include <map>

namespace staveline {

class FakeForecaster : public advice::Forecaster {
public:
    explicit FakeForecaster(const advice::AdviceInput& input) : input_(input) {}

    Scores base{{5, 5, 5}};
    std::map<std::string, Scores> perUnit;                         ///< numeric levers, settled, per unit of movement
    std::map<std::pair<std::string, std::string>, Scores> choices; ///< by lever and value
    std::pair<std::string, std::string> pair;                      ///< two levers that help each other ...
    Scores together;                                               ///< ... by this much a unit of each
    double spread = 0;                                             ///< of the effects over the draws, relative
    std::size_t draws = 0;
    double alcoholPerPlato = .5;
    std::set<std::string> tooLarge; ///< levers that do not fit the kit when moved up
    int asked = 0;                  ///< trajectories asked for

    [[nodiscard]] std::size_t sets() const override { return draws; }

    Result<advice::Trajectory> trajectory(const advice::Setting& setting, std::size_t set, int cycles) override {
        ++asked;
        advice::Trajectory trajectory;
        trajectory.thisDraw.scores = base;
        const double f = share();
        const auto kept = withoutAids(setting, input_.base, *input_.pantry);
        for (int h = 1; h <= cycles; ++h) {
            trajectory.draws.push_back(at(setting, set, 1 - std::pow(1 - f, h)));
            // An aid is in the first refill only: of what it does, the first refill's part is left.
            const double still = f * std::pow(1 - f, h - 1);
            const auto with = at(setting, set, still).scores, without = at(kept, set, still).scores;
            const auto lasting = at(kept, set, 1 - std::pow(1 - f, h)).scores;
            for (auto d : allDimensions)
                trajectory.draws.back().scores[d] = lasting[d] + with[d] - without[d];
        }
        return trajectory;
    }
    Scores settledScores(const advice::Setting& setting, std::size_t set) override {
        return at(withoutAids(setting, input_.base, *input_.pantry), set, 1).scores;
    }

    advice::Sizing sizing(const advice::Setting& setting) override {
        advice::Sizing sizing;
        for (const auto& lever : tooLarge)
            if (units(setting, lever) > 0)
                sizing.over = {5};
        return sizing;
    }

    [[nodiscard]] double share() const { return shareOf(input_, input_.base).of1; }

private:
    [[nodiscard]] advice::Stock stock() const { return {*input_.pantry, input_.unavailable}; }

    [[nodiscard]] double units(const advice::Setting& setting, const std::string& id) const {
        const auto& lever = *advice::findLever(id);
        const auto row = narrowedRow(lever, input_.base, input_);
        return (advice::number(lever.read(setting, stock())) - advice::number(lever.read(input_.base, stock()))) /
               row.movement;
    }

    [[nodiscard]] forward::Outcome at(const advice::Setting& setting, std::size_t set, double reached) const {
        forward::Outcome outcome;
        outcome.scores = base;
        const auto add = [&](const Scores& effect, double times) {
            for (auto d : allDimensions)
                outcome.scores[d] += reached * times * factor(set) * effect[d];
        };
        for (const auto& [id, effect] : perUnit)
            add(effect, units(setting, id));
        for (const auto& [choice, effect] : choices)
            if (advice::sameValue(advice::findLever(choice.first)->read(setting, stock()), choice.second))
                add(effect, 1);
        if (!pair.first.empty())
            add(together, units(setting, pair.first) * units(setting, pair.second));
        outcome.alcohol = {6 +
                           alcoholPerPlato * (setting.recipe.originalGravity - input_.base.recipe.originalGravity).p};
        outcome.bitterness = setting.recipe.bitterness;
        return outcome;
    }

    /// 1 for the centre; the draws lie evenly to both sides of it.
    [[nodiscard]] double factor(std::size_t set) const {
        if (set == 0)
            return 1;
        return 1 + spread * (2.0 * static_cast<double>(set - 1) / static_cast<double>(draws - 1) - 1);
    }

    const advice::AdviceInput& input_;
};

} // namespace staveline
