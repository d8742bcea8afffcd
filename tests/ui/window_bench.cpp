// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the window: test_ui "[bench]" in a release build prints one JSON object a line. STAVELINE_VESSELS sets the
// size of the large book (vessels x 20 years x weekly entries).
#include "ui/support.h"

#include "support/bench.h"
#include "ui/cellar/cellar_page.h"
#include "ui/cellar/overview_table.h"
#include "ui/draw_refill/page.h"
#include "ui/window/cellar_view.h"

#include <QLineEdit>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

constexpr int weeks = 52 * 20;
const Day firstDay = testToday - std::chrono::days{7 * weeks};

std::vector<Fact> twentyYears(const std::string& vessel) {
    std::vector<Fact> facts{OpeningFact{vessel, firstDay, Litres{220}, {}, {}, {}, {}, {}, {}, ""}};
    for (int week = 1; week < weeks; ++week) {
        const Day on = firstDay + std::chrono::days{7 * week};
        if (week % 34 == 0) {
            facts.emplace_back(DrawOffFact{vessel, on, Litres{75}, "", {}, ""});
            facts.emplace_back(RefillFact{vessel, on, Litres{78}, "", "", Days{14}, ""});
        } else {
            facts.emplace_back(ReadingFact{vessel, on, {{}, Ph{3.3}, {}, {}, {}}, ""});
        }
    }
    return facts;
}

double millisecondsOf(const std::function<void()>& work) {
    QElapsedTimer timer;
    timer.start();
    work();
    return static_cast<double>(timer.nsecsElapsed()) / 1e6;
}

/// From nothing to painted.
double firstPaint(const std::filesystem::path& book, QSettings& settings) {
    ScriptedPrompt prompt;
    std::unique_ptr<MainWindow> window;
    return millisecondsOf([&] {
        window = std::make_unique<MainWindow>([] { return testToday; }, prompt, settings);
        REQUIRE(window->openBook(book));
        window->show();
        static_cast<void>(window->grab());
    });
}

/// The page of all vessels: from asked for to painted, until all is known, and each sort and filter.
void reportAllVessels(MainWindow& window) {
    CellarPage& page = window.cellar()->all();
    bench::print("all_vessels_first_paint", millisecondsOf([&] {
                     window.cellar()->showAll();
                     static_cast<void>(window.grab());
                 }),
                 "ms", 1);
    bench::print("all_vessels_worked_out",
                 millisecondsOf([&] { REQUIRE(QTest::qWaitFor([&] { return page.model().isWorkedOut(); }, 120000)); }),
                 "ms", 1);
    std::vector<double> sorts, filters;
    QLineEdit& find = *page.findChild<QLineEdit*>("find");
    for (int i = 0; i < 20; ++i) {
        sorts.push_back(millisecondsOf([&] {
            page.table().sortByColumn(i % OverviewModel::columns,
                                      i % 2 == 0 ? Qt::AscendingOrder : Qt::DescendingOrder);
        }));
        filters.push_back(millisecondsOf([&] { find.setText(i % 2 == 0 ? QStringLiteral("1") : QString()); }));
    }
    std::sort(sorts.begin(), sorts.end());
    std::sort(filters.begin(), filters.end());
    bench::print("all_vessels_sort", bench::quantile(sorts, .5), "ms", sorts.size());
    bench::print("all_vessels_filter", bench::quantile(filters, .5), "ms", filters.size());
}

void reportMedian(const char* name, std::vector<double> times) {
    std::sort(times.begin(), times.end());
    bench::print(name, bench::quantile(times, .5), "ms", times.size());
}

} // namespace

TEST_CASE("figures of the window", "[.][bench]") {
    Scratch scratch;
    QSettings settings(qs((scratch / "w.ini").string()), QSettings::IniFormat);
    const auto small = scratch / "small.cellar", large = scratch / "large.cellar";
    const int vessels = std::max(1, qEnvironmentVariableIntValue("STAVELINE_VESSELS"));
    fillCellar(**Desk::create(small, [] { return testToday; }));
    {
        auto desk = *Desk::create(large, [] { return testToday; });
        for (int v = 0; v < vessels; ++v) {
            VesselFact vessel;
            vessel.name = "Vessel " + std::to_string(v);
            REQUIRE(desk->record(Fact{vessel}));
            REQUIRE(desk->record(twentyYears(vessel.name)));
        }
    }
    std::vector<double> smallStart, largeStart, typed, workPages;
    for (int i = 0; i < 7; ++i) {
        smallStart.push_back(firstPaint(small, settings));
        largeStart.push_back(firstPaint(large, settings));
    }
    reportMedian("window_first_paint", smallStart);
    reportMedian("window_first_paint_20_years", largeStart);

    ScriptedPrompt prompt;
    MainWindow window([] { return testToday; }, prompt, settings);
    REQUIRE(window.openBook(large));
    window.resize(1280, 800);
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    window.cellar()->drawRefill().begin(EntryKind::drawOff);
    for (int i = 0; i < 50; ++i)
        typed.push_back(millisecondsOf([&] {
            QTest::keyClick(window.focusWidget(), i % 2 == 0 ? Qt::Key_4 : Qt::Key_Backspace);
            static_cast<void>(window.grab());
        }));
    reportMedian("entry_key_to_repaint_20_years", typed);
    for (int i = 0; i < 20; ++i)
        workPages.push_back(millisecondsOf([&] {
            window.cellar()->showPage(static_cast<PageId>(i % 6));
            static_cast<void>(window.grab());
        }));
    reportMedian("page_switch", workPages);
    reportAllVessels(window);
}

/// The round of a large cellar: from asked for to painted.
TEST_CASE("figures of the round", "[.][bench]") {
    Scratch scratch;
    QSettings settings(qs((scratch / "w.ini").string()), QSettings::IniFormat);
    const auto book = scratch / "many.cellar";
    {
        auto desk = *Desk::create(book, [] { return testToday; });
        std::vector<Fact> facts;
        for (int v = 0; v < 200; ++v) {
            VesselFact vessel;
            vessel.name = "Vessel " + std::to_string(v);
            facts.emplace_back(vessel);
            facts.emplace_back(OpeningFact{vessel.name, firstDay, Litres{220}, {}, {}, {}, {}, {}, {}, ""});
        }
        REQUIRE(desk->record(facts));
    }
    ScriptedPrompt prompt;
    MainWindow window([] { return testToday; }, prompt, settings);
    REQUIRE(window.openBook(book));
    window.resize(1280, 800);
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    bench::print("round_open_200_vessels", millisecondsOf([&] { window.cellar()->showRound(); }), "ms", 1);
    bench::print("round_paint_200_vessels", millisecondsOf([&] { static_cast<void>(window.grab()); }), "ms", 1);
}
