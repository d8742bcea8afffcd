// SPDX-License-Identifier: GPL-3.0-or-later
// The chart interface: scales, what charts say at a day, and the stack with its cursor.
#include "ui/support.h"

#include "ui/chart/chart_stack.h"
#include "ui/chart/event_timeline.h"
#include "ui/chart/panel_view.h"
#include "ui/chart/reading.h"

#include <QAccessible>
#include <QScrollArea>
#include <QScrollBar>
#include <QSvgRenderer>

using namespace staveline;
using namespace staveline::culture;
using namespace staveline::ui;
using staveline::testing::day;

namespace {

ChartSeries series(const char* name, SeriesKind kind, std::vector<ChartPoint> points, Shape shape = Shape::none) {
    ChartSeries made;
    made.name = QString::fromLatin1(name);
    made.kind = kind;
    made.shape = shape;
    made.points = std::move(points);
    return made;
}
ChartPoint within(Day on, double value, double half) {
    return {on, value, value - half, value + half, {}};
}

/// Scores and level of an invented cask over three years.
ChartData smallData() {
    ChartPanel acidity;
    acidity.id = "acidity";
    acidity.title = "Acidity";
    acidity.low = 0;
    acidity.high = 10;
    acidity.series = {
        series("target", SeriesKind::band, {within(day(2023, 1, 1), 5, 1), within(day(2024, 1, 1), 6, .5)}),
        series("promised", SeriesKind::promises, {within(day(2024, 6, 1), 5.9, .8)}, Shape::diamond),
        series("tasted", SeriesKind::points, {within(day(2023, 5, 1), 5.2, .6), within(day(2024, 5, 12), 6.4, .5)},
               Shape::disc)};
    ChartPanel level;
    level.id = "level";
    level.title = "Volume";
    level.unit = "L";
    level.series = {
        series("holds", SeriesKind::line,
               {plainPoint(day(2023, 1, 1), 200), plainPoint(day(2023, 6, 1), 190), plainPoint(day(2023, 6, 1), 120),
                plainPoint(day(2023, 6, 1), 200), plainPoint(day(2025, 6, 1), 180)})};
    ChartPanel none;
    none.id = "ph";
    none.title = "pH";
    none.nothing = "not measured yet";
    ChartData chartData;
    chartData.subject = "Heron";
    chartData.panels = {acidity, level, none};
    using Row = ChartEvent::Row;
    chartData.events = {{day(2023, 1, 1), Row::in, Glyph::opening, false, "Opened with 200 L"},
                        {day(2023, 5, 1), Row::look, std::nullopt, false, "tasted"},
                        {day(2023, 6, 1), Row::out, Glyph::drawOff, true, "70 L drawn"},
                        {day(2023, 6, 1), Row::in, Glyph::refill, true, "80 L refilled"},
                        {day(2024, 5, 12), Row::look, std::nullopt, false, "tasted"}};
    chartData.whole = {day(2022, 12, 1), day(2025, 7, 1)};
    chartData.today = day(2025, 6, 1);
    return chartData;
}

struct Shown {
    Shown() {
        stack.resize(900, 420);
        stack.setData(smallData());
        stack.show();
        REQUIRE(QTest::qWaitForWindowActive(&stack));
        stack.setFocus();
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) { QTest::keyClick(&stack, key, modifiers); }
    [[nodiscard]] PanelView& view(const QString& id) const {
        for (PanelView* one : stack.panels())
            if (one->panel().id == id)
                return *one;
        FAIL("no panel " << id.toStdString());
        return *stack.panels().front();
    }
    ChartStack stack;
};

void moveMouse(QWidget& over, QPointF to) {
    QMouseEvent move(QEvent::MouseMove, to, over.mapToGlobal(to), Qt::NoButton, Qt::NoButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&over, &move);
}

} // namespace

TEST_CASE("value axes are round and cover what they show", "[ui][history][chart]") {
    const auto check = [](double low, double high, double from, double to, double step) {
        const ValueScale scale = roundScale(low, high, 4);
        INFO(low << " to " << high);
        CHECK(scale.low == Approx(from));
        CHECK(scale.high == Approx(to));
        CHECK(scale.step == Approx(step));
    };
    check(0, 10, 0, 10, 5); // a half step above what four steps need
    check(3.31, 3.62, 3.3, 3.7, .1);
    check(1.001, 1.0106, 1.0, 1.015, .005);
    check(0, 217, 0, 300, 100);
    check(62, 68, 62, 68, 2);
}

