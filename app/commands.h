// SPDX-License-Identifier: GPL-3.0-or-later
// The command line: one function a command, all through the desk. Each returns the exit status:
// 0 done, 1 not possible (says why), 2 bad input, 3 disk, damage or lock.
#pragma once

#include "desk/desk.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::app {

/// Of a blend and of packing, as typed; empty: not given.
struct FinishOptions {
    std::vector<std::string> sources, colours; ///< VESSEL or VESSEL:LITRES; VESSEL=EBC
    std::string ta, ph, alcohol, bitterness, colour, acidity, funk, body;
    std::string litres, volumes, sugarWeight, sugar = "sucrose", extract;
    std::string bottleMl, bottle, rating, warmest;
    std::string gravity, forced, forcedOn, residual, head, headAt, fruit, fruitVessel, keg;
    std::string name, lost, measuredAlcohol;
    std::string label; ///< the file; empty: none
    std::optional<std::string> override;
};

struct Options {
    std::string book, file, vessel, lot, out, from;
    std::vector<std::string> locks, without;
    std::optional<int> choose, levers;
    std::string capacity, draw, every, wantedAge, refillAge; ///< of a trial, as typed; empty: as it is
    int inRow = 1;
    std::string todayText; ///< as typed
    std::optional<Day> today;
    bool json = false, csv = false, sample = false, preview = false;
    std::string recipeIn, recipeAs;               ///< usual or plan
    std::string kind, dates, decimal, templateOf; ///< of notes
    std::vector<std::string> columns;             ///< COLUMN=FIELD
    std::string units = "metric";                 ///< metric or us
    std::string language;                         ///< looked at before the others: see language.h
    std::string paper;                            ///< a4 or letter; empty: that of the country
    FinishOptions finish;
};

int newBook(const Options& options);
int bookFrom(const Options& options); ///< of an exported folder
int status(const Options& options);
int record(const Options& options);
int advise(const Options& options);
int sheet(const Options& options);
int card(const Options& options);
int predict(const Options& options);
int history(const Options& options);
int calendar(const Options& options);
int whatIf(const Options& options);
int blend(const Options& options);
int package(const Options& options);
int lots(const Options& options);
int importNotes(const Options& options);
int recipe(const Options& options);
int exportBook(const Options& options);
int undo(const Options& options);
int redo(const Options& options);
int check(const Options& options);
int report(const Options& options);

/// Says what is wrong, where, and what to do; the exit status that belongs to it.
int complain(const Fault& fault, const Options& options);
[[nodiscard]] int statusOf(FaultKind kind);
[[nodiscard]] DisplayUnits unitsOf(const Options& options);

} // namespace staveline::app
