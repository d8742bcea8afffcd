// SPDX-License-Identifier: GPL-3.0-or-later
// A sitting that is not to be learned from: marked where it is read, and told wherever it is listed.
#include "ui/taste_support.h"

#include "ui/taste/learn_choice.h"

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

constexpr const char* leave = "Do not learn from this sitting";
constexpr const char* again = "Learn from it again";

struct AtPastSitting : AtTaste {
    AtPastSitting() { workPage->openSitting(stored().front().id); }

    [[nodiscard]] QString undoText() const { return qs(session->desk().undoText()); }
    [[nodiscard]] QLineEdit& reason() const { return part<QLineEdit>(*workPage, "Why not"); }
    [[nodiscard]] QString shown() const { return workPage->header().sittings().currentText(); }
    void press(const char* words) const {
        QPushButton* button = buttonIn(*workPage, words);
        REQUIRE(button);
        button->setFocus();
        key(Qt::Key_Space);
    }
};

} // namespace

TEST_CASE("a sitting is marked and learned from again, each one step of undo", "[taste][learn]") {
    const AtPastSitting s;
    const SittingFact before = s.stored().front().fact;
    CHECK_FALSE(s.reason().isVisible());
    s.press(leave);
    SittingFact expected = before;
    expected.learn = false;
    CHECK(s.stored().front().fact == expected);
    CHECK(s.undoText() == "do not learn from the tasting, Heron");
    CHECK(s.shown().contains("not learned from"));
    CHECK(wordsOf(*s.workPage, "not learned from").startsWith("Not learned from."));
    CHECK_FALSE(buttonIn(*s.workPage, leave));
    s.press(again);
    CHECK(s.stored().front().fact == before);
    CHECK(s.undoText() == "learn again from the tasting, Heron");
    CHECK_FALSE(s.shown().contains("not learned from"));
    s.session->undo();
    CHECK_FALSE(s.stored().front().fact.learn);
    CHECK(buttonIn(*s.workPage, again));
    s.session->undo();
    CHECK(s.stored().front().fact == before);
    CHECK(buttonIn(*s.workPage, leave));
}

TEST_CASE("why a sitting is not learned from may be said, and is stored as it is typed", "[taste][learn]") {
    const AtPastSitting s;
    s.press(leave);
    s.key(Qt::Key_Tab);
    REQUIRE(s.focus() == &s.reason());
    s.type("a head cold");
    s.key(Qt::Key_Return);
    CHECK(s.stored().front().fact.learnReason == "a head cold");
    CHECK(s.undoText() == "why the tasting is not learned from, Heron");
    s.session->undo();
    CHECK(s.stored().front().fact.learnReason.empty());
    CHECK_FALSE(s.stored().front().fact.learn);
    CHECK(s.reason().text().isEmpty());
    s.reason().setFocus();
    s.type("soap");
    s.workPage->newSitting(); // what is typed is not left behind
    CHECK(s.stored().front().fact.learnReason == "soap");
    CHECK_FALSE(s.reason().isVisible());
    s.workPage->openSitting(s.stored().front().id);
    CHECK(s.reason().text() == "soap");
    s.press(again);
    CHECK(s.stored().front().fact.learnReason.empty());
}

TEST_CASE("only a sitting on record can be marked", "[taste][learn]") {
    const AtPastSitting s;
    s.workPage->newSitting();
    CHECK_FALSE(part<LearnChoice>(*s.workPage).isVisible());
    s.at("TA1");
    s.type("6");
    s.key(Qt::Key_Tab);
    REQUIRE(s.count() == 2);
    CHECK(buttonIn(*s.workPage, leave));
    const AtTaste readOnly(true, book::OpenMode::readOnly);
    CHECK_FALSE(buttonIn(*readOnly.workPage, leave)->isEnabled());
}

TEST_CASE("a mark leaves alone what another program wrote of the sitting", "[taste][learn]") {
    const AtPastSitting s;
    SittingFact renoted = s.stored().front().fact;
    renoted.sitting.note = "Firm, a little flat.";
    {
        const auto other = *desk::Desk::open(s.book, [&s] { return s.today; });
        REQUIRE(other->amend("sitting", s.stored().front().id, renoted));
    }
    s.press(leave); // before this window looks at the book
    CHECK(s.stored().front().fact.sitting.note == "Firm, a little flat.");
    CHECK_FALSE(s.stored().front().fact.learn);
}

TEST_CASE("of two sittings on one day the one in hand is marked", "[taste][learn]") {
    const AtPastSitting s;
    recordAll(*s.session, R"({"kind": "sitting", "vessel": "Heron", "on": "2025-11-05", "scores": [
        {"taster": "Teal", "attribute": "TA1", "cold": 2}]})");
    REQUIRE(s.count() == 2);
    for (const auto& filed : s.stored()) {
        s.workPage->openSitting(filed.id);
        s.press(leave);
        for (const auto& each : s.stored())
            CHECK(each.fact.learn == (each.id != filed.id));
        s.session->undo();
    }
}

TEST_CASE("why a sitting is set aside may take a few lines of words", "[taste][learn]") {
    const AtPastSitting s;
    s.press(leave);
    s.reason().setFocus();
    const std::string words(240, 'x');
    s.type(words.c_str());
    s.key(Qt::Key_Return);
    CHECK(s.stored().front().fact.learnReason == words);
}

TEST_CASE("a mark made elsewhere is taken over, and a removed sitting takes its mark along", "[taste][learn]") {
    const AtPastSitting s;
    REQUIRE(s.session->record(SittingUseFact{"Heron", day(2025, 11, 5), 1, false, "the wrong cask"}));
    CHECK(buttonIn(*s.workPage, again));
    CHECK(s.reason().text() == "the wrong cask");
    s.workPage->removeSitting();
    CHECK(s.count() == 0);
    s.at("TA1");
    s.type("5");
    s.key(Qt::Key_Tab);
    CHECK(s.stored().front().fact.learn);
    s.session->undo();
    s.session->undo();
    CHECK_FALSE(s.stored().front().fact.learn);
    CHECK(s.reason().text() == "the wrong cask");
}
