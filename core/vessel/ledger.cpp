// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/ledger.h"

#include "vessel/liquid.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>
#include <utility>

namespace staveline::vessel {
namespace {

bool positive(double x) {
    return std::isfinite(x) && x > 0;
}
double orZero(double x) {
    return positive(x) ? x : 0;
}
double orZero(const std::optional<Days>& days) {
    return days ? orZero(days->d) : 0;
}

double evaporationPerDay(const VesselShape& shape) {
    return std::min(orZero(shape.evaporationPerYear.of1), 1.0) * orZero(shape.capacity.l) / daysPerYear;
}

} // namespace

/// Applies entries in order. Always leaves a state that makes sense, whatever it is given.
class Replayer {
public:
    /// `opening`: what comes before it does not count; none: nothing does.
    Replayer(const ShapeHistory& shapes, const LedgerEntry* opening, std::vector<LedgerFinding>& findings)
        : changes_(shapes.changes), opening_(opening), findings_(findings) {
        take(shapes.first);
    }

    void apply(const LedgerEntry& entry);
    void advanceTo(Day day);
    void find(const LedgerEntry& entry, FindingKind kind, Message message, Litres possible = {0}) {
        findings_.push_back({entry.id, kind, std::move(message), entry.on, entry.outOfThisVessel, possible,
                             entry.volume - possible, Litres{capacity_}});
    }
    [[nodiscard]] LedgerState state() const;

private:
    void open(const LedgerEntry& entry);
    void draw(const LedgerEntry& entry);
    void fill(const LedgerEntry& entry);
    void dip(const LedgerEntry& entry);
    void setLevel(const LedgerEntry& entry, double level);
    void pourIn(const LedgerEntry& entry, double volume);
    void take(const VesselShape& shape);
    void evaporateUntil(Day day);
    [[nodiscard]] double room(const LedgerEntry& entry, double level, FindingKind kind);

