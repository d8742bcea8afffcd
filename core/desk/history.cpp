// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/history.h"

#include "desk/evidence.h"
#include "desk/inside.h"
#include "desk/vessel_story.h"
#include "estimate/words.h"

#include <algorithm>
#include <cmath>

namespace staveline::desk {

using tasting::Estimate;
using tasting::Sitting;
using vessel::LedgerEntry;
using vessel::traitsOf;

namespace {

PerDimension<std::optional<Estimate>> tastedIn(const Sitting& sitting) {
    const auto result = evaluate(sitting, tasting::builtInSheet());
    PerDimension<std::optional<Estimate>> tasted;
    for (Dimension d : allDimensions)
        if (const auto& reading = result.dimensions[d])
            tasted[d] = Estimate{reading->mean, reading->absoluteSe};
    return tasted;
}

void addSittings(const VesselRecord& record, std::vector<HistoryRow>& rows) {
    for (const auto& stored : record.of<facts::SittingFact>()) {
        HistoryRow row;
        row.on = stored.fact.sitting.on;
        row.kind = HistoryKind::sitting;
        row.tasted = tastedIn(stored.fact.sitting);
        row.learn = stored.fact.learn;
        row.learnReason = stored.fact.learnReason;
        row.faults = stored.fact.sitting.faults;
        row.scores = stored.fact.sitting.scores;
        row.note = stored.fact.sitting.note;
        rows.push_back(std::move(row));
    }
}

void addRounds(const VesselRecord& record, std::vector<HistoryRow>& rows) {
    for (const auto& stored : record.of<facts::RoundFact>()) {
        HistoryRow row;
        row.on = stored.fact.on;
        row.kind = HistoryKind::round;
        row.round = stored.fact;
        row.note = stored.fact.note;
        rows.push_back(std::move(row));
    }
}

/// Sittings and lessons stand by day, both in the order of the record.
void addLessons(const std::vector<estimate::Lesson>& lessons, std::vector<HistoryRow>& rows) {
    auto next = lessons.begin();
    for (HistoryRow& row : rows) {
        if (row.kind != HistoryKind::sitting || next == lessons.end() || next->on != row.on)
            continue;
        row.expected = next->expected;
        for (Dimension d : allDimensions)
            if (next->tasted[d])
                row.offset[d] = next->offset[d];
        ++next;
    }
}

PerDimension<Estimate> toldBy(const facts::Forecast& forecast) {
    PerDimension<Estimate> told;
    for (Dimension d : allDimensions)
        told[d] = {forecast.mean[d], forecast.sd[d]};
    return told;
}

void addForecasts(const std::vector<PromiseOutcome>& promises, std::vector<HistoryRow>& rows) {
    for (const auto& promise : promises) {
        HistoryRow row;
        row.on = promise.forDay;
        row.kind = HistoryKind::forecast;
        for (Dimension d : allDimensions)
            row.forecast[d] = promise.told[d];
        rows.push_back(std::move(row));
    }
}

template <class F> const F* find(const VesselRecord& record, book::RowId id) {
    for (const auto& stored : record.of<F>())
        if (stored.id == id)
            return &stored.fact;
    return nullptr;
}

void takeFact(const VesselRecord& record, const LedgerEntry& e, HistoryRow& row) {
    facts::withEntry(e.kind, [&]<class F>(std::type_identity<F>) {
        const F* fact = find<F>(record, rowOf(e.id));
        if (!fact)
            return;
        row.at = fact->at;
        row.note = fact->note;
        if constexpr (requires { fact->measured; })
            row.measured = fact->measured;
        if constexpr (requires { fact->what; })
            row.happened = fact->what;
        if constexpr (requires { fact->lot; })
            row.lot = fact->lot;
        if constexpr (requires { fact->from; }) {
            row.brew = fact->brew;
            row.other = fact->from;
        }
    });
}

void takeBrew(const facts::BrewFact& brew, HistoryRow& row) {
    row.refillBitterness = brew.recipe.bitterness;
    if (!brew.recipe.mash.empty())
        row.mashTemperature = brew.recipe.mash.back().temperature;
}

bool movesLiquid(const LedgerEntry& e) {
    const vessel::Flow flow = traitsOf(e.kind).flow;
    return flow == vessel::Flow::in || flow == vessel::Flow::out || (flow == vessel::Flow::loss && e.volume.l > 0);
}

/// The level just before an entry: what the entry moved is taken back.
Litres volumeBefore(const LedgerEntry& e, const vessel::LedgerState& after) {
    const bool in = !e.outOfThisVessel && traitsOf(e.kind).flow == vessel::Flow::in;
    if (!movesLiquid(e))
        return after.volume;
    return Litres{std::max(0.0, in ? after.volume.l - e.volume.l : after.volume.l + e.volume.l)};
}

class LedgerPart {
public:
    LedgerPart(const CurrentVessel& vessel, const SharedFacts& shared)
        : record_(vessel.record), shared_(shared), entries_(vessel.entries), replayed_(vessel.replayed) {}

