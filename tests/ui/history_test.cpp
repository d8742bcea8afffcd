// SPDX-License-Identifier: GPL-3.0-or-later
// The History page: the cycles of a vessel as charts, table, promises and files.
#include "ui/support.h"

#include "desk/history.h"
#include "desk/ledger.h"
#include "estimate/estimates.h"
#include "facts/sample.h"
#include "support/bench.h"
#include "support/full_disk.h"
#include "ui/audit.h"
#include "ui/chart/chart_stack.h"
#include "ui/history/columns.h"
#include "ui/history/copy_table.h"
#include "ui/history/history_charts.h"
#include "ui/history/history_model.h"
#include "ui/history/page.h"
#include "ui/present/ledger_model.h"
#include "ui/widgets/choice_field.h"
#include "ui/window/cellar_view.h"

#include <QAccessible>
#include <QClipboard>
#include <QDir>
#include <QFile>
#include <QHeaderView>
#include <QMenu>
#include <QPushButton>
#include <QScrollBar>
#include <QSvgRenderer>

using namespace staveline;
using namespace staveline::culture;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::vessel;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

/// The page alone in a window, on the sample cellar or on facts of a test's own.
struct AtHistory : DeskInScratch {
    explicit AtHistory(const VesselName& vessel = "Plover", const std::string& json = "") {
        if (json.empty())
            REQUIRE(desk->record(*sampleCellar(today)));
        else
            recordAll(*desk, json);
        session = std::make_unique<Session>(std::move(desk));
        workPage = std::make_unique<HistoryPage>(*session, prompt);
        workPage->resize(1000, 600);
        workPage->showVessel(vessel);
        workPage->show();
        REQUIRE(QTest::qWaitForWindowActive(workPage.get()));
        workPage->focusWork();
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) const {
        REQUIRE(workPage->focusWidget());
        QTest::keyClick(workPage->focusWidget(), key, modifiers);
    }
    [[nodiscard]] ChartStack& charts() const { return part<ChartStack>(*workPage); }
    [[nodiscard]] CopyTable& promises() const { return part<CopyTable>(*workPage, "Promises and how they came out"); }
    [[nodiscard]] QString record() const { return wordsOf(*workPage, "record"); }
    [[nodiscard]] HistoryView history() const { return *session->desk().history(workPage->vessel()); }
    [[nodiscard]] const ChartPanel& panel(const QString& id) const {
        for (const ChartPanel& one : charts().chartData().panels)
            if (one.id == id)
                return one;
        FAIL("no panel " << id.toStdString());
        return charts().chartData().panels.front();
    }
    ScriptedPrompt prompt;
    std::unique_ptr<Session> session;
    std::unique_ptr<HistoryPage> workPage;
};

} // namespace

TEST_CASE("pictures of the history", "[.][history-shots]") {
    const QString folder = qEnvironmentVariable("STAVELINE_SHOTS", "/tmp");
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        install(*qApp, look);
        for (const char* vessel : {"Plover", "Knot", "Dunlin"}) {
            AtHistory s(vessel);
            s.workPage->setAutoFillBackground(true);
            const auto take = [&](const QString& name) {
                QTest::qWait(20);
                const QString scale = s.workPage->devicePixelRatioF() > 1 ? QStringLiteral("@2x") : QString();
                s.workPage->grab().save(folder + "/history-" + vessel + '-' + name +
                                        (look == Appearance::dark ? "-dark" : "-light") + scale + ".png");
            };
            take("charts");
            s.key(Qt::Key_Left);
            s.key(Qt::Key_Left);
            s.key(Qt::Key_PageDown);
            take("charts-below");
            s.key(Qt::Key_T);
            take("table");
            s.key(Qt::Key_P);
            take("promises");
            s.charts().picture(2).save(folder + "/history-" + vessel + "-file.png");
        }
    }
    install(*qApp, Appearance::light);
}

namespace {

std::string fileAt(const std::filesystem::path& path) {
    QFile file(qs(path.string()));
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}
int columnTitled(const QAbstractItemModel& model, const QString& title) {
    for (int column = 0; column < model.columnCount(); ++column)
        if (model.headerData(column, Qt::Horizontal).toString().replace('\n', ' ') == title)
            return column;
    FAIL("no column " << title.toStdString());
    return -1;
}
QPushButton* visibleButton(QWidget& in, const QString& words) {
    for (QPushButton* button : in.findChildren<QPushButton*>())
        if (button->text() == words && button->isVisible())
            return button;
    return nullptr;
}
const char* const oneVessel = R"({"kind": "vessel", "name": "Heron", "shape": "cask", "material": "oak used",
    "capacity_l": 225})";
