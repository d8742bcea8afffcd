// SPDX-License-Identifier: GPL-3.0-or-later
// Kinds of entries, their order, and what cannot be.
#include "ledger_support.h"
#include "quantity/text.h"

#include <algorithm>
#include <limits>

using namespace staveline;
using namespace staveline::vessel;
using namespace staveline::ledger_tests;

TEST_CASE("an empty ledger is an empty vessel") {
    const auto result = Book{}.on(10);
    CHECK(result.now.volume.l == 0);
    CHECK(result.now.on == dayAfter(10));
    CHECK(result.now.generations.empty());
    CHECK_FALSE(result.now.opened);
    CHECK(result.findings.empty());
    CHECK(result.after.empty());
}

TEST_CASE("an opening takes over a running vessel") {
    Book book;
    book.opening(0, 210, 500, 200);
    const auto now = book.on(30).now;
    CHECK(now.volume.l == 210);
    CHECK(now.meanAge.d == 530);
    CHECK(now.ageSd.d == Approx(200));
    CHECK(now.opened == dayAfter(0));
    CHECK(now.cycle == 0);
    REQUIRE(now.generations.size() == 1);
    CHECK(now.generations[0].birthAgeSd.d == Approx(200));
    CHECK(ageOf(now.generations[0], now.on).d == 530);
}

TEST_CASE("without an opening the first filling opens the vessel") {
    const auto now = Book{}.refill(5, 200, 14).refill(100, 10).on(100).now;
    CHECK(now.opened == dayAfter(5));
    CHECK(now.cycle == 1);
    CHECK(now.lastRefill == dayAfter(100));
    CHECK(now.generations.back().birthAge.d == 14);
}

TEST_CASE("a dip that finds beer opens the vessel, an empty one does not") {
    const auto found = Book{}.dip(5, 200).draw(20, 50).refill(20, 50, 14).on(30);
    CHECK(found.now.opened == dayAfter(5));
    CHECK(found.now.volume.l == Approx(200));
    CHECK(found.now.cycle == 1);
    CHECK_FALSE(Book{}.dip(5, 0).on(30).now.opened);
    CHECK(Book{}.dip(2, 0).refill(5, 200).on(30).now.opened == dayAfter(5));
}

TEST_CASE("draws, samples and transfers out take litres and leave shares and ages") {
    Book book;
    book.opening(0, 200, 100).refill(0, 25);
    const auto whole = book.on(10).now;
    for (auto take : {&Book::draw, &Book::sample, &Book::transferOut}) {
        Book other = book;
        (other.*take)(10, 60);
        const auto now = other.on(10).now;
        CHECK(now.volume.l == Approx(165));
        CHECK(now.meanAge.d == Approx(whole.meanAge.d));
        CHECK(now.ageSd.d == Approx(whole.ageSd.d));
        REQUIRE(now.generations.size() == 2);
        CHECK(now.generations[0].share.of1 == Approx(whole.generations[0].share.of1));
        CHECK(now.totals.out.l == 60);
    }
}

TEST_CASE("draws and transfers set the last draw, samples do not; only refills count cycles") {
    Book book;
    book.opening(0, 200).sample(1, 1).topUp(2, 1);
    CHECK_FALSE(book.on(3).now.lastDraw);
    CHECK_FALSE(book.on(3).now.lastRefill);
    CHECK(book.on(3).now.cycle == 0);
    book.draw(4, 10).refill(5, 10).transferOut(6, 10);
    CHECK(book.on(9).now.lastDraw == dayAfter(6));
    CHECK(book.on(9).now.lastRefill == dayAfter(5));
    CHECK(book.on(9).now.cycle == 1);
}

TEST_CASE("a refill blends ages and shares") {
    // 150 L of 90 d and 75 L of 15 d: mean 65 d, variance 2/3 * 1/3 * 75 d squared
    const auto now = Book{}.opening(0, 150, 90).refill(0, 75, 15).on(0).now;
    CHECK(now.volume.l == 225);
    CHECK(now.meanAge.d == Approx(65));
    CHECK(now.ageSd.d == Approx(std::sqrt(2 / 9. * 75 * 75)));
    REQUIRE(now.generations.size() == 2);
    CHECK(now.generations[0].entry == 2);
    CHECK(now.generations[0].share.of1 == Approx(1 / 3.));
    CHECK(now.generations[1].entry == 1);
}

