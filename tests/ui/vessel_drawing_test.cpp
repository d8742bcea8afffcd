// SPDX-License-Identifier: GPL-3.0-or-later
// A fifth of the beer is a fifth of the drawn surface, whatever the shape; layers stand in order of age.
#include "ui/support.h"

#include "facts/words.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/vessel_drawing.h"
#include "ui/widgets/vessel_shape.h"

#include <QPainter>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::ui;
using staveline::testing::day;

namespace {

LedgerState threeGenerations(double litres) {
    LedgerState state;
    state.on = day(2026, 3, 2);
    state.volume = Litres{litres};
    state.generations = {{3, day(2025, 7, 8), Share{.4}, Days{16}},
                         {2, day(2024, 6, 3), Share{.35}, Days{18}},
                         {1, day(2023, 2, 1), Share{.25}, Days{600}}};
    return state;
}

constexpr std::array allForms = {VesselForm::cask, VesselForm::keg,    VesselForm::foeder,
                                 VesselForm::tank, VesselForm::carboy, VesselForm::bucket};

VesselLook look(VesselForm shape, double fill) {
    return {shape, Litres{100}, threeGenerations(100 * fill), std::nullopt};
}

/// Share of the outline's surface below a height, measured by painting.
double surfaceBelow(const VesselShapeDrawing& shape, double height) {
    QImage image(400, 400, QImage::Format_Grayscale8);
    image.fill(0);
    QPainter painter(&image);
    painter.scale(400, 400);
    painter.fillPath(shape.outline(), Qt::white);
    painter.end();
    double below = 0, all = 0;
    for (int y = 0; y < 400; ++y)
        for (int x = 0; x < 400; ++x)
            if (qGray(image.pixel(x, y)) > 127) {
                ++all;
                below += (y + .5) / 400 >= height;
            }
    return below / all;
}

QImage painted(const VesselLook& seen, const QPalette& palette) {
    QImage image(200, 200, QImage::Format_ARGB32);
    image.fill(palette.color(QPalette::Window));
    QPainter painter(&image);
    paintVessel(painter, QRectF(0, 0, 200, 200), seen, palette, 16);
    return image;
}

int pixelsOf(const QImage& image, const QColor& colour) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            count += image.pixel(x, y) == colour.rgb();
    return count;
}

} // namespace

TEST_CASE("the liquid's share of the drawing is its share of the vessel", "[ui][vessel]") {
    for (const VesselForm form : allForms) {
        const VesselShapeDrawing& shape = VesselShapeDrawing::of(form);
        for (const double fill : {.1, .25, .5, .75, .9}) {
            INFO(wordOf(form) << " at " << fill);
            CHECK(surfaceBelow(shape, shape.surface(fill)) == Approx(fill).margin(.02));
        }
        CHECK(shape.surface(0) > shape.surface(.01));
        CHECK(shape.surface(1) < shape.surface(.99));
        CHECK(shape.outline().boundingRect().top() >= -.001);
        CHECK(shape.outline().boundingRect().bottom() <= 1.001);
    }
}

TEST_CASE("the shapes differ", "[ui][vessel]") {
    for (const VesselForm a : allForms)
        for (const VesselForm b : allForms)
            if (a != b)
                CHECK(VesselShapeDrawing::of(a).outline() != VesselShapeDrawing::of(b).outline());
    CHECK(VesselShapeDrawing::of(VesselForm::cask).widthToHeight() > 1); // it lies
    CHECK(VesselShapeDrawing::of(VesselForm::keg).widthToHeight() < 1);  // it stands
}

TEST_CASE("layers stand from new on top to old below, as high as their share", "[ui][vessel]") {
    const auto layers = strata(look(VesselForm::keg, .8));
    REQUIRE(layers.size() == 3);
    const VesselShapeDrawing& keg = VesselShapeDrawing::of(VesselForm::keg);
    CHECK(layers[0].from == Approx(keg.surface(.8)));
    CHECK(layers[0].to == Approx(keg.surface(.8 * .6)));
    CHECK(layers[1].to == Approx(keg.surface(.8 * .25)));
    CHECK(layers[2].to == Approx(keg.surface(0)).margin(1e-6));
    CHECK(layers[0].age < layers[1].age);
    CHECK(layers[1].age < layers[2].age);
    CHECK(layers[2].from == layers[1].to);
}

TEST_CASE("very small old generations are drawn as one", "[ui][vessel]") {
    VesselLook seen = look(VesselForm::cask, .9);
    seen.now.generations.push_back({0, day(2019, 1, 1), Share{.006}, Days{0}});
    seen.now.generations.push_back({-1, day(2018, 1, 1), Share{.004}, Days{0}});
    const auto layers = strata(seen);
    REQUIRE(layers.size() == 3);
    CHECK(layers[2].rest);
    CHECK(layers[2].share.of1 == Approx(.26));
    CHECK(describe(seen, {}).contains("26 % from 1 Feb 2023 and before"));
}

TEST_CASE("an empty vessel and a wrong capacity are drawn all the same", "[ui][vessel][bad]") {
    VesselLook empty{VesselForm::cask, Litres{225}, {}, std::nullopt};
    CHECK(strata(empty).empty());
    CHECK_FALSE(painted(empty, lightPalette()).isNull());
    empty.capacity = Litres{0};
    empty.now = threeGenerations(10);
    CHECK(strata(empty).size() == 3);
    VesselLook over = look(VesselForm::keg, 1.4); // more than it holds is drawn full
    CHECK(strata(over)[0].from == Approx(VesselShapeDrawing::of(VesselForm::keg).surface(1)));
}

TEST_CASE("each layer has its colour on the screen, in both palettes", "[ui][vessel]") {
    for (const QPalette& palette : {lightPalette(), darkPalette()}) {
        const VesselLook seen = look(VesselForm::foeder, .9);
        const QImage image = painted(seen, palette);
        for (const Stratum& layer : strata(seen))
            CHECK(pixelsOf(image, stratum(palette, layer.age)) > 1000);
        CHECK(pixelsOf(image, headspace(palette)) > 300);
    }
}

TEST_CASE("the level before an entry is a broken line above the new one", "[ui][vessel]") {
    VesselLook seen = look(VesselForm::tank, .5);
    const QImage without = painted(seen, lightPalette());
    seen.levelBefore = Litres{80};
    const QImage with = painted(seen, lightPalette());
    CHECK(pixelsOf(without, tone(lightPalette(), Tone::proposed)) == 0);
    CHECK(pixelsOf(with, tone(lightPalette(), Tone::proposed)) > 20);
}

TEST_CASE("the drawing is told in a sentence, in the units in use", "[ui][vessel][a11y]") {
    VesselDrawing drawing;
    DisplayUnits units;
    drawing.setLook(look(VesselForm::cask, .8), units);
    CHECK(drawing.accessibleDescription().startsWith("80.0 L of 100.0 L; 40 % from 8 Jul 2025"));
    units.volume = DisplayUnits::Volume::usGallon;
    drawing.setLook(look(VesselForm::cask, .8), units);
    CHECK(drawing.accessibleDescription().contains("gal"));
}

TEST_CASE("a little in between is drawn with its neighbour and needs no word", "[ui][vessel]") {
    VesselLook seen = look(VesselForm::cask, .9);
    seen.now.generations.insert(seen.now.generations.begin() + 1, {9, day(2025, 1, 15), Share{.008}, Days{0}});
    const auto layers = strata(seen);
    REQUIRE(layers.size() == 3);
    CHECK(layers[0].share.of1 == Approx(.408));
    CHECK_FALSE(layers[0].rest);
    CHECK_FALSE(layers[2].rest);
}
