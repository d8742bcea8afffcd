// SPDX-License-Identifier: GPL-3.0-or-later
// Small shapes that stand beside a word: the state is readable without colour.
#pragma once

#include "ui/widgets/theme.h"

#include <QIcon>

class QPainter;
class QRectF;

namespace staveline::ui {

enum class Glyph {
    calm,    ///< ring: nothing to do
    soon,    ///< half disc: due within the week or so
    overdue, ///< full disc with a bar
    fault,   ///< square on its tip with a bar
    note,    ///< open square with a line
    warning, ///< triangle
    // entries of the ledger
    opening,
    drawOff,
    refill,
    topUp,
    sample,
    dip,
    reading
};

[[nodiscard]] Tone toneOf(Glyph glyph);
void paintGlyph(QPainter& painter, const QRectF& box, Glyph glyph, const QColor& colour);
[[nodiscard]] QPixmap glyphPixmap(Glyph glyph, int side, const QColor& colour, double pixelRatio);

} // namespace staveline::ui
