// SPDX-License-Identifier: GPL-3.0-or-later
// The round, typed in from the walk sheet: one row a vessel, by keyboard, in one act.
#include "ui/support.h"

#include "desk/ledger.h"
#include "desk/round.h"
#include "sheet/document.h"
#include "ui/cellar/round_page.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"

#include <QCheckBox>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtRound : WindowInScratch {
    AtRound() {
        key(Qt::Key_R, Qt::ControlModifier | Qt::ShiftModifier);
        REQUIRE_FALSE(window->cellar()->atVessel());
    }
    [[nodiscard]] RoundPage& page() const { return window->cellar()->round(); }
    [[nodiscard]] const RoundRow& row(const std::string& vessel) const {
        const auto& rows = page().rows();
        const auto at =
            std::find_if(rows.begin(), rows.end(), [&](const RoundRow& each) { return each.vessel == vessel; });
        REQUIRE(at != rows.end());
        return *at;
    }
};

} // namespace

TEST_CASE("the round has the vessels in the order of the walk sheet", "[ui][round]") {
    AtRound at;
    const auto paper = at.desk().walkSheet();
    const auto& table = std::get<sheet::Table>(paper.blocks.front());
    REQUIRE(at.page().rows().size() == table.rows.size());
    for (std::size_t i = 0; i < table.rows.size(); ++i)
        CHECK(table.rows[i].front().starts_with(at.page().rows()[i].vessel + ","));
    CHECK(at.window->cellar()->paperInFront().printout == &at.page().printout());
    CHECK(at.page().rows().front().level->edit()->hasFocus());
}

TEST_CASE("two vessels are looked at by keyboard alone, and one undo takes all of it back", "[ui][round]") {
    AtRound at;
    const auto before = at.desk().vessel("Heron")->now.volume.l;
    const auto lines = at.desk().ledger("Heron")->lines.size();
    const RoundRow& heron = at.row("Heron");
    heron.level->edit()->setFocus();
    QTest::keyClicks(QApplication::focusWidget(), QString::number(before - 4, 'f', 1));
    at.key(Qt::Key_Tab);
    CHECK(QApplication::focusWidget() == heron.bung);
    QTest::keyClicks(QApplication::focusWidget(), "L"); // loose
    at.key(Qt::Key_Tab);
    QTest::keyClicks(QApplication::focusWidget(), "Da"); // damp
    heron.topped->edit()->setFocus();
    QTest::keyClicks(QApplication::focusWidget(), "3");
    const RoundRow& teal = at.row("Teal");
    teal.note->setFocus();
    QTest::keyClicks(QApplication::focusWidget(), "quiet");
    CHECK_FALSE(at.window->session()->unstored().isEmpty());
    at.key(Qt::Key_Return);
    CHECK(at.window->cellar()->atVessel());
    CHECK(at.window->session()->unstored().isEmpty());
    const auto looked = at.desk().vessel("Heron");
    CHECK(looked->now.volume.l == Approx(before - 1).margin(.06));
    REQUIRE(looked->round);
    CHECK(looked->round->last.bung == Bung::loose);
    CHECK(looked->round->last.weep == Weep::damp);
    CHECK_FALSE(looked->round->last.pellicle);
    CHECK(looked->seen.words.size() == 2);
    CHECK(at.desk().vessel("Teal")->round->last.note == "quiet");
    CHECK(at.desk().ledger("Heron")->lines.size() == lines + 2);
    for (const RoundRow& row : at.page().rows())
        if (row.vessel != "Heron" && row.vessel != "Teal")
            CHECK_FALSE(at.desk().vessel(row.vessel)->round);
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK_FALSE(at.desk().vessel("Heron")->round);
    CHECK_FALSE(at.desk().vessel("Teal")->round);
    CHECK(at.desk().ledger("Heron")->lines.size() == lines);
}

