// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/folder.h"
#include "facts/own_ingredients.h"
#include "full_facts.h"
#include "ingredient/pantry.h"
#include "support/property.h"

using namespace staveline;
using namespace staveline::testing;
using facts::TextFile;

namespace {

TextFile& fileNamed(std::vector<TextFile>& files, const std::string& name) {
    const auto at = std::find_if(files.begin(), files.end(), [&](const TextFile& each) { return each.name == name; });
    REQUIRE(at != files.end());
    return *at;
}

std::vector<TextFile> exportOf(const desk::Desk& desk) {
    auto files = desk.exported();
    REQUIRE(files);
    return *std::move(files);
}

/// What a book says when it is written out: the tables alone.
std::string tablesOf(const desk::Desk& desk) {
    std::string all;
    for (const auto& file : exportOf(desk))
        if (file.name.ends_with(".csv"))
            all += file.name + "\n" + file.text;
    return all;
}

/// A book of its own, made of the files.
struct Again {
    Scratch scratch;
    std::unique_ptr<desk::Desk> desk = *desk::Desk::create(scratch / "again.cellar", [] { return day(2026, 3, 2); });
    Result<desk::Recorded> restore(const std::vector<TextFile>& files) { return desk->restore(files); }
};

std::vector<TextFile> without(std::vector<TextFile> files, const std::string& name) {
    files.erase(std::remove_if(files.begin(), files.end(), [&](const auto& each) { return each.name == name; }),
                files.end());
    return files;
}

/// The first thing that is refused in a file with `from` replaced by `to`.
Fault refusal(std::vector<TextFile> files, const std::string& name, const std::string& from, const std::string& to) {
    auto& text = fileNamed(files, name).text;
    INFO(name << ": " << text);
    REQUIRE(text.find(from) != std::string::npos);
    text.replace(text.find(from), from.size(), to);
    Again again;
    const auto done = again.restore(files);
    REQUIRE_FALSE(done);
    CHECK(again.desk->vessels()->empty());
    return done.error();
}

} // namespace

TEST_CASE_METHOD(DeskFixture, "a book of every kind of fact comes back from its export", "[export]") {
    REQUIRE(desk->record(fullFacts()));
    Again again;
    const auto restored = again.restore(exportOf(*desk));
    REQUIRE(restored);
    CHECK(restored->edit == "book from an exported folder");
    CHECK(tablesOf(*again.desk) == tablesOf(*desk));
    CHECK(wholeBook(*again.desk) == wholeBook(*desk));
    CHECK(again.desk->check()->sound());
    REQUIRE(again.desk->undo()); // all of it is one edit
    CHECK(again.desk->vessels()->empty());
}

TEST_CASE_METHOD(DeskFixture, "rows keep their numbers when others are gone", "[export]") {
    addPlover();
    for (const char* on : {"2025-07-01", "2025-08-01", "2025-09-01"})
        record(R"({"kind": "reading", "vessel": "Plover", "on": ")" + std::string(on) + R"(", "ph": 3.3})");
    REQUIRE(desk->remove("reading", 2));
    Again again;
    REQUIRE(again.restore(exportOf(*desk)));
    CHECK(again.desk->fact("reading", 3) == desk->fact("reading", 3));
    CHECK_FALSE(again.desk->fact("reading", 2));
}

TEST_CASE_METHOD(DeskFixture, "a formula in a note is none in the table and comes back", "[export]") {
    addPlover();
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2025-07-01", "ph": 3.3, "note": "=1+1, \"x\""})");
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2025-07-02", "ph": 3.3, "note": "'tis sour, \"sharp\""})");
    auto files = exportOf(*desk);
    CHECK(fileNamed(files, "reading.csv").text.find(",\"'=1+1, \"\"x\"\"\"") != std::string::npos);
    Again again;
    REQUIRE(again.restore(files));
    CHECK(tablesOf(*again.desk) == tablesOf(*desk));
}