    void addRows(std::vector<HistoryRow>& rows) const {
        for (std::size_t i = 0; i < entries_.size(); ++i) {
            const LedgerEntry& e = entries_[i];
            HistoryRow row;
            row.on = e.on;
            row.kind = e.outOfThisVessel ? HistoryKind::movedOut : HistoryKind::entry;
            row.entry = e.kind;
            row.volume = replayed_.after[i].volume;
            row.meanAge = replayed_.after[i].meanAge;
            if (movesLiquid(e))
                row.moved = e.volume;
            if (e.outOfThisVessel)
                row.other = receiverOf(record_, e);
            else
                takeFact(record_, e, row);
            if (e.brew)
                if (const facts::BrewFact* brew = shared_.brew(shared_.names.brewNames.at(*e.brew)))
                    takeBrew(*brew, row);
            rows.push_back(std::move(row));
        }
    }

    [[nodiscard]] std::vector<HistoryView::SawtoothPoint> sawtooth() const {
        std::vector<HistoryView::SawtoothPoint> sawtooth;
        for (std::size_t i = 0; i < entries_.size(); ++i) {
            const vessel::LedgerState& after = replayed_.after[i];
            if (i > 0) {
                const vessel::LedgerState& last = replayed_.after[i - 1];
                const double days = daysBetween(last.on, after.on);
                sawtooth.push_back({after.on, volumeBefore(entries_[i], after), Days{last.meanAge.d + days}});
            }
            sawtooth.push_back({after.on, after.volume, after.meanAge});
        }
        if (!sawtooth.empty())
            sawtooth.push_back({replayed_.now.on, replayed_.now.volume, replayed_.now.meanAge});
        return sawtooth;
    }

private:
    const VesselRecord& record_;
    const SharedFacts& shared_;
    const std::vector<LedgerEntry>& entries_;
    const vessel::Replay& replayed_;
};

/// The first of a kind on or after a day; none: nullptr.
template <class F> const F* firstFrom(const VesselRecord& record, Day day) {
    for (const auto& stored : record.of<F>())
        if (stored.fact.on >= day)
            return &stored.fact;
    return nullptr;
}

/// The first that went in after a choice.
const facts::RefillFact* refillBy(const VesselRecord& record, const facts::ChoiceFact& choice) {
    const auto& refills = record.of<facts::RefillFact>();
    const auto at = std::find_if(refills.begin(), refills.end(),
                                 [&](const auto& stored) { return wentInAfter(stored.fact, choice); });
    return at == refills.end() ? nullptr : &at->fact;
}

const Sitting* lastSitting(const VesselRecord& record, Day after, Day until) {
    const facts::SittingFact* found = lastToLearnFrom(record, until, after);
    return found ? &found->sitting : nullptr;
}

/// The last sitting of the cycle that the promised refill began.
void judge(PromiseOutcome& promise, const VesselRecord& record, Day refilled, Day today) {
    const auto* draw = firstFrom<facts::DrawOffFact>(record, refilled + std::chrono::days{1});
    const Sitting* sitting = lastSitting(record, refilled, draw ? draw->on : today);
    if (!sitting)
        return;
    promise.tasted = tastedIn(*sitting);
    for (Dimension d : allDimensions)
        if (promise.tasted[d])
            promise.inside[d] =
                std::abs(promise.tasted[d]->mean - promise.told[d].mean) <= tasting::z80 * promise.told[d].sd;
}

std::vector<PromiseOutcome> promisesOf(const VesselRecord& record, Day today) {
    std::vector<PromiseOutcome> promises;
    const auto& choices = record.of<facts::ChoiceFact>();
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const facts::ChoiceFact& choice = choices[i].fact;
        const auto* refill = refillBy(record, choice);
        // A later choice for the same refill takes the place of an earlier one.
        if (!choice.forecast || (i + 1 < choices.size() && (!refill || wentInAfter(*refill, choices[i + 1].fact))))
            continue;
        PromiseOutcome promise;
        promise.made = choice.on;
        promise.forDay = choice.forecast->nextDraw;
        promise.proposal = choice.proposal;
        promise.told = toldBy(*choice.forecast);
        if (const Sitting* before = lastSitting(record, Day::min(), choice.on))
            promise.before = tastedIn(*before);
        if (refill)
            judge(promise, record, refill->on, today);
        promises.push_back(promise);
    }
    return promises;
}

std::vector<Message> recordOf(const std::vector<PromiseOutcome>& promises) {
    std::vector<Message> lines;
    for (Dimension d : allDimensions) {
        const auto judged = std::count_if(promises.begin(), promises.end(),
                                          [&](const PromiseOutcome& p) { return p.inside[d].has_value(); });
        const auto inside = std::count_if(promises.begin(), promises.end(),
                                          [&](const PromiseOutcome& p) { return p.inside[d].value_or(false); });
        if (judged > 0)
            lines.push_back(say("desk.promises." + std::string(name(d)))
                                .with("inside", static_cast<std::int64_t>(inside))
                                .with("judged", static_cast<std::int64_t>(judged)));
    }
    std::int64_t nearer = 0, compared = 0;
    for (const PromiseOutcome& promise : promises)
        for (Dimension d : allDimensions)
            if (const auto closer = promise.nearer(d)) {
                ++compared;
                nearer += *closer ? 1 : 0;
            }
    if (compared > 0)
        lines.push_back(say("desk.promises.nearer").with("nearer", nearer).with("judged", compared));
    return lines;
}

/// How the estimate did before each sitting: inside its 80 % interval (with the sitting's own error), and a run of the
/// latest that all came out on one side.
struct Expected {
    int judged = 0, inside = 0, run = 0;
    bool above = false; ///< the run
};
Expected expectedOf(const std::vector<estimate::Lesson>& lessons, Dimension d) {
    Expected told;
    for (const auto& lesson : lessons) {
        if (!lesson.learned[d] || !lesson.expected[d])
            continue;
        const double miss = lesson.tasted[d]->mean - lesson.expected[d]->mean;
        ++told.judged;
        if (std::abs(miss) <= tasting::z80 * std::hypot(lesson.expected[d]->sd, lesson.tasted[d]->sd))
            ++told.inside;
        told.run = told.run > 0 && (miss > 0) == told.above ? told.run + 1 : 1;
        told.above = miss > 0;
    }
    return told;
}

std::vector<HistoryView::LearnedLine> learnedLines(const estimate::Learned& learned) {
    constexpr int worthNaming = static_cast<int>(constants::estimate::oneSidedRun);
    std::vector<HistoryView::LearnedLine> lines;
    for (Dimension d : allDimensions) {
        if (learned.sittings[d] == 0)
            continue;
        lines.push_back({estimate::taught(d, learned.offsets[d], learned.sittings[d])});
        const Expected told = expectedOf(learned.lessons, d);
        const std::string stem = "desk.expected." + std::string(name(d));
        if (told.judged > 1)
            lines.push_back(
                {say(stem).with("inside", std::int64_t{told.inside}).with("judged", std::int64_t{told.judged})});
        if (told.run >= worthNaming)
            lines.push_back({say(stem + (told.above ? ".above" : ".below")).with("run", std::int64_t{told.run}), true});
    }
    return lines;
}

estimate::Learned learnedOf(const CurrentVessel& vessel, Cellar& cellar) {
    Chemistry chemistry(cellar, vessel);
    StoryTeller teller(cellar, chemistry, vessel.today);
    return learnFrom(teller.storyOf(vessel.record), {vessel.today}, forward::builtInParameters().score,
                     teller.others());
}

} // namespace