TEST_CASE("entries are ordered by day, minute, rank and id") {
    LedgerEntry opening{1, EntryKind::opening, dayAfter(0), 0, 0, Litres{225}, false, {}, {}, {}};
    LedgerEntry draw{9, EntryKind::drawOff, dayAfter(10), 600, 0, Litres{75}, false, {}, {}, {}};
    LedgerEntry refill{3, EntryKind::refill, dayAfter(10), 600, 1, Litres{75}, false, {}, {}, {}};
    const std::vector<LedgerEntry> asked{refill, draw, opening};
    const auto result = replay(asked, {Litres{225}, Share{0}}, dayAfter(10));
    CHECK(result.findings.empty());
    CHECK(result.after[1].volume.l == 150);
    CHECK(result.after[2].volume.l == 225);
    // the other way round the refill would not fit
    refill.rank = -1;
    const auto swapped = replay(std::vector{refill, draw, opening}, {Litres{225}, Share{0}}, dayAfter(10));
    CHECK(says(swapped, 3, "vessel.over_full"));
    refill.rank = 0; // same rank: by id
    CHECK(
        says(replay(std::vector{draw, refill, opening}, {Litres{225}, Share{0}}, dayAfter(10)), 3, "vessel.over_full"));
    refill.minute = 601;
    CHECK(replay(std::vector{refill, draw, opening}, {Litres{225}, Share{0}}, dayAfter(10)).findings.empty());
}

TEST_CASE("a draw larger than the content empties the vessel and says so") {
    const auto result = Book{}.opening(0, 60, 100).draw(10, 80).refill(20, 50, 7).on(20);
    REQUIRE(result.findings.size() == 1);
    CHECK(result.findings[0].entry == 2);
    CHECK(render(result.findings[0].message).find("80") != std::string::npos);
    CHECK(render(result.findings[0].message).find("60") != std::string::npos);
    CHECK(result.after[1].volume.l == 0);
    CHECK(result.after[1].generations.empty());
    CHECK(result.after[1].meanAge.d == 0);
    CHECK(result.now.totals.out.l == 60);
    CHECK(result.now.meanAge.d == 7);
    CHECK(result.now.generations.size() == 1);
}

TEST_CASE("half a per cent of the capacity is rounding, not a finding") {
    CHECK(Book{}.opening(0, 60).draw(1, 61).on(1).findings.empty());
    CHECK_FALSE(Book{}.opening(0, 60).draw(1, 61.2).on(1).findings.empty());
    CHECK(Book{}.opening(0, 225).topUp(1, 1).on(1).findings.empty());
    CHECK_FALSE(Book{}.opening(0, 225).topUp(1, 1.2).on(1).findings.empty());
}

TEST_CASE("overfilling trusts what went in") {
    const auto result = Book{}.opening(0, 200, 90).refill(0, 75).on(0);
    CHECK(says(result, 2, "vessel.over_full"));
    CHECK(result.now.volume.l == 225);
    CHECK(result.now.generations[0].share.of1 == Approx(75 / 225.));
    CHECK(result.now.meanAge.d == Approx(60));
    CHECK(result.now.totals.unexplained.l == Approx(-50));
    const auto flooded = Book{}.opening(0, 200, 90).refill(0, 500, 3).on(0);
    CHECK(flooded.now.volume.l == 225);
    CHECK(flooded.now.generations.size() == 1);
    CHECK(flooded.now.meanAge.d == Approx(3));
    CHECK(says(Book{}.opening(0, 300).on(0), 1, "vessel.over_full"));
}

TEST_CASE("entries before the opening and a second opening do not count") {
    const auto result = Book{}.refill(0, 100, 5).opening(10, 200, 400).draw(20, 50).opening(30, 10).on(40);
    CHECK(says(result, 1, "vessel.before_opening"));
    CHECK(says(result, 4, "vessel.second_opening"));
    CHECK(result.findings.size() == 2);
    CHECK(result.after[0].volume.l == 0);
    CHECK(result.after[0].on == dayAfter(0));
    CHECK(result.now.volume.l == 150);
    CHECK(result.now.opened == dayAfter(10));
    CHECK(result.now.meanAge.d == 430);
    CHECK(result.now.cycle == 0);
}

