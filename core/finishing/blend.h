// SPDX-License-Identifier: GPL-3.0-or-later
// Blending two to five beers to a target. What blends by volume is added up; pH comes from the charge balance of the
// blend and is never averaged, the scores from its composition.
#pragma once

#include "quantity/composition.h"
#include "quantity/dimension.h"
#include "quantity/fault.h"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::finishing {

enum class Trait { ta, ph, alcohol, bitterness, colour, acidity, funk, body };
inline constexpr std::array allTraits = {Trait::ta,     Trait::ph,      Trait::alcohol, Trait::bitterness,
                                         Trait::colour, Trait::acidity, Trait::funk,    Trait::body};
/// As answers and paths have it: "ta", "ph"; and in sentences: "TA", "pH".
[[nodiscard]] std::string_view wordOf(Trait trait);
[[nodiscard]] std::string labelOf(Trait trait);
/// A value of it with its unit.
[[nodiscard]] Amount amountOf(Trait trait, double value);
/// How near is near enough: an error of this size in one trait weighs as much as one in another.
[[nodiscard]] double toleranceOf(Trait trait);

template <class T> struct PerTrait {
    std::array<T, allTraits.size()> values{};
    constexpr T& operator[](Trait t) { return values[static_cast<std::size_t>(t)]; }
    constexpr const T& operator[](Trait t) const { return values[static_cast<std::size_t>(t)]; }
};

struct BlendSource {
    std::string name;
    Litres atHand{0};
    Composition beer;          ///< put right by what was measured
    std::optional<Ebc> colour; ///< none: not known
    Scores offset;             ///< of its scores from those of its composition
    PerTrait<double> sd;       ///< of each trait
    PerTrait<bool> measured;   ///< else estimated
};

/// A trait of the source alone; colour: none where it is not known.
[[nodiscard]] std::optional<double> traitOf(const BlendSource& source, Trait trait);
/// The same of a blend by shares, which sum to 1.
[[nodiscard]] std::optional<double> traitOf(std::span<const BlendSource> sources, const std::vector<double>& shares,
                                            Trait trait);
[[nodiscard]] Composition blended(std::span<const BlendSource> sources, const std::vector<double>& shares);

struct BlendQuestion {
    std::vector<BlendSource> sources;
    PerTrait<std::optional<double>> aims;             ///< in the units of the traits
    std::optional<Litres> litres;                     ///< none: as much as there is
    Litres step{constants::finishing::measuringStep}; ///< that can be measured
};

struct BlendPart {
    std::string name;
    double share = 0; ///< before it is rounded
    Litres takes{0}, remains{0};
    Millilitres bench{0}; ///< of a litre to taste first
};
struct BlendTrait {
    Trait trait = Trait::ta;
    std::optional<double> aim;
    double value = 0, sd = 0; ///< of the blend as it is rounded
    bool reached = true;      ///< within the tolerance
};
struct Blend {
    std::vector<BlendPart> parts; ///< in the order of the sources
    Litres litres{0};             ///< as it is rounded
    std::vector<BlendTrait> traits;
    std::vector<Message> missing; ///< what the aims would take
    [[nodiscard]] bool reached() const { return missing.empty(); }
};
/// Faults: "/from" fewer than two or more than five sources; "/from/<i>" without litres; "/aims" none; an aim out of
/// its range at "/<trait>"; "/colour" where a source's is not known; "/litres" more than there is.
[[nodiscard]] Result<Blend> blend(const BlendQuestion& question);

/// Alcohol and volume of beers poured together, by mass through the tables of OIML R 22: the volume shrinks a little.
struct Poured {
    Litres volume{0};
    PercentVol alcohol{0};
};
[[nodiscard]] Poured pouredTogether(std::span<const Poured> parts);

} // namespace staveline::finishing
