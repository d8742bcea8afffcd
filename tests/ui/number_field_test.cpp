// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers as brewers type them: nothing may be misread, nothing changed that was not typed.
#include "ui/support.h"

#include "ui/widgets/number_field.h"

#include <QLineEdit>
#include <QToolButton>

#include <cstring>

using namespace staveline;
using namespace staveline::ui;

namespace {

struct Typed {
    explicit Typed(UnitKind kind, Range range = {0, 1000}, bool required = false) : field(kind, range, required) {
        field.setName(QStringLiteral("Volume"));
        field.show();
    }
    void type(const char* text) {
        field.edit()->clear();
        QTest::keyClicks(field.edit(), QString::fromUtf8(text));
    }
    [[nodiscard]] bool offers() const { return testing::part<QToolButton>(field).isVisible(); }
    NumberField field;
};

bool sameBits(double a, double b) {
    return std::memcmp(&a, &b, sizeof a) == 0;
}

} // namespace

TEST_CASE("point and comma are both decimal marks", "[ui][number]") {
    Typed t(UnitKind::volume);
    for (const char* text : {"60.5", "60,5", " 60,5", "60.50"}) {
        t.type(text);
        INFO(text);
        REQUIRE(t.field.stored());
        CHECK(*t.field.stored() == 60.5);
        CHECK(t.field.words().isEmpty());
    }
}

TEST_CASE("the default locale changes nothing", "[ui][number]") {
    for (const QLocale::Language language : {QLocale::German, QLocale::French, QLocale::English, QLocale::Arabic}) {
        QLocale::setDefault(QLocale(language));
        Typed t(UnitKind::gravity, {.98, 1.2});
        t.type("1.048");
        CHECK(t.field.stored() == 1.048);
        t.type("1,048");
        CHECK(t.field.stored() == 1.048);
    }
    QLocale::setDefault(QLocale::c());
}

TEST_CASE("what is no number is said beside the field and not kept", "[ui][number][bad]") {
    Typed t(UnitKind::volume);
    for (const char* text : {"1.048,5", "1,000.5", "abc", "6 0", "--4", "inf", "nan", "-3", "5000"}) {
        t.type(text);
        INFO(text);
        CHECK_FALSE(t.field.stored());
        CHECK_FALSE(t.field.usable());
        CHECK_FALSE(t.field.words().isEmpty());
        CHECK(t.field.edit()->accessibleDescription() == t.field.words());
    }
    t.type("44");
    CHECK(t.field.usable());
    CHECK(t.field.words().isEmpty());
}

TEST_CASE("a gravity of 1048 offers 1.048 in one key", "[ui][number][bad]") {
    Typed t(UnitKind::gravity, {.98, 1.2});
    t.type("1048");
    CHECK_FALSE(t.field.stored());
    REQUIRE(t.offers());
    QTest::keyClick(t.field.edit(), Qt::Key_Return);
    CHECK(t.field.stored() == 1.048);
    CHECK(t.field.edit()->text() == QStringLiteral("1.048"));
    CHECK_FALSE(t.offers());
}

TEST_CASE("the offer can be taken with its button too", "[ui][number]") {
    Typed t(UnitKind::gravity, {.98, 1.2});
    t.type("1048");
    auto* button = t.field.findChild<QToolButton*>();
    REQUIRE(button);
    CHECK(button->accessibleName().contains(QStringLiteral("1.048")));
    QTest::mouseClick(button, Qt::LeftButton);
    CHECK(t.field.stored() == 1.048);
}

TEST_CASE("switching units rewrites the text, never the value", "[ui][number]") {
    Typed t(UnitKind::volume);
    const double odd = 60.123456789012345;
    t.field.setStored(odd);
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    t.field.setUnits(units);
    CHECK(t.field.edit()->text() == QStringLiteral("15.883")); // 60.1235 / 3.785412
    units.volume = DisplayUnits::Volume::hectolitre;
    t.field.setUnits(units);
    CHECK(t.field.edit()->text() == QStringLiteral("0.6012"));
    t.field.setUnits({});
    REQUIRE(t.field.stored());
    CHECK(sameBits(*t.field.stored(), odd));
}

