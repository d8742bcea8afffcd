// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel's own page: added, changed, described, retired; and what is typed there while the book changes elsewhere.
#include "ui/support.h"

#include "desk/advice.h"
#include "desk/ledger.h"
#include "ui/cellar/life_lines.h"
#include "ui/cellar/prospect_panel.h"
#include "ui/cellar/rail.h"
#include "ui/cellar/vessel_page.h"
#include "ui/chart/chart_stack.h"
#include "ui/draw_refill/vessel_panel.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"
#include "ui/window/help_panel.h"
#include "ui/window/notice_bar.h"
#include "ui/window/status_line.h"
#include "ui/window/vessel_header.h"

#include <QAbstractButton>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtVesselPage : WindowInScratch {
    void change(const char* vessel) {
        window->cellar()->showVessel(vessel);
        key(Qt::Key_E, Qt::ControlModifier | Qt::ShiftModifier);
        REQUIRE_FALSE(window->cellar()->atVessel());
    }
    [[nodiscard]] VesselPage& page() const { return part<VesselPage>(*window->cellar()); }
    void put(FactForm& form, const char* field, const QString& text) const {
        QLineEdit* edit = form.number(field) ? form.number(field)->edit() : form.line(field);
        REQUIRE(edit);
        edit->selectAll();
        QTest::keyClicks(edit, text);
        if (text.isEmpty())
            QTest::keyClick(edit, Qt::Key_Delete);
    }
    [[nodiscard]] std::unique_ptr<Desk> elsewhere() const {
        return *Desk::open(book, [this] { return today; });
    }
};

VesselFact factsOf(const AtVesselPage& at, const char* vessel) {
    const auto found = at.desk().vessel(vessel);
    REQUIRE(found);
    return found->facts;
}

} // namespace

TEST_CASE("a vessel that is thought over says what its habit comes to, and nothing is stored", "[ui][vesselpage]") {
    const AtVesselPage at;
    at.window->cellar()->addVessel();
    FactForm& form = at.page().fields();
    at.put(form, "capacity_l", "100");
    at.put(form, "interval_d", "365");
    at.put(form, "draw_share", "50");
    const QString words = at.page().findChild<QLabel*>("prospect")->text();
    // half a year by year: 50 L and what evaporates of 100 L (4 % in used oak) make a share of 0.54; one year / 0.54
    // and 14 days of fermenting are 1.89 years, 23 months
    CHECK(words.contains("50.0 L drawn every 12 months: the beer comes to 23 months at the draw"));
    CHECK(words.contains("within 5 % of that from draw 4 on")); // 311 days x 0.46^3 = 30 of 690
    CHECK(at.desk().cellar()->size() == 3);
}

TEST_CASE("the material of a new vessel follows its shape until it is chosen", "[ui][vesselpage]") {
    const AtVesselPage at;
    at.window->cellar()->addVessel();
    const FactForm& form = *at.page().findChild<FactForm*>();
    ChoiceField& shape = *form.choice("shape");
    ChoiceField& material = *form.choice("material");
    const auto choose = [](ChoiceField& field, const char* word) {
        field.setWord(word);
        Q_EMIT field.activated(field.currentIndex());
    };
    choose(shape, "keg");
    CHECK(material.word() == "steel");
    choose(shape, "foeder");
    CHECK(material.word() == "foeder");
    choose(material, "oak new");
    choose(shape, "carboy");
    CHECK(material.word() == "oak new");
}

TEST_CASE("only what is changed is recorded, as one edit that names the vessel", "[ui][vesselpage]") {
    AtVesselPage at;
    at.change("Heron");
    const VesselFact before = factsOf(at, "Heron");
    at.put(at.page().fields(), "interval_d", "180");
    at.put(at.page().fields(), "note", "moved beside the door");
    at.key(Qt::Key_Return);
    CHECK(at.window->cellar()->atVessel());
    VesselFact expected = before;
    expected.interval = Days{180};
    expected.note = "moved beside the door";
    CHECK(factsOf(at, "Heron") == expected);
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(factsOf(at, "Heron") == before);
}

