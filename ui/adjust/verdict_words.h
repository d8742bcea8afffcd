// SPDX-License-Identifier: GPL-3.0-or-later
// A verdict in one word and one shape, and scores with their bands in words.
#pragma once

#include "advice/advise.h"
#include "ui/widgets/theme.h"

#include <QString>

class QPainter;
class QPixmap;
class QRectF;

namespace staveline::ui {

[[nodiscard]] QString nameOf(Dimension dimension); ///< "Acidity"
[[nodiscard]] QString wordOf(VerdictKind kind);    ///< "move"
[[nodiscard]] Tone toneOf(VerdictKind kind);
/// On target: ring and dot. Move: two chevrons towards the window; nudge: one. Wait: hourglass. Taste again: glass.
/// Fault first: square on its tip.
void paintVerdict(QPainter& painter, const QRectF& box, const Verdict& verdict, const QColor& colour);
[[nodiscard]] QPixmap verdictPixmap(const Verdict& verdict, int side, const QPalette& palette, double pixelRatio);

/// "5.4 ±0.6"; "5.4 (4.9 to 6.7)" where the band is lopsided; "5.4" while it has none.
[[nodiscard]] QString bandWords(const Band& band);
/// "6.6 ±0.8", the half-width of its 80 % interval.
[[nodiscard]] QString estimateWords(const Estimate& estimate);
[[nodiscard]] Band bandOf(const Estimate& estimate);
[[nodiscard]] QString scoreWords(double score);
[[nodiscard]] QString changeWords(double points); ///< "+0.4"
/// The first letter in upper case.
[[nodiscard]] QString sentenceCase(const QString& words);

} // namespace staveline::ui
