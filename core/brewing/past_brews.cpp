// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/past_brews.h"

#include "quantity/constants.h"
#include "quantity/density.h"

#include <algorithm>
#include <cmath>

namespace staveline::brewing {
namespace {

namespace spread = constants::brew;

/// Mean of what brews show, drawn towards none by how much houses differ against how much brews of one do.
class Shrunk {
public:
    Shrunk(double house, double batch) : house_(house), ratio_(batch / house) {}
    void add(double shown, double points) {
        ++offset_.brews;
        sum_ += shown;
        points_ += points;
        const double n = offset_.brews;
        offset_.weight = n / (n + ratio_ * ratio_);
        offset_.shift = offset_.weight * sum_ / n;
        offset_.points = points_ / n;
        offset_.error = house_ * std::sqrt(1 - offset_.weight);
    }
    [[nodiscard]] const HouseOffset& offset() const { return offset_; }

private:
    double house_, ratio_, sum_ = 0, points_ = 0;
    HouseOffset offset_{.error = house_};
};

double pointsBetween(Plato measured, Plato planned) {
    return 1000 * (toGravity(measured).sg - toGravity(planned).sg);
}

/// The same litres with so many times less extract.
Plato thinnedBy(Plato gravity, double factor) {
    return platoFromExtract(Kilograms{extractPerLitre(gravity).gPerL / 1000 / factor}, Litres{1});
}

/// Logit of the share of the extract that was fermented, really.
double fermented(Plato original, Plato apparent) {
    const double left = std::clamp(realExtract(original, apparent) / original, .02, .98);
    return std::log((1 - left) / left);
}

Message note(const std::string& stem, const HouseOffset& offset) {
    return say("brewing.house." + stem + (offset.points < 0 ? ".low" : ".high") + (offset.brews == 1 ? ".one" : ""))
        .with("points", Number{std::abs(offset.points), 1})
        .with("brews", Number{static_cast<double>(offset.brews), 0});
}

} // namespace

Share House::efficiency(Share kit) const {
    return {std::clamp(kit.of1 * std::exp(extract.shift), .05, 1.0)};
}

BrewParameters House::parameters(BrewParameters model) const {
    model.fermentabilityShift += fermentability.shift;
    return model;
}

House houseFrom(std::span<const PastBrew> brews) {
    Shrunk extract(spread::houseExtract, spread::batchExtract),
        fermentability(spread::houseFermentability, spread::batchFermentability);
    for (const PastBrew& brew : brews) {
        const Plato original = brew.original.value_or(brew.plannedOriginal);
        if (!(original.p > 0 && brew.plannedOriginal.p > 0))
            continue;
        if (brew.won.value_or(0) > 0)
            extract.add(std::log(*brew.won), pointsBetween(original, thinnedBy(original, *brew.won)));
        else if (brew.original)
            extract.add(std::log(extractPerLitre(original) / extractPerLitre(brew.plannedOriginal)) +
                            extract.offset().shift,
                        pointsBetween(original, brew.plannedOriginal));
        if (brew.final)
            fermentability.add(fermented(original, *brew.final) - fermented(original, brew.plannedFinal),
                               pointsBetween(*brew.final, brew.plannedFinal));
    }
    return {extract.offset(), fermentability.offset()};
}

std::vector<Message> houseNotes(const House& house, Share kit) {
    std::vector<Message> notes;
    const auto tells = [](const HouseOffset& offset) {
        return std::abs(offset.weight * offset.points) >= spread::toldPoints;
    };
    if (tells(house.extract))
        notes.push_back(note("extract", house.extract).with("efficiency", house.efficiency(kit)));
    if (tells(house.fermentability))
        notes.push_back(
            note("final", house.fermentability)
                .with("counted", Number{std::abs(house.fermentability.weight * house.fermentability.points), 1}));
    return notes;
}

} // namespace staveline::brewing
