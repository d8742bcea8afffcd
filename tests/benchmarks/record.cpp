// SPDX-License-Identifier: GPL-3.0-or-later
// One file of many entries into one vessel: N dips, then N readings (argument; default 8000) against half as many in
// the same run. Twice the entries take twice the time, whatever the machine. 100,000 are to be done in 10 s of
// processor time: bench record 100000.
#include "desk/desk.h"
#include "support/bench.h"
#include "support/scratch.h"

#include <cstdlib>
#include <ctime>
#include <vector>

using namespace staveline;
using namespace staveline::facts;

namespace {

constexpr Day start = std::chrono::year{1990} / 1 / 1;
constexpr Day today = std::chrono::year{2026} / 1 / 1;

std::vector<Fact> dips(int count) {
    std::vector<Fact> facts;
    const int days = daysBetween(start, today);
    for (int i = 0; i < count; ++i)
        facts.emplace_back(DipFact{.vessel = "Plover",
                                   .on = start + std::chrono::days{static_cast<std::int64_t>(i) * days / count},
                                   .volume = Litres{150 + i % 600 * .1},
                                   .note = std::to_string(i)});
    return facts;
}

std::vector<Fact> readings(int count) {
    std::vector<Fact> facts;
    const int days = daysBetween(start, today);
    for (int i = 0; i < count; ++i) {
        ReadingFact reading;
        reading.vessel = "Plover";
        reading.on = start + std::chrono::days{static_cast<std::int64_t>(i) * days / count};
        reading.measured.ph = Ph{3 + i % 90 * .01};
        reading.note = std::to_string(i);
        facts.emplace_back(reading);
    }
    return facts;
}

/// Processor time of one file [ms].
double cost(const std::vector<Fact>& facts) {
    const testing::Scratch scratch;
    auto desk = desk::Desk::create(scratch / "one.cellar", [] { return today; });
    VesselFact vessel;
    vessel.name = "Plover";
    OpeningFact opening;
    opening.vessel = "Plover";
    opening.on = start;
    opening.volume = Litres{200};
    if (!desk || !(*desk)->record({Fact{vessel}, Fact{opening}}))
        std::exit(1);
    const std::clock_t begun = std::clock();
    if (const auto done = (*desk)->record(facts); !done) {
        fmt::print(stderr, "{}: {}\n", done.error().path, render(done.error().cause));
        std::exit(1);
    }
    return 1000.0 * static_cast<double>(std::clock() - begun) / CLOCKS_PER_SEC;
}

template <class Make> void compare(const std::string& what, Make make, int count) {
    const double half = cost(make(count / 2)), whole = cost(make(count));
    bench::print("record_" + what, whole, "ms", static_cast<std::size_t>(count));
    bench::print("record_" + what + "_against_half", whole / half, "times", static_cast<std::size_t>(count));
}

} // namespace

int main(int argc, char** argv) {
    const int count = argc > 1 ? std::max(2, std::atoi(argv[1])) : 8000;
    compare("dips", dips, count);
    compare("readings", readings, count);
    return 0;
}
