// SPDX-License-Identifier: GPL-3.0-or-later
// Every page of the window under the audit, in both palettes; the scale is the environment's (QT_SCALE_FACTOR).
#include "ui/audit.h"
#include "ui/support.h"

#include "desk/lots.h"
#include "quantity/language.h"
#include "ui/adjust/page.h"
#include "ui/brew/page.h"
#include "ui/cellar/cellar_page.h"
#include "ui/cellar/start_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/page.h"
#include "ui/finish/lot_form.h"
#include "ui/finish/lot_ledger.h"
#include "ui/finish/page.h"
#include "ui/history/page.h"
#include "ui/pantry/ingredients_page.h"
#include "ui/taste/page.h"
#include "ui/widgets/theme.h"
#include "ui/window/cellar_view.h"

#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include <iostream>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::vessel;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

/// Looks at one page after another and remembers where a finding was.
class Round {
public:
    explicit Round(WindowInScratch& w) : w_(w) {}
    AuditReport whole;

    void look(const char* where) {
        AuditReport report;
        for (int tries = 0; tries < 25; ++tries) { // layouts settle in several passes, later on a busy machine
            QTest::qWait(20);
            report = audit(*w_.window);
            if (report.findings.isEmpty())
                break;
        }
        for (QString& finding : report.findings)
            finding = QString(where) + ": " + finding;
        whole.add(report);
    }
    void lookAtPages(const char* vessel) {
        CellarView& cellar = *w_.window->cellar();
        cellar.showVessel(vessel);
        cellar.showPage(PageId::taste);
        look("taste");
        cellar.taste().showLongSheet(true);
        look("long sheet");
        cellar.taste().showLongSheet(false);
        cellar.taste().showAllTasters(true);
        look("all tasters");
        cellar.taste().showAllTasters(false);
        cellar.taste().showBlankSheet(true);
        look("blank sheet");
        cellar.taste().showBlankSheet(false);
        lookAtSetAside(cellar, vessel);
        lookAtAdjust(cellar);
        cellar.showPage(PageId::brew);
        look("brew plan");
        cellar.brew().showAsBrewed();
        look("as brewed");
        cellar.showBrewSheet();
        look("brew sheet");
        cellar.brew().showPlan();
        lookAtFinish(cellar);
        cellar.showPage(PageId::history);
        look("history");
        cellar.history().showFace(HistoryPage::Face::table);
        look("history table");
        cellar.history().showFace(HistoryPage::Face::promises);
        look("promises");
        cellar.history().showFace(HistoryPage::Face::charts);
        cellar.showPage(PageId::drawRefill);
        look("ledger");
    }

private:
    /// The last sitting, if there is one, while it is not learned from.
    void lookAtSetAside(CellarView& cellar, const char* vessel) {
        const auto sittings = w_.window->session()->desk().sittings(vessel);
        if (!sittings || sittings->empty())
            return;
        const auto before = cellar.taste().draft().id();
        cellar.taste().openSitting(sittings->front().id);
        w_.window->session()->record(
            facts::SittingUseFact{vessel, sittings->front().fact.sitting.on, 1, false, "the glasses smelt of soap"});
        look("sitting set aside");
        w_.window->session()->undo();
        cellar.taste().openSitting(before);
    }
    /// The newest, with each of its entries.
    void lookAtLots(CellarView& cellar) {
        const auto lots = w_.window->session()->desk().lots();
        if (!lots || lots->empty())
            return;
        const facts::LotName lot = lots->front().name;
        cellar.finish().chooseLot(lot);
        look("lot");
        LotLedger& ledger = part<LotLedger>(cellar.finish());
        const auto enter = [&](auto fact) {
            if constexpr (requires { fact.lot; })
                fact.lot = lot;
            fact.on = w_.today;
            ledger.begin(fact);
            look("entry of a lot");
        };
        enter(facts::LotReadingFact{});
        enter(facts::LotAdditionFact{});
        enter(facts::LotMoveFact{});
        enter(facts::PackagingFact{});
        enter(facts::OpenedFact{});
        part<LotForm>(ledger).leave();
        cellar.finish().chooseLot({});
    }
    void lookAtFinish(CellarView& cellar) {
        cellar.showPage(PageId::finish);
        cellar.focusWork();
        w_.type("40");
        cellar.finish().answerNow();
        look("pack");
        cellar.finish().showPart(FinishPage::Part::blend);
        look("blend");
        cellar.finish().showPart(FinishPage::Part::pack);
        lookAtLots(cellar);
    }
    void lookAtAdjust(CellarView& cellar) {
        cellar.showPage(PageId::adjust);
        CHECK(QTest::qWaitFor([&] { return !cellar.adjust().busy(); }, 30000));
        look("adjust");
        cellar.adjust().openTarget(true);
        look("target");
        cellar.adjust().openTarget(false);
        cellar.adjust().openDrawDay(true);
        look("draw day");
        cellar.adjust().openDrawDay(false);
    }

