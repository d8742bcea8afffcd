// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/ledger_guard.h"

#include "desk/entry_checks.h"
#include "desk/ledger_entries.h"
#include "quantity/text.h"

#include <algorithm>

namespace staveline::desk {

using vessel::FindingKind;
using vessel::LedgerFinding;

namespace {

/// Else it may stand, with its finding.
bool cannotBe(const LedgerFinding& finding) {
    switch (finding.kind) {
    case FindingKind::drawnMore:
    case FindingKind::beforeOpening:
        return true;
    case FindingKind::overFull:
    case FindingKind::dipAbove:
        return runsOver(finding.capacity + finding.beyond, finding.capacity);
    case FindingKind::dipDiffers:
    case FindingKind::secondOpening:
    case FindingKind::notPositive:
    case FindingKind::future:
        return false;
    }
    return false;
}

Fault itself(const LedgerFinding& finding, const facts::VesselName& vessel) {
    const Litres possible = finding.possible, volume = possible + finding.beyond;
    const auto fault = [](Message cause, Message remedy) {
        return Fault{FaultKind::input, "/volume_l", std::move(cause), std::move(remedy)};
    };
    if (finding.kind == FindingKind::beforeOpening)
        return {FaultKind::input, "/at", say("desk.before_hour").with("vessel", vessel).with("on", finding.on),
                say("desk.before_hour.remedy")};
    const bool poured = vessel::traitsOf(kindOfEntry(finding.entry)).flow == vessel::Flow::in;
    if (finding.kind == FindingKind::overFull && poured)
        return fault(say("desk.does_not_fit").with("volume", volume).with("room", possible),
                     say("desk.does_not_fit.remedy"));
    if (finding.kind == FindingKind::overFull || finding.kind == FindingKind::dipAbove)
        return fault(say("desk.above_capacity").with("volume", volume).with("capacity", possible),
                     say("desk.above_capacity.remedy"));
    if (possible.l < .05) // shown as 0.0 L
        return fault(say("desk.nothing_held").with("vessel", vessel).with("on", finding.on),
                     say("desk.nothing_held.remedy"));
    return fault(say("desk.more_than_held").with("volume", volume).with("vessel", vessel).with("held", possible),
                 say("desk.more_than_held.remedy").with("held", possible));
}

/// Names the entry that was possible before, by kind and day.
Fault beside(const LedgerFinding& finding, const facts::VesselName& vessel) {
    const char* key = finding.kind == FindingKind::drawnMore       ? "desk.then_drawn_more"
                      : finding.kind == FindingKind::beforeOpening ? "desk.then_before_opening"
                      : finding.kind == FindingKind::dipAbove      ? "desk.then_dip_above"
                                                                   : "desk.then_over_full";
    const std::string name = render(say("desk.kind." + noteOf(finding).entry));
    return {FaultKind::input, "",
            say(key)
                .with("entry", name)
                .with("on", finding.on)
                .with("volume", finding.possible + finding.beyond)
                .with("vessel", vessel)
                .with("possible", finding.possible),
            say("desk.then.remedy").with("entry", name).with("on", finding.on)};
}

using ByEntry = std::map<std::pair<std::int64_t, FindingKind>, const LedgerFinding*>;

ByEntry byEntry(const std::vector<LedgerFinding>& findings) {
    ByEntry found;
    for (const auto& finding : findings)
        found.emplace(std::pair(finding.entry, finding.kind), &finding);
    return found;
}

/// Worse than it was, and not to be let stand.
bool becomesImpossible(const LedgerFinding& now, const ByEntry& before, bool own) {
    const auto was = before.find({now.entry, now.kind});
    const bool grew = was == before.end() || now.beyond > was->second->beyond;
    const bool couldBe = own || was == before.end() || !cannotBe(*was->second);
    return grew && couldBe && cannotBe(now);
}

/// The changed rows by their entries.
std::map<std::int64_t, std::size_t> placesOf(const std::vector<book::RowKey>& changed) {
    std::map<std::int64_t, std::size_t> places;
    for (std::size_t i = 0; i < changed.size(); ++i)
        if (const auto entry = entryOfRow(changed[i]))
            places.emplace(*entry, i);
    return places;
}

} // namespace

Result<void> LedgerGuard::watch(const facts::VesselName& vessel) {
    auto record = cellar_.vessel(vessel);
    return record ? watch((*record)->id) : Result<void>(fail(record.error()));
}

Result<void> LedgerGuard::watch(book::RowId vessel) {
    if (before_.contains(vessel))
        return {};
    auto record = cellar_.vesselById(vessel);
    if (!record)
        return fail(record.error());
    before_.emplace(vessel, findingsOf(**record, cellar_.shared(), today_));
    return {};
}

Result<void> LedgerGuard::watchLots() {
    if (lotsBefore_)
        return {};
    auto problems = lotProblems(cellar_);
    if (!problems)
        return fail(problems.error());
    lotsBefore_ = *std::move(problems);
    return {};
}

Result<std::vector<LotProblem>> LedgerGuard::worseLots() const {
    if (!lotsBefore_)
        return std::vector<LotProblem>();
    return lotProblems(cellar_).map([&](auto now) { return worsened(*lotsBefore_, std::move(now)); });
}

namespace {

/// Which of the changed rows it is; none: another one.
std::optional<std::size_t> placeOf(const LotProblem& problem, const std::vector<book::RowKey>& changed) {
    const auto at = std::find(changed.begin(), changed.end(), problem.row);
    return at == changed.end() ? std::nullopt : std::optional(static_cast<std::size_t>(at - changed.begin()));
}

} // namespace

Result<LedgerGuard::Outcome> LedgerGuard::outcome(const std::vector<book::RowKey>& changed) const {
    const auto places = placesOf(changed);
    Outcome outcome;
    auto& refusal = outcome.refusal;
    for (const auto& [vessel, findings] : before_) {
        auto found = cellar_.vesselById(vessel);
        if (!found)
            return fail(found.error());
        const facts::VesselName& name = (*found)->facts.name;
        const ByEntry before = byEntry(findings);
        for (const LedgerFinding& now : findingsOf(**found, cellar_.shared(), today_)) {
            const auto was = before.find({now.entry, now.kind});
            if (was == before.end())
                outcome.notes.push_back({name, noteOf(now)});
            const auto place = places.find(now.entry);
            const bool own = place != places.end();
            if (!becomesImpossible(now, before, own))
                continue;
            if (own && (!refusal || !refusal->row || place->second < *refusal->row))
                refusal = Refusal{itself(now, name), place->second};
            else if (!refusal)
                refusal = Refusal{beside(now, name), {}};
        }
    }
    const auto lots = worseLots();
    if (!lots)
        return fail(lots.error());
    for (const LotProblem& problem : *lots)
        if (const auto place = placeOf(problem, changed); place && (!refusal || !refusal->row))
            refusal = Refusal{problem.itself, place};
        else if (!refusal)
            refusal = Refusal{problem.beside, {}};
    return outcome;
}

namespace {

/// Of what cannot be, what no other entry is to blame for: more than the vessel ever holds, else the first.
std::vector<LedgerFinding> rootsAmong(const std::vector<LedgerFinding>& impossible, bool all) {
    std::vector<LedgerFinding> roots;
    std::copy_if(impossible.begin(), impossible.end(), std::back_inserter(roots), [&](const LedgerFinding& finding) {
        return all || runsOver(finding.possible + finding.beyond, finding.capacity);
    });
    if (roots.empty() && !impossible.empty())
        roots.push_back(impossible.front());
    return roots;
}

} // namespace

Result<std::map<std::size_t, Fault>> LedgerGuard::roots(const std::vector<book::RowKey>& changed) const {
    constexpr int mostRounds = 300; // replays; whoever has more to blame is told of all at once
    const auto places = placesOf(changed);
    std::map<std::size_t, Fault> blamed;
    const auto lots = worseLots();
    if (!lots)
        return fail(lots.error());
    for (const LotProblem& problem : *lots)
        if (const auto place = placeOf(problem, changed))
            blamed.emplace(*place, problem.itself);
    for (const auto& [vessel, findings] : before_) {
        auto found = cellar_.vesselById(vessel);
        if (!found)
            return fail(found.error());
        const ByEntry before = byEntry(findings);
        auto entries = ledgerEntries(**found, cellar_.shared());
        for (int round = 0;; ++round) {
            auto impossible = replayNow(entries, shapesOf(**found), today_).findings;
            std::erase_if(impossible, [&](const LedgerFinding& now) {
                return !places.contains(now.entry) || !becomesImpossible(now, before, true);
            });
            if (impossible.empty())
                break;
            for (const auto& root : rootsAmong(impossible, round > mostRounds)) {
                blamed.emplace(places.at(root.entry), itself(root, (*found)->facts.name));
                std::erase_if(entries, [&](const auto& entry) { return entry.id == root.entry; });
            }
        }
    }
    return blamed;
}

} // namespace staveline::desk
