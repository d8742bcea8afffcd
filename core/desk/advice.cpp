// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/advice.h"

#include "desk/estimates.h"
#include "desk/first_fill.h"
#include "desk/house.h"
#include "desk/in_force.h"
#include "desk/inside.h"
#include "desk/round.h"
#include "desk/stock.h"
#include "ingredient/nearest.h"
#include "quantity/parse.h"
#include "quantity/words.h"

#include <algorithm>
#include <map>
#include <set>

namespace staveline::desk {

using advice::AdviceInput;
using advice::LeverLock;

namespace {

std::vector<LeverLock> recordedLocks(const VesselRecord& record, Day today) {
    std::vector<LeverLock> locks;
    for (const auto& lock : locksInForce(record, today))
        locks.push_back({lock.lever, lock.value ? advice::LeverValue{*lock.value} : advice::LeverValue{lock.choice}});
    return locks;
}

std::set<std::string> unavailableItems(const SharedFacts& shared, Day today, Day brewDay) {
    std::set<std::string> items;
    for (const auto& each : stockOn(shared, today))
        if (!each.on(brewDay))
            items.insert(each.counted.item);
    return items;
}

/// A setting as values to try against another; what no lever can be put to is left out.
std::vector<advice::TriedValue> triedFor(const advice::Setting& from, const advice::Setting& to,
                                         const ingredient::Pantry& pantry) {
    std::vector<advice::TriedValue> tried;
    for (const auto& row : advice::builtInLevers())
        if (const auto value = leverValue(to, row.id, pantry);
            value != leverValue(from, row.id, pantry) && withLever(from, row.id, value, pantry))
            tried.push_back({row.id, value});
    return tried;
}

/// Ids of malts and yeasts given by id or as they are printed. Fault at "/without": there is none of that name.
Result<std::set<std::string>> itemsCalled(const std::vector<std::string>& given, const ingredient::Pantry& pantry) {
    std::map<std::string, std::string> ids; // by the key of id and name
    std::vector<ingredient::Known> known;
    const auto add = [&](const auto& items) {
        for (const auto& item : items) {
            ids.emplace(nameKey(item.name), item.id);
            ids.insert_or_assign(nameKey(item.id), item.id);
            known.push_back({item.id, item.name});
        }
    };
    add(pantry.grains());
    add(pantry.yeasts());
    std::set<std::string> items;
    for (const auto& name : given) {
        const auto at = ids.find(nameKey(name));
        if (at == ids.end())
            return badInput("/without", say("desk.unknown_item").with("item", excerpt(name)),
                            ingredient::offer(name, known));
        items.insert(at->second);
    }
    return items;
}

/// What may not be moved and what is not there: as recorded, and as asked.
Result<void> restrictTo(AdviceInput& in, const AdviceRequest& request, const VesselRecord& record,
                        const SharedFacts& shared, Day now, Day brew) {
    const auto without = itemsCalled(request.unavailable, shared.pantry);
    if (!without)
        return fail(without.error());
    if (!request.withoutRecorded)
        in.locks = recordedLocks(record, now);
    if (in.drawn) // a draw on record goes before one that was wanted
        std::erase_if(in.locks, [](const LeverLock& lock) { return lock.lever == "draw"; });
    for (const auto& lock : request.locks) {
        std::erase_if(in.locks, [&](const LeverLock& old) { return old.lever == lock.lever; });
        in.locks.push_back(lock);
    }
    if (!request.withoutRecorded)
        in.unavailable = unavailableItems(shared, now, brew);
    in.unavailable.insert(without->begin(), without->end());
    return {};
}

/// The vessel: what it holds, what it needs, what can be done to it.
void takeVessel(AdviceInput& in, const CurrentVessel& vessel, Day draw) {
    const facts::VesselFact& facts = vessel.record.facts;
    in.drawn = vessel.drawn.has_value();
    in.volumeAtDraw = volumeOnDraw(vessel, draw);
    in.fillTo = usualFill(vessel);
    in.toThisDraw = Days{static_cast<double>(std::max(0, daysBetween(vessel.today, draw)))};
    in.canChangeTemperature = facts.canChangeTemperature;
    in.mayMoveDraw = facts.drawMayMove;
    in.mayMoveInterval = facts.intervalMayMove && !byAge(vessel.rule); // it follows from the draw
    if (const facts::CultureFact* culture = vessel.record.latest<facts::CultureFact>(vessel.today)) {
        in.houseYeastKillerSensitive = culture->killerSensitive;
        in.brettEstablished = culture->brettanomyces == facts::Brettanomyces::established;
    }
}

/// A titration sharpens what one taster says, in the first cycles.
bool titrationHelps(const estimate::KnownOfVessel& known, const estimate::Estimates& estimates) {
    return !estimates.ta && known.learned.tasters.size() == 1 &&
           known.learned.cycles <= static_cast<int>(constants::estimate::firstCycles);
}

void takeKnown(AdviceInput& in, const estimate::KnownOfVessel& known, const estimate::Estimates& estimates) {
    in.state = known.state;
    in.oxygenPerYear = known.cellaring.oxygenPerYear;
    in.apart = known.cellaring.apart;
    in.today = known.today;
    in.model = estimates.model;
    in.combined = estimates.combined;
    in.evidence = estimates.evidence;
    in.offsets = estimates.offsets;
    for (Dimension d : allDimensions)
        in.seen[d] = estimates.sittings[d] > 0;
    in.oneMoreTaster = estimates.oneMoreTaster;
    in.tastedThisCycle = estimates.tastedThisCycle;
    in.tastedToday = estimates.tastedToday;
    in.titrationHelps = titrationHelps(known, estimates);
    in.measuredTa = estimates.ta;
    in.measuredPh = estimates.ph;
    in.target = known.target;
    in.targetSet = known.targetSet;
    in.doubts = estimates.doubts;
    in.verdicts = estimates.verdicts;
    in.parameters = known.parameters;
}

} // namespace

Result<AdviceJob> Desk::adviceJob(const AdviceRequest& request) const {
    Cellar& cellar = *inside_->cellar;
    auto found = inside_->current(request.vessel);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    if (auto beer = holdsBeer(vessel); !beer)
        return fail(beer.error());
    const SharedFacts& shared = cellar.shared();
    auto known = knownOf(vessel, cellar);
    if (!known)
        return fail(known.error());
    AdviceJob job;
    job.findings = notesOf(vessel.replayed.findings);
    job.vessel = request.vessel;
    job.revision = revision();
    job.estimates = estimatesFrom(*known);
    job.dates = vessel.dates;
    job.steering = steeringOf(vessel);
    job.inUse = vessel.inUse;
    if (vessel.brewed)
        job.brewed = *vessel.brewed;
    AdviceInput& in = job.input;
    // All of it as if nothing were chosen yet: asked again after choosing, the answer is the same.
    in.base = vessel.leftAlone;
    if (!vessel.record.of<facts::BaseRecipeFact>().empty())
        in.usual = asSteered(vessel, cellar, settingUsual(vessel.record, vessel.now()));
    const vessel::Schedule dates = datesWith(vessel, cellar, in.base);
    if (openChoice(vessel.record, vessel.now()) || usualIsNew(vessel.record, vessel.now()))
        job.open = triedFor(in.base, job.inUse, shared.pantry);
    takeVessel(in, vessel, dates.draw);
    in.atVessel = seenAt(vessel.record, vessel.today).words;
    takeKnown(in, *known, job.estimates);
    in.parameters.brew = houseOn(shared, vessel.today).parameters(in.parameters.brew);
    const facts::EquipmentFact kit = shared.kit(vessel.today, vessel.record.facts.name);
    in.equipment = kit.equipment;
    in.margin = kit.margin;
    if (auto ok = restrictTo(in, request, vessel.record, shared, vessel.today, dates.brew); !ok)
        return fail(ok.error());
    in.daysToBrew = std::max(0, daysBetween(vessel.today, dates.brew));
    job.pantry = std::make_shared<const ingredient::Pantry>(shared.pantry);
    in.pantry = job.pantry.get();
    in.withSettled = request.withSettled;
    if (request.maxMoved)
        in.maxMoved = std::clamp(*request.maxMoved, 1, AdviceRequest::mostLevers);
    return job;
}

Result<advice::Advice> Desk::advise(const AdviceRequest& request) const {
    auto job = adviceJob(request);
    if (!job)
        return fail(job.error());
    return staveline::advice::advise(job->input);
}

} // namespace staveline::desk
