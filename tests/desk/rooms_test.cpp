// SPDX-License-Identifier: GPL-3.0-or-later
// Rooms with their temperature through the year: what stands in one ages as warm as the room is then.
#include "desk/room.h"
#include "desk/support.h"
#include "facts/fields.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct RoomFixture : DeskFixture {
    RoomFixture() {
        addPlover();
        record(R"([{"kind": "refill", "vessel": "Plover", "on": "2025-09-15", "volume_l": 5},
                   {"kind": "reading", "vessel": "Plover", "on": "2025-10-01", "gravity_sg": 1.003, "ta_g_l": 6.1}])");
    }
    /// The same all year.
    void addEven(const std::string& name, const std::string& celsius) {
        std::string months;
        for (const auto& field : monthFields)
            months += ", \"" + std::string(field) + "\": " + celsius;
        record(R"({"kind": "room", "on": "2025-01-01", "name": ")" + name + "\"" + months + "}");
    }
    void addBarn(const std::string& coldestMonth = "january") {
        record(R"({"kind": "room", "on": "2025-01-01", "name": "Barn", "coldest_c": 8, "warmest_c": 24,
                   "coldest_month": ")" +
               coldestMonth + "\"}");
    }
    void move(const std::string& room, const std::string& on = "2025-06-01") {
        record(R"({"kind": "refit", "vessel": "Plover", "on": ")" + on + R"(", "room": ")" + room + "\"}");
    }
    /// Everything the model says of Plover, in full digits.
    [[nodiscard]] std::vector<double> said() const {
        const auto estimates = desk->estimates("Plover");
        const auto trial = desk->predict("Plover", *desk->setting("Plover"));
        REQUIRE(estimates);
        REQUIRE(trial);
        std::vector<double> all;
        for (const Dimension d : allDimensions)
            for (const double number : {estimates->model[d].mean, estimates->model[d].sd, trial->thisDraw[d].value,
                                        trial->next[d].value, trial->next[d].low, trial->settled[d].high})
                all.push_back(number);
        return all;
    }
    [[nodiscard]] double acidity() const { return desk->estimates("Plover")->model[Dimension::acidity].mean; }
    [[nodiscard]] double acidityAtNext() const {
        return desk->predict("Plover", *desk->setting("Plover"))->next[Dimension::acidity].value;
    }
    [[nodiscard]] RoomView barn() const {
        const auto rooms = desk->rooms();
        REQUIRE(rooms);
        REQUIRE(rooms->size() == 1);
        return rooms->front();
    }
};

} // namespace

TEST_CASE_METHOD(RoomFixture, "a room that is the same all year is the temperature of before, to the last bit",
                 "[desk][room]") {
    const auto before = said();
    addEven("Cave", "16");
    CHECK(said() == before); // it stands there, nothing stands in it
    move("Cave");
    CHECK(said() == before);
    CHECK(desk->vessel("Plover")->facts.temperature == Celsius{16});
    CHECK(desk->vessel("Plover")->facts.room == "Cave");
    addEven("Warm", "19");
    move("Warm", "2025-12-01");
    const auto warm = said();
    CHECK(warm != before);
    REQUIRE(desk->undo());
    CHECK(said() == before);
    record(R"({"kind": "refit", "vessel": "Plover", "on": "2025-12-01", "temperature_c": 19})");
    CHECK(said() == warm);
    CHECK(desk->vessel("Plover")->facts.room.empty()); // a temperature of its own
}

TEST_CASE_METHOD(RoomFixture, "what lies behind and ahead is as warm as its months", "[desk][room]") {
    addEven("Cave", "16");
    move("Cave"); // the mean of the barn's year
    const double steady = acidity(), steadyNext = acidityAtNext();
    addBarn();
    move("Barn", "2025-11-01"); // a winter behind it, by 2 March
    CHECK(desk->vessel("Plover")->facts.temperature.c == Approx(16));
    CHECK(acidity() < steady);
    CHECK(desk->setting("Plover")->temperature.c == Approx(16));
    CHECK(acidityAtNext() != steadyNext);
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    addBarn("july"); // the other half of the world
    move("Barn", "2025-11-01");
    CHECK(acidity() > steady);
}

