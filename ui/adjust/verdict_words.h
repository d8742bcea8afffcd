// SPDX-License-Identifier: GPL-3.0-or-later
// A verdict in one word and one shape.
#pragma once

#include "ui/present/score_words.h"
#include "ui/widgets/theme.h"

#include <QString>

class QPainter;
class QPixmap;
class QRectF;

namespace staveline::ui {

[[nodiscard]] QString wordOf(tasting::VerdictKind kind); ///< "move"
[[nodiscard]] Tone toneOf(tasting::VerdictKind kind);
/// On target: ring and dot. Move: two chevrons the way it goes; open: one. Wait: hourglass. Taste again: glass.
/// Fault first: square on its tip.
void paintVerdict(QPainter& painter, const QRectF& box, const tasting::Verdict& verdict, const QColor& colour);
[[nodiscard]] QPixmap verdictPixmap(const tasting::Verdict& verdict, int side, const QPalette& palette,
                                    double pixelRatio);

} // namespace staveline::ui
