// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of a vessel beside the model, carried ahead: added to the model's score of every coming draw.
#pragma once

#include "advice/forecaster.h"

#include <span>

namespace staveline::advice {

/// The vessel's offset from the model at one draw.
struct Carried {
    Scores mean;     ///< [points]
    Scores variance; ///< [points^2]
    Scores withNow;  ///< covariance with the offset of the beer now in the vessel [points^2]
};
/// After `draws` equal draws and refills of `share`, without wandering: what plans are judged by.
[[nodiscard]] Carried carriedTo(const AdviceInput& input, Share share, int draws);
/// Where it ends if the same goes on for ever.
[[nodiscard]] Carried carriedForGood(const AdviceInput& input);
/// For the coming draws of a plan, as many as are planned for.
[[nodiscard]] std::vector<Carried> carriedAhead(const AdviceInput& input, Share share);

/// One score as it will be tasted.
struct Expected {
    Scores mean, variance;
};
[[nodiscard]] Scores plus(Scores scores, const Scores& more);
[[nodiscard]] Scores minus(Scores scores, const Scores& less);
[[nodiscard]] std::vector<Expected> expectedDraws(std::span<const forward::Outcome> draws,
                                                  std::span<const Carried> offsets);

/// Titratable acidity as this vessel will measure it: the model's, and that part of its offset which is acid and not
/// only taste.
[[nodiscard]] GramsPerLitre acidityThen(const AdviceInput& input, const forward::Outcome& then, const Carried& carried);

/// For what is shown: the filter run ahead as if the refills had happened and nothing were tasted, wandering included.
struct Wandered {
    Scores thisDraw, next, settled; ///< sd [points]
};
[[nodiscard]] Wandered wanderedAhead(const AdviceInput& input, const Setting& setting);

} // namespace staveline::advice