TEST_CASE("the adviser is let move draw or interval by a tick, and undo says so", "[ui][vesselpage]") {
    AtVesselPage at;
    for (const auto& [words, undone] :
         {std::pair{"The adviser may change how much is drawn", "let the adviser change the draw of Heron"},
          std::pair{"The adviser may change the interval", "let the adviser change the interval of Heron"}}) {
        CAPTURE(words);
        const VesselFact before = factsOf(at, "Heron");
        at.change("Heron");
        at.tabTo(words);
        at.key(Qt::Key_Space);
        at.key(Qt::Key_Return);
        CHECK(at.window->cellar()->atVessel());
        CHECK(at.desk().undoText() == undone);
        const VesselFact after = factsOf(at, "Heron");
        CHECK(after.drawMayMove != after.intervalMayMove);
        at.key(Qt::Key_Z, Qt::ControlModifier);
        CHECK(factsOf(at, "Heron") == before);
    }
    at.window->cellar()->showVessel("Heron");
    at.key(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier); // of a new vessel it is not asked
    for (const QAbstractButton* tick : at.page().findChildren<QAbstractButton*>())
        CHECK_FALSE((tick->isVisible() && tick->accessibleName().startsWith("The adviser")));
}

TEST_CASE("nothing changed records nothing, and Escape leaves all as it was", "[ui][vesselpage]") {
    AtVesselPage at;
    const auto revision = at.desk().revision();
    at.change("Heron");
    at.key(Qt::Key_Return);
    CHECK(at.window->cellar()->atVessel());
    at.change("Heron");
    at.put(at.page().fields(), "capacity_l", "300");
    at.key(Qt::Key_Escape);
    CHECK(at.window->cellar()->atVessel());
    CHECK(at.desk().revision() == revision);
    at.change("Heron"); // it starts from the book again
    CHECK(at.page().fields().number("capacity_l")->stored() == 225.0);
}

TEST_CASE("a vessel is renamed, and the window stays with it", "[ui][vesselpage]") {
    AtVesselPage at;
    at.change("Heron");
    at.put(at.page().fields(), "name", "Grey Heron");
    at.key(Qt::Key_Return);
    CHECK(at.window->cellar()->vessel() == "Grey Heron");
    CHECK(at.window->windowTitle().startsWith("Grey Heron"));
    CHECK(at.desk().ledger("Grey Heron")->lines.size() == 9);
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.desk().vessel("Heron"));
    CHECK(at.window->cellar()->vessel() != "Grey Heron");
}

TEST_CASE("a name that is taken or empty is said at the name and changes nothing", "[ui][vesselpage][bad]") {
    AtVesselPage at;
    const auto revision = at.desk().revision();
    at.change("Heron");
    at.put(at.page().fields(), "name", "Teal");
    at.key(Qt::Key_Return);
    CHECK_FALSE(at.window->cellar()->atVessel());
    CHECK_FALSE(at.page().words().isEmpty());
    at.put(at.page().fields(), "name", "");
    at.key(Qt::Key_Return);
    CHECK_FALSE(at.window->cellar()->atVessel());
    CHECK(at.desk().revision() == revision);
    CHECK(at.desk().vessel("Heron"));
}

TEST_CASE("a number that was set is cleared by emptying its field", "[ui][vesselpage]") {
    AtVesselPage at;
    for (const auto& [typed, stands] : {std::pair{"5", true}, {"", false}}) {
        at.change("Heron");
        at.put(at.page().fields(), "oxygen_mg_l_year", typed);
        at.key(Qt::Key_Return);
        CHECK(at.window->cellar()->atVessel());
        CHECK(factsOf(at, "Heron").oxygenPerYear.has_value() == stands);
    }
}

TEST_CASE("the page shows what a plan made of the vessel's habits, and can take them back", "[ui][vesselpage]") {
    AtVesselPage at;
    const Desk& desk = at.desk();
    const auto job = desk.adviceJob({"Heron", {}, {}, false});
    REQUIRE(job);
    advice::Setting setting = job->input.base;
    setting.interval = Days{120};
    REQUIRE(at.window->session()->adopt(*job, setting));
    at.change("Heron");
    CHECK(at.page().fields().number("interval_d")->stored() == 120.0);
    at.put(at.page().fields(), "interval_d", "240"); // as before the plan
    at.key(Qt::Key_Return);
    CHECK(desk.setting("Heron")->interval.d == 240);
}

TEST_CASE("the culture is described on the page and is part of the same edit", "[ui][vesselpage]") {
    AtVesselPage at;
    at.change("Heron");
    at.put(at.page().culture(), "name", "house");
    at.put(at.page().culture(), "hop_tolerance_ibu", "14");
    at.put(at.page().fields(), "interval_d", "200");
    at.key(Qt::Key_Return);
    const auto culture = at.desk().culture("Heron");
    REQUIRE(culture);
    CHECK(culture->name == "house");
    CHECK(culture->hopTolerance == Ibu{14});
    CHECK(culture->on == at.today);
    CHECK(factsOf(at, "Heron").interval.d == 200);
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK_FALSE(at.desk().culture("Heron"));
    CHECK(factsOf(at, "Heron").interval.d == 240);
}

