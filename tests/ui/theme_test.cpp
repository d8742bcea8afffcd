// SPDX-License-Identifier: GPL-3.0-or-later
// Both palettes keep text and marks readable, also for eyes that see two primaries.
#include "ui/support.h"

#include "ui/widgets/glyph.h"
#include "ui/widgets/theme.h"

#include <QComboBox>
#include <QDirIterator>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include <set>

using namespace staveline::ui;
using namespace staveline::culture;

namespace {

const std::array allTones = {Tone::proposed, Tone::tasted, Tone::predicted, Tone::calm, Tone::due, Tone::fault};
std::vector<Glyph> allGlyphs() {
    std::vector<Glyph> all;
    for (int i = 0; i < glyphCount; ++i)
        all.push_back(static_cast<Glyph>(i));
    return all;
}

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

// Web Content Accessibility Guidelines 2.2, W3C Recommendation 5 October 2023: 1.4.3 Contrast (Minimum), 4.5:1 for
// text; 1.4.11 Non-text Contrast, 3:1 for what shows where a control is and what a graphic says.
TEST_CASE("text keeps 4.5:1 on every ground of both palettes", "[ui][theme][a11y]") {
    using P = QPalette;
    for (const auto& [name, palette] : palettes()) {
        INFO(name);
        const auto on = [&, &colours = palette](const QColor& ink, P::ColorRole ground) {
            INFO("on role " << static_cast<int>(ground));
            CHECK(contrast(ink, colours.color(ground)) >= 4.5);
        };
        for (const auto ground : {P::Window, P::Base, P::AlternateBase, P::Button, P::Midlight, P::ToolTipBase}) {
            for (const auto group : {P::Active, P::Inactive, P::Disabled})
                for (const auto ink : {P::WindowText, P::Text, P::ButtonText})
                    on(palette.color(group, ink), ground);
            on(quietText(palette), ground);
            on(palette.color(P::ToolTipText), ground);
        }
        for (const auto ground : {P::Window, P::Base, P::AlternateBase})
            on(palette.color(P::Link), ground);
        on(palette.color(P::HighlightedText), P::Highlight);
        CHECK(contrast(palette.color(P::Text), selection(palette)) >= 4.5);
        CHECK(contrast(palette.color(P::WindowText), palette.color(P::Window)) >= 7);
    }
}

TEST_CASE("marks and the edges of controls keep 3:1 on every ground", "[ui][theme][a11y]") {
    for (const auto& [name, palette] : palettes())
        for (const auto ground : {QPalette::Window, QPalette::Base, QPalette::AlternateBase}) {
            INFO(name << " on role " << static_cast<int>(ground));
            for (const Tone each : allTones)
                CHECK(contrast(tone(palette, each), palette.color(ground)) >= 3);
            CHECK(contrast(outline(palette), palette.color(ground)) >= 3);
            CHECK(contrast(outline(palette), palette.color(QPalette::Button)) >= 3);
            CHECK(contrast(wall(palette), palette.color(ground)) >= 3);
        }
}

namespace {

/// The strongest contrast with its ground along the left edge of a control: that of its border.
double edgeContrast(QWidget& control) {
    control.resize(control.sizeHint());
    const QImage picture = control.grab().toImage();
    double best = 1;
    for (int x = 0; x < 5; ++x)
        best = std::max(
            best, contrast(picture.pixelColor(x, picture.height() / 2), control.palette().color(QPalette::Window)));
    return best;
}

QPalette strong(const QColor& ground, const QColor& ink) {
    QPalette palette(ink, ground, ink, ink, ink, ink, ink, ground, ground);
    QColor pale = ink;
    pale.setAlpha(128);
    palette.setColor(QPalette::PlaceholderText, pale);
    return palette;
}

} // namespace

TEST_CASE("a button has an edge, a link is underlined", "[ui][theme][a11y]") {
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        install(*qApp, look);
        QPushButton button(QStringLiteral("Amend"));
        QComboBox choice;
        choice.addItem(QStringLiteral("one"));
        QLineEdit field;
        for (QWidget* control : std::initializer_list<QWidget*>{&button, &choice, &field})
            CHECK(edgeContrast(*control) >= 3);
        // Of words that can be pressed and have no edge: a line below them, as long as they are.
        QPushButton link(QStringLiteral("nnnn"));
        link.setFlat(true);
        link.resize(link.sizeHint());
        const QImage picture = link.grab().toImage();
        int longest = 0;
        for (int y = 0; y < picture.height(); ++y) {
            int run = 0;
            for (int x = 0; x < picture.width(); ++x)
                run = contrast(picture.pixelColor(x, y), link.palette().color(QPalette::Window)) >= 4.5 ? run + 1 : 0,
                longest = std::max(longest, run);
        }
        CHECK(longest >= link.fontMetrics().horizontalAdvance(link.text()) - 3);
    }
    install(*qApp, Appearance::light);
}