std::string withVessel(const std::string& facts) {
    return "[" + std::string(oneVessel) + (facts.empty() ? "" : ", " + facts) + "]";
}
const char* const opened =
    R"({"kind": "opening", "vessel": "Heron", "on": "2025-02-01", "volume_l": 214, "age_years": 1.6})";
const char* const sat = R"({"kind": "sitting", "vessel": "Heron", "on": "2025-03-01", "scores": [
    {"taster": "Rook", "attribute": "TA1", "cold": 6, "cellar": 6.5},
    {"taster": "Rook", "attribute": "TA2", "cold": 6, "cellar": 6},
    {"taster": "Rook", "attribute": "TA3", "cold": 6, "cellar": 6}], "note": "Firm, \"dry\", long"})";

} // namespace

TEST_CASE("the charts hold what the desk knows of all cycles", "[ui][history]") {
    AtHistory s;
    const HistoryView history = s.history();
    const auto count = [&](auto&& has) {
        return static_cast<std::size_t>(std::count_if(history.rows.begin(), history.rows.end(), has));
    };
    const ChartPanel& acidity = s.panel("acidity");
    CHECK(acidity.series[0].points.size() == history.targets.size() + 1); // and on to the end
    CHECK(acidity.series[1].points.size() == history.promises.size());
    CHECK(acidity.series[2].points.size() ==
          count([](const HistoryRow& row) { return row.tasted[Dimension::acidity].has_value(); }));
    CHECK(s.panel("ta").series[0].points.size() ==
          count([](const HistoryRow& row) { return row.measured.ta.has_value(); }));
    CHECK(s.panel("bitterness").series[0].points.size() ==
          count([](const HistoryRow& row) { return row.refillBitterness.has_value(); }));
    CHECK(s.panel("volume").series[0].points.size() == history.sawtooth.size());
    CHECK(s.panel("age").series[0].points.size() == history.sawtooth.size());
    CHECK(s.panel("volume").series[1].points.size() ==
          count([](const HistoryRow& row) { return row.is(EntryKind::drawOff); }));
    for (const HistoryRow& row : history.rows) {
        CHECK(row.on >= s.charts().chartData().whole.from);
        CHECK(row.on <= s.charts().chartData().whole.to);
    }
}

TEST_CASE("error bars and bands are the 80 % intervals, windows the tolerance", "[ui][history]") {
    AtHistory s;
    const HistoryView history = s.history();
    const ChartPanel& funk = s.panel("funk");
    const ChartPoint told = funk.series[1].points.front();
    CHECK(told.value == Approx(history.promises.front().told[Dimension::funk].mean));
    // 1.2816: the 90th percentile of the normal distribution, from any table of it.
    CHECK(told.high - told.value == Approx(1.2816 * history.promises.front().told[Dimension::funk].sd).epsilon(1e-4));
    const TargetWindow window = history.targets.front().target.windows[Dimension::funk];
    CHECK(funk.series[0].points.front().low == Approx(window.wanted - window.band));
    CHECK(funk.series[0].points.front().on == history.targets.front().on);
}

TEST_CASE("the cursor says what happened and what was known, by keys alone", "[ui][history]") {
    AtHistory s;
    CHECK(s.charts().hasFocus());
    s.key(Qt::Key_Home);
    const QString first = s.workPage->cursorWords();
    CHECK(first.startsWith(dayWords(s.history().rows.front().on) + ": "));
    QStringList met;
    for (int i = 0; i < 200; ++i) {
        met << s.workPage->cursorWords();
        s.key(Qt::Key_Right);
        if (s.workPage->cursorWords() == met.last())
            break;
    }
    CHECK(met.size() == static_cast<int>(s.charts().chartData().stops().size()));
    CHECK(met.filter("drawn").size() >= 8);
    CHECK(met.filter("tasted").size() >= 8);
    const HistoryView history = s.history();
    const auto draw = std::find_if(history.rows.begin(), history.rows.end(),
                                   [](const HistoryRow& row) { return row.is(EntryKind::drawOff); });
    s.charts().moveCursor(draw->on);
    CHECK(s.workPage->cursorWords().contains("drawn"));
    CHECK(s.workPage->cursorWords().contains("Volume"));
    CHECK(s.workPage->cursorWords().contains("Age of the beer"));
    QAccessibleInterface* charts = QAccessible::queryAccessibleInterface(&s.charts());
    CHECK(charts->text(QAccessible::Description) == s.workPage->cursorWords());
    CHECK(charts->text(QAccessible::Name) == "Charts of Plover");
}

