// SPDX-License-Identifier: GPL-3.0-or-later
// The whole job by keyboard alone: real key events, from the first page through a cycle and all the way back.
#include "ui/support.h"

#include "ui/adjust/lever_board.h"
#include "ui/adjust/page.h"
#include "ui/adjust/proposal_list.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/history/page.h"
#include "ui/taste/page.h"
#include "ui/taste/score_sheet.h"
#include "ui/widgets/number_field.h"
#include "ui/window/actions.h"
#include "ui/window/cellar_view.h"

#include <QAction>
#include <QCheckBox>
#include <QFile>
#include <QRadioButton>
#include <QStandardPaths>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct Job {
    WindowInScratch w{false};

    [[nodiscard]] const Desk& desk() const { return w.window->session()->desk(); }
    [[nodiscard]] CellarView& cellar() const { return *w.window->cellar(); }
    void ctrl(Qt::Key key) const { w.key(key, Qt::ControlModifier); }
    void ctrlShift(Qt::Key key) const { w.key(key, Qt::ControlModifier | Qt::ShiftModifier); }

    void openSample() const {
        QFile::remove(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) +
                      QStringLiteral("/staveline/sample.cellar"));
        w.tabTo("Sample cellar");
        w.key(Qt::Key_Return);
        REQUIRE(w.window->session());
    }
    void goTo(const VesselName& vessel) const {
        for (int i = 0; i < 5 && cellar().vessel() != vessel; ++i)
            ctrl(Qt::Key_PageDown);
        REQUIRE(cellar().vessel() == vessel);
    }
    void waitForAdvice() const {
        REQUIRE(QTest::qWaitFor([this] { return !cellar().adjust().busy(); }, 20000));
    }
    [[nodiscard]] SittingFact lastSitting() const { return desk().sittings(cellar().vessel())->front().fact; }

    void taste() const;
    void decide() const;
    void editRecipe() const;
    void exportSheet();
    void drawAndRefill() const;
    void lookBack() const;
    [[nodiscard]] int undoUntil(const std::string& start) const;
};

/// A score in every cell of the short sheet, one after the other.
void Job::taste() const {
    ctrl(Qt::Key_1);
    ctrlShift(Qt::Key_T);
    const auto before = desk().sittings("Plover")->size();
    for (int i = 0; i < 24; ++i) {
        w.type(i % 3 == 0 ? "6" : i % 3 == 1 ? "5,5" : "4.5");
        w.key(Qt::Key_Tab);
    }
    REQUIRE(desk().sittings("Plover")->size() == before + 1);
    CHECK(lastSitting().sitting.on == w.today);
    CHECK(desk().taste(lastSitting())->scored == 12);
    CHECK_FALSE(cellar().taste().verdictWords().isEmpty());
}

/// Reads the verdicts, keeps bitterness where it is, takes the first proposal, or leaves it alone where there is none.
void Job::decide() const {
    ctrl(Qt::Key_2);
    waitForAdvice();
    CHECK(part<VerdictPanel>(cellar().adjust()).words().size() >= 3);
    LeverLine* line = part<LeverBoard>(cellar().adjust()).line("bitterness");
    REQUIRE(line);
    w.tabTo(accessibleName(*line->lock()));
    w.key(Qt::Key_Space);
    REQUIRE(desk().locks("Plover")->size() == 1);
    waitForAdvice();
    cellar().focusWork();
    const auto& proposals = part<ProposalList>(cellar().adjust());
    w.tabTo(accessibleName(*proposals.radio(proposals.count() > 0 ? 1 : 0)));
    w.key(Qt::Key_Space);
    waitForAdvice();
    w.key(Qt::Key_Return, Qt::ControlModifier);
    INFO(wordsOf(cellar().adjust(), "message").toStdString());
    REQUIRE(desk().lastChoice("Plover")->on == w.today);
    CHECK(desk().lastChoice("Plover")->forecast);
}

void Job::editRecipe() const {
    const auto before = desk().setting("Plover")->recipe.originalGravity;
    ctrl(Qt::Key_3);
    w.tabTo("Original gravity in SG");
    w.key(Qt::Key_A, Qt::ControlModifier);
    w.type("1,052");
    w.key(Qt::Key_Return);
    CHECK(desk().setting("Plover")->recipe.originalGravity.p > before.p);
    CHECK(desk().planned("Plover")->proposal == ChoiceFact::own);
}

void Job::exportSheet() {
    w.prompt.answers = {w.scratch / "sheet.pdf"};
    ctrlShift(Qt::Key_B);
    ctrlShift(Qt::Key_P);
    CHECK(readAll(w.scratch / "sheet.pdf").starts_with("%PDF-"));
}

void Job::drawAndRefill() const {
    const auto before = desk().vessel("Plover")->now;
    ctrl(Qt::Key_D);
    w.type("60");
    w.key(Qt::Key_Return);
    ctrl(Qt::Key_R);
    w.type("62.5");
    w.key(Qt::Key_Return);
    const auto after = desk().vessel("Plover")->now;
    CHECK(after.volume.l == Approx(before.volume.l + 2.5).margin(.01));
    CHECK(after.cycle == before.cycle + 1);
}

void Job::lookBack() const {
    ctrl(Qt::Key_6);
    w.key(Qt::Key_End);
    const auto last = cellar().history().cursorWords();
    w.key(Qt::Key_Home);
    const auto first = cellar().history().cursorWords();
    CHECK_FALSE(last.isEmpty());
    CHECK_FALSE(first.isEmpty());
    CHECK(first != last);
    w.key(Qt::Key_T);
    CHECK(cellar().history().face() == HistoryPage::Face::table);
}

int Job::undoUntil(const std::string& start) const {
    int steps = 0;
    for (; fingerprint(desk()) != start; ++steps) {
        REQUIRE(steps < 60);
        REQUIRE(w.action("Undo").isEnabled());
        CHECK(w.action("Undo").text().contains(qs(desk().undoText())));
        ctrl(Qt::Key_Z);
    }
    return steps;
}

} // namespace

TEST_CASE("the whole job by keyboard alone, and all the way back", "[ui][driven][job]") {
    Job job;
    job.openSample();
    job.goTo("Plover");
    const auto start = fingerprint(job.desk());
    job.taste();
    job.decide();
    job.editRecipe();
    job.exportSheet();
    job.drawAndRefill();
    job.lookBack();
    const auto end = fingerprint(job.desk());
    const int steps = job.undoUntil(start);
    CHECK(steps >= 24 + 1 + 1 + 1 + 2); // scores, lock, choice, recipe, draw and refill
    for (int i = 0; i < steps; ++i)
        job.ctrlShift(Qt::Key_Z);
    CHECK(fingerprint(job.desk()) == end);
}
