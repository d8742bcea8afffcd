// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/inside.h"
#include "vessel/materials.h"

#include <algorithm>
#include <cmath>

namespace staveline {
namespace {

constexpr std::int64_t kindCount = 16;

LedgerEntry entry(EntryKind kind, book::RowId row, Day on, Litres volume) {
    LedgerEntry e;
    e.id = entryId(kind, row);
    e.kind = kind;
    e.on = on;
    e.rank = rankOf(kind);
    e.volume = volume;
    return e;
}

/// The general case: how much, where there is a volume.
template <class F> LedgerEntry entryOf(const Stored<F>& stored, const SharedFacts&) {
    Litres volume{0};
    if constexpr (requires { stored.fact.volume; })
        volume = stored.fact.volume;
    return entry(*factTraits<F>.entry, stored.id, stored.fact.on, volume);
}

template <class F>
requires requires(F f) {
    f.brew;
}
LedgerEntry entryOf(const Stored<F>& stored, const SharedFacts& shared) {
    LedgerEntry e = entry(*factTraits<F>.entry, stored.id, stored.fact.on, stored.fact.volume);
    e.age = stored.fact.age;
    const auto brew = shared.names.brews.find(stored.fact.brew);
    if (brew != shared.names.brews.end()) {
        e.brew = brew->second;
        if (const BrewFact* brewed = shared.brew(stored.fact.brew); brewed && !e.age)
            e.age = Days{static_cast<double>(std::max(0, daysBetween(brewed->on, stored.fact.on)))};
    }
    return e;
}

LedgerEntry entryOf(const Stored<OpeningFact>& stored, const SharedFacts&) {
    const OpeningFact& f = stored.fact;
    LedgerEntry e = entry(EntryKind::opening, stored.id, f.on, f.volume);
    const double interval = f.usualInterval.value_or(Days{240}).d;
    const double share = f.usualShare.value_or(Share{.35}).of1;
    const double running = f.yearsRunning.value_or(3) * daysPerYear;
    // Habit gives the age: it settles at interval/share, and no liquid is older than the years stated.
    const double habit = interval * (1 - share) / share * (1 - std::exp(-running * share / interval));
    e.age = Days{f.ageYears ? *f.ageYears * daysPerYear : habit};
    e.ageSd = Days{f.ageSdYears ? *f.ageSdYears * daysPerYear : e.age->d * 0.3};
    return e;
}

template <class F> void outflows(std::vector<LedgerEntry>& entries, const Facts<F>& facts) {
    for (const auto& stored : facts) {
        LedgerEntry e = entry(*factTraits<F>.entry, stored.id, stored.fact.on, stored.fact.volume);
        e.outOfThisVessel = true;
        e.rank = rankOf(EntryKind::drawOff);
        entries.push_back(e);
    }
}

template <class F> const F* byId(const VesselRecord& record, book::RowId id) {
    for (const auto& stored : record.of<F>())
        if (stored.id == id)
            return &stored.fact;
    return nullptr;
}

Message lineText(const VesselRecord& record, EntryKind kind, const LedgerEntry& e, const SharedFacts& shared) {
    if (e.outOfThisVessel)
        return say("desk.line.moved_out").with("volume", e.volume);
    if (kind == EntryKind::opening)
        return say("desk.line.opening").with("volume", e.volume).with("age", Days{e.age.value_or(Days{0})});
    if (kind == EntryKind::drawOff)
        if (const auto* draw = byId<DrawOffFact>(record, rowOf(e.id)); draw && !draw->lot.empty())
            return say("desk.line.draw_lot").with("volume", e.volume).with("lot", draw->lot);
    const std::string word(traitsOf(kind).word);
    if (e.brew)
        return say("desk.line." + word + "_brew")
            .with("volume", e.volume)
            .with("brew", shared.names.brewNames.at(*e.brew));
    return say("desk.line." + word).with("volume", e.volume);
}

/// Note and measured values of the row behind an entry.
void fillDetails(const VesselRecord& record, LedgerLine& line) {
    withEntry(line.kind, [&]<class F>(std::type_identity<F>) {
        const F* fact = byId<F>(record, line.id);
        if (!fact)
            return;
        line.note = fact->note;
        if constexpr (requires { fact->measured; })
            line.measured = fact->measured;
    });
}

VesselSummary summary(const VesselRecord& record, const Cellar& cellar, const Replay& replayed, Day today) {
    VesselSummary s;
    s.name = record.facts.name;
    s.facts = record.facts;
    s.retired = record.facts.retired.has_value();
    s.opened = replayed.now.opened.has_value();
    s.now = replayed.now;
    s.findings = static_cast<int>(replayed.findings.size());
    s.dates = datesOf(record, cellar, replayed.now, today);
    s.due = dueOf(record, cellar, replayed.now, today);
    s.headline = s.due.text;
    if (const auto& sittings = record.of<SittingFact>(); !sittings.empty()) {
        const TargetFact* target = record.latest<TargetFact>(today);
        SittingResult result;
        result.faults = faultsIn(sittings.back().fact.sitting, builtInSheet());
        if (auto mark = worstUnwantedFault(result, target ? target->target : Target{}, builtInSheet())) {
            s.fault = mark->fault;
            const FaultRule* rule = builtInSheet().findFault(mark->fault);
            s.headline = say("desk.headline.fault").with("fault", rule ? rule->name : mark->fault);
        }
    }
    if (s.retired)
        s.headline = say("desk.headline.retired").with("on", *record.facts.retired);
    return s;
}

} // namespace

bool ledgerOrder(const LedgerEntry& a, const LedgerEntry& b) {
    return std::tie(a.on, a.minute, a.rank, a.id) < std::tie(b.on, b.minute, b.rank, b.id);
}

std::int64_t entryId(EntryKind kind, book::RowId row) {
    return row * kindCount + static_cast<std::int64_t>(kind);
}
book::RowId rowOf(std::int64_t entry) {
    return entry / kindCount;
}
EntryKind kindOfEntry(std::int64_t entry) {
    return static_cast<EntryKind>(entry % kindCount);
}

std::string_view tableOfEntry(EntryKind kind) {
    return traitsOf(kind).word;
}

std::vector<LedgerEntry> ledgerEntries(const VesselRecord& record, const SharedFacts& shared) {
    std::vector<LedgerEntry> entries;
    forEachFact([&]<class F>(std::type_identity<F>) {
        if constexpr (factTraits<F>.entry)
            for (const auto& stored : record.of<F>())
                entries.push_back(entryOf(stored, shared));
    });
    outflows(entries, record.refillsElsewhere);
    outflows(entries, record.topUpsElsewhere);
    return entries;
}

VesselShape shapeOf(const VesselFact& facts) {
    return {facts.capacity, facts.evaporationPerYear.value_or(
                                materialFacts(wordOf(facts.material)).value_or(MaterialFacts{}).evaporationPerYear)};
}

double oxygenOf(const VesselFact& facts) {
    return facts.oxygenPerYear.value_or(materialFacts(wordOf(facts.material)).value_or(MaterialFacts{}).oxygenPerYear);
}

Replay replayOf(const VesselRecord& record, const SharedFacts& shared, Day today) {
    return replay(ledgerEntries(record, shared), shapeOf(record.facts), today);
}

Result<std::vector<VesselSummary>> Desk::cellar() const {
    std::vector<VesselSummary> all;
    Cellar& cellar = *inside_->cellar;
    if (auto loaded = cellar.loadAll(); !loaded)
        return fail(loaded.error());
    const Day now = today();
    for (const auto& stored : cellar.shared().vessels) {
        const VesselRecord& record = **cellar.vesselById(stored.id);
        const Replay replayed = replayNow(ledgerEntries(record, cellar.shared()), shapeOf(record.facts), now);
        all.push_back(summary(record, cellar, replayed, now));
    }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.retired < b.retired; });
    return all;
}

