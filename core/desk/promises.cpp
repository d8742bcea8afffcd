// SPDX-License-Identifier: GPL-3.0-or-later
// What is promised of a choice, and how choices and what is in force are set.
#include "advice/board.h"
#include "advice/on_scale.h"
#include "desk/advice.h"
#include "desk/inside.h"
#include "facts/kept_words.h"

#include <algorithm>
#include <boost/crc.hpp>
#include <fmt/core.h>

namespace staveline::desk {

using advice::Advice;
using advice::Setting;
using facts::ChoiceFact;
using facts::Fact;
using facts::Forecast;
using tasting::z80;

namespace {

std::string fingerprintOf(const advice::AdviceInput& input) {
    std::string text = facts::recipeJson(input.base.recipe) + facts::targetJson(input.target);
    for (auto pool : compositionPools)
        text += fmt::format("{:a};", input.state.beer.*pool);
    text += fmt::format("{:a};{:a};{:a};{:a};{:a};{:a}", input.state.lactics, input.state.brett,
                        input.state.hopTolerance, input.state.enzyme, input.volumeAtDraw.l, input.fillTo.l);
    boost::crc_optimal<64, 0x42F0E1EBA9EA3693ULL, 0xFFFFFFFFFFFFFFFFULL, 0xFFFFFFFFFFFFFFFFULL, true, true> crc;
    crc.process_bytes(text.data(), text.size());
    return fmt::format("{:016x}", static_cast<std::uint64_t>(crc.checksum()));
}

/// Everything but what led to it.
Forecast promised(const AdviceJob& job, const Setting& setting, const PerDimension<advice::Band>& next) {
    Forecast forecast;
    for (Dimension d : allDimensions) {
        const advice::Band told = onScale(next[d]);
        forecast.mean[d] = told.value;
        forecast.low[d] = told.low;
        forecast.high[d] = told.high;
        forecast.sd[d] = (next[d].high - next[d].low) / (2 * z80);
    }
    forecast.recipe = setting.recipe;
    forecast.draw = setting.draw;
    forecast.interval = setting.interval;
    forecast.temperature = setting.temperature;
    forecast.modelVersion = std::string(forward::modelVersion);
    forecast.fingerprint = fingerprintOf(job.input);
    forecast.target = job.input.target;
    return forecast;
}

Forecast forecastOf(const AdviceJob& job, const advice::Proposal& proposal) {
    Forecast forecast = promised(job, proposal.setting, proposal.next);
    for (const auto& move : proposal.moves)
        forecast.moves.push_back(facts::keptWords(move.wording));
    for (const auto& reason : proposal.reasons)
        forecast.reasons.push_back(facts::keptWords(reason));
    return forecast;
}

/// Of a setting of the brewer's own.
Result<ChoiceFact> ownChoice(const AdviceJob& job, const Setting& setting, Day on, std::vector<std::string> moves) {
    auto trial = advice::TryBoard(job.input).trial(setting, advice::TrialDepth::next);
    if (!trial)
        return fail(trial.error());
    ChoiceFact choice{job.vessel, on, ChoiceFact::own, promised(job, setting, trial->next)};
    choice.forecast->moves = std::move(moves);
    choice.forecast->reasons.push_back(facts::keptWords(say("desk.own_plan")));
    return choice;
}

/// The days a promise speaks of are those of its own plan: another yeast takes longer.
void takeDates(Forecast& forecast, const CurrentVessel& vessel, const Cellar& cellar) {
    const vessel::Schedule dates =
        datesWith(vessel, cellar, {forecast.recipe, forecast.draw, forecast.interval, forecast.temperature});
    forecast.thisDraw = dates.draw;
    forecast.nextDraw = dates.nextDraw;
}

const advice::Proposal* proposalNumber(const Advice& advice, int number) {
    if (number == 0)
        return &advice.leaveAlone;
    const auto index = static_cast<std::size_t>(number - 1);
    return number > 0 && index < advice.proposals.size() ? &advice.proposals[index] : nullptr;
}

Result<ChoiceFact> choiceOf(const AdviceJob& job, const Advice& advice, int number, Day on) {
    const advice::Proposal* proposal = proposalNumber(advice, number);
    if (!proposal && advice.proposals.empty())
        return fail({FaultKind::notPossible, "/proposal", say("desk.no_proposal"), say("desk.no_proposal.remedy")});
    if (!proposal)
        return badInput("/proposal",
                        say("desk.no_such_proposal")
                            .with("number", std::int64_t{number})
                            .with("count", static_cast<std::int64_t>(advice.proposals.size())),
                        say("desk.no_such_proposal.remedy"));
    ChoiceFact choice;
    choice.vessel = job.vessel;
    choice.on = on;
    choice.proposal = number;
    choice.forecast = forecastOf(job, *proposal);
    return choice;
}

} // namespace

advice::Band promisedBand(const Forecast& told, Dimension d) {
    const double half = z80 * told.sd[d];
    return onScale(advice::Band{told.mean[d], told.low[d].value_or(told.mean[d] - half),
                                told.high[d].value_or(told.mean[d] + half)});
}

Result<ChoiceFact> Desk::promise(const facts::VesselName& vessel, int number, Day on) const {
    auto job = adviceJob({vessel, {}, {}, false});
    if (!job)
        return fail(job.error());
    auto advice = staveline::advice::advise(job->input);
    if (!advice)
        return fail(advice.error());
    return promise(*job, *advice, number, on);
}

Result<ChoiceFact> Desk::promise(const AdviceJob& job, const Advice& advice, int number, Day on) const {
    auto vessel = inside_->current(job.vessel);
    if (!vessel)
        return fail(vessel.error());
    auto choice = choiceOf(job, advice, number, on);
    if (choice)
        takeDates(*choice->forecast, **vessel, *inside_->cellar);
    return choice;
}

Result<ChoiceFact> Desk::promiseOwn(const AdviceJob& job, const Setting& setting) const {
    auto found = inside_->current(job.vessel);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    const ingredient::Pantry& pantry = inside_->cellar->shared().pantry;
    auto choice =
        ownChoice(job, setting, today(), changesSinceLastRefill(vessel.record, pantry, vessel.now(), setting));
    if (choice)
        takeDates(*choice->forecast, vessel, *inside_->cellar);
    return choice;
}

/// As it was stored: it has its place among the entries of the day.
Result<Chosen> Desk::chosen(const ChoiceFact& choice) {
    auto done = record(Fact{choice});
    if (!done)
        return fail(done.error());
    const book::RowKey& row = done->rows.front();
    auto stored = fact(row.table, row.id);
    if (!stored)
        return fail(stored.error());
    return Chosen{std::get<ChoiceFact>(*std::move(stored)), *std::move(done)};
}

Result<Chosen> Desk::choose(const AdviceJob& job, const Advice& advice, int number) {
    const Batch once(*this); // the look for other programs may tell too
    if (auto current = requireCurrent(job); !current)
        return fail(current.error());
    auto choice = promise(job, advice, number, today());
    if (!choice)
        return fail(choice.error());
    return chosen(*choice);
}

/// A promise made from what the book no longer says would be no promise.
Result<void> Desk::requireCurrent(const AdviceJob& job) {
    poll();
    if (job.revision == revision())
        return {};
    return fail({FaultKind::notPossible, "", say("desk.stale_advice").with("vessel", job.vessel),
                 say("desk.stale_advice.remedy")});
}

Result<Chosen> Desk::adopt(const AdviceJob& job, const Setting& setting) {
    const Batch once(*this);
    if (auto current = requireCurrent(job); !current)
        return fail(current.error());
    auto choice = promiseOwn(job, setting);
    if (!choice)
        return fail(choice.error());
    return chosen(*choice);
}

Result<Recorded> Desk::revise(const facts::VesselName& name, const Setting& setting, const EditNote& note) {
    auto found = inside_->current(name);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    if (auto ok = notBrewedYet(vessel.record, *inside_->cellar, today()); !ok)
        return fail(ok.error());
    // Nothing can be promised of an empty vessel: its recipe is the one it will run on.
    if (vessel.toFill)
        return setToday(Fact{facts::BaseRecipeFact{name, today(), setting.recipe}}, note);
    auto job = adviceJob({name, {}, {}, false});
    if (!job)
        return fail(job.error());
    auto choice = promiseOwn(*job, setting);
    if (!choice)
        return fail(choice.error());
    // What went into the vessel by an earlier choice of today stays as it was.
    const ChoiceFact* open = openChoice(vessel.record, vessel.now());
    return open && open->on == today() ? setToday(Fact{*choice}, note) : record(Fact{*choice}, note);
}

namespace {

/// The stored fact of today that `fact` takes the place of; none: nullptr.
template <class F> const Stored<F>* ofToday(const Facts<F>& list, const F& fact) {
    if constexpr (std::is_same_v<F, facts::EquipmentFact>) {
        const auto same = [&](const Stored<F>& stored) {
            const F& old = stored.fact;
            return old.on == fact.on && old.vessel == fact.vessel && old.equipment.name == fact.equipment.name;
        };
        const auto at = std::find_if(list.rbegin(), list.rend(), same);
        return at == list.rend() ? nullptr : &*at;
    }
    if (list.empty() || list.back().fact.on != fact.on)
        return nullptr;
    if constexpr (std::is_same_v<F, ChoiceFact>)
        return list.back().fact.proposal == ChoiceFact::own ? &list.back() : nullptr;
    else
        return &list.back();
}

} // namespace

Result<Recorded> Desk::setToday(const Fact& fact, const EditNote& note) {
    Cellar& cellar = *inside_->cellar;
    const auto set = [&]<class F>(const F& given, const Facts<F>& list) {
        const Stored<F>* old = ofToday(list, given);
        return old ? amend(std::string(facts::tableOf<F>), old->id, fact, note) : record(fact, note);
    };
    const auto visit = [&]<class F>(const F& given) -> Result<Recorded> {
        if constexpr (std::is_same_v<F, facts::TargetFact> || std::is_same_v<F, facts::BaseRecipeFact> ||
                      std::is_same_v<F, ChoiceFact>) {
            auto found = cellar.vessel(given.vessel);
            return found ? set(given, (*found)->template of<F>()) : fail(found.error());
        } else if constexpr (std::is_same_v<F, facts::EquipmentFact>) {
            auto shared = cellar.loadShared();
            return shared ? set(given, cellar.shared().equipment) : fail(shared.error());
        } else {
            return record(fact, note);
        }
    };
    return std::visit(visit, fact);
}

} // namespace staveline::desk
