// SPDX-License-Identifier: GPL-3.0-or-later
// What the adviser asks of the forward model. Tests put a model of their own in its place.
#pragma once

#include "advice/advise.h"
#include "quantity/constants.h"

#include <unordered_map>

namespace staveline::advice {

/// A plan kept up for so many draws counts as settled.
inline constexpr int settledCycles = static_cast<int>(constants::advice::settledCycles);

/// The draws that one setting leads to, under one set of parameters.
struct Trajectory {
    forward::Outcome thisDraw;
    std::vector<forward::Outcome> draws; ///< the next draw, then those after it if the setting is kept but for its aids
};

/// Whether the refill can be brewed with the kit, and what there is to say about it.
struct Sizing {
    bool converted = true; ///< the mash leaves no starch to speak of
    Litres over{0};        ///< what does not fit tun, kettle or fermenter; the largest of the three
    std::vector<Message> findings, cautions;
};

/// Parameter sets are numbered: 0 is the central one, 1..sets() are the draws for the bands.
class Forecaster {
public:
    virtual ~Forecaster() = default;
    [[nodiscard]] virtual std::size_t sets() const = 0;
    /// `cycles` draws after this one, at least 1. Fault: the recipe cannot be resolved.
    virtual Result<Trajectory> trajectory(const Setting& setting, std::size_t set, int cycles) = 0;
    /// If kept up for settledCycles. The setting is one that trajectory() has taken.
    virtual Scores settledScores(const Setting& setting, std::size_t set) = 0;
    virtual Sizing sizing(const Setting& setting) = 0;
};

/// Litres the refill brings.
[[nodiscard]] Litres refillOf(const AdviceInput& input, const Setting& setting);
/// Share of the refill in the vessel after it.
[[nodiscard]] Share shareOf(const AdviceInput& input, const Setting& setting);
/// Refuses at `path` more than the vessel holds at the draw, and, when it is drawn already, any other draw than that.
[[nodiscard]] Result<void> checkDraw(const AdviceInput& input, Litres draw, std::string path);

struct RecipeHash {
    std::size_t operator()(const brewing::Recipe& recipe) const;
};

/// The real one. Remembers every brew, remaining beer and trajectory, so asking twice costs nothing.
class ModelForecaster final : public Forecaster {
public:
    explicit ModelForecaster(const AdviceInput& input);

    [[nodiscard]] std::size_t sets() const override { return parameters_.size() - 1; }
    Result<Trajectory> trajectory(const Setting& setting, std::size_t set, int cycles) override;
    Scores settledScores(const Setting& setting, std::size_t set) override;
    Sizing sizing(const Setting& setting) override;

private:
    struct Known {
        brewing::BrewInput input;
        std::unordered_map<std::size_t, brewing::RefillBeer> beers; ///< by parameter set
    };
    struct SettingHash {
        std::size_t operator()(const Setting& setting) const;
    };

    Result<Known*> known(const brewing::Recipe& recipe);
    const brewing::RefillBeer& beer(Known& known, std::size_t set);
    const culture::VesselState& remainingBeer(Celsius temperature, std::size_t set);
    [[nodiscard]] forward::Plan planOf(const Setting& setting, std::size_t drawsOn) const;
    struct Beers {
        Known *first = nullptr, *later = nullptr; ///< one-cycle aids are in the first only
    };
    Result<Beers> beersOf(const Setting& setting);
    void extend(Trajectory& trajectory, const Setting& setting, const Beers& beers, std::size_t set, int cycles);

    const AdviceInput& input_;
    std::vector<forward::Parameters> parameters_; ///< central first
    std::unordered_map<brewing::Recipe, Known, RecipeHash> recipes_;
    std::vector<std::unordered_map<double, culture::VesselState>>
        remaining_; ///< by set and temperature, aged to this draw
    std::unordered_map<Setting, std::unordered_map<std::size_t, Trajectory>, SettingHash> trajectories_; ///< by set
};

} // namespace staveline::advice
