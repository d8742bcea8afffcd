// SPDX-License-Identifier: GPL-3.0-or-later
// A cellar book of an earlier version of the tables: what it lacks is added, and means what it meant without.
#include "desk/support.h"
#include "facts/codec.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

/// What came after version 1.0, by table; no columns: the table itself.
const std::map<std::string, std::set<std::string>> addedSince = {
    {"event", {}},
    {"refit", {}},
    {"round", {}},
    {"room", {}},
    {"lot_reading", {}},
    {"lot_addition", {}},
    {"lot_move", {}},
    {"packaging", {}},
    {"opened", {}},
    {"work_date", {}},
    {"opening", {"at", "turn"}},
    {"reading", {"at", "turn"}},
    {"sample", {"at", "turn"}},
    {"dip", {"at", "turn"}},
    {"draw_off", {"at", "turn"}},
    {"refill", {"at", "turn", "lot"}},
    {"top_up", {"at", "turn", "lot"}},
    {"sitting", {"learn", "learn_reason"}},
    {"choice", {"turn"}},
    {"vessel", {"draw_may_move", "interval_may_move", "wanted_age_years", "fills_before", "room"}},
    {"equipment", {"water_boils_c", "vessel"}}};

bool isAdded(const std::string& table, const std::string& column) {
    const auto found = addedSince.find(table);
    return found != addedSince.end() && found->second.contains(column);
}

book::Schema firstSchema() {
    book::Schema schema = cellarSchema();
    schema.minor = 0;
    std::erase_if(schema.tables, [](const book::TableSpec& table) {
        const auto found = addedSince.find(table.name);
        return found != addedSince.end() && found->second.empty();
    });
    for (book::TableSpec& table : schema.tables) {
        std::erase_if(table.columns, [&](const book::Column& column) { return isAdded(table.name, column.name); });
        std::erase_if(table.indexes, [&](const std::vector<std::string>& columns) {
            return std::any_of(columns.begin(), columns.end(),
                               [&](const auto& name) { return isAdded(table.name, name); });
        });
    }
    return schema;
}

/// As the first version would have written it.
template <class F> std::vector<book::Value> firstRow(const F& fact, const Names& names) {
    const std::string name(tableOf<F>);
    const auto& tables = cellarSchema().tables;
    const auto spec = std::find_if(tables.begin(), tables.end(), [&](const auto& table) { return table.name == name; });
    const auto now = *toRow(fact, names);
    std::vector<book::Value> then;
    for (std::size_t i = 0; i < now.size(); ++i)
        if (!isAdded(name, spec->columns[i].name))
            then.push_back(now[i]);
    return then;
}

struct OlderBook {
    Scratch scratch;
    std::filesystem::path file = scratch / "old.cellar";
    VesselFact heron;
    SittingFact tasted;
    EquipmentFact kit;
    BrewFact brew;

    OlderBook() {
        kit.on = day(2025, 8, 1);
        kit.equipment.name = "old kit";
        brew.name = "Brew 1";
        brew.vessel = "Heron";
        brew.on = day(2025, 8, 2);
        brew.recipe.grist = {{"pilsner", Share{.7}, false}, {"wheat_malt", Share{.3}, false}};
        brew.recipe.mash = {{Celsius{66}, Minutes{60}}};
        heron.name = "Heron";
        heron.note = "by the window";
        tasted.vessel = "Heron";
        tasted.sitting.on = day(2025, 9, 1);
        tasted.sitting.scores = {{"Rook", "TA1", 6, 6.5}};
        tasted.sitting.note = "firm";
        const auto book = book::Book::create(file, firstSchema());
        REQUIRE(book);
        REQUIRE((*book)->commit({"old", "old", "", ""}, [&](book::Writer& writer) -> Result<void> {
            Names names;
            const auto id = writer.insert("vessel", firstRow(heron, names));
            if (!id)
                return fail(id.error());
            names.addVessel(*id, heron.name);
            if (auto stored = writer.insert("equipment", firstRow(kit, names)); !stored)
                return fail(stored.error());
            if (auto stored = writer.insert("brew", firstRow(brew, names)); !stored)
                return fail(stored.error());
            return writer.insert("sitting", firstRow(tasted, names)).map([](book::RowId) {});
        }));
    }
    [[nodiscard]] std::unique_ptr<Desk> open(book::OpenMode mode = book::OpenMode::readWrite) const {
        return *Desk::open(
            file, [] { return day(2026, 3, 2); }, mode);
    }
};

} // namespace

TEST_CASE_METHOD(OlderBook, "a book of the first version is upgraded and takes what came since", "[desk][migration]") {
    const auto desk = open();
    REQUIRE(desk->notices().size() == 1);
    CHECK(desk->notices().front().key == "book.notice.migrated");
    CHECK_FALSE(desk->readOnly());
    CHECK(desk->vessel("Heron")->facts == heron);
    CHECK_FALSE(desk->vessel("Heron")->facts.drawMayMove);
    CHECK(desk->kit("Heron") == kit);          // of all vessels, where water boils at 100 C
    CHECK(desk->brews() == std::vector{brew}); // nothing weighed
    CHECK(desk->sittings("Heron")->front().fact == tasted);
    CHECK(desk->sittings("Heron")->front().fact.learn);
    REQUIRE(desk->record(EventFact{"Heron", day(2025, 10, 1), Happening::moved, ""}));
    REQUIRE(desk->record(SittingUseFact{"Heron", day(2025, 9, 1), 1, false, "a cold"}));
    CHECK_FALSE(open()->sittings("Heron")->front().fact.learn);
    VesselEditFact edit;
    edit.vessel = "Heron";
    edit.drawMayMove = true;
    REQUIRE(desk->record(edit));
    CHECK(open()->vessel("Heron")->facts.drawMayMove);
    REQUIRE(desk->undo());
    CHECK(open()->vessel("Heron")->facts == heron);
    CHECK(open()->ledger("Heron")->lines.size() == 1);
    CHECK(desk->check()->sound());
}

TEST_CASE_METHOD(OlderBook, "read as it is, an older book says what it said", "[desk][migration]") {
    const auto desk = open(book::OpenMode::readOnly);
    CHECK(desk->vessel("Heron")->facts == heron);
    CHECK(desk->kit("Heron") == kit);
    CHECK(desk->brews() == std::vector{brew});
    CHECK(desk->sittings("Heron")->front().fact == tasted);
    CHECK(desk->ledger("Heron")->lines.empty());
    CHECK(desk->check()->sound());
}
