// SPDX-License-Identifier: GPL-3.0-or-later
// From the book to the adviser and back: jobs, promises, the planned recipe and its sheet.
#include "advice/forecaster.h"
#include "desk/histories.h"

#include <algorithm>
#include <boost/crc.hpp>
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
    forecast.modelVersion = std::string(modelVersion);
    forecast.fingerprint = fingerprintOf(job.input);
    forecast.target = job.input.target;
    return forecast;
}

Forecast forecastOf(const AdviceJob& job, const Proposal& proposal, const DisplayUnits& units) {
    Forecast forecast = promised(job, proposal.setting, proposal.next);
    for (const auto& move : proposal.moves)
        forecast.moves.push_back(render(move.wording, units));
    for (const auto& reason : proposal.reasons)
        forecast.reasons.push_back(render(reason, units));
    return forecast;
}

/// Of a setting of the brewer's own.
Result<ChoiceFact> ownChoice(const AdviceJob& job, const Setting& setting, Day on, std::vector<std::string> moves) {
    auto trial = TryBoard(job.input).trial(setting, TrialDepth::next);
    if (!trial)
        return fail(trial.error());
    ChoiceFact choice{job.vessel, on, ChoiceFact::own, promised(job, setting, trial->next)};
    choice.forecast->moves = std::move(moves);
    choice.forecast->reasons.push_back(render(say("desk.own_plan")));
    return choice;
}

/// What changes, in the shape the sheet reads.
Proposal toldChanges(const std::vector<std::string>& changes) {
    Proposal proposal;
    for (const auto& text : changes) {
        Move move;
        move.wording = say("desk.plain").with("text", text);
        proposal.moves.push_back(std::move(move));
    }
    return proposal;
}

/// The days a promise speaks of are those of its own plan: another yeast takes longer.
void takeDates(Forecast& forecast, const VesselRecord& record, const Cellar& cellar, Day today) {
    const LedgerState now = replayOf(record, cellar.shared(), today).now;
    const Setting setting{forecast.recipe, forecast.draw, forecast.interval, forecast.temperature};
    const Schedule dates = datesOf(record, cellar, now, today, setting);
    forecast.thisDraw = dates.draw;
    forecast.nextDraw = dates.nextDraw;
}

/// A setting as values to try against another; what no lever can be put to is left out.
std::vector<TriedValue> triedFor(const Setting& from, const Setting& to, const Pantry& pantry) {
    std::vector<TriedValue> tried;
    for (const auto& row : builtInLevers())
        if (const auto value = leverValue(to, row.id, pantry);
            value != leverValue(from, row.id, pantry) && withLever(from, row.id, value, pantry))
            tried.push_back({row.id, value});
    return tried;
}

const Proposal* proposalNumber(const Advice& advice, int number) {
    if (number == 0)
        return &advice.leaveAlone;
    const auto index = static_cast<std::size_t>(number - 1);
    return number > 0 && index < advice.proposals.size() ? &advice.proposals[index] : nullptr;
}

Result<ChoiceFact> choiceOf(const AdviceJob& job, const Advice& advice, int number, Day on, const DisplayUnits& units) {
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
    choice.forecast = forecastOf(job, *proposal, units);
    return choice;
}

Result<BrewPlan> sized(const Setting& setting, const VesselRecord& record, const Cellar& cellar, Day today) {
    const SharedFacts& shared = cellar.shared();
    const EquipmentFact kit = shared.kit(today);
    auto input = resolve(setting.recipe, shared.pantry, kit.equipment.heatingRate);
    if (!input)
        return fail(input.error());
    const RefillBeer beer = brew(*input, parametersFor(record, today).brew);
    return sizedFor(*input, beer, kit, refillWanted(setting, record, cellar, today));
}

} // namespace