TEST_CASE("any pair of numbers gets an axis with few, even steps around them", "[ui][history][chart]") {
    for (double low = -1; low < 400; low = low * 1.7 + 1.1)
        for (double width = 1e-4; width < 1e5; width *= 3.3) {
            const ValueScale scale = roundScale(low, low + width, 4);
            INFO(low << " and " << width << " more");
            CHECK(scale.low <= low + 1e-9 * std::abs(low));
            CHECK(scale.high >= low + width - 1e-6 * width);
            CHECK(scale.ticks().size() >= 2);
            CHECK(scale.ticks().size() <= 5);
            CHECK(scale.ticks().back() == Approx(scale.high).margin(1e-9));
        }
}

TEST_CASE("a single value still has an axis", "[ui][history][chart]") {
    for (const double value : {0.0, 3.3, 1.004, -2.0}) {
        const ValueScale scale = roundScale(value, value, 4);
        CHECK(scale.low < value);
        CHECK(scale.high > value);
    }
    CHECK(scaleOf(ChartPanel{}, 4).high > scaleOf(ChartPanel{}, 4).low); // nothing at all
}

TEST_CASE("what is too little to matter looks flat", "[ui][history][chart]") {
    ChartPanel panel;
    panel.least = .004;
    panel.series = {series("measured", SeriesKind::points, {plainPoint(day(2024, 1, 1), 1.002)})};
    const ValueScale scale = scaleOf(panel, 4);
    CHECK(scale.high - scale.low >= .004);
    CHECK(scale.high - scale.low < .01);
    CHECK(scale.low < 1.002);
    CHECK(scale.high > 1.002);
    panel.low = 0;
    CHECK(scaleOf(panel, 4).low == 0);
}

TEST_CASE("dates along the axis are round and no more than fit", "[ui][history][chart]") {
    const auto labels = [](TimeSpan span, double share) {
        QStringList words;
        for (const TimeTick& tick : timeTicks(span, share)) {
            CHECK(tick.on >= span.from);
            CHECK(tick.on <= span.to);
            words << tick.label;
        }
        return words;
    };
    CHECK(labels({day(2021, 3, 4), day(2025, 2, 1)}, .2) == QStringList{"2022", "2023", "2024", "2025"});
    CHECK(labels({day(2024, 11, 20), day(2025, 2, 20)}, .2) == QStringList{"Dec 2024", "Jan 2025", "Feb 2025"});
    CHECK(labels({day(2024, 1, 2), day(2025, 1, 30)}, .2) ==
          QStringList{"Apr 2024", "Jul 2024", "Oct 2024", "Jan 2025"});
    CHECK(labels({day(2006, 6, 1), day(2026, 6, 1)}, .2) == QStringList{"2010", "2015", "2020", "2025"});
    for (int days = 1; days < 40000; days = days * 2 + 1) {
        const TimeSpan span{day(2000, 2, 29), day(2000, 2, 29) + std::chrono::days{days}};
        CHECK(timeTicks(span, .1).size() <= 12);
    }
}

TEST_CASE("a part of the time stays within the whole and is not too short", "[ui][history][chart]") {
    const TimeSpan whole{day(2020, 1, 1), day(2026, 1, 1)};
    CHECK(ui::within({day(2019, 1, 1), day(2020, 1, 1)}, whole) == TimeSpan{day(2020, 1, 1), day(2020, 12, 31)});
    CHECK(ui::within({day(2025, 7, 1), day(2026, 7, 1)}, whole) == TimeSpan{day(2025, 1, 1), day(2026, 1, 1)});
    CHECK(ui::within({day(2010, 1, 1), day(2040, 1, 1)}, whole) == whole);
    CHECK(ui::within({day(2022, 1, 1), day(2022, 1, 2)}, whole).days() == 14);
    const TimeSpan young{day(2026, 1, 1), day(2026, 1, 9)};
    CHECK(ui::within({day(2026, 1, 2), day(2026, 1, 3)}, young) == young);
}

