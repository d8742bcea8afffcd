// SPDX-License-Identifier: GPL-3.0-or-later
// Colours and type. Every colour of the window is made here, from the palette; widgets ask for meanings.
#pragma once

#include <QColor>
#include <QFont>
#include <QPalette>

class QApplication;
class QWidget;

namespace staveline::ui {

enum class Appearance { system, light, dark };

[[nodiscard]] QPalette lightPalette();
[[nodiscard]] QPalette darkPalette();
[[nodiscard]] bool isDark(const QPalette& palette);
/// Such as a desktop offers for eyes that need it: pure black or white, and text of the other or of a vivid colour.
[[nodiscard]] bool isHighContrast(const QPalette& palette);

/// Meanings that have a colour beside their shape and word. Each keeps 3:1 on Window and Base of both palettes.
enum class Tone { proposed, tasted, predicted, calm, due, fault };
[[nodiscard]] QColor tone(const QPalette& palette, Tone tone);

/// A stratum of liquid: 0 the newest (lightest) .. 1 the oldest (darkest), one hue.
[[nodiscard]] QColor stratum(const QPalette& palette, double age);
/// The empty part of a vessel, its wall, and thin separating lines.
[[nodiscard]] QColor headspace(const QPalette& palette);
[[nodiscard]] QColor wall(const QPalette& palette);
[[nodiscard]] QColor hairline(const QPalette& palette);
/// The edge of what can be typed into, pressed or chosen: 3:1 on Window and Base.
[[nodiscard]] QColor outline(const QPalette& palette);
/// The background of what is selected; text stays text.
[[nodiscard]] QColor selection(const QPalette& palette);
/// Text that may recede but must stay readable (4.5:1).
[[nodiscard]] QColor quietText(const QPalette& palette);

/// WCAG 2 contrast ratio, 1..21.
[[nodiscard]] double contrast(const QColor& a, const QColor& b);

/// Type sizes relative to the font in use.
enum class Type { small, body, strong, title, number };
[[nodiscard]] QFont font(const QFont& base, Type type);
void setType(QWidget& widget, Type type);
/// Length in lines of text, the unit of all spacing.
[[nodiscard]] int lines(const QWidget& widget, double count);

/// Sets style and palette of the application. As the desktop: light or dark like it, and its own colours where they are
/// of high contrast.
void install(QApplication& application, Appearance appearance);
/// The palette the desktop gave us, before any of ours.
void rememberSystemPalette(const QPalette& palette);

} // namespace staveline::ui
