// SPDX-License-Identifier: GPL-3.0-or-later
// What holds for any ledger, however wild.
#include "ledger_support.h"
#include "support/property.h"

#include <algorithm>
#include <cmath>
#include <limits>

using namespace staveline;
using namespace staveline::vessel;
using namespace staveline::ledger_tests;

namespace {

LedgerEntry drawEntry(std::int64_t id, bool wild) {
    LedgerEntry entry;
    entry.id = id;
    entry.kind =
        *rc::gen::element(EntryKind::drawOff, EntryKind::refill, EntryKind::topUp, EntryKind::sample, EntryKind::dip,
                          EntryKind::reading, EntryKind::refill, EntryKind::opening, EntryKind::event);
    entry.on = dayAfter(*rc::gen::inRange(wild ? -40 : 1, 3000));
    entry.minute = *rc::gen::inRange(0, 3) * 600;
    entry.rank = *rc::gen::inRange(-1, 2);
    entry.volume = {*rc::gen::inRange(wild ? -200 : 1, 26000) / 100.0};
    entry.outOfThisVessel = *rc::gen::inRange(0, 8) == 0;
    if (*rc::gen::arbitrary<bool>())
        entry.age = Days{*rc::gen::inRange(wild ? -100 : 0, 2000) / 2.0};
    if (*rc::gen::arbitrary<bool>())
        entry.ageSd = Days{*rc::gen::inRange(wild ? -100 : 0, 600) / 2.0};
    if (wild && *rc::gen::inRange(0, 12) == 0)
        entry.volume = {*rc::gen::element(std::numeric_limits<double>::quiet_NaN(),
                                          std::numeric_limits<double>::infinity(), 1e300, -1e300, 5e-324)};
    return entry;
}

std::vector<LedgerEntry> anyLedger(bool wild) {
    std::vector<LedgerEntry> entries;
    const int count = *rc::gen::inRange(0, 40);
    for (int i = 0; i < count; ++i)
        entries.push_back(drawEntry(i + 2, wild));
    return entries;
}

/// Opened on the first day, so that a prefix is a ledger of its own.
std::vector<LedgerEntry> openedLedger() {
    auto entries = anyLedger(false);
    Book first;
    first.opening(0, 10 + *rc::gen::inRange(0, 200), *rc::gen::inRange(0, 900), *rc::gen::inRange(0, 300));
    entries.insert(entries.begin(), first.entries.front());
    return entries;
}

VesselShape anyShape() {
    return {Litres{20.0 + *rc::gen::inRange(0, 300)}, Share{*rc::gen::inRange(0, 12) / 100.0}};
}

bool near(double a, double b, double scale = 1) {
    return std::abs(a - b) <= 1e-9 * std::max({1.0, scale, std::abs(a), std::abs(b)});
}

bool same(const LedgerState& a, const LedgerState& b) {
    bool generations = a.generations.size() == b.generations.size();
    for (std::size_t i = 0; generations && i < a.generations.size(); ++i) {
        const auto &x = a.generations[i], &y = b.generations[i];
        generations =
            x.entry == y.entry && x.on == y.on && near(x.share.of1, y.share.of1) && near(x.birthAge.d, y.birthAge.d);
    }
    return generations && a.on == b.on && near(a.volume.l, b.volume.l) && near(a.meanAge.d, b.meanAge.d) &&
           near(a.ageSd.d, b.ageSd.d) && a.lastDraw == b.lastDraw && a.lastRefill == b.lastRefill &&
           a.opened == b.opened && a.cycle == b.cycle;
}

void checkState(const LedgerState& state, const VesselShape& shape) {
    RC_ASSERT(state.volume.l >= 0);
    RC_ASSERT(state.volume.l <= shape.capacity.l);
    RC_ASSERT(std::isfinite(state.meanAge.d) && std::isfinite(state.ageSd.d));
    RC_ASSERT(state.ageSd.d >= 0);
    RC_ASSERT(state.generations.empty() == (state.volume.l <= 0));
    double shares = 0, mean = 0, square = 0;
    for (const auto& generation : state.generations) {
        RC_ASSERT(generation.share.of1 > 0);
        const double age = ageOf(generation, state.on).d;
        shares += generation.share.of1;
        mean += generation.share.of1 * age;
        square += generation.share.of1 * (std::pow(generation.birthAgeSd.d, 2) + std::pow(age - state.meanAge.d, 2));
    }
    RC_ASSERT(state.generations.empty() || near(shares, 1));
    RC_ASSERT(near(mean, state.meanAge.d));
    RC_ASSERT(std::abs(square - std::pow(state.ageSd.d, 2)) <= 1e-6 * std::max(1.0, square));
    const auto& totals = state.totals;
    RC_ASSERT(totals.in.l >= 0 && totals.out.l >= 0 && totals.evaporated.l >= 0);
    RC_ASSERT(near(state.volume.l, totals.in.l - totals.out.l - totals.evaporated.l + totals.unexplained.l,
                   std::max(totals.in.l, std::abs(totals.unexplained.l))));
}

} // namespace

