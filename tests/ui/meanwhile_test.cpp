// SPDX-License-Identifier: GPL-3.0-or-later
// What happens beside the brewer's typing: another vessel, other units, another day, another program.
#include "ui/bad_input_support.h"

#include "ui/cellar/rail.h"
#include "ui/cellar/vessel_page.h"
#include "ui/present/cellar_model.h"
#include "ui/widgets/fact_form.h"
#include "ui/window/book_tasks.h"

#include <QPlainTextEdit>
#include <QSignalSpy>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

DisplayUnits american() {
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    return units;
}

QString railWords(const WindowInScratch& w) {
    QStringList words;
    const QAbstractItemModel& model = *part<Rail>(*w.window->cellar()).model();
    for (int row = 0; row < model.rowCount(); ++row)
        words << model.index(row, 0).data(Qt::AccessibleTextRole).toString();
    return words.join('\n');
}

} // namespace

TEST_CASE("leaving a vessel with a key stores what is half typed and shows the next one", "[ui][vessels]") {
    const SampleWindow w;
    const auto next = [&](const VesselName& from) {
        w.key(Qt::Key_PageDown, Qt::ControlModifier);
        CHECK(w.cellar().vessel() != from);
        CHECK(w.cellar().brew().vessel() == w.cellar().vessel());
        CHECK(w.cellar().taste().vessel() == w.cellar().vessel());
        w.key(Qt::Key_PageUp, Qt::ControlModifier);
        CHECK(w.cellar().vessel() == from);
    };
    w.put(w.recipeField("/original_gravity_p"), "1.055");
    next("Plover");
    CHECK(w.desk().setting("Plover")->recipe.originalGravity.p == Approx(13.57).margin(.05));
    w.put(w.targetField(), "5.5");
    next("Plover");
    CHECK((*w.desk().target("Plover"))->fact.target.windows[Dimension::acidity].wanted == 5.5);
    w.put(w.scoreCell(), "6");
    next("Plover");
    CHECK(w.desk().sittings("Plover")->front().fact.sitting.scores.front().attribute == "TA1");
}

TEST_CASE("notes that wait for a score stay with their vessels", "[ui][vessels][taste]") {
    const SampleWindow w;
    TastePage& taste = w.cellar().taste();
    const auto noteOn = [&](const VesselName& vessel, const char* words) {
        w.cellar().showVessel(vessel);
        w.go(PageId::taste);
        taste.newSitting();
        taste.note().setFocus();
        QTest::keyClicks(&taste.note(), QString::fromLatin1(words));
    };
    noteOn("Knot", "cloudy glass");
    noteOn("Plover", "bright glass");
    w.cellar().showVessel("Knot");
    CHECK(taste.note().toPlainText() == "cloudy glass");
    w.put(taste.sheet().cell("TA1", Glass::cold), "5", Qt::Key_Tab);
    const auto knot = w.desk().sittings("Knot")->front().fact;
    CHECK(knot.vessel == "Knot");
    CHECK(knot.sitting.note == "cloudy glass");
    w.cellar().showVessel("Plover");
    CHECK(taste.note().toPlainText() == "bright glass");
    w.put(taste.sheet().cell("TA1", Glass::cold), "4", Qt::Key_Tab);
    CHECK(w.desk().sittings("Plover")->front().fact.sitting.note == "bright glass");
    CHECK(w.desk().sittings("Plover")->front().fact.sitting.scores.size() == 1);
}

TEST_CASE("the first vessel, half described, stays in front whatever else changes", "[ui][vessels]") {
    WindowInScratch w(false);
    REQUIRE(w.window->newBook(w.scratch / "first.cellar"));
    CHECK_FALSE(w.window->cellar()->atVessel());
    auto* name = w.window->findChild<VesselPage*>()->fields().line("name");
    REQUIRE(name);
    name->setFocus();
    QTest::keyClicks(name, "Whimbrel");
    w.window->setUnits(american());
    CHECK(name->isVisible());
    CHECK(name->text() == "Whimbrel");
    {
        auto other = *Desk::open(w.scratch / "first.cellar", [&] { return w.today; });
        recordAll(*other, R"({"kind": "equipment", "on": "2026-01-10", "name": "kit"})");
    }
    w.window->session()->poll();
    CHECK(name->isVisible());
    CHECK(name->text() == "Whimbrel");
}