    double capacity_ = 0, perDay_ = 0;
    std::span<const ShapeSince> changes_; ///< to come
    const LedgerEntry* opening_;
    std::vector<LedgerFinding>& findings_;
    Liquid liquid_;
    LedgerState facts_; ///< all but the ages and generations
};

void Replayer::apply(const LedgerEntry& entry) {
    advanceTo(entry.on);
    if (opening_ && before(entry, *opening_)) {
        if (entry.kind == EntryKind::dip) // the takeover says anew what is in it
            return;
        return find(entry, FindingKind::beforeOpening,
                    say("vessel.before_opening").with("day", entry.on).with("opened", opening_->on));
    }
    Flow flow = traitsOf(entry.kind).flow;
    if (flow == Flow::loss)
        flow = entry.volume.l == 0 ? Flow::none : Flow::out;
    const double least = flow == Flow::level ? 0 : std::numeric_limits<double>::min();
    if (flow != Flow::none && !(std::isfinite(entry.volume.l) && entry.volume.l >= least))
        return find(entry, FindingKind::notPositive,
                    say("vessel.not_positive").with("volume", entry.volume).with("day", entry.on));
    if (entry.outOfThisVessel && flow != Flow::none && flow != Flow::level)
        flow = Flow::out;
    switch (flow) {
    case Flow::opens:
        return open(entry);
    case Flow::out:
        return draw(entry);
    case Flow::in:
        return fill(entry);
    case Flow::level:
        return dip(entry);
    case Flow::loss:
    case Flow::none:
        return;
    }
}

void Replayer::take(const VesselShape& shape) {
    capacity_ = orZero(shape.capacity.l);
    perDay_ = evaporationPerDay(shape);
}

void Replayer::advanceTo(Day day) {
    for (; !changes_.empty() && changes_.front().from <= day; changes_ = changes_.subspan(1)) {
        evaporateUntil(changes_.front().from);
        take(changes_.front().shape);
    }
    evaporateUntil(day);
}

void Replayer::evaporateUntil(Day day) {
    const double lost = std::min(facts_.volume.l, perDay_ * std::max(0, daysBetween(facts_.on, day)));
    facts_.on = day;
    facts_.totals.evaporated.l += lost;
    facts_.volume.l -= lost;
    if (facts_.volume.l <= 0)
        liquid_.clear();
}

/// The level, held down to the capacity; above it by more than rounding is a finding.
double Replayer::room(const LedgerEntry& entry, double level, FindingKind kind) {
    if (level - capacity_ > roundingOfCapacity * capacity_)
        find(entry, kind,
             say(kind == FindingKind::dipAbove ? "vessel.dip_above" : "vessel.over_full")
                 .with("volume", Litres{level})
                 .with("capacity", Litres{capacity_})
                 .with("day", entry.on),
             Litres{std::max(0.0, capacity_ - (level - entry.volume.l))});
    return std::min(level, capacity_);
}

void Replayer::pourIn(const LedgerEntry& entry, double volume) {
    if (facts_.volume.l <= 0)
        return;
    const double share = std::min(1.0, volume / facts_.volume.l);
    if (entry.brought.empty())
        return liquid_.pour({entry.id, entry.on, orZero(entry.age), orZero(entry.ageSd)}, share);
    double held = 1 - share; // of what is in it in the end
    for (auto part = entry.brought.rbegin(); part != entry.brought.rend(); ++part) {
        const double poured = share * part->share.of1;
        held += poured;
        if (poured > 0)
            liquid_.pour({entry.id, entry.on, orZero(part->birthAge.d), orZero(part->birthAgeSd.d)},
                         std::min(1.0, poured / held));
    }
}

void Replayer::open(const LedgerEntry& entry) {
    if (facts_.opened)
        return find(entry, FindingKind::secondOpening,
                    say("vessel.second_opening").with("day", entry.on).with("opened", *facts_.opened));
    facts_.opened = entry.on;
    facts_.volume.l = room(entry, entry.volume.l, FindingKind::overFull);
    facts_.totals.in.l += facts_.volume.l;
    pourIn(entry, facts_.volume.l);
}

void Replayer::draw(const LedgerEntry& entry) {
    const double held = facts_.volume.l;
    const double taken = std::min(held, entry.volume.l);
    if (entry.volume.l - taken > roundingOfCapacity * capacity_)
        find(entry, FindingKind::drawnMore,
             say("vessel.drawn_more").with("drawn", entry.volume).with("held", Litres{held}).with("day", entry.on),
             Litres{held});
    facts_.totals.out.l += taken;
    facts_.volume.l -= taken;
    if (facts_.volume.l <= 0)
        liquid_.clear();
    if (entry.kind == EntryKind::drawOff || entry.kind == EntryKind::refill)
        facts_.lastDraw = entry.on;
}

void Replayer::fill(const LedgerEntry& entry) {
    const double wanted = facts_.volume.l + entry.volume.l;
    facts_.volume.l = room(entry, wanted, FindingKind::overFull);
    facts_.totals.in.l += entry.volume.l;
    facts_.totals.unexplained.l -= wanted - facts_.volume.l;
    pourIn(entry, entry.volume.l);
    if (entry.kind == EntryKind::refill) {
        facts_.lastRefill = entry.on;
        facts_.lastFilled = facts_.volume;
        facts_.cycle += facts_.opened ? 1 : 0;
    }
    if (!facts_.opened)
        facts_.opened = entry.on;
}

void Replayer::dip(const LedgerEntry& entry) {
    const double level = room(entry, entry.volume.l, FindingKind::dipAbove);
    const double gain = level - facts_.volume.l;
    const bool saidAlready = entry.volume.l - level > roundingOfCapacity * capacity_;
    if (!saidAlready && std::abs(gain) > dipFindingOfCapacity * capacity_)
        find(entry, FindingKind::dipDiffers,
             say(gain < 0 ? "vessel.dip_loss" : "vessel.dip_gain")
                 .with("difference", Litres{std::abs(gain)})
                 .with("dip", entry.volume)
                 .with("held", facts_.volume)
                 .with("day", entry.on));
    setLevel(entry, level);
}

void Replayer::setLevel(const LedgerEntry& entry, double level) {
    const bool wasEmpty = facts_.volume.l <= 0;
    facts_.totals.unexplained.l += level - facts_.volume.l;
    facts_.volume.l = level;
    if (level <= 0)
        return liquid_.clear();
    if (wasEmpty)
        pourIn(entry, level); // beer nobody wrote down: dated from the dip
    if (!facts_.opened)
        facts_.opened = entry.on;
}

LedgerState Replayer::state() const {
    LedgerState state = facts_;
    state.meanAge = liquid_.meanAge(facts_.on);
    state.ageSd = liquid_.ageSd();
    state.generations = liquid_.generations();
    return state;
}

namespace {

/// What decides the order, next to each other in memory: unsorted ledgers sort several times faster.
struct Place {
    Day on;
    int minute, turn, rank;
    std::int64_t id;
    const LedgerEntry* entry;
};
template <class P> auto placeOf(const P& p) {
    return std::tie(p.on, p.minute, p.turn, p.rank, p.id);
}

std::vector<Place> inOrder(std::span<const LedgerEntry> entries) {
    std::vector<Place> order;
    order.reserve(entries.size());
    for (const auto& entry : entries)
        order.push_back({entry.on, entry.minute, entry.turn, entry.rank, entry.id, &entry});
    const auto earlier = [](const Place& a, const Place& b) { return placeOf(a) < placeOf(b); };
    if (!std::is_sorted(order.begin(), order.end(), earlier))
        std::stable_sort(order.begin(), order.end(), earlier);
    return order;
}

/// The first; none: nullptr.
const LedgerEntry* openingOf(std::span<const LedgerEntry> entries) {
    const LedgerEntry* first = nullptr;
    for (const auto& entry : entries)
        if (entry.kind == EntryKind::opening && !entry.outOfThisVessel && positive(entry.volume.l) &&
            (!first || before(entry, *first)))
            first = &entry;
    return first;
}

Replay run(std::span<const LedgerEntry> entries, const ShapeHistory& shapes, Day today, bool keepEach) {
    Replay result;
    Replayer replayer(shapes, openingOf(entries), result.findings);
    bool settled = false;
    const auto settle = [&] {
        if (std::exchange(settled, true))
            return;
        replayer.advanceTo(today);
        result.now = replayer.state();
    };
    for (const Place& place : inOrder(entries)) {
        const LedgerEntry& entry = *place.entry;
        if (entry.on > today) {
            settle();
            replayer.find(entry, FindingKind::future, say("vessel.future").with("day", entry.on).with("today", today));
        }
        replayer.apply(entry);
        if (keepEach)
            result.after.push_back(replayer.state());
    }
    settle();
    return result;
}

} // namespace

bool before(const LedgerEntry& a, const LedgerEntry& b) {
    return placeOf(a) < placeOf(b);
}

struct LedgerWalk::Inside {
    Inside(ShapeHistory history, const LedgerEntry* first)
        : shapes(std::move(history)), opening(first ? std::optional(*first) : std::nullopt),
          replayer(shapes, opening ? &*opening : nullptr, findings) {}
    ShapeHistory shapes;
    std::optional<LedgerEntry> opening;
    std::vector<LedgerFinding> findings;
    Replayer replayer;
};

LedgerWalk::LedgerWalk(ShapeHistory shapes, std::span<const LedgerEntry> ledger)
    : inside_(std::make_unique<Inside>(std::move(shapes), openingOf(ledger))) {}
LedgerWalk::~LedgerWalk() = default;
LedgerWalk::LedgerWalk(LedgerWalk&&) noexcept = default;

void LedgerWalk::apply(const LedgerEntry& entry) {
    inside_->replayer.apply(entry);
}

LedgerState LedgerWalk::on(Day day) {
    inside_->replayer.advanceTo(day);
    return inside_->replayer.state();
}

Replay replay(std::span<const LedgerEntry> entries, const ShapeHistory& shapes, Day today) {
    return run(entries, shapes, today, true);
}

Replay replayNow(std::span<const LedgerEntry> entries, const ShapeHistory& shapes, Day today) {
    return run(entries, shapes, today, false);
}

Litres volumeOn(const LedgerState& state, const VesselShape& shape, Day later) {
    const double lost = evaporationPerDay(shape) * std::max(0, daysBetween(state.on, later));
    return {std::max(0.0, state.volume.l - lost)};
}

Days ageOf(const Generation& generation, Day on) {
    return {daysBetween(generation.on, on) + generation.birthAge.d};
}

Share olderThan(const LedgerState& state, Days age) {
    double older = 0;
    for (const auto& generation : state.generations) {
        const double beyond = ageOf(generation, state.on).d - age.d;
        const double sd = generation.birthAgeSd.d;
        const double part = sd > 0 ? 0.5 * std::erfc(-beyond / (sd * std::sqrt(2.0))) : (beyond > 0 ? 1.0 : 0.0);
        older += generation.share.of1 * part;
    }
    return {std::clamp(older, 0.0, 1.0)};
}

} // namespace staveline::vessel
