// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/brew_days.h"

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

} // namespace

Litres BrewDay::draws() const {
    Litres all{0};
    for (const BrewShare& share : shares)
        all += share.draw;
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
        days.back().shares.push_back({vessel->name, vessel->draw});
    }
    std::erase_if(days, [](const BrewDay& day) { return day.shares.size() < 2; });
    return days;
}

SharedOut shareOut(const BrewDay& day, Litres brewLength) {
    const Litres wanted = day.draws();
    if (brewLength >= wanted)
        return {day.shares, brewLength - wanted, {}};
    SharedOut shared{day.shares, {}, wanted - brewLength};
    for (BrewShare& share : shared.shares)
        share.draw = share.draw * (brewLength / wanted);
    return shared;
}

std::string namesIn(const BrewDay& day) {
    std::vector<std::string> names;
    for (const BrewShare& share : day.shares)
        names.push_back(share.vessel);
    return enumerated(names);
}

std::string brewDayWords(const BrewDay& day, std::optional<Litres> brewLength, const DisplayUnits& units) {
    const std::string together = render(
        say("desk.brew_day").with("day", day.on).with("vessels", namesIn(day)).with("draws", day.draws()), units);
    if (!brewLength)
        return together;
    const SharedOut shared = shareOut(day, *brewLength);
    if (shared.missing.l <= 0)
        return together + " " +
               render(say("desk.brew_day.left").with("length", *brewLength).with("left", shared.left), units);
    std::vector<std::string> draws;
    for (const BrewShare& share : shared.shares)
        draws.push_back(render(say("desk.brew_day.draw").with("draw", share.draw).with("vessel", share.vessel), units));
    return together + " " +
           render(say("desk.brew_day.short")
                      .with("length", *brewLength)
                      .with("missing", shared.missing)
                      .with("draws", enumerated(draws)),
                  units);
}

} // namespace staveline::desk
