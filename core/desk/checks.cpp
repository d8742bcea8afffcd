// SPDX-License-Identifier: GPL-3.0-or-later
// Meaning beyond fields and ranges: known malts, possible volumes, days in order. Forms and files meet the same.
#include "desk/entry_checks.h"
#include "desk/inside.h"
#include "desk/lot_checks.h"
#include "desk/own_ingredients.h"
#include "desk/refits.h"
#include "desk/rooms.h"
#include "quantity/parse.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace staveline::desk {
namespace {

Result<void> refuse(std::string field, Message cause, Message remedy) {
    return badInput(std::move(field), std::move(cause), std::move(remedy));
}

Result<void> notInTheFuture(Day on, Day today) {
    if (on > today)
        return refuse("/on", say("desk.future").with("on", on).with("today", today), say("desk.future.remedy"));
    return {};
}

/// The day a vessel was taken over in this book; none: it began with a first filling, or not at all.
std::optional<Day> takenOver(const VesselRecord& record) {
    const auto& openings = record.of<facts::OpeningFact>();
    return openings.empty() ? std::nullopt : std::optional(openings.front().fact.on);
}

/// Something was put into it by the end of that day, or found in it.
bool begunBy(const VesselRecord& record, Day on) {
    const auto by = [on](const auto& facts) {
        return std::any_of(facts.begin(), facts.end(),
                           [on](const auto& stored) { return stored.fact.on <= on && stored.fact.volume.l > 0; });
    };
    return by(record.of<facts::OpeningFact>()) || by(record.of<facts::RefillFact>()) ||
           by(record.of<facts::TopUpFact>()) || by(record.of<facts::DipFact>());
}

Result<void> afterOpening(const VesselRecord& record, Day on) {
    const auto opened = takenOver(record);
    if (opened && on < *opened)
        return refuse("/on", say("desk.before_opening").with("on", on).with("opened", *opened),
                      say("desk.before_opening.remedy"));
    return {};
}

Result<void> begun(const VesselRecord& record, Day on, const char* vesselField = "/vessel") {
    if (auto ok = afterOpening(record, on); !ok)
        return ok;
    if (!begunBy(record, on))
        return refuse(vesselField, say("desk.not_opened").with("vessel", record.facts.name),
                      say("desk.not_opened.remedy"));
    return {};
}

template <class F> Result<void> checkSource(const F& f, Cellar& cellar) {
    if (f.from.empty())
        return {};
    auto source = cellar.vessel(f.from);
    if (!source)
        return refuse("/from", source.error().cause, source.error().remedy);
    if (auto ok = inUseOn((*source)->facts, f.on, "/from"); !ok)
        return ok;
    return begun(**source, f.on, "/from");
}

template <class F> Result<void> checkInflow(const F& f, const VesselRecord& record, Cellar& cellar) {
    if (!f.brew.empty() && !f.from.empty())
        return refuse("/from", say("desk.two_sources"), say("desk.two_sources.remedy"));
    if (!f.lot.empty() && !(f.brew.empty() && f.from.empty()))
        return refuse("/lot", say("desk.two_sources"), say("desk.two_sources.remedy"));
    if (auto ok = f.lot.empty() ? Result<void>{} : isLot(f.lot, f.on, cellar); !ok)
        return ok;
    if (f.from == record.facts.name)
        return refuse("/from", say("desk.from_itself"), say("desk.from_itself.remedy"));
    if (auto ok = afterOpening(record, f.on); !ok)
        return ok;
    if (auto ok = checkPouring(f.brew, f.on, f.volume, cellar); !ok)
        return ok;
    return checkSource(f, cellar);
}

/// That the hops can bring their part is asked of what is recorded, not of what was.
Result<void> checkRecipe(const brewing::Recipe& recipe, const SharedFacts& shared, Day on,
                         const facts::VesselName& vessel) {
    auto input = resolve(recipe, shared.pantryOn(on), shared.kit(on, vessel).equipment.heatingRate);
    if (!input)
        return fail(input.error());
    return checkHopsBring(recipe);
}

/// Kilograms are those of one brew: a plan works them out.
Result<void> checkPlan(const brewing::Recipe& recipe, const SharedFacts& shared, Day on,
                       const facts::VesselName& vessel) {
    for (std::size_t i = 0; i < recipe.grist.size(); ++i)
        if (recipe.grist[i].mass)
            return refuse("/grist/" + std::to_string(i) + "/mass_kg", say("desk.weighed_plan"),
                          say("desk.weighed_plan.remedy"));
    return checkRecipe(recipe, shared, on, vessel);
}

/// All of the grist or none of it.
Result<void> checkWeights(const std::vector<brewing::GristPart>& grist) {
    const auto weighed = [](const brewing::GristPart& part) { return part.mass.has_value(); };
    const auto missing = std::find_if_not(grist.begin(), grist.end(), weighed);
    if (missing == grist.end() || std::none_of(grist.begin(), grist.end(), weighed))
        return {};
    return refuse("/grist/" + std::to_string(missing - grist.begin()) + "/mass_kg",
                  say("desk.not_weighed").with("grain", excerpt(missing->grain)), say("desk.not_weighed.remedy"));
}

/// A note or a word on drawing is no tasting: it would stand in front of the last one that has scores.
bool tastedAnything(const tasting::Sitting& sitting) {
    return std::any_of(sitting.scores.begin(), sitting.scores.end(),
                       [](const tasting::Score& score) { return score.cold || score.cellar; }) ||
           std::any_of(sitting.faults.begin(), sitting.faults.end(),
                       [](const tasting::FaultMark& mark) { return mark.severity > 0; });
}

Result<void> checkScores(const tasting::Sitting& sitting) {
    const tasting::TastingSheet& sheet = tasting::builtInSheet();
    if (!tastedAnything(sitting))
        return refuse("/scores", say("desk.nothing_scored"), say("desk.nothing_scored.remedy"));
    std::set<std::pair<std::string, std::string>> seen;
    for (std::size_t i = 0; i < sitting.scores.size(); ++i) {
        const tasting::Score& score = sitting.scores[i];
        const std::string at = "/scores/" + std::to_string(i);
        if (!sheet.find(score.attribute)) {
            std::vector<std::string> known;
            for (const auto& attribute : sheet.attributes)
                known.push_back(attribute.code);
            return refuse(at + "/attribute", say("desk.unknown_attribute").with("code", excerpt(score.attribute)),
                          facts::offerName(score.attribute, known));
        }
        if (!seen.emplace(score.taster, score.attribute).second)
            return refuse(at,
                          say("desk.scored_twice").with("code", score.attribute).with("taster", excerpt(score.taster)),
                          say("desk.scored_twice.remedy"));
        for (const auto& value : {score.cold, score.cellar})
            if (value && std::abs(*value * 2 - std::round(*value * 2)) > 1e-9)
                return refuse(at, say("desk.half_steps").with("value", Number{*value, 2}),
                              say("desk.half_steps.remedy"));
    }
    return knownFaults(sitting.faults, "/faults");
}

Result<void> noSitting(const Facts<facts::SittingFact>& sittings, const facts::SittingUseFact& f) {
    Message cause = say("desk.no_sitting").with("vessel", f.vessel).with("on", f.sitting);
    if (sittings.empty())
        return refuse("/sitting", std::move(cause), say("desk.no_sitting.none"));
    const auto nearest = std::min_element(sittings.begin(), sittings.end(), [&](const auto& a, const auto& b) {
        return std::abs(daysBetween(a.fact.sitting.on, f.sitting)) <
               std::abs(daysBetween(b.fact.sitting.on, f.sitting));
    });
    return refuse("/sitting", std::move(cause),
                  say("desk.no_sitting.remedy").with("nearest", nearest->fact.sitting.on));
}

Result<void> nothingChanged(const facts::VesselName& vessel) {
    return refuse("", say("desk.nothing_changed").with("vessel", vessel), say("desk.nothing_changed.remedy"));
}

/// What goes back to the material's value is one of those that can, and is not given as well.
Result<void> checkCleared(const facts::RefitFact& f) {
    const auto given = [&](std::string_view field) {
        return (field == "evaporation_per_year" && f.evaporationPerYear) ||
               (field == "oxygen_mg_l_year" && f.oxygenPerYear) || (field == "culture_held_back" && f.cultureHeldBack);
    };
    const auto& known = facts::factWords::clearable;
    for (std::size_t i = 0; i < f.clear.size(); ++i) {
        const std::string at = "/clear/" + std::to_string(i);
        if (std::find(known.begin(), known.end(), f.clear[i]) == known.end())
            return refuse(at, say("desk.not_clearable").with("field", f.clear[i]), say("desk.not_clearable.remedy"));
        if (given(f.clear[i]))
            return refuse(at, say("desk.given_and_cleared").with("field", f.clear[i]),
                          say("desk.given_and_cleared.remedy"));
    }
    return {};
}

Result<void> checkWantedAge(const facts::VesselEditFact& f) {
    const auto cleared = std::find(f.clear.begin(), f.clear.end(), facts::factWords::wantedAge);
    if (f.wantedAgeYears && cleared != f.clear.end())
        return refuse("/clear/" + std::to_string(cleared - f.clear.begin()),
                      say("desk.given_and_cleared").with("field", *cleared), say("desk.given_and_cleared.remedy"));
    return {};
}

/// As a plan of the brewer's own would be: what a vessel is steered by is never taken unseen.
Result<void> checkForecast(const facts::Forecast& forecast, const VesselRecord& record, const SharedFacts& shared,
                           Day on) {
    if (auto ok = checkPlan(forecast.recipe, shared, on, record.facts.name); !ok)
        return fail(under("/forecast/recipe", ok.error()));
    if (auto ok = knownFaults(forecast.target.wantedTraits, "/forecast/target/wanted_traits"); !ok)
        return ok;
    const Litres capacity = vesselOn(record, on).capacity;
    if (runsOver(forecast.draw, capacity))
        return refuse("/forecast/draw_l",
                      say("desk.above_capacity").with("volume", forecast.draw).with("capacity", capacity),
                      say("desk.above_capacity.remedy"));
    if (forecast.nextDraw < forecast.thisDraw)
        return refuse("/forecast/next_draw", say("desk.next_before_this"), say("desk.next_before_this.remedy"));
    return {};
}

struct Meaning {
    Cellar& cellar;
    Day today;