TEST_CASE("the time shown is chosen, and zooming says so", "[ui][history]") {
    AtHistory s;
    ChartStack& charts = s.charts();
    ChoiceField& choice = part<ChoiceField>(*s.workPage, "Time shown");
    CHECK(choice.word() == "all");
    const auto choose = [&](const std::string& word) {
        choice.setWord(word);
        Q_EMIT choice.activated(choice.currentIndex());
    };
    choose("3");
    CHECK(charts.span().from == s.today - std::chrono::days{1096});
    CHECK(charts.span().to == charts.chartData().whole.to);
    choose("1");
    CHECK(charts.span().from == s.today - std::chrono::days{365});
    choose("cycle");
    Day refilled{};
    for (const HistoryRow& row : s.history().rows)
        if (row.is(EntryKind::refill))
            refilled = row.on;
    CHECK(charts.span().from < refilled);
    CHECK(daysBetween(charts.span().from, refilled) < 10);
    CHECK(choice.word() == "cycle");
    s.key(Qt::Key_Plus);
    CHECK(choice.word() == "part");
    s.key(Qt::Key_0);
    CHECK(choice.word() == "all");
}

TEST_CASE("the table is one key away, and back", "[ui][history]") {
    AtHistory s;
    s.key(Qt::Key_Home);
    s.key(Qt::Key_T);
    CHECK(s.workPage->face() == HistoryPage::Face::table);
    CHECK(s.workPage->table().isVisible());
    CHECK(s.workPage->table().hasFocus());
    CHECK(s.workPage->table().currentIndex().row() == 0); // where the cursor was
    s.key(Qt::Key_P);
    CHECK(s.promises().hasFocus());
    s.key(Qt::Key_P);
    CHECK(s.charts().hasFocus());
    QPushButton* table = visibleButton(*s.workPage, "Table (T)");
    REQUIRE(table);
    QTest::keyClick(table, Qt::Key_Space);
    CHECK(s.workPage->table().hasFocus());
    CHECK(table->isChecked());
    s.key(Qt::Key_T, Qt::ControlModifier); // not ours
    CHECK(s.workPage->face() == HistoryPage::Face::table);
}

TEST_CASE("the table has every row by date and hides only what nobody filled", "[ui][history]") {
    AtHistory s;
    const HistoryView history = s.history();
    HistoryModel& model = s.workPage->model();
    REQUIRE(model.rowCount() == static_cast<int>(history.rows.size()));
    for (int row = 1; row < model.rowCount(); ++row)
        CHECK(model.at(row - 1)->on <= model.at(row)->on);
    const int acidity = columnTitled(model, "Acidity");
    for (int row = 0; row < model.rowCount(); ++row) {
        const HistoryRow& whole = history.rows[static_cast<std::size_t>(row)];
        const auto& tasted = whole.tasted[Dimension::acidity];
        const auto& promised = whole.forecast[Dimension::acidity];
        CHECK_FALSE((tasted && promised)); // they share a column, told apart by the entry
        CHECK(model.index(row, acidity).data().toString().isEmpty() == !(tasted || promised));
        if (promised) {
            CHECK(model.index(row, acidity).data().toString() == estimateWords(*promised));
            CHECK(model.index(row, 1).data().toString() == "Promise");
        }
        CHECK_FALSE(model.index(row, 1).data().toString().contains("ui.")); // each kind of entry has a word
        if (tasted)
            CHECK(model.index(row, acidity).data().toString() == estimateWords(*tasted));
    }
    for (int column = 0; column < model.columnCount(); ++column) {
        bool any = false;
        for (int row = 0; row < model.rowCount(); ++row)
            any = any || !model.index(row, column).data().toString().isEmpty();
        CHECK(s.workPage->table().isColumnHidden(column) == !any);
    }
}

