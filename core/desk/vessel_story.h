// SPDX-License-Identifier: GPL-3.0-or-later
// From recorded facts to the story that the estimate learns from, of one vessel and of those whose beer it took.
#pragma once

#include "desk/chemistry.h"
#include "estimate/learning.h"

namespace staveline::desk {

/// For one question asked on one day; nothing is worked out twice.
class StoryTeller {
public:
    /// Both must outlive it.
    StoryTeller(Cellar& cellar, Chemistry& chemistry, Day today)
        : cellar_(cellar), chemistry_(chemistry), today_(today) {}

    /// A vessel without anything in it has an empty story.
    const estimate::Story& storyOf(const VesselRecord& record);
    /// What other vessels' beer brings along; stands as long as this.
    [[nodiscard]] estimate::OffsetsOf others();

private:
    PerDimension<estimate::Offset> offsetsOf(std::int64_t vessel, Day on);
    facts::VesselName sourceOf(const Passage& passage);
    void addPassage(const VesselRecord& record, const Passage& passage, estimate::Story& story);
    static void addEvent(const VesselRecord& record, const vessel::LedgerEntry& entry, estimate::Story& story);
    void addSitting(const VesselRecord& record, const facts::SittingFact& fact, std::size_t events,
                    estimate::Story& story);

    Cellar& cellar_;
    Chemistry& chemistry_;
    Day today_;
    std::map<book::RowId, estimate::Story> stories_;
    std::map<std::pair<std::int64_t, Day>, PerDimension<estimate::Offset>> offsets_;
};

} // namespace staveline::desk
