// SPDX-License-Identifier: GPL-3.0-or-later
// All vessels at once: what stands in the table, what opens from it, and days that are moved by hand or by mouse.
#include "ui/support.h"

#include "desk/moved_work.h"
#include "ui/cellar/cellar_page.h"
#include "ui/cellar/overview_table.h"
#include "ui/cellar/plan_scout.h"
#include "ui/cellar/rail.h"
#include "ui/cellar/work_date_line.h"
#include "ui/cellar/year_lane.h"
#include "ui/print/printout.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/window/cellar_view.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include <map>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AllVessels : WindowInScratch {
    AllVessels() {
        cellar().showAll();
        settle();
    }
    void settle() const {
        REQUIRE(QTest::qWaitFor([this] { return page().model().isWorkedOut(); }, 30000));
        QCoreApplication::processEvents();
    }
    [[nodiscard]] CellarPage& page() const { return cellar().all(); }
    [[nodiscard]] OverviewTable& table() const { return page().table(); }
    [[nodiscard]] int rowOf(const QString& vessel) const {
        for (int row = 0; row < table().model()->rowCount(); ++row)
            if (shown(row, OverviewModel::name) == vessel)
                return row;
        return -1;
    }
    [[nodiscard]] QString shown(int row, int column) const {
        return table().model()->index(row, column).data().toString();
    }
    void choose(const QString& vessel) const {
        REQUIRE(rowOf(vessel) >= 0);
        table().setCurrentIndex(table().model()->index(rowOf(vessel), OverviewModel::name));
    }
    [[nodiscard]] VesselSummary summary(const char* vessel) const {
        const auto found = desk().vessel(vessel);
        REQUIRE(found);
        return *found;
    }
    [[nodiscard]] QLineEdit& find() const { return *page().findChild<QLineEdit*>("find"); }
};

/// A cellar too large to be seen at once, each vessel due on another day.
void fillLarge(MainWindow& window) {
    std::string facts = "[";
    for (int i = 0; i < 8; ++i) {
        const std::string name = "Cask " + std::to_string(i);
        facts += R"({"kind": "vessel", "name": ")" + name +
                 R"(", "capacity_l": 225}, {"kind": "opening", "vessel": ")" + name + R"(", "on": "2026-01-)" +
                 std::to_string(28 - 2 * i) + R"(", "volume_l": 220},)";
    }
    facts.back() = ']';
    recordAll(*window.session(), facts);
}

} // namespace

TEST_CASE("each vessel has a row: what is due, what it holds, how it stands, how old it is", "[ui][cellarpage]") {
    const AllVessels w;
    REQUIRE(w.table().model()->rowCount() == 3);
    const int heron = w.rowOf("Heron");
    CHECK(w.shown(heron, OverviewModel::due) == qs(render(w.summary("Heron").headline)));
    CHECK(w.shown(heron, OverviewModel::level).contains("of"));
    CHECK_FALSE(w.shown(heron, OverviewModel::acidity).isEmpty());
    CHECK(w.shown(heron, OverviewModel::age) == spanWords(w.summary("Heron").now.meanAge));
    const auto heard = w.table().model()->index(heron, OverviewModel::acidity).data(Qt::AccessibleTextRole).toString();
    CHECK(heard.startsWith("Acidity: "));
}

TEST_CASE("the adviser is asked for each vessel, and what it says stands in its row", "[ui][cellarpage]") {
    const AllVessels w;
    REQUIRE(QTest::qWaitFor([&] { return w.page().model().knowsPlans(); }, 60000));
    const QString asked = w.shown(w.rowOf("Heron"), OverviewModel::plan);
    CHECK(asked == wordsOf(PlanState::tasteFirst)); // nobody tasted in this cycle
    recordAll(*w.window->session(), R"({"kind": "sitting", "vessel": "Heron", "on": "2026-03-02", "scores": [
      {"taster": "Rook", "attribute": "TA1", "cold": 9}, {"taster": "Rook", "attribute": "TA2", "cold": 9},
      {"taster": "Wren", "attribute": "TA1", "cold": 9}, {"taster": "Wren", "attribute": "TA2", "cold": 9}]})");
    w.settle();
    REQUIRE(QTest::qWaitFor([&] { return w.page().model().knowsPlans(); }, 60000));
    const auto advice = w.desk().advise({"Heron", {}, {}, false});
    REQUIRE(advice);
    CHECK(w.shown(w.rowOf("Heron"), OverviewModel::plan) == wordsOf(planState(*advice)));
    CHECK(w.shown(w.rowOf("Heron"), OverviewModel::plan) != asked);
}