TEST_CASE("a vessel is retired with a reason, goes from the rail, and comes back by undo", "[ui][vesselpage]") {
    AtVesselPage at;
    const int inRail = part<Rail>(*at.window->cellar()).model()->rowCount();
    at.change("Teal");
    QTest::keyClicks(&at.page().reason(), "keg sold");
    at.tabTo("Retire the vessel");
    at.key(Qt::Key_Space);
    const VesselFact retired = factsOf(at, "Teal");
    CHECK(retired.retired == at.today);
    CHECK(retired.retiredReason == "keg sold");
    CHECK(part<Rail>(*at.window->cellar()).model()->rowCount() == inRail - 1);
    at.action("Undo").trigger();
    CHECK_FALSE(factsOf(at, "Teal").retired);
    CHECK(part<Rail>(*at.window->cellar()).model()->rowCount() == inRail);
}

TEST_CASE("a retired vessel is brought back into use from the menu", "[ui][vesselpage]") {
    AtVesselPage at;
    const int inRail = part<Rail>(*at.window->cellar()).model()->rowCount();
    REQUIRE(at.window->session()->record(Fact{RetireFact{"Teal", at.today, "keg sold"}}));
    CHECK(part<Rail>(*at.window->cellar()).model()->rowCount() == inRail - 1);
    QMenu* menu = nullptr;
    for (QMenu* each : at.window->findChildren<QMenu*>())
        if (each->title() == "Bring &back into use")
            menu = each;
    REQUIRE(menu);
    Q_EMIT menu->aboutToShow();
    REQUIRE(menu->actions().size() == 1);
    CHECK(menu->actions().front()->text() == "Teal");
    menu->actions().front()->trigger();
    CHECK_FALSE(factsOf(at, "Teal").retired);
    CHECK(part<Rail>(*at.window->cellar()).model()->rowCount() == inRail);
    Q_EMIT menu->aboutToShow();
    CHECK_FALSE(menu->actions().front()->isEnabled());
}

TEST_CASE("what is typed stays while the book changes elsewhere, and only that is recorded", "[ui][vesselpage]") {
    AtVesselPage at;
    at.change("Heron");
    at.put(at.page().fields(), "interval_d", "150");
    recordAll(*at.elsewhere(), R"({"kind": "vessel_edit", "vessel": "Heron", "draw_share": 0.25, "note": "theirs"})");
    at.window->session()->poll();
    CHECK(at.page().fields().number("interval_d")->stored() == 150.0);
    CHECK_FALSE(at.window->cellar()->atVessel());
    at.page().finish();
    const VesselFact now = factsOf(at, "Heron");
    CHECK(now.interval.d == 150);
    CHECK(now.drawShare.of1 == .25); // not put back to what the page had read
    CHECK(now.note == "theirs");
}

TEST_CASE("a vessel renamed elsewhere while its page is open is refused in words", "[ui][vesselpage][bad]") {
    AtVesselPage at;
    at.change("Heron");
    at.put(at.page().fields(), "interval_d", "150");
    recordAll(*at.elsewhere(), R"({"kind": "vessel_edit", "vessel": "Heron", "name": "Egret"})");
    at.window->session()->poll();
    at.page().finish();
    CHECK(factsOf(at, "Egret").interval.d == 240);
    const bool said =
        !at.page().words().isEmpty() || at.window->notices().isVisible() || at.window->cellar()->atVessel();
    CHECK(said);
}

TEST_CASE("numbers are typed in the units in use, also when those change under the page", "[ui][vesselpage][units]") {
    AtVesselPage at;
    at.change("Heron");
    DisplayUnits american;
    american.volume = DisplayUnits::Volume::usGallon;
    american.temperature = DisplayUnits::Temperature::fahrenheit;
    at.window->setUnits(american);
    at.put(at.page().fields(), "capacity_l", "60");
    at.put(at.page().fields(), "temperature_c", "59");
    at.page().finish();
    CHECK(factsOf(at, "Heron").capacity.l == Approx(60 * 3.785411784));
    CHECK(factsOf(at, "Heron").temperature.c == Approx(15));
}

