// SPDX-License-Identifier: GPL-3.0-or-later
// Replay against the closed forms of fractional blending. The formulas are derived from the geometric distribution and
// stated beside each case; none of the expected values comes from the replay itself.
#include "ledger_support.h"

#include <array>
#include <cmath>
#include <map>

using namespace staveline;
using namespace staveline::vessel;
using namespace staveline::ledger_tests;

namespace {

struct Steady {
    double share;
    int interval;
    double beerAge, before, after, variance;
};
// Mean age before the draw a + t/f, after the refill t less, variance t2 (1 - f)/f2. Units of ten days.
constexpr std::array steady{Steady{1 / 2., 2, 0, 4, 2, 8}, Steady{1 / 3., 1, 0, 3, 2, 6},
                            Steady{1 / 4., 1, 0, 4, 3, 12}, Steady{.3, 9, 1, 31, 22, 630},
                            Steady{.4, 6, 1.5, 16.5, 10.5, 135}};
constexpr int unit = 10;

double inUnits(Days days) {
    return days.d / unit;
}

} // namespace

TEST_CASE("steady ages of a single vessel follow a + t/f") {
    for (const auto& row : steady) {
        CAPTURE(row.share, row.interval);
        const int cycles = 200, step = row.interval * unit;
        const auto now = solera(225, row.share, step, row.beerAge * unit, cycles).on(cycles * step).now;
        CHECK(inUnits(now.meanAge) == Approx(row.after).margin(5e-5));
        const auto later = solera(225, row.share, step, row.beerAge * unit, cycles).on((cycles + 1) * step).now;
        CHECK(inUnits(later.meanAge) == Approx(row.before).margin(5e-5));
        CHECK(later.ageSd.d / unit == Approx(std::sqrt(row.variance)).margin(5e-5));
        CHECK(now.ageSd.d == Approx(later.ageSd.d).margin(1e-9));
    }
}

TEST_CASE("the spread of the refill itself adds to the steady variance") {
    Book book;
    book.opening(0, 200);
    for (int n = 1; n <= 300; ++n)
        book.draw(n * 10, 80).refill(n * 10, 80, 0, 7);
    // t2 (1 - f)/f2 + s2
    CHECK(book.on(3000).now.ageSd.d == Approx(std::sqrt(100 * .6 / .16 + 49)).margin(1e-6));
}

TEST_CASE("a vessel filled fresh approaches its steady age as (1 - f)^n") {
    struct Row {
        int n;
        double before, after, varianceBefore, varianceAfter, founder;
    };
    // f 0.3, t 9, a 1: a + t (1 - (1 - f)^n)/f before the n-th draw; variances by the blending formula.
    constexpr std::array rows{Row{1, 10, 7.3, 0, 17.01, .7}, Row{2, 16.3, 11.71, 17.01, 61.0659, .49},
                              Row{3, 20.71, 14.797, 61.0659, 124.3278, .343},
                              Row{4, 23.797, 16.9579, 124.3278, 196.1671, .2401}};
    for (const auto& row : rows) {
        CAPTURE(row.n);
        const auto before = solera(225, .3, 9 * unit, unit, row.n - 1).on(row.n * 9 * unit).now;
        const auto after = solera(225, .3, 9 * unit, unit, row.n).on(row.n * 9 * unit).now;
        CHECK(inUnits(before.meanAge) == Approx(row.before).margin(5e-5));
        CHECK(inUnits(after.meanAge) == Approx(row.after).margin(5e-5));
        CHECK(std::pow(before.ageSd.d / unit, 2) == Approx(row.varianceBefore).margin(5e-5));
        CHECK(std::pow(after.ageSd.d / unit, 2) == Approx(row.varianceAfter).margin(5e-5));
        CHECK(after.generations.back().share.of1 == Approx(row.founder).margin(1e-12));
        CHECK(after.generations.back().entry == 1);
        CHECK(after.cycle == row.n);
    }
}

TEST_CASE("generation shares are geometric, newest first") {
    const auto now = solera(225, .3, 30, 0, 100).on(3000).now;
    constexpr std::array shares{.3, .21, .147, .1029, .0720, .0504, .0353, .0247};
    double rest = 1;
    for (std::size_t j = 0; j < shares.size(); ++j) {
        CHECK(now.generations[j].share.of1 == Approx(shares[j]).margin(5e-5));
        CHECK(ageOf(now.generations[j], now.on).d == 30 * static_cast<int>(j));
        rest -= now.generations[j].share.of1;
    }
    CHECK(rest == Approx(.0576).margin(5e-5));
    // older than k refills: (1 - f)^k
    for (int k = 1; k < 12; ++k)
        CHECK(olderThan(now, {30 * k - 1.0}).of1 == Approx(std::pow(.7, k)).margin(1e-9));
}