TEST_CASE("a draw in autumn is forecast sourer than one in spring", "[desk][room]") {
    const auto next = [](Day today, const std::string& opened, const std::string& coldest) {
        DeskFixture f;
        f.now = today;
        f.record(R"([{"kind": "room", "on": ")" + opened + R"(", "name": "Barn", "coldest_c": 6, "warmest_c": 26,
                      "coldest_month": ")" +
                 coldest + R"("},
                     {"kind": "vessel", "name": "Plover", "capacity_l": 225, "interval_d": 183, "room": "Barn"},
                     {"kind": "refill", "vessel": "Plover", "on": ")" +
                 opened + R"(", "volume_l": 216}])");
        const auto trial = f.desk->predict("Plover", *f.desk->setting("Plover"));
        REQUIRE(trial);
        CHECK(f.desk->vessel("Plover")->dates.draw == day(2025, 10, 16));
        return trial->thisDraw[Dimension::acidity].value;
    };
    // Filled in mid-April, drawn in mid-October: through a summer, or where January is warm, through a winter.
    CHECK(next(day(2025, 4, 20), "2025-04-16", "january") > next(day(2025, 4, 20), "2025-04-16", "july") + .1);
}

TEST_CASE_METHOD(RoomFixture, "readings correct the year of their room, and say how surely", "[desk][room]") {
    addBarn();
    move("Barn");
    CHECK(barn().offset.value == 0);
    CHECK(barn().offset.sd == 2);
    CHECK(barn().vessels == std::vector<std::string>{"Plover"});
    const double told = acidity();
    record(R"([{"kind": "round", "vessel": "Plover", "on": "2025-12-16", "room_c": 12},
               {"kind": "reading", "vessel": "Plover", "on": "2026-01-20", "temperature_c": 12},
               {"kind": "round", "vessel": "Plover", "on": "2025-05-30", "room_c": 40}])"); // before it stood there
    const RoomView read = barn();
    CHECK(read.readings.size() == 2);
    CHECK(read.readings.front().above == Approx(12 - read.year[11]));
    CHECK(read.offset.months == 2);
    CHECK(read.offset.value > 1);
    CHECK(read.offset.value < 4);
    CHECK(read.offset.sd < 2);
    CHECK(read.reckoned()[6] == Approx(24 + read.offset.value));
    CHECK(acidity() > told); // warmer than was told
    REQUIRE(desk->undo());
    CHECK(acidity() == told);
    now = day(2025, 12, 17);
    CHECK(barn().readings.empty());
}

TEST_CASE_METHOD(RoomFixture, "a room told anew on a day was another one before", "[desk][room]") {
    addEven("Barn", "16");
    move("Barn");
    const double before = acidity();
    record(R"({"kind": "room", "on": "2026-03-01", "name": "Barn", "coldest_c": 20, "warmest_c": 20,
               "coldest_month": "march"})");
    CHECK(desk->rooms()->size() == 1);
    CHECK(acidity() == Approx(before).margin(.02)); // a day of it
    CHECK(acidity() != before);
    CHECK(desk->setting("Plover")->temperature.c == Approx(20));
    now = day(2026, 9, 1);
    const double warm = acidity();
    REQUIRE(desk->undo());
    CHECK(acidity() < warm);
}

TEST_CASE_METHOD(RoomFixture, "a room far from its month is told with the advice", "[desk][room][round]") {
    addBarn();
    move("Barn");
    const auto finds = [&](const std::string& celsius) {
        record(R"({"kind": "round", "vessel": "Plover", "on": "2026-03-02", "room_c": )" + celsius + "}");
        const auto findings = desk->vessel("Plover")->seen.words;
        REQUIRE(desk->undo());
        return findings;
    };
    CHECK(finds("12").empty()); // 16 - 8 cos 60 deg
    REQUIRE(finds("16").size() == 1);
    CHECK(finds("16").front().key == "desk.round.warm.room"); // its own temperature cannot be corrected
    REQUIRE(finds("8").size() == 1);
    CHECK(finds("8").front().key == "desk.round.cold.room");
}

