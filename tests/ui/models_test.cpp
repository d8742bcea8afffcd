// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/support.h"

#include "ui/present/cellar_model.h"
#include "ui/present/ledger_model.h"
#include "ui/present/vessel_words.h"

using namespace staveline;
using namespace staveline::culture;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::ui;
using staveline::testing::day;

namespace {

struct Opened : testing::DeskInScratch {
    Session session{filled(std::move(desk))};

    static std::unique_ptr<Desk> filled(std::unique_ptr<Desk> empty) {
        testing::fillCellar(*empty);
        return empty;
    }
};

} // namespace

TEST_CASE("the rail's model names every vessel with its line", "[ui][model]") {
    Opened o;
    const CellarModel model(o.session);
    REQUIRE(model.rowCount() == 3);
    CHECK(model.rowOf("Heron") >= 0);
    CHECK(model.rowOf("Swan") == -1);
    CHECK(model.at(99) == nullptr);
    for (int row = 0; row < 3; ++row) {
        const QString heard = model.index(row).data(Qt::AccessibleTextRole).toString();
        CHECK(heard.startsWith(qs(model.at(row)->name) + ", "));
        CHECK_FALSE(model.headline(*model.at(row)).isEmpty());
        CHECK_FALSE(model.headline(*model.at(row)).contains("."));
    }
}

TEST_CASE("a new vessel appears and a retired one goes", "[ui][model]") {
    Opened o;
    const CellarModel model(o.session);
    testing::recordAll(o.session, R"({"kind": "vessel", "name": "Wren", "capacity_l": 20, "shape": "carboy"})");
    CHECK(model.rowCount() == 4);
    testing::recordAll(o.session, R"({"kind": "retire", "vessel": "Wren", "on": "2026-03-01"})");
    CHECK(model.rowCount() == 3);
}

TEST_CASE("the state of a vessel follows what is due", "[ui][model]") {
    VesselSummary vessel;
    CHECK(moodOf(vessel) == VesselMood::calm);
    vessel.due.kind = DueKind::taste;
    vessel.due.inDays = 40;
    CHECK(moodOf(vessel) == VesselMood::calm);
    vessel.due.inDays = 3;
    CHECK(moodOf(vessel) == VesselMood::soon);
    vessel.due.inDays = -1;
    CHECK(moodOf(vessel) == VesselMood::overdue);
    vessel.fault = "ropy";
    CHECK(moodOf(vessel) == VesselMood::fault);
}

TEST_CASE("the ledger is newest first, each line with its level and age", "[ui][model]") {
    Opened o;
    LedgerModel model(o.session);
    model.show(*o.session.desk().ledger("Heron"));
    REQUIRE(model.rowCount() == 9);
    CHECK(model.at(0)->kind == EntryKind::refill);
    CHECK(model.at(8)->kind == EntryKind::opening);
    CHECK(model.index(1, LedgerModel::day).data().toString() == "8 Jul 2025");
    CHECK(model.index(1, LedgerModel::entry).data().toString().contains("80"));
    CHECK(model.index(8, LedgerModel::entry).data().toString().endsWith(": 1.003, pH 3.34, TA 5.8 g/L"));
    CHECK(model.index(8, LedgerModel::level).data().toString() == "214.0 L");
    for (int column = 0; column < model.columnCount(); ++column)
        CHECK_FALSE(model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().isEmpty());
    CHECK(model.stateAt(0)->volume.l == Approx(model.at(0)->volumeAfter.l));
    CHECK(model.rowOf(model.at(3)->id, model.at(3)->table) == 3);
}

TEST_CASE("the ledger speaks the units in use", "[ui][model]") {
    Opened o;
    LedgerModel model(o.session);
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    units.gravity = DisplayUnits::Gravity::plato;
    o.session.setUnits(units);
    model.show(*o.session.desk().ledger("Heron"));
    CHECK(model.index(8, LedgerModel::level).data().toString().contains("gal"));
    CHECK(model.index(8, LedgerModel::entry).data().toString().contains("°P"));
}

