// SPDX-License-Identifier: GPL-3.0-or-later
// Synthetic vessels: what a cask would really do in the closed-loop study. Written apart from core/forward and sharing
// nothing with it, so that the adviser is judged by a world that it was not made for:
//   - levers act through bent and joined functions of their own (attenuation by mash and yeast, precursors that a rest
//     and a malt free together, gums that a rest destroys), none linear, each of a size that differs by vessel;
//   - three stocks (food for acid, precursor, gum) are filled by refills and run out into acid and phenol with lags of
//     the vessel's own; acid and hops hold the souring back;
//   - a palate turns acid, phenol and body into scores: a power, a logarithm, a saturating sum;
//   - every vessel tastes at a level of its own, which wanders; no two batches are alike.
// Signs are those of common practice. Nothing in it is fitted to the adviser.
#pragma once

#include "benchmarks/closed_loop/noise.h"
#include "quantity/dimension.h"

#include <array>
#include <vector>

namespace staveline::loop {

/// What is done for one refill.
struct Handling {
    double mash = 66;         ///< saccharification [C]
    double rest = 0;          ///< at 45 C [min]
    double bitterness = 10;   ///< [IBU]
    double precursor = 0;     ///< rye and kilned malts [% of grist]
    double glucan = 0;        ///< oats and raw barley [% of grist]
    double sugar = 0;         ///< [% of extract]
    double gravity = 12;      ///< [P]
    double mashPh = 5.5;      ///< [pH]
    double maltotriose = .75; ///< what the yeast takes of it [1]
    double dextrin = 0;       ///< likewise [1]
    double glycerol = 2;      ///< what the yeast makes of it [g/L]
    double clove = 0;         ///< 1: the yeast forms it
    double ramp = 0;          ///< 1: heated slowly to the saccharification rest
    double late = 0;          ///< 1: unmalted grain goes in after the rest
    double soured = 0;        ///< share of the refill, for this one only [%]
    double draw = 35;         ///< and refill [% of the vessel]
    double interval = 240;    ///< [d]

    static constexpr std::size_t count = 17;
    /// The four of the yeast first, what is for one refill only last.
    [[nodiscard]] std::array<double, count> values() const {
        return {maltotriose, dextrin, glycerol, clove, mash, rest, bitterness, precursor, glucan,
                sugar,       gravity, mashPh,   ramp,  late, draw, interval,   soured};
    }
    bool operator==(const Handling&) const = default;
};

/// What makes one vessel another than the next.
struct Character {
    double acidLag = 110, phenolLag = 90, gumLag = 900; ///< [d]
    double acidYield = .30;                             ///< acid from food [g/g]
    double hopHalf = 32;                                ///< bitterness that halves the souring [IBU]
    double mash = 1, yeast = 1, sugar = 1, rest = 1, precursor = 1, gum = 1, gravity = 1, dextrin = 1; ///< sizes
};

class TrueVessel {
public:
    /// `middle`: scores about which vessels lie on their usual recipe.
    TrueVessel(std::uint64_t seed, int number, const Scores& middle);

    void age(double days);
    /// Draws and fills again; with its batch and the wandering of that cycle, or as it is on the mean.
    void refill(const Handling& handling, int cycle);
    void refillOnTheMean(const Handling& handling);

    [[nodiscard]] Scores tastes() const;
    [[nodiscard]] double acid() const { return acid_; } ///< [g/L] as lactic, of this world
    [[nodiscard]] double acidOnUsual() const { return usualAcid_; }
    [[nodiscard]] const Scores& wanted() const { return wanted_; }
    [[nodiscard]] const Handling& usual() const { return usual_; }
    [[nodiscard]] const Noise& noise() const { return noise_; }
    /// How much sourer it tastes than its acid, part of its level [points].
    [[nodiscard]] double palate() const { return palate_; }
    [[nodiscard]] double levelAcidity() const { return level_[Dimension::acidity]; }

private:
    struct Batch {
        double food = 1, precursor = 1, gum = 0;
    };
    void drawCharacter();
    void drawLevels();
    void drawUsual();
    void drawTarget();
    void take(const Handling& handling, const Batch& batch);
    [[nodiscard]] double attenuation(const Handling& handling) const;
    [[nodiscard]] double precursorOf(const Handling& handling) const;
    [[nodiscard]] double gumOf(const Handling& handling) const;
    [[nodiscard]] double bodyOfParts() const;
    void settle(const Handling& handling);

    Noise noise_;
    Character is_;
    Handling usual_;
    Scores middle_, level_{}, wanted_{};
    double palate_ = 0;
    // in the vessel
    double food_ = 0, acid_ = 1, hops_ = 0, precursor_ = 1, phenol_ = 1, gum_ = 0, gravity_ = 12, glycerol_ = 2;
    // on the usual recipe
    double usualAcid_ = 1, usualPhenol_ = 1, usualBody_ = 0;
};

/// Scores at the coming `draws` draws, on the mean, when the vessel is `toDraw` days before the next and all refills
/// are handled alike (a soured one only once).
[[nodiscard]] std::vector<Scores> drawsAhead(TrueVessel vessel, double toDraw, Handling handling, int draws);

} // namespace staveline::loop