    [[nodiscard]] const SharedFacts& shared() const { return cellar.shared(); }
    Result<void> with(const facts::VesselName& name, auto&& check) {
        auto record = cellar.vessel(name);
        if (!record)
            return fail(record.error());
        return check(**record);
    }
    Result<void> inUse(const facts::VesselName& name, Day on, auto&& check) {
        return with(name, [&](const VesselRecord& record) -> Result<void> {
            if (auto ok = inUseOn(record.facts, on); !ok)
                return ok;
            return check(record);
        });
    }
    Result<void> ledgerDay(const facts::VesselName& name, Day on, auto&& check) {
        if (auto ok = notInTheFuture(on, today); !ok)
            return ok;
        return inUse(name, on, check);
    }
    [[nodiscard]] vessel::LedgerState stateOn(const VesselRecord& record, Day on) const {
        auto entries = ledgerEntries(record, shared());
        std::erase_if(entries, [&](const vessel::LedgerEntry& entry) { return entry.on > on; });
        return replayNow(entries, shapesOf(record), on).now;
    }

    /// In the morning or in the evening of a day.
    [[nodiscard]] Result<void> heldBeer(const VesselRecord& record, Day on) const {
        const Litres least = vesselOn(record, on).capacity * vessel::roundingOfCapacity;
        if (stateOn(record, on).volume > least || stateOn(record, on - std::chrono::days{1}).volume > least)
            return {};
        return refuse("/on", say("desk.nothing_held").with("vessel", record.facts.name).with("on", on),
                      say("desk.nothing_held.remedy"));
    }

