// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the Taste page with a full table: test_ui "[bench]" prints one JSON object a line.
#include "ui/taste_support.h"

#include "support/bench.h"

#include <ctime>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

constexpr int tasters = 200;

SittingFact crowd() {
    SittingFact fact{"Heron", {}};
    fact.sitting.on = testToday;
    for (int t = 0; t < tasters; ++t)
        for (const Attribute& attribute : builtInSheet().attributes) {
            const double value = (t * 7 + static_cast<int>(attribute.code.back())) % 21 * .5;
            fact.sitting.scores.push_back({"Taster " + std::to_string(t + 1), attribute.code, value,
                                           attribute.bothTemperatures ? std::optional(value) : std::nullopt});
        }
    return fact;
}

/// What this thread itself has worked: the same on a busy machine. [ms]
double ownTime() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) / 1e6;
}

template <class Work> double millisecondsOf(Work&& work) {
    const double before = ownTime();
    work();
    return ownTime() - before;
}

void report(const char* name, std::vector<double> times) {
    std::sort(times.begin(), times.end());
    bench::print(name, bench::quantile(times, .5), "ms", times.size());
    bench::print(std::string(name) + "_longest", times.back(), "ms", times.size());
}

} // namespace

TEST_CASE("figures of the Taste page with 200 tasters", "[.][bench]") {
    install(*qApp, Appearance::light);
    AtTaste s;
    const Desk& desk = s.session->desk();
    REQUIRE(s.session->record(crowd()));
    s.workPage->openSitting(s.stored().front().id);
    std::vector<double> typed, stored, amended, judged, known, read;
    SittingFact fact = s.stored().front().fact;
    for (int i = 0; i < 12; ++i) {
        const char* code = i % 2 == 0 ? "TA1" : "TA2";
        s.at(code);
        typed.push_back(millisecondsOf([&] {
            s.type(i % 3 == 0 ? "4" : i % 3 == 1 ? "5" : "6");
            QCoreApplication::processEvents();
        }));
        stored.push_back(millisecondsOf([&] {
            s.key(Qt::Key_Tab);
            QCoreApplication::processEvents();
        }));
    }
    for (int i = 0; i < 12; ++i) {
        fact.sitting.scores.front().cold = i % 2 == 0 ? 1.0 : 2.0;
        judged.push_back(millisecondsOf([&] { REQUIRE(desk.taste(fact)); }));
        known.push_back(millisecondsOf([&] { REQUIRE(desk.estimates("Heron")); }));
        read.push_back(millisecondsOf([&] { REQUIRE(desk.sittings("Heron")); }));
    }
    const std::unique_ptr<Desk> alone = *Desk::create(s.scratch / "alone.cellar", [] { return testToday; });
    fillCellar(*alone);
    REQUIRE(alone->record(fact));
    const auto there = alone->sittings("Heron")->front().id;
    for (int i = 0; i < 12; ++i) {
        fact.sitting.scores.front().cold = i % 2 == 0 ? 3.0 : 4.0;
        amended.push_back(millisecondsOf([&] { REQUIRE(alone->amend("sitting", there, fact)); }));
    }
    report("taste_200_key", typed);
    report("taste_200_store", stored);
    report("taste_200_amend_only", amended);
    report("taste_200_judge", judged);
    report("taste_200_estimates", known);
    report("taste_200_sittings", read);
}
