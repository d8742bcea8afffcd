// SPDX-License-Identifier: GPL-3.0-or-later
// What the Adjust page is made of, by itself: words, timelines, the worker that keeps to the newest request.
#include "ui/adjust_support.h"

#include "ui/present/latest_worker.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/glyph.h"

#include <QPainter>

#include <atomic>
#include <future>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::ui;
using testing::day;

namespace {

HistoryView tastings() {
    HistoryView view;
    for (int i = 0; i < 8; ++i) {
        HistoryRow row;
        row.on = day(2025, 1, 1) + std::chrono::days{30 * i};
        row.kind = HistoryKind::sitting;
        if (i != 6)
            row.tasted[Dimension::funk] = Estimate{3 + .1 * i, .4};
        view.rows.push_back(row);
    }
    return view;
}

TargetTimelineData lookWith(double wanted, double band, double today) {
    TargetTimelineData look;
    look.dimension = Dimension::body;
    look.window = {wanted, band};
    look.today = {day(2026, 1, 1), Band{today, today - .5, today + .5}};
    return look;
}

QImage painted(TargetTimeline& timeline) {
    timeline.resize(timeline.sizeHint());
    return timeline.grab().toImage();
}

} // namespace

TEST_CASE("a band is told with its half-width, a lopsided one with its ends", "[ui][adjust]") {
    CHECK(bandWords({5.4, 4.8, 6.0}) == QString::fromUtf8("5.4 ±0.6"));
    CHECK(bandWords({.9, .4, 1.7}) == "0.9 (0.4 to 1.7)");
    CHECK(bandWords({5.4, 5.4, 5.4}) == "5.4");
    CHECK(estimateWords({6.6, .5}) == QString::fromUtf8("6.6 ±0.6")); // 1.28 standard errors: 80 % of a normal
    CHECK(changeWords(.44) == "+0.4");
    CHECK(changeWords(-.44) == "-0.4");
    CHECK(sentenceCase("ropy, oily") == "Ropy, oily");
    CHECK(sentenceCase("").isEmpty());
}

