// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/support.h"

#include "ui/widgets/cycle_timeline.h"

#include <QVBoxLayout>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::vessel;
using namespace staveline::ui;
using staveline::testing::day;

namespace {

const Schedule dates{day(2026, 2, 3),   day(2026, 2, 19), day(2026, 3, 5),  day(2026, 10, 1),
                     day(2026, 10, 31), day(2026, 2, 3),  day(2026, 2, 19), day(2026, 3, 5)};

LedgerState refilled() {
    LedgerState now;
    now.lastRefill = day(2025, 7, 8);
    now.opened = day(2023, 2, 1);
    return now;
}

struct ShownCycle {
    ShownCycle() {
        timeline.resize(900, 90);
        timeline.setMilestones(milestonesOf(dates, refilled()), day(2026, 3, 2), MilestoneKind::draw);
        timeline.show();
        REQUIRE(QTest::qWaitForWindowActive(&timeline));
    }
    CycleTimeline timeline;
};

} // namespace

TEST_CASE("the timeline runs from the last refill to the draw after next, in order", "[ui][timeline]") {
    const auto milestones = milestonesOf(dates, refilled());
    REQUIRE(milestones.size() == 6);
    CHECK(milestones.front() == Milestone{MilestoneKind::filled, day(2025, 7, 8), {}});
    CHECK(milestones.back() == Milestone{MilestoneKind::nextDraw, day(2026, 10, 31), {}});
    for (std::size_t i = 1; i < milestones.size(); ++i)
        CHECK(milestones[i - 1].on <= milestones[i].on);
    LedgerState opened;
    opened.opened = day(2025, 1, 1);
    CHECK(milestonesOf(dates, opened).front() == Milestone{MilestoneKind::takenOver, day(2025, 1, 1), {}});
    LedgerState again = refilled();
    again.cycle = 2;
    CHECK(milestonesOf(dates, again).front().kind == MilestoneKind::refilled);
    CHECK(milestonesOf(dates, {}).size() == 5);
}

TEST_CASE("an empty vessel's timeline runs from its brew to its first draw", "[ui][timeline]") {
    const auto milestones = milestonesOf(dates, {}, true);
    REQUIRE(milestones.size() == 4);
    CHECK(wordOf(milestones[0].kind) == "brew");
    CHECK(wordOf(milestones[1].kind) == "fill");
    CHECK(wordOf(milestones[2].kind) == "first tasting");
    CHECK(wordOf(milestones[3].kind) == "first draw");
}

TEST_CASE("places follow time but keep their distance and stay inside", "[ui][timeline]") {
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

TEST_CASE("where one row has no room every milestone is shown in more", "[ui][timeline]") {
    QWidget narrow;
    auto* timeline = new CycleTimeline(&narrow);
    timeline->setMilestones(milestonesOf(dates, refilled()), day(2026, 3, 2), MilestoneKind::draw);
    auto* column = new QVBoxLayout(&narrow);
    column->addWidget(timeline);
    column->addWidget(new QWidget(&narrow), 1);
    narrow.resize(2 * timeline->minimumSizeHint().width(), 500);
    narrow.show();
    REQUIRE(QTest::qWaitForWindowActive(&narrow));
    REQUIRE(timeline->heightForWidth(timeline->width()) > timeline->sizeHint().height());
    for (const MilestoneButton* each : timeline->buttons()) {
        CAPTURE(each->text().toStdString());
        CHECK(timeline->rect().contains(each->geometry()));
    }
}

TEST_CASE("labels on the timeline do not overlap", "[ui][timeline]") {
    ShownCycle s;
    const auto& buttons = s.timeline.buttons();
    for (std::size_t i = 1; i < buttons.size(); ++i)
        CHECK(buttons[i - 1]->geometry().right() <= buttons[i]->geometry().left() + 1);
    CHECK(buttons.front()->geometry().left() >= 0);
    CHECK(buttons.back()->geometry().right() <= s.timeline.width());
}

TEST_CASE("the mark of today stands between its neighbours", "[ui][timeline]") {
    ShownCycle s;
    const auto& b = s.timeline.buttons(); // start, taste, brew, draw, next taste, next draw
    const auto centre = [](const MilestoneButton* k) { return k->geometry().left() + k->width() / 2.0; };
    CHECK(s.timeline.todayAt().x() > centre(b[2]));
    CHECK(s.timeline.todayAt().x() < centre(b[3]));
    s.timeline.setMilestones(milestonesOf(dates, refilled()), day(2030, 1, 1), std::nullopt); // long overdue
    CHECK(s.timeline.todayAt().x() <= s.timeline.width());
    s.timeline.setMilestones({}, day(2026, 3, 2), std::nullopt);
    CHECK(s.timeline.todayAt().x() == 0);
}

TEST_CASE("milestones are reached and opened by keyboard and named with their day", "[ui][timeline][a11y]") {
    ShownCycle s;
    QSignalSpy opened(&s.timeline, &CycleTimeline::opened);
    auto* taste = s.timeline.buttons()[1];
    taste->setFocus();
    CHECK(testing::accessibleName(*taste) == QStringLiteral("taste, Tue 3 Feb 2026, 27 days ago"));
    QTest::keyClick(taste, Qt::Key_Right);
    CHECK(s.timeline.focusWidget() == s.timeline.buttons()[2]);
    QTest::keyClick(s.timeline.focusWidget(), Qt::Key_Space);
    REQUIRE(opened.count() == 1);
    CHECK(opened.at(0).at(0).value<MilestoneKind>() == MilestoneKind::brew);
    CHECK_FALSE(s.timeline.buttons()[0]->isEnabled()); // the start is a fact, nothing to open
}

TEST_CASE("what is overdue says since when", "[ui][timeline]") {
    Schedule late = dates;
    late.draw = day(2026, 3, 2); // planned for today
    late.drawDue = day(2026, 1, 1);
    CycleTimeline timeline;
    timeline.setMilestones(milestonesOf(late, refilled()), day(2026, 3, 2), MilestoneKind::draw);
    for (MilestoneButton* milestone : timeline.buttons())
        CHECK(testing::accessibleName(*milestone).contains("overdue 60 days") ==
              (milestone->milestone().kind == MilestoneKind::draw));
}