TEST_CASE("shares, moments and volumes balance after every entry") {
    CHECK_PROPERTY("balanced", [] {
        const auto shape = anyShape();
        const auto result = replay(anyLedger(false), shape, dayAfter(3100));
        for (const auto& state : result.after)
            checkState(state, shape);
        checkState(result.now, shape);
    });
}

TEST_CASE("no entry whatever breaks the state") {
    CHECK_PROPERTY("total", [] {
        const auto shape = anyShape();
        const auto entries = anyLedger(true);
        const auto result = replay(entries, shape, dayAfter(*rc::gen::inRange(-100, 3100)));
        RC_ASSERT(result.after.size() == entries.size());
        for (const auto& state : result.after)
            checkState(state, shape);
        checkState(result.now, shape);
    });
}

TEST_CASE("a shape that is none leaves an empty vessel") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    for (const VesselShape shape : {VesselShape{Litres{nan}, Share{.1}}, VesselShape{Litres{-5}, Share{.1}}})
        CHECK(Book{}.opening(0, 100).refill(1, 20).on(10, shape).now.volume.l == 0);
    for (const VesselShape shape : {VesselShape{Litres{225}, Share{nan}}, VesselShape{Litres{225}, Share{-1}}})
        CHECK(Book{}.opening(0, 100).on(10, shape).now.volume.l == 100);
}

TEST_CASE("the order in which entries are handed over does not matter") {
    CHECK_PROPERTY("order independent", [] {
        const auto shape = anyShape();
        auto entries = anyLedger(false);
        const auto asGiven = replay(entries, shape, dayAfter(3100));
        std::reverse(entries.begin(), entries.end());
        const int turn = *rc::gen::inRange(0, static_cast<int>(entries.size()) + 1);
        std::rotate(entries.begin(), entries.begin() + turn, entries.end());
        const auto shuffled = replay(entries, shape, dayAfter(3100));
        RC_ASSERT(same(asGiven.now, shuffled.now));
        RC_ASSERT(asGiven.findings.size() == shuffled.findings.size());
    });
}

TEST_CASE("the replay of a prefix is the state after its last entry") {
    CHECK_PROPERTY("prefix", [] {
        const auto shape = anyShape();
        auto entries = openedLedger();
        std::sort(entries.begin(), entries.end(), [](const LedgerEntry& a, const LedgerEntry& b) {
            return std::tuple(a.on, a.minute, a.rank, a.id) < std::tuple(b.on, b.minute, b.rank, b.id);
        });
        const auto whole = replay(entries, shape, dayAfter(3100));
        const auto count = static_cast<std::size_t>(*rc::gen::inRange(1, static_cast<int>(entries.size()) + 1));
        const auto prefix = replay(std::span(entries).first(count), shape, entries[count - 1].on);
        RC_ASSERT(same(prefix.now, whole.after[count - 1]));
    });
}

TEST_CASE("replaying for now alone gives the same now and the same findings") {
    CHECK_PROPERTY("now", [] {
        const auto shape = anyShape();
        const auto entries = anyLedger(true);
        const Day today = dayAfter(*rc::gen::inRange(0, 3100));
        const auto full = replay(entries, shape, today);
        const auto brief = replayNow(entries, shape, today);
        RC_ASSERT(brief.after.empty());
        RC_ASSERT(same(full.now, brief.now));
        RC_ASSERT(full.findings.size() == brief.findings.size());
        for (std::size_t i = 0; i < full.findings.size(); ++i)
            RC_ASSERT(full.findings[i].entry == brief.findings[i].entry &&
                      full.findings[i].message.key == brief.findings[i].message.key);
    });
}

TEST_CASE("the mean age grows a day a day while nothing happens") {
    CHECK_PROPERTY("ageing", [] {
        const auto entries = openedLedger();
        const VesselShape dry{Litres{225}, Share{0}};
        const auto now = replay(entries, dry, dayAfter(3000)).now;
        const auto later = replay(entries, dry, dayAfter(3123)).now;
        RC_PRE(now.volume.l > 0);
        RC_ASSERT(near(later.meanAge.d, now.meanAge.d + 123));
        RC_ASSERT(near(later.ageSd.d, now.ageSd.d));
        RC_ASSERT(near(later.volume.l, now.volume.l));
    });
}

TEST_CASE("older than falls from one to nothing as the age rises") {
    CHECK_PROPERTY("monotone", [] {
        auto entries = openedLedger();
        entries.push_back(Book{}.topUp(3050, 50, 20).entries.front());
        const auto now = replay(entries, {Litres{225}, Share{.03}}, dayAfter(3100)).now;
        double last = 1 + 1e-9;
        for (int age = -4000; age < 9000; age += 100) {
            const double older = olderThan(now, {static_cast<double>(age)}).of1;
            RC_ASSERT(older >= 0 && older <= last);
            last = older;
        }
        RC_ASSERT(near(olderThan(now, {-4000}).of1, 1) && near(olderThan(now, {9000}).of1, 0));
    });
}