TEST_CASE("the table fits a window of 1280 x 800 without scrolling sideways", "[ui][history]") {
    for (const bool american : {false, true}) {
        CAPTURE(american);
        WindowInScratch w(false);
        REQUIRE(w.window->sampleBook(w.book));
        if (american)
            w.window->setUnits({DisplayUnits::Volume::usGallon, DisplayUnits::Temperature::fahrenheit,
                                DisplayUnits::Gravity::specific, DisplayUnits::Colour::srm});
        for (const char* vessel : {"Plover", "Knot", "Dunlin"}) {
            w.window->cellar()->showVessel(vessel);
            w.key(Qt::Key_6, Qt::ControlModifier);
            const HistoryPage& history = w.window->cellar()->history();
            if (!history.table().isVisible())
                w.key(Qt::Key_T);
            QTest::qWait(20);
            const CopyTable& table = history.table();
            INFO(vessel << ", " << table.horizontalHeader()->length() << " in " << table.viewport()->width());
            CHECK(table.horizontalScrollBar()->maximum() == 0);
            for (int column = 0; column < table.model()->columnCount(); ++column) // numbers are never cut
                if (!table.isColumnHidden(column) && column + 1 < table.model()->columnCount())
                    CHECK(table.columnWidth(column) >=
                          static_cast<const QAbstractItemView&>(table).sizeHintForColumn(column));
        }
    }
}

TEST_CASE("chosen cells are copied with their headings", "[ui][history]") {
    AtHistory s;
    s.key(Qt::Key_Home);
    s.key(Qt::Key_T);
    QApplication::clipboard()->clear();
    s.key(Qt::Key_C, Qt::ControlModifier);
    CHECK(QApplication::clipboard()->text() == dayWords(s.history().rows.front().on));
    s.key(Qt::Key_A, Qt::ControlModifier);
    s.key(Qt::Key_C, Qt::ControlModifier);
    const QStringList lines = QApplication::clipboard()->text().split('\n');
    CHECK(lines.size() == s.workPage->model().rowCount() + 1);
    CHECK(lines.front().startsWith("Date\tEntry\tAcidity"));
    for (const QString& line : lines)
        CHECK(line.count('\t') == lines.front().count('\t'));
}

TEST_CASE("units change what is shown and no stored bit", "[ui][history]") {
    AtHistory s;
    const std::string csv = toCsv(s.history().rows);
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    units.gravity = DisplayUnits::Gravity::plato;
    const double litres = s.panel("volume").series[0].points.front().value;
    s.session->setUnits(units);
    CHECK(s.panel("volume").unit == "US gal");
    CHECK(s.panel("volume").series[0].points.front().value == Approx(litres / 3.785411784));
    CHECK(s.panel("mash").unit == QString("°F"));
    CHECK(s.panel("mash").series[0].points.front().value > 130);
    CHECK(s.panel("gravity").unit == QString("°P"));
    columnTitled(s.workPage->model(), "Level after (US gal)");
    CHECK(toCsv(s.history().rows) == csv);
}

TEST_CASE("how promises came out is said and listed", "[ui][history]") {
    AtHistory s;
    const HistoryView history = s.history();
    REQUIRE(history.record.size() == 4); // three dimensions, and all of them against no change
    for (const Message& line : history.record)
        CHECK(s.record().contains(s.session->words(line)));
    const QAbstractItemModel& model = *s.promises().model();
    REQUIRE(model.rowCount() == static_cast<int>(history.promises.size()));
    for (int row = 0; row < model.rowCount(); ++row) {
        const PromiseOutcome& promise = history.promises[history.promises.size() - 1 - static_cast<std::size_t>(row)];
        CHECK(model.index(row, 1).data().toString() == dayWords(promise.forDay));
        CHECK(model.index(row, 3).data().toString() == estimateWords(promise.told[Dimension::acidity]));
        const auto& inside = promise.inside[Dimension::acidity];
        CHECK(model.index(row, 5).data().toString() == (!inside ? "" : *inside ? "inside" : "outside"));
        const auto nearer = promise.nearer(Dimension::acidity);
        CHECK(model.index(row, 6).data().toString() == (!nearer ? "" : *nearer ? "nearer" : "farther"));
    }
    QStringList titles; // each column says what it is of
    for (int column = 0; column < model.columnCount(); ++column)
        titles << model.headerData(column, Qt::Horizontal, Qt::AccessibleTextRole).toString();
    CHECK(titles.removeDuplicates() == 0);
    CHECK(titles.contains("Funk against no change"));
    PromiseOutcome promise;
    promise.forDay = day(2025, 5, 20);
    promise.told[Dimension::body] = {5.1, .624};
    CHECK(promiseWords(promise, Dimension::body) == QString("Body: promised 5.1 ±0.8 for 20 May 2025, not tasted yet"));
    promise.tasted[Dimension::body] = Estimate{5.3, .39};
    promise.inside[Dimension::body] = true;
    CHECK(promiseWords(promise, Dimension::body) ==
          QString("Body: promised 5.1 ±0.8 for 20 May 2025, tasted 5.3 ±0.5, inside"));
}

