// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel would become if it were run in another way: mean age and spread in the long run, the way there, litres,
// and how an empty one is started. Nothing is written until it is adopted, as an edit of the vessel.
#pragma once

#include "facts/facts.h"
#include "quantity/fault.h"
#include "vessel/routine.h"
#include "vessel/schedule.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::desk {

/// What is tried; what is absent is as the vessel has it.
struct WhatIf {
    std::optional<Litres> capacity, draw;
    std::optional<Days> interval;
    std::optional<Days> wanted;    ///< mean age at the draw, in place of the interval
    std::optional<Days> refillAge; ///< mean, when it goes in; none: as the usual yeast is ready
    int inRow = 1;                 ///< vessels like it, each topped from the next younger
    static constexpr int mostInRow = 12;
};
/// A vessel in use, as it stands.
struct InUse {
    vessel::LedgerState now;
    vessel::ScheduleRule rule; ///< of its coming draw
    Days interval{0};          ///< as the vessel has it: another one tried takes the place of the rule's
};
/// As the trial begins.
struct Start {
    Day today{};
    Days refillAge{14};           ///< as it is usual: no refill is ready sooner after the one before
    Share filled{1};              ///< of its capacity, with each refill
    std::optional<InUse> inUse{}; ///< none: it is empty
};

struct FirstRefill {
    Day on{};
    Litres takes{0};
};

struct Prospect {
    facts::VesselFact vessel; ///< as it would be
    vessel::Routine routine;
    int inRow = 1;
    vessel::SettledAge settled; ///< of the oldest in a row
    int draws = 0;    ///< the first from which on it is within 5 % of that; by age, as old as wanted; of a row, 95 %
                      ///< of the way there
    Days toSettle{0}; ///< from `begins`
    Litres refill{0}, drawnPerYear{0};      ///< each time; a year
    Litres lostPerYear{0};                  ///< by evaporation, of all in the row
    std::optional<FirstRefill> firstRefill; ///< of a vessel in use, which need not be full; none: empty, or a row
    /// The way there, from today: of a row the age before each draw alone.
    std::vector<vessel::AgePoint> growth;
    Day begins{};             ///< from which `growth` counts: today, or the day of the fill or refill to come
    std::optional<Day> waits; ///< an empty vessel alone: first drawn then, it is as old as it settles from the start
    std::vector<Message> words;
    std::vector<Message> doubts; ///< what cannot be kept up
    bool tooYoung = false;       ///< wanted younger than refills are ready for: drawn as often as they are
};

/// Faults at "/capacity_l", "/draw_l", "/interval_d", "/wanted_age_d", "/refill_age_d" or "/in_row": out of range, more
/// drawn than it holds, smaller than what is in it, an age that no interval gives, or one shorter than a vessel can
/// have.
[[nodiscard]] Result<Prospect> prospectOf(const facts::VesselFact& vessel, const WhatIf& what, const Start& start);
/// What adopting it changes of the vessel; none: nothing. A refill's age and a row are no facts of a vessel.
[[nodiscard]] std::optional<facts::VesselEditFact> adopting(const facts::VesselFact& vessel, const Prospect& prospect);

/// One object, for machines.
[[nodiscard]] std::string toJson(const Prospect& prospect);

} // namespace staveline::desk
