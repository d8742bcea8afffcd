// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of the Adjust page, and pictures of it: test_ui "[bench]" prints one JSON object a line;
// STAVELINE_SHOTS=folder test_ui "[adjust_shots]" writes pictures in both palettes.
#include "ui/adjust_support.h"

#include "support/bench.h"

#include <QDir>
#include <QTimer>

#include <ctime>

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::ui;
using testing::AtAdjust;

namespace {

double since(const QElapsedTimer& timer) {
    return static_cast<double>(timer.nsecsElapsed()) / 1e6;
}

/// What this thread itself has worked: the same on a busy machine. [ms]
double ownTime() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) / 1e6;
}

struct DragTimes {
    std::vector<double> wall, own; ///< sorted
};

/// A key on a slider until the pixels are there.
DragTimes dragTimes(const AtAdjust& s, const char* lever, int steps) {
    DragTimes times;
    QSlider* slider = s.line(lever).slider();
    for (int i = 0; i < steps; ++i) {
        const Qt::Key key = (i / 10) % 2 == 0 ? Qt::Key_Left : Qt::Key_Right;
        QElapsedTimer timer;
        timer.start();
        const double before = ownTime();
        QTest::keyClick(slider, key);
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents(QEventLoop::ExcludeUserInputEvents);
        times.wall.push_back(since(timer));
        times.own.push_back(ownTime() - before);
        QTest::qWait(8); // a hand is not faster than the screen
    }
    std::sort(times.wall.begin(), times.wall.end());
    std::sort(times.own.begin(), times.own.end());
    return times;
}

/// The longest time between two ticks of a timer while the advisers work.
double longestGap(const AtAdjust& s) {
    double longest = 0;
    QElapsedTimer since_last;
    QTimer tick;
    tick.setTimerType(Qt::PreciseTimer);
    tick.setInterval(1);
    since_last.start();
    QObject::connect(&tick, &QTimer::timeout, [&] {
        longest = std::max(longest, since(since_last));
        since_last.restart();
    });
    tick.start();
    s.settle();
    return longest;
}

void shoot(const QWidget& widget, const QString& name) {
    QTest::qWait(80);
    const QString scale = widget.devicePixelRatioF() > 1 ? QStringLiteral("@2x") : QString();
    REQUIRE(const_cast<QWidget&>(widget).grab().save(qEnvironmentVariable("STAVELINE_SHOTS") + "/adjust-" + name +
                                                     scale + ".png"));
}

void shootAll(const QString& look) {
    const AtAdjust s;
    s.settle();
    shoot(*s.workPage, "proposal-" + look);
    s.workPage->asNow();
    s.slide("sacch_temperature", Qt::Key_Left, 4);
    s.slide("ferulic_rest", Qt::Key_Right, 4);
    s.settle();
    shoot(*s.workPage, "tried-" + look);
    s.workPage->openTarget(true);
    shoot(*s.workPage, "target-" + look);
    s.workPage->openTarget(false);
    Q_EMIT s.proposals().explainAsked(1, {OriginKind::predictionNext, Dimension::acidity});
    shoot(*s.workPage, "chain-" + look);
    s.explanation().leave();
    s.verdicts().showTable(true);
    shoot(*s.workPage, "table-" + look);
    s.verdicts().showTable(false);
    s.workPage->openDrawDay(true);
    shoot(*s.workPage, "draw-day-" + look);
    s.workPage->openDrawDay(false);
    for (const char* vessel : {"Dunlin", "Knot"}) {
        s.workPage->showVessel(vessel);
        s.settle();
        shoot(*s.workPage, QString::fromLatin1(vessel).toLower() + "-" + look);
    }
}

} // namespace

TEST_CASE("figures of the Adjust page", "[.][bench]") {
    install(*qApp, Appearance::light);
    const AtAdjust s;
    s.settle();
    s.workPage->asNow();
    s.settle();
    dragTimes(s, "sacch_temperature", 10);
    const auto drag = dragTimes(s, "sacch_temperature", 200);
    bench::print("adjust_drag_to_repaint_p99", bench::quantile(drag.wall, .99), "ms", drag.wall.size());
    bench::print("adjust_drag_to_repaint_p50", bench::quantile(drag.wall, .5), "ms", drag.wall.size());
    bench::print("adjust_drag_to_repaint_own_p99", bench::quantile(drag.own, .99), "ms", drag.own.size());
    bench::print("adjust_drag_to_repaint_own_p50", bench::quantile(drag.own, .5), "ms", drag.own.size());
    s.settle();
    std::vector<double> opens, gaps;
    for (int i = 0; i < 5; ++i) {
        QElapsedTimer timer;
        timer.start();
        // The book changes: a new snapshot and new questions.
        REQUIRE(s.session->record(ReadingFact{"Plover", s.today, {{}, Ph{3.2 + .01 * i}, {}, {}, {}}, ""}));
        opens.push_back(since(timer));
        gaps.push_back(longestGap(s));
    }
    std::sort(opens.begin(), opens.end());
    bench::print("adjust_new_snapshot", opens.back(), "ms", opens.size(), "\"is\": \"longest\"");
    bench::print("adjust_longest_block_during_advice", *std::max_element(gaps.begin(), gaps.end()), "ms", gaps.size());
}

TEST_CASE("pictures of the Adjust page", "[.][adjust_shots]") {
    const QString folder = qEnvironmentVariable("STAVELINE_SHOTS");
    if (folder.isEmpty())
        FAIL("STAVELINE_SHOTS names no folder");
    REQUIRE(QDir().mkpath(folder));
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        install(*qApp, look);
        shootAll(look == Appearance::dark ? "dark" : "light");
    }
    install(*qApp, Appearance::light);
}