TEST_CASE("what the sittings taught stands over time with its band, and in words", "[ui][history]") {
    AtHistory s;
    const HistoryView history = s.history();
    REQUIRE_FALSE(history.learned.empty());
    for (const Dimension d : allDimensions) {
        const ChartPanel& panel = s.panel("learned_" + QString::fromStdString(std::string(name(d))));
        std::vector<const HistoryRow*> taught;
        for (const HistoryRow& row : history.rows)
            if (row.offset[d])
                taught.push_back(&row);
        REQUIRE_FALSE(taught.empty());
        REQUIRE(panel.series[1].points.size() == taught.size() + 1);
        // Its last point is the figure that Adjust tells of today.
        const auto known = s.session->desk().estimates("Plover");
        REQUIRE(known);
        CHECK(panel.series[1].points.back().value == Approx(known->offsets[d].mean[estimate::Offset::now]));
        for (std::size_t i = 0; i < taught.size(); ++i) {
            const ChartPoint& band = panel.series[0].points[i];
            CHECK(band.on == taught[i]->on);
            CHECK(panel.series[1].points[i].value == Approx(taught[i]->offset[d]->mean));
            // 1.2816: the 90th percentile of the normal distribution, from any table of it.
            CHECK(band.high - band.value == Approx(1.2816 * taught[i]->offset[d]->sd).epsilon(1e-4));
        }
    }
    for (const auto& line : history.learned)
        CHECK(wordsOf(*s.workPage, line.run ? "record" : "learned").contains(s.session->words(line.words)));
}

TEST_CASE("picture, drawing and table are written whole", "[ui][history]") {
    AtHistory s;
    const auto save = [&](HistoryPage::Format format, const char* name) {
        s.prompt.answers = {s.scratch / name};
        s.workPage->save(format);
        CHECK(s.workPage->words().isEmpty());
        return fileAt(s.scratch / name);
    };
    QImage picture;
    const std::string png = save(HistoryPage::Format::png, "h.png");
    REQUIRE(picture.loadFromData(QByteArray::fromStdString(png)));
    CHECK(picture.width() > 1500);
    QSvgRenderer drawing(QByteArray::fromStdString(save(HistoryPage::Format::svg, "h.svg")));
    CHECK(drawing.isValid());
    CHECK(save(HistoryPage::Format::csv, "h.csv") == toCsv(s.history().rows));
    CHECK(s.prompt.asked.back() == "Plover history 2026-03-02.csv");
    CHECK(save(HistoryPage::Format::xlsx, "h.xlsx").starts_with("PK")); // what is in it: tests/app
    CHECK(s.prompt.asked.back() == "Plover history 2026-03-02.xlsx");
    s.workPage->save(HistoryPage::Format::csv); // cancelled
    CHECK(s.workPage->words().isEmpty());
}

TEST_CASE("a file that cannot be written is said on the page and the old one stays", "[ui][history][bad]") {
    AtHistory s;
    s.prompt.answers = {s.scratch / "no such folder" / "h.csv"};
    s.workPage->save(HistoryPage::Format::csv);
    CHECK(s.workPage->words().contains("h.csv"));
    const auto kept = s.scratch / "kept.csv";
    {
        QFile old(qs(kept.string()));
        REQUIRE(old.open(QIODevice::WriteOnly));
        old.write("old");
    }
    for (const auto format : {HistoryPage::Format::png, HistoryPage::Format::csv}) {
        s.prompt.answers = {kept};
        {
            const FullDisk full(512);
            s.workPage->save(format);
        }
        CHECK(s.workPage->words().contains("kept.csv"));
        CHECK(s.workPage->words().contains("nothing else was changed"));
        CHECK(fileAt(kept) == "old");
    }
    s.prompt.answers = {kept};
    s.workPage->save(HistoryPage::Format::csv);
    CHECK(s.workPage->words().isEmpty());
    CHECK(fileAt(kept) == toCsv(s.history().rows));
}