TEST_CASE("typing in gallons stores litres", "[ui][number]") {
    Typed t(UnitKind::volume);
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    t.field.setUnits(units);
    t.type("10");
    REQUIRE(t.field.stored());
    CHECK(*t.field.stored() == Approx(37.85411784).epsilon(1e-12)); // NIST Handbook 44: 1 US gal = 3.785411784 L
    t.type("400");                                                  // 1514 L is beyond the range, which is in litres
    CHECK_FALSE(t.field.stored());
}

TEST_CASE("temperatures and gravities convert both ways", "[ui][number]") {
    DisplayUnits units;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    units.gravity = DisplayUnits::Gravity::plato;
    const UnitScale warm(UnitKind::temperature, units), dense(UnitKind::gravity, units);
    CHECK(warm.toShown(100) == Approx(212)); // the boiling point, by definition of the scales
    CHECK(warm.toStored(32) == Approx(0).margin(1e-12));
    CHECK(dense.toStored(dense.toShown(1.048)) == Approx(1.048).epsilon(1e-9));
    CHECK(dense.suffix() == QStringLiteral("°P"));
    CHECK(UnitScale(UnitKind::share, units).toStored(35) == .35);
}

TEST_CASE("numbers are shown with as few decimals as say the same", "[ui][number]") {
    CHECK(UnitScale(UnitKind::volume, {}).show(60) == QStringLiteral("60"));
    CHECK(UnitScale(UnitKind::volume, {}).show(0.2) == QStringLiteral("0.2"));
    CHECK(UnitScale(UnitKind::gravity, {}).show(1.05) == QStringLiteral("1.050"));
    CHECK(UnitScale(UnitKind::gravity, {}).show(1.0485) == QStringLiteral("1.0485"));
    CHECK(UnitScale(UnitKind::share, {}).show(.35) == QStringLiteral("35"));
    CHECK(UnitScale(UnitKind::volume, {}).show(-0.00001) == QStringLiteral("0"));
}

TEST_CASE("an empty field is a value of its own unless it is needed", "[ui][number]") {
    Typed free(UnitKind::ph), needed(UnitKind::volume, {0, 10}, true);
    CHECK(free.field.usable());
    CHECK_FALSE(needed.field.usable());
    CHECK(needed.field.words().isEmpty()); // nobody is told off before they have begun
    needed.field.complainIfEmpty();
    CHECK(needed.field.words() == QStringLiteral("Enter the volume."));
    needed.type("4");
    CHECK(needed.field.words().isEmpty());
}

TEST_CASE("a fault from elsewhere stands beside the field until the next key", "[ui][number]") {
    Typed t(UnitKind::volume);
    t.type("60");
    t.field.showFault({FaultKind::input, "/volume_l", say("ui.field.needed"), say("ui.field.fill_in")});
    CHECK_FALSE(t.field.usable());
    CHECK(t.field.stored() == 60); // what was typed is not taken away
    QTest::keyClicks(t.field.edit(), QStringLiteral("5"));
    CHECK(t.field.stored() == 605);
    CHECK(t.field.usable());
}

TEST_CASE("the wheel changes nothing", "[ui][number]") {
    Typed t(UnitKind::volume);
    t.type("60");
    QWheelEvent wheel(QPointF(4, 4), QPointF(4, 4), QPoint(0, 0), QPoint(0, 120), Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(t.field.edit(), &wheel);
    CHECK(t.field.stored() == 60);
}

TEST_CASE("assistive technology hears the name with its unit", "[ui][number][a11y]") {
    Typed t(UnitKind::volume);
    CHECK(testing::accessibleName(*t.field.edit()) == QStringLiteral("Volume in L"));
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    t.field.setUnits(units);
    CHECK(testing::accessibleName(*t.field.edit()) == QStringLiteral("Volume in US gal"));
}
