// SPDX-License-Identifier: GPL-3.0-or-later
// Tab goes where the eye goes: the cellar, the header with its dates, the pages, then the page in front from top to
// bottom. Walked with real keys, named as assistive technology names the stops.
#include "ui/support.h"

#include "facts/sample.h"
#include "ui/adjust/page.h"
#include "ui/brew/page.h"
#include "ui/draw_refill/page.h"
#include "ui/history/page.h"
#include "ui/taste/page.h"
#include "ui/widgets/underlined_tabs.h"
#include "ui/window/cellar_view.h"

#include <QRadioButton>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct TabWalk : WindowInScratch {
    TabWalk() : WindowInScratch(false) {
        REQUIRE(window->sampleBook(scratch / "sample.cellar"));
        window->cellar()->showVessel("Plover");
    }
    void go(PageId page) const {
        key(static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(page)), Qt::ControlModifier);
        if (page == PageId::adjust)
            REQUIRE(QTest::qWaitFor([this] { return !window->cellar()->adjust().busy(); }, 20000));
        QTest::qWait(20);
    }
    /// The tabs are called as the one in front.
    [[nodiscard]] QString pageName() const { return accessibleName(part<UnderlinedTabs>(*window->cellar(), "Pages")); }
    /// From the rail once around; each stop as it is called.
    [[nodiscard]] QStringList round() const {
        QStringList names;
        tabTo("Cellar");
        QWidget* const first = focus();
        do {
            names << accessibleName(*focus());
            key(Qt::Key_Tab);
        } while (focus() != first && names.size() < 200);
        CHECK(names.size() < 200);
        return names;
    }
};

/// Each of `wanted` is met, in this order; "draw and refill*" is how a name starts.
void checkOrder(const QStringList& met, const QStringList& wanted) {
    INFO(met.join("\n").toStdString());
    qsizetype from = 0;
    for (const QString& name : wanted) {
        const bool start = name.endsWith('*');
        const QString words = start ? name.chopped(1) : name;
        qsizetype at = from;
        while (at < met.size() && !(start ? met[at].startsWith(words) : met[at] == words))
            ++at;
        INFO(name.toStdString());
        CHECK(at < met.size());
        if (at < met.size())
            from = at + 1;
    }
}
qsizetype indexOf(const QStringList& met, const QString& start) {
    for (qsizetype at = 0; at < met.size(); ++at)
        if (met[at].startsWith(start))
            return at;
    return -1;
}

} // namespace

TEST_CASE("the header comes before the page, the page before the status line", "[ui][tab]") {
    const TabWalk w;
    for (const PageId page :
         {PageId::taste, PageId::adjust, PageId::brew, PageId::drawRefill, PageId::finish, PageId::history}) {
        CAPTURE(static_cast<int>(page));
        w.go(page);
        const QStringList met = w.round();
        checkOrder(met, {"Cellar", "Add a vessel", "Change this vessel", "taste, *", "brew, *", "draw and refill, *",
                         w.pageName(), "F1 help"});
        CHECK(met.indexOf(w.pageName()) < 12); // nothing of a page came before
    }
}

TEST_CASE("in Adjust the proposals come within a few keys, the board of levers last", "[ui][tab]") {
    const TabWalk w;
    w.go(PageId::adjust);
    const QStringList met = w.round();
    checkOrder(met, {"Adjust", "Target", "Draw day", "As a table", "Adopt*", "Saccharification temperature"});
    qsizetype proposal = -1;
    for (const auto* radio : parts<QRadioButton>(w.window->cellar()->adjust()))
        if (const qsizetype at = met.indexOf(accessibleName(const_cast<QRadioButton&>(*radio))); at >= 0)
            proposal = proposal < 0 ? at : std::min(proposal, at);
    INFO(met.join("\n").toStdString());
    REQUIRE(proposal > 0);
    CHECK(proposal - met.indexOf("Adjust") <= 14);
    CHECK(proposal < indexOf(met, "Lock "));
}

TEST_CASE("in Draw & refill the entries come first, then the ledger", "[ui][tab]") {
    const TabWalk w;
    w.go(PageId::drawRefill);
    checkOrder(w.round(),
               {w.pageName(), "Draw-off", "Refill", "Top-up", "Sample", "Dip", "Reading", "Amend", "Remove", "Ledger"});
    w.key(Qt::Key_F, Qt::ControlModifier);
    checkOrder(w.round(), {"Remove", "Words to find", "Ledger"});
}

TEST_CASE("in History the faces come before the time and the charts", "[ui][tab]") {
    const TabWalk w;
    w.go(PageId::history);
    checkOrder(w.round(), {"History", "Charts", "Table (T)", "Promises (P)", "Time shown*", "Choose charts", "Save as",
                           "Print", "Charts of Plover"});
}

TEST_CASE("in Brew the steps follow the liquid", "[ui][tab]") {
    const TabWalk w;
    w.go(PageId::brew);
    const QStringList met = w.round();
    checkOrder(met, {"Brew", "Plan", "Brew sheet", "As brewed"});
    checkOrder(met, {"From rest to rest*", "As a table (T)", "Rest 1, *", "Boil*", "Sugar*", "Kind of sugar*"});
    CHECK(indexOf(met, "taste, ") < indexOf(met, "Plan"));
}

TEST_CASE("in Taste a column is filled in before the next", "[ui][tab]") {
    const TabWalk w;
    w.go(PageId::taste);
    const QStringList met = w.round();
    QStringList glasses;
    for (const QString& name : met)
        if (name.endsWith(", cold") || name.endsWith(", cellar"))
            glasses << name.section(", ", -1);
    INFO(met.join("\n").toStdString());
    REQUIRE(glasses.contains("cellar"));
    CHECK(glasses.lastIndexOf("cold") < glasses.indexOf("cellar"));
}

TEST_CASE("what was made late stands where it is read, Shift+Tab goes back the same way", "[ui][tab]") {
    const TabWalk w;
    w.go(PageId::history);
    REQUIRE(w.window->session()->record(facts::DipFact{"Plover", w.today, Litres{200}, ""})); // new dates
    const QStringList forth = w.round();
    checkOrder(forth, {"Change this vessel", "taste*", "History", "Charts"});
    QStringList back;
    w.tabTo("Cellar");
    QWidget* const first = w.focus();
    do {
        back.prepend(accessibleName(*w.focus()));
        w.key(Qt::Key_Backtab, Qt::ShiftModifier);
    } while (w.focus() != first && back.size() < 200);
    back.prepend(back.takeLast());
    CHECK(back == forth);
}
