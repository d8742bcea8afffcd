// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/round.h"

#include "desk/inside.h"
#include "desk/ledger.h"
#include "desk/refits.h"
#include "desk/rooms.h"
#include "quantity/constants.h"
#include "quantity/language.h"
#include "quantity/text.h"
#include "sheet/walk_sheet.h"

#include <cmath>

namespace staveline::desk {

using facts::RoundFact;

namespace {

constexpr std::chrono::days usualNext{static_cast<int>(constants::desk::roundDays)};
/// A look says something of the vessel as it is for so long.
constexpr std::chrono::days fresh{static_cast<int>(constants::desk::roundFresh)};

void sayAir(const RoundFact& round, std::vector<Message>& findings) {
    if (round.weep && *round.weep != facts::Weep::none)
        findings.push_back(
            say(*round.weep == facts::Weep::damp ? "desk.round.damp" : "desk.round.dripping").with("on", round.on));
    if (round.bung == facts::Bung::loose)
        findings.push_back(say("desk.round.loose").with("on", round.on));
    if (round.pellicle == facts::Pellicle::full || round.pellicle == facts::Pellicle::broken)
        findings.push_back(say(round.pellicle == facts::Pellicle::full ? "desk.round.film" : "desk.round.film_broken")
                               .with("on", round.on));
    if (round.smell && *round.smell != facts::Smell::clean)
        findings.push_back(say("desk.round.smell")
                               .with("on", round.on)
                               .with("smell", render(say("desk.round.smell." + std::string(wordOf(*round.smell))))));
}

/// The day of a leak after which nothing was mended and no round found it dry.
std::optional<Day> openLeak(const VesselRecord& record, Day today) {
    std::optional<Day> leak;
    for (const auto& [id, event] : record.of<facts::EventFact>()) {
        if (event.on > today)
            continue;
        if (event.what == facts::Happening::leaked)
            leak = event.on;
        else if (event.what == facts::Happening::repaired)
            leak.reset();
    }
    if (leak)
        for (const auto& [id, round] : record.of<RoundFact>())
            if (round.on > *leak && round.on <= today && round.weep == facts::Weep::none)
                return {};
    return leak;
}

void sayRoom(const RoundFact& round, const VesselRecord& record, std::vector<Message>& findings) {
    if (!round.room)
        return;
    const facts::VesselFact then = vesselOn(record, round.on);
    const facts::RoomFact* room = then.room.empty() ? nullptr : roomOn(*record.rooms, then.room, round.on);
    const Celsius kept = room ? Celsius{yearOf(*room)[vessel::monthOf(round.on)]} : then.temperature;
    const double warmer = round.room->c - kept.c;
    if (std::abs(warmer) < constants::desk::roomOff)
        return;
    findings.push_back(say(std::string(warmer > 0 ? "desk.round.warm" : "desk.round.cold") + (room ? ".room" : ""))
                           .with("on", round.on)
                           .with("room", *round.room)
                           .with("kept", kept));
}

} // namespace

Message seenWords(const RoundFact& round) {
    std::string words;
    const auto add = [&](const char* key, auto&& value) {
        words += (words.empty() ? "" : "; ") + render(say(key).with("value", value));
    };
    const auto shown = [](std::string_view word) { return inSentence(render(say("ui.word." + std::string(word)))); };
    if (round.bung)
        add("desk.seen.bung", shown(wordOf(*round.bung)));
    if (round.weep)
        add("desk.seen.weep", shown(wordOf(*round.weep)));
    if (round.pellicle)
        add("desk.seen.pellicle", shown(wordOf(*round.pellicle)));
    if (round.smell)
        add("desk.seen.smell", shown(wordOf(*round.smell)));
    if (round.room)
        add("desk.seen.room", *round.room);
    if (round.purged)
        add("desk.seen.purged", std::string());
    return words.empty() ? say("desk.seen.nothing") : say("desk.seen").with("words", words);
}

sheet::Document Desk::walkSheet(const DisplayUnits& units) const {
    std::vector<sheet::WalkRow> rows;
    if (const auto all = cellar())
        for (const VesselSummary& vessel : *all)
            if (!vessel.retired)
                rows.push_back({vessel.name, vessel.facts.capacity, vessel.now.volume});
    return sheet::walkSheet(rows, today(), units);
}

std::optional<RoundState> roundOf(const VesselRecord& record, Day today) {
    const RoundFact* last = record.latest<RoundFact>(today);
    if (!last)
        return std::nullopt;
    return RoundState{*last, last->nextLook.value_or(last->on + usualNext)};
}

SeenAtVessel seenAt(const VesselRecord& record, Day today) {
    SeenAtVessel seen;
    if (const auto leak = openLeak(record, today)) {
        seen.loses = true;
        seen.words.push_back(say("desk.round.leak").with("on", *leak));
    }
    const RoundFact* last = record.latest<RoundFact>(today);
    if (!last || today - last->on > fresh)
        return seen;
    seen.loses = seen.loses || last->weep == facts::Weep::dripping;
    sayAir(*last, seen.words);
    sayRoom(*last, record, seen.words);
    return seen;
}

} // namespace staveline::desk
