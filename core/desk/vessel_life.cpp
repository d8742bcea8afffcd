// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/vessel_life.h"

#include "desk/inside.h"

#include <algorithm>
#include <map>
#include <string>

namespace staveline::desk {
namespace {

using facts::Happening;
using facts::VesselName;

/// What lived in a vessel up to a day, and in those whose beer went into it.
class Lineage {
public:
    explicit Lineage(Cellar& cellar) : cellar_(cellar) {}

    [[nodiscard]] std::vector<LineageLine> of(const VesselRecord& record, Day until) {
        std::vector<LineageLine> own = ownLines(record, until);
        if (const auto [told, first] = told_.emplace(record.id, until); !first) {
            std::erase_if(own, [after = told->second](const LineageLine& line) { return line.on <= after; });
            told->second = until;
        }
        std::vector<LineageLine> all;
        for (LineageLine& line : own) {
            const VesselName from = std::exchange(line.vessel, record.facts.name);
            const Day on = line.on;
            all.push_back(std::move(line));
            if (!from.empty())
                addUpstream(from, on, all);
        }
        return all;
    }

private:
    /// With the vessel that beer came from as each line's vessel.
    static std::vector<LineageLine> ownLines(const VesselRecord& record, Day until) {
        std::vector<LineageLine> lines;
        const auto add = [&](Day on, Message text, const VesselName& from = {}) {
            if (on <= until)
                lines.push_back({on, std::move(text), from, 0});
        };
        for (const auto& [id, culture] : record.of<facts::CultureFact>())
            if (!culture.name.empty())
                add(culture.on, say("desk.lineage.culture").with("culture", culture.name));
        for (const auto& [id, event] : record.of<facts::EventFact>())
            if (event.what == Happening::pitched)
                add(event.on, event.culture.empty() ? say("desk.lineage.pitched")
                                                    : say("desk.lineage.pitched.what").with("culture", event.culture));
        const auto fromElsewhere = [&](const auto& list) {
            for (const auto& [id, fill] : list)
                if (!fill.from.empty())
                    add(fill.on, say("desk.lineage.from").with("volume", fill.volume).with("vessel", fill.from),
                        fill.from);
                else if (!fill.lot.empty())
                    add(fill.on, say("desk.lineage.lot").with("volume", fill.volume).with("lot", fill.lot));
        };
        fromElsewhere(record.of<facts::RefillFact>());
        fromElsewhere(record.of<facts::TopUpFact>());
        std::stable_sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) { return a.on < b.on; });
        return lines;
    }

    /// Of each vessel, at every time that its beer came in, what was not told yet.
    void addUpstream(const VesselName& from, Day on, std::vector<LineageLine>& all) {
        const auto source = cellar_.vessel(from);
        if (!source)
            return;
        if (const auto told = told_.find((*source)->id); told != told_.end() && told->second >= on)
            return;
        for (LineageLine& line : of(**source, on)) {
            ++line.back;
            all.push_back(std::move(line));
        }
    }

    Cellar& cellar_;
    std::map<book::RowId, Day> told_; ///< up to which day
};

void count(Times& times, Day on) {
    ++times.count;
    times.last = std::max(times.last, std::optional(on));
}

/// Into an empty vessel, or onto what it held.
void takeFills(const CurrentVessel& vessel, WoodLife& wood) {
    Litres held{0};
    for (std::size_t i = 0; i < vessel.entries.size(); ++i) {
        const vessel::LedgerEntry& entry = vessel.entries[i];
        const vessel::Flow flow = vessel::traitsOf(entry.kind).flow;
        const bool in = !entry.outOfThisVessel && (flow == vessel::Flow::in || flow == vessel::Flow::opens);
        if (in && held.l <= 0)
            count(wood.fills, entry.on);
        else if (in && entry.kind == vessel::EntryKind::refill)
            count(wood.refills, entry.on);
        held = vessel.replayed.after[i].volume;
    }
}

WoodLife woodOf(const CurrentVessel& vessel) {
    WoodLife wood;
    wood.fillsBefore = vessel.record.facts.fillsBefore;
    takeFills(vessel, wood);
    for (const auto& [id, event] : vessel.record.of<facts::EventFact>()) {
        if (event.on > vessel.today)
            continue;
        wood.lost = wood.lost + event.volume.value_or(Litres{0});
        if (event.what == Happening::repaired)
            count(wood.repairs, event.on);
        else if (event.what == Happening::leaked)
            count(wood.leaks, event.on);
        else if (event.what == Happening::cleaned)
            count(wood.cleanings, event.on);
    }
    return wood;
}

} // namespace

std::vector<Message> wordsOf(const WoodLife& wood) {
    std::vector<Message> words;
    const auto add = [&](const char* key, const Times& times) {
        if (times.last)
            words.push_back(say(key).with("count", times.count).with("last", *times.last));
    };
    if (wood.fillsBefore > 0)
        words.push_back(say("desk.wood.fills_before").with("count", static_cast<int>(wood.fillsBefore)));
    add("desk.wood.fills", wood.fills);
    add("desk.wood.refills", wood.refills);
    add("desk.wood.repairs", wood.repairs);
    add("desk.wood.leaks", wood.leaks);
    add("desk.wood.cleanings", wood.cleanings);
    if (wood.lost.l > 0)
        words.push_back(say("desk.wood.lost").with("volume", wood.lost));
    return words;
}

Result<VesselLife> Desk::life(const VesselName& name) const {
    const auto vessel = inside_->current(name);
    if (!vessel)
        return fail(vessel.error());
    return VesselLife{Lineage(*inside_->cellar).of((*vessel)->record, (*vessel)->today), woodOf(**vessel)};
}

} // namespace staveline::desk
