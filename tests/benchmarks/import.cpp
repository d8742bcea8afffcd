// SPDX-License-Identifier: GPL-3.0-or-later
// Years of notes from one CSV file: 10,000 readings (argument) with three measured values and a note, previewed and
// then imported. Both are to be done within 2 s.
#include "desk/notes.h"
#include "support/bench.h"
#include "support/scratch.h"

#include <cstdlib>
#include <string>

using namespace staveline;

namespace {

constexpr Day begin = std::chrono::year{2006} / 1 / 1;
constexpr Day today = std::chrono::year{2026} / 1 / 1;

std::string notes(int count) {
    std::string text = "Date;SG;pH;TA (g/L);Note\r\n";
    const int days = daysBetween(begin, today);
    for (int i = 0; i < count; ++i)
        text += fmt::format("{};1,{:03};3,{:02};{},{};reading {}\r\n",
                            isoDay(begin + std::chrono::days{static_cast<std::int64_t>(i) * days / count}), 2 + i % 9,
                            30 + i % 40, 5 + i % 3, i % 10, i);
    return text;
}

/// The cost of one way with a fresh book [ms].
double cost(const std::string& text, bool trial, std::size_t count) {
    const testing::Scratch scratch;
    auto desk = desk::Desk::create(scratch / "one.cellar", [] { return today; });
    facts::VesselFact vessel;
    vessel.name = "Plover";
    facts::OpeningFact opening;
    opening.vessel = "Plover";
    opening.on = begin;
    opening.volume = Litres{200};
    if (!desk || !(*desk)->record({facts::Fact{vessel}, facts::Fact{opening}}))
        std::exit(1);
    const auto started = std::chrono::steady_clock::now();
    const auto done = desk::takeNotes(**desk, text, {"reading", "Plover", {}, {}, {}}, "notes.csv", trial);
    const std::chrono::duration<double, std::milli> passed = std::chrono::steady_clock::now() - started;
    if (!done || done->taken != count) {
        fmt::print(stderr, "{}\n", done ? desk::toJson(*done) : render(done.error().cause));
        std::exit(1);
    }
    return passed.count();
}

} // namespace

int main(int argc, char** argv) {
    const int count = argc > 1 ? std::max(2, std::atoi(argv[1])) : 10000;
    const std::string text = notes(count);
    const auto rows = static_cast<std::size_t>(count);
    bench::print("import_preview", cost(text, true, rows), "ms", rows);
    bench::print("import_notes", cost(text, false, rows), "ms", rows);
    return 0;
}