TEST_CASE("thinning keeps the ends and the extremes of each column", "[ui][history][chart]") {
    std::vector<ChartPoint> many;
    const TimeSpan span{day(2000, 1, 1), day(2010, 1, 1)};
    for (int i = 0; i < 20000; ++i)
        many.push_back(plainPoint(day(1999, 1, 1) + std::chrono::days{i / 4}, i == 9000 ? 50 : i % 10));
    const auto few = thinned(many, span, 300);
    CHECK(few.size() <= 4 * 303);
    CHECK(few.size() > 300);
    CHECK(std::is_sorted(few.begin(), few.end(), [](const auto& a, const auto& b) { return a.on < b.on; }));
    CHECK(std::any_of(few.begin(), few.end(), [](const auto& point) { return point.value == 50; }));
    CHECK(few.front().on < span.from); // a line comes in from the left
    CHECK(few.back().on > span.to);
    CHECK(thinned({}, span, 300).empty());
    CHECK(thinned({plainPoint(day(2005, 1, 1), 1)}, span, 300).size() == 1);
    CHECK(thinned(many, {day(1980, 1, 1), day(1981, 1, 1)}, 300).size() == 1); // the first one after it
}

TEST_CASE("each kind of series says what it means at a day", "[ui][history][chart]") {
    const ChartData chartData = smallData();
    const ChartPanel& acidity = chartData.panels[0];
    const auto says = [&](std::size_t which, Day on) { return seriesWords(acidity, acidity.series[which], on); };
    CHECK(says(0, day(2022, 12, 31)).isEmpty());
    CHECK(says(0, day(2023, 12, 31)) == "target 4.0 to 6.0");
    CHECK(says(0, day(2024, 1, 1)) == "target 5.5 to 6.5");
    CHECK(says(1, day(2024, 6, 1)) == QString("promised 5.9 ±0.8"));
    CHECK(says(1, day(2024, 5, 1)) == QString("promised 5.9 ±0.8 for 1 Jun 2024"));
    CHECK(says(1, day(2024, 1, 1)).isEmpty()); // too far away to be meant
    CHECK(says(2, day(2023, 4, 30)).isEmpty());
    CHECK(says(2, day(2024, 5, 12)) == QString("tasted 6.4 ±0.5"));
    CHECK(says(2, day(2024, 2, 1)) == QString("tasted 5.2 ±0.6 on 1 May 2023"));
    const ChartPanel& level = chartData.panels[1];
    CHECK(panelWords(level, day(2023, 3, 17)) == "Volume 195.0 L");
    CHECK(panelWords(level, day(2023, 6, 1)) == "Volume 200.0 L"); // after all of that day
    CHECK(panelWords(level, day(2025, 6, 2)).isEmpty());
    CHECK(panelWords(level, day(2022, 12, 31)).isEmpty());
    CHECK(panelWords(chartData.panels[2], day(2024, 1, 1)).isEmpty());
}

TEST_CASE("what moved is told where it left the level", "[ui][history][chart]") {
    ChartPanel panel;
    panel.title = "Volume";
    panel.unit = "L";
    ChartPoint drawn = plainPoint(day(2024, 3, 1), 130);
    drawn.told = 60;
    panel.series = {series("drawn", SeriesKind::points, {drawn}, Shape::down)};
    CHECK(panelWords(panel, day(2024, 3, 1)) == "Volume 60.0 L");
    CHECK(summaryWords(panel) == "Volume: drawn once, 60.0 L on 1 Mar 2024.");
}

TEST_CASE("a chart in one sentence", "[ui][history][chart]") {
    const ChartData chartData = smallData();
    const QString words = summaryWords(chartData.panels[0]);
    CHECK(words == QString("Acidity: target now 5.5 to 6.5; promised once, 5.9 ±0.8 on 1 Jun 2024; "
                           "tasted 2 times, from 5.2 to 6.4, last 6.4 ±0.5 on 12 May 2024."));
    CHECK(summaryWords(chartData.panels[1]) == "Volume: holds between 120.0 and 200.0, now 180.0 L.");
    CHECK(summaryWords(chartData.panels[2]) == "not measured yet");
}

TEST_CASE("keys lead the cursor from event to event", "[ui][history][chart]") {
    Shown s;
    CHECK(s.stack.cursorDay() == day(2024, 5, 12)); // the last thing that happened
    s.key(Qt::Key_Left);
    CHECK(s.stack.cursorDay() == day(2023, 6, 1)); // draw and refill of one day are one stop
    CHECK(s.stack.cursorWords().startsWith("1 Jun 2023: 70 L drawn; 80 L refilled. Acidity: target 4.0 to 6.0"));
    s.key(Qt::Key_Home);
    CHECK(s.stack.cursorDay() == day(2023, 1, 1));
    s.key(Qt::Key_Left); // nothing before it
    CHECK(s.stack.cursorDay() == day(2023, 1, 1));
    s.key(Qt::Key_Right);
    CHECK(s.stack.cursorDay() == day(2023, 5, 1));
    s.key(Qt::Key_Right, Qt::ControlModifier);
    CHECK(s.stack.cursorDay() == day(2024, 4, 30));
    s.key(Qt::Key_Right);
    CHECK(s.stack.cursorDay() == day(2024, 5, 12));
    s.key(Qt::Key_Left, Qt::ControlModifier);
    CHECK(s.stack.cursorDay() == day(2023, 5, 13));
    s.key(Qt::Key_End);
    CHECK(s.stack.cursorDay() == day(2024, 5, 12));
    for (int i = 0; i < 6; ++i)
        s.key(Qt::Key_Right, Qt::ControlModifier);
    CHECK(s.stack.cursorDay() == s.stack.chartData().whole.to);
}

