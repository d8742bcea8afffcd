// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/codec.h"
#include "facts/fields.h"
#include "facts/note_cells.h"
#include "facts/notes.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::facts;

namespace {

using Strings = std::vector<std::string>;

constexpr Day on(int y, unsigned m, unsigned d) {
    return std::chrono::year{y} / static_cast<int>(m) / static_cast<int>(d);
}

NoteForm guessed(const NoteTable& table, const std::string& kind) {
    return {kind, "Plover", guessFields(kind, table.headings), {}, {}};
}
/// What the form asks: the path of the fault, or "".
std::string asked(const std::string& text, const std::string& kind = "reading") {
    const auto table = readNotes(text);
    REQUIRE(table);
    const auto form = settled(guessed(*table, kind), *table);
    return form ? "" : form.error().path;
}
NotedFacts taken(const std::string& text, const std::string& kind) {
    const auto table = readNotes(text);
    REQUIRE(table);
    const auto form = settled(guessed(*table, kind), *table);
    if (!form)
        FAIL(form.error().path << " " << render(form.error().cause));
    return factsIn(*table, *form, ingredient::builtInPantry());
}

} // namespace

TEST_CASE("days are read in the order that is meant", "[notes]") {
    CHECK(readDay("2026-03-02", DateOrder::ymd) == on(2026, 3, 2));
    CHECK(readDay("2026/3/2", DateOrder::ymd) == on(2026, 3, 2));
    CHECK(readDay("02.03.2026", DateOrder::dmy) == on(2026, 3, 2));
    CHECK(readDay("3/2/26", DateOrder::mdy) == on(2026, 3, 2));
    CHECK(readDay("1.5.98", DateOrder::dmy) == on(1998, 5, 1));
    for (const auto order : {DateOrder::ymd, DateOrder::dmy, DateOrder::mdy}) {
        CHECK(readDay("2 Mar 2026", order) == on(2026, 3, 2));
        CHECK(readDay("March 2, 2026", order) == on(2026, 3, 2));
    }
    CHECK(readDay("29.02.2024", DateOrder::dmy) == on(2024, 2, 29));
    for (const char* none : {"29.02.2025", "31.4.2026", "2026-03", "soon", "", "1.13.2026", "2026-03-02", "1 Ma 2026"})
        CHECK_FALSE(readDay(none, DateOrder::dmy));
}

TEST_CASE("numbers are read with the mark that is meant", "[notes]") {
    CHECK(readNumber("1.048", '.') == 1.048);
    CHECK(readNumber("1,048", ',') == 1.048);
    CHECK(readNumber("1.048", ',') == 1048);
    CHECK(readNumber("1.234,5", ',') == 1234.5);
    CHECK(readNumber(" 12 345.5 ", '.') == 12345.5);
    CHECK(readNumber("-3,5", ',') == -3.5);
    for (const char* none : {"3.4", "1.04,8.2", "1.2345", "12.34.567", "", "four", "3,4 pH", "1,2,3"})
        CHECK_FALSE(readNumber(none, ','));
    CHECK(readShare("35 %", '.') == .35);
    CHECK(readShare("0,35", ',') == .35);
}

TEST_CASE("what can be read in two ways is asked, what cannot is not", "[notes]") {
    CHECK(asked("date,ph\n2026-03-02,3.4\n").empty());
    CHECK(asked("date,ph\n13.03.2026,3.4\n02.03.2026,3.5\n").empty());
    CHECK(asked("date,ph\n03/13/2026,3.4\n02/03/2026,3.5\n").empty());
    CHECK(asked("date,ph\n02.03.2026,3.4\n05.03.2026,3.5\n") == "/dates");
    CHECK(asked("date,ph\n2 Mar 2026,3.4\n").empty());
    CHECK(asked("date;ph\n2026-03-02;3,4\n").empty());
    CHECK(asked("date;gravity\n2026-03-02;1,004\n").empty()); // no beer has 1004
    CHECK(asked("date;gravity\n2026-03-02;1.004\n").empty());
    CHECK(asked("date;volume\n2026-03-02;1,250\n", "draw_off") == "/decimal");
    CHECK(asked("date;volume\n2026-03-02;1.250\n", "draw_off") == "/decimal");
    CHECK(asked("date;volume\n2026-03-02;1,250\n2026-03-03;60,5\n", "draw_off").empty());
    CHECK(asked("date;volume\n2026-03-02;3,5\n2026-03-03;60.5\n", "draw_off") == "/decimal");
    CHECK(asked("date;volume\n2026-03-02;60\n", "draw_off").empty());
}

