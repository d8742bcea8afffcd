// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/ledger.h"

#include "desk/coming_refill.h"
#include "desk/evidence.h"
#include "desk/inside.h"
#include "quantity/language.h"

#include <algorithm>

namespace staveline::desk {
namespace {

template <class F> const F* byId(const VesselRecord& record, book::RowId id) {
    for (const auto& stored : record.of<F>())
        if (stored.id == id)
            return &stored.fact;
    return nullptr;
}

/// The vessel that beer came from; empty: from none.
facts::VesselName sourceOf(const VesselRecord& record, const vessel::LedgerEntry& e) {
    facts::VesselName from;
    facts::withEntry(e.kind, [&]<class F>(std::type_identity<F>) {
        if constexpr (requires(F f) { f.from; })
            if (const F* fact = byId<F>(record, rowOf(e.id)))
                from = fact->from;
    });
    return from;
}

/// The lot that beer came from; empty: from none.
facts::LotName lotOf(const VesselRecord& record, const vessel::LedgerEntry& e) {
    facts::LotName lot;
    facts::withEntry(e.kind, [&]<class F>(std::type_identity<F>) {
        if constexpr (requires(F f) { f.lot; })
            if (const F* fact = byId<F>(record, rowOf(e.id)))
                lot = fact->lot;
    });
    return lot;
}

/// "racked, 3.0 L lost with it"
Message eventText(const facts::EventFact& event) {
    const std::string key = "desk.line.event." + std::string(wordOf(event.what));
    if (!event.culture.empty())
        return say(key + ".what").with("culture", event.culture);
    return event.volume ? say(key + ".lost").with("volume", *event.volume) : say(key);
}

/// `first`: it went into an empty vessel.
Message lineText(const VesselRecord& record, vessel::EntryKind kind, const vessel::LedgerEntry& e, bool first,
                 const SharedFacts& shared) {
    if (e.outOfThisVessel)
        return say("desk.line.moved_out").with("volume", e.volume).with("vessel", receiverOf(record, e));
    if (const std::string from = sourceOf(record, e); !from.empty())
        return say("desk.line." + std::string(vessel::traitsOf(kind).word) + "_from")
            .with("volume", e.volume)
            .with("vessel", from);
    if (const std::string lot = lotOf(record, e); !lot.empty())
        return say("desk.line." + std::string(vessel::traitsOf(kind).word) + "_lot")
            .with("volume", e.volume)
            .with("lot", lot);
    if (kind == vessel::EntryKind::opening)
        return say("desk.line.opening").with("volume", e.volume).with("age", Age{e.age.value_or(Days{0}).d});
    if (kind == vessel::EntryKind::event)
        if (const auto* event = byId<facts::EventFact>(record, rowOf(e.id)))
            return eventText(*event);
    const std::string word(first && kind == vessel::EntryKind::refill ? "first_fill" : vessel::traitsOf(kind).word);
    if (e.brew)
        return say("desk.line." + word + "_brew")
            .with("volume", e.volume)
            .with("brew", shared.names.brewNames.at(*e.brew));
    return say("desk.line." + word).with("volume", e.volume);
}

/// Note and measured values of the row behind an entry.
void fillDetails(const VesselRecord& record, LedgerLine& line) {
    facts::withEntry(line.kind, [&]<class F>(std::type_identity<F>) {
        const F* fact = byId<F>(record, line.id);
        if (!fact)
            return;
        line.note = fact->note;
        line.at = fact->at;
        if constexpr (requires { fact->measured; })
            line.measured = fact->measured;
    });
}

/// A round after what happened on its day: the vessel is as that left it.
void addRounds(const VesselRecord& record, LedgerView& view) {
    for (const auto& [id, round] : record.of<facts::RoundFact>()) {
        const auto after = std::find_if(view.lines.begin(), view.lines.end(),
                                        [&, on = round.on](const LedgerLine& line) { return line.on > on; });
        const auto at = after - view.lines.begin();
        LedgerLine line;
        line.id = id;
        line.table = facts::tableOf<facts::RoundFact>;
        line.kind = vessel::EntryKind::event;
        line.on = round.on;
        line.text = say("desk.ledger.round").with("seen", render(seenWords(round)));
        line.note = round.note;
        const vessel::LedgerState before =
            at > 0 ? view.states[static_cast<std::size_t>(at) - 1] : vessel::LedgerState();
        line.volumeAfter = before.volume;
        line.meanAgeAfter = before.meanAge;
        view.lines.insert(after, std::move(line));
        view.states.insert(view.states.begin() + at, before);
    }
}

std::optional<Due> lookOf(const VesselSummary& vessel, Day today) {
    if (vessel.retired || !vessel.round || !vessel.round->last.nextLook)
        return {};
    const Day on = vessel.round->next;
    const int days = daysBetween(today, on);
    const std::string when = days < 0 ? "overdue" : days == 0 ? "today" : "in";
    return Due{vessel::DueKind::nothing, on, days,
               say("desk.due.look." + when).with("days", Days{std::abs(static_cast<double>(days))})};
}

/// What is due; before it a loss of beer, and a look whose day has come.
Message headlineOf(const VesselSummary& vessel) {
    if (vessel.seen.loses)
        return say("desk.due.leak_first").with("then", render(vessel.due.text));
    if (!vessel.look || vessel.look->inDays > 0)
        return vessel.due.text;
    return say("desk.due.look_first").with("look", render(vessel.look->text)).with("then", render(vessel.due.text));
}

VesselSummary summary(const CurrentVessel& vessel) {
    const VesselRecord& record = vessel.record;
    VesselSummary s;
    s.name = record.facts.name;
    s.facts = record.facts;
    s.retired = record.facts.retired.has_value();
    s.opened = vessel.now().opened.has_value();
    s.toFill = vessel.toFill;
    s.now = vessel.now();
    s.findings = notesOf(vessel.replayed.findings);
    s.dates = vessel.dates;
    s.works = vessel.works;
    s.draw = vessel.inUse.draw;
    s.refill = refillWanted(vessel.inUse, vessel);
    s.steering = steeringOf(vessel);
    s.due = vessel.due;
    s.round = roundOf(record, vessel.today);
    s.seen = seenAt(record, vessel.today);
    s.look = lookOf(s, vessel.today);
    s.headline = headlineOf(s);
    if (vessel.fault) {
        s.fault = vessel.fault->id;
        s.headline =
            say("desk.headline.fault").with("fault", vessel.fault->rule ? vessel.fault->rule->name : vessel.fault->id);
    }
    if (s.retired)
        s.headline = say("desk.headline.retired").with("on", *record.facts.retired);
    return s;
}

} // namespace

std::optional<int> VesselSummary::dueIn() const {
    std::optional<int> days;
    if (due.kind != vessel::DueKind::nothing)
        days = due.inDays;
    if (look)
        days = std::min(days.value_or(look->inDays), look->inDays);
    return days;
}

std::string vesselWords(const facts::VesselFact& vessel) {
    const std::string_view shape = wordOf(vessel.shape), material = wordOf(vessel.material);
    const auto word = [](std::string_view what) { return inSentence(render(say("ui.word." + std::string(what)))); };
    return shape == material
               ? word(shape)
               : render(say("desk.vessel_words").with("shape", word(shape)).with("material", word(material)));
}

Result<std::vector<VesselSummary>> Desk::cellar() const {
    std::vector<VesselSummary> all;
    Cellar& cellar = *inside_->cellar;
    if (auto loaded = cellar.loadAll(); !loaded)
        return fail(loaded.error());
    for (const auto& stored : cellar.shared().vessels)
        all.push_back(summary(currentOutline(**cellar.vesselById(stored.id), cellar, today())));
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.retired < b.retired; });
    return all;
}