TEST_CASE("the file follows RFC 4180 in stored units", "[ui][history]") {
    AtHistory s("Heron", withVessel(std::string(opened) + ", " + sat));
    const std::string csv = toCsv(s.history().rows);
    CHECK(csv.rfind("on,what,acidity,funk,body,acidity_sd,funk_sd,body_sd,acidity_forecast,", 0) == 0);
    CHECK(csv.find("volume_l,moved_l,mean_age_d,gravity_sg,ph,ta_g_l,temperature_c,ibu,refill_ibu,mash_c,happened,"
                   "learn,learn_reason,at,lot,brew,other_vessel,faults,scores,round,note\r\n") != std::string::npos);
    CHECK(csv.find("\"Firm, \"\"dry\"\", long\"\r\n") != std::string::npos);
    CHECK(csv.find("2025-02-01,opening,") != std::string::npos);
    CHECK(std::count(csv.begin(), csv.end(), '\n') == 3);
}

TEST_CASE("an empty vessel says what goes here and offers the first step", "[ui][history]") {
    AtHistory s("Heron", withVessel(""));
    CHECK_FALSE(s.charts().isVisible());
    QPushButton* first = visibleButton(*s.workPage, "Go to Draw && refill");
    REQUIRE(first);
    CHECK(first->hasFocus());
    QSignalSpy asked(s.workPage.get(), &HistoryPage::firstEntryAsked);
    QTest::keyClick(first, Qt::Key_Space);
    CHECK(asked.size() == 1);
    s.workPage->save(HistoryPage::Format::png);
    CHECK(s.prompt.asked.empty());
    recordAll(*s.session, opened);
    CHECK(s.charts().isVisible());
    s.session->undo();
    CHECK_FALSE(s.charts().isVisible());
}

TEST_CASE("short histories draw sensibly", "[ui][history]") {
    const std::string target = R"({"kind": "target", "vessel": "Heron", "on": "2025-01-05", "acidity": 5, "funk": 4,
        "body": 4, "acidity_band": 1.0, "funk_band": 1.0, "body_band": 1.0})";
    for (const std::string& facts :
         {std::string(opened), std::string(opened) + ", " + sat, std::string(opened) + ", " + target,
          std::string(opened) + ", " + sat + ", " + target}) {
        INFO(facts);
        AtHistory s("Heron", withVessel(facts));
        CHECK(s.charts().isVisible());
        CHECK_FALSE(s.workPage->cursorWords().isEmpty());
        for (const Qt::Key key : {Qt::Key_Home, Qt::Key_Right, Qt::Key_Plus, Qt::Key_Plus, Qt::Key_End, Qt::Key_0})
            s.key(key);
        CHECK_FALSE(s.charts().picture(1).isNull());
        CHECK(s.record() == own("ui.history.no_record"));
        s.key(Qt::Key_T);
        CHECK(s.workPage->model().rowCount() >= 1);
        s.key(Qt::Key_P);
        CHECK(s.promises().model()->rowCount() == 0);
        CHECK_FALSE(s.workPage->grab().isNull());
    }
}

TEST_CASE("what is recorded appears, and the view stays where it was", "[ui][history]") {
    AtHistory s;
    s.key(Qt::Key_Plus);
    s.key(Qt::Key_Left);
    const TimeSpan span = s.charts().span();
    const Day cursor = s.charts().cursorDay();
    const auto rows = s.workPage->model().rowCount();
    s.charts().setOpen("ph", false);
    recordAll(*s.session, R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-01", "ph": 3.3})");
    CHECK(s.workPage->model().rowCount() == rows + 1);
    CHECK(s.charts().span() == span);
    CHECK(s.charts().cursorDay() == cursor);
    CHECK_FALSE(s.charts().isOpen("ph"));
    s.session->undo();
    CHECK(s.workPage->model().rowCount() == rows);
    s.workPage->showVessel("Knot");
    CHECK(s.charts().chartData().subject == "Knot");
    CHECK(s.charts().span() == s.charts().chartData().whole);
}

