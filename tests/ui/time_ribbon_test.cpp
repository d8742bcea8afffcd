// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/support.h"

#include "ui/widgets/time_ribbon.h"

using namespace staveline;
using namespace staveline::ui;
using staveline::testing::day;

namespace {

const Schedule dates{day(2026, 2, 3),   day(2026, 2, 19), day(2026, 3, 5), day(2026, 10, 1),
                     day(2026, 10, 31), day(2026, 2, 3),  day(2026, 3, 5)};

LedgerState refilled() {
    LedgerState now;
    now.lastRefill = day(2025, 7, 8);
    now.opened = day(2023, 2, 1);
    return now;
}

struct Shown {
    Shown() {
        ribbon.resize(900, 90);
        ribbon.setKnots(knotsOf(dates, refilled()), day(2026, 3, 2), KnotKind::draw);
        ribbon.show();
        REQUIRE(QTest::qWaitForWindowActive(&ribbon));
    }
    TimeRibbon ribbon;
};

} // namespace

TEST_CASE("the ribbon runs from the last refill to the draw after next, in order", "[ui][ribbon]") {
    const auto knots = knotsOf(dates, refilled());
    REQUIRE(knots.size() == 6);
    CHECK(knots.front() == Knot{KnotKind::start, day(2025, 7, 8), {}});
    CHECK(knots.back() == Knot{KnotKind::nextDraw, day(2026, 10, 31), {}});
    for (std::size_t i = 1; i < knots.size(); ++i)
        CHECK(knots[i - 1].on <= knots[i].on);
    LedgerState opened;
    opened.opened = day(2025, 1, 1);
    CHECK(knotsOf(dates, opened).front().on == day(2025, 1, 1));
    CHECK(knotsOf(dates, {}).size() == 5);
}

TEST_CASE("places follow time but keep their distance and stay inside", "[ui][ribbon]") {
    CHECK(spread({0, 50, 100}, 10, 100) == std::vector<double>{0, 50, 100});
    const auto crowded = spread({0, 1, 2, 100}, 20, 100);
    for (std::size_t i = 1; i < crowded.size(); ++i)
        CHECK(crowded[i] - crowded[i - 1] >= 20 - 1e-9);
    const auto late = spread({0, 98, 99, 100}, 20, 100);
    CHECK(late.back() == Approx(100));
    CHECK(late[1] == Approx(60));
    const auto full = spread({0, 0, 0}, 80, 100); // no room for the gap: even steps
    CHECK(full == std::vector<double>{0, 50, 100});
    CHECK(spread({}, 10, 100).empty());
    CHECK(spread({5}, 10, 100) == std::vector<double>{5});
}

TEST_CASE("labels on the ribbon do not overlap", "[ui][ribbon]") {
    Shown s;
    const auto& buttons = s.ribbon.buttons();
    for (std::size_t i = 1; i < buttons.size(); ++i)
        CHECK(buttons[i - 1]->geometry().right() <= buttons[i]->geometry().left() + 1);
    CHECK(buttons.front()->geometry().left() >= 0);
    CHECK(buttons.back()->geometry().right() <= s.ribbon.width());
}

TEST_CASE("the mark of today stands between its neighbours", "[ui][ribbon]") {
    Shown s;
    const auto& b = s.ribbon.buttons(); // start, taste, brew, draw, next taste, next draw
    const auto centre = [](const KnotButton* k) { return k->geometry().left() + k->width() / 2.0; };
    CHECK(s.ribbon.todayAt() > centre(b[2]));
    CHECK(s.ribbon.todayAt() < centre(b[3]));
    s.ribbon.setKnots(knotsOf(dates, refilled()), day(2030, 1, 1), std::nullopt); // long overdue
    CHECK(s.ribbon.todayAt() <= s.ribbon.width());
    s.ribbon.setKnots({}, day(2026, 3, 2), std::nullopt);
    CHECK(s.ribbon.todayAt() == 0);
}

TEST_CASE("knots are reached and opened by keyboard and named with their day", "[ui][ribbon][a11y]") {
    Shown s;
    QSignalSpy opened(&s.ribbon, &TimeRibbon::opened);
    auto* taste = s.ribbon.buttons()[1];
    taste->setFocus();
    CHECK(testing::accessibleName(*taste) == QStringLiteral("taste, Tue 3 Feb 2026, 27 days ago"));
    QTest::keyClick(taste, Qt::Key_Right);
    CHECK(s.ribbon.focusWidget() == s.ribbon.buttons()[2]);
    QTest::keyClick(s.ribbon.focusWidget(), Qt::Key_Space);
    REQUIRE(opened.count() == 1);
    CHECK(opened.at(0).at(0).value<KnotKind>() == KnotKind::brew);
    CHECK_FALSE(s.ribbon.buttons()[0]->isEnabled()); // the start is a fact, nothing to open
}

TEST_CASE("what is overdue says since when", "[ui][ribbon]") {
    Schedule late = dates;
    late.draw = day(2026, 3, 2); // planned for today
    late.drawDue = day(2026, 1, 1);
    TimeRibbon ribbon;
    ribbon.setKnots(knotsOf(late, refilled()), day(2026, 3, 2), KnotKind::draw);
    for (KnotButton* knot : ribbon.buttons())
        CHECK(testing::accessibleName(*knot).contains("was due 2 months ago") == (knot->knot().kind == KnotKind::draw));
}
