// SPDX-License-Identifier: GPL-3.0-or-later
// What another program did to an entry is said of that entry, by its kind, day and vessel.
#include "desk/support.h"
#include "facts/codec.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

/// Changes a word wherever the file has it: the length stays, the digests do not fit any more.
void overwrite(const std::filesystem::path& file, const std::string& from, const std::string& to) {
    std::string bytes = readAll(file);
    std::size_t found = 0;
    for (auto at = bytes.find(from); at != std::string::npos; at = bytes.find(from, at + 1), ++found)
        bytes.replace(at, from.size(), to);
    REQUIRE(found > 0);
    writeAll(file, bytes);
}

} // namespace

TEST_CASE_METHOD(DeskFixture, "a changed entry is marked in the ledger and named in words", "[desk][damage]") {
    addPlover();
    record(R"({"kind": "top_up", "vessel": "Plover", "on": "2025-07-20", "volume_l": 5, "note": "from the jug"})");
    const auto path = desk->path();
    desk.reset();
    overwrite(path, "from the jug", "from the mug");
    const auto damaged = *Desk::open(path, [this] { return now; });
    const std::string words = "The top-up of 20 Jul 2025 (Plover) was changed outside Staveline.";
    const auto ledger = damaged->ledger("Plover");
    REQUIRE(ledger);
    REQUIRE(ledger->lines.back().findings.size() == 1);
    CHECK(render(ledger->lines.back().findings.front()) == words);
    const auto told = [&](const std::vector<book::Damage>& damages) {
        return std::any_of(damages.begin(), damages.end(), [&](const auto& d) { return render(d.what) == words; });
    };
    CHECK(told(damaged->damages()));
    CHECK(told(damaged->check()->damages));
    const auto notices = damaged->notices();
    CHECK(std::any_of(notices.begin(), notices.end(), [&](const auto& notice) { return render(notice) == words; }));
    CHECK(damaged->readOnly());
}

TEST_CASE_METHOD(DeskFixture, "a stored day that is none is damage, not a day of 1970", "[desk][damage]") {
    addPlover();
    book::Schema text = cellarSchema(); // written by a program that does not look at days
    for (auto& table : text.tables)
        for (auto& column : table.columns)
            if (column.type == book::ColumnType::day)
                column.type = book::ColumnType::text;
    const auto path = desk->path();
    desk.reset();
    {
        const auto book = book::Book::open(path, text);
        REQUIRE(book);
        REQUIRE((*book)->commit({"odd", "odd", "", ""}, [&](book::Writer& writer) -> Result<void> {
            Names names;
            names.addVessel(1, "Plover");
            auto row = *toRow(DipFact{"Plover", day(2026, 1, 5), Litres{190}, ""}, names);
            for (auto& value : row)
                if (value == book::Value(std::string("2026-01-05")))
                    value = std::string("notaday");
            return writer.insert("dip", row).map([](book::RowId) {});
        }));
    }
    const auto odd = *Desk::open(path, [this] { return now; });
    CHECK_FALSE(odd->check()->sound());
    REQUIRE(odd->ledger("Plover"));
    CHECK(odd->damages().size() == 1);
    CHECK(odd->readOnly());
}
