// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/theme.h"

#include "ui/widgets/paper_style.h"

#include <QApplication>
#include <QFontMetrics>
#include <QWidget>

#include <algorithm>
#include <cmath>

namespace staveline::ui {
namespace {

struct Inks {
    QColor paper, sheet, band, text, quiet, button, accent, onAccent, line, shadow;
};

Inks lightInks() {
    return {QColor(0xf6f1e7), QColor(0xfffdf8), QColor(0xf2ecdf), QColor(0x2a241c), QColor(0x665c4d),
            QColor(0xebe3d3), QColor(0x1f5a66), QColor(0xffffff), QColor(0xcdc2ae), QColor(0x9a8f7c)};
}
Inks darkInks() {
    return {QColor(0x1d1b18), QColor(0x262320), QColor(0x2e2a26), QColor(0xede6da), QColor(0xb5aa99),
            QColor(0x38332d), QColor(0x86c8d2), QColor(0x10211f), QColor(0x4d463d), QColor(0x100f0d)};
}

void setText(QPalette& palette, QPalette::ColorGroup group, const QColor& colour) {
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(group, role, colour);
}

QPalette paletteOf(const Inks& inks) {
    QPalette palette(inks.text, inks.button, inks.sheet, inks.shadow, inks.line, inks.text, inks.sheet, inks.sheet,
                     inks.paper);
    setText(palette, QPalette::All, inks.text);
    setText(palette, QPalette::Disabled, inks.quiet);
    palette.setColor(QPalette::AlternateBase, inks.band);
    palette.setColor(QPalette::Highlight, inks.accent);
    palette.setColor(QPalette::HighlightedText, inks.onAccent);
    palette.setColor(QPalette::Link, inks.accent);
    palette.setColor(QPalette::LinkVisited, inks.accent);
    palette.setColor(QPalette::PlaceholderText, inks.quiet);
    palette.setColor(QPalette::ToolTipBase, inks.sheet);
    palette.setColor(QPalette::ToolTipText, inks.text);
    palette.setColor(QPalette::Midlight, inks.band);
    palette.setColor(QPalette::Shadow, inks.shadow);
    return palette;
}

double channel(double value) {
    return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}
double luminance(const QColor& colour) {
    return 0.2126 * channel(colour.redF()) + 0.7152 * channel(colour.greenF()) + 0.0722 * channel(colour.blueF());
}
QColor mix(const QColor& a, const QColor& b, double shareOfB) {
    const auto part = [&](double x, double y) { return static_cast<float>(x + (y - x) * shareOfB); };
    return QColor::fromRgbF(part(a.redF(), b.redF()), part(a.greenF(), b.greenF()), part(a.blueF(), b.blueF()));
}

QPalette& systemPalette() {
    static QPalette palette = lightPalette();
    return palette;
}

bool isPure(const QColor& colour) {
    const QRgb rgb = colour.rgb() & 0xffffff;
    return rgb == 0 || rgb == 0xffffff;
}

/// The desktop's own colours; what it leaves pale is made as strong as its text.
QPalette kept(const QPalette& system) {
    QPalette palette = system;
    const QColor text = system.color(QPalette::WindowText), ground = system.color(QPalette::Window);
    for (const auto role : {QPalette::PlaceholderText, QPalette::Link, QPalette::LinkVisited})
        if (system.color(role).alpha() < 255 || contrast(system.color(role), ground) < 4.5)
            palette.setColor(role, text);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        if (contrast(system.color(QPalette::Disabled, role), ground) < 4.5)
            palette.setColor(QPalette::Disabled, role, text);
    return palette;
}

} // namespace

QPalette lightPalette() {
    return paletteOf(lightInks());
}
QPalette darkPalette() {
    return paletteOf(darkInks());
}
bool isDark(const QPalette& palette) {
    return luminance(palette.color(QPalette::Window)) < luminance(palette.color(QPalette::WindowText));
}

bool isHighContrast(const QPalette& palette) {
    const QColor text = palette.color(QPalette::WindowText), ground = palette.color(QPalette::Window);
    constexpr double strong = 7, vivid = .5; // 7:1 is the enhanced contrast of WCAG 2.2, 1.4.6
    if (contrast(text, ground) < strong || !isPure(ground) || !isPure(palette.color(QPalette::Button)))
        return false;
    return isPure(text) || text.hslSaturationF() > vivid;
}

namespace {

QColor toneOfOurs(const QPalette& palette, Tone tone) {
    const bool dark = isDark(palette);
    switch (tone) {
    case Tone::proposed:
        return palette.color(QPalette::Highlight);
    case Tone::tasted:
        return dark ? QColor(0xd79ac0) : QColor(0x8a3d6e);
    case Tone::predicted:
        return quietText(palette);
    case Tone::calm:
        return dark ? QColor(0x7fb2e0) : QColor(0x2c6597);
    case Tone::due:
        return dark ? QColor(0xe0b04f) : QColor(0x8d6410);
    case Tone::fault:
        return dark ? QColor(0xf08a5d) : QColor(0xb03f0c);
    }
    return palette.color(QPalette::WindowText);
}

} // namespace

QColor tone(const QPalette& palette, Tone tone) {
    const QColor ours = toneOfOurs(palette, tone);
    const bool pale = isHighContrast(palette) && contrast(ours, palette.color(QPalette::Window)) < 4.5;
    return pale ? palette.color(QPalette::WindowText) : ours;
}

QColor stratum(const QPalette& palette, double age) {
    const double a = std::clamp(age, 0.0, 1.0);
    const bool dark = isDark(palette);
    // One hue throughout; only lightness and a little strength change.
    const double lightness = (dark ? .74 : .80) + ((dark ? .27 : .24) - (dark ? .74 : .80)) * a;
    const double strength = .72 - .22 * a;
    return QColor::fromHslF(.088F, static_cast<float>(strength), static_cast<float>(lightness));
}

QColor headspace(const QPalette& palette) {
    return mix(palette.color(QPalette::Base), palette.color(QPalette::Window), .35);
}
QColor wall(const QPalette& palette) {
    return mix(palette.color(QPalette::WindowText), palette.color(QPalette::Window), .25);
}
QColor hairline(const QPalette& palette) {
    if (isHighContrast(palette))
        return palette.color(QPalette::WindowText);
    return mix(palette.color(QPalette::Window), palette.color(QPalette::WindowText), .18);
}
QColor outline(const QPalette& palette) {
    if (isHighContrast(palette))
        return palette.color(QPalette::WindowText);
    return mix(palette.color(QPalette::Window), palette.color(QPalette::WindowText), isDark(palette) ? .5 : .56);
}
QColor selection(const QPalette& palette) {
    return mix(palette.color(QPalette::Base), palette.color(QPalette::Highlight), isDark(palette) ? .22 : .13);
}
QColor quietText(const QPalette& palette) {
    return palette.color(QPalette::PlaceholderText);
}

double contrast(const QColor& a, const QColor& b) {
    const double first = luminance(a), second = luminance(b);
    return (std::max(first, second) + .05) / (std::min(first, second) + .05);
}

QFont font(const QFont& base, Type type) {
    QFont made = base;
    const double size = base.pointSizeF() > 0 ? base.pointSizeF() : 10;
    switch (type) {
    case Type::small:
        made.setPointSizeF(size * .9);
        break;
    case Type::body:
        break;
    case Type::strong:
        made.setWeight(QFont::DemiBold);
        break;
    case Type::title:
        made.setPointSizeF(size * 1.75);
        made.setWeight(QFont::DemiBold);
        break;
    case Type::number:
        made.setPointSizeF(size * 1.6);
        break;
    }
    return made;
}

void setType(QWidget& widget, Type type) {
    widget.setFont(font(QApplication::font(), type));
}

int lines(const QWidget& widget, double count) {
    return static_cast<int>(std::lround(QFontMetrics(QApplication::font(&widget)).height() * count));
}

void rememberSystemPalette(const QPalette& palette) {
    systemPalette() = palette;
}

void install(QApplication& application, Appearance appearance) {
    const bool system = appearance == Appearance::system;
    const bool dark = appearance == Appearance::dark || (system && isDark(systemPalette()));
    application.setStyle(new PaperStyle); // NOLINT(clang-analyzer-cplusplus.NewDeleteLeaks): the application owns it
    if (system && isHighContrast(systemPalette()))
        application.setPalette(kept(systemPalette()));
    else
        application.setPalette(dark ? darkPalette() : lightPalette());
}

} // namespace staveline::ui