TEST_CASE("the most urgent vessel stands first, and a head sorts by its column", "[ui][cellarpage]") {
    const AllVessels w;
    const auto daysOf = [&](int row) { return w.summary(toStd(w.shown(row, OverviewModel::name)).c_str()).due; };
    for (int row = 1; row < 3; ++row) {
        INFO(w.shown(row, OverviewModel::name).toStdString() << ": " << daysOf(row).inDays);
        CHECK((daysOf(row).kind == DueKind::nothing || daysOf(row - 1).inDays <= daysOf(row).inDays));
    }
    w.table().sortByColumn(OverviewModel::name, Qt::DescendingOrder);
    QStringList names;
    for (int row = 0; row < 3; ++row)
        names << w.shown(row, OverviewModel::name);
    QStringList sorted = names;
    std::sort(sorted.begin(), sorted.end(), std::greater<>());
    CHECK(names == sorted);
}

TEST_CASE("words and a choice leave the rows that are looked for", "[ui][cellarpage]") {
    const AllVessels w;
    QTest::keyClicks(&w.find(), "her");
    REQUIRE(w.table().model()->rowCount() == 1);
    CHECK(w.shown(0, OverviewModel::name) == "Heron");
    QStringList words;
    for (const QLabel* label : w.page().findChildren<QLabel*>())
        words << label->text();
    CHECK(words.contains("1 of 3 vessels"));
    w.find().clear();
    CHECK(w.table().model()->rowCount() == 3);
    QTest::keyClicks(&w.find(), "no such vessel");
    CHECK(w.table().model()->rowCount() == 0);
}

TEST_CASE("a row opens the page where its work is done", "[ui][cellarpage]") {
    const AllVessels w;
    w.choose("Heron");
    const DueKind work = w.summary("Heron").due.kind;
    w.table().setFocus();
    QTest::keyClick(&w.table(), Qt::Key_Return);
    CHECK(w.cellar().atVessel());
    CHECK(w.cellar().vessel() == "Heron");
    CHECK(w.cellar().workPage() == (work == DueKind::taste  ? PageId::taste
                                    : work == DueKind::brew ? PageId::brew
                                                            : PageId::drawRefill));
    w.key(Qt::Key_0, Qt::ControlModifier);
    CHECK(w.cellar().atAll());
}

TEST_CASE("a day is typed to put the work off, and undo takes it back", "[ui][cellarpage]") {
    const AllVessels w;
    w.choose("Heron");
    const auto works = movableWork(w.summary("Heron"));
    REQUIRE_FALSE(works.empty());
    auto& line = part<WorkDateLine>(w.page());
    part<ChoiceField>(line).setWord("draw");
    Q_EMIT part<ChoiceField>(line).activated(0);
    const Day later = w.summary("Heron").dates.draw + std::chrono::days{30};
    QLineEdit& day = *part<DateField>(line).edit();
    day.selectAll();
    QTest::keyClicks(&day, qs(isoDay(later)));
    QTest::keyClick(&day, Qt::Key_Return);
    CHECK(w.summary("Heron").dates.draw == later);
    w.action("Undo").trigger();
    CHECK(w.summary("Heron").dates.draw == later - std::chrono::days{30});
}

TEST_CASE("a day that is past is refused beside the field", "[ui][cellarpage][bad]") {
    const AllVessels w;
    w.choose("Heron");
    auto& line = part<WorkDateLine>(w.page());
    part<ChoiceField>(line).setWord("draw");
    Q_EMIT part<ChoiceField>(line).activated(0);
    const Day before = w.summary("Heron").dates.draw;
    QLineEdit& day = *part<DateField>(line).edit();
    day.selectAll();
    QTest::keyClicks(&day, "2020-01-01");
    QTest::keyClick(&day, Qt::Key_Return);
    CHECK(w.summary("Heron").dates.draw == before);
    CHECK(part<DateField>(line).words().contains("is before"));
}

TEST_CASE("a day that is being typed stays while the vessels are read and worked out", "[ui][cellarpage]") {
    const AllVessels w;
    w.choose("Heron");
    auto& line = part<WorkDateLine>(w.page());
    part<ChoiceField>(line).setWord("draw");
    Q_EMIT part<ChoiceField>(line).activated(0);
    QLineEdit& day = *part<DateField>(line).edit();
    day.setFocus();
    day.selectAll();
    QTest::keyClicks(&day, "2026-1");
    recordAll(*w.window->session(), R"({"kind": "reading", "vessel": "Teal", "on": "2026-03-01", "ph": 3.4})");
    CHECK(line.isEnabled());
    w.settle();
    CHECK(day.text() == "2026-1");
    CHECK(day.hasFocus());
    CHECK(part<ChoiceField>(line).word() == "draw");
}

