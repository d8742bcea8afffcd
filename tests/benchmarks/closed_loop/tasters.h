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

/// Scores of the short sheet in half steps. The tasters have as many glasses, cold ones too, as come closest to that
/// error by what the sheet itself expects of a glass: three have one at cellar temperature for an error of .5, one has
/// two at both; one has one at cellar temperature for .9.
[[nodiscard]] tasting::Sitting sittingOf(const Table& table, const Scores& truth, const Noise& noise, int cycle);
[[nodiscard]] std::string tasterName(int taster);

} // namespace staveline::loop
