// SPDX-License-Identifier: GPL-3.0-or-later
// What a reader with large text, a small screen or strong colours needs: the answers in sight, nothing cut or off the
// window, nothing that jumps, one shape for one meaning.
#include "ui/audit.h"
#include "ui/support.h"

#include "ui/adjust/decision_panel.h"
#include "ui/adjust/lever_board.h"
#include "ui/adjust/page.h"
#include "ui/adjust/target_timeline.h"
#include "ui/adjust/verdict_column.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/brew/page.h"
#include "ui/brew/plan_page.h"
#include "ui/cellar/prospect_panel.h"
#include "ui/chart/chart_stack.h"
#include "ui/chart/panel_view.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/draw_refill/vessel_panel.h"
#include "ui/finish/page.h"
#include "ui/history/columns.h"
#include "ui/history/page.h"
#include "ui/present/ledger_model.h"
#include "ui/taste/page.h"
#include "ui/taste/score_sheet.h"
#include "ui/taste/sitting_header.h"
#include "ui/taste/sitting_summary.h"
#include "ui/widgets/cycle_timeline.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/window/cellar_view.h"

#include <QAbstractButton>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

const std::array sampleVessels = {"Plover", "Knot", "Dunlin"};
const std::array allPages = {PageId::taste,      PageId::adjust, PageId::brew,
                             PageId::drawRefill, PageId::finish, PageId::history};

/// The window on the sample cellar, with text that much larger than usual.
struct AtSample {
    explicit AtSample(double textSize = 1) : usual(QApplication::font()) {
        QFont larger = usual;
        larger.setPointSizeF(usual.pointSizeF() * textSize);
        QApplication::setFont(larger);
        w = std::make_unique<WindowInScratch>(false);
        REQUIRE(w->window->sampleBook(w->scratch / "sample.cellar"));
        QTest::qWait(60);
        w->window->resize(1280, 800);
    }
    ~AtSample() {
        w.reset();
        QApplication::setFont(usual);
    }
    AtSample(const AtSample&) = delete;
    AtSample& operator=(const AtSample&) = delete;

    [[nodiscard]] CellarView& cellar() const { return *w->window->cellar(); }
    void at(const char* vessel, PageId page) const {
        cellar().showVessel(vessel);
        cellar().showPage(page);
        cellar().focusWork();
        REQUIRE(QTest::qWaitFor([this] { return !cellar().adjust().busy(); }, 60000));
        QTest::qWait(60);
    }

    QFont usual;
    std::unique_ptr<WindowInScratch> w;
};

/// All of it is on the screen: nothing above it cuts it.
bool whollySeen(const QWidget& widget) {
    return widget.isVisible() && widget.visibleRegion().boundingRect() == widget.rect();
}
bool firstWordsSeen(const QWidget& in) {
    for (const QLabel* label : in.findChildren<QLabel*>())
        if (label->isVisible() && !label->text().isEmpty())
            return whollySeen(*label);
    return false;
}

/// What the brewer would have to read and cannot, when the layouts have settled.
QStringList cutIn(QWidget& window) {
    QStringList cut;
    for (int tries = 0; tries < 25; ++tries) {
        QTest::qWait(20);
        cut.clear();
        for (const QString& finding : audit(window).findings)
            if (finding.startsWith("clipped"))
                cut << finding;
        if (cut.isEmpty())
            break;
    }
    return cut;
}
/// Parts that stick out of the window, or out of what holds them without a way to scroll there.
QStringList offScreen(QWidget& window) {
    QStringList off;
    for (const QWidget* widget : window.findChildren<QWidget*>()) {
        const bool speaks = qobject_cast<const QLabel*>(widget) || qobject_cast<const QAbstractButton*>(widget);
        if (!speaks || !widget->isVisible() || widget->window() != &window || widget->width() == 0)
            continue;
        const QPoint at = widget->mapTo(&window, QPoint(0, 0));
        if (at.x() < 0 || at.x() + widget->width() > window.width())
            off << accessibleName(*const_cast<QWidget*>(widget));
    }
    return off;
}

} // namespace

