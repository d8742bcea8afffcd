// SPDX-License-Identifier: GPL-3.0-or-later
// The mash in the Brew page: rests in fields and in the drawing, the curves under it, the table behind it.
#include "ui/brew_support.h"

#include <QAccessible>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

void drag(RestHandle& handle, QPoint from, QPoint by) {
    const auto send = [&](QEvent::Type type, QPoint at, Qt::MouseButtons held) {
        QMouseEvent event(type, at, handle.mapToGlobal(at), type == QEvent::MouseMove ? Qt::NoButton : Qt::LeftButton,
                          held, Qt::NoModifier);
        QApplication::sendEvent(&handle, &event);
    };
    // Places on the screen: the handle moves under the pointer.
    const QPoint start = handle.mapToGlobal(from);
    send(QEvent::MouseButtonPress, from, Qt::LeftButton);
    for (int step = 1; step <= 4; ++step)
        send(QEvent::MouseMove, handle.mapFromGlobal(start + by * step / 4), Qt::LeftButton);
    send(QEvent::MouseButtonRelease, handle.mapFromGlobal(start + by), Qt::NoButton);
}

struct AtMash : AtBrew {
    explicit AtMash(const char* path = "jump") {
        recordAll(*session, std::string(R"([{"kind": "base_recipe", "vessel": "Heron", "on": "2026-02-01",
            "grist": [{"grain": "pilsner", "share": 0.8}, {"grain": "flaked_oats", "share": 0.2, "late": true}],
            "mash": [{"temperature_c": 62, "minutes": 40}, {"temperature_c": 70, "minutes": 20}],
            "original_gravity_p": 12, "bitterness_ibu": 10, "path": ")") +
                                path + "\"}]");
    }
    [[nodiscard]] RestHandle& handle(int rest) const { return *handles(mashChart()).at(rest); }
};

} // namespace

TEST_CASE("rests follow one another at the rate of their path", "[ui][brew][mash]") {
    const std::vector<MashStep> rests = {{Celsius{62}, Minutes{40}}, {Celsius{70}, Minutes{20}}};
    const auto heated = spansOf(rests, CelsiusPerMinute{1});
    REQUIRE(heated.size() == 2);
    CHECK(heated[0].to == 40);
    CHECK(heated[1].from == Approx(48)); // 8 degrees at one a minute
    CHECK(heated[1].to == Approx(68));
    CHECK(spansOf(rests, CelsiusPerMinute{10})[1].from == Approx(40.8));
    CHECK(spansOf({}, CelsiusPerMinute{1}).empty());
}

TEST_CASE("the drawing and the model agree on how long the mash takes", "[ui][brew][mash]") {
    for (const char* path : {"jump", "ramp"}) {
        const AtMash s(path);
        const MashLook& look = s.mashChart().look();
        INFO(path);
        REQUIRE_FALSE(look.trace.minute.empty());
        CHECK(look.trace.minute.back() == Approx(spansOf(look.rests, look.rate).back().to).margin(1));
        CHECK(look.trace.temperature.back() == Approx(70).margin(.5));
    }
}

TEST_CASE("arrow keys move a focused rest and store it", "[ui][brew][mash]") {
    const AtMash s;
    s.handle(0).setFocus();
    QTest::keyClick(&s.handle(0), Qt::Key_Up);
    CHECK(s.recipe().mash[0].temperature.c == 62.5);
    QTest::keyClick(&s.handle(0), Qt::Key_Down, Qt::ShiftModifier);
    CHECK(s.recipe().mash[0].temperature.c == 60);
    QTest::keyClick(&s.handle(0), Qt::Key_Right);
    CHECK(s.recipe().mash[0].minutes.min == 41);
    QTest::keyClick(&s.handle(0), Qt::Key_Left, Qt::ShiftModifier);
    CHECK(s.recipe().mash[0].minutes.min == 36);
    CHECK(s.field("/mash/0/minutes")->edit()->text() == "36");
    CHECK(s.handle(0).hasFocus());
}

