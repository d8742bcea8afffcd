// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel's story teaches about its offset from the model: the filter walked over all its facts, each at its own
// date. Nothing is kept but what the facts say; the same facts teach the same.
#pragma once

#include "estimate/acid_evidence.h"
#include "estimate/panel.h"
#include "tasting/verdict.h"

#include <functional>

namespace staveline::estimate {

/// Something that does not fit; it steers nothing or is asked about.
struct Doubt {
    enum class Kind {
        acidRange,   ///< a titration or pH that no running vessel has
        acidBalance, ///< a titration and a pH that cannot both be true
        clash,       ///< a tasting and a titration of one week contradict each other
        surprise,    ///< a sitting far from what was expected: did something happen?
        table        ///< tasters of one sitting far from each other: their mean says little
    } kind = Kind::clash;
    Dimension dimension = Dimension::acidity;
    Day on{};
    std::optional<Day> other{}; ///< clash: the second of the two
    std::optional<GramsPerLitre> ta{};
    std::optional<Ph> ph{};
    tasting::Estimate expected{}; ///< surprise, clash: and what was seen
    double seen = 0;              ///< table: how far apart [points]
    bool operator==(const Doubt&) const = default;
};

/// A tasting and a titration contradict each other about it: neither counts.
[[nodiscard]] bool contradicted(const std::vector<Doubt>& doubts, Dimension dimension);

/// What one sitting was against what was expected of it, and what stood after it.
struct Lesson {
    Day on{};
    PerDimension<bool> learned{};                            ///< false: not tasted, set aside, or in doubt
    Scores model;                                            ///< on that day, with all later corrections of it
    PerDimension<std::optional<tasting::Estimate>> expected; ///< before it; sd without the sitting's own
    PerDimension<std::optional<tasting::Estimate>> tasted;   ///< sd as it was weighed
    PerDimension<std::optional<tasting::Estimate>> offset;   ///< after it; none: nothing was seen until then
};

/// What one titration or pH stood for.
struct AcidLesson {
    Day on{};
    std::optional<GramsPerLitre> ta{};
    std::optional<Ph> ph{};
    tasting::Estimate offset; ///< of the acidity it stands for from the model's score, the palate's part in it; with
                              ///< all later corrections of the model
};

/// The vessel as its story leaves it on one day.
struct Learned {
    PerDimension<Offset> offsets;    ///< the prior where nothing was seen
    PerDimension<int> sittings{};    ///< learned from, in each dimension
    int cycles = 0;                  ///< in which there was one
    Tasters tasters;                 ///< of the sittings learned from
    std::vector<Lesson> lessons;     ///< all sittings, by day
    std::vector<AcidLesson> acidity; ///< acid readings learned from, by day
    std::vector<Doubt> doubts;
};

/// The offsets of another vessel on a day, before anything went in; of one never looked at its prior.
using OffsetsOf = std::function<PerDimension<Offset>(std::int64_t vessel, Day on)>;

struct Until {
    Day on{};
    bool beforeFillings = false; ///< of that day: what goes in on it, and all after, does not count
};
[[nodiscard]] Learned learnFrom(const Story& story, const Until& until, const tasting::ScoreParameters& parameters,
                                const OffsetsOf& others, const EstimateConstants& by = {});
/// The same story before the present cycle was looked at: all its fillings and events, none of its readings.
[[nodiscard]] Story beforeThisCycle(Story story);

} // namespace staveline::estimate
