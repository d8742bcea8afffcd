// SPDX-License-Identifier: GPL-3.0-or-later
// Scores with what is known about their error, in words.
#pragma once

#include "advice/advise.h"

#include <QString>

namespace staveline::ui {

[[nodiscard]] QString nameOf(Dimension dimension); ///< "Acidity"
[[nodiscard]] QString scoreWords(double score);
[[nodiscard]] QString changeWords(double points); ///< "+0.4"
/// "5.4 ±0.6"; "5.4 (4.9 to 6.7)" where the band is lopsided; "5.4" while it has none.
[[nodiscard]] QString bandWords(const advice::Band& band);
[[nodiscard]] advice::Band bandOf(const tasting::Estimate& estimate);
/// "6.6 ±0.8", the half-width of its 80 % interval.
[[nodiscard]] QString estimateWords(const tasting::Estimate& estimate);
/// The first letter in upper case.
[[nodiscard]] QString sentenceCase(const QString& words);

} // namespace staveline::ui