TEST_CASE_METHOD(DeskFixture, "a table that was changed by hand is refused where it is wrong", "[export]") {
    addPlover();
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2025-07-01", "ph": 3.31, "note": "clear"})");
    record(R"({"kind": "sitting", "vessel": "Plover", "on": "2025-08-20",
               "scores": [{"taster": "Wren", "attribute": "TA1", "cold": 2.5}]})");
    const auto files = exportOf(*desk);
    CHECK(refusal(files, "reading.csv", "3.31", "sour").path == "/reading.csv/2/ph");
    CHECK(refusal(files, "reading.csv", "3.31", "33.1").path == "/reading.csv/id 1/ph");
    CHECK(refusal(files, "reading.csv", "2025-07-01", "1.7.2025").path == "/reading.csv/2/on");
    CHECK(refusal(files, "reading.csv", "Plover", "Plover 2").path == "/reading.csv/2/vessel");
    CHECK(refusal(files, "reading.csv", ",ph,", ",pH value,").path == "/reading.csv/1/pH value");
    CHECK(refusal(files, "reading.csv", "clear", "clear,bright").path == "/reading.csv/2");
    CHECK(refusal(files, "reading.csv", "\r\n1,", "\r\n0,").path == "/reading.csv/2/id");
    CHECK(refusal(files, "sitting.csv", "[{", "[").path == "/sitting.csv/id 1/scores");
    CHECK(refusal(files, "vessel.csv", "225", "").path == "/vessel.csv/id 1/capacity_l");
    CHECK(refusal({{"notes.csv", "a,b"}}, "notes.csv", "a", "a").cause.key == "facts.no_tables");
}

TEST_CASE_METHOD(DeskFixture, "an export with a table or a column gone is refused by its name", "[export]") {
    addPlover();
    const auto files = exportOf(*desk);
    const auto refused = [](const std::vector<TextFile>& given) {
        Again again;
        const auto done = again.restore(given);
        CHECK(again.desk->vessels()->empty() != done.has_value());
        return done ? Fault{} : done.error();
    };
    for (const char* name : {"vessel.csv", "opening.csv", "draw_off.csv"}) {
        const Fault gone = refused(without(files, name));
        CHECK(gone.path == "/" + std::string(name));
        CHECK(render(gone.cause).find(name) != std::string::npos);
        CHECK_FALSE(render(gone.remedy).empty());
        CHECK(refused(without(without(files, "tables.csv"), name)) == gone); // an export that says no version
    }
    CHECK(refused(without(files, "tables.csv")) == Fault{}); // all is there
    auto narrow = files;
    fileNamed(narrow, "reading.csv").text = "id,vessel,on\r\n";
    CHECK(refused(narrow).path.starts_with("/reading.csv/1/"));
    CHECK(refused(narrow).cause.key == "facts.csv_no_column");
}

TEST_CASE_METHOD(DeskFixture, "tables that a spreadsheet saved with semicolons come back", "[export]") {
    addPlover();
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2025-07-01", "ph": 3.31, "note": "dull, then; clear"})");
    auto files = exportOf(*desk);
    const std::string dull = "\"dull, then; clear\"";
    for (const char* name : {"vessel.csv", "reading.csv", "tables.csv"}) {
        auto& text = fileNamed(files, name).text;
        const auto kept = std::min(text.find(dull), text.size());
        std::replace(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(kept), ',', ';');
        std::replace(text.begin() + static_cast<std::ptrdiff_t>(std::min(kept + dull.size(), text.size())), text.end(),
                     ',', ';');
    }
    auto& readings = fileNamed(files, "reading.csv").text;
    readings.replace(readings.find("3.31"), 4, "3,31");
    readings += ";;;\r\n";
    Again again;
    REQUIRE(again.restore(files));
    CHECK(tablesOf(*again.desk) == tablesOf(*desk));
    readings.replace(readings.find("3,31"), 4, "3,3,1");
    CHECK(Again().restore(files).error().path == "/reading.csv/2/ph");
    readings.insert(0, "sep=;\r\n");
    CHECK(Again().restore(files).error().path == "/reading.csv/3/ph");
}

TEST_CASE_METHOD(DeskFixture, "only what an older export never had may be missing", "[export]") {
    addPlover();
    auto files = without(exportOf(*desk), "work_date.csv");
    auto& contents = fileNamed(files, "tables.csv").text;
    const std::string ours = std::to_string(facts::tablesMinor) + ",";
    for (std::size_t at = 0; (at = contents.find(ours, at)) != contents.npos;)
        contents.replace(at, ours.size(), "1,");
    auto& readings = fileNamed(files, "reading.csv").text;
    readings.replace(readings.find(",at,"), 3, ""); // came later
    {
        Again again; // it says that it had the table
        CHECK(again.restore(files).error().path == "/work_date.csv");
    }
    contents.replace(contents.find("1,work_date.csv\r\n"), 17, "");
    Again again;
    REQUIRE(again.restore(files));
    CHECK(tablesOf(*again.desk) == tablesOf(*desk));
    readings.replace(readings.find(",note"), 5, ""); // a column that was always there
    CHECK(Again().restore(files).error().path == "/reading.csv/1/note");
    contents.replace(contents.find("1,"), 2, "99,");
    CHECK(Again().restore(files).error().path == "/tables.csv/2/version");
    contents.replace(contents.find("99,"), 3, "new,");
    CHECK(Again().restore(files).error().path == "/tables.csv/2/version");
}

