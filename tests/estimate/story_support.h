// SPDX-License-Identifier: GPL-3.0-or-later
// Stories of vessels for tests: a model that always says the same, and tables of tasters.
#pragma once

#include "estimate/learning.h"
#include "support/catch.h"

#include <cmath>

namespace staveline::estimate {

inline constexpr Day storyStart = std::chrono::year{2020} / 1 / 1;
inline Day dayOf(int days) {
    return storyStart + std::chrono::days{days};
}

/// Beer of an old vessel: about 6 g/L at pH 3.3.
inline Composition sourBeer() {
    Composition beer;
    beer.lactic = 4.2, beer.acetic = .2, beer.sid = 32, beer.buffer = 1, beer.ethanol = 47;
    return beer;
}

/// All three dimensions scored alike, or each for itself.
inline tasting::Sitting scoredBy(const Tasters& tasters, const Scores& scores, Day on) {
    tasting::Sitting sitting;
    sitting.on = on;
    for (const auto& taster : tasters)
        for (const auto& attribute : tasting::builtInSheet().attributes)
            if (attribute.dimension) {
                const double score = scores[*attribute.dimension];
                const double said = attribute.reversed ? 10 - score : score;
                sitting.scores.push_back({taster, attribute.code, said, said});
            }
    return sitting;
}

inline const Tasters four = {"Rook", "Wren", "Teal", "Jay"};
inline constexpr auto acidity = Dimension::acidity, funk = Dimension::funk, body = Dimension::body;
inline constexpr Scores modelSays{{5, 6, 4}};

struct StoryWriter {
    Story story{.cyclesBefore = 6, .facts = {}, .targetsSetBy = {}};

    StoryWriter& taste(int day, const Scores& scores, const Tasters& tasters = four, bool learns = true) {
        story.facts.push_back({dayOf(day), tastingOf(scoredBy(tasters, scores, dayOf(day)), modelSays, learns)});
        return *this;
    }
    StoryWriter& taste(int day, double score, const Tasters& tasters = four) {
        return taste(day, Scores{{score, score, score}}, tasters);
    }
    StoryWriter& refill(int day, double share = .35) {
        story.facts.push_back({dayOf(day), Filling{{share}, false, {}}});
        return *this;
    }
    StoryWriter& topUp(int day, double share) {
        story.facts.push_back({dayOf(day), Filling{{share}, true, {}}});
        return *this;
    }
    StoryWriter& moved(int day, double share, std::int64_t from) {
        story.facts.push_back({dayOf(day), Filling{{share}, false, from}});
        return *this;
    }
    StoryWriter& titrate(int day, std::optional<double> ta, std::optional<double> ph = {}) {
        AcidReading reading{{}, {}, sourBeer()};
        if (ta)
            reading.ta = GramsPerLitre{*ta};
        if (ph)
            reading.ph = Ph{*ph};
        story.facts.push_back({dayOf(day), reading});
        return *this;
    }
    StoryWriter& event(int day, bool newTasters = false) {
        story.facts.push_back({dayOf(day), Event{newTasters}});
        return *this;
    }
    StoryWriter& corrected(int day, const Scores& change) {
        story.facts.push_back({dayOf(day), Correction{change}});
        return *this;
    }
    [[nodiscard]] Learned learned(int today, const OffsetsOf& others = {}) const {
        return learnFrom(story, {dayOf(today)}, {}, others);
    }
};

inline double now(const Learned& learned, Dimension d) {
    return learned.offsets[d].mean[Offset::now];
}

} // namespace staveline::estimate
