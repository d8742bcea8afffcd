// SPDX-License-Identifier: GPL-3.0-or-later
// What an edit says it stored, and when observers are told of it.
#include "desk/support.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct Recording : DeskFixture {
    Recording() { addPlover(); }

    [[nodiscard]] Fact at(const book::RowKey& row) const {
        const auto fact = desk->fact(row.table, row.id);
        REQUIRE(fact);
        return *fact;
    }
    [[nodiscard]] Fact dip(double litres) const { return DipFact{"Plover", now, Litres{litres}, ""}; }
};

} // namespace

TEST_CASE_METHOD(Recording, "what is recorded comes back as rows in the order of the facts", "[desk][recorded]") {
    ReadingFact reading{"Plover", now, {}, ""};
    reading.measured.ph = Ph{3.3};
    const std::vector<Fact> facts = {dip(210), reading, dip(209)};
    const auto done = desk->record(facts);
    REQUIRE(done);
    REQUIRE(done->rows.size() == facts.size());
    for (std::size_t i = 0; i < facts.size(); ++i)
        CHECK(at(done->rows[i]) == facts[i]);
    CHECK(done->edit == desk->undoText());
}

TEST_CASE_METHOD(Recording, "ingredients that a recipe brings are no rows of the edit", "[desk][recorded]") {
    const auto setting = *desk->setting("Plover");
    const auto done = desk->record(Fact{BaseRecipeFact{"Plover", now, setting.recipe}});
    REQUIRE(done);
    REQUIRE(done->rows.size() == 1);
    CHECK(done->rows.front().table == "base_recipe");
}

TEST_CASE_METHOD(Recording, "amending, setting and deciding name their row", "[desk][recorded]") {
    const auto first = desk->record(dip(210));
    REQUIRE(first);
    const auto amended = desk->amend("dip", first->rows.front().id, dip(208));
    REQUIRE(amended);
    CHECK(amended->rows == first->rows);
    CHECK(at(amended->rows.front()) == dip(208));

    TargetFact target{"Plover", now, {}};
    const auto set = desk->setToday(Fact{target});
    target.target.setBy = "us";
    const auto again = desk->setToday(Fact{target});
    REQUIRE((set && again));
    CHECK(again->rows == set->rows); // it took the place of today's

    auto setting = *desk->setting("Plover");
    setting.recipe.bitterness = Ibu{11};
    const auto revised = desk->revise("Plover", setting);
    REQUIRE(revised);
    CHECK(std::get<ChoiceFact>(at(revised->rows.front())).forecast->recipe.bitterness == Ibu{11});

    const auto job = desk->adviceJob({"Plover", {}, {}, false});
    const auto chosen = desk->choose(*job, *advise(job->input), 0);
    REQUIRE(chosen);
    CHECK(at(chosen->recorded.rows.front()) == Fact{chosen->choice});

    VesselEditFact edit;
    edit.vessel = "Plover";
    edit.capacity = Litres{230};
    CHECK(desk->record(Fact{edit})->rows == std::vector<book::RowKey>{{"vessel", 1}});
}

TEST_CASE_METHOD(Recording, "undo and redo name the rows they change", "[desk][recorded]") {
    const auto done = desk->record({dip(210), dip(209)});
    REQUIRE(done);
    for (const bool back : {true, false}) {
        auto travelled = back ? desk->undo() : desk->redo();
        REQUIRE(travelled);
        std::sort(travelled->rows.begin(), travelled->rows.end(),
                  [](const auto& a, const auto& b) { return a.id < b.id; });
        CHECK(travelled->rows == done->rows);
    }
}

TEST_CASE_METHOD(Recording, "observers hear once of a batch, when it ends, and of none that changed nothing",
                 "[desk][recorded]") {
    int heard = 0;
    desk->observe([&] {
        ++heard;
        CHECK(desk->ledger("Plover")->lines.size() == 3);
    });
    {
        const auto all = desk->batch();
        REQUIRE(desk->record(dip(210)));
        {
            const auto inner = desk->batch();
            REQUIRE(desk->record(dip(209)));
            REQUIRE(desk->record(dip(208)));
        }
        REQUIRE(desk->undo());
        CHECK(heard == 0);
    }
    CHECK(heard == 1);
    {
        const auto nothing = desk->batch();
        CHECK_FALSE(desk->record(DipFact{"Nobody", now, Litres{1}, ""}));
    }
    CHECK(heard == 1);
}

TEST_CASE_METHOD(Recording, "a decision on top of another program's edit tells observers once", "[desk][recorded]") {
    const auto job = desk->adviceJob({"Plover", {}, {}, false});
    const auto advice = advise(job->input);
    auto other = *Desk::open(desk->path(), [this] { return now; });
    REQUIRE(other->record(dip(210)));
    int heard = 0;
    desk->observe([&] { ++heard; });
    CHECK(desk->choose(*job, *advice, 0).error().cause.key == "desk.stale_advice");
    CHECK(heard == 1);
}