TEST_CASE("what answers the question of a page is in sight at 1280x800 on first show", "[ui][face]") {
    const AtSample s;
    for (const char* vessel : sampleVessels) {
        INFO(vessel);
        s.at(vessel, PageId::taste);
        const TastePage& taste = s.cellar().taste();
        const SittingSummary& summary = part<SittingSummary>(taste);
        CHECK(whollySeen(summary));
        CHECK(whollySeen(*taste.sheet().firstOpen()));
        s.at(vessel, PageId::adjust);
        const AdjustPage& adjust = s.cellar().adjust();
        for (const VerdictColumn* column : parts<VerdictColumn>(adjust))
            CHECK(whollySeen(*column));
        CHECK(firstWordsSeen(part<DecisionPanel>(adjust)));
        CHECK(whollySeen(part<QPushButton>(adjust, "Adopt")));
        s.at(vessel, PageId::drawRefill);
        CHECK(whollySeen(part<VesselPanel>(s.cellar().drawRefill())));
        s.at(vessel, PageId::history);
        int charts = 0;
        for (const PanelView* panel : parts<PanelView>(s.cellar().history()))
            charts += whollySeen(*panel);
        CHECK(charts >= 3); // the three scores
    }
}

TEST_CASE("charts grow with the window", "[ui][face]") {
    const AtSample s;
    const auto timeline = [&] { return s.cellar().adjust().findChild<TargetTimeline*>()->height(); };
    s.at("Plover", PageId::adjust);
    const int small = timeline();
    CHECK(small >= 100);
    s.w->window->resize(1920, 1080);
    s.at("Plover", PageId::adjust);
    CHECK(timeline() >= 210);
    s.at("Plover", PageId::history);
    const auto panel = [&] { return parts<PanelView>(s.cellar().history()).front()->width(); };
    const int large = panel();
    s.w->window->resize(1280, 800);
    QTest::qWait(30);
    CHECK(large > panel());
}

TEST_CASE("a chart alone fills its room, with its whole legend", "[ui][face]") {
    const AtSample s;
    s.at("Plover", PageId::history);
    s.cellar().changeVessel();
    QTest::qWait(30);
    auto& chart = part<ChartStack>(part<ProspectPanel>(s.cellar()));
    const auto& panel = part<PanelView>(chart);
    CHECK(panel.height() >= chart.findChild<QScrollArea*>()->viewport()->height() - 2);
    QString legend = panel.panel().title + ", " + panel.panel().unit;
    for (const ChartSeries& series : panel.panel().series)
        legend += "   — " + series.name;
    CHECK(QFontMetrics(panel.font()).horizontalAdvance(legend + "     ") < panel.width());
}

TEST_CASE("another vessel begins every page at its top", "[ui][face]") {
    const AtSample s;
    for (const PageId page : allPages) {
        s.at("Plover", page);
        if (page == PageId::finish) { // it answers what is asked
            s.w->type("60");
            s.cellar().finish().answerNow();
            QTest::qWait(60);
        }
        int scrolled = 0;
        for (const auto* area : s.cellar().findChildren<QAbstractScrollArea*>())
            if (area->isVisible() && area->verticalScrollBar()->maximum() > 0) {
                area->verticalScrollBar()->setValue(area->verticalScrollBar()->maximum());
                ++scrolled;
            }
        INFO("page " << static_cast<int>(page));
        CHECK(scrolled > 0);
        s.at("Knot", page);
        for (const auto* area : s.cellar().findChildren<QAbstractScrollArea*>())
            if (area->isVisible())
                CHECK(area->verticalScrollBar()->value() == 0);
    }
}

TEST_CASE("with text half as large again nothing is off the window or cut at 1280x800", "[ui][face]") {
    const AtSample s(1.5);
    MainWindow& window = *s.w->window;
    CHECK(window.minimumSizeHint().width() <= 1280);
    CHECK(window.minimumSizeHint().height() <= 800);
    for (const char* vessel : sampleVessels)
        for (const PageId page : allPages) {
            window.resize(1280, 800);
            s.at(vessel, page);
            INFO(vessel << " page " << static_cast<int>(page));
            CHECK(window.width() == 1280);
            CHECK(window.height() == 800);
            CHECK(offScreen(window).join("; ").toStdString() == "");
            CHECK(cutIn(window).join("; ").toStdString() == "");
        }
}