Result<Setting> Desk::setting(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    return settingInUse(**record, replayOf(**record, inside_->cellar->shared(), today()).now);
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

namespace {

/// What may not be moved and what is not there: as recorded, and as asked.
void restrictTo(AdviceInput& in, const AdviceRequest& request, const VesselRecord& record, const SharedFacts& shared,
                Day now, Day brew) {
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
    in.unavailable.insert(request.unavailable.begin(), request.unavailable.end());
}

} // namespace

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
    auto state = Histories(cellar, now).on(record, now);
    if (!state)
        return fail(state.error());
    const LedgerState held = replayOf(record, shared, now).now;
    job.dates = datesOf(record, cellar, held, now);
    job.inUse = settingInUse(record, held);
    job.estimates = *estimates;
    if (const BrewFact* brewed = brewForRefill(record, cellar, held, now))
        job.brewed = *brewed;
    AdviceInput& in = job.input;
    // All of it as if nothing were chosen yet: asked again after choosing, the answer is the same.
    in.base = settingLeftAlone(record, held);
    const Schedule dates = datesOf(record, cellar, held, now, in.base);
    if (openChoice(record, held))
        job.open = triedFor(in.base, job.inUse, shared.pantry);
    in.state = *state;
    in.drawn = drawnForRefill(record, held).has_value();
    in.volumeAtDraw = volumeOnDraw(record, shared, held, dates.draw);
    in.fillTo = usualFill(record, shared, now);
    in.toThisDraw = Days{static_cast<double>(std::max(0, daysBetween(now, dates.draw)))};
    in.oxygenPerYear = oxygenOf(record.facts);
    in.canChangeTemperature = record.facts.canChangeTemperature;
    if (const CultureFact* culture = record.latest<CultureFact>(now)) {
        in.houseYeastKillerSensitive = culture->killerSensitive;
        in.brettEstablished = culture->brettanomyces == Brettanomyces::established;
    }
    in.model = estimates->model;
    in.combined = estimates->combined;
    in.evidence = estimates->evidence;
    if (const TargetFact* target = record.latest<TargetFact>(now))
        in.target = target->target;
    in.verdicts = estimates->verdicts;
    in.equipment = shared.kit(now).equipment;
    in.margin = shared.kit(now).margin;
    restrictTo(in, request, record, shared, now, dates.brew);
    in.daysToBrew = std::max(0, daysBetween(now, dates.brew));
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
    return promise(*job, *advice, number, on);
}

Result<ChoiceFact> Desk::promise(const AdviceJob& job, const Advice& advice, int number, Day on) const {
    auto record = inside_->cellar->vessel(job.vessel);
    if (!record)
        return fail(record.error());
    auto choice = choiceOf(job, advice, number, on, inside_->units);
    if (choice)
        takeDates(*choice->forecast, **record, *inside_->cellar, today());
    return choice;
}

Result<ChoiceFact> Desk::promiseOwn(const AdviceJob& job, const Setting& setting) const {
    auto found = inside_->cellar->vessel(job.vessel);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    const SharedFacts& shared = inside_->cellar->shared();
    const LedgerState now = replayOf(record, shared, today()).now;
    auto choice =
        ownChoice(job, setting, today(), changesSinceLastRefill(record, shared.pantry, now, setting, inside_->units));
    if (choice)
        takeDates(*choice->forecast, record, *inside_->cellar, today());
    return choice;
}

Result<Chosen> Desk::choose(const AdviceJob& job, const Advice& advice, int number) {
    const Batch once(*this); // the look for other programs may tell too
    if (auto current = requireCurrent(job); !current)
        return fail(current.error());
    auto choice = promise(job, advice, number, today());
    if (!choice)
        return fail(choice.error());
    auto done = record(Fact{*choice});
    if (!done)
        return fail(done.error());
    return Chosen{*std::move(choice), *std::move(done)};
}

/// A promise made from what the book no longer says would be no promise.
Result<void> Desk::requireCurrent(const AdviceJob& job) {
    poll();
    if (job.revision == revision())
        return {};
    return fail({FaultKind::notPossible, "", say("desk.stale_advice").with("vessel", job.vessel),
                 say("desk.stale_advice.remedy")});
}

Result<Chosen> Desk::adopt(const AdviceJob& job, const Trial& trial) {
    const Batch once(*this);
    if (auto current = requireCurrent(job); !current)
        return fail(current.error());
    auto choice = promiseOwn(job, trial.setting);
    if (!choice)
        return fail(choice.error());
    auto done = record(Fact{*choice});
    if (!done)
        return fail(done.error());
    return Chosen{*std::move(choice), *std::move(done)};
}

