// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/carbonation.h"

#include "finishing/limits.h"
#include "quantity/constants.h"

#include <algorithm>
#include <cmath>

namespace staveline::finishing {
namespace {

namespace law = constants::finishing;

constexpr double barPerPsi = 0.0689475729;

/// Of beer at this temperature [vol/bar].
double solubility(Celsius temperature) {
    const double aboveFreezing = 1.8 * temperature.c; // F
    return (law::solubilityFloor + law::solubilityCold * std::exp(-aboveFreezing / law::solubilityFall)) / barPerPsi;
}

Result<Residual> residualOf(Co2Volumes measured) {
    if (auto ok = inRange("/residual_vol", measured.vol, {0, law::mostVolumes}); !ok)
        return fail(ok.error());
    return Residual{measured, measured, true};
}
Result<Residual> residualOf(const UnderHead& known) {
    for (auto ok : {inRange("/head_bar", known.head.barOverAir, {0, law::mostHead}),
                    inRange("/head_c", known.temperature.c, {law::coldest, law::hottest})})
        if (!ok)
            return fail(ok.error());
    const Co2Volumes held = dissolved(absolute(known.head), known.temperature);
    return Residual{held, held, true};
}
Result<Residual> residualOf(const UnderAir& known) {
    if (auto ok = inRange("/temperature_c", known.temperature.c, {law::coldest, law::hottest}); !ok)
        return fail(ok.error());
    const Co2Volumes most = dissolved({law::air}, known.temperature);
    return Residual{most, {std::min(law::leastResidual, most.vol)}, false};
}

} // namespace

AbsolutePressure absolute(GaugePressure pressure) {
    return {pressure.barOverAir + law::air};
}

GaugePressure gauge(AbsolutePressure pressure) {
    return {pressure.barAbsolute - law::air};
}

Co2Volumes dissolved(AbsolutePressure head, Celsius temperature) {
    return {std::max(0.0, head.barAbsolute * solubility(temperature) - law::solubilityOffset)};
}

AbsolutePressure equilibrium(Co2Volumes held, Celsius temperature) {
    return {(held.vol + law::solubilityOffset) / solubility(temperature)};
}

GramsPerLitre gramsOf(Co2Volumes volumes) {
    return {volumes.vol * law::co2Density};
}

Co2Volumes volumesOf(GramsPerLitre co2) {
    return {co2.gPerL / law::co2Density};
}

GaugePressure setPoint(Co2Volumes wanted, Celsius temperature) {
    return gauge(equilibrium(wanted, temperature));
}

GaugePressure bottlePressure(Co2Volumes all, Celsius temperature) {
    return gauge(equilibrium(all, temperature));
}

Result<Residual> residualCo2(const ResidualKnown& known) {
    return std::visit([](const auto& what) { return residualOf(what); }, known);
}

} // namespace staveline::finishing