Result<std::vector<VesselFact>> Desk::vessels() const {
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    std::vector<VesselFact> all;
    for (const auto& stored : inside_->cellar->shared().vessels)
        all.push_back(stored.fact);
    std::stable_sort(all.begin(), all.end(),
                     [](const auto& a, const auto& b) { return a.retired.has_value() < b.retired.has_value(); });
    return all;
}

Result<VesselSummary> Desk::vessel(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    const SharedFacts& shared = inside_->cellar->shared();
    return summary(**record, *inside_->cellar, replayOf(**record, shared, today()), today());
}

Result<LedgerView> Desk::ledger(const VesselName& name) const {
    auto found = inside_->cellar->vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    const SharedFacts& shared = inside_->cellar->shared();
    auto entries = ledgerEntries(record, shared);
    std::sort(entries.begin(), entries.end(), ledgerOrder);
    const Replay replayed = replay(entries, shapeOf(record.facts), today());
    LedgerView view{summary(record, *inside_->cellar, replayed, today()), {}, replayed.after};
    for (std::size_t i = 0; i < entries.size(); ++i) {
        LedgerLine line;
        line.kind = kindOfEntry(entries[i].id);
        line.id = rowOf(entries[i].id);
        line.table = entries[i].outOfThisVessel ? "" : std::string(tableOfEntry(line.kind));
        line.on = entries[i].on;
        line.text = lineText(record, line.kind, entries[i], shared);
        fillDetails(record, line);
        line.volumeAfter = replayed.after[i].volume;
        line.meanAgeAfter = replayed.after[i].meanAge;
        for (const auto& finding : replayed.findings)
            if (finding.entry == entries[i].id)
                line.findings.push_back(finding.message);
        view.lines.push_back(std::move(line));
    }
    return view;
}

} // namespace staveline
