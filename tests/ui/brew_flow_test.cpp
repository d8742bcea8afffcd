// SPDX-License-Identifier: GPL-3.0-or-later
// The liquid's way at a glance, and what of the plan is in sight without scrolling.
#include "ui/brew_support.h"

#include "brewing/brew_plan.h"
#include "facts/sample.h"
#include "ui/brew/flow_diagram.h"
#include "ui/window/cellar_view.h"

#include <QScrollArea>
#include <QScrollBar>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

const FlowCell& cell(const AtBrew& s, FlowPage::Step step) {
    return parts<FlowCellButton>(s.flow().diagram()).at(step - FlowPage::water)->cell();
}

} // namespace

TEST_CASE("the diagram tells litres and gravity of every step as the steps do", "[ui][brew][diagram]") {
    const AtBrew s;
    REQUIRE(s.flow().diagram().isVisible());
    const BrewPlan& plan = s.plan();
    CHECK(cell(s, FlowPage::water).amount == s.session->amount(plan.strikeAndInfusion + plan.sparge));
    CHECK(cell(s, FlowPage::mash).amount == s.session->amount(plan.preBoilHot));
    CHECK(cell(s, FlowPage::kettle).amount == s.session->amount(plan.postBoilHot));
    CHECK(cell(s, FlowPage::fermenter).amount == s.session->amount(plan.intoFermenter));
    CHECK(cell(s, FlowPage::vessel).amount == s.session->amount(plan.intoVessel));
    CHECK(cell(s, FlowPage::kettle).how.contains(s.session->amount(plan.originalGravity)));
    CHECK(cell(s, FlowPage::vessel).how.contains(s.session->amount(plan.finalGravity)));
    for (int step = FlowPage::water; step < FlowPage::stepCount_; ++step)
        CHECK(cell(s, static_cast<FlowPage::Step>(step)).name ==
              s.flow().step(static_cast<FlowPage::Step>(step)).name());
    s.type("/original_gravity_p", "1.070", false); // each keystroke counts
    CHECK(cell(s, FlowPage::kettle).how.contains("1.070"));
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    s.session->setUnits(units);
    CHECK(cell(s, FlowPage::mash).amount.contains("gal"));
}

TEST_CASE("what does not fit is marked in the diagram and said to those who cannot see it", "[ui][brew][diagram]") {
    const AtBrew s;
    CHECK(cell(s, FlowPage::mash).findings.isEmpty());
    s.type("/draw_l", "170");
    REQUIRE_FALSE(cell(s, FlowPage::mash).findings.isEmpty());
    const FlowCellButton& mash = *parts<FlowCellButton>(s.flow().diagram())[FlowPage::mash - FlowPage::water];
    CHECK(mash.accessibleDescription().contains("too large for the tun"));
    CHECK(mash.accessibleName() == "Go to Mash");
    // The mark is a shape: without the finding the cell looks different.
    const QImage marked = const_cast<FlowCellButton&>(mash).grab().toImage();
    FlowCell plain = mash.cell();
    plain.findings.clear();
    const_cast<FlowCellButton&>(mash).show(plain, Litres{400});
    CHECK(const_cast<FlowCellButton&>(mash).grab().toImage() != marked);
}

TEST_CASE("Enter on a step of the diagram goes to its first field", "[ui][brew][diagram]") {
    const AtBrew s;
    auto* scroll = s.planPage().findChild<QScrollArea*>();
    const auto cells = parts<FlowCellButton>(s.flow().diagram());
    for (int i = static_cast<int>(cells.size()) - 1; i >= 0; --i) {
        const auto step = static_cast<FlowPage::Step>(i + FlowPage::water);
        cells[i]->setFocus();
        QTest::keyClick(cells[i], Qt::Key_Return);
        const StepSection& section = s.flow().step(step);
        INFO(section.name().toStdString());
        CHECK_FALSE(section.visibleRegion().isEmpty());
        if (step != FlowPage::vessel) { // it has no field
            REQUIRE(s.window.focusWidget());
            CHECK(section.isAncestorOf(s.window.focusWidget()));
        }
    }
    CHECK(scroll->verticalScrollBar()->value() == 0); // water is on top
    QTest::mouseClick(cells[2], Qt::LeftButton);
    CHECK(scroll->verticalScrollBar()->value() > 0);
    CHECK(s.flow().step(FlowPage::kettle).isAncestorOf(s.window.focusWidget()));
}

TEST_CASE("the arrow keys go along the diagram", "[ui][brew][diagram]") {
    const AtBrew s;
    const auto cells = parts<FlowCellButton>(s.flow().diagram());
    cells[0]->setFocus();
    QTest::keyClick(cells[0], Qt::Key_Right);
    CHECK(s.window.focusWidget() == cells[1]);
    QTest::keyClick(cells[1], Qt::Key_Left);
    CHECK(s.window.focusWidget() == cells[0]);
}

TEST_CASE("a window of 1280 x 800 shows the mash as a curve without scrolling", "[ui][brew][diagram]") {
    WindowInScratch w(false);
    REQUIRE(w.window->sampleBook(w.book));
    w.window->cellar()->showVessel("Plover");
    w.key(Qt::Key_3, Qt::ControlModifier);
    QTest::qWait(50);
    REQUIRE(w.window->size() == QSize(1280, 800));
    const MashChart& chart = part<MashChart>(part<PlanPage>(w.window->cellar()->brew()));
    const QRect seen = chart.visibleRegion().boundingRect();
    INFO("seen " << seen.width() << "x" << seen.height() << " of " << chart.width() << "x" << chart.height());
    CHECK(seen.top() == 0);
    CHECK(seen.width() == chart.width());
    const RestHandle* lowest = handles(chart).front(); // the coolest rest lies lowest
    CHECK(seen.contains(lowest->geometry()));
}

TEST_CASE("a narrow window has the drawing below the rests, and all of it within its width", "[ui][brew][diagram]") {
    AtBrew s;
    for (const int width : {1400, 1000, 700}) {
        s.window.resize(width, 600);
        QTest::qWait(20);
        INFO(width);
        auto* scroll = s.planPage().findChild<QScrollArea*>();
        CHECK(scroll->widget()->width() <= scroll->viewport()->width());
        const MashEditor& mash = part<MashEditor>(s.flow());
        const MashChart& drawn = part<MashChart>(mash);
        const QRect chart(drawn.mapTo(&mash, QPoint()), drawn.size());
        CHECK(chart.right() <= mash.width());
        if (width == 1400)
            CHECK(chart.left() > mash.width() / 3);
        if (width == 700)
            CHECK(chart.left() < mash.width() / 3);
    }
}