TEST_CASE("a reading says its values wherever its entry is said", "[ui][history]") {
    const AtHistory s;
    recordAll(*s.session, R"([
        {"kind": "reading", "vessel": "Plover", "on": "2026-03-01", "ph": 3.31, "gravity_sg": 1.004, "ta_g_l": 7.2},
        {"kind": "reading", "vessel": "Plover", "on": "2026-02-27", "note": "pellicle whole"}])");
    s.charts().moveCursor(day(2026, 3, 1));
    LedgerModel ledger(*s.session);
    ledger.show(*s.session->desk().ledger("Plover"));
    const QString inTable = ledger.index(0, LedgerModel::entry).data().toString();
    CHECK(inTable.startsWith("reading: 1.004"));
    CHECK(inTable.contains("pH 3.31"));
    CHECK(inTable.contains("TA 7.2 g/L"));
    INFO(s.workPage->cursorWords().toStdString());
    CHECK(s.workPage->cursorWords().contains(inTable));
    s.charts().moveCursor(day(2026, 2, 27)); // nothing was measured: nothing is made up
    CHECK(s.workPage->cursorWords().startsWith("27 Feb 2026: reading."));
    DisplayUnits units;
    units.gravity = DisplayUnits::Gravity::plato;
    s.session->setUnits(units);
    s.charts().moveCursor(day(2026, 3, 1));
    CHECK(s.workPage->cursorWords().contains("reading: 1.0 \u00b0P, pH 3.31"));
}

TEST_CASE("an event says what it was, as a mark, at the cursor and in the table", "[ui][history][event]") {
    AtHistory s("Heron", R"([
      {"kind": "vessel", "name": "Heron", "capacity_l": 225},
      {"kind": "opening", "vessel": "Heron", "on": "2025-02-01", "volume_l": 214},
      {"kind": "event", "vessel": "Heron", "on": "2025-08-20", "what": "moved", "note": "to the back wall"}])");
    const auto& events = s.charts().chartData().events;
    const auto mark = std::find_if(events.begin(), events.end(),
                                   [](const ChartEvent& event) { return event.on == day(2025, 8, 20); });
    REQUIRE(mark != events.end());
    CHECK(mark->words == "vessel moved");
    CHECK(mark->glyph == Glyph::event);
    CHECK(mark->row == ChartEvent::Row::look);
    CHECK_FALSE(mark->change);
    const HistoryRow row = s.history().rows.back();
    CHECK(entryWord(row) == "Vessel moved");
    CHECK(row.note == "to the back wall");
}