TEST_CASE("the cursor speaks only by keyboard, and follows the mouse", "[ui][history][chart]") {
    Shown s;
    QSignalSpy moved(&s.stack, &ChartStack::cursorMoved);
    s.key(Qt::Key_Home);
    REQUIRE(moved.size() == 1);
    CHECK(moved.takeFirst().front().toBool());
    PanelView& view = s.view("acidity");
    const PlotFrame frame = view.frame();
    moveMouse(view, QPointF(frame.x(day(2024, 8, 1)), frame.area.center().y()));
    REQUIRE(moved.size() == 1);
    CHECK_FALSE(moved.takeFirst().front().toBool());
    CHECK(std::abs(daysBetween(s.stack.cursorDay(), day(2024, 8, 1))) <= 2);
    moveMouse(view, QPointF(2, frame.area.center().y())); // over the labels: nowhere in time
    CHECK(moved.isEmpty());
}

TEST_CASE("zooming keeps the cursor in view and the wheel does not zoom", "[ui][history][chart]") {
    Shown s;
    const TimeSpan whole = s.stack.chartData().whole;
    s.key(Qt::Key_Plus);
    CHECK(s.stack.span().days() == Approx(whole.days() * .6).margin(1));
    CHECK(s.stack.span().from <= s.stack.cursorDay());
    CHECK(s.stack.cursorDay() <= s.stack.span().to);
    const TimeSpan zoomed = s.stack.span();
    const QPoint at(300, 60);
    QWheelEvent wheel(at, s.stack.mapToGlobal(at), {}, QPoint(0, 120), Qt::NoButton, Qt::ControlModifier,
                      Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(s.stack.childAt(at), &wheel);
    CHECK(s.stack.span() == zoomed);
    s.key(Qt::Key_Right, Qt::ShiftModifier);
    CHECK(s.stack.span().days() == zoomed.days());
    CHECK(s.stack.span().from > zoomed.from);
    for (int i = 0; i < 20; ++i)
        s.key(Qt::Key_Plus);
    CHECK(s.stack.span().days() == 14);
    for (int i = 0; i < 20; ++i)
        s.key(Qt::Key_Minus);
    CHECK(s.stack.span() == whole);
    s.key(Qt::Key_Plus);
    s.key(Qt::Key_0);
    CHECK(s.stack.span() == whole);
}

TEST_CASE("a cursor that leaves the part shown takes it along", "[ui][history][chart]") {
    Shown s;
    s.stack.setSpan({day(2024, 4, 1), day(2024, 6, 1)});
    s.key(Qt::Key_Home);
    CHECK(s.stack.span().from <= day(2023, 1, 1));
    CHECK(s.stack.span().to >= day(2023, 1, 1));
    CHECK(s.stack.span().days() == 61);
    s.key(Qt::Key_Right, Qt::ShiftModifier); // and a part that leaves the cursor takes that along
    s.key(Qt::Key_Right, Qt::ShiftModifier);
    s.key(Qt::Key_Right, Qt::ShiftModifier);
    CHECK(s.stack.cursorDay() >= s.stack.span().from);
}

TEST_CASE("plots share their edges, and empty panels take a line only", "[ui][history][chart]") {
    Shown s;
    const PlotFrame a = s.view("acidity").frame(), b = s.view("level").frame();
    CHECK(a.area.left() == b.area.left());
    CHECK(a.area.right() == b.area.right());
    CHECK(a.x(day(2024, 1, 1)) == b.x(day(2024, 1, 1)));
    CHECK(s.view("ph").height() < s.view("level").height() / 2);
}

TEST_CASE("a panel folds at its head and is then neither drawn nor read", "[ui][history][chart]") {
    Shown s;
    PanelView& level = s.view("level");
    const int tall = level.height();
    QSignalSpy changed(&s.stack, &ChartStack::panelsChanged);
    QTest::mouseClick(&level, Qt::LeftButton, {}, QPoint(level.width() / 2, 6));
    CHECK(changed.size() == 1);
    CHECK_FALSE(s.stack.isOpen("level"));
    QTest::qWait(1);
    CHECK(level.height() < tall / 2);
    CHECK_FALSE(s.stack.cursorWords().contains("Volume"));
    s.stack.setData(smallData()); // the book changed
    CHECK_FALSE(s.stack.isOpen("level"));
    s.stack.setOpen("level", true);
    CHECK(s.stack.cursorWords().contains("Volume"));
}

TEST_CASE("cursor and part of the time stay while the subject does", "[ui][history][chart]") {
    Shown s;
    s.stack.setSpan({day(2023, 4, 1), day(2023, 9, 1)});
    s.key(Qt::Key_Home);
    const TimeSpan before = s.stack.span();
    s.stack.setData(smallData());
    CHECK(s.stack.span() == before);
    CHECK(s.stack.cursorDay() == day(2023, 1, 1));
    ChartData other = smallData();
    other.subject = "Teal";
    s.stack.setData(other);
    CHECK(s.stack.span() == other.whole);
    CHECK(s.stack.cursorDay() == day(2024, 5, 12));
    s.stack.setData({}); // nothing at all
    CHECK(s.stack.cursorWords().isEmpty());
    s.key(Qt::Key_Left);
    s.key(Qt::Key_Plus);
}

TEST_CASE("the stack is one place of the keyboard and says what it is", "[ui][history][chart]") {
    Shown s;
    QAccessibleInterface* stack = QAccessible::queryAccessibleInterface(&s.stack);
    REQUIRE(stack);
    CHECK(stack->text(QAccessible::Name) == "Charts");
    QAccessibleInterface* panel = QAccessible::queryAccessibleInterface(&s.view("acidity"));
    CHECK(panel->text(QAccessible::Name) == "Acidity");
    CHECK(panel->text(QAccessible::Description).contains("tasted 2 times"));
    for (const QWidget* inside : s.stack.findChildren<QWidget*>())
        CHECK_FALSE((inside->focusPolicy() & Qt::TabFocus));
    QTest::mouseClick(&s.view("acidity"), Qt::LeftButton, {}, QPoint(200, 60));
    CHECK(s.stack.hasFocus());
}

TEST_CASE("colours follow the palette and marks stay visible on it", "[ui][history][chart]") {
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        install(*qApp, look);
        Shown s;
        const QImage picture = s.view("acidity").grab().toImage();
        const PlotFrame frame = s.view("acidity").frame();
        const double ratio = picture.devicePixelRatio();
        const auto pixel = [&](QPointF at) { return picture.pixelColor((at * ratio).toPoint()); };
        const QColor background = pixel(frame.area.bottomLeft() + QPointF(4, -4));
        const QColor tasted = pixel({frame.x(day(2023, 5, 1)), frame.y(5.2)});
        CHECK(contrast(background, qApp->palette().color(QPalette::Base)) < 1.05);
        CHECK(contrast(tasted, background) >= 3);
    }
    install(*qApp, Appearance::light);
}

