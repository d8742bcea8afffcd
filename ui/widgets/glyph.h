// SPDX-License-Identifier: GPL-3.0-or-later
// Small shapes that stand beside a word: what is meant is readable without colour. Each meaning has one shape, on every
// page; whoever shows one asks here.
#pragma once

#include "tasting/verdict.h"
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
    warning, ///< triangle with a bar: a caution
    planB,   ///< a way that forks: what to do if it does not go as planned
    done,    ///< tick: behind us
    // what a verdict says
    move,       ///< two chevrons upwards: more of it
    moveDown,   ///< two chevrons downwards
    open,       ///< one chevron
    openDown,   ///< one chevron downwards
    wait,       ///< hourglass
    hold,       ///< ring with a dot: on target
    leaveAlone, ///< two level bars
    tasteFirst, ///< glass, struck out
    tasteAgain, ///< glass
    // entries of the ledger
    opening,
    drawOff,
    refill,
    topUp,
    sample,
    dip,
    reading,
    event ///< flag
};
inline constexpr int glyphCount = static_cast<int>(Glyph::event) + 1;

[[nodiscard]] Tone toneOf(Glyph glyph);
[[nodiscard]] Glyph glyphOf(const tasting::Verdict& verdict);
void paintGlyph(QPainter& painter, const QRectF& box, Glyph glyph, const QColor& colour);
[[nodiscard]] QPixmap glyphPixmap(Glyph glyph, int side, const QColor& colour, double pixelRatio);
/// In its tone, to stand beside the words of that widget; `size` in lines of text.
[[nodiscard]] QPixmap glyphBeside(const QWidget& words, Glyph glyph, double size);

} // namespace staveline::ui
