// SPDX-License-Identifier: GPL-3.0-or-later
// A book of VESSELS x 20 years x weekly entries (argument; default 20, the budget is for 200): opening, the rail, one
// vessel, one edit, one undo. And three casks that feed each other by the month, with brews and sittings, over YEARS
// (second argument; default 20): what the model's replay of them takes.
#include "desk/desk.h"
#include "desk/advice.h"
#include "desk/ledger.h"
#include "estimate/estimates.h"
#include "support/bench.h"
#include "support/scratch.h"

#include <cstdlib>
#include <fstream>
#include <vector>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;

namespace {

constexpr int weeks = 52 * 20;
const Day start = std::chrono::year{2006} / 1 / 2;
const Day today = start + std::chrono::days{7 * weeks + 1};

/// One reading a week, a draw and a refill every 34 weeks.
std::vector<Fact> twentyYears(const std::string& vessel) {
    std::vector<Fact> facts;
    OpeningFact opening;
    opening.vessel = vessel;
    opening.on = start;
    opening.volume = Litres{220};
    facts.emplace_back(opening);
    for (int week = 1; week < weeks; ++week) {
        const Day on = start + std::chrono::days{7 * week};
        if (week % 34 == 0) {
            facts.emplace_back(DrawOffFact{vessel, on, Litres{75}, "", {}, ""});
            facts.emplace_back(RefillFact{vessel, on, Litres{78}, "", "", Days{14}, ""});
        } else {
            ReadingFact reading;
            reading.vessel = vessel;
            reading.on = on;
            reading.measured.ph = Ph{3.3};
            facts.emplace_back(reading);
        }
    }
    return facts;
}

void fill(Desk& desk, int vessels) {
    for (int v = 0; v < vessels; ++v) {
        VesselFact vessel;
        vessel.name = "Vessel " + std::to_string(v);
        if (!desk.record(Fact{vessel}) || !desk.record(twentyYears(vessel.name)))
            std::exit(1);
    }
}

/// Peak resident memory of this process [MB].
double peakMemory() {
    std::ifstream in("/proc/self/status");
    for (std::string line; std::getline(in, line);)
        if (line.starts_with("VmHWM:"))
            return std::strtod(line.c_str() + 6, nullptr) / 1024;
    return 0;
}

void editsAndUndos(Desk& desk) {
    std::vector<double> edits, undos;
    int day = 0;
    for (int i = 0; i < 100; ++i) {
        const DipFact dip{"Vessel 0", today - std::chrono::days{++day % 7}, Litres{200}, ""};
        const auto t0 = std::chrono::steady_clock::now();
        if (!desk.record(Fact{dip}))
            std::exit(1);
        const auto t1 = std::chrono::steady_clock::now();
        if (!desk.undo())
            std::exit(1);
        const auto t2 = std::chrono::steady_clock::now();
        edits.push_back(std::chrono::duration<double, std::milli>(t1 - t0).count());
        undos.push_back(std::chrono::duration<double, std::milli>(t2 - t1).count());
    }
    std::sort(edits.begin(), edits.end());
    std::sort(undos.begin(), undos.end());
    bench::print("edit_p50", bench::quantile(edits, .5), "ms", edits.size());
    bench::print("edit_p95", bench::quantile(edits, .95), "ms", edits.size());
    bench::print("undo_p50", bench::quantile(undos, .5), "ms", undos.size());
    bench::print("undo_p95", bench::quantile(undos, .95), "ms", undos.size());
}

/// The first cask is brewed for; each month the next two are topped from the one before; the last is drawn.
void fillRow(Desk& desk, int months) {
    std::vector<Fact> facts;
    const std::vector<std::string> row = {"Row 1", "Row 2", "Row 3"};
    for (const auto& name : row) {
        VesselFact vessel;
        vessel.name = name;
        facts.emplace_back(vessel);
        OpeningFact opening;
        opening.vessel = name;
        opening.on = start;
        opening.volume = Litres{200};
        facts.emplace_back(opening);
    }
    for (int month = 1; month < months; ++month) {
        const Day on = start + std::chrono::days{30 * month};
        facts.emplace_back(DrawOffFact{row[2], on, Litres{8}, "", {}, ""});
        facts.emplace_back(TopUpFact{row[2], on, Litres{8}, "", row[1], {}, ""});
        facts.emplace_back(TopUpFact{row[1], on, Litres{8}, "", row[0], {}, ""});
        if (month % 6 != 0)
            continue;
        BrewFact brew;
        brew.name = "Brew " + std::to_string(month / 6);
        brew.on = on - std::chrono::days{14};
        brew.recipe.grist = {{"pilsner", Share{1}, false}};
        brew.recipe.mash = {{Celsius{66}, Minutes{60}}};
        facts.emplace_back(brew);
        facts.emplace_back(RefillFact{row[0], on, Litres{50}, brew.name, "", {}, ""});
        for (const auto& name : row) {
            SittingFact sitting;
            sitting.vessel = name;
            sitting.sitting.on = on;
            sitting.sitting.scores = {{"Rook", "TA1", 6.0, 6.5}};
            facts.emplace_back(sitting);
        }
    }
    if (const auto done = desk.record(facts); !done) {
        fmt::print(stderr, "{}: {}\n", done.error().path, render(done.error().cause));
        std::exit(1);
    }
}

void replayOfRow(int years) {
    const testing::Scratch scratch;
    const int months = years * 365 / 30;
    const Day last = start + std::chrono::days{30 * months};
    auto desk = Desk::create(scratch / "row.cellar", [last] { return last; });
    if (!desk)
        std::exit(1);
    fillRow(**desk, months);
    const auto transfers = static_cast<std::size_t>(2 * (months - 1));
    for (const std::string vessel : {"Row 1", "Row 2", "Row 3"}) {
        const auto estimates = [&] { return (*desk)->estimates(vessel).has_value(); };
        const auto job = [&] { return (*desk)->adviceJob({vessel, {}, {}, false}).has_value(); };
        const auto at = vessel.substr(4);
        bench::print("estimates_row_" + at, bench::quantile(bench::timesMs(3, estimates), .5), "ms", transfers);
        bench::print("advice_job_row_" + at, bench::quantile(bench::timesMs(3, job), .5), "ms", transfers);
    }
}

} // namespace

