// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/vessel_story.h"

#include "desk/lot_entries.h"

#include <algorithm>

namespace staveline::desk {

using estimate::AcidReading;
using estimate::Correction;
using estimate::Filling;
using estimate::Story;
using vessel::EntryKind;

namespace {

/// What a vessel that was taken over full has behind it.
double cyclesBefore(const VesselRecord& record) {
    const auto& openings = record.of<facts::OpeningFact>();
    if (openings.empty())
        return 0;
    const facts::OpeningFact& opening = openings.front().fact;
    const forward::OpeningFacts usual;
    return opening.yearsRunning.value_or(usual.yearsRunning) * daysPerYear /
           opening.usualInterval.value_or(usual.usualInterval).d;
}

/// On its day a sitting comes after what was measured, before anything is drawn.
bool before(const facts::SittingFact& sitting, const vessel::LedgerEntry& entry) {
    return sitting.sitting.on < entry.on ||
           (sitting.sitting.on == entry.on && entry.rank >= rankOf(EntryKind::drawOff));
}

/// In place: GCC 12 takes what a moved one leaves behind for uninitialised.
template <class What> void add(Story& story, Day on, What what) {
    estimate::StoryFact& fact = story.facts.emplace_back();
    fact.on = on;
    fact.what.emplace<What>(std::move(what));
}

/// A titration and a pH of one day's beer are one reading, however they were written down: beside a titration a pH is
/// there to be plausible, not to count again.
AcidReading* otherHalf(Story& story, Day on, const AcidReading& reading) {
    for (auto fact = story.facts.rbegin(); fact != story.facts.rend() && fact->on == on; ++fact) {
        if (std::holds_alternative<Filling>(fact->what))
            return nullptr;
        auto* known = std::get_if<AcidReading>(&fact->what);
        if (known && !(known->ta && reading.ta) && !(known->ph && reading.ph))
            return known;
    }
    return nullptr;
}

void addAcid(Story& story, Day on, const AcidReading& reading) {
    if (AcidReading* known = otherHalf(story, on, reading)) {
        known->ta = known->ta ? known->ta : reading.ta;
        known->ph = known->ph ? known->ph : reading.ph;
        return;
    }
    add(story, on, reading);
}

Scores difference(const Scores& a, const Scores& b) {
    Scores change;
    for (Dimension d : allDimensions)
        change[d] = a[d] - b[d];
    return change;
}

} // namespace

const Story& StoryTeller::storyOf(const VesselRecord& record) {
    if (const auto known = stories_.find(record.id); known != stories_.end())
        return known->second;
    Story story;
    story.cyclesBefore = cyclesBefore(record);
    for (const auto& stored : record.of<facts::TargetFact>())
        if (!stored.fact.target.setBy.empty())
            story.targetsSetBy.insert(stored.fact.target.setBy);
    std::size_t events = 0;
    auto sitting = record.of<facts::SittingFact>().begin();
    const auto last = record.of<facts::SittingFact>().end();
    if (const auto passages = chemistry_.passages(record))
        for (const Passage& passage : *passages) {
            for (; sitting != last && before(sitting->fact, passage.entry); ++sitting)
                addSitting(record, sitting->fact, events, story);
            addPassage(record, passage, story);
            events = passage.before + (passage.changesBeer() ? 1 : 0);
        }
    for (; sitting != last && sitting->fact.sitting.on <= today_; ++sitting)
        addSitting(record, sitting->fact, events, story);
    return stories_.emplace(record.id, std::move(story)).first->second;
}

/// Beer of a lot tastes apart from the model as that vessel's does that most of it came from.
facts::VesselName StoryTeller::sourceOf(const Passage& passage) {
    if (!passage.lot)
        return passage.from;
    const auto lots = cellar_.lots();
    return lots ? mostlyDrawnFrom(**lots, *passage.lot) : facts::VesselName();
}

void StoryTeller::addPassage(const VesselRecord& record, const Passage& passage, Story& story) {
    const Day on = passage.entry.on;
    const auto& scoring = forward::builtInParameters().score;
    if (passage.fills()) {
        Filling filling{passage.share, passage.entry.kind == EntryKind::topUp, {}};
        const facts::VesselName from = sourceOf(passage);
        if (const auto source = from.empty() ? nullptr : cellar_.vessel(from).value_or(nullptr))
            filling.from = source->id;
        add(story, on, filling);
        return;
    }
    if (passage.entry.kind == EntryKind::event)
        addEvent(record, passage.entry, story);
    if (!passage.measured)
        return;
    auto then = chemistry_.after(record, passage.before, on);
    if (!then)
        return;
    if (passage.corrects())
        if (const auto corrected = chemistry_.after(record, passage.before + 1, on)) {
            const Scores change = difference(scores(corrected->beer, scoring), scores(then->beer, scoring));
            add(story, on, Correction{change});
            then = corrected;
        }
    if (passage.measured->ta || passage.measured->ph)
        addAcid(story, on, {passage.measured->ta, passage.measured->ph, then->beer});
}

void StoryTeller::addEvent(const VesselRecord& record, const vessel::LedgerEntry& entry, Story& story) {
    for (const auto& stored : record.of<facts::EventFact>())
        if (stored.id == rowOf(entry.id) && changesTaste(stored.fact.what))
            add(story, entry.on, estimate::Event{stored.fact.what == facts::Happening::tasters});
}

void StoryTeller::addSitting(const VesselRecord& record, const facts::SittingFact& fact, std::size_t events,
                             Story& story) {
    const auto then = chemistry_.after(record, events, fact.sitting.on);
    if (!then)
        return;
    const Scores model = scores(then->beer, forward::builtInParameters().score);
    add(story, fact.sitting.on, estimate::tastingOf(fact.sitting, model, fact.learn));
}

estimate::OffsetsOf StoryTeller::others() {
    return [this](std::int64_t vessel, Day on) { return offsetsOf(vessel, on); };
}

PerDimension<estimate::Offset> StoryTeller::offsetsOf(std::int64_t vessel, Day on) {
    if (const auto known = offsets_.find({vessel, on}); known != offsets_.end())
        return known->second;
    PerDimension<estimate::Offset> offsets;
    if (const auto record = cellar_.vesselById(vessel)) {
        const Story& story = storyOf(**record);
        offsets = learnFrom(story, {on, true}, forward::builtInParameters().score, others()).offsets;
    }
    return offsets_.emplace(std::pair{vessel, on}, offsets).first->second;
}

} // namespace staveline::desk