Result<Recorded> Desk::revise(const VesselName& name, const Setting& setting, const EditNote& note) {
    auto found = inside_->cellar->vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    if (auto ok = notBrewedYet(record, *inside_->cellar, today()); !ok)
        return fail(ok.error());
    // Nothing can be promised of a vessel that was never filled: its recipe is the first it will run on.
    if (!replayOf(record, inside_->cellar->shared(), today()).now.opened)
        return setToday(Fact{BaseRecipeFact{name, today(), setting.recipe}}, note);
    auto job = adviceJob({name, {}, {}, false});
    if (!job)
        return fail(job.error());
    auto choice = promiseOwn(*job, setting);
    if (!choice)
        return fail(choice.error());
    return setToday(Fact{*choice}, note);
}

namespace {

/// The stored fact of today that `fact` takes the place of; none: nullptr.
template <class F> const Stored<F>* ofToday(const Facts<F>& list, const F& fact) {
    if (list.empty() || list.back().fact.on != fact.on)
        return nullptr;
    if constexpr (std::is_same_v<F, ChoiceFact>)
        return list.back().fact.proposal == ChoiceFact::own ? &list.back() : nullptr;
    else if constexpr (std::is_same_v<F, EquipmentFact>)
        return list.back().fact.equipment.name == fact.equipment.name ? &list.back() : nullptr;
    else
        return &list.back();
}

} // namespace

Result<Recorded> Desk::setToday(const Fact& fact, const EditNote& note) {
    Cellar& cellar = *inside_->cellar;
    const auto set = [&]<class F>(const F& given, const Facts<F>& list) {
        const Stored<F>* old = ofToday(list, given);
        return old ? amend(std::string(tableOf<F>), old->id, fact, note) : record(fact, note);
    };
    const auto visit = [&]<class F>(const F& given) -> Result<Recorded> {
        if constexpr (std::is_same_v<F, TargetFact> || std::is_same_v<F, BaseRecipeFact> ||
                      std::is_same_v<F, ChoiceFact>) {
            auto found = cellar.vessel(given.vessel);
            return found ? set(given, (*found)->template of<F>()) : fail(found.error());
        } else if constexpr (std::is_same_v<F, EquipmentFact>) {
            auto shared = cellar.loadShared();
            return shared ? set(given, cellar.shared().equipment) : fail(shared.error());
        } else {
            return record(fact, note);
        }
    };
    return std::visit(visit, fact);
}

Result<BrewPlan> Desk::brewPlan(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    const Cellar& cellar = *inside_->cellar;
    const LedgerState now = replayOf(**record, cellar.shared(), today()).now;
    return sized(settingInUse(**record, now), **record, cellar, today());
}

Result<Document> Desk::brewSheet(const VesselName& name, const DisplayUnits& units) const {
    auto found = inside_->cellar->vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    const SharedFacts& shared = inside_->cellar->shared();
    const LedgerState now = replayOf(record, shared, today()).now;
    const Setting setting = settingInUse(record, now);
    auto plan = sized(setting, record, *inside_->cellar, today());
    if (!plan)
        return fail(plan.error());
    BrewSheetInput sheet;
    sheet.vessel = name;
    sheet.vesselShape = wordOf(record.facts.shape);
    if (const CultureFact* culture = record.latest<CultureFact>(today()))
        sheet.killerSensitive = culture->killerSensitive;
    sheet.on = today();
    sheet.plan = std::move(*plan);
    sheet.recipe = setting.recipe;
    sheet.dates = datesOf(record, *inside_->cellar, now, today());
    sheet.draw = setting.draw;
    Proposal chosen = toldChanges(changesSinceLastRefill(record, shared.pantry, now, units));
    sheet.chosen = &chosen;
    if (const ChoiceFact* choice = openChoice(record, now); choice && choice->forecast->recipe == setting.recipe) {
        const Forecast& promised = *choice->forecast;
        for (const auto& text : promised.reasons)
            chosen.reasons.push_back(say("desk.plain").with("text", text));
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
    if (auto possible = checkDraw(in, setting.draw, "/draw_l"); !possible)
        return fail(possible.error());
    const Plan plan{in.toThisDraw, shareOf(in, setting), setting.interval, setting.temperature, in.oxygenPerYear};
    return staveline::predict(in.parameters, in.state, *input, plan);
}

} // namespace staveline
