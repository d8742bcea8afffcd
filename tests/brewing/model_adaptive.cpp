// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/adaptive.h"
#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;

namespace {

using One = std::array<double, 1>;
using Two = std::array<double, 2>;

template <std::size_t N> double largest(const std::array<double, N>&, const std::array<double, N>& error) {
    double size = 0;
    for (double e : error)
        size = std::max(size, std::abs(e));
    return size;
}

One decayed(double rate, double duration, double tolerance, int* calls = nullptr) {
    One y{1};
    integrate(
        y, duration, tolerance,
        [&](double, const One& v) {
            if (calls)
                ++*calls;
            return One{-rate * v[0]};
        },
        largest<1>);
    return y;
}

} // namespace

TEST_CASE("An exponential decay is followed within a few tolerances", "[brewing][adaptive]") {
    for (double rate : {.01, .3, 4., 50.}) {
        INFO(rate);
        CHECK(std::abs(decayed(rate, 1, 1e-6)[0] - std::exp(-rate)) < 2e-5);
    }
}

TEST_CASE("A tighter tolerance gives a smaller error and more work", "[brewing][adaptive]") {
    int coarseCalls = 0, fineCalls = 0;
    const double exact = std::exp(-5.);
    const double coarse = std::abs(decayed(5, 1, 1e-4, &coarseCalls)[0] - exact);
    const double fine = std::abs(decayed(5, 1, 1e-8, &fineCalls)[0] - exact);
    CHECK(fine < coarse / 100);
    CHECK(fineCalls > 2 * coarseCalls);
    CHECK(coarseCalls < 400);
}

TEST_CASE("A straight line is exact, whatever the steps", "[brewing][adaptive]") {
    One y{2};
    integrate(
        y, 7, 1e-3, [](double, const One&) { return One{-.5}; }, largest<1>);
    CHECK(y[0] == Approx(-1.5).epsilon(1e-14));
}

TEST_CASE("Time inside a call starts at zero and ends at the duration", "[brewing][adaptive]") {
    One y{0};
    double first = 1, last = 0;
    integrate(
        y, 3, 1e-6,
        [&](double t, const One&) {
            first = std::min(first, t);
            last = std::max(last, t);
            return One{3 * t * t};
        },
        largest<1>);
    CHECK(first == 0);
    CHECK(last == 3);
    CHECK(y[0] == Approx(27).epsilon(1e-5));
}

TEST_CASE("A fast and a slow process live in one system", "[brewing][adaptive]") {
    // The fast one relaxes to the slow one within 1/200 of the time.
    Two y{1, 0};
    integrate(
        y, 5, 1e-6,
        [](double, const Two& v) {
            return Two{-v[0], 200 * (v[0] - v[1])};
        },
        largest<2>);
    CHECK(y[0] == Approx(std::exp(-5.)).epsilon(1e-3));
    CHECK(y[1] == Approx(std::exp(-5.) * 200 / 199).epsilon(2e-3));
}

TEST_CASE("Only what the size counts holds the steps back", "[brewing][adaptive]") {
    int calls = 0;
    Two y{1, 1};
    integrate(
        y, 1, 1e-6,
        [&](double, const Two& v) {
            ++calls;
            return Two{-v[0], std::sin(300 * v[1])};
        },
        [](const Two&, const Two& error) { return std::abs(error[0]); });
    CHECK(calls < 200);
    CHECK(y[0] == Approx(std::exp(-1.)).epsilon(1e-4));
}

TEST_CASE("Two halves give what the whole gives", "[brewing][adaptive]") {
    CHECK_PROPERTY("decay over a + b", [] {
        const double rate = *rc::gen::inRange(1, 100) / 10., split = *rc::gen::inRange(1, 100) / 100.;
        One y{1};
        const auto rates = [&](double, const One& v) { return One{-rate * v[0]}; };
        integrate(y, split, 1e-7, rates, largest<1>);
        integrate(y, 1 - split, 1e-7, rates, largest<1>);
        RC_ASSERT(std::abs(y[0] - std::exp(-rate)) < 1e-5);
    });
}