TEST_CASE("a click that shakes moves nothing, and a mark is held where it was taken", "[ui][cellarpage]") {
    const AllVessels w;
    w.page().showYear(true);
    QCoreApplication::processEvents();
    w.choose("Heron");
    const std::string before = w.desk().undoText();
    const Day draw = w.summary("Heron").dates.draw;
    const QRectF lane = w.table().laneOf(w.table().currentIndex());
    const YearScale scale(w.today, lane);
    QWidget& area = *w.table().viewport();
    const QPoint edge(static_cast<int>(scale.x(draw)) + 6, static_cast<int>(lane.center().y()));
    QTest::mousePress(&area, Qt::LeftButton, {}, edge);
    QTest::mouseMove(&area, edge + QPoint(2, 0));
    QTest::mouseRelease(&area, Qt::LeftButton, {}, edge + QPoint(2, 0));
    CHECK(w.desk().undoText() == before);
    const int by = static_cast<int>(scale.x(draw + std::chrono::days{60}) - scale.x(draw));
    QTest::mousePress(&area, Qt::LeftButton, {}, edge);
    QTest::mouseMove(&area, edge + QPoint(by, 0));
    QTest::mouseRelease(&area, Qt::LeftButton, {}, edge + QPoint(by, 0));
    CHECK(std::abs(daysBetween(draw + std::chrono::days{60}, w.summary("Heron").dates.draw)) <= 1);
}

TEST_CASE("what is late by more than the lane shows stands at its left end", "[ui][cellarpage]") {
    const QRectF lane(100, 0, 760, 20);
    const std::vector<YearMark> marks{{DueKind::brew, testToday - std::chrono::days{40}, true, false, true}};
    CHECK(markAt(marks, testToday, lane, lane.left(), 20) == &marks.front());
    CHECK(markAt(marks, testToday, lane, lane.left() + 200, 20) == nullptr);
}

TEST_CASE("a vessel with a fault is due within ten days only when it is", "[ui][cellarpage]") {
    VesselSummary vessel;
    vessel.fault = "ropy";
    vessel.due.kind = DueKind::taste;
    vessel.due.inDays = 90;
    CHECK(moodOf(vessel) == VesselMood::fault);
    CHECK_FALSE(isSoon(vessel));
    vessel.due.inDays = -3;
    CHECK(isSoon(vessel));
    vessel.due.kind = DueKind::nothing;
    CHECK_FALSE(isSoon(vessel));
}

TEST_CASE("a mark of the year is dragged to its new day", "[ui][cellarpage]") {
    const AllVessels w;
    w.page().showYear(true);
    QCoreApplication::processEvents();
    w.choose("Heron");
    const auto marks = marksOf(w.summary("Heron"), w.today);
    const auto draw = std::find_if(marks.begin(), marks.end(),
                                   [](const YearMark& mark) { return mark.movable && mark.kind == DueKind::draw; });
    REQUIRE(draw != marks.end());
    const QRectF lane = w.table().laneOf(w.table().currentIndex());
    const YearScale scale(w.today, lane);
    const Day to = draw->on + std::chrono::days{60};
    QWidget& area = *w.table().viewport();
    const auto at = [&](Day day) { return QPointF(scale.x(day), lane.center().y()).toPoint(); };
    QTest::mousePress(&area, Qt::LeftButton, {}, at(draw->on));
    QTest::mouseMove(&area, at(to));
    QTest::mouseRelease(&area, Qt::LeftButton, {}, at(to));
    CHECK(std::abs(daysBetween(w.summary("Heron").dates.draw, to)) <= 1); // a pixel is more than half a day
    CHECK(w.summary("Heron").works.draw.set);
    CHECK(w.desk().undoText() == "day of the draw of Heron");
}

