// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/entry_checks.h"

#include "desk/ledger_entries.h"
#include "facts/fact_list.h"
#include "quantity/constants.h"
#include "quantity/density.h"
#include "quantity/parse.h"

#include <algorithm>

namespace staveline::desk {
namespace {

using facts::BrewFact;

/// Entries happen once; a target or a lock said twice says the same.
template <class F>
constexpr bool happensOnce = facts::factTraits<F>.entry.has_value() || std::is_same_v<F, facts::SittingFact>;

/// Whenever it was recorded.
template <class F> bool same(F stored, const F& given) {
    if constexpr (requires { stored.turn; })
        stored.turn = given.turn;
    return stored == given;
}

template <class F> bool onRecord(const F& fact, VesselRecord& record) {
    const Facts<F>& list = record.of<F>();
    if (!record.seen.perhaps(fact, list))
        return false;
    const Day on = dayOf(fact);
    const auto earlier = [](const Stored<F>& stored, Day day) { return dayOf(stored.fact) < day; };
    for (auto at = std::lower_bound(list.begin(), list.end(), on, earlier); at != list.end() && dayOf(at->fact) == on;
         ++at)
        if (same(at->fact, fact))
            return true;
    return false;
}

Result<void> tooLittle(Litres volume, const facts::VesselFact& vessel, const char* remedy) {
    const Litres least = vessel.capacity * constants::desk::thimble;
    if (volume >= least)
        return {};
    return badInput("/volume_l", say("desk.thimble").with("volume", volume).with("vessel", vessel.name),
                    say(remedy).with("least", least));
}

SpecificGravity original(const BrewFact& brew) {
    return brew.originalGravity.value_or(toGravity(brew.recipe.originalGravity));
}

} // namespace

Result<void> notOnRecord(const facts::Fact& fact, Cellar& cellar) {
    return std::visit(
        [&]<class F>(const F& f) -> Result<void> {
            if constexpr (happensOnce<F>) {
                auto record = cellar.vessel(f.vessel);
                if (record && onRecord(f, **record))
                    return badInput("", say("desk.on_record").with("on", dayOf(f)).with("vessel", f.vessel),
                                    say("desk.on_record.remedy"));
            }
            return {};
        },
        fact);
}

Result<void> inUseOn(const facts::VesselFact& vessel, Day on, const char* field) {
    if (!vessel.retired || on <= *vessel.retired)
        return {};
    return badInput(field, say("desk.retired").with("vessel", vessel.name).with("on", *vessel.retired),
                    say("desk.retired.remedy"));
}

Result<void> canRetire(const VesselRecord& record, const SharedFacts& shared, Day on) {
    if (record.facts.retired)
        return badInput("/vessel",
                        say("desk.retired").with("vessel", record.facts.name).with("on", *record.facts.retired),
                        say("desk.retired.twice"));
    std::optional<Day> last;
    for (const auto& entry : ledgerEntries(record, shared))
        last = std::max(last, std::optional(entry.on));
    if (!last || on >= *last)
        return {};
    return badInput("/on", say("desk.retired_before").with("vessel", record.facts.name).with("last", *last),
                    say("desk.retired_before.remedy").with("last", *last));
}

Result<void> canReturn(const facts::VesselFact& vessel, Day on) {
    if (!vessel.retired)
        return badInput("/vessel", say("desk.not_retired").with("vessel", vessel.name), say("desk.not_retired.remedy"));
    if (on < *vessel.retired)
        return badInput("/on", say("desk.retired").with("vessel", vessel.name).with("on", *vessel.retired),
                        say("desk.returns_before.remedy").with("on", *vessel.retired));
    return {};
}

bool runsOver(Litres volume, Litres capacity) {
    return volume.l > capacity.l * (1 + constants::desk::overflow);
}

Result<void> isDraw(Litres volume, const facts::VesselFact& vessel) {
    return tooLittle(volume, vessel, "desk.thimble.draw");
}

Result<void> isRefill(Litres volume, const facts::VesselFact& vessel) {
    return tooLittle(volume, vessel, "desk.thimble.refill");
}

Result<void> fermented(const BrewFact& brew) {
    if (brew.finalGravity && *brew.finalGravity > original(brew))
        return badInput(
            "/measured_final_gravity_sg",
            say("desk.final_above_original").with("final", *brew.finalGravity).with("original", original(brew)),
            say("desk.final_above_original.remedy"));
    return {};
}

Result<void> brewedBeforePoured(const BrewFact& brew, const Cellar& cellar) {
    const auto& known = cellar.shared().names.brewNames;
    if (std::none_of(known.begin(), known.end(), [&](const auto& each) { return each.second == brew.name; }))
        return {};
    const auto pourings = cellar.pourings(); // by name: one that is amended has no place among the brews
    if (!pourings)
        return fail(pourings.error());
    for (const Poured& poured : *pourings)
        if (poured.brew == brew.name && poured.on < brew.on)
            return badInput("/on",
                            say("desk.brewed_after_poured")
                                .with("brew", brew.name)
                                .with("vessel", poured.into)
                                .with("on", poured.on),
                            say("desk.brewed_after_poured.remedy").with("on", poured.on));
    return {};
}

Result<void> nameIsFree(const std::string& name, const std::string& like, const std::string& own) {
    if (like.empty() || like == own)
        return {};
    if (like == name)
        return badInput("/name", say("desk.name_taken").with("name", name), say("desk.name_taken.remedy"));
    return badInput("/name", say("desk.name_alike").with("name", name).with("like", like),
                    say("desk.name_taken.remedy"));
}

Result<void> knownFaults(const std::vector<tasting::FaultMark>& marks, const std::string& list) {
    const tasting::TastingSheet& sheet = tasting::builtInSheet();
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (sheet.findFault(marks[i].fault))
            continue;
        std::vector<std::string> known;
        for (const auto& fault : sheet.faults)
            known.push_back(fault.id);
        return badInput(list + "/" + std::to_string(i) + "/fault",
                        say("desk.unknown_fault").with("fault", excerpt(marks[i].fault)),
                        facts::offerName(marks[i].fault, known));
    }
    return {};
}

} // namespace staveline::desk