    WindowInScratch& w_;
};

void lookAtEntries(WindowInScratch& w, Round& round) {
    DrawRefillPage& workPage = w.window->cellar()->drawRefill();
    for (const EntryKind kind : {EntryKind::drawOff, EntryKind::refill, EntryKind::reading, EntryKind::event}) {
        workPage.begin(kind);
        round.look("entry");
        workPage.form().leave();
    }
}

AuditReport roundIn(Appearance look) {
    WindowInScratch w(false);
    Round round(w);
    w.window->setAppearance(look);
    round.look("first page");
    REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
    for (const char* vessel : {"Plover", "Knot", "Dunlin"})
        round.lookAtPages(vessel);
    lookAtEntries(w, round);
    CellarView& cellar = *w.window->cellar();
    cellar.showAll();
    CHECK(QTest::qWaitFor([&] { return cellar.all().model().isWorkedOut(); }, 30000));
    round.look("all vessels");
    cellar.all().showYear(true);
    round.look("the year ahead");
    recordAll(*w.window->session(),
              R"({"kind": "vessel", "name": "Curlew", "capacity_l": 500, "wanted_age_years": 2})");
    round.lookAtPages("Curlew");
    w.window->cellar()->drawRefill().begin(EntryKind::opening);
    round.look("opening");
    w.window->cellar()->addVessel();
    round.look("new vessel");
    w.window->cellar()->showVessel("Plover");
    w.window->cellar()->changeVessel();
    round.look("change a vessel");
    w.window->cellar()->showRound();
    round.look("the round");
    w.window->cellar()->showIngredients();
    round.look("ingredients");
    w.window->cellar()->ingredients().makeOwn();
    round.look("an ingredient of one's own");
    recordAll(*w.window->session(), R"([{"kind": "room", "on": "2025-01-01", "name": "Barn", "coldest_c": 6,
                                         "warmest_c": 24, "coldest_month": "january"},
                                        {"kind": "vessel_edit", "vessel": "Plover", "room": "Barn"}])");
    w.window->cellar()->showRooms();
    round.look("rooms");
    w.window->toggleHelp();
    round.look("help");
    return round.whole;
}

} // namespace

TEST_CASE("every page passes the audit in both palettes", "[ui][audit]") {
    AuditReport whole;
    for (const Appearance look : {Appearance::light, Appearance::dark})
        whole.add(roundIn(look));
    install(*qApp, Appearance::light);
    std::cout << whole.summary().toStdString() << '\n';
    for (const QString& finding : whole.findings)
        FAIL_CHECK(finding.toStdString());
    CHECK(whole.focusable > 2000);
    CHECK(whole.contrasts > 3000);
}

// Another process than the other cases: tables and texts are read once, in the language of STAVELINE_LANGUAGE.
TEST_CASE("every page passes the audit in another language", "[.language]") {
    const AuditReport whole = roundIn(Appearance::light);
    install(*qApp, Appearance::light);
    std::cout << spoken().code << ' ' << whole.summary().toStdString() << '\n';
    for (const QString& finding : whole.findings)
        FAIL_CHECK(finding.toStdString());
    CHECK(spoken() != languages().front());
    CHECK(whole.focusable > 1000);
}

TEST_CASE("the audit finds what it looks for", "[ui][audit]") {
    QWidget window;
    window.setPalette(lightPalette());
    QVBoxLayout column(&window);
    auto* nameless = new QToolButton;
    nameless->setFocusPolicy(Qt::StrongFocus);
    auto* pale = new QLabel("hardly there");
    QPalette faint = window.palette();
    faint.setColor(QPalette::WindowText, QColor(0xcfc8bb));
    pale->setPalette(faint);
    auto* cut = new QLabel("a line of text that has no room");
    cut->setFixedWidth(30);
    auto* sheet = new QPushButton("&Sheet");
    sheet->setStyleSheet("color: #123456");
    column.addWidget(nameless);
    column.addWidget(pale);
    column.addWidget(cut);
    column.addWidget(sheet);
    column.addWidget(new QPushButton("&Same"));
    column.addWidget(new QLabel("Twice is too often here."));
    column.addWidget(new QLabel("A word first. Twice is too often here."));
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    const QString found = audit(window).findings.join('\n');
    INFO(found.toStdString());
    CHECK(found.contains("no name: QToolButton"));
    CHECK(found.contains("contrast"));
    CHECK(found.contains("clipped: QLabel"));
    CHECK(found.contains("colour in the style sheet"));
    CHECK(found.contains("key Alt+S means"));
    CHECK(found.contains("said twice: Twice is too often here."));
}