TEST_CASE_METHOD(DeskFixture, "ingredients of one's own come back from their export, whatever their numbers",
                 "[export][own][properties]") {
    record(
        R"({"kind": "own_grain", "on": "2026-01-01", "ingredient": "barn", "name": "barn malt", "like": "pilsner"})");
    int made = 0;
    CHECK_PROPERTY("own grains", [&] {
        facts::OwnGrainFact own;
        const auto& grains = ingredient::builtInPantry().grains();
        facts::startLike(own, grains[*rc::gen::inRange<std::size_t>(0, grains.size())].id);
        own.on = day(2026, 1, 1) + std::chrono::days{*rc::gen::inRange(0, 50)};
        own.item.id = "mine_" + std::to_string(++made);
        own.item.name = own.item.id;
        own.item.moisture = *rc::gen::inRange(0, 3000) / 10000.;
        own.item.ferulicBound = *rc::gen::inRange(0, 20000) / 100.;
        own.note = *rc::gen::element<std::string>("", "=1+1", "\"dry\", they said", "sack 7; lot 3");
        RC_ASSERT(desk->record(facts::Fact{own}).has_value());
    });
    Again again;
    REQUIRE(again.restore(exportOf(*desk)));
    CHECK(tablesOf(*again.desk) == tablesOf(*desk));
    CHECK(again.desk->pantry().grains() == desk->pantry().grains());
    CHECK(refusal(exportOf(*desk), "own_grain.csv", ",pilsner,", ",,").path.starts_with("/own_grain.csv/id "));
}

TEST_CASE_METHOD(DeskFixture, "a book that holds something is not filled", "[export]") {
    addPlover();
    CHECK(desk->restore(exportOf(*desk)).error().path == "/vessel.csv/id 1/id");
}

TEST_CASE_METHOD(DeskFixture, "each cycle has a page that says what happened in it", "[export]") {
    addPlover();
    record(R"([{"kind": "brew", "name": "Brew 4", "vessel": "Plover", "on": "2025-08-20", "yeast": "ale_clean",
                "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 64, "minutes": 70}]},
               {"kind": "sitting", "vessel": "Plover", "on": "2025-08-10",
                "scores": [{"taster": "Wren", "attribute": "TA1", "cold": 2.5}]},
               {"kind": "draw_off", "vessel": "Plover", "on": "2025-09-08", "volume_l": 79, "lot": "Draw 1"},
               {"kind": "refill", "vessel": "Plover", "on": "2025-09-08", "volume_l": 80, "brew": "Brew 4"}])");
    auto files = exportOf(*desk);
    const std::string& before = fileNamed(files, "cycles/plover-1-00.html").text;
    const std::string& after = fileNamed(files, "cycles/plover-1-01.html").text;
    const auto says = [](const std::string& page, const char* words) { return page.find(words) != std::string::npos; };
    CHECK(says(before, "10 Aug 2025: tasting"));
    CHECK(says(before, "8 Sep 2025: draw-off")); // of the beer that was there
    CHECK(says(before, tasting::builtInSheet().attributes.front().name.c_str()) == false);
    CHECK(says(before, "Wren"));
    CHECK_FALSE(says(before, "8 Sep 2025: refill"));
    CHECK(says(after, "8 Sep 2025: refill"));
    CHECK(says(after, "20 Aug 2025: brew"));
    CHECK(says(after, "64 \u00b0C"));
    CHECK_FALSE(says(after, "8 Sep 2025: draw-off"));
    CHECK(says(fileNamed(files, "contents.html").text, "cycles/plover-1-01.html"));
}