TEST_CASE("a round in which nothing stands, or too much, is told in words and stores nothing", "[ui][round][bad]") {
    AtRound at;
    const auto revision = at.desk().revision();
    at.page().finish();
    CHECK_FALSE(at.page().words().isEmpty());
    const RoundRow& heron = at.row("Heron");
    heron.topped->edit()->setFocus();
    QTest::keyClicks(QApplication::focusWidget(), "220");
    at.page().finish();
    CHECK(at.page().words().startsWith("Heron: "));
    CHECK(heron.topped->edit()->hasFocus()); // where it was typed
    CHECK(at.desk().revision() == revision);
    at.key(Qt::Key_Escape);
    CHECK(at.window->cellar()->atVessel());
    at.key(Qt::Key_R, Qt::ControlModifier | Qt::ShiftModifier); // what was begun is still there
    CHECK(at.row("Heron").topped->stored() == 220.0);
}

TEST_CASE("a next look that is no day is not a month on, but asked for again", "[ui][round][bad]") {
    AtRound at;
    at.row("Heron").purged->click();
    QLineEdit& next = *at.page().nextLook().edit();
    next.selectAll();
    QTest::keyClicks(&next, "2026-04-3x");
    at.page().finish();
    CHECK(at.page().started()); // nothing is stored, nothing lost
    CHECK(next.hasFocus());
    next.selectAll();
    QTest::keyClicks(&next, "2026-04-20");
    at.page().finish();
    CHECK_FALSE(at.page().started());
}

TEST_CASE("a round of another day is kept with its dips and top-ups on that day", "[ui][round]") {
    AtRound at;
    const Day day = testing::testToday - std::chrono::days{3};
    at.page().dayOfRound().setDay(day);
    const RoundRow& heron = at.row("Heron");
    heron.topped->edit()->setFocus();
    QTest::keyClicks(QApplication::focusWidget(), ".5");
    at.page().finish();
    CHECK_FALSE(at.page().started());
    CHECK(at.desk().vessel("Heron")->round->last.on == day);
    CHECK(at.desk().ledger("Heron")->lines.back().on == day);
    at.page().begin();
    at.page().dayOfRound().setDay(testing::testToday + std::chrono::days{3});
    at.row("Heron").purged->click();
    at.page().finish();
    CHECK(at.page().started());
    CHECK(at.page().dayOfRound().edit()->hasFocus());
}

TEST_CASE("the names of the vessels stay in sight while their fields scroll, and cover no field in hand",
          "[ui][round]") {
    AtRound at;
    at.window->resize(700, 600);
    QTest::qWait(50);
    const RoundRow& heron = at.row("Heron");
    const QWidget& name = *heron.cells.front();
    auto* scroll = qobject_cast<QScrollArea*>(name.parentWidget()->parentWidget()->parentWidget());
    REQUIRE(scroll);
    const auto left = [&](const QWidget& widget) { return widget.mapTo(scroll->viewport(), QPoint(0, 0)).x(); };
    REQUIRE(scroll->horizontalScrollBar()->maximum() > 0);
    heron.note->setFocus();
    QTest::qWait(50);
    CHECK(scroll->horizontalScrollBar()->value() > 0);
    CHECK(left(name) == 0);
    CHECK(name.parentWidget()->childAt(name.geometry().center()) == &name);
    heron.bung->setFocus();
    QTest::qWait(50);
    CHECK(left(*heron.bung) >= name.width());
}

TEST_CASE("a round that is thrown away is begun anew", "[ui][round]") {
    AtRound at;
    at.row("Heron").purged->click();
    REQUIRE(at.page().started());
    for (QPushButton* button : at.page().findChildren<QPushButton*>())
        if (button->text() == "Throw it away")
            button->click();
    CHECK_FALSE(at.page().started());
    CHECK(at.window->session()->unstored().isEmpty());
    at.key(Qt::Key_R, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK_FALSE(at.row("Heron").purged->isChecked());
}
