// SPDX-License-Identifier: GPL-3.0-or-later
// Rooms: told in one of two ways, put right, read, and chosen for a vessel.
#include "ui/support.h"

#include "desk/ledger.h"
#include "desk/room.h"
#include "ui/cellar/room_page.h"
#include "ui/cellar/vessel_page.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"

#include <QLineEdit>
#include <QTableWidget>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtRooms : WindowInScratch {
    AtRooms() {
        key(Qt::Key_M, Qt::ControlModifier | Qt::ShiftModifier);
        REQUIRE(window->cellar()->atRooms());
    }
    [[nodiscard]] RoomPage& page() const { return window->cellar()->rooms(); }
    void type(const std::string& field, const char* text) const {
        QLineEdit* edit = page().form().number(field) ? page().form().number(field)->edit() : page().form().line(field);
        edit->setFocus();
        edit->selectAll();
        QTest::keyClicks(edit, text);
    }
    void addBarn() const {
        type("name", "Barn");
        type("coldest_c", "6");
        type("warmest_c", "24");
        page().form().choice("coldest_month")->setWord("january");
        page().finish();
    }
    /// 0: told, 1: read, 2: reckoned.
    [[nodiscard]] QString cell(int month, int column) const { return page().year().item(month, 1 + column)->text(); }
};

} // namespace

TEST_CASE("a room is told by its coldest and warmest month, seen month by month, and taken back", "[ui][room]") {
    AtRooms at;
    CHECK(at.page().form().line("name")->hasFocus());
    at.type("name", "Barn");
    CHECK(at.page().started());
    CHECK_FALSE(at.window->session()->unstored().isEmpty());
    at.type("coldest_c", "6");
    at.type("warmest_c", "24");
    CHECK(at.cell(6, 0).isEmpty()); // not told yet which is coldest
    at.page().form().choice("coldest_month")->setFocus();
    QTest::keyClicks(QApplication::focusWidget(), "Ja");
    CHECK(at.cell(0, 0).startsWith("6 "));
    CHECK(at.cell(6, 0).startsWith("24 "));
    CHECK(at.cell(3, 2).startsWith("15 "));
    at.key(Qt::Key_Return);
    REQUIRE(at.desk().rooms()->size() == 1);
    CHECK(at.desk().rooms()->front().told.fact.warmest == Celsius{24});
    CHECK(at.window->session()->unstored().isEmpty());
    CHECK(at.page().which().word() == "Barn");
    at.key(Qt::Key_Escape);
    CHECK(at.window->cellar()->atVessel());
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.desk().rooms()->empty());
}

TEST_CASE("what the book refused of a year is asked anew once another field mends it", "[ui][room][bad]") {
    AtRooms at;
    at.type("name", "Barn");
    at.type("coldest_c", "4");
    at.type("warmest_c", "21");
    at.type("january_c", "7");
    at.page().form().choice("coldest_month")->setWord("january");
    at.page().finish(); // told twice
    REQUIRE(at.desk().rooms()->empty());
    QLineEdit& january = *at.page().form().number("january_c")->edit();
    january.setFocus();
    january.selectAll();
    QTest::keyClick(&january, Qt::Key_Delete);
    at.page().finish();
    CHECK(at.desk().rooms()->size() == 1);
}

TEST_CASE("the page of rooms follows undo and redo", "[ui][room]") {
    AtRooms at;
    at.addBarn();
    REQUIRE(at.page().which().word() == "Barn");
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.window->cellar()->atRooms());
    CHECK(at.page().which().word().empty());
    CHECK(at.page().form().line("name")->text().isEmpty());
    at.action("Redo").trigger();
    CHECK(at.page().which().word() == "Barn");
}

TEST_CASE("what is missing of a year is asked for beside its field", "[ui][room][bad]") {
    AtRooms at;
    at.type("name", "Loft");
    at.type("january_c", "4");
    at.page().finish();
    CHECK(at.desk().rooms()->empty());
    CHECK(at.page().form().number("february_c")->fault().has_value());
    CHECK(at.page().form().number("february_c")->edit()->hasFocus());
    at.type("february_c", "60");
    CHECK(at.page().form().number("february_c")->fault().has_value()); // out of range, while it is typed
    at.page().finish();
    CHECK(at.page().started());
    CHECK(at.desk().rooms()->empty());
}

TEST_CASE("a year is put right, or told anew from today on", "[ui][room]") {
    AtRooms at;
    recordAll(*at.window->session(), R"({"kind": "room", "on": "2025-01-01", "name": "Barn", "coldest_c": 6,
                                         "warmest_c": 24, "coldest_month": "january"})");
    at.page().begin();
    at.type("warmest_c", "27");
    at.page().finish();
    REQUIRE(at.desk().rooms()->size() == 1);
    CHECK(at.desk().rooms()->front().told.fact.warmest == Celsius{27});
    CHECK(at.desk().rooms()->front().told.fact.on == day(2025, 1, 1));
    at.type("warmest_c", "20");
    at.page().tellAnew();
    REQUIRE(at.desk().rooms()->size() == 1);
    CHECK(at.desk().rooms()->front().told.fact.on == at.desk().today());
    at.page().removeRoom();
    CHECK(at.desk().rooms()->front().told.fact.warmest == Celsius{27}); // as it was told before
}

TEST_CASE("a vessel is put into a room where it is changed, and out of it", "[ui][room][vessel]") {
    AtRooms at;
    at.addBarn();
    at.key(Qt::Key_Escape);
    CellarView& cellar = *at.window->cellar();
    cellar.showVessel("Heron");
    const auto change = [&](const std::string& room) {
        cellar.changeVessel();
        auto& page = part<VesselPage>(cellar);
        ChoiceField& choice = *page.fields().choice("room");
        choice.setWord(room);
        Q_EMIT choice.activated(choice.currentIndex());
        NumberField& temperature = *page.fields().number("temperature_c");
        CHECK(temperature.isEnabled() == room.empty());
        if (!room.empty())
            CHECK(*temperature.stored() == Approx(15));
        page.finish();
    };
    change("Barn");
    CHECK(at.desk().vessel("Heron")->facts.room == "Barn");
    CHECK(at.desk().vessel("Heron")->facts.temperature.c == Approx(15));
    CHECK(at.desk().rooms()->front().vessels == std::vector<std::string>{"Heron"});
    change("");
    CHECK(at.desk().vessel("Heron")->facts.room.empty());
    CHECK(at.desk().vessel("Heron")->facts.temperature.c == Approx(15)); // as it stood there
    at.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.desk().vessel("Heron")->facts.room == "Barn");
}

TEST_CASE("what was read stands beside the year, and what it makes of it is told with its error", "[ui][room]") {
    AtRooms at;
    recordAll(*at.window->session(), R"([{"kind": "room", "on": "2025-01-01", "name": "Barn", "coldest_c": 6,
                                          "warmest_c": 24, "coldest_month": "january"},
                                         {"kind": "refit", "vessel": "Heron", "on": "2026-01-01", "room": "Barn"},
                                         {"kind": "round", "vessel": "Heron", "on": "2026-01-20", "room_c": 9}])");
    at.page().begin();
    CHECK(at.cell(0, 1).startsWith("9 "));
    CHECK(at.cell(0, 1).contains("(1)"));
    const vessel::RoomOffset offset = at.desk().rooms()->front().offset;
    CHECK(offset.value == Approx(3 / 2.25 / (.25 + 1 / 2.25)));
    CHECK(at.cell(0, 2).startsWith("7.9")); // 6 + 1.92
}