TEST_CASE("a dip before the takeover is no contradiction: the takeover says anew what is in it") {
    const auto result = Book{}.dip(0, 180).opening(10, 200, 400).on(40);
    CHECK(result.findings.empty());
    CHECK(result.now.volume.l == 200);
    CHECK(result.now.opened == dayAfter(10));
    CHECK(result.now.meanAge.d == 430);
}

TEST_CASE("a volume that is none is a finding and moves nothing") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
    for (const double litres : {0.0, -3.0, nan, inf, -inf}) {
        CAPTURE(litres);
        for (auto book : {Book{}.opening(0, 100).draw(1, litres), Book{}.opening(0, 100).sample(1, litres),
                          Book{}.opening(0, 100).refill(1, litres), Book{}.opening(0, 100).topUp(1, litres),
                          Book{}.opening(0, 100).transferOut(1, litres)}) {
            CHECK(says(book.on(1), 2, "vessel.not_positive"));
            CHECK(book.on(1).now.volume.l == 100);
        }
        CHECK(says(Book{}.opening(0, litres).on(1), 1, "vessel.not_positive"));
    }
    CHECK(says(Book{}.opening(0, 100).dip(1, -1).on(1), 2, "vessel.not_positive"));
    CHECK(Book{}.opening(0, 100).reading(1).on(1).findings.empty());
}

TEST_CASE("an opening that is none does not stop a later one") {
    const auto result = Book{}.opening(0, 0).opening(5, 100, 50).on(5);
    CHECK(result.now.volume.l == 100);
    CHECK(result.now.meanAge.d == 50);
}

TEST_CASE("a dip sets the level and books the difference") {
    const auto shape = VesselShape{Litres{200}, Share{0}};
    const auto small = Book{}.opening(0, 150, 80).refill(0, 40).dip(10, 185).on(10, shape);
    CHECK(small.findings.empty());
    CHECK(small.now.volume.l == 185);
    CHECK(small.now.totals.unexplained.l == Approx(-5));
    CHECK(small.now.generations[0].share.of1 == Approx(40 / 190.));
    CHECK(small.now.meanAge.d == Approx(small.after[1].meanAge.d + 10));

    CHECK(says(Book{}.opening(0, 190).dip(10, 183.9).on(10, shape), 2, "vessel.dip_loss"));
    CHECK(Book{}.opening(0, 190).dip(10, 184.1).on(10, shape).findings.empty());
    CHECK(says(Book{}.opening(0, 180).dip(10, 186.1).on(10, shape), 2, "vessel.dip_gain"));
}

TEST_CASE("dips at the ends: above the capacity, empty, into nothing") {
    const auto above = Book{}.opening(0, 220).dip(1, 240).on(1);
    CHECK(says(above, 2, "vessel.dip_above"));
    CHECK(above.findings.size() == 1);
    CHECK(above.now.volume.l == 225);
    const auto empty = Book{}.opening(0, 220).dip(1, 0).on(1);
    CHECK(says(empty, 2, "vessel.dip_loss"));
    CHECK(empty.now.volume.l == 0);
    CHECK(empty.now.generations.empty());
    const auto unknown = Book{}.dip(3, 100).on(13);
    CHECK(says(unknown, 1, "vessel.dip_gain"));
    CHECK(unknown.now.volume.l == 100);
    CHECK(unknown.now.meanAge.d == 10);
    CHECK(unknown.now.generations.size() == 1);
}

TEST_CASE("an entry in the future waits") {
    const auto result = Book{}.opening(0, 200, 100).draw(50, 75).on(20);
    CHECK(says(result, 2, "vessel.future"));
    CHECK(result.now.volume.l == 200);
    CHECK(result.now.on == dayAfter(20));
    CHECK(result.now.meanAge.d == 120);
    REQUIRE(result.after.size() == 2);
    CHECK(result.after[1].volume.l == 125);
    CHECK(Book{}.opening(0, 200).draw(20, 75).on(20).findings.empty());
}