std::optional<bool> PromiseOutcome::nearer(Dimension dimension) const {
    if (!tasted[dimension] || !before[dimension])
        return {};
    const double came = tasted[dimension]->mean;
    return std::abs(came - told[dimension].mean) < std::abs(came - before[dimension]->mean);
}

Result<HistoryView> Desk::history(const facts::VesselName& name) const {
    auto found = inside_->current(name);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    const VesselRecord& record = vessel.record;
    const LedgerPart ledger(vessel, inside_->cellar->shared());
    HistoryView view;
    view.promises = promisesOf(record, today());
    view.record = recordOf(view.promises);
    view.sawtooth = ledger.sawtooth();
    view.findings = notesOf(vessel.replayed.findings);
    const estimate::Learned learned = learnedOf(vessel, *inside_->cellar);
    view.learned = learnedLines(learned);
    for (Dimension d : allDimensions)
        if (learned.sittings[d] > 0)
            view.offsetToday[d] = Estimate{learned.offsets[d].mean[estimate::Offset::now], learned.offsets[d].sd()};
    for (const auto& stored : record.of<facts::TargetFact>())
        view.targets.push_back(stored.fact);
    ledger.addRows(view.rows);
    addSittings(record, view.rows);
    addForecasts(view.promises, view.rows);
    addRounds(record, view.rows);
    std::stable_sort(view.rows.begin(), view.rows.end(), [](const auto& a, const auto& b) { return a.on < b.on; });
    addLessons(learned.lessons, view.rows);
    auto lived = life(name);
    if (!lived)
        return fail(lived.error());
    view.life = std::move(*lived);
    return view;
}

Result<std::vector<PastDraw>> Desk::pastDraws(const facts::VesselName& name) const {
    auto found = inside_->cellar->vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    std::vector<PastDraw> draws;
    for (const auto& stored : record.of<facts::DrawOffFact>()) {
        PastDraw draw{stored.fact.on, stored.fact.lot, {}};
        Day refilled{};
        for (const auto& refill : record.of<facts::RefillFact>())
            if (refill.fact.on < draw.on)
                refilled = refill.fact.on;
        if (const Sitting* sitting = lastSitting(record, refilled, draw.on))
            draw.tasted = tastedIn(*sitting);
        draws.push_back(std::move(draw));
    }
    std::reverse(draws.begin(), draws.end());
    return draws;
}

tasting::Target likeDraw(tasting::Target target, const PastDraw& draw) {
    for (Dimension d : allDimensions)
        if (draw.tasted[d])
            target.windows[d].wanted = std::clamp(std::round(draw.tasted[d]->mean * 2) / 2, 0.0, 10.0);
    return target;
}

} // namespace staveline::desk