Result<std::optional<VesselSummary>> Desk::firstDue() const {
    constexpr std::size_t mostRead = 30; // what is due is found in the ledger of each
    auto all = vessels();
    if (!all)
        return fail(all.error());
    all->resize(std::min(all->size(), mostRead));
    std::optional<VesselSummary> first;
    for (const facts::VesselFact& each : *all) {
        auto record = inside_->cellar->vessel(each.name);
        if (!record)
            return fail(record.error());
        const CurrentVessel current = currentOutline(**record, *inside_->cellar, today());
        if (current.due.kind != vessel::DueKind::nothing && (!first || current.due.on < first->due.on))
            first = summary(current);
    }
    return first;
}

Result<std::vector<facts::VesselFact>> Desk::vessels() const {
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    std::vector<facts::VesselFact> all;
    for (const auto& stored : inside_->cellar->shared().vessels)
        all.push_back(stored.fact);
    std::stable_sort(all.begin(), all.end(),
                     [](const auto& a, const auto& b) { return a.retired.has_value() < b.retired.has_value(); });
    return all;
}

Result<VesselSummary> Desk::vessel(const facts::VesselName& name) const {
    auto vessel = inside_->current(name);
    if (!vessel)
        return fail(vessel.error());
    return summary(**vessel);
}

Result<LedgerView> Desk::ledger(const facts::VesselName& name, bool withRounds) const {
    auto found = inside_->current(name);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    const std::vector<vessel::LedgerEntry>& entries = vessel.entries;
    const vessel::Replay& replayed = vessel.replayed;
    LedgerView view{summary(vessel), {}, replayed.after};
    const auto damages = this->damages();
    for (std::size_t i = 0; i < entries.size(); ++i) {
        LedgerLine line;
        line.kind = kindOfEntry(entries[i].id);
        line.id = rowOf(entries[i].id);
        line.table = entries[i].outOfThisVessel ? "" : std::string(tableOfEntry(line.kind));
        line.on = entries[i].on;
        const bool first = i == 0 || replayed.after[i - 1].volume.l <= 0;
        line.text = lineText(vessel.record, line.kind, entries[i], first, inside_->cellar->shared());
        fillDetails(vessel.record, line);
        line.volumeAfter = replayed.after[i].volume;
        line.meanAgeAfter = replayed.after[i].meanAge;
        for (const auto& finding : replayed.findings)
            if (finding.entry == entries[i].id)
                line.findings.push_back(finding.message);
        for (const auto& damage : damages)
            if (damage.row == line.id && damage.table == line.table)
                line.findings.push_back(damage.what);
        view.lines.push_back(std::move(line));
    }
    if (withRounds)
        addRounds(vessel.record, view);
    return view;
}

} // namespace staveline::desk
