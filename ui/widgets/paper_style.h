// SPDX-License-Identifier: GPL-3.0-or-later
// Fusion with fewer frames: flat buttons, ruled fields, a clear focus ring. All from palette roles.
#pragma once

#include <QProxyStyle>

namespace staveline::ui {

/// One place for the look of ordinary widgets, so that none needs a style sheet.
class PaperStyle : public QProxyStyle {
    Q_OBJECT
public:
    PaperStyle();
    using QProxyStyle::polish;
    /// Labels show what a brewer typed as typed; only those that ask for markup read it.
    void polish(QWidget* widget) override;
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                            const QWidget* widget) const override;
    [[nodiscard]] QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                                         const QWidget* widget) const override;
    [[nodiscard]] int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
    [[nodiscard]] QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                                       const QWidget* widget) const override;
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* returned) const override;
};

/// Set on a field whose words cannot be used: its edge is thick, in the tone of a fault, with a corner filled.
inline constexpr char refusedProperty[] = "refused";

/// The ring around what has the keyboard, two pen widths of the font's line.
void drawFocusRing(QPainter& painter, const QRectF& around, const QPalette& palette, double lineHeight);

} // namespace staveline::ui