TEST_CASE("the youngest third is a third", "[ui][words]") {
    LedgerState state;
    state.on = day(2026, 3, 2);
    state.volume = Litres{100};
    state.meanAge = Days{500};
    state.generations = {{3, day(2025, 11, 2), Share{.4}, Days{0}}, {1, day(2023, 3, 2), Share{.6}, Days{0}}};
    // 40 % is 120 days old, the rest three years: a third of the beer is no older than 120 days
    CHECK(youngestThird(state).d == Approx(120).margin(1));
    CHECK(ageWords(state) == "mean age 16 months; youngest third under 4 months");
    CHECK(ageWords({}).isEmpty());
    state.generations = {{3, state.on, Share{.4}, Days{0}}, {1, day(2023, 3, 2), Share{.6}, Days{0}}};
    CHECK(ageWords(state) == "mean age 16 months; a third or more went in today");
}

TEST_CASE("next dates come in order of time", "[ui][words]") {
    const Schedule dates{day(2026, 2, 3),   day(2026, 2, 19), day(2026, 3, 5),  day(2026, 10, 1),
                         day(2026, 10, 31), day(2026, 2, 3),  day(2026, 2, 19), day(2026, 3, 5)};
    desk::VesselSummary vessel;
    vessel.dates = dates;
    vessel.due = {DueKind::draw, day(2026, 3, 5), 3, {}};
    const auto lines = dateLines(vessel, day(2026, 3, 2));
    REQUIRE(lines.size() == 5);
    CHECK(lines[0].when == "Tue 3 Feb 2026");
    CHECK(lines[0].distance == "27 days ago");
    CHECK(lines[2].what == "Draw and refill");
    CHECK(lines[2].distance == "in 3 days");
}

TEST_CASE("what is next says by how many days it is late, not what day it slid to", "[ui][words]") {
    const Day today = day(2026, 3, 2);
    const Schedule dates{day(2026, 2, 3),
                         today,
                         today + std::chrono::days{14},
                         day(2026, 10, 1),
                         day(2026, 10, 31),
                         day(2026, 2, 3),
                         day(2026, 2, 19),
                         day(2026, 3, 5)};
    desk::VesselSummary vessel;
    vessel.dates = dates;
    vessel.due = {DueKind::brew, day(2026, 2, 19), -11, {}};
    const auto late = dateLines(vessel, today);
    CHECK(late[1].what == "Brew the refill");
    CHECK(late[1].distance == "overdue 11 days");
    CHECK(late[2].distance == "in 14 days");
    vessel.works.draw.done = true; // before its beer is brewed
    CHECK(dateLines(vessel, today)[2].what == "Refill");
    CHECK(dateLines(vessel, today)[1].distance == "overdue 11 days");
    vessel.toFill = true;
    vessel.due = {DueKind::refill, day(2026, 3, 5), 3, {}};
    const auto empty = dateLines(vessel, today);
    REQUIRE(empty.size() == 4);
    CHECK(empty[0].what == "Brew the first fill");
    CHECK(empty[1].what == "Fill");
    CHECK(empty[3].what == "First draw");
}

TEST_CASE("a session says what was done and what could not be", "[ui][session]") {
    Opened o;
    QSignalSpy said(&o.session, &Session::said), failed(&o.session, &Session::failed),
        changed(&o.session, &Session::changed);
    REQUIRE(o.session.record(DipFact{"Heron", testing::testToday, Litres{200}, ""}));
    CHECK(changed.count() == 1);
    CHECK(said.last().at(0).toString().startsWith("Recorded: "));
    o.session.undo();
    CHECK(said.last().at(0).toString().startsWith("Undone: "));
    o.session.redo();
    CHECK(said.last().at(0).toString().startsWith("Done again: "));
    CHECK(failed.count() == 0);
    o.session.redo(); // there is nothing left
    CHECK(failed.count() == 1);
    CHECK_FALSE(o.session.record(DipFact{"Nobody", testing::testToday, Litres{200}, ""}));
}