TEST_CASE("pictures hold what is open, light, at any scale", "[ui][history][chart]") {
    install(*qApp, Appearance::dark);
    Shown s;
    const QImage once = s.stack.picture(1), twice = s.stack.picture(2);
    CHECK(std::abs(twice.width() - 2 * once.width()) <= 1);
    CHECK(std::abs(twice.height() - 2 * once.height()) <= 1);
    CHECK(contrast(once.pixelColor(1, 1), Qt::white) < 1.3);
    s.stack.setOpen("level", false);
    CHECK(s.stack.picture(1).height() < once.height());
    const QByteArray svg = s.stack.svg();
    QSvgRenderer drawn(svg);
    CHECK(drawn.isValid());
    CHECK(svg.contains("Acidity"));
    CHECK_FALSE(svg.contains("Volume"));
    CHECK(svg.count("<path") + svg.count("<polyline") > 10);
    install(*qApp, Appearance::light);
}

TEST_CASE("Up and Down move through panels that do not fit", "[ui][history][chart]") {
    Shown s;
    s.stack.resize(900, 220);
    QTest::qWait(1);
    const auto* bar = s.stack.findChild<QScrollArea*>()->verticalScrollBar();
    REQUIRE(bar->maximum() > 0);
    s.key(Qt::Key_Down);
    CHECK(bar->value() > 0);
    s.key(Qt::Key_Up);
    CHECK(bar->value() == 0);
    s.key(Qt::Key_PageDown);
    CHECK(bar->value() > 0);
}

