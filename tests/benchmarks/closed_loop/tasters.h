// SPDX-License-Identifier: GPL-3.0-or-later
// A table of tasters that scores the sheet: each has a leaning of his own, and each glass misses by chance, so that the
// mean of the table misses the truth by a stated error at every sitting. The truth is as this table tastes it on the
// whole: together their leanings cancel.
#pragma once

#include "benchmarks/closed_loop/noise.h"
#include "tasting/sitting.h"

#include <string>

namespace staveline::loop {

struct Table {
    int tasters = 3;
    double error = .5; ///< of the table's mean [points]
};

/// Scores of the short sheet in half steps. Each taster has one glass at cellar temperature, and a cold one too where
/// the sheet then expects an error nearer to the stated one: three tasters without for .5, one without for .9.
[[nodiscard]] tasting::Sitting sittingOf(const Table& table, const Scores& truth, const Noise& noise, int cycle);
[[nodiscard]] std::string tasterName(int taster);

} // namespace staveline::loop
