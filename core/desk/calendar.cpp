// SPDX-License-Identifier: GPL-3.0-or-later
// The work to come as entries of a calendar: each job of the running cycle that is not done, the next tasting and draw,
// for each vessel what is due first, and what lots wait for.
#include "sheet/calendar.h"
#include "desk/inside.h"
#include "desk/lots.h"
#include "desk/round.h"
#include "desk/vessels_asked.h"

#include <algorithm>
#include <fmt/core.h>
#include <map>

namespace staveline::desk {
namespace {

using sheet::CalendarItem;
using vessel::DueKind;

struct Job {
    DueKind kind;
    const char* key; ///< of its title
    Day on;
    std::string cycle;         ///< the refills the vessel had before it; a first fill comes before all cycles
    std::optional<Days> age{}; ///< of the beer, where it is drawn at one
};

std::vector<Job> jobsOf(const CurrentVessel& vessel) {
    const auto& dates = vessel.dates;
    const vessel::LedgerState& now = vessel.now();
    const std::string cycle = (vessel.toFill ? "fill-" : "") + std::to_string(now.cycle);
    const std::string next = std::to_string(now.cycle + (now.opened ? 1 : 0));
    const auto steered = steeringOf(vessel);
    const char* drawKey = vessel.toFill  ? "desk.calendar.fill"
                          : vessel.drawn ? "desk.calendar.refill"
                          : steered      ? "desk.calendar.draw_aged"
                                         : "desk.calendar.draw";
    std::vector<Job> jobs;
    if (vessel.due.kind == DueKind::taste)
        jobs.push_back({DueKind::taste, "desk.calendar.taste", dates.sample, cycle});
    if (!vessel.brewed)
        jobs.push_back(
            {DueKind::brew, vessel.toFill ? "desk.calendar.brew_first" : "desk.calendar.brew", dates.brew, cycle});
    jobs.push_back(
        {DueKind::draw, drawKey, dates.draw, cycle, steered ? std::optional(steered->atDraw) : std::nullopt});
    jobs.push_back({DueKind::taste, "desk.calendar.taste", dates.nextSample, next});
    if (steered)
        jobs.push_back({DueKind::draw, "desk.calendar.draw_next_aged", dates.nextDraw, next, steered->atNextDraw});
    else
        jobs.push_back({DueKind::draw, "desk.calendar.draw_next", dates.nextDraw, next});
    return jobs;
}

/// A refill stands under the draw it follows.
const Job& firstOf(const std::vector<Job>& jobs, DueKind due) {
    const DueKind wanted = due == DueKind::refill ? DueKind::draw : due;
    return *std::find_if(jobs.begin(), jobs.end(), [&](const Job& job) { return job.kind == wanted; });
}

const char* wordOf(DueKind kind) {
    switch (kind) {
    case DueKind::taste:
        return "taste";
    case DueKind::brew:
        return "brew";
    case DueKind::draw:
    case DueKind::refill:
    case DueKind::nothing:
        break;
    }
    return "draw";
}

/// Stable while the day moves; a renamed vessel keeps its entries. What is due first is a task of its own id: done, it
/// is ticked off in the calendar and the next job comes as another.
std::string idOf(const std::string& book, const CurrentVessel& vessel, const std::string& what) {
    return "staveline-" + book + "-vessel-" + std::to_string(vessel.record.id) + "-" + what;
}

/// The next round, where its day was said; another look is another entry.
void addLook(std::vector<CalendarItem>& items, const CurrentVessel& vessel, const std::string& book) {
    const auto round = roundOf(vessel.record, vessel.today);
    if (vessel.record.facts.retired || !round || !round->last.nextLook)
        return;
    const Message title = say("desk.calendar.look").with("vessel", vessel.record.facts.name);
    items.push_back(
        {CalendarItem::Kind::event, idOf(book, vessel, "look-" + isoDay(round->last.on)), round->next, render(title)});
}

void addVessel(std::vector<CalendarItem>& items, const CurrentVessel& vessel, const std::string& book,
               const DisplayUnits& units) {
    if (vessel.due.kind == DueKind::nothing)
        return;
    const auto add = [&](CalendarItem::Kind kind, const Job& job, const std::string& what, Day on) {
        const Message title = say(job.key)
                                  .with("vessel", vessel.record.facts.name)
                                  .with("draw", vessel.inUse.draw)
                                  .with("refill", refillWanted(vessel.inUse, vessel))
                                  .with("age", Age{job.age.value_or(Days{0}).d});
        const std::string id = idOf(book, vessel, what + "-" + job.cycle + "-" + wordOf(job.kind));
        items.push_back({kind, id, on, render(title, units)});
    };
    const auto jobs = jobsOf(vessel);
    for (const auto& job : jobs)
        add(CalendarItem::Kind::event, job, "cycle", job.on);
    add(CalendarItem::Kind::task, firstOf(jobs, vessel.due.kind), "due", vessel.due.on);
}

/// A lot by the first that is on record of it, whatever it is called; what is overdue stands under today.
void addLot(std::vector<CalendarItem>& items, const LotView& lot, const std::string& book, Day today) {
    const LotLine& first = lot.lines.front();
    std::map<LotWork, int> told; // of several fillings each waits to be opened
    for (const LotWait& wait : lot.waits) {
        const std::string work(wordOf(wait.work));
        const int count = ++told[wait.work];
        const std::string which = count > 1 ? fmt::format("-{}", count) : std::string();
        const auto id = fmt::format("staveline-{}-{}-{}-{}{}", book, first.table, first.id, work, which);
        items.push_back({CalendarItem::Kind::event, id, std::max(wait.on, today),
                         render(say("desk.calendar.lot." + work).with("lot", lot.name))});
    }
}

} // namespace

Result<std::string> Desk::calendar(const facts::VesselName& name, const DisplayUnits& units) const {
    const std::string book = inside_->book->identity();
    const auto names = vesselsAsked(*this, name);
    if (!names)
        return fail(names.error());
    std::vector<CalendarItem> items;
    for (const auto& each : *names) {
        const auto vessel = inside_->current(each);
        if (!vessel)
            return fail(vessel.error());
        addVessel(items, **vessel, book, units);
        addLook(items, **vessel, book);
    }
    if (name.empty()) {
        const auto lots = lotsWaiting();
        if (!lots)
            return fail(lots.error());
        for (const LotView& lot : *lots)
            addLot(items, lot, book, today());
    }
    return sheet::writeCalendar(items, today(), revision());
}

} // namespace staveline::desk