TEST_CASE("a new vessel asks few questions and takes the rest from habit and material", "[ui][vesselpage]") {
    AtVesselPage at;
    at.key(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK_FALSE(at.page().fields().number("evaporation_per_year"));
    CHECK_FALSE(at.page().culture().isVisible());
    at.put(at.page().fields(), "name", "Avocet");
    at.key(Qt::Key_Return);
    VesselFact expected;
    expected.name = "Avocet";
    CHECK(factsOf(at, "Avocet") == expected);
    CHECK(at.window->cellar()->vessel() == "Avocet");
}

TEST_CASE("help on the page is the page's own", "[ui][vesselpage][help]") {
    AtVesselPage at;
    at.change("Heron");
    at.key(Qt::Key_F1);
    REQUIRE(at.help().isVisible());
    const QString words = at.help().words();
    at.key(Qt::Key_F1);
    at.window->cellar()->showVessel("Heron");
    at.key(Qt::Key_F1);
    CHECK(at.help().words() != words);
}

namespace {

/// Of the curve beside the numbers: the age it comes to, as it is drawn [months].
double settledOn(const AtVesselPage& at) {
    const ChartPanel& panel = part<ChartStack>(at.page()).chartData().panels.front();
    return panel.series.front().points.front().value * (panel.unit == "years" ? 12 : 1);
}

} // namespace

TEST_CASE("the curve follows the numbers as they are turned, and nothing is stored", "[ui][vesselpage][age]") {
    AtVesselPage at;
    at.change("Heron");
    const auto revision = at.desk().revision();
    const double before = settledOn(at);
    at.put(at.page().fields(), "interval_d", "480");
    const double longer = settledOn(at);
    CHECK(longer > before * 1.4);
    ProspectPanel& panel = part<ProspectPanel>(at.page());
    const auto fields = panel.findChildren<NumberField*>();
    REQUIRE(fields.size() == 2);
    fields[1]->edit()->selectAll();
    QTest::keyClicks(fields[1]->edit(), "3");
    CHECK(settledOn(at) > longer * 1.5);
    CHECK(panel.findChild<QLabel*>("prospect")->text().contains("3 vessels in a row"));
    at.put(at.page().fields(), "draw_share", "x");
    CHECK(settledOn(at) > longer * 1.5); // half typed
    CHECK(at.desk().revision() == revision);
    at.key(Qt::Key_Escape);
    CHECK(at.desk().revision() == revision);
}

TEST_CASE("the page of a vessel tells its life so far", "[ui][vesselpage]") {
    AtVesselPage at;
    recordAll(*at.window->session(), R"({"kind": "event", "vessel": "Heron", "on": "2026-02-01", "what": "pitched",
                                         "culture": "Moor slurry"})");
    at.change("Heron");
    QStringList words;
    for (const QLabel* label : part<LifeLines>(at.page()).findChildren<QLabel*>())
        if (label->isVisibleTo(&at.page()))
            words << label->text();
    CHECK(words.join('\n').contains("Moor slurry pitched"));
    CHECK(words.join('\n').contains("Fills from empty: 1"));
    CHECK_FALSE(words.join('\n').contains("Leaks"));
}

TEST_CASE("a vessel is drawn at an age from its page, and its days and ages follow", "[ui][vesselpage][age]") {
    AtVesselPage at;
    const VesselFact before = factsOf(at, "Heron");
    const auto byInterval = at.desk().vessel("Heron")->dates;
    at.change("Heron");
    at.put(at.page().fields(), "wanted_age_years", "2.5");
    CHECK(part<ProspectPanel>(at.page())
              .findChild<QLabel*>("prospect")
              ->text()
              .contains("It is 30 months old at each draw from draw 1 on ("));
    at.key(Qt::Key_Return);
    CHECK(factsOf(at, "Heron").wantedAgeYears == 2.5);
    CHECK(factsOf(at, "Heron").interval == before.interval);
    const auto summary = at.desk().vessel("Heron");
    CHECK(summary->dates.draw != byInterval.draw);
    QStringList milestones;
    for (const MilestoneButton* milestone : part<VesselHeader>(*at.window->cellar()).timeline().buttons())
        milestones << milestone->text();
    CHECK(milestones.join('|').contains("next draw at 30 months"));
    at.window->cellar()->showPage(PageId::drawRefill);
    const QString words = part<VesselPanel>(*at.window->cellar()).findChild<QLabel*>("steering")->text();
    CHECK(words.contains("30 months"));
    at.change("Heron");
    CHECK(at.page().fields().number("interval_d")->stored() == before.interval.d); // not the one that follows
    at.put(at.page().fields(), "wanted_age_years", "");
    at.key(Qt::Key_Return);
    CHECK_FALSE(factsOf(at, "Heron").wantedAgeYears);
    CHECK(at.desk().vessel("Heron")->dates.draw == byInterval.draw);
    CHECK(part<VesselPanel>(*at.window->cellar()).findChild<QLabel*>("steering")->text().isEmpty());
    at.key(Qt::Key_Z, Qt::ControlModifier);
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(factsOf(at, "Heron") == before);
}