TEST_CASE("in degrees Fahrenheit the arrows move by whole ones", "[ui][brew][mash]") {
    const AtMash s;
    DisplayUnits units;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    s.session->setUnits(units);
    QTest::keyClick(&s.handle(0), Qt::Key_Up); // 143.6 F
    CHECK(s.field("/mash/0/temperature_c")->edit()->text() == "145");
    CHECK(s.recipe().mash[0].temperature.c == Approx((145 - 32) / 1.8));
}

TEST_CASE("a rest stays between its neighbours and a mash's limits", "[ui][brew][mash]") {
    const AtMash s;
    for (int i = 0; i < 12; ++i)
        QTest::keyClick(&s.handle(0), Qt::Key_Up, Qt::ShiftModifier);
    CHECK(s.recipe().mash[0].temperature.c == 70);
    for (int i = 0; i < 12; ++i)
        QTest::keyClick(&s.handle(1), Qt::Key_Up, Qt::ShiftModifier);
    CHECK(s.recipe().mash[1].temperature.c == 80);
    for (int i = 0; i < 12; ++i)
        QTest::keyClick(&s.handle(1), Qt::Key_Left, Qt::ShiftModifier);
    CHECK(s.recipe().mash[1].minutes.min == 1);
    CHECK_FALSE(s.planPage().model().fault());
}

TEST_CASE("dragging shows the mash at once and stores it on release", "[ui][brew][mash]") {
    const AtMash s;
    const auto before = s.revision();
    const double wort = s.mashChart().look().trace.fermentable.back();
    RestHandle& handle = s.handle(0);
    QSignalSpy moved(&s.mashChart(), &MashChart::restMoved);
    const QPoint middle(handle.width() / 3, handle.height() / 2);
    const int pixels = static_cast<int>(6 / s.mashChart().degreesPerPixel()); // six degrees up
    drag(handle, middle, QPoint(0, -pixels));
    CHECK(moved.count() >= 3);
    CHECK(s.recipe().mash[0].temperature.c == Approx(68).margin(.51));
    CHECK(std::fmod(s.recipe().mash[0].temperature.c, .5) == Approx(0).margin(1e-9));
    CHECK(s.recipe().mash[0].minutes.min == 40);
    CHECK(s.mashChart().look().trace.fermentable.back() != wort);
    CHECK(s.revision() == before + 1); // one edit
    s.session->undo();
    CHECK(s.recipe().mash[0].temperature.c == 62);
}

TEST_CASE("the end of a rest is dragged for its minutes", "[ui][brew][mash]") {
    const AtMash s;
    RestHandle& handle = s.handle(0);
    const int pixels = static_cast<int>(10 / s.mashChart().minutesPerPixel());
    drag(handle, QPoint(handle.width() - 2, handle.height() / 2), QPoint(-pixels, 0));
    CHECK(s.recipe().mash[0].minutes.min == Approx(30).margin(1.01));
    CHECK(s.recipe().mash[0].temperature.c == 62);
}

TEST_CASE("rests are added and taken out by keyboard", "[ui][brew][mash]") {
    const AtMash s;
    part<MashEditor>(s.flow()).add();
    REQUIRE(s.recipe().mash.size() == 3);
    CHECK(s.recipe().mash[2].temperature.c == 76);
    CHECK(handles(s.mashChart()).size() == 3);
    CHECK(s.window.focusWidget() == s.field("/mash/2/temperature_c")->edit());
    part<MashEditor>(s.flow()).remove(0);
    REQUIRE(s.recipe().mash.size() == 2);
    CHECK(s.recipe().mash[0].temperature.c == 70);
    CHECK(s.field("/mash/0/temperature_c")->edit()->text() == "70");
    CHECK(s.field("/mash/2/temperature_c") == nullptr);
}