TEST_CASE("the first beer falls below five per cent after ln 0.05 / ln(1 - f) draws") {
    const std::map<double, int> draws{{.1, 29}, {.2, 14}, {.25, 11}, {.3, 9}, {1 / 3., 8}, {.4, 6}, {.5, 5}};
    for (const auto& [share, n] : draws) {
        CAPTURE(share, n);
        CHECK(solera(100, share, 10, 0, n - 1).on(10 * n).now.generations.back().share.of1 >= .05);
        CHECK(solera(100, share, 10, 0, n).on(10 * n).now.generations.back().share.of1 < .05);
    }
}

TEST_CASE("the draw that brings a mean age down") {
    // from 28 to 20 months with beer of one month: share (28 - 20)/(28 - 1) = 0.2963
    Book book;
    book.opening(0, 225, 28 * unit).draw(0, .2963 * 225).refill(0, .2963 * 225, unit);
    CHECK(inUnits(book.on(0).now.meanAge) == Approx(20).margin(1e-3));
    // and waiting alone: 21.7 is 30 after 8.3
    Book waiting;
    waiting.opening(0, 225, 21.7 * unit);
    CHECK(inUnits(waiting.on(83).now.meanAge) == Approx(30).margin(1e-9));
}

TEST_CASE("ages count civil days across leap days") {
    const auto age = [](const char* from, const char* to) {
        LedgerEntry fill;
        fill.kind = EntryKind::refill;
        fill.on = *parseDay(from);
        fill.volume = {100};
        return replay(std::array{fill}, {Litres{225}, Share{0}}, *parseDay(to)).now.meanAge.d;
    };
    CHECK(age("2020-02-28", "2020-03-01") == 2);
    CHECK(age("2021-02-28", "2021-03-01") == 1);
    CHECK(age("2100-02-28", "2100-03-01") == 1); // no leap day in 2100
    // Julian day numbers 2440588 and 2451545 (epoch J2000.0, International Astronomical Union)
    CHECK(age("1970-01-01", "2000-01-01") == 2451545 - 2440588);
    CHECK(age("2000-01-01", "2100-01-01") == 36525);
}

namespace {

/// Vessels in a row: each draw from one refills the next; the last is drawn off, the first gets fresh beer.
class Row {
public:
    Row(int vessels, double volume, double share) : books_(static_cast<std::size_t>(vessels)), litres_(volume * share) {
        for (auto& book : books_)
            book.opening(0, volume);
    }
    [[nodiscard]] LedgerState state(std::size_t vessel, int day) const {
        return replayNow(books_[vessel].entries, {Litres{225}, Share{0}}, dayAfter(day)).now;
    }
    [[nodiscard]] LedgerState last(int day) const { return state(books_.size() - 1, day); }
    void move(int day) {
        for (std::size_t i = books_.size(); i-- > 0;) {
            books_[i].transferOut(day, litres_);
            const auto source = i > 0 ? state(i - 1, day) : LedgerState{};
            books_[i].refill(day, litres_, source.meanAge.d, source.ageSd.d);
        }
    }

private:
    std::vector<Book> books_;
    double litres_;
};

/// The same by counting: mean of the smaller of n and a negative binomial waiting time.
double expectedAge(int vessels, double f, int n) {
    double age = 0;
    for (int j = 0; j < n; ++j)
        for (int i = 0; i <= std::min(vessels - 1, j); ++i)
            age += std::exp(std::lgamma(j + 1) - std::lgamma(i + 1) - std::lgamma(j - i + 1)) * std::pow(f, i) *
                   std::pow(1 - f, j - i);
    return age;
}

} // namespace

TEST_CASE("vessels in series age as a negative binomial") {
    struct Case {
        int vessels;
        double share;
        std::array<double, 4> at; // n = 1, 5, 10, 20
    };
    constexpr std::array cases{Case{1, .5, {1, 1.9375, 1.9980, 2.0000}}, Case{1, .1, {1, 4.0951, 6.5132, 8.7842}},
                               Case{4, .5, {1, 4.9375, 7.5234, 7.9970}}, Case{4, .25, {1, 4.9961, 9.5928, 14.6244}},
                               Case{8, .5, {1, 5.0, 9.9766, 15.5653}},   Case{8, .25, {1, 5.0, 9.9999, 19.7605}}};
    for (const auto& row : cases) {
        CAPTURE(row.vessels, row.share);
        Row cellar(row.vessels, 200, row.share);
        std::size_t next = 0;
        for (int n = 1; n <= 20; ++n) {
            const double age = cellar.last(n * unit).meanAge.d / unit;
            CHECK(age == Approx(expectedAge(row.vessels, row.share, n)).margin(1e-9));
            if (n == 1 || n == 5 || n == 10 || n == 20)
                CHECK(age == Approx(row.at[next++]).margin(5e-5));
            cellar.move(n * unit);
        }
    }
}

TEST_CASE("a series settles at k t/f with variance k t2 (1 - f)/f2") {
    Row cellar(4, 200, .5);
    for (int n = 1; n <= 60; ++n)
        cellar.move(n * unit);
    const auto last = cellar.last(61 * unit);
    CHECK(inUnits(last.meanAge) == Approx(8).margin(1e-6));
    CHECK(std::pow(last.ageSd.d / unit, 2) == Approx(4 * .5 / .25).margin(1e-6));
}