TEST_CASE("the ribbon goes on in a second row where it is narrow", "[ui][face]") {
    const AtSample s;
    s.at("Plover", PageId::taste);
    CycleTimeline timeline;
    std::vector<Milestone> milestones;
    for (const MilestoneButton* button : part<CycleTimeline>(s.cellar()).buttons())
        milestones.push_back(button->milestone());
    timeline.setMilestones(milestones, s.w->today, MilestoneKind::brew);
    CHECK(timeline.heightForWidth(1200) == timeline.sizeHint().height());
    CHECK(timeline.heightForWidth(400) == 2 * timeline.sizeHint().height());
    timeline.resize(400, timeline.heightForWidth(400));
    timeline.show();
    for (const MilestoneButton* button : timeline.buttons()) {
        CHECK(timeline.rect().contains(button->geometry()));
        for (const MilestoneButton* other : timeline.buttons())
            CHECK((button == other || !button->geometry().intersects(other->geometry())));
    }
    CHECK(timeline.rect().contains(timeline.todayAt().toPoint()));
}

TEST_CASE("an age has one unit wherever it is told", "[ui][face][age]") {
    const AtSample s;
    const Desk& desk = s.w->window->session()->desk();
    for (const char* vessel : sampleVessels) {
        s.at(vessel, PageId::drawRefill);
        const Days age = desk.vessel(vessel)->now.meanAge;
        const QString words = spanWords(age);
        INFO(vessel << ": " << words.toStdString());
        CHECK(words == qs(show(Age{age.d})));
        bool inHeader = false;
        for (const QLabel* label : s.cellar().findChildren<QLabel*>())
            inHeader = inHeader || (label->isVisible() && label->text().startsWith("mean age " + words));
        CHECK(inHeader);
        const auto& ledger = part<LedgerTable>(s.cellar().drawRefill());
        for (int row = 0; row < ledger.model()->rowCount(); ++row) {
            const desk::LedgerLine* line = s.cellar().drawRefill().model().at(row);
            REQUIRE(line);
            const auto told = ledger.model()->index(row, LedgerModel::age).data().toString();
            CHECK(told == (line->volumeAfter.l > 0 ? qs(show(Age{line->meanAgeAfter.d})) : QString()));
        }
        s.at(vessel, PageId::history);
        s.cellar().history().showFace(HistoryPage::Face::table);
        const auto history = desk.history(vessel);
        REQUIRE(history);
        const auto columns = historyColumns({});
        const auto column = std::find_if(columns.begin(), columns.end(),
                                         [](const HistoryColumn& each) { return each.key == "mean_age_d"; });
        for (const HistoryRow& row : history->rows)
            if (row.meanAge)
                CHECK(column->shown(row) == spanWords(*row.meanAge));
        s.cellar().history().showFace(HistoryPage::Face::charts);
    }
}

TEST_CASE("an entry that cannot be made is shown against today, not against a row of the past", "[ui][face]") {
    const AtSample s;
    s.at("Plover", PageId::drawRefill);
    DrawRefillPage& page = s.cellar().drawRefill();
    page.table().selectRow(6);
    const auto says = [&](const QString& words) {
        for (const QLabel* label : part<VesselPanel>(page).findChildren<QLabel*>())
            if (label->isVisible() && label->text().startsWith(words))
                return true;
        return false;
    };
    CHECK(says("After the entry of"));
    page.begin(vessel::EntryKind::drawOff);
    NumberField& drawn = *page.form().fields().number("volume_l");
    CHECK(s.w->focus() == drawn.edit());
    QTest::keyClicks(drawn.edit(), "400");
    CHECK(says("Today"));
    // What the entry is about stands first, its day beside it.
    const auto at = [&](const QWidget& widget) { return widget.mapTo(s.w->window.get(), QPoint(0, 0)); };
    const QPoint number = at(*drawn.edit()), date = at(*page.form().fields().date("on")->edit());
    CHECK(number.x() < date.x());
    CHECK(number.y() == date.y());
}

TEST_CASE("help stands in the page's place where there is no room for both", "[ui][face]") {
    for (const double text : {1.0, 1.5}) {
        const AtSample s(text);
        s.at("Plover", PageId::taste);
        s.w->window->toggleHelp();
        QTest::qWait(60);
        CHECK(s.w->help().isVisible());
        CHECK(s.cellar().isVisible() == (text < 1.2));
        CHECK(s.w->window->width() == 1280);
        s.w->key(Qt::Key_4, Qt::ControlModifier); // what a key does is seen
        CHECK(s.cellar().isVisible());
        CHECK(s.cellar().workPage() == PageId::drawRefill);
        CHECK(s.w->help().isVisible() == (text < 1.2));
        if (s.w->help().isVisible())
            s.w->window->toggleHelp();
        CHECK(s.cellar().isVisible());
    }
}
