// SPDX-License-Identifier: GPL-3.0-or-later
// The work to come as entries of a calendar: each job of the running cycle that is not done, the next tasting and draw,
// and for each vessel what is due first.
#include "sheet/calendar.h"
#include "desk/inside.h"

namespace staveline::desk {
namespace {

using sheet::CalendarItem;
using vessel::DueKind;

struct Job {
    DueKind kind;
    const char* key; ///< of its title
    Day on;
    int cycle; ///< refills the vessel had before it
};

std::vector<Job> jobsOf(const CurrentVessel& vessel) {
    const auto& dates = vessel.dates;
    const int cycle = vessel.now().cycle;
    const bool drawn = vessel.due.kind == DueKind::refill;
    std::vector<Job> jobs;
    if (vessel.due.kind == DueKind::taste)
        jobs.push_back({DueKind::taste, "desk.calendar.taste", dates.sample, cycle});
    if (!vessel.brewed && !drawn)
        jobs.push_back({DueKind::brew, "desk.calendar.brew", dates.brew, cycle});
    jobs.push_back({DueKind::draw, drawn ? "desk.calendar.refill" : "desk.calendar.draw", dates.draw, cycle});
    jobs.push_back({DueKind::taste, "desk.calendar.taste", dates.nextSample, cycle + 1});
    jobs.push_back({DueKind::draw, "desk.calendar.draw_next", dates.nextDraw, cycle + 1});
    return jobs;
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

void addVessel(std::vector<CalendarItem>& items, const CurrentVessel& vessel, const std::string& book,
               const DisplayUnits& units) {
    if (vessel.due.kind == DueKind::nothing)
        return;
    const auto add = [&](CalendarItem::Kind kind, const Job& job, const std::string& what, Day on) {
        const Message title = say(job.key)
                                  .with("vessel", vessel.record.facts.name)
                                  .with("draw", vessel.inUse.draw)
                                  .with("refill", refillWanted(vessel.inUse, vessel));
        const std::string id = idOf(book, vessel, what + "-" + std::to_string(job.cycle) + "-" + wordOf(job.kind));
        items.push_back({kind, id, on, render(title, units)});
    };
    const auto jobs = jobsOf(vessel);
    for (const auto& job : jobs)
        add(CalendarItem::Kind::event, job, "cycle", job.on);
    add(CalendarItem::Kind::task, jobs.front(), "due", vessel.due.on);
}

} // namespace

Result<std::string> Desk::calendar(const facts::VesselName& name, const DisplayUnits& units) const {
    const std::string book = inside_->book->identity();
    std::vector<facts::VesselName> names{name};
    if (name.empty()) {
        const auto all = vessels();
        if (!all)
            return fail(all.error());
        names.clear();
        for (const auto& vessel : *all)
            names.push_back(vessel.name);
    }
    std::vector<CalendarItem> items;
    for (const auto& each : names) {
        const auto vessel = inside_->current(each);
        if (!vessel)
            return fail(vessel.error());
        addVessel(items, **vessel, book, units);
    }
    return sheet::writeCalendar(items, today(), revision());
}

} // namespace staveline::desk