TEST_CASE("columns are guessed from their headings", "[notes]") {
    CHECK(guessFields("reading", {"Date", "SG", "pH", "TA (g/L)", "Temp (\u00b0C)", "Remarks", "Mood"}) ==
          Strings{"on", "gravity_sg", "ph", "ta_g_l", "temperature_c", "note", ""});
    CHECK(guessFields("reading", {"on", "gravity_p", "Extract (\u00b0P)", "temp (F)"}) ==
          Strings{"on", "gravity_p", "", ""}); // taken already; another unit
    CHECK(guessFields("draw_off", {"Day", "Litres", "volume (gal)", "Batch"}) == Strings{"on", "volume_l", "", "lot"});
    CHECK(guessFields("sitting", {"Date", "Taster", "TA1 cold", "ta2_cellar"}) ==
          Strings{"on", "taster", "TA1_cold", "TA2_cellar"});
    CHECK(guessFields("brew", {"Brew", "Date", "OG", "Grain 1", "Grain 1 kg"}) ==
          Strings{"name", "on", "measured_original_gravity_sg", "grain_1", "grain_1_kg"});
}

TEST_CASE("a unit in brackets must be the field's", "[notes]") {
    CHECK(guessFields("reading", {"TA (%)", "Temperature (Fahrenheit)", "Gravity (Brix)", "pH (mV)"}) ==
          Strings{"", "", "", ""});
    CHECK(guessFields("reading", {"Temp (deg F)", "TA (meq/L)", "Gravity (kg/m3)"}) == Strings{"", "", ""});
    CHECK(guessFields("draw_off", {"volume (barrels)", "Amount (hL)", "drawn [US gal]"}) == Strings{"", "", ""});
    CHECK(guessFields("draw_off", {"Volume (Liters)"}) == Strings{"volume_l"});
    CHECK(guessFields("draw_off", {"drawn [L]"}) == Strings{"volume_l"});
    CHECK(guessFields("reading", {"TA (g/l)", "Temp (Celsius)", "Gravity (Plato)", "Date (dd.mm.yyyy)"}) ==
          Strings{"ta_g_l", "temperature_c", "gravity_p", "on"}); // a day has no unit
    CHECK(guessFields("reading", {"Gravity (sg)", "Extract (\u00b0Plato)", "temperature (deg C)", "ph (pH)"}) ==
          Strings{"gravity_sg", "gravity_p", "temperature_c", "ph"});
    CHECK(guessFields("brew",
                      {"Boil (min)", "Boil time (h)", "Batch size (litres)", "Bitterness (IBU)", "Grain 1 kg (lb)"}) ==
          Strings{"boil_min", "", "into_fermenter_l", "bitterness_ibu", ""});
}

TEST_CASE("the parts of a list have the ranges and units of its items", "[notes]") {
    const auto named = [](const char* kind, const std::string& name) {
        const auto fields = noteFields(kind);
        return *std::find_if(fields.begin(), fields.end(), [&](const auto& each) { return each.name == name; });
    };
    const auto same = [](const NoteField& field, double low, double high, UnitKind unit) {
        return field.low == low && field.high == high && field.unit == unit && !field.required;
    };
    CHECK(same(named("brew", "rest_2_c"), 20, 80, UnitKind::temperature));
    CHECK(same(named("brew", "hop_1_alpha"), .001, .3, UnitKind::share)); // refused below by the fact itself
    CHECK(same(named("sitting", "TA1_cellar"), 0, 10, UnitKind::none));
    CHECK(same(named("brew", "original_gravity_p"), 0, 40, UnitKind::extract));
    CHECK(same(named("reading", "gravity_sg"), .95, 1.2, UnitKind::gravity));
}

