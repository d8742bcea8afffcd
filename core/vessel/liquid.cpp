// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/liquid.h"

#include <algorithm>
#include <cmath>

namespace staveline::vessel {
namespace {

constexpr double smallestScale = 1e-200;

double dayNumber(Day day) {
    return static_cast<double>(day.time_since_epoch().count());
}

} // namespace

/// Moments add up exactly; the lump keeps the name of its heavier part.
void Liquid::absorb(Layer& oldest, const Layer& younger) {
    if (younger.weight > oldest.weight) {
        oldest.entry = younger.entry;
        oldest.on = younger.on;
    }
    const double weight = oldest.weight + younger.weight;
    const double part = weight > 0 ? younger.weight / weight : 0;
    const double apart = younger.birth - oldest.birth;
    oldest.variance = (1 - part) * oldest.variance + part * younger.variance + part * (1 - part) * apart * apart;
    oldest.birth += part * apart;
    oldest.weight = weight;
}

void Liquid::mergeOldest() {
    const auto tiny = [this](const Layer& layer) { return layer.weight * scale_ < tinyShare; };
    while (layers_.size() > 1 && (layers_.size() > mostGenerations || tiny(layers_[0]) || tiny(layers_[1]))) {
        absorb(layers_[0], layers_[1]);
        layers_.erase(layers_.begin() + 1);
    }
}

void Liquid::clear() {
    if (!layers_.empty())
        *this = Liquid{};
}

void Liquid::pour(const Pour& fresh, double share) {
    const double birth = dayNumber(fresh.on) - fresh.age;
    if (layers_.empty() || share >= 1) {
        clear();
        share = 1;
    }
    const double apart = birth - birth_;
    variance_ = (1 - share) * variance_ + share * fresh.sd * fresh.sd + share * (1 - share) * apart * apart;
    birth_ += share * apart;
    scale_ *= share < 1 ? 1 - share : 1;
    if (scale_ < smallestScale) {
        for (auto& layer : layers_)
            layer.weight *= scale_;
        scale_ = 1;
    }
    layers_.push_back({fresh.entry, fresh.on, share / scale_, birth, fresh.sd * fresh.sd});
    mergeOldest();
}

Days Liquid::meanAge(Day on) const {
    return {layers_.empty() ? 0 : dayNumber(on) - birth_};
}

Days Liquid::ageSd() const {
    return {std::sqrt(std::max(0.0, variance_))};
}

std::vector<Generation> Liquid::generations() const {
    std::vector<Generation> list;
    if (layers_.empty())
        return list;
    double sum = 0;
    for (const auto& layer : layers_)
        sum += layer.weight;
    Layer oldest = layers_.front();
    list.reserve(layers_.size());
    const auto add = [&](const Layer& layer) {
        const double inAt = dayNumber(layer.on);
        list.push_back(
            {layer.entry, layer.on, {layer.weight / sum}, {inAt - layer.birth}, {std::sqrt(layer.variance)}});
    };
    for (auto layer = layers_.rbegin(); layer + 1 != layers_.rend(); ++layer)
        if (layer->weight / sum < tinyShare)
            absorb(oldest, *layer);
        else
            add(*layer);
    // What was merged may have come in later than the lump is dated: date it when its mean was born.
    const double late = std::ceil(oldest.birth - dayNumber(oldest.on));
    if (late > 0)
        oldest.on += std::chrono::days(static_cast<int>(late));
    add(oldest);
    return list;
}

} // namespace staveline::vessel