TEST_CASE("dragging takes the time along under the mouse", "[ui][history][chart]") {
    Shown s;
    const auto drag = [](QWidget& on, QPointF from, QPointF to) {
        const auto send = [&](QEvent::Type type, QPointF at, Qt::MouseButton button, Qt::MouseButtons held) {
            QMouseEvent event(type, at, on.mapToGlobal(at), button, held, Qt::NoModifier);
            QCoreApplication::sendEvent(&on, &event);
        };
        send(QEvent::MouseButtonPress, from, Qt::LeftButton, Qt::LeftButton);
        send(QEvent::MouseMove, (from + to) / 2, Qt::NoButton, Qt::LeftButton);
        send(QEvent::MouseMove, to, Qt::NoButton, Qt::LeftButton);
        send(QEvent::MouseButtonRelease, to, Qt::LeftButton, Qt::NoButton);
    };
    PanelView& view = s.view("acidity");
    const TimeSpan whole = s.stack.chartData().whole;
    const PlotFrame all = view.frame();
    drag(view, all.area.center(), all.area.center() + QPointF(100, 0));
    CHECK(s.stack.span() == whole); // there is nothing beyond it
    s.stack.setSpan({day(2024, 1, 1), day(2024, 7, 1)});
    s.stack.moveCursor(day(2024, 5, 12));
    const PlotFrame frame = view.frame();
    const auto at = [&](Day on) { return QPointF(frame.x(on), frame.area.center().y()); };
    QSignalSpy spans(&s.stack, &ChartStack::spanChanged);
    drag(view, at(day(2024, 3, 1)), at(day(2024, 4, 1)));
    CHECK(spans.size() >= 1);
    CHECK(s.stack.span().days() == daysBetween(day(2024, 1, 1), day(2024, 7, 1)));
    CHECK(std::abs(daysBetween(day(2023, 12, 1), s.stack.span().from)) <= 1); // March lies where April lay
    CHECK(s.stack.cursorDay() == day(2024, 5, 12));                           // it was not pointed at
    CHECK(std::abs(view.frame().x(day(2024, 3, 1)) - frame.x(day(2024, 4, 1))) <= frame.area.width() / 90);
    moveMouse(view, at(day(2024, 2, 1))); // the button is up: the mouse points again
    CHECK(s.stack.span().days() == daysBetween(day(2024, 1, 1), day(2024, 7, 1)));
    CHECK(s.stack.cursorDay() < day(2024, 2, 1));
    drag(view, at(day(2024, 1, 2)), at(day(2024, 6, 30)));
    drag(view, at(day(2024, 1, 2)), at(day(2024, 6, 30)));
    drag(view, at(day(2024, 1, 2)), at(day(2024, 6, 30)));
    CHECK(s.stack.span().from == whole.from); // not beyond what there is
    CHECK(s.stack.cursorDay() <= s.stack.span().to);
}

TEST_CASE("the timeline of dates is dragged as well, a fold and the right button drag nothing",
          "[ui][history][chart]") {
    Shown s;
    s.stack.setSpan({day(2024, 1, 1), day(2024, 7, 1)});
    auto* timeline = s.stack.findChild<EventTimeline*>();
    REQUIRE(timeline);
    const TimeSpan before = s.stack.span();
    QTest::mousePress(timeline, Qt::LeftButton, Qt::NoModifier, QPoint(300, 8));
    CHECK(timeline->cursor().shape() == Qt::ClosedHandCursor);
    QTest::mouseMove(timeline, QPoint(200, 8));
    QTest::mouseRelease(timeline, Qt::LeftButton, Qt::NoModifier, QPoint(200, 8));
    CHECK(timeline->cursor().shape() == Qt::ArrowCursor);
    CHECK(s.stack.span().from > before.from);
    const TimeSpan dragged = s.stack.span();
    PanelView& view = s.view("acidity");
    QTest::mousePress(&view, Qt::RightButton, Qt::NoModifier, view.frame().area.center().toPoint());
    QTest::mouseRelease(&view, Qt::RightButton, Qt::NoModifier, view.frame().area.center().toPoint());
    QTest::mouseClick(&view, Qt::LeftButton, Qt::NoModifier, QPoint(20, 4)); // its head
    CHECK_FALSE(view.isOpen());
    CHECK(s.stack.span() == dragged);
}