TEST_CASE("what a spreadsheet puts around the rows is passed over", "[notes]") {
    const auto noted = taken("\xEF\xBB\xBFsep=;\r\n;;\r\n\r\nDate;pH;Note\r\n;;\r\n2026-03-02;3,4;a, b\r\n ;;\r\n"
                             "2026-03-03;sour;\r\n",
                             "reading");
    REQUIRE(noted.facts.size() == 1);
    CHECK(std::get<ReadingFact>(noted.facts[0]).measured.ph == Ph{3.4});
    REQUIRE(noted.rejected.size() == 1);
    CHECK(noted.rejected[0].line == 8);
    CHECK(readNotes("sep=|\ndate|ph\n2026-03-02|3.4\n")->headings == Strings{"date", "ph"});
    CHECK(readNotes("\"a, b, c\";ph\n1;2\n")->headings == Strings{"a, b, c", "ph"});
    CHECK(readNotes("date,ph\n,\n\n , \n").error().cause.key == "facts.notes_empty");
    CHECK(readNotes("sep=;\n").error().cause.key == "facts.notes_empty");
}

TEST_CASE("a time after a day is cut off", "[notes]") {
    for (const char* text : {"2026-10-02 14:30", "2026-10-02T14:30:00", "2026-10-02T14:30:00Z", "2026-10-02  9:05 PM",
                             "2026-10-02T14:30:00.000+02:00", "2 Oct 2026 14:30"}) {
        INFO(text);
        CHECK(readDay(text, DateOrder::ymd) == on(2026, 10, 2));
    }
    CHECK(readDay("02.10.2026 00:00:00", DateOrder::dmy) == on(2026, 10, 2));
    for (const char* none : {"14:30", "2026-10-02 at:30", "2026-10-02 14:soon", "2026-10 14:30"})
        CHECK_FALSE(readDay(none, DateOrder::ymd));
    CHECK(asked("date,ph\n2026-10-02 14:30,3.4\n").empty());
}

TEST_CASE("rows become readings, and those that cannot be are told with the reason", "[notes]") {
    const auto noted = taken("Date;SG;pH;Note\n"
                             "05.03.2026;1,004;3,41;\"clear; bright\"\n"
                             "13.02.2026;1,006;;=hot\n"
                             "31.02.2026;1,004;3,4;\n"
                             "14.03.2026;1,004;sour;\n"
                             "15.03.2026;1,004;9,4;\n"
                             "16.03.2026;1,004;3,4;x;y\n",
                             "reading");
    REQUIRE(noted.facts.size() == 2);
    CHECK(noted.lines == std::vector<std::vector<std::size_t>>{{3}, {2}}); // by day
    const auto& later = std::get<ReadingFact>(noted.facts[1]);
    CHECK(later.vessel == "Plover");
    CHECK(later.on == on(2026, 3, 5));
    CHECK(later.measured.gravity == SpecificGravity{1.004});
    CHECK(later.measured.ph == Ph{3.41});
    CHECK(later.note == "clear; bright");
    CHECK(std::get<ReadingFact>(noted.facts[0]).note == "=hot");
    REQUIRE(noted.rejected.size() == 4);
    const auto path = [&](std::size_t i) {
        return std::to_string(noted.rejected[i].line) + noted.rejected[i].why.path;
    };
    CHECK(path(0) == "4/on");
    CHECK(path(1) == "5/ph");
    CHECK(path(2) == "6/ph");
    CHECK(path(3) == "7");
}