    /// Whatever else an entry says, its day lies between the opening and today.
    template <class F>
    requires(facts::factTraits<F>.entry.has_value()) Result<void>
    operator()(const F& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& record) { return afterOpening(record, f.on); });
    }
    Result<void> operator()(const facts::EventFact& f) {
        if (!f.culture.empty() && f.what != facts::Happening::pitched)
            return refuse("/culture", say("desk.event.culture"), say("desk.event.culture.remedy"));
        if (f.volume && !facts::losesBeer(f.what))
            return refuse("/volume_l", say("desk.event.volume"), say("desk.event.volume.remedy"));
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& record) { return afterOpening(record, f.on); });
    }

    Result<void> operator()(const facts::RoomFact& f) {
        if (auto ok = notInTheFuture(f.on, today); !ok)
            return ok;
        if (auto ok = spelledAlike(f.name, *shared().rooms); !ok)
            return ok;
        return checkYear(f);
    }
    Result<void> operator()(const facts::VesselFact& f) {
        if (auto ok = knownRoom(f.room, *shared().rooms); !ok)
            return ok;
        if (auto ok = nameIsFree(f.name, shared().names.vesselLike(f.name)); !ok)
            return ok;
        return isNoLot(f.name, cellar);
    }
    Result<void> operator()(const facts::VesselEditFact& f) {
        facts::VesselEditFact nothing;
        nothing.vessel = f.vessel;
        nothing.on = f.on;
        if (f == nothing)
            return nothingChanged(f.vessel);
        return with(f.vessel, [&](const VesselRecord& record) -> Result<void> {
            if (f.name && *f.name != record.facts.name) {
                if (auto ok = nameIsFree(*f.name, shared().names.vesselLike(*f.name), record.facts.name); !ok)
                    return ok;
                if (auto ok = isNoLot(*f.name, cellar); !ok)
                    return ok;
            }
            if (auto ok = checkWantedAge(f); !ok)
                return ok;
            const auto refit = refitIn(f, today);
            return refit ? canBecome(*refit, record) : Result<void>{};
        });
    }
    Result<void> operator()(const facts::RefitFact& f) {
        facts::RefitFact nothing;
        nothing.vessel = f.vessel;
        nothing.on = f.on;
        if (f == nothing)
            return nothingChanged(f.vessel);
        return with(f.vessel, [&](const VesselRecord& record) { return canBecome(f, record); });
    }
    [[nodiscard]] Result<void> canBecome(const facts::RefitFact& f, const VesselRecord& record) const {
        if (auto ok = notInTheFuture(f.on, today); !ok)
            return ok;
        if (auto ok = checkCleared(f); !ok)
            return ok;
        if (auto ok = knownRoom(f.room.value_or(std::string()), *shared().rooms); !ok)
            return ok;
        if (f.temperature && f.room && !f.room->empty())
            return refuse("/temperature_c", say("desk.room.temperature_too").with("room", *f.room),
                          say("desk.room.temperature_too.remedy"));
        const Litres held = stateOn(record, f.on).volume;
        if (f.capacity && f.capacity->l < held.l)
            return refuse("/capacity_l",
                          say("desk.capacity_below_held").with("capacity", *f.capacity).with("held", held),
                          say("desk.capacity_below_held.remedy").with("held", held));
        return {};
    }
    Result<void> operator()(const facts::RetireFact& f) {
        if (auto ok = notInTheFuture(f.on, today); !ok)
            return ok;
        return with(f.vessel, [&](const VesselRecord& record) { return canRetire(record, shared(), f.on); });
    }
    Result<void> operator()(const facts::BringBackFact& f) {
        if (auto ok = notInTheFuture(f.on, today); !ok)
            return ok;
        return with(f.vessel, [&](const VesselRecord& record) { return canReturn(record.facts, f.on); });
    }
    Result<void> operator()(const facts::CultureFact& f) {
        return with(f.vessel, [](const VesselRecord&) { return Result<void>{}; });
    }
    Result<void> operator()(const facts::EquipmentFact&) { return {}; }
    Result<void> operator()(const facts::BaseRecipeFact& f) {
        return with(f.vessel, [&](const VesselRecord&) { return checkPlan(f.recipe, shared(), f.on, f.vessel); });
    }
    Result<void> operator()(const facts::TargetFact& f) {
        return with(f.vessel, [&](const VesselRecord&) -> Result<void> {
            if (f.target.gravityLow > f.target.gravityHigh)
                return refuse("/gravity_low_p", say("desk.low_above_high"), say("desk.low_above_high.remedy"));
            if (f.target.alcoholLow > f.target.alcoholHigh)
                return refuse("/alcohol_low_pct", say("desk.low_above_high"), say("desk.low_above_high.remedy"));
            return knownFaults(f.target.wantedTraits, "/wanted_traits");
        });
    }
    Result<void> operator()(const facts::OpeningFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& record) -> Result<void> {
            if (!record.of<facts::OpeningFact>().empty())
                return refuse("/on",
                              say("desk.opened_twice").with("on", record.of<facts::OpeningFact>().front().fact.on),
                              say("desk.opened_twice.remedy"));
            return {};
        });
    }
    Result<void> operator()(const facts::SittingFact& f) {
        return ledgerDay(f.vessel, f.sitting.on, [&](const VesselRecord& record) -> Result<void> {
            if (auto ok = begun(record, f.sitting.on); !ok)
                return ok;
            if (auto ok = heldBeer(record, f.sitting.on); !ok)
                return ok;
            return checkScores(f.sitting);
        });
    }
    Result<void> operator()(const facts::SittingUseFact& f) {
        return with(f.vessel, [&](const VesselRecord& record) -> Result<void> {
            const auto& sittings = record.of<facts::SittingFact>();
            const auto ofDay = std::count_if(sittings.begin(), sittings.end(),
                                             [&](const auto& stored) { return stored.fact.sitting.on == f.sitting; });
            if (ofDay == 0)
                return noSitting(sittings, f);
            if (f.which > ofDay)
                return refuse("/which", say("desk.too_few_sittings").with("on", f.sitting).with("count", ofDay),
                              say("desk.too_few_sittings.remedy").with("count", ofDay));
            return {};
        });
    }
    Result<void> operator()(const facts::ReadingFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& record) {
            if (f.measured == facts::Measured{} && f.note.empty())
                return refuse("", say("desk.nothing_measured"), say("desk.nothing_measured.remedy"));
            return afterOpening(record, f.on);
        });
    }
    Result<void> operator()(const facts::SampleFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& r) { return begun(r, f.on); });
    }
    Result<void> operator()(const facts::DrawOffFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& r) -> Result<void> {
            if (auto ok = isDraw(f.volume, vesselOn(r, f.on)); !ok)
                return ok;
            if (auto ok = begun(r, f.on); !ok)
                return ok;
            return f.lot.empty() ? Result<void>{} : canBeLot(f.lot, "/lot", cellar);
        });
    }
    Result<void> operator()(const facts::RefillFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& r) -> Result<void> {
            if (auto ok = isRefill(f.volume, vesselOn(r, f.on)); !ok)
                return ok;
            return checkInflow(f, r, cellar);
        });
    }
    Result<void> operator()(const facts::TopUpFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& r) { return checkInflow(f, r, cellar); });
    }
    Result<void> operator()(const facts::BrewFact& f) {
        if (auto ok = notInTheFuture(f.on, today); !ok)
            return ok;
        if (auto ok = nameIsFree(f.name, shared().names.brewLike(f.name)); !ok)
            return ok;
        if (auto ok = fermented(f); !ok)
            return ok;
        if (auto ok = brewedBeforePoured(f, cellar); !ok)
            return ok;
        if (auto ok = givesWhatWasPoured(f, cellar); !ok)
            return ok;
        if (!f.vessel.empty())
            if (auto record = cellar.vessel(f.vessel); !record)
                return fail(record.error());
        if (auto ok = checkWeights(f.recipe.grist); !ok)
            return ok;
        return checkRecipe(f.recipe, shared(), f.on, f.vessel);
    }
    Result<void> operator()(const facts::RoundFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord&) -> Result<void> {
            facts::RoundFact nothing;
            nothing.vessel = f.vessel;
            nothing.on = f.on;
            if (f == nothing)
                return refuse("", say("desk.nothing_seen").with("vessel", f.vessel), say("desk.nothing_seen.remedy"));
            if (f.nextLook && *f.nextLook <= f.on)
                return refuse("/next_look", say("desk.next_look_past").with("next", *f.nextLook).with("on", f.on),
                              say("desk.next_look_past.remedy"));
            return {};
        });
    }
    Result<void> operator()(const facts::DrawDateFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& record) -> Result<void> {
            if (auto ok = begun(record, f.on); !ok)
                return ok;
            const vessel::LedgerState then = stateOn(record, f.on);
            if (drawnForRefill(record, then))
                return refuse("/draw_on",
                              say("desk.drawn_already").with("vessel", record.facts.name).with("on", *then.lastDraw),
                              say("desk.drawn_already.remedy"));
            if (auto ok = heldBeer(record, f.on); !ok)
                return ok;
            if (f.drawOn && *f.drawOn < f.on)
                return refuse("/draw_on", say("desk.draw_date_past").with("draw", *f.drawOn).with("on", f.on),
                              say("desk.draw_date_past.remedy"));
            return {};
        });
    }
    Result<void> operator()(const facts::WorkDateFact& f) {
        return ledgerDay(f.vessel, f.on, [&](const VesselRecord& record) -> Result<void> {
            if (auto ok = afterOpening(record, f.on); !ok)
                return ok;
            if (f.work == facts::Work::taste) {
                if (auto ok = begun(record, f.on); !ok)
                    return ok;
                if (auto ok = heldBeer(record, f.on); !ok)
                    return ok;
            } else if (const auto* brew = brewForRefill(record, cellar, stateOn(record, f.on), f.on)) {
                return refuse("/what", say("desk.brewed_by").with("brew", brew->name).with("on", brew->on),
                              say("desk.brewed_by.remedy"));
            }
            if (f.workOn && *f.workOn < f.on)
                return refuse("/due_on", say("desk.work_date_past").with("work", *f.workOn).with("on", f.on),
                              say("desk.work_date_past.remedy"));
            return {};
        });
    }
    Result<void> operator()(const facts::LockFact& f) {
        return with(f.vessel, [&](const VesselRecord& record) -> Result<void> {
            const advice::LeverValue value = f.value ? advice::LeverValue{*f.value} : advice::LeverValue{f.choice};
            const auto tried = withLever(settingInUse(record, shared().pantry, replayOf(record, shared(), f.on).now),
                                         f.lever, value, shared().pantry);
            const auto& levers = advice::builtInLevers();
            const bool known =
                std::any_of(levers.begin(), levers.end(), [&](const auto& row) { return row.id == f.lever; });
            if (!tried && !known)
                return refuse("/lever", tried.error().cause, tried.error().remedy);
            if (!f.locked)
                return {};
            if (!f.value && f.choice.empty())
                return refuse("/value", say("desk.lock_without_value"), say("desk.lock_without_value.remedy"));
            if (!tried)
                return refuse(f.value ? "/value" : "/choice", tried.error().cause, tried.error().remedy);
            return {};
        });
    }
    template <class F>
    requires requires(const F& f) { f.like; }
    Result<void> operator()(const F& f) {
        if (auto ok = notInTheFuture(f.on, today); !ok)
            return ok;
        return canBeOwn(f, shared());
    }
    template <class F>
    requires(mayTouchLots<F> && !facts::perVessel<F>) Result<void>
    operator()(const F& f) {
        if (auto ok = notInTheFuture(f.on, today); !ok)
            return ok;
        if (auto ok = canBe(f, cellar); !ok)
            return ok;
        return isNew(f, cellar);
    }
    Result<void> operator()(const facts::AvailabilityFact& f) {
        const ingredient::Pantry& pantry = shared().pantry;
        if (!pantry.grain(f.item) && !pantry.yeast(f.item) && !pantry.hop(f.item))
            return fail(pantry.grain(f.item, "/item").error());
        if (f.packs && !pantry.yeast(f.item))
            return refuse("/packs", say("desk.packs_of_grain"), say("desk.packs_of_grain.remedy"));
        if (!f.available && ((f.mass && f.mass->kg > 0) || (f.packs && *f.packs > 0)))
            return refuse("/available", say("desk.none_but_some"), say("desk.none_but_some.remedy"));
        return {};
    }
    Result<void> operator()(const facts::ChoiceFact& f) {
        return inUse(f.vessel, f.on, [&](const VesselRecord& record) -> Result<void> {
            if (f.forecast)
                if (auto ok = checkForecast(*f.forecast, record, shared(), f.on); !ok)
                    return ok;
            return notBrewedYet(record, cellar, f.on);
        });
    }
};

} // namespace

Result<void> checkMeaning(const facts::Fact& fact, Cellar& cellar, Day today) {
    if (auto shared = cellar.loadShared(); !shared)
        return shared;
    Meaning meaning{cellar, today};
    if (auto ok = std::visit(meaning, fact); !ok)
        return ok;
    return notOnRecord(fact, cellar);
}

} // namespace staveline::desk