TEST_CASE("a sitting not learned from says so, as a mark, at the cursor and in the table", "[ui][history][learn]") {
    AtHistory s("Heron", withVessel(std::string(opened) + ", " + sat + R"(,
      {"kind": "sitting_use", "vessel": "Heron", "sitting": "2025-03-01", "learn": false, "reason": "a head cold"})"));
    const auto& series = s.panel("acidity").series;
    const auto named = [&](const QString& name) {
        return std::find_if(series.begin(), series.end(), [&](const ChartSeries& one) { return one.name == name; });
    };
    REQUIRE(named("tasted, not learned from") != series.end());
    CHECK(named("tasted, not learned from")->points.size() == 1);
    CHECK(named("tasted, not learned from")->shape != named("tasted")->shape);
    CHECK(named("tasted")->points.empty());
    const auto& events = s.charts().chartData().events;
    CHECK(std::any_of(events.begin(), events.end(),
                      [](const ChartEvent& event) { return event.words == "tasted, not learned from"; }));
    s.key(Qt::Key_T);
    const auto& model = *part<CopyTable>(*s.workPage).model();
    const int row = model.rowCount() - 1;
    CHECK(model.index(row, columnTitled(model, "Entry")).data() == "Sitting, not learned from");
    CHECK(model.index(row, columnTitled(model, "Note")).data().toString().endsWith("; a head cold"));
    const auto rows = s.history().rows;
    CHECK(toCsv(rows).find(",no,\"a head cold\",") != std::string::npos);
    CHECK(toJson(s.history()).find("\"learn\": false") != std::string::npos);
    s.key(Qt::Key_T);
    REQUIRE(s.session->record(SittingUseFact{"Heron", day(2025, 3, 1), 1, true, ""}));
    CHECK(s.panel("acidity").series.size() == 3);
}

TEST_CASE("charts are chosen from the menu", "[ui][history]") {
    AtHistory s;
    QMenu* menu = visibleButton(*s.workPage, "Choose charts")->menu();
    REQUIRE(menu);
    REQUIRE(menu->actions().size() == static_cast<int>(s.charts().chartData().panels.size()));
    QAction* funk = menu->actions().at(1);
    CHECK(funk->text() == "Funk");
    CHECK(funk->isChecked());
    funk->trigger();
    CHECK_FALSE(s.charts().isOpen("funk"));
    CHECK_FALSE(s.workPage->cursorWords().contains("Funk"));
    menu->actions().at(1)->trigger();
    CHECK(s.charts().isOpen("funk"));
}

TEST_CASE("nothing keeps anyone from using the history", "[ui][history][audit]") {
    AuditReport all;
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        install(*qApp, look);
        for (const auto face : {HistoryPage::Face::charts, HistoryPage::Face::table, HistoryPage::Face::promises}) {
            AtHistory s;
            s.workPage->showFace(face);
            QTest::qWait(1);
            all.add(audit(*s.workPage));
        }
        AtHistory empty("Heron", withVessel(""));
        all.add(audit(*empty.workPage));
    }
    install(*qApp, Appearance::light);
    std::puts(("history " + all.summary()).toUtf8().constData());
    INFO(all.findings.join("\n").toStdString());
    CHECK(all.findings.isEmpty());
    CHECK(all.focusable > 30);
}

TEST_CASE("figures of the history", "[.][bench]") {
    DeskInScratch made;
    constexpr int weeks = 52 * 20;
    const Day first = made.today - std::chrono::days{7 * weeks};
    std::vector<Fact> facts{OpeningFact{"Heron", first, Litres{220}, {}, {}, {}, {}, {}, {}, ""}};
    for (int week = 1; week < weeks; ++week) {
        const Day on = first + std::chrono::days{7 * week};
        if (week % 34 == 0) {
            facts.emplace_back(DrawOffFact{"Heron", on, Litres{75}, "", {}, ""});
            facts.emplace_back(RefillFact{"Heron", on, Litres{78}, "", "", Days{14}, ""});
        } else {
            facts.emplace_back(ReadingFact{
                "Heron", on, {SpecificGravity{1.003}, Ph{3.3 + .001 * (week % 40)}, GramsPerLitre{6}, {}, {}}, ""});
        }
    }
    recordAll(*made.desk, oneVessel);
    REQUIRE(made.desk->record(facts));
    Session session(std::move(made.desk));
    ScriptedPrompt prompt;
    const auto answer = bench::timesMs(5, [&] { static_cast<void>(session.desk().history("Heron")); });
    bench::print("history_answer_20_years", bench::quantile(answer, .5), "ms", answer.size());
    std::unique_ptr<HistoryPage> workPage;
    const auto paint = bench::timesMs(7, [&] {
        workPage = std::make_unique<HistoryPage>(session, prompt);
        workPage->resize(1000, 600);
        workPage->showVessel("Heron");
        workPage->show();
        static_cast<void>(workPage->grab());
    });
    bench::print("history_first_paint_20_years", bench::quantile(paint, .5), "ms", paint.size());
    workPage->focusWork();
    ChartStack& charts = part<ChartStack>(*workPage);
    const auto moves = bench::timesMs(60, [&] {
        QTest::keyClick(&charts, Qt::Key_Left);
        static_cast<void>(workPage->grab());
    });
    bench::print("history_cursor_move_20_years", bench::quantile(moves, .5), "ms", moves.size());
    bench::print("history_cursor_move_20_years_p99", bench::quantile(moves, .99), "ms", moves.size());
    const auto zooms = bench::timesMs(10, [&] {
        QTest::keyClick(&charts, Qt::Key_Plus);
        static_cast<void>(workPage->grab());
    });
    bench::print("history_zoom_20_years", bench::quantile(zooms, .5), "ms", zooms.size());
}