TEST_CASE("what several tasters said on a day is one tasting", "[notes]") {
    const auto noted = taken("date,taster,TA1 cold,TA1 cellar,TA2 cold,note\n"
                             "2026-03-02,Rook,6.5,7,6,sharp\n"
                             "2026-03-02,Wren,6,,,dull\n"
                             "2026-04-02,Rook,5,,,\n",
                             "sitting");
    REQUIRE(noted.facts.size() == 2);
    const auto& sitting = std::get<SittingFact>(noted.facts[0]).sitting;
    REQUIRE(sitting.scores.size() == 3);
    CHECK(sitting.scores[0].taster == "Rook");
    CHECK(sitting.scores[0].cold == 6.5);
    CHECK(sitting.scores[0].cellar == 7);
    CHECK(sitting.scores[1].attribute == "TA2");
    CHECK(sitting.scores[2].taster == "Wren");
    CHECK_FALSE(sitting.scores[2].cellar);
    CHECK(sitting.note == "sharp; dull");
}

TEST_CASE("a row becomes a brew with its grist, mash and hops", "[notes]") {
    const auto noted =
        taken("brew,date,OG,grain 1,grain 1 kg,grain 2,grain 2 kg,rest 1 c,rest 1 min,rest 2 c,rest 2 "
              "min,hop 1,hop 1 alpha,hop 1 min,yeast\n"
              "Brew 7,2026-03-02,1.048,Pilsner malt,15,wheat_malt,5,45,15,66,60,old leaf,3%,90,ale_clean\n",
              "brew");
    REQUIRE(noted.rejected.empty());
    const auto& brew = std::get<BrewFact>(noted.facts.at(0));
    CHECK(brew.name == "Brew 7");
    CHECK(brew.vessel == "Plover");
    CHECK(brew.originalGravity == SpecificGravity{1.048});
    REQUIRE(brew.recipe.grist.size() == 2);
    CHECK(brew.recipe.grist[0].grain == "pilsner");
    CHECK(brew.recipe.grist[0].share == Share{.75});
    CHECK(brew.recipe.grist[1].mass == Kilograms{5});
    REQUIRE(brew.recipe.mash.size() == 2);
    CHECK(brew.recipe.mash[1].temperature == Celsius{66});
    CHECK(brew.recipe.hops.at(0).alpha == Share{.03});
}

TEST_CASE("a form that cannot be is refused before any row", "[notes]") {
    const auto table = *readNotes("date,ph,sg\n2026-03-02,3.4,1.004\n");
    const auto refused = [&](const Strings& fields, const std::string& vessel = "Plover") {
        return settled({"reading", vessel, fields, {}, {}}, table).error().cause.key;
    };
    CHECK(refused({"on", "acid", ""}) == "desk.unknown_field");
    CHECK(refused({"on", "ph", "ph"}) == "facts.notes_twice");
    CHECK(refused({"", "ph", ""}) == "facts.notes_missing");
    CHECK(refused({"on", "ph", ""}, "") == "facts.notes_missing"); // of which vessel
    CHECK(settled({"mood", "", {}, {}, {}}, table).error().path == "/kind");
    CHECK(readNotes("").error().cause.key == "facts.notes_empty");
    CHECK(readNotes("date,ph\n").error().cause.key == "facts.notes_empty");
    CHECK(readNotes("date,note\n2026-03-02,\xE4\n").error().cause.key == "facts.notes_encoding");
}

TEST_CASE("every template is taken as it is given out", "[notes]") {
    CHECK(noteKinds().size() >= 10);
    for (const auto& kind : noteKinds()) {
        INFO(kind << "\n" << noteTemplate(kind));
        const auto table = readNotes(noteTemplate(kind));
        REQUIRE(table);
        CHECK(guessFields(kind, table->headings) == table->headings);
        const auto noted = taken(noteTemplate(kind), kind);
        CHECK(noted.rejected.empty());
        CHECK(noted.facts.size() == 1);
    }
}
