// SPDX-License-Identifier: GPL-3.0-or-later
// The closed loop: synthetic vessels steered through the desk for twelve cycles, against doing nothing, a rule of thumb
// and one who knows the truth. What the truth is like is said in closed_loop/truth.h.
//   loop [--full] [--vessels N] [--cycles N] [--seed N] [--workers N] [--error POINTS --tasters 1|3 [--titrated]
//   [--caps]]
// Without a cell of its own: two cells and 24 vessels; with --full all sixteen and 192.
#include "benchmarks/closed_loop/figures.h"

#include <cstdlib>
#include <fmt/core.h>
#include <string_view>

using namespace staveline;
using namespace staveline::loop;

namespace {

std::vector<Cell> shortStudy() {
    return {{{3, .5}, false, {}}, {{1, .9}, false, {}}};
}

std::vector<Cell> fullStudy() {
    std::vector<Cell> cells;
    for (bool caps : {false, true})
        for (double error : {.5, .9})
            for (int tasters : {3, 1})
                for (bool titration : {false, true})
                    cells.push_back({{tasters, error}, titration, {caps}});
    return cells;
}

struct Asked {
    Extent extent;
    std::vector<Cell> cells = shortStudy();
};

/// Unknown words and missing numbers end the program with the usage.
Asked asked(int argc, char** argv) {
    Asked out;
    Cell own;
    bool ownCell = false;
    for (int i = 1; i < argc; ++i) {
        const std::string_view word = argv[i];
        const auto number = [&] { return ++i < argc ? std::atof(argv[i]) : 0; };
        if (word == "--full") {
            out.cells = fullStudy();
            out.extent.vessels = 192;
        } else if (word == "--vessels")
            out.extent.vessels = std::max(1, static_cast<int>(number()));
        else if (word == "--cycles")
            out.extent.cycles = std::max(1, static_cast<int>(number()));
        else if (word == "--seed")
            out.extent.seed = static_cast<std::uint64_t>(number());
        else if (word == "--workers")
            out.extent.workers = std::max(1U, static_cast<unsigned>(number()));
        else if (word == "--error")
            own.table.error = number(), ownCell = true;
        else if (word == "--tasters")
            own.table.tasters = std::clamp(static_cast<int>(number()), 1, 4), ownCell = true;
        else if (word == "--titrated")
            own.titration = ownCell = true;
        else if (word == "--caps")
            own.freedom.stepCaps = ownCell = true;
        else {
            fmt::print(stderr, "loop [--full] [--vessels N] [--cycles N] [--seed N] [--workers N] "
                               "[--error POINTS --tasters 1|3 [--titrated] [--caps]]\n");
            std::exit(2);
        }
    }
    if (ownCell)
        out.cells = {own};
    return out;
}

} // namespace

int main(int argc, char** argv) {
    const Asked what = asked(argc, argv);
    const auto run = [&](const Cell& cell, Policy policy) { return steeredAll(cell, policy, what.extent); };
    // These two look at the truth only: they are the same in every cell.
    const Courses noChange = run(what.cells.front(), Policy::noChange);
    const Courses oracle = run(what.cells.front(), Policy::oracle);
    for (const Cell& cell : what.cells) {
        print(cell, {noChange, run(cell, Policy::ruleOfThumb), run(cell, Policy::program), oracle});
        std::fflush(stdout);
    }
    return 0;
}
