// SPDX-License-Identifier: GPL-3.0-or-later
// What an addition to drawn beer is made of, as if it were beer of its own: then a lot is the blend of its draws and
// its additions, whatever was split and joined since.
#pragma once

#include "finishing/fruit.h"
#include "finishing/priming.h"
#include "quantity/composition.h"

namespace staveline::finishing {

struct Brought {
    Litres litres{0};   ///< that it adds
    Composition beer;   ///< of each of them, once its sugar has fermented
    Grams fermented{0}; ///< sugar it brought, as sucrose: until it has fermented it can still make CO2
};
/// The same alcohol, acidity and volume as withFruit() tells. `mass` above 0.
[[nodiscard]] Brought broughtBy(const Fruit& fruit, Kilograms mass);
/// All of it ferments in time.
[[nodiscard]] Brought broughtBy(const PrimingSugar& sugar, Kilograms mass);
[[nodiscard]] Brought broughtByWort(Litres litres, Plato extract);
/// Pure lactic acid.
[[nodiscard]] Brought broughtByAcid(Kilograms mass);
/// What only adds its litres.
[[nodiscard]] Brought broughtByWater(Litres litres);

} // namespace staveline::finishing
