// SPDX-License-Identifier: GPL-3.0-or-later
// Angels' share and topping: closed forms for volume-weighted age, and the books that must balance.
#include "ledger_support.h"

#include <array>

using namespace staveline;
using namespace staveline::vessel;
using namespace staveline::ledger_tests;

namespace {

/// A rate that loses exactly `share` of the capacity in `days`.
VesselShape losing(double share, int days, double capacity = 225) {
    return {Litres{capacity}, Share{share * daysPerYear / days}};
}

} // namespace

TEST_CASE("evaporation is linear in time and leaves ages alone") {
    Book book;
    book.opening(0, 225, 100, 30);
    const auto shape = losing(.05, 360);
    for (const int day : {0, 90, 180, 360}) {
        const auto now = book.on(day, shape).now;
        CHECK(now.volume.l == Approx(225 - 11.25 * day / 360));
        CHECK(now.totals.evaporated.l == Approx(11.25 * day / 360).margin(1e-12));
        CHECK(now.meanAge.d == Approx(100 + day));
        CHECK(now.ageSd.d == Approx(30));
    }
}

TEST_CASE("evaporation stops at the bottom") {
    Book book;
    book.opening(0, 2, 10);
    const auto now = book.on(3600, losing(.05, 360)).now;
    CHECK(now.volume.l == 0);
    CHECK(now.totals.evaporated.l == Approx(2));
    CHECK(now.generations.empty());
}

TEST_CASE("refilling what was drawn and lost: mean age a + t V/(D + E)") {
    // V 225, E 11.25 a year, D 75: 225/86.25 = 2.6087 years
    const int year = 365;
    const auto shape = losing(.05, year);
    Book book;
    book.opening(0, 225);
    for (int n = 1; n <= 60; ++n)
        book.draw(n * year, 75).refill(n * year, 86.25);
    const auto before = book.on(61 * year, shape);
    CHECK(before.findings.empty());
    CHECK(before.now.meanAge.d / year == Approx(2.6087).margin(5e-5));
    CHECK(before.now.volume.l == Approx(213.75));
    CHECK(before.after.back().volume.l == Approx(225));
    CHECK(before.after.back().generations.front().share.of1 == Approx(.383333).margin(1e-6));
}

TEST_CASE("topping every month makes the beer a little older than topping at the draw") {
    // closed form with q = 1 - E/(12 V): mean of q^0..q^11 over 1 - q^11 (V - E/12 - D)/V = 2.6615 years
    const int month = 30, year = 12 * month;
    Book book;
    book.opening(0, 225);
    for (int n = 1; n <= 60 * 12; ++n) {
        if (n % 12 != 0)
            book.topUp(n * month, 11.25 / 12);
        else
            book.draw(n * month, 75).refill(n * month, 75 + 11.25 / 12);
    }
    const auto replayed = book.on(61 * year - 1, losing(.05, year));
    CHECK(replayed.findings.empty());
    // eleven more top-ups fall into the last year
    for (int n = 1; n < 12; ++n)
        book.topUp((60 * 12 + n) * month, 11.25 / 12);
    CHECK(book.on(61 * year, losing(.05, year)).now.meanAge.d / year == Approx(2.6615).margin(5e-5));
}

TEST_CASE("a chain of ever smaller vessels: the sum of V/R") {
    // V 60..20 L, 8 % of V a year, 1.5 L drawn a year: R 17.5, 12.7, 8.7, 5.5, 3.1; total 23.8694 years
    constexpr std::array volume{60., 50., 40., 30., 20.}, refill{17.5, 12.7, 8.7, 5.5, 3.1};
    const int year = 365;
    std::array<Book, 5> chain;
    for (std::size_t i = 0; i < chain.size(); ++i)
        chain[i].opening(0, volume[i]);
    const auto state = [&](std::size_t i, int day) {
        return replayNow(chain[i].entries, losing(.08, year, volume[i]), dayAfter(day)).now;
    };
    for (int n = 1; n <= 120; ++n)
        for (std::size_t i = chain.size(); i-- > 0;) {
            chain[i].draw(n * year, i + 1 < chain.size() ? refill[i + 1] : 1.5);
            chain[i].refill(n * year, refill[i], i > 0 ? state(i - 1, n * year).meanAge.d : 0);
        }
    CHECK(state(4, 121 * year).meanAge.d / year == Approx(23.8694).margin(5e-4));
    CHECK(replay(chain[4].entries, losing(.08, year, 20), dayAfter(121 * year)).findings.empty());
}

TEST_CASE("the year's volumes add up: level, draw, refill") {
    // full 225, 9 L lost, 75 drawn: 141 left; 84 fill it again, 37.33 % fresh
    Book book;
    book.opening(0, 225).draw(360, 75).refill(360, 84);
    const auto result = book.on(360, losing(.04, 360));
    CHECK(result.after[1].volume.l == Approx(141));
    CHECK(result.after[2].volume.l == Approx(225));
    CHECK(result.after[2].generations.front().share.of1 == Approx(.3733).margin(5e-5));
    CHECK(result.findings.empty());
    CHECK(result.now.totals.in.l == Approx(309));
    CHECK(result.now.totals.out.l == Approx(75));
    CHECK(result.now.totals.unexplained.l == Approx(0).margin(1e-12));
}