TEST_CASE("an entry the desk refuses keeps its litres when the units change", "[ui][units]") {
    const SampleWindow w;
    QLineEdit* field = w.entryField();
    w.put(field, "300"); // more than the cask holds
    NumberField& number = *w.cellar().drawRefill().form().fields().number("volume_l");
    REQUIRE(number.fault());
    w.window->setUnits(american());
    CHECK(*number.stored() == 300);
    CHECK(number.fault());
    CHECK(field->text().startsWith("79.2"));
    CHECK(number.words().contains("gal"));
    w.window->setUnits({});
    CHECK(field->text() == "300");
    CHECK(*number.stored() == 300);
}

TEST_CASE("after midnight the cellar says what is due today", "[ui][day]") {
    SampleWindow w;
    w.go(PageId::adjust);
    w.waitForAdvice();
    const QString before = railWords(w);
    w.window->session()->poll();
    CHECK(railWords(w) == before);
    w.today += std::chrono::days{1};
    const QSignalSpy changed(w.window->session(), &Session::changed);
    w.window->session()->poll();
    CHECK(changed.count() == 1);
    CHECK(railWords(w) != before);
    w.waitForAdvice(); // worked out anew: what is adopted carries today's date
    w.adjust().adopt();
    CHECK(w.desk().lastChoice("Plover")->on == w.today);
    w.window->session()->poll();
    CHECK(changed.count() == 2); // the adopted plan, nothing more
}

TEST_CASE("copying and checking leave the window free and answer in the status line", "[ui][book]") {
    const SampleWindow w;
    BookTasks tasks([&] { return w.today; });
    QSignalSpy copied(&tasks, &BookTasks::copied), checked(&tasks, &BookTasks::checked);
    QSignalSpy failed(&tasks, &BookTasks::failed);
    tasks.copy(w.book, w.scratch / "copy.cellar");
    CHECK(copied.isEmpty()); // on its way
    REQUIRE(copied.wait(20000));
    tasks.check(w.scratch / "copy.cellar");
    REQUIRE(checked.wait(20000));
    CHECK(checked.front().front().value<book::CheckReport>().sound());
    tasks.copy(w.book, w.scratch / "no such folder" / "copy.cellar");
    REQUIRE(failed.wait(20000));
    CHECK_FALSE(render(failed.front().front().value<Fault>().remedy).empty());
    tasks.check(w.scratch / "missing.cellar");
    REQUIRE(failed.wait(20000));
}

TEST_CASE("no task asked while another runs is lost, also when the window closes", "[ui][book]") {
    const SampleWindow w;
    const auto copy = [&](int number) { return w.scratch / ("copy" + std::to_string(number) + ".cellar"); };
    {
        BookTasks tasks([&] { return w.today; });
        QSignalSpy copied(&tasks, &BookTasks::copied), checked(&tasks, &BookTasks::checked);
        tasks.check(w.book);
        for (int i = 0; i < 3; ++i) {
            tasks.copy(w.book, copy(i));
            tasks.check(w.book);
        }
        REQUIRE(QTest::qWaitFor([&] { return copied.size() == 3 && checked.size() == 4; }, 20000));
        tasks.check(w.book);
        tasks.copy(w.book, copy(3));
        tasks.copy(w.book, copy(4));
    }
    for (int i = 0; i < 5; ++i)
        CHECK(std::filesystem::exists(copy(i)));
}

TEST_CASE("a task under way does not outlive its window", "[ui][book]") {
    const SampleWindow w;
    {
        BookTasks tasks([&] { return w.today; });
        tasks.copy(w.book, w.scratch / "copy.cellar");
    }
    QTest::qWait(1);
    CHECK(w.desk().check()->sound());
}

TEST_CASE("a vessel is read for the rail when it is looked at, and says why when it cannot be", "[ui][model]") {
    const SampleWindow w;
    const CellarModel model(*w.window->session());
    REQUIRE(model.rowCount() == 3);
    const VesselSummary* plover = model.at(model.rowOf("Plover"));
    CHECK(plover->opened);
    CHECK(plover == model.at(model.rowOf("Plover"))); // once, until something changes
    w.elsewhere(R"({"kind": "dip", "vessel": "Plover", "on": "2026-03-01", "volume_l": 150})");
    w.window->session()->poll();
    CHECK(model.at(model.rowOf("Plover"))->now.volume.l == Approx(150).margin(1));
}