TEST_CASE_METHOD(RoomFixture, "a look is compared with how warm the vessel was kept then", "[desk][room][round]") {
    record(R"({"kind": "round", "vessel": "Plover", "on": "2026-02-20", "room_c": 16})"); // as it was kept
    addEven("Loft", "24");
    move("Loft", "2026-03-01");
    CHECK(desk->vessel("Plover")->seen.words.empty());
}

TEST_CASE_METHOD(RoomFixture, "half a year, a year told twice, a room that is not there are refused at their field",
                 "[desk][room][bad]") {
    const auto at = [&](const std::string& rest) {
        return refused(R"({"kind": "room", "on": "2025-01-01", "name": "Loft", )" + rest + "}").path;
    };
    CHECK(at(R"("coldest_c": 4, "warmest_c": 20)") == "/coldest_month");
    CHECK(at(R"("january_c": 4, "february_c": 5)") == "/march_c");
    CHECK(at(R"("note": "dark")") == "/coldest_c");
    CHECK(at(R"("coldest_c": 20, "warmest_c": 4, "coldest_month": "may")") == "/warmest_c");
    CHECK(at(R"("coldest_c": -30, "warmest_c": 4, "coldest_month": "may")") == "/coldest_c");
    CHECK(at(R"("coldest_c": 3, "january_c": 4)") == "/coldest_c");
    CHECK(at(R"("coldest_c": 3, "warmest_c": 4, "coldest_month": "winter")") == "/coldest_month");
    addBarn();
    CHECK(refused(R"({"kind": "room", "on": "2025-02-01", "name": "barn", "coldest_c": 4, "warmest_c": 20,
                      "coldest_month": "may"})")
              .path == "/name");
    CHECK(refused(R"({"kind": "vessel", "name": "Knot", "capacity_l": 50, "room": "Bran"})").path == "/room");
    CHECK(refused(R"({"kind": "vessel_edit", "vessel": "Plover", "room": "Attic"})").path == "/room");
    CHECK(refused(R"({"kind": "refit", "vessel": "Plover", "on": "2026-01-01", "room": "Barn", "temperature_c": 14})")
              .path == "/temperature_c");
}

TEST_CASE_METHOD(RoomFixture, "a room in which a vessel stands or stood keeps its name", "[desk][room][bad]") {
    addBarn();
    move("Barn", "2025-07-01");
    record(R"({"kind": "refit", "vessel": "Plover", "on": "2025-08-01", "temperature_c": 14})");
    const RoomView there = barn();
    const auto removed = desk->remove("room", there.told.id);
    REQUIRE_FALSE(removed);
    CHECK(removed.error().cause.key == "desk.room.in_use");
    RoomFact other = there.told.fact;
    other.name = "Loft";
    const auto renamed = desk->amend("room", there.told.id, Fact{other});
    REQUIRE_FALSE(renamed);
    CHECK(renamed.error().path == "/name");
    other = there.told.fact;
    other.warmest = Celsius{30};
    const double before = acidity();
    REQUIRE(desk->amend("room", there.told.id, Fact{other}));
    CHECK(acidity() != before); // a warm July
    REQUIRE(desk->undo());
    CHECK(acidity() == before);
    REQUIRE(desk->undo()); // moved out
    REQUIRE(desk->undo()); // moved in
    CHECK(desk->remove("room", there.told.id));
    CHECK(desk->rooms()->empty());
}

TEST_CASE_METHOD(RoomFixture, "a decision of before does not hold a vessel to a temperature its room has not",
                 "[desk][room]") {
    adopt([](advice::Setting& setting) { setting.temperature = Celsius{13}; });
    CHECK(desk->setting("Plover")->temperature == Celsius{13});
    addBarn();
    move("Barn", "2026-03-02");
    CHECK(desk->setting("Plover")->temperature.c == Approx(16));
}