TEST_CASE("each verdict has a word and a shape of its own", "[ui][adjust]") {
    QSet<QString> words;
    QList<QImage> shapes;
    const QPalette palette = lightPalette();
    for (const VerdictKind kind :
         {VerdictKind::faultFirst, VerdictKind::waitUntil, VerdictKind::neverTasted, VerdictKind::hold,
          VerdictKind::open, VerdictKind::move, VerdictKind::leaveAlone, VerdictKind::tasteAgain}) {
        words << wordOf(kind);
        Verdict verdict;
        verdict.kind = kind;
        verdict.up = true;
        // Black on white: the shape must differ, not the colour.
        QImage image(32, 32, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        paintGlyph(painter, QRectF(0, 0, 32, 32), glyphOf(verdict), Qt::black);
        painter.end();
        for (const QImage& other : shapes)
            CHECK(image != other);
        shapes << image;
        CHECK(contrast(tone(palette, ui::toneOf(glyphOf(verdict))), palette.color(QPalette::Window)) > 3);
    }
    CHECK(words.size() == 8);
    Verdict up, down;
    up.kind = down.kind = VerdictKind::move;
    up.up = true;
    CHECK(glyphOf(up) != glyphOf(down)); // and each glyph has a shape of its own
}

TEST_CASE("a timeline keeps the last sittings that scored its dimension", "[ui][adjust]") {
    const auto points = lastTasted(tastings(), Dimension::funk, 3);
    REQUIRE(points.size() == 3);
    CHECK(points[0].on == day(2025, 1, 1) + std::chrono::days{120});
    CHECK(points[2].band.value == Approx(3.7));
    CHECK(points[2].band.high - points[2].band.value == Approx(z80 * .4));
    CHECK(lastTasted(tastings(), Dimension::acidity).empty());
}

TEST_CASE("a timeline has room for everything it shows", "[ui][adjust]") {
    TargetTimelineData look = lookWith(4, 1, 4.2);
    CHECK(spanOf(look).low == 2);
    CHECK(spanOf(look).high == 6);
    look.tried = ForecastBands{{4, 3.5, 4.5}, {6.6, 6.1, 7.4}, Band{9, 7, 12}};
    CHECK(spanOf(look).high == 10); // never beyond the scale
    look.tried.reset();
    look.tasted = {{day(2025, 1, 1), {.4, -.2, .9}}};
    CHECK(spanOf(look).low == 0);
}

TEST_CASE("a timeline tells every point in words", "[ui][adjust]") {
    TargetTimelineData look = lookWith(4, 1, 4.2);
    look.tasted = {{day(2025, 3, 1), {3.4, 2.9, 3.9}}};
    look.alone = ForecastBands{{4.1, 3.6, 4.6}, {4.3, 3.7, 4.9}, {}};
    look.tried = ForecastBands{{4.1, 3.6, 4.6}, {4.8, 4.2, 5.4}, Band{5.5, 4.9, 6.9}};
    look.triedName = "Proposal 2";
    const QString words = sentenceOf(look);
    for (const char* part :
         {"Body", "3.4 ±0.5 on 1 Mar 2025", "today 4.2 ±0.5", "target 4.0 ±1.0",
          "no change 4.1 ±0.5 at this draw, 4.3 ±0.6 at the next", "Proposal 2", "5.5 (4.9 to 6.9) if repeated"}) {
        INFO(part);
        CHECK(words.contains(QString::fromUtf8(part)));
    }
    PerDimension<TargetTimelineData> timelines;
    for (const Dimension d : allDimensions) {
        timelines[d] = look;
        timelines[d].dimension = d;
    }
    const auto rows = ui::tableOf(timelines);
    REQUIRE(rows.size() == 9); // one sitting, today, wanted, three each for alone and tried
    CHECK(rows[0].what == "Tasted 1 Mar 2025");
    CHECK(rows[5].cells[Dimension::funk].isEmpty()); // kept up is not worked out yet
    CHECK(rows[8].cells[Dimension::funk] == "5.5 (4.9 to 6.9)");
}

TEST_CASE("a timeline is drawn: window, points, and nothing of what it does not have", "[ui][adjust]") {
    TargetTimeline timeline(Dimension::body);
    TargetTimelineData look = lookWith(4, 1, 4.2);
    timeline.setLook(look);
    const QImage alone = painted(timeline);
    CHECK(timeline.yOf(5) < timeline.yOf(3)); // higher scores stand higher
    look.tried = ForecastBands{{4.1, 3.6, 4.6}, {4.8, 4.2, 5.4}, {}};
    timeline.setLook(look);
    CHECK(painted(timeline) != alone);
    look.tried.reset();
    timeline.setLook(look);
    CHECK(painted(timeline) == alone);
    look.window.wanted = 4.5;
    timeline.setLook(look);
    CHECK(painted(timeline) != alone);
}

TEST_CASE("Enter on a timeline asks for the table, other keys do not", "[ui][adjust]") {
    TargetTimeline timeline(Dimension::body);
    QSignalSpy asked(&timeline, &TargetTimeline::tableAsked);
    QTest::keyClick(&timeline, Qt::Key_A);
    CHECK(asked.isEmpty());
    QTest::keyClick(&timeline, Qt::Key_Return);
    CHECK(asked.count() == 1);
}

TEST_CASE("the worker keeps to the newest request", "[ui][adjust]") {
    std::promise<void> running, finished;
    std::atomic<int> did{0};
    std::atomic<bool> stopped{false};
    LatestWorker worker;
    worker.post([&](const std::stop_token& stop) {
        running.set_value();
        while (!stop.stop_requested())
            std::this_thread::yield();
        stopped = true;
    });
    running.get_future().wait();
    worker.post([&](const std::stop_token&) { did += 10; }); // replaced before it begins
    worker.post([&](const std::stop_token& stop) {
        did += stop.stop_requested() ? 100 : 1;
        finished.set_value();
    });
    finished.get_future().wait();
    CHECK(stopped);
    CHECK((did == 1 || did == 11)); // the second may have begun before the third came
}

TEST_CASE("a worker that goes away stops what runs and drops what waits", "[ui][adjust]") {
    std::promise<void> running;
    std::atomic<bool> stopped{false}, waitingRan{false};
    {
        LatestWorker worker;
        worker.post([&](const std::stop_token& stop) {
            running.set_value();
            while (!stop.stop_requested())
                std::this_thread::yield();
            stopped = true;
        });
        running.get_future().wait();
    }
    CHECK(stopped);
    {
        LatestWorker worker;
        worker.cancel();
        std::promise<void> done;
        worker.post([&](const std::stop_token&) { done.set_value(); });
        done.get_future().wait(); // a cancelled worker works again
    }
    CHECK_FALSE(waitingRan);
}

TEST_CASE("a lever's number is shown in the unit a brewer reads", "[ui][adjust]") {
    const UnitScale plato(UnitKind::extract, {}), share(UnitKind::percentOfGrist, {}), rest(UnitKind::minutes, {});
    CHECK(plato.suffix() == "SG");
    CHECK(plato.toShown(12) == Approx(1.0484).margin(.0003)); // 12 °P in the common table (ASBC), from memory
    CHECK(plato.toStored(plato.toShown(12)) == Approx(12).margin(1e-6));
    CHECK(share.toShown(10) == 10);
    CHECK(share.suffix() == "%");
    CHECK(rest.suffix() == "min");
}

TEST_CASE("each number of a target is read back as it was set", "[ui][adjust]") {
    QSet<QString> names;
    for (const TargetNumber& number : targetNumbers()) {
        INFO(number.path);
        Target target;
        const double middle = (number.low + number.high) / 2;
        number.set(target, middle);
        CHECK(number.get(target) == Approx(middle).epsilon(1e-4));
        CHECK((target != Target{} || middle == number.get(Target{})));
        names << number.name;
    }
    CHECK(names.size() == static_cast<qsizetype>(targetNumbers().size()));
}
