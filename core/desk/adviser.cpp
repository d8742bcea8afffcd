// SPDX-License-Identifier: GPL-3.0-or-later
// From the book to the adviser and back: jobs, promises, the planned recipe and its sheet.
#include "desk/inside.h"

#include <algorithm>
#include <boost/crc.hpp>
#include <cmath>
#include <fmt/core.h>

namespace staveline {
namespace {

std::vector<LeverLock> recordedLocks(const VesselRecord& record, Day today) {
    std::vector<LeverLock> locks;
    for (const auto& lock : locksInForce(record, today))
        locks.push_back({lock.lever, lock.value ? LeverValue{*lock.value} : LeverValue{lock.choice}});
    return locks;
}

std::set<std::string> unavailableItems(const SharedFacts& shared, Day today, Day brewDay) {
    std::set<std::string> items;
    for (const auto& each : availabilityOn(shared, today))
        if (!each.available && !(each.readyOn && *each.readyOn <= brewDay))
            items.insert(each.item);
    return items;
}

std::string fingerprintOf(const AdviceInput& input) {
    std::string text = recipeJson(input.base.recipe) + targetJson(input.target);
    for (auto pool : compositionPools)
        text += fmt::format("{:a};", input.state.beer.*pool);
    text += fmt::format("{:a};{:a};{:a};{:a};{:a}", input.state.lactics, input.state.brett, input.state.hopTolerance,
                        input.volumeAtDraw.l, input.fillTo.l);
    boost::crc_optimal<64, 0x42F0E1EBA9EA3693ULL, 0xFFFFFFFFFFFFFFFFULL, 0xFFFFFFFFFFFFFFFFULL, true, true> crc;
    crc.process_bytes(text.data(), text.size());
    return fmt::format("{:016x}", static_cast<std::uint64_t>(crc.checksum()));
}

/// Everything but what led to it.
Forecast promised(const AdviceJob& job, const Setting& setting, const PerDimension<Band>& next) {
    Forecast forecast;
    for (Dimension d : allDimensions) {
        forecast.mean[d] = next[d].value;
        forecast.sd[d] = (next[d].high - next[d].low) / (2 * z80);
    }
    forecast.recipe = setting.recipe;
    forecast.draw = setting.draw;
    forecast.interval = setting.interval;
    forecast.temperature = setting.temperature;
    forecast.thisDraw = job.dates.draw;
    forecast.nextDraw = job.dates.draw + std::chrono::days{static_cast<int>(std::lround(setting.interval.d))};
    forecast.modelVersion = std::string(modelVersion);
    forecast.fingerprint = fingerprintOf(job.input);
    forecast.target = job.input.target;
    return forecast;
}

Forecast forecastOf(const AdviceJob& job, const Proposal& proposal) {
    Forecast forecast = promised(job, proposal.setting, proposal.next);
    for (const auto& move : proposal.moves)
        forecast.moves.push_back(render(move.wording));
    for (const auto& reason : proposal.reasons)
        forecast.reasons.push_back(render(reason));
    return forecast;
}

/// Of a setting of the brewer's own.
Result<ChoiceFact> ownChoice(const AdviceJob& job, const Setting& setting, Day on) {
    auto trial = TryBoard(job.input).trial(setting, TrialDepth::next);
    if (!trial)
        return fail(trial.error());
    ChoiceFact choice{job.vessel, on, ChoiceFact::own, promised(job, setting, trial->next)};
    for (const auto& wording : wordingsOf(job.input, setting))
        choice.forecast->moves.push_back(render(wording));
    choice.forecast->reasons.push_back(render(say("desk.own_plan")));
    return choice;
}

/// The stored promise in the shape the sheet reads.
Proposal promisedProposal(const Forecast& forecast) {
    Proposal proposal;
    for (const auto& text : forecast.moves) {
        Move move;
        move.wording = say("desk.plain").with("text", text);
        proposal.moves.push_back(std::move(move));
    }
    for (const auto& text : forecast.reasons)
        proposal.reasons.push_back(say("desk.plain").with("text", text));
    return proposal;
}

const Proposal* proposalNumber(const Advice& advice, int number) {
    if (number == 0)
        return &advice.leaveAlone;
    const auto index = static_cast<std::size_t>(number - 1);
    return number > 0 && index < advice.proposals.size() ? &advice.proposals[index] : nullptr;
}

Result<ChoiceFact> choiceOf(const AdviceJob& job, const Advice& advice, int number, Day on) {
    const Proposal* proposal = proposalNumber(advice, number);
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

Result<BrewPlan> sized(const Setting& setting, const VesselRecord& record, const SharedFacts& shared, Day today) {
    const EquipmentFact kit = shared.kit(today);
    auto input = resolve(setting.recipe, shared.pantry, kit.equipment.heatingRate);
    if (!input)
        return fail(input.error());
    const RefillBeer beer = brew(*input, parametersFor(record, today).brew);
    return sizedFor(*input, beer, kit, refillWanted(setting, record, shared, today));
}

} // namespace

Result<Setting> Desk::setting(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    return settingInUse(**record, today());
}

std::optional<ChoiceFact> Desk::lastChoice(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record || (*record)->of<ChoiceFact>().empty())
        return {};
    return (*record)->of<ChoiceFact>().back().fact;
}

Result<EstimatesView> Desk::estimates(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    return estimatesOf(**record, *inside_->cellar, today());
}

Result<AdviceJob> Desk::adviceJob(const AdviceRequest& request) const {
    Cellar& cellar = *inside_->cellar;
    auto found = cellar.vessel(request.vessel);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    const SharedFacts& shared = cellar.shared();
    const Day now = today();
    AdviceJob job;
    job.vessel = request.vessel;
    job.revision = revision();
    auto estimates = estimatesOf(record, cellar, now);
    if (!estimates)
        return fail(estimates.error());
    auto state = stateOn(record, cellar, now);
    if (!state)
        return fail(state.error());
    const LedgerState held = replayOf(record, shared, now).now;
    job.dates = datesOf(record, shared, held, now);
    job.estimates = *estimates;
    if (const BrewFact* brewed = brewForRefill(record, shared, held, now))
        job.brewed = *brewed;
    AdviceInput& in = job.input;
    in.state = *state;
    in.volumeAtDraw = volumeOnDraw(record, shared, now, job.dates.draw);
    in.fillTo = usualFill(record, shared, now);
    in.toThisDraw = Days{static_cast<double>(std::max(0, daysBetween(now, job.dates.draw)))};
    in.oxygenPerYear = oxygenOf(record.facts);
    in.canChangeTemperature = record.facts.canChangeTemperature;
    if (const CultureFact* culture = record.latest<CultureFact>(now)) {
        in.houseYeastKillerSensitive = culture->killerSensitive;
        in.brettEstablished = culture->brettanomyces == "established";
    }
    in.model = estimates->model;
    in.combined = estimates->combined;
    in.evidence = estimates->evidence;
    if (const TargetFact* target = record.latest<TargetFact>(now))
        in.target = target->target;
    in.verdicts = estimates->verdicts;
    in.base = settingInUse(record, now);
    in.equipment = shared.kit(now).equipment;
    in.margin = shared.kit(now).margin;
    if (!request.withoutRecorded)
        in.locks = recordedLocks(record, now);
    for (const auto& lock : request.locks) {
        std::erase_if(in.locks, [&](const LeverLock& old) { return old.lever == lock.lever; });
        in.locks.push_back(lock);
    }
    if (!request.withoutRecorded)
        in.unavailable = unavailableItems(shared, now, job.dates.brew);
    in.unavailable.insert(request.unavailable.begin(), request.unavailable.end());
    in.daysToBrew = std::max(0, daysBetween(now, job.dates.brew));
    in.parameters = parametersFor(record, now);
    job.pantry = std::make_shared<const Pantry>(shared.pantry);
    in.pantry = job.pantry.get();
    in.withSettled = request.withSettled;
    return job;
}

Result<Advice> Desk::advise(const AdviceRequest& request) const {
    auto job = adviceJob(request);
    if (!job)
        return fail(job.error());
    return staveline::advise(job->input);
}

Result<ChoiceFact> Desk::promise(const VesselName& vessel, int number, Day on) const {
    auto job = adviceJob({vessel, {}, {}, false});
    if (!job)
        return fail(job.error());
    auto advice = staveline::advise(job->input);
    if (!advice)
        return fail(advice.error());
    return choiceOf(*job, *advice, number, on);
}

Result<ChoiceFact> Desk::choose(const AdviceJob& job, const Advice& advice, int number) {
    auto choice = choiceOf(job, advice, number, today());
    if (!choice)
        return choice;
    if (auto done = record(Fact{*choice}); !done)
        return fail(done.error());
    return choice;
}

Result<ChoiceFact> Desk::adopt(const AdviceJob& job, const Trial& trial) {
    auto choice = ownChoice(job, trial.setting, today());
    if (!choice)
        return choice;
    if (auto done = record(Fact{*choice}); !done)
        return fail(done.error());
    return choice;
}

Result<std::string> Desk::revise(const VesselName& name, const Setting& setting, const EditNote& note) {
    auto found = inside_->cellar->vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    const LedgerState now = replayOf(record, inside_->cellar->shared(), today()).now;
    const Setting inUse = settingInUse(record, today());
    const bool handling =
        setting.draw != inUse.draw || setting.interval != inUse.interval || setting.temperature != inUse.temperature;
    if (const BrewFact* brewed = brewForRefill(record, inside_->cellar->shared(), now, today()))
        return fail({FaultKind::notPossible, "/vessel", say("desk.brewed_already").with("brew", brewed->name),
                     say("desk.brewed_already.remedy")});
    if (!openChoice(record, now) && !handling)
        return replaceToday(BaseRecipeFact{name, today(), setting.recipe}, note);
    auto job = adviceJob({name, {}, {}, false});
    if (!job)
        return fail(job.error());
    auto choice = ownChoice(*job, setting, today());
    if (!choice)
        return fail(choice.error());
    return replaceToday(*choice, note);
}

/// Takes the place of today's fact of the kind, or is the first of the day. A proposal's promise stays as it was made.
template <class F> Result<std::string> Desk::replaceToday(const F& fact, const EditNote& note) {
    auto found = inside_->cellar->vessel(fact.vessel);
    if (!found)
        return fail(found.error());
    const auto& list = (*found)->template of<F>();
    const auto replaceable = [&](const F& old) {
        if constexpr (std::is_same_v<F, ChoiceFact>)
            return old.on == fact.on && old.proposal == ChoiceFact::own;
        else
            return old.on == fact.on;
    };
    if (!list.empty() && replaceable(list.back().fact))
        return amend(std::string(tableOf<F>), list.back().id, Fact{fact}, note);
    return record(Fact{fact}, note);
}

Result<BrewPlan> Desk::brewPlan(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    return sized(settingInUse(**record, today()), **record, inside_->cellar->shared(), today());
}

Result<Document> Desk::brewSheet(const VesselName& name, const DisplayUnits& units) const {
    auto found = inside_->cellar->vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    const SharedFacts& shared = inside_->cellar->shared();
    const Setting setting = settingInUse(record, today());
    auto plan = sized(setting, record, shared, today());
    if (!plan)
        return fail(plan.error());
    const LedgerState now = replayOf(record, shared, today()).now;
    BrewSheetInput sheet;
    sheet.vessel = name;
    sheet.vesselShape = record.facts.shape;
    if (const CultureFact* culture = record.latest<CultureFact>(today()))
        sheet.killerSensitive = culture->killerSensitive;
    sheet.on = today();
    sheet.plan = std::move(*plan);
    sheet.recipe = setting.recipe;
    sheet.dates = datesOf(record, shared, now, today());
    sheet.draw = setting.draw;
    Proposal chosen;
    if (const ChoiceFact* choice = openChoice(record, now); choice && choice->forecast) {
        const Forecast& promised = *choice->forecast;
        chosen = promisedProposal(promised);
        sheet.chosen = &chosen;
        for (Dimension d : allDimensions)
            sheet.expected[d] = Band{promised.mean[d], promised.mean[d] - z80 * promised.sd[d],
                                     promised.mean[d] + z80 * promised.sd[d]};
        sheet.forecastNote = render(say("desk.forecast_note")
                                        .with("on", choice->on)
                                        .with("version", promised.modelVersion)
                                        .with("fingerprint", promised.fingerprint));
    }
    return staveline::brewSheet(sheet, units);
}

Result<Prediction> Desk::predict(const VesselName& name, const Setting& setting) const {
    auto job = adviceJob({name, {}, {}, false});
    if (!job)
        return fail(job.error());
    const AdviceInput& in = job->input;
    auto input = resolve(setting.recipe, *in.pantry, in.equipment.heatingRate);
    if (!input)
        return fail(input.error());
    if (setting.draw.l > in.volumeAtDraw.l)
        return badInput("/draw_l",
                        say("desk.more_than_held").with("volume", setting.draw).with("held", in.volumeAtDraw),
                        say("desk.more_than_held.remedy").with("held", in.volumeAtDraw));
    const Litres refill = in.fillTo - in.volumeAtDraw + setting.draw;
    const Plan plan{in.toThisDraw, Share{std::clamp(refill / in.fillTo, 0.0, 1.0)}, setting.interval,
                    setting.temperature, in.oxygenPerYear};
    return staveline::predict(in.parameters, in.state, *input, plan);
}

} // namespace staveline
