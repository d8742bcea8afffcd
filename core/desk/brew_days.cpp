// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/brew_days.h"

#include "desk/measured_brew.h"
#include "desk/moved_work.h"

#include <algorithm>

namespace staveline::desk {
namespace {

std::string enumerated(std::vector<std::string> words) {
    const std::string last = std::move(words.back());
    words.pop_back();
    if (words.empty())
        return last;
    std::string first = words.front();
    for (std::size_t i = 1; i < words.size(); ++i)
        first += ", " + words[i];
    return render(say("desk.answer.two").with("a", first).with("b", last));
}

BrewShare shareOf(const VesselSummary& vessel) {
    BrewShare share{vessel.name, vessel.refill, {}};
    if (!vessel.toFill && !vessel.works.draw.done)
        share.draw = vessel.draw;
    return share;
}

/// By how much the refill can be smaller.
Litres open(const BrewShare& share) {
    return std::min(share.draw.value_or(Litres{0}), share.takes);
}

} // namespace

Litres BrewDay::takes() const {
    Litres all{0};
    for (const BrewShare& share : shares)
        all += share.takes;
    return all;
}

std::vector<BrewDay> brewDays(const std::vector<VesselSummary>& cellar, Days apart) {
    std::vector<const VesselSummary*> toBrew;
    for (const VesselSummary& vessel : cellar)
        if (!vessel.retired && !vessel.works.brew.done && vessel.due.kind != vessel::DueKind::nothing)
            toBrew.push_back(&vessel);
    std::ranges::stable_sort(toBrew, {}, [](const VesselSummary* vessel) { return vessel->dates.brew; });
    std::vector<BrewDay> days;
    for (const VesselSummary* vessel : toBrew) {
        if (days.empty() || daysBetween(days.back().on, vessel->dates.brew) > apart.d)
            days.push_back({vessel->dates.brew, {}});
        days.back().shares.push_back(shareOf(*vessel));
    }
    std::erase_if(days, [](const BrewDay& day) { return day.shares.size() < 2; });
    return days;
}

SharedOut shareOut(const BrewDay& day, Litres given) {
    const Litres wanted = day.takes();
    if (given >= wanted)
        return {day.shares, given - wanted, {}, false};
    Litres spare{0};
    for (const BrewShare& share : day.shares)
        spare += open(share);
    SharedOut shared{day.shares, {}, wanted - given, wanted - given <= spare};
    if (!shared.drawingLess)
        return shared;
    for (BrewShare& share : shared.shares)
        if (share.draw) {
            const Litres less = open(share) * (shared.missing / spare);
            share.takes = share.takes - less;
            share.draw = *share.draw - less;
        }
    return shared;
}

std::string namesIn(const BrewDay& day) {
    std::vector<std::string> names;
    for (const BrewShare& share : day.shares)
        names.push_back(share.vessel);
    return enumerated(names);
}

namespace {

std::string givenWords(const BrewDay& day, Litres length, Litres given, const DisplayUnits& units) {
    const SharedOut shared = shareOut(day, given);
    std::vector<std::string> draws;
    for (const BrewShare& share : shared.shares)
        if (share.draw)
            draws.push_back(
                render(say("desk.brew_day.draw").with("draw", *share.draw).with("vessel", share.vessel), units));
    const char* key = shared.missing.l <= 0 ? "desk.brew_day.left"
                      : shared.drawingLess  ? "desk.brew_day.short"
                                            : "desk.brew_day.several";
    return render(say(key)
                      .with("length", length)
                      .with("given", given)
                      .with("left", shared.left)
                      .with("missing", shared.missing)
                      .with("draws", draws.empty() ? std::string() : enumerated(draws)),
                  units);
}

} // namespace

std::string brewDayWords(const BrewDay& day, const facts::EquipmentFact& kit, const DisplayUnits& units) {
    std::vector<std::string> shares;
    for (const BrewShare& share : day.shares)
        shares.push_back(
            render(say("desk.brew_day.share").with("litres", share.takes).with("vessel", share.vessel), units));
    const std::string together = render(
        say("desk.brew_day").with("day", day.on).with("shares", enumerated(shares)).with("litres", day.takes()), units);
    if (!kit.brewLength)
        return together;
    return together + " " + givenWords(day, *kit.brewLength, intoVesselFrom(*kit.brewLength, kit.equipment), units);
}

std::vector<facts::Fact> brewOn(const BrewDay& day, const std::vector<VesselSummary>& cellar, Day today) {
    std::vector<facts::Fact> moves;
    for (const VesselSummary& vessel : cellar)
        if (std::ranges::find(day.shares, vessel.name, &BrewShare::vessel) != day.shares.end() &&
            vessel.dates.brew != day.on)
            moves.push_back(movedWork(vessel.name, vessel::DueKind::brew, today, day.on));
    return moves;
}

} // namespace staveline::desk
