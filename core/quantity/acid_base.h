// SPDX-License-Identifier: GPL-3.0-or-later
// pH and titratable acidity from a charge balance. TA is linear in all totals and blends exactly; pH never does.
// Concentrations in g/L, buffer in multiples of a 12 P beer, charges in mEq/L; dissociation constants at 25 C
// without activity correction (pH good to about 0.1, changes better). Sources: rows acid_* of sources.csv.
#pragma once

#include "quantity/composition.h"

namespace staveline {

/// Molar masses [g/mol] and dissociation constants [pKa, 25 C].
inline constexpr double lacticMolarMass = 90.078, aceticMolarMass = 60.052;
inline constexpr double lacticPka = 3.86, aceticPka = 4.76;
/// Where a titration ends (ASBC Beer-8).
inline constexpr Ph titrationEndPoint{8.2};

/// Negative charge [mEq/L] of lactic and acetic acid, background buffer and water at `ph`.
[[nodiscard]] double anionCharge(Ph ph, double lactic, double acetic, double buffer);
/// Derivative of the above [mEq/(L pH)].
[[nodiscard]] double bufferCapacity(Ph ph, double lactic, double acetic, double buffer);
/// pH at which the anions carry the strong-ion difference; 0.5..12.
[[nodiscard]] Ph solvePh(double lactic, double acetic, double buffer, double sid);
/// Warm-started Newton with a tabulated background (error below 1e-5 mEq/L); for inner loops, pH 2.2..6.5.
[[nodiscard]] double newtonPh(double start, double lactic, double acetic, double buffer, double sid, int iterations);

[[nodiscard]] Ph ph(const Composition& beer);
/// To pH 8.2, as lactic acid.
[[nodiscard]] GramsPerLitre titratableAcidity(const Composition& beer);

/// Sets lactic acid so that the TA is as measured (other totals kept; lactic not below 0).
[[nodiscard]] Composition withTitratableAcidity(Composition beer, GramsPerLitre measured);
/// Sets the strong-ion difference so that the pH is as measured.
[[nodiscard]] Composition withPh(Composition beer, Ph measured);

/// NaOH titration: mL of base, its normality, mL of degassed beer (above 0) -> g/L as lactic (ASBC Beer-8 end point).
[[nodiscard]] GramsPerLitre titration(double baseMl, double normality, double beerMl);

/// The acid a laboratory expresses its result as.
enum class Acid { lactic, acetic, tartaric, malic, citric, sulfuric };
/// Grams that neutralise one equivalent of base.
[[nodiscard]] double equivalentWeight(Acid acid);
[[nodiscard]] GramsPerLitre asLactic(GramsPerLitre value, Acid expressedAs);

} // namespace staveline
