// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/heat.h"

#include "quantity/constants.h"

namespace staveline::brewing {

Celsius strikeTemperature(Celsius target, Kilograms malt, Celsius maltTemperature, Litres water, Kilograms tun,
                          Celsius tunTemperature) {
    const Celsius forMalt = (target - maltTemperature) * (constants::plan::maltHeat * malt.kg);
    const Celsius forTun = (target - tunTemperature) * tun.kg;
    return target + (forMalt + forTun) / water.l;
}

Litres infusion(Celsius from, Celsius to, Kilograms malt, Litres waterInMash, Kilograms tun, Celsius hot) {
    return {(to - from) / (hot - to) * mashHeat(malt, waterInMash, tun)};
}

} // namespace staveline::brewing