TEST_CASE_METHOD(DeskFixture, "a folder is made whole, and only where nothing is", "[export]") {
    addPlover();
    const auto files = exportOf(*desk);
    const auto to = scratch / "out";
    REQUIRE(desk::writeFolder(to, files));
    CHECK(readAll(to / "cycles" / "plover-1-00.html") == files[files.size() - 2].text);
    const auto again = desk::writeFolder(to, files);
    REQUIRE_FALSE(again);
    CHECK(again.error().cause.key == "desk.folder_full");
    writeAll(scratch / "file", "x");
    CHECK(desk::writeFolder(scratch / "file", files).error().cause.key == "desk.folder_full");
    CHECK(desk::writeFolder(scratch / "none" / "out", files).error().cause.key == "desk.folder_unmade");
    CHECK_FALSE(desk::writeFolder(scratch / "half", {{"a.csv", "x"}, {"a.csv/b.csv", "x"}}));
    CHECK_FALSE(std::filesystem::exists(scratch / "half"));
    CHECK_FALSE(std::filesystem::exists(scratch / "half.part"));
    std::filesystem::create_directory(scratch / "empty");
    CHECK(desk::writeFolder(scratch / "empty", files));
}

TEST_CASE_METHOD(DeskFixture, "an empty folder is filled where it is", "[export]") {
    addPlover();
    const auto files = exportOf(*desk);
    for (const char* name : {"empty", "dot"}) {
        INFO(name);
        const auto folder = scratch / name;
        std::filesystem::create_directory(folder);
        REQUIRE(desk::writeFolder(name == std::string("dot") ? folder / "." : folder, files));
        CHECK(readAll(folder / "cycles" / "plover-1-00.html") == files[files.size() - 2].text);
        CHECK_FALSE(std::filesystem::exists(folder / ".part"));
    }
    std::filesystem::create_directory(scratch / "half");
    CHECK_FALSE(desk::writeFolder(scratch / "half", {{"a.csv", "x"}, {"a.csv/b.csv", "x"}}));
    CHECK(std::filesystem::is_empty(scratch / "half"));
}

TEST_CASE_METHOD(DeskFixture, "a folder that cannot be used is named with what was asked", "[export]") {
    const auto out = desk::writeFolder(scratch / "none" / "out", {});
    REQUIRE_FALSE(out);
    CHECK(out.error().path == "/out");
    CHECK(render(out.error().remedy).find((scratch / "none" / "out.part").string()) != std::string::npos);
    const auto from = desk::bookFromFolder(scratch / "new.cellar", scratch / "nowhere");
    REQUIRE_FALSE(from);
    CHECK(from.error().path == "/from");
}

TEST_CASE_METHOD(DeskFixture, "a new book of a folder appears whole or not at all", "[export]") {
    addPlover();
    REQUIRE(desk::writeFolder(scratch / "out", exportOf(*desk)));
    const auto made = desk::bookFromFolder(scratch / "new.cellar", scratch / "out");
    REQUIRE(made);
    CHECK(tablesOf(**made) == tablesOf(*desk));
    CHECK_FALSE(desk::bookFromFolder(scratch / "new.cellar", scratch / "out")); // never over another book
    writeAll(scratch / "out" / "vessel.csv", readAll(scratch / "out" / "vessel.csv") + "2,Plover\r\n");
    CHECK_FALSE(desk::bookFromFolder(scratch / "bad.cellar", scratch / "out"));
    CHECK_FALSE(desk::bookFromFolder(scratch / "bad.cellar", scratch / "nowhere"));
    CHECK_FALSE(std::filesystem::exists(scratch / "bad.cellar"));
}

TEST_CASE("import of an export is the identity", "[export]") {
    CHECK_PROPERTY("import of an export is the identity", [] {
        DeskFixture source;
        source.addPlover();
        const auto texts = rc::gen::container<std::string>(rc::gen::elementOf(std::string("ab,;\"'=+-@ \n0{[")));
        const auto count = *rc::gen::inRange(1, 12);
        for (int i = 0; i < count; ++i) {
            facts::ReadingFact reading;
            reading.vessel = "Plover";
            reading.on = day(2025, 6, 2) + std::chrono::days(*rc::gen::inRange(0, 250));
            reading.at = *rc::gen::element<std::string>("", "9:05", "14:30");
            reading.measured.ph = Ph{2.2 + *rc::gen::inRange(0, 1000000) * 4.7e-6};
            if (*rc::gen::arbitrary<bool>())
                reading.measured.temperature = Celsius{*rc::gen::inRange(-500000, 4500000) * 1e-5};
            reading.note = *texts;
            const auto done = source.desk->record(facts::Fact{reading});
            RC_CLASSIFY(!done, "refused");
        }
        Again again;
        const auto files = source.desk->exported();
        RC_ASSERT(files.has_value());
        RC_ASSERT(again.restore(*files).has_value());
        RC_ASSERT(tablesOf(*again.desk) == tablesOf(*source.desk));
    });
}