int main(int argc, char** argv) {
    const int vessels = argc > 1 ? std::max(1, std::atoi(argv[1])) : 20;
    replayOfRow(argc > 2 ? std::max(1, std::atoi(argv[2])) : 20);
    const testing::Scratch scratch;
    const auto path = scratch / "large.cellar";
    const Clock clock = [] { return today; };
    {
        auto desk = Desk::create(path, clock);
        if (!desk)
            return 1;
        fill(**desk, vessels);
    }
    const auto entries = static_cast<std::size_t>(vessels) * (weeks + weeks / 34);
    const auto open = [&] { return *Desk::open(path, clock); };
    bench::print("entries", static_cast<double>(entries), "rows", entries);
    bench::print("open", bench::quantile(bench::timesMs(5, open), .5), "ms", 5);
    bench::print("open_one_vessel",
                 bench::quantile(bench::timesMs(5, [&] { return open()->ledger("Vessel 0")->lines.size(); }), .5), "ms",
                 5);
    bench::print("open_and_rail", bench::quantile(bench::timesMs(3, [&] { return open()->cellar()->size(); }), .5),
                 "ms", 3);
    auto desk = open();
    (void)desk->cellar();
    bench::print("rail_again", bench::quantile(bench::timesMs(5, [&] { return desk->cellar()->size(); }), .5), "ms", 5);
    editsAndUndos(*desk);
    bench::print("peak_memory", peakMemory(), "MB", 1);
    return 0;
}