TEST_CASE("without a rest it is said where rests are added", "[ui][brew][mash][bad]") {
    const AtBrew s;
    const auto before = s.revision();
    part<MashEditor>(s.flow()).remove(0);
    CHECK(wordsOf(s.flow(), "/mash").contains("no rest"));
    CHECK(s.revision() == before);
    CHECK_FALSE(s.mashChart().look().trace.minute.empty()); // of the last mash that can be made
    part<MashEditor>(s.flow()).add();
    CHECK(wordsOf(s.flow(), "/mash").isEmpty());
    CHECK(s.recipe().mash.size() == 1);
}

TEST_CASE("a mash that falls is refused at the rest that falls", "[ui][brew][mash][bad]") {
    const AtMash s;
    s.type("/mash/1/temperature_c", "55");
    CHECK(s.field("/mash/1/temperature_c")->words().contains("falls"));
    CHECK_FALSE(s.mashChart().look().current); // the curves are of the last mash that can be made
    CHECK(s.recipe().mash[1].temperature.c == 70);
}

TEST_CASE("grain hangs where it goes in", "[ui][brew][mash]") {
    const AtMash s;
    CHECK(s.mashChart().look().early.contains("Pilsner malt 80 %"));
    CHECK(s.mashChart().look().late.contains("flaked oats 20 %"));
    auto* late = &part<QCheckBox>(s.flow(), "Grain 2 goes in at the last rest");
    REQUIRE(late);
    late->click();
    CHECK(s.mashChart().look().late.isEmpty());
    CHECK_FALSE(s.recipe().grist[1].late);
}

TEST_CASE("a sentence and a table say what the drawing shows", "[ui][brew][mash]") {
    const AtMash s;
    const QString words = s.mashChart().accessibleDescription();
    INFO(words.toStdString());
    CHECK(words.contains("62 °C for 40 min, then 70 °C for 20 min"));
    CHECK(words.contains("ferulic"));
    QTableWidget& table = part<MashEditor>(s.flow()).table();
    part<QPushButton>(s.flow(), "As a table (T)").click();
    CHECK(table.isVisibleTo(&s.window));
    CHECK(table.columnCount() == 6);
    REQUIRE(table.rowCount() > 10);
    CHECK(table.horizontalHeaderItem(0)->text() == "Time, min"); // the unit once, above its numbers
    CHECK(table.item(0, 0)->text() == "0");
    CHECK(table.item(0, 1)->text() == "62.0");
    const auto& trace = s.mashChart().look().trace;
    CHECK(table.item(table.rowCount() - 1, 2)->text() == QString::number(100 * trace.fermentable.back(), 'f', 1));
    for (int column = 0; column < table.columnCount(); ++column) {
        CHECK(table.item(0, column)->textAlignment() & Qt::AlignRight);
        CHECK(table.columnWidth(column) >=
              table.fontMetrics().horizontalAdvance(table.horizontalHeaderItem(column)->text()));
    }
    s.type("/mash/1/minutes", "60");
    CHECK(table.item(table.rowCount() - 1, 0)->text() == "101"); // follows: both rests and the way between
    table.setFocus();
    QTest::keyClick(&table, Qt::Key_T);
    CHECK_FALSE(table.isVisibleTo(&s.window));
    CHECK(s.handle(0).hasFocus());
    QTest::keyClick(&s.handle(0), Qt::Key_T);
    CHECK(table.hasFocus());
}

TEST_CASE("handles tell assistive technology what they hold", "[ui][brew][mash]") {
    const AtMash s;
    CHECK(accessibleName(s.handle(1)) == "Rest 2, 70 °C, 20 min");
    QTest::keyClick(&s.handle(1), Qt::Key_Right);
    CHECK(accessibleName(s.handle(1)) == "Rest 2, 70 °C, 21 min");
}

TEST_CASE("the path between rests is chosen in words", "[ui][brew][mash]") {
    const AtMash s;
    auto* path = &part<ChoiceField>(s.flow(), "From rest to rest");
    REQUIRE(path);
    path->setWord("ramp");
    Q_EMIT path->activated(path->currentIndex());
    CHECK(s.recipe().path == MashPath::ramp);
    CHECK(s.mashChart().look().rate == s.session->desk().kit().equipment.heatingRate);
}