TEST_CASE("a drag that is left by Esc moves nothing", "[ui][cellarpage]") {
    const AllVessels w;
    w.page().showYear(true);
    QCoreApplication::processEvents();
    w.choose("Heron");
    const std::string before = w.desk().undoText();
    const auto marks = marksOf(w.summary("Heron"), w.today);
    const auto mark = std::find_if(marks.begin(), marks.end(), [](const YearMark& each) { return each.movable; });
    REQUIRE(mark != marks.end());
    const QRectF lane = w.table().laneOf(w.table().currentIndex());
    const YearScale scale(w.today, lane);
    QWidget& area = *w.table().viewport();
    const QPoint from(static_cast<int>(scale.x(mark->on)), static_cast<int>(lane.center().y()));
    QTest::mousePress(&area, Qt::LeftButton, {}, from);
    QTest::mouseMove(&area, from + QPoint(80, 0));
    CHECK(w.table().moved(w.table().currentIndex()));
    QTest::keyClick(&w.table(), Qt::Key_Escape);
    CHECK_FALSE(w.table().moved(w.table().currentIndex()));
    QTest::mouseRelease(&area, Qt::LeftButton, {}, from + QPoint(80, 0));
    CHECK(w.desk().undoText() == before);
}

TEST_CASE("days stand along the lane, and a place is its day again", "[ui][cellarpage]") {
    const YearScale scale(testToday, QRectF(100, 0, 760, 20));
    CHECK(scale.x(scale.from()) == Approx(100));
    CHECK(scale.x(scale.to()) == Approx(860));
    for (int days : {-14, 0, 1, 100, 365}) {
        const Day on = testToday + std::chrono::days{days};
        CHECK(scale.day(scale.x(on)) == on);
    }
    CHECK(scale.day(-1000) == scale.from());
    CHECK(scale.day(5000) == scale.to());
    CHECK(scale.months().size() >= 12);
    for (const Day first : scale.months())
        CHECK(std::chrono::year_month_day{first}.day() == std::chrono::day{1});
}

TEST_CASE("a large cellar has a compact rail that stands by what is due", "[ui][cellarpage]") {
    const AllVessels w;
    const int before = part<Rail>(w.cellar()).sizeHintForRow(0);
    fillLarge(*w.window);
    w.settle();
    Rail& rail = part<Rail>(w.cellar());
    REQUIRE(rail.model()->rowCount() == 11);
    CHECK(rail.sizeHintForRow(0) < before / 2);
    std::vector<int> days;
    for (int row = 0; row < rail.model()->rowCount(); ++row) {
        const VesselSummary vessel = w.summary(toStd(rail.model()->index(row, 0).data().toString()).c_str());
        days.push_back(vessel.due.kind == DueKind::nothing ? 100000 : vessel.due.inDays);
    }
    CHECK(std::is_sorted(days.begin(), days.end()));
}

TEST_CASE("brews that lie close are offered as one day, and made so in one act", "[ui][cellarpage]") {
    const AllVessels w;
    fillLarge(*w.window);
    w.settle();
    const auto days = brewDays(w.page().model().allKnown());
    REQUIRE_FALSE(days.empty());
    QPushButton* together = nullptr;
    for (QPushButton* button : w.page().findChildren<QPushButton*>())
        if (!together && button->text() == "Brew for all on that day")
            together = button;
    REQUIRE(together);
    std::map<VesselName, Day> before;
    for (const BrewShare& share : days.front().shares)
        before[share.vessel] = w.summary(share.vessel.c_str()).dates.brew;
    together->click();
    for (const BrewShare& share : days.front().shares)
        CHECK(w.summary(share.vessel.c_str()).dates.brew == days.front().on);
    w.action("Undo").trigger();
    for (const auto& [vessel, day] : before)
        CHECK(w.summary(vessel.c_str()).dates.brew == day);
}

TEST_CASE("all vessels are the first page of a book that has several, and the list prints", "[ui][cellarpage]") {
    WindowInScratch w;
    w.window->start(w.book);
    CHECK(w.cellar().atAll());
    REQUIRE(QTest::qWaitFor([&] { return w.cellar().all().model().isWorkedOut(); }, 30000));
    const PaperInFront paper = w.cellar().paperInFront();
    REQUIRE(paper.printout);
    CHECK(paper.printout->name() == "list of vessels");
    CHECK(paper.printout->offers(sheet::PaperFormat::markdown));
}

TEST_CASE("a book for reading only offers no move", "[ui][cellarpage][readonly]") {
    AllVessels w;
    w.window->closeBook();
    Session session(*Desk::open(
        w.book, [&w] { return w.today; }, book::OpenMode::readOnly));
    CellarModel cellar(session);
    CellarPage page(cellar, session, w.prompt);
    page.show();
    REQUIRE(QTest::qWaitFor([&] { return page.model().isWorkedOut(); }, 30000));
    page.showVessel("Heron");
    REQUIRE(page.table().inHand());
    CHECK_FALSE(part<WorkDateLine>(page).isEnabled());
}
