// SPDX-License-Identifier: GPL-3.0-or-later
// What the vessels hold, what is due, and how each entry changed it.
#pragma once

#include "desk/age_steering.h"
#include "desk/ledger_note.h"
#include "desk/round.h"
#include "facts/facts.h"
#include "quantity/message.h"
#include "vessel/schedule.h"

#include <string>
#include <vector>

namespace staveline::desk {

struct Due {
    vessel::DueKind kind = vessel::DueKind::nothing;
    Day on{};
    int inDays = 0; ///< negative: overdue
    Message text;   ///< "taste in 3 days"
};

/// A work of the cycle that runs.
struct CycleWork {
    bool done = false;
    bool set = false; ///< its day is the brewer's own, not the interval's
};
struct CycleWorks {
    CycleWork sample, brew, draw;
};

struct VesselSummary {
    facts::VesselName name;
    facts::VesselFact facts;
    bool retired = false;
    bool opened = false; ///< a takeover or a first fill is recorded
    bool toFill = false; ///< empty: `dates` are those of a first fill, which goes in on the draw day
    vessel::LedgerState now;
    vessel::Schedule dates;
    CycleWorks works;
    Litres draw{0};                      ///< planned for the coming one
    Litres refill{0};                    ///< that it takes then, or at its first fill
    std::optional<AgeSteering> steering; ///< drawn at an age; none: by the interval
    Due due;
    std::optional<RoundState> round; ///< none: never looked at
    SeenAtVessel seen;               ///< what bears on the next decision
    std::optional<Due> look;         ///< the next round, where its day was said
    Message headline;                ///< due, or verdict, or fault: one line
    std::string fault;               ///< id of an unwanted fault of severity 2 or 3 in the last sitting
    std::vector<LedgerNote> findings;
    /// Days to the work or the look that comes first; negative: overdue. None: there is nothing to do.
    [[nodiscard]] std::optional<int> dueIn() const;
};

/// "foeder", "cask of used oak"
[[nodiscard]] std::string vesselWords(const facts::VesselFact& vessel);

struct LedgerLine {
    std::int64_t id = 0;
    std::string table; ///< "draw_off", to amend or remove it; "round" among the entries is one
    vessel::EntryKind kind = vessel::EntryKind::reading;
    Day on{};
    std::string at; ///< time of day; empty: not said
    Message text;   ///< "60.0 L drawn for Draw 14"
    facts::Measured measured;
    std::string note;
    Litres volumeAfter{0};
    Days meanAgeAfter{0};
    std::vector<Message> findings;
};
struct LedgerView {
    VesselSummary vessel;
    std::vector<LedgerLine> lines;           ///< oldest first
    std::vector<vessel::LedgerState> states; ///< after each line
};
/// What an entry would do, before it is written.
struct LedgerPreview {
    vessel::LedgerState before, after;
    std::vector<Message> findings; ///< new ones, at any entry
};

} // namespace staveline::desk
