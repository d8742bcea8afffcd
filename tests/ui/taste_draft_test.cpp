// SPDX-License-Identifier: GPL-3.0-or-later
// A sitting in hand: scores by taster and glass, and what becomes of them when the book changes underneath.
#include "support/catch.h"
#include "ui/taste/draft.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::ui;

namespace {

constexpr Day on = std::chrono::year{2026} / 3 / 2;

const Attribute& line(const char* code) {
    return *builtInSheet().find(code);
}
SittingDraft stored(std::vector<Score> scores, std::int64_t id = 7) {
    SittingFact fact{"Heron", {}};
    fact.sitting.on = on;
    fact.sitting.scores = std::move(scores);
    return SittingDraft(Filed<SittingFact>{id, fact});
}
SittingFact with(const SittingDraft& draft, const char* code, std::optional<double> cold) {
    SittingDraft copy = draft;
    copy.setScore(line(code), Glass::cold, cold);
    return copy.now();
}

} // namespace

TEST_CASE("a new sitting holds nothing the book would take", "[taste]") {
    SittingDraft draft("Heron", on, {});
    CHECK(draft.tasters() == std::vector<std::string>{""});
    CHECK_FALSE(draft.changed());
    CHECK_FALSE(draft.storable());
    CHECK_FALSE(draft.waits());
    draft.setNote("hazy");
    CHECK(draft.changed());
    CHECK_FALSE(draft.storable());
    CHECK(draft.waits());
    draft.setScore(line("TA1"), Glass::cold, 6.0);
    CHECK(draft.storable());
    CHECK_FALSE(draft.waits());
}

TEST_CASE("scores are kept by taster and glass and go when both glasses are cleared", "[taste]") {
    SittingDraft draft("Heron", on, {"Rook", "Wren"});
    draft.setScore(line("TA1"), Glass::cold, 6.0);
    draft.setScore(line("TA1"), Glass::cellar, 6.5);
    draft.take(1);
    CHECK_FALSE(draft.score(line("TA1"), Glass::cold));
    draft.setScore(line("TA1"), Glass::cellar, 7.0);
    REQUIRE(draft.now().sitting.scores.size() == 2);
    CHECK(draft.now().sitting.scores[0] == Score{"Rook", "TA1", 6.0, 6.5});
    CHECK(draft.now().sitting.scores[1] == Score{"Wren", "TA1", std::nullopt, 7.0});
    draft.setScore(line("TA1"), Glass::cellar, std::nullopt);
    CHECK(draft.now().sitting.scores.size() == 1);
    draft.take(9);
    CHECK(draft.taster() == "Wren");
}

TEST_CASE("a line tasted once shows its score from either glass and keeps one", "[taste]") {
    SittingDraft draft = stored({{"Rook", "AP4", std::nullopt, 3.0}});
    CHECK(draft.score(line("AP4"), Glass::cold) == 3.0);
    draft.setScore(line("AP4"), Glass::cold, 4.0);
    CHECK(draft.now().sitting.scores[0] == Score{"Rook", "AP4", 4.0, std::nullopt});
}

TEST_CASE("a score typed over is restored to what the book holds", "[taste]") {
    SittingDraft draft = stored({{"Rook", "TA1", 6.0, 6.5}});
    draft.setScore(line("TA1"), Glass::cold, 9.0);
    draft.restoreScore(line("TA1"), Glass::cold);
    CHECK_FALSE(draft.changed());
    draft.setScore(line("TA2"), Glass::cold, 1.0);
    draft.restoreScore(line("TA2"), Glass::cold);
    CHECK_FALSE(draft.changed());
}

TEST_CASE("tasters are told apart by name", "[taste]") {
    SittingDraft draft("Heron", on, {"Rook"});
    draft.setScore(line("TA1"), Glass::cold, 6.0);
    CHECK_FALSE(draft.addTaster("Rook"));
    CHECK(draft.addTaster(""));
    CHECK(draft.inHand() == 1);
    CHECK_FALSE(draft.renameTaster("Rook"));
    CHECK(draft.renameTaster("Wren"));
    draft.take(0);
    CHECK(draft.renameTaster("Raven"));
    CHECK(draft.now().sitting.scores[0].taster == "Raven");
    CHECK(draft.tasters() == std::vector<std::string>{"Raven", "Wren"});
}

TEST_CASE("fault marks are set, changed and taken away", "[taste]") {
    SittingDraft draft("Heron", on, {});
    draft.setSeverity("ropy", 2);
    draft.setSeverity("ropy", 3);
    CHECK(draft.now().sitting.faults == std::vector<FaultMark>{{"ropy", 3}});
    CHECK(draft.severity("ropy") == 3);
    draft.setSeverity("ropy", 0);
    CHECK(draft.now().sitting.faults.empty());
    CHECK(draft.severity("ropy") == 0);
}