TEST_CASE("the desktop's high contrast is kept, with every edge drawn", "[ui][theme][a11y]") {
    const std::vector<QPalette> strongOnes = {strong(Qt::black, Qt::white), strong(Qt::white, Qt::black),
                                              strong(Qt::black, QColor::fromHsl(60, 255, 128))};
    for (const QPalette& desktop : strongOnes) {
        CHECK(isHighContrast(desktop));
        rememberSystemPalette(desktop);
        install(*qApp, Appearance::system);
        const QPalette used = QApplication::palette();
        for (const auto role : {QPalette::Window, QPalette::WindowText, QPalette::Button, QPalette::Base})
            CHECK(used.color(role) == desktop.color(role));
        CHECK(contrast(quietText(used), used.color(QPalette::Window)) >= 7);
        for (const Tone each : allTones)
            CHECK(contrast(tone(used, each), used.color(QPalette::Window)) >= 4.5);
        CHECK(contrast(outline(used), used.color(QPalette::Window)) >= 7);
        CHECK(contrast(hairline(used), used.color(QPalette::Window)) >= 7);
        QPushButton button(QStringLiteral("Amend"));
        CHECK(edgeContrast(button) >= 7);
        install(*qApp, Appearance::light); // asked for, it is ours
        CHECK(QApplication::palette().color(QPalette::Window) == lightPalette().color(QPalette::Window));
    }
    // The usual looks of desktops are none of it.
    for (const QPalette& usual : {lightPalette(), darkPalette(), QPalette(QColor(Qt::lightGray), QColor(Qt::white)),
                                  strong(QColor(Qt::darkGray).darker(300), Qt::white)})
        CHECK_FALSE(isHighContrast(usual));
    rememberSystemPalette(lightPalette());
    install(*qApp, Appearance::light);
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
    for (const Glyph a : allGlyphs())
        for (const Glyph b : allGlyphs())
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

TEST_CASE("shapes are drawn in their table and nowhere else", "[ui][face][glyph]") {
    QDirIterator files(QStringLiteral(STAVELINE_SOURCE_DIR "/ui"), {"*.cpp"}, QDir::Files,
                       QDirIterator::Subdirectories);
    // Who stands where and needs a state of its own: dates and moods, messages, the ledger's findings.
    const QStringList named = {"widgets/glyph.cpp",
                               "widgets/message_label.cpp",
                               "widgets/entry_look.cpp",
                               "widgets/cycle_timeline.cpp",
                               "cellar/mood_glyph.cpp",
                               "cellar/first_steps_bar.cpp",
                               "draw_refill/ledger_table.cpp",
                               "brew/flow_diagram.cpp"};
    qsizetype met = 0;
    while (files.hasNext()) {
        const QString path = files.next();
        QFile file(path);
        REQUIRE(file.open(QIODevice::ReadOnly));
        const bool names = QString::fromUtf8(file.readAll()).contains("Glyph::");
        const bool may =
            std::any_of(named.begin(), named.end(), [&](const QString& each) { return path.endsWith(each); });
        INFO(path.toStdString());
        CHECK(names == may);
        met += may ? 1 : 0;
    }
    CHECK(met == named.size());
}
