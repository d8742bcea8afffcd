// SPDX-License-Identifier: GPL-3.0-or-later
// What beer is made of by its generations, in as few parts as can be read.
#pragma once

#include "quantity/message.h"
#include "vessel/ledger.h"

#include <vector>

namespace staveline::sheet {

/// A part of the liquid, from the newest to the oldest.
struct Layer {
    double share = 0;
    Day on{};
    bool andBefore = false; ///< older ones are in it
};
/// What is too thin to be drawn is in what lies below it.
[[nodiscard]] std::vector<Layer> layersOf(const std::vector<vessel::Generation>& generations);
/// "40 % from 2 Nov 2025"
[[nodiscard]] Message wordsOf(const Layer& layer);

} // namespace staveline::sheet