TEST_CASE("same again fills only what is not scored", "[taste]") {
    const SittingDraft last = stored({{"Rook", "TA1", 6.0, 6.5}, {"Wren", "TA2", 3.0, {}}, {"Rook", "TA2", 5.0, 5.5}});
    SittingDraft draft("Heron", on, {"Rook"});
    draft.setScore(line("TA1"), Glass::cold, 7.0);
    CHECK(draft.fillable(last.now().sitting) == 3);
    CHECK(draft.fillFrom(last.now().sitting) == 3);
    CHECK(draft.score(line("TA1"), Glass::cold) == 7.0);
    CHECK(draft.score(line("TA1"), Glass::cellar) == 6.5);
    CHECK(draft.score(line("TA2"), Glass::cold) == 5.0);
    CHECK(draft.fillFrom(last.now().sitting) == 0);
}

TEST_CASE("what the book says anew is followed where nothing was typed", "[taste]") {
    SittingDraft draft = stored({{"Rook", "TA1", 6.0, 6.5}});
    const SittingFact elsewhere = with(draft, "TA2", 4.0);
    draft.setScore(line("TA1"), Glass::cellar, 7.0);
    draft.setNote("hazy");
    draft.follow(elsewhere);
    CHECK(draft.score(line("TA1"), Glass::cold) == 6.0);
    CHECK(draft.score(line("TA1"), Glass::cellar) == 7.0);
    CHECK(draft.score(line("TA2"), Glass::cold) == 4.0);
    CHECK(draft.now().sitting.note == "hazy");
    CHECK(draft.changed());
    draft.settle(7);
    CHECK_FALSE(draft.changed());
}

TEST_CASE("an undone score goes although others are being typed", "[taste]") {
    SittingDraft draft = stored({{"Rook", "TA1", 6.0, {}}, {"Rook", "TA2", 5.0, {}}});
    const SittingFact undone = with(draft, "TA2", std::nullopt);
    draft.setScore(line("TA3"), Glass::cold, 4.0);
    draft.setSeverity("ropy", 1);
    draft.follow(undone);
    CHECK_FALSE(draft.score(line("TA2"), Glass::cold));
    CHECK(draft.score(line("TA3"), Glass::cold) == 4.0);
    CHECK(draft.severity("ropy") == 1);
}

TEST_CASE("a fault marked elsewhere arrives beside one marked here", "[taste]") {
    SittingDraft draft = stored({{"Rook", "TA1", 6.0, {}}});
    SittingFact elsewhere = draft.now();
    elsewhere.sitting.faults = {{"mousy", 2}};
    draft.setSeverity("ropy", 1);
    draft.follow(elsewhere);
    CHECK(draft.severity("ropy") == 1);
    CHECK(draft.severity("mousy") == 2);
}

TEST_CASE("a sitting gone from the book keeps its words in hand and can come back", "[taste]") {
    SittingDraft draft = stored({{"Rook", "TA1", 6.0, {}}});
    draft.setNote("hazy");
    draft.settle(7);
    const SittingFact whole = draft.now();
    draft.follow(std::nullopt);
    CHECK_FALSE(draft.id());
    CHECK(draft.gone() == 7);
    CHECK(draft.now().sitting.scores.empty());
    CHECK(draft.now().sitting.note == "hazy");
    CHECK(draft.taster() == "Rook");
    CHECK(draft.waits());
    draft.comeBack({7, whole});
    CHECK(draft.id() == 7);
    CHECK(draft.now() == whole);
    CHECK_FALSE(draft.changed());
}

TEST_CASE("a taster named otherwise elsewhere is still the one in hand", "[taste]") {
    SittingDraft draft = stored({{"Wren", "TA1", 6.0, {}}, {"Rook", "TA1", 5.0, {}}});
    draft.take(1);
    draft.follow(stored({{"Wren", "TA1", 6.0, {}}, {"Raven", "TA1", 5.0, {}}}).now());
    CHECK(draft.tasters() == std::vector<std::string>{"Wren", "Raven"});
    CHECK(draft.taster() == "Raven");
}

TEST_CASE("a taster whose scores are undone goes, unless in hand", "[taste]") {
    SittingDraft draft = stored({{"Wren", "TA1", 6.0, {}}, {"Rook", "TA1", 5.0, {}}});
    draft.take(1);
    draft.follow(stored({}).now());
    CHECK(draft.tasters() == std::vector<std::string>{"Rook"});
    CHECK(draft.taster() == "Rook");
}

TEST_CASE("the order of scores alone is no change", "[taste]") {
    SittingDraft draft = stored({{"Rook", "TA1", 6.0, {}}, {"Rook", "TA2", 5.0, {}}});
    draft.setScore(line("TA1"), Glass::cold, std::nullopt);
    draft.setScore(line("TA1"), Glass::cold, 6.0);
    CHECK_FALSE(draft.changed());
}
