// SPDX-License-Identifier: GPL-3.0-or-later
// Both palettes keep text and marks readable, also for eyes that see two primaries.
#include "ui/support.h"

#include "ui/widgets/glyph.h"
#include "ui/widgets/theme.h"

#include <QDirIterator>
#include <QLabel>

#include <set>

using namespace staveline::ui;
using namespace staveline::culture;

namespace {

const std::array allTones = {Tone::proposed, Tone::tasted, Tone::predicted, Tone::calm, Tone::due, Tone::fault};
const std::array allGlyphs = {Glyph::calm,    Glyph::soon,    Glyph::overdue, Glyph::fault,  Glyph::note,
                              Glyph::warning, Glyph::opening, Glyph::drawOff, Glyph::refill, Glyph::topUp,
                              Glyph::sample,  Glyph::dip,     Glyph::reading};

std::vector<std::pair<const char*, QPalette>> palettes() {
    return {{"light", lightPalette()}, {"dark", darkPalette()}};
}

double linear(double value) {
    return value <= .04045 ? value / 12.92 : std::pow((value + .055) / 1.055, 2.4);
}
double labCurve(double t) {
    return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116;
}
/// CIE L*a*b* (D65) of a colour as an eye sees it.
std::array<double, 3> lab(const QColor& colour, const std::array<double, 9>& eye) {
    const std::array<double, 3> rgb = {linear(colour.redF()), linear(colour.greenF()), linear(colour.blueF())};
    std::array<double, 3> seen{};
    for (std::size_t i = 0; i < 3; ++i)
        seen[i] = std::clamp(eye[3 * i] * rgb[0] + eye[3 * i + 1] * rgb[1] + eye[3 * i + 2] * rgb[2], 0.0, 1.0);
    const double x = labCurve((.4124 * seen[0] + .3576 * seen[1] + .1805 * seen[2]) / .9505);
    const double y = labCurve(.2126 * seen[0] + .7152 * seen[1] + .0722 * seen[2]);
    const double z = labCurve((.0193 * seen[0] + .1192 * seen[1] + .9505 * seen[2]) / 1.089);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}
double labDistance(const QColor& a, const QColor& b, const std::array<double, 9>& eye) {
    const auto p = lab(a, eye), q = lab(b, eye);
    return std::hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

QImage drawn(Glyph glyph) {
    return glyphPixmap(glyph, 32, Qt::black, 1).toImage().convertToFormat(QImage::Format_ARGB32);
}

int differing(const QImage& a, const QImage& b) {
    int count = 0;
    for (int y = 0; y < a.height(); ++y)
        for (int x = 0; x < a.width(); ++x)
            count += std::abs(qAlpha(a.pixel(x, y)) - qAlpha(b.pixel(x, y))) > 96;
    return count;
}

} // namespace

TEST_CASE("contrast is the ratio of WCAG 2", "[ui][theme]") {
    CHECK(contrast(Qt::black, Qt::white) == Approx(21)); // WCAG 2.1, the end of its scale
    CHECK(contrast(Qt::white, Qt::white) == Approx(1));
    // Worked value of common contrast checkers for #777777 on white (from memory: 4.48).
    CHECK(contrast(QColor(0x777777), Qt::white) == Approx(4.48).margin(.01));
}

TEST_CASE("text keeps 4.5:1 on every background of both palettes", "[ui][theme][a11y]") {
    for (const auto& [name, palette] : palettes()) {
        INFO(name);
        for (const auto background : {QPalette::Window, QPalette::Base, QPalette::AlternateBase}) {
            CHECK(contrast(palette.color(QPalette::WindowText), palette.color(background)) >= 7);
            CHECK(contrast(quietText(palette), palette.color(background)) >= 4.5);
            CHECK(contrast(palette.color(QPalette::Link), palette.color(background)) >= 4.5);
        }
        CHECK(contrast(palette.color(QPalette::ButtonText), palette.color(QPalette::Button)) >= 4.5);
        CHECK(contrast(palette.color(QPalette::HighlightedText), palette.color(QPalette::Highlight)) >= 4.5);
        CHECK(contrast(palette.color(QPalette::ToolTipText), palette.color(QPalette::ToolTipBase)) >= 4.5);
    }
}

TEST_CASE("marks keep 3:1 on window and base", "[ui][theme][a11y]") {
    for (const auto& [name, palette] : palettes())
        for (const Tone each : allTones)
            for (const auto background : {QPalette::Window, QPalette::Base}) {
                INFO(name << " tone " << static_cast<int>(each));
                CHECK(contrast(tone(palette, each), palette.color(background)) >= 3);
            }
}

TEST_CASE("strata run from light to dark in one hue", "[ui][theme]") {
    for (const auto& [name, palette] : palettes()) {
        INFO(name);
        double before = 2;
        for (double age = 0; age <= 1; age += .1) {
            const QColor colour = stratum(palette, age);
            CHECK(colour.lightnessF() < before);
            CHECK(colour.hslHueF() == Approx(stratum(palette, 0).hslHueF()).margin(.01));
            before = colour.lightnessF();
        }
    }
}

TEST_CASE("states stay apart for eyes that see two primaries", "[ui][theme][a11y]") {
    // Machado, Oliveira & Fernandes 2009, IEEE Trans. Vis. Comput. Graph. 15:1291, severity 1.0 (from memory).
    const std::array<std::array<double, 9>, 3> eyes = {
        {{.152286, 1.052583, -.204868, .114503, .786281, .099216, -.003882, -.048116, 1.051998},
         {.367322, .860646, -.227968, .280085, .672501, .047413, -.011820, .042940, .968881},
         {1.255528, -.076749, -.178779, -.078411, .930809, .147602, .004733, .691367, .303900}}};
    for (const auto& [name, palette] : palettes())
        for (const auto& eye : eyes)
            for (const auto& [a, b] : {std::pair{Tone::calm, Tone::due}, {Tone::calm, Tone::fault}}) {
                INFO(name << ' ' << static_cast<int>(a) << ' ' << static_cast<int>(b));
                CHECK(labDistance(tone(palette, a), tone(palette, b), eye) > 18);
            }
}

TEST_CASE("every state has a shape of its own", "[ui][theme][a11y]") {
    for (const Glyph a : allGlyphs)
        for (const Glyph b : allGlyphs)
            if (a != b) {
                INFO(static_cast<int>(a) << " and " << static_cast<int>(b));
                CHECK(differing(drawn(a), drawn(b)) > 20);
            }
}

TEST_CASE("dark is told from light by the palette", "[ui][theme]") {
    CHECK(isDark(darkPalette()));
    CHECK_FALSE(isDark(lightPalette()));
    rememberSystemPalette(darkPalette());
    install(*qApp, Appearance::system);
    CHECK(isDark(QApplication::palette()));
    rememberSystemPalette(lightPalette());
    install(*qApp, Appearance::system);
    CHECK_FALSE(isDark(QApplication::palette()));
    install(*qApp, Appearance::dark);
    CHECK(isDark(QApplication::palette()));
    install(*qApp, Appearance::light);
}

TEST_CASE("letters are drawn as letters, not as boxes", "[ui][theme]") {
    QLabel a(QStringLiteral("a")), b(QStringLiteral("m"));
    CHECK(a.grab().toImage() != b.grab().toImage());
}

TEST_CASE("colours are made in the theme and nowhere else", "[ui][theme]") {
    const QRegularExpression literal(
        "QColor\\(\\s*(0x|#|\")|#[0-9a-fA-F]{6}|Qt::(red|green|blue|yellow|cyan|magenta)|rgba?\\(");
    QDirIterator files(QStringLiteral(STAVELINE_SOURCE_DIR "/ui"), {"*.cpp", "*.h"}, QDir::Files,
                       QDirIterator::Subdirectories);
    int read = 0;
    while (files.hasNext()) {
        const QString path = files.next();
        if (path.endsWith("widgets/theme.cpp"))
            continue;
        QFile file(path);
        REQUIRE(file.open(QIODevice::ReadOnly));
        const QString source = QString::fromUtf8(file.readAll());
        INFO(path.toStdString());
        CHECK_FALSE(source.contains(literal));
        CHECK_FALSE(source.contains("setStyleSheet"));
        ++read;
    }
    CHECK(read > 30);
}
