// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/layers.h"

#include <cmath>

namespace staveline::sheet {

std::vector<Layer> layersOf(const std::vector<vessel::Generation>& generations) {
    constexpr std::size_t most = 7; // labels find room for
    constexpr double thinnest = .03;
    std::vector<Layer> layers;
    for (const vessel::Generation& each : generations) {
        const bool apart = layers.size() < most && (layers.empty() || each.share.of1 >= thinnest);
        if (apart)
            layers.push_back({each.share.of1, each.on, false});
        else
            layers.back() = {layers.back().share + each.share.of1, layers.back().on, true};
    }
    for (std::size_t i = 0; i + 1 < layers.size(); ++i)
        layers[i].andBefore = false; // a little in between is not worth a word
    return layers;
}

Message wordsOf(const Layer& layer) {
    return say(layer.andBefore ? "sheet.card.layer.rest" : "sheet.card.layer")
        .with("share", Share{std::round(100 * layer.share) / 100})
        .with("day", layer.on);
}

} // namespace staveline::sheet