TEST_CASE("tiny shares merge into the oldest and the mean stays") {
    Book book;
    book.opening(0, 225, 1000);
    for (int n = 1; n <= 60; ++n)
        book.draw(10 * n, 112.5).refill(10 * n, 112.5);
    const auto now = book.on(600).now;
    CHECK(now.generations.size() < 25);
    double sum = 0, mean = 0;
    for (const auto& generation : now.generations) {
        CHECK(generation.share.of1 > 0);
        CHECK(generation.birthAge.d >= 0);
        sum += generation.share.of1;
        mean += generation.share.of1 * ageOf(generation, now.on).d;
    }
    CHECK(sum == Approx(1).margin(1e-12));
    CHECK(mean == Approx(now.meanAge.d).margin(1e-9));
    CHECK(now.meanAge.d == Approx(10).margin(1e-9));
    // a drop of top-up does not become a generation of its own
    CHECK(Book{}.opening(0, 224).refill(0, .9).topUp(1, 1e-4).on(1).now.generations.size() == 2);
}

TEST_CASE("the heavier part names what was merged") {
    // all but a trace drawn, then filled: the new beer must not pass for the old
    const auto now = Book{}.opening(0, 225, 900).draw(10, 224.9999).refill(10, 224).on(10).now;
    REQUIRE(now.generations.size() == 1);
    CHECK(now.generations[0].entry == 3);
    CHECK(now.generations[0].on == dayAfter(10));
}

TEST_CASE("older than an age: steps by generation, a normal tail for an opening with a spread") {
    const auto now = Book{}.opening(0, 100, 400).refill(0, 100, 20).on(30).now;
    CHECK(olderThan(now, {0}).of1 == 1);
    CHECK(olderThan(now, {50}).of1 == Approx(.5));
    CHECK(olderThan(now, {49.9}).of1 == 1);
    CHECK(olderThan(now, {430}).of1 == 0);
    const auto opened = Book{}.opening(0, 100, 570, 360).on(0).now;
    CHECK(olderThan(opened, {570}).of1 == Approx(.5));
    CHECK(olderThan(opened, {570 - 360}).of1 == Approx(.8413447).margin(1e-6)); // standard normal table
    CHECK(olderThan(opened, {570 + 1.96 * 360}).of1 == Approx(.0249979).margin(1e-6));
    CHECK(olderThan(LedgerState{}, {10}).of1 == 0);
}

TEST_CASE("a long ledger keeps a bounded list and a true mean") {
    Book book;
    book.opening(0, 225);
    for (int n = 1; n <= 20000; ++n)
        book.draw(n, .1).topUp(n, .1);
    const auto result = replayNow(book.entries, {Litres{225}, Share{0}}, dayAfter(20000));
    CHECK(result.findings.empty());
    CHECK(result.after.empty());
    CHECK(result.now.generations.size() <= 256);
    const double f = .1 / 225;
    CHECK(result.now.meanAge.d == Approx((1 - f) / f * (1 - std::pow(1 - f, 20000)) + 0).epsilon(1e-9));
    double mean = 0;
    for (const auto& generation : result.now.generations)
        mean += generation.share.of1 * ageOf(generation, result.now.on).d;
    CHECK(mean == Approx(result.now.meanAge.d).epsilon(1e-9));
}

TEST_CASE("every finding has a text and every placeholder a value") {
    const auto result = Book{}
                            .refill(0, 100)
                            .opening(10, 300)
                            .opening(11, 10)
                            .draw(12, 400)
                            .refill(13, -1)
                            .topUp(14, 300)
                            .dip(15, 100)
                            .dip(16, 200)
                            .dip(17, 300)
                            .draw(90, 1)
                            .on(20);
    CHECK(result.findings.size() == 10);
    for (const auto& finding : result.findings) {
        const auto text = render(finding.message);
        CAPTURE(text);
        CHECK(builtInTexts().has(finding.message.key));
        CHECK(text.find('{') == std::string::npos);
        CHECK(text.find("20") != std::string::npos); // at least the day
    }
}

TEST_CASE("a ledger walked entry by entry is the ledger replayed, before its opening too") {
    const Book book = Book{}.refill(0, 100, 5).dip(3, 90).opening(10, 200, 400).draw(20, 50).refill(20, 40);
    const VesselShape shape{Litres{225}, Share{.04}};
    const auto replayed = book.on(20, shape);
    LedgerWalk walk(shape, book.entries);
    for (std::size_t i = 0; i < book.entries.size(); ++i) {
        walk.apply(book.entries[i]);
        const auto state = walk.on(book.entries[i].on);
        CHECK(state.volume == replayed.after[i].volume);
        CHECK(state.meanAge == replayed.after[i].meanAge);
        CHECK(state.generations.size() == replayed.after[i].generations.size());
        CHECK(state.opened == replayed.after[i].opened);
    }
}
