// SPDX-License-Identifier: GPL-3.0-or-later
// A round on record: among the entries of its vessel, to be put right, removed and brought back; and the look to come.
#include "ui/support.h"

#include "desk/ledger.h"
#include "desk/round.h"
#include "sheet/document.h"
#include "ui/cellar/round_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/present/ledger_model.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"

#include <QLineEdit>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtLedger : WindowInScratch {
    AtLedger() {
        recordAll(*window->session(), R"({"kind": "round", "vessel": "Heron", "on": "2026-03-01", "weep": "damp",
                                          "next_look": "2026-03-30", "note": "third stave"})");
        window->cellar()->showVessel("Heron");
        window->cellar()->showPage(PageId::drawRefill);
    }
    [[nodiscard]] DrawRefillPage& page() const { return window->cellar()->drawRefill(); }
    [[nodiscard]] int row() const {
        for (int i = 0; i < page().model().rowCount(); ++i)
            if (page().model().at(i)->table == "round")
                return i;
        return -1;
    }
    void select() const {
        REQUIRE(row() >= 0);
        page().table().setCurrentIndex(page().model().index(row(), 0));
    }
    [[nodiscard]] RoundFact round() const { return desk().vessel("Heron")->round->last; }
};

} // namespace

TEST_CASE("a round stands among the entries as its day left the vessel", "[ui][round][ledger]") {
    AtLedger at;
    const auto with = at.desk().ledger("Heron", true), without = at.desk().ledger("Heron");
    CHECK(with->lines.size() == without->lines.size() + 1);
    CHECK(with->lines.size() == with->states.size());
    REQUIRE(at.row() == 0);
    const LedgerLine& line = *at.page().model().at(0);
    CHECK(text(line.text).contains("damp"));
    CHECK(line.note == "third stave");
    CHECK(line.volumeAfter == without->lines.back().volumeAfter);
}

TEST_CASE("a round is put right and removed where entries are, each by one undo", "[ui][round][ledger]") {
    AtLedger at;
    at.select();
    at.page().amendSelected();
    FactForm& form = part<FactForm>(at.page().form());
    CHECK(at.page().form().isVisible());
    CHECK(form.choice("weep")->word() == "damp");
    CHECK(form.choice("bung")->word().empty()); // was not looked at
    form.choice("weep")->setWord("dripping");
    QLineEdit& next = *form.date("next_look")->edit();
    next.setFocus();
    next.selectAll();
    QTest::keyClicks(&next, "2026-03-0x");
    CHECK_FALSE(form.usable());
    next.selectAll();
    at.key(Qt::Key_Delete);
    CHECK(form.usable()); // a month on, as nobody says otherwise
    at.key(Qt::Key_Return);
    CHECK(at.round().weep == Weep::dripping);
    CHECK_FALSE(at.round().bung);
    CHECK_FALSE(at.round().nextLook);
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.round().weep == Weep::damp);
    CHECK(at.round().nextLook == day(2026, 3, 30));
    at.select();
    at.page().removeSelected();
    CHECK_FALSE(at.desk().vessel("Heron")->round);
    CHECK(at.row() == -1);
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.round().note == "third stave");
}

TEST_CASE("the rows of a large cellar come while the first can be filled in", "[ui][round]") {
    AtLedger at;
    std::string vessels;
    for (int i = 0; i < 40; ++i)
        vessels += std::string(i ? "," : "") + R"({"kind": "vessel", "capacity_l": 50, "name": "Keg )" +
                   std::to_string(i) + "\"}";
    recordAll(*at.window->session(), "[" + vessels + "]");
    at.window->cellar()->showRound();
    const RoundPage& page = at.window->cellar()->round();
    CHECK(page.rows().size() < 20);
    CHECK(page.rows().front().level->edit()->hasFocus());
    page.rows().front().note->setText("quiet");
    const auto all = std::get<sheet::Table>(at.desk().walkSheet().blocks.front()).rows.size();
    REQUIRE(QTest::qWaitFor([&] { return page.rows().size() == all; }, 20000));
    CHECK(page.rows().front().note->text() == "quiet");
    CHECK(page.rows().front().level->edit()->hasFocus());
}
