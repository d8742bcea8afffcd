// SPDX-License-Identifier: GPL-3.0-or-later
// What is typed on the try board: half typed, out of bounds, kept, taken back, and what Adopt says to it.
#include "ui/bad_input_support.h"

#include "desk/stock.h"
#include "support/full_disk.h"
#include "ui/adjust/lever_line.h"
#include "ui/adjust/proposal_list.h"
#include "ui/widgets/choice_field.h"

#include <QCheckBox>
#include <QPushButton>
#include <QRadioButton>
#include <QSlider>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::facts;
using namespace staveline::ui;
using staveline::testing::part;
using staveline::testing::wordsOf;
using testing::SampleWindow;

namespace {

/// Adjust in front, everything worked out.
struct AtBoard : SampleWindow {
    AtBoard() {
        go(PageId::adjust);
        waitForAdvice();
    }
    [[nodiscard]] LeverLine& line(const char* lever) const {
        LeverLine* found = part<LeverBoard>(adjust()).line(lever);
        REQUIRE(found);
        return *found;
    }
    [[nodiscard]] QLineEdit* field(const char* lever) const { return line(lever).number()->edit(); }
    [[nodiscard]] QPushButton& adoptButton() const { return total().adoptButton(); }
    [[nodiscard]] QString whyNot() const { return total().whyNot(); }
    void asNow() const { key(Qt::Key_A, Qt::ControlModifier | Qt::ShiftModifier); }
    void adopt() const { key(Qt::Key_Return, Qt::ControlModifier); }
    /// The focus goes where nothing is typed.
    void lookAway() const { proposals().focusChosen(); }
    /// One step by keyboard, the way that is free: a plan may stand at an end.
    void nudge(const char* lever) const {
        QSlider* slider = line(lever).slider();
        QTest::keyClick(slider, slider->value() > slider->minimum() ? Qt::Key_Left : Qt::Key_Right);
    }
    [[nodiscard]] QString shownNow(const char* lever) const {
        const LeverLine& at = line(lever);
        NumberField reference(at.line().row.kind, Range{-1e9, 1e9}, false);
        reference.setStored(std::get<double>(at.line().now));
        return reference.edit()->text();
    }
    [[nodiscard]] testing::FullDisk fullDisk() const {
        return testing::FullDisk(static_cast<rlim_t>(std::filesystem::file_size(book) / 4));
    }
};

constexpr const char* phToday = R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-01", "ph": 3.3})";

} // namespace

// --- as now --------------------------------------------------------------------------------------------------------

TEST_CASE("as now takes back what is half typed, out of bounds or empty, with its errors", "[ui][adjust][bad]") {
    const AtBoard w;
    w.put(w.field("sacch_temperature"), "95");
    w.put(w.field("bitterness"), "1x");
    w.put(w.field("gravity"), "", Qt::Key_Tab);
    w.put(w.field("draw"), "40000");
    QTest::keyClick(w.line("ferulic_rest").slider(), Qt::Key_Right);
    for (const char* lever : {"sacch_temperature", "bitterness", "gravity", "draw"}) {
        INFO(lever);
        REQUIRE(w.line(lever).unusable());
        CHECK_FALSE(w.line(lever).number()->words().isEmpty());
    }
    w.asNow();
    for (const LeverLine* line : part<LeverBoard>(w.adjust()).all()) {
        INFO(line->line().row.id);
        CHECK_FALSE(line->unusable());
        CHECK_FALSE(line->moved());
        if (!line->number())
            continue;
        CHECK(line->number()->words().isEmpty());
        CHECK(line->number()->edit()->accessibleDescription().isEmpty());
    }
    for (const char* lever : {"sacch_temperature", "bitterness", "gravity", "draw"}) {
        INFO(lever);
        CHECK(w.field(lever)->text() == w.shownNow(lever));
    }
    CHECK(part<LeverBoard>(w.adjust()).tried().empty());
    CHECK(wordsOf(w.adjust(), "message").isEmpty());
}

TEST_CASE("as now works with the cursor still in the field that is wrong", "[ui][adjust][bad]") {
    const AtBoard w;
    w.put(w.field("sacch_temperature"), "95");
    REQUIRE(w.field("sacch_temperature")->hasFocus());
    w.asNow();
    CHECK(w.field("sacch_temperature")->text() == w.shownNow("sacch_temperature"));
    w.put(w.field("sacch_temperature"), "6"); // half of 64
    part<QPushButton>(w.total(), "Reset").click();
    CHECK(w.field("sacch_temperature")->text() == w.shownNow("sacch_temperature"));
    CHECK(w.line("sacch_temperature").number()->words().isEmpty());
}

TEST_CASE("as now leaves a locked lever at its lock", "[ui][adjust]") {
    const AtBoard w;
    w.asNow();
    for (int i = 0; i < 3; ++i)
        QTest::keyClick(w.line("sacch_temperature").slider(), Qt::Key_Left);
    const LeverValue held = w.line("sacch_temperature").tried();
    QTest::keyClick(w.line("sacch_temperature").lock(), Qt::Key_Space);
    w.waitForAdvice();
    w.put(w.field("bitterness"), "x");
    w.asNow();
    CHECK(w.line("sacch_temperature").tried() == held);
    CHECK_FALSE(w.line("bitterness").unusable());
}

// --- Adopt ---------------------------------------------------------------------------------------------------------

TEST_CASE("Adopt is off while a number of the board cannot be used, and says which", "[ui][adjust][bad]") {
    const AtBoard w;
    REQUIRE(w.adoptButton().isEnabled());
    for (const char* typed : {"95", "6x", "-", ""}) {
        INFO(typed);
        w.put(w.field("sacch_temperature"), typed);
        CHECK_FALSE(w.adoptButton().isEnabled());
        CHECK(w.whyNot().contains(qs(w.line("sacch_temperature").line().row.name)));
        CHECK(w.adoptButton().accessibleDescription() == w.whyNot());
        CHECK(testing::shownWords(*w.window).contains(w.whyNot()));
        w.asNow();
        w.waitForAdvice();
    }
    w.put(w.field("sacch_temperature"), "64");
    w.waitForAdvice();
    CHECK(w.adoptButton().isEnabled());
    CHECK(w.whyNot().isEmpty());
    CHECK(w.adoptButton().accessibleDescription().isEmpty());
}

TEST_CASE("Ctrl+Enter on a board that is wrong says so, goes there and writes nothing", "[ui][adjust][bad]") {
    const AtBoard w;
    const auto before = testing::fingerprint(w.desk());
    const auto revision = w.desk().revision();
    w.put(w.field("bitterness"), "999");
    w.lookAway();
    w.adopt();
    CHECK(w.desk().revision() == revision);
    CHECK(testing::fingerprint(w.desk()) == before);
    CHECK(w.window->status().words().contains(w.whyNot()));
    CHECK(w.field("bitterness")->hasFocus());
    CHECK(w.field("bitterness")->text() == "999");
    w.put(w.field("bitterness"), "9");
    w.waitForAdvice();
    w.adopt();
    CHECK(w.desk().revision() == revision + 1);
    CHECK(w.desk().lastChoice("Plover")->forecast->recipe.bitterness.ibu == 9);
}

TEST_CASE("an emptied number is asked for when Ctrl+Enter comes", "[ui][adjust][bad]") {
    const AtBoard w;
    w.put(w.field("bitterness"), "");
    CHECK(w.line("bitterness").number()->words().isEmpty()); // nothing said while the brewer types
    const auto revision = w.desk().revision();
    w.adopt();
    CHECK(w.desk().revision() == revision);
    CHECK_FALSE(w.line("bitterness").number()->words().isEmpty());
}

TEST_CASE("a chosen proposal is not adopted over a number that is wrong", "[ui][adjust][bad]") {
    const AtBoard w;
    REQUIRE(w.proposals().count() > 0);
    w.proposals().radio(1)->setFocus();
    w.key(Qt::Key_Space);
    w.waitForAdvice();
    REQUIRE(w.proposals().chosen() == 1);
    w.put(w.field("gravity"), "2");
    CHECK(w.proposals().chosen() == 1);
    CHECK_FALSE(w.adoptButton().isEnabled());
    w.proposals().radio(1)->setFocus(); // chosen again: its values, all of them
    w.proposals().radio(1)->click();
    CHECK_FALSE(w.line("gravity").unusable());
    CHECK(w.adoptButton().isEnabled());
}

TEST_CASE("what the vessel cannot give is a reason against adopting until it is changed", "[ui][adjust][bad]") {
    const AtBoard w;
    w.put(w.field("draw"), "4000");
    CHECK_FALSE(w.adoptButton().isEnabled());
    CHECK(w.whyNot().contains(qs(w.line("draw").line().row.name)));
    w.lookAway();
    testing::recordAll(*w.window->session(), phToday);
    w.waitForAdvice();
    CHECK(w.field("draw")->text() == "4000");
    CHECK_FALSE(w.line("draw").number()->words().isEmpty());
    CHECK_FALSE(w.adoptButton().isEnabled());
    w.put(w.field("draw"), "50");
    w.waitForAdvice();
    CHECK(w.adoptButton().isEnabled());
}

TEST_CASE("Ctrl+Enter on draw day shows first what it would adopt", "[ui][adjust]") {
    const AtBoard w;
    w.adjust().openDrawDay(true);
    const auto revision = w.desk().revision();
    w.adopt();
    CHECK(w.desk().revision() == revision);
    CHECK(part<LeverBoard>(w.adjust()).isVisible());
    CHECK(w.window->status().words().contains("Nothing adopted yet"));
    w.adopt();
    CHECK(w.desk().revision() == revision + 1);
}

TEST_CASE("after Stop there is nothing to adopt, and that is said", "[ui][adjust]") {
    const SampleWindow w;
    w.go(PageId::adjust);
    REQUIRE(w.adjust().busy());
    w.adjust().cancel();
    REQUIRE(QTest::qWaitFor([&] { return !w.adjust().busy(); }, 60000));
    CHECK_FALSE(w.total().adoptButton().isEnabled());
    CHECK_FALSE(w.total().whyNot().isEmpty());
    const auto revision = w.desk().revision();
    w.key(Qt::Key_Return, Qt::ControlModifier);
    CHECK(w.desk().revision() == revision);
    CHECK(w.window->status().words().contains(w.total().whyNot()));
}

// --- the book changes underneath ------------------------------------------------------------------------------------

TEST_CASE("what is half typed stays when the vessel changes in the book; the rest follows", "[ui][adjust][bad]") {
    const AtBoard w;
    w.asNow();
    w.put(w.field("sacch_temperature"), "95");
    w.put(w.field("bitterness"), "", Qt::Key_Tab);
    w.lookAway();
    const QString gravity = w.shownNow("gravity");
    testing::recordAll(*w.window->session(),
                       R"([{"kind": "brew", "name": "Brew 990", "vessel": "Plover", "on": "2026-02-02",
        "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 67, "minutes": 60}],
        "original_gravity_p": 13.5, "bitterness_ibu": 8, "yeast": "ale_clean"},
        {"kind": "draw_off", "vessel": "Plover", "on": "2026-03-02", "volume_l": 60},
        {"kind": "refill", "vessel": "Plover", "on": "2026-03-02", "volume_l": 60, "brew": "Brew 990"}])");
    w.waitForAdvice();
    CHECK(w.field("sacch_temperature")->text() == "95");
    CHECK_FALSE(w.line("sacch_temperature").number()->words().isEmpty());
    CHECK(w.field("bitterness")->text().isEmpty());
    CHECK_FALSE(w.line("bitterness").number()->words().isEmpty());
    CHECK(w.shownNow("gravity") != gravity);
    CHECK(w.field("gravity")->text() == w.shownNow("gravity"));
    CHECK(std::get<double>(w.line("sacch_temperature").tried()) == 67); // what is tried is what is in use
    CHECK_FALSE(w.adoptButton().isEnabled());
    w.asNow();
    CHECK(w.field("sacch_temperature")->text() == "67");
    CHECK(w.field("bitterness")->text() == "8");
}

TEST_CASE("a half-typed lever survives an undo elsewhere and another program", "[ui][adjust][bad]") {
    const AtBoard w;
    REQUIRE(w.window->session()->record(DipFact{"Plover", w.today, Litres{170}, ""}));
    w.waitForAdvice();
    w.put(w.field("gravity"), "1.0x");
    w.lookAway();
    w.key(Qt::Key_Z, Qt::ControlModifier);
    w.waitForAdvice();
    CHECK(w.field("gravity")->text() == "1.0x");
    w.elsewhere(phToday);
    w.window->session()->poll();
    w.waitForAdvice();
    CHECK(w.field("gravity")->text() == "1.0x");
    CHECK_FALSE(w.line("gravity").number()->words().isEmpty());
    w.go(PageId::brew);
    w.elsewhere(R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-02", "ph": 3.31})");
    w.window->session()->poll();
    w.go(PageId::adjust);
    w.waitForAdvice();
    CHECK(w.field("gravity")->text() == "1.0x");
}

TEST_CASE("a typed lever that can be used keeps its value beside one that cannot", "[ui][adjust]") {
    const AtBoard w;
    w.asNow();
    w.put(w.field("sacch_temperature"), "63,5");
    w.put(w.field("bitterness"), "zz");
    w.lookAway();
    testing::recordAll(*w.window->session(), phToday);
    w.waitForAdvice();
    CHECK(std::get<double>(w.line("sacch_temperature").tried()) == 63.5);
    CHECK(w.field("bitterness")->text() == "zz");
    CHECK(part<LeverBoard>(w.adjust()).tried().size() == 1);
}

TEST_CASE("new units may make a number of what was refused", "[ui][adjust]") {
    const AtBoard w;
    w.asNow();
    w.put(w.field("sacch_temperature"), "149"); // no mash is that hot in Celsius
    w.lookAway();
    REQUIRE(w.line("sacch_temperature").unusable());
    DisplayUnits units;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    w.window->session()->setUnits(units);
    CHECK_FALSE(w.line("sacch_temperature").unusable());
    CHECK(std::get<double>(w.line("sacch_temperature").tried()) == Approx(65).margin(.01));
    w.window->session()->setUnits({});
    CHECK(w.field("sacch_temperature")->text() == "65");
}

TEST_CASE("another vessel's board begins clean, and so does this one after it", "[ui][adjust][bad]") {
    const AtBoard w;
    w.put(w.field("sacch_temperature"), "95");
    w.cellar().showVessel("Knot");
    w.waitForAdvice();
    CHECK_FALSE(w.line("sacch_temperature").unusable());
    w.cellar().showVessel("Plover");
    w.waitForAdvice();
    CHECK_FALSE(w.line("sacch_temperature").unusable());
    CHECK(w.field("sacch_temperature")->text() != "95");
    CHECK(w.adoptButton().isEnabled());
}

TEST_CASE("the slider takes the place of what is wrong in its field", "[ui][adjust]") {
    const AtBoard w;
    w.put(w.field("sacch_temperature"), "95");
    w.nudge("sacch_temperature");
    CHECK_FALSE(w.line("sacch_temperature").unusable());
    CHECK(w.line("sacch_temperature").number()->words().isEmpty());
    w.waitForAdvice();
    CHECK(w.adoptButton().isEnabled());
}

// --- locks and what is not at hand ----------------------------------------------------------------------------------

TEST_CASE("a lock needs a number to lock at", "[ui][adjust][bad]") {
    const AtBoard w;
    for (const char* typed : {"95", ""}) {
        INFO(typed);
        w.put(w.field("sacch_temperature"), typed);
        QTest::keyClick(w.line("sacch_temperature").lock(), Qt::Key_Space);
        CHECK_FALSE(w.line("sacch_temperature").lock()->isChecked());
        CHECK(w.desk().locks("Plover")->empty());
        CHECK(w.field("sacch_temperature")->text() == typed);
        CHECK(w.field("sacch_temperature")->hasFocus());
        CHECK_FALSE(w.line("sacch_temperature").number()->words().isEmpty());
    }
    w.put(w.field("sacch_temperature"), "64");
    QTest::keyClick(w.line("sacch_temperature").lock(), Qt::Key_Space);
    REQUIRE(w.desk().locks("Plover")->size() == 1);
    CHECK(w.desk().locks("Plover")->front().value == 64);
}

TEST_CASE("a lock the disk refuses is not shown as set, and can be set when there is room", "[ui][adjust][bad]") {
    const AtBoard w;
    QCheckBox* lock = w.line("bitterness").lock();
    {
        const auto full = w.fullDisk();
        QTest::keyClick(lock, Qt::Key_Space);
        CHECK_FALSE(lock->isChecked());
        CHECK_FALSE(wordsOf(w.adjust(), "message").isEmpty());
        CHECK(w.desk().locks("Plover")->empty());
    }
    QTest::keyClick(lock, Qt::Key_Space);
    CHECK(lock->isChecked());
    CHECK(w.desk().locks("Plover")->size() == 1);
    CHECK(wordsOf(w.adjust(), "message").isEmpty());
    {
        const auto full = w.fullDisk();
        QTest::keyClick(lock, Qt::Key_Space);
        CHECK(lock->isChecked()); // it still holds
    }
}

TEST_CASE("a yeast the disk refuses to mark is not shown as missing", "[ui][adjust][bad]") {
    const AtBoard w;
    QCheckBox* missing = w.line("yeast").missing();
    {
        const auto full = w.fullDisk();
        QTest::keyClick(missing, Qt::Key_Space);
        CHECK_FALSE(missing->isChecked());
        CHECK_FALSE(wordsOf(w.adjust(), "message").isEmpty());
    }
    CHECK(w.desk().stock().empty());
    QTest::keyClick(missing, Qt::Key_Space);
    CHECK(missing->isChecked());
    REQUIRE(w.desk().stock().size() == 1);
}

TEST_CASE("locks come and go by name", "[ui][adjust]") {
    const AtBoard w;
    const auto start = testing::fingerprint(w.desk());
    for (const char* lever : {"bitterness", "yeast", "draw"}) {
        QTest::keyClick(w.line(lever).lock(), Qt::Key_Space);
        CHECK(w.action("Undo").text().contains(qs(w.desk().undoText())));
        CHECK(w.line(lever).lock()->isChecked());
    }
    REQUIRE(w.desk().locks("Plover")->size() == 3);
    for (int i = 0; i < 3; ++i)
        w.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(testing::fingerprint(w.desk()) == start);
    for (const char* lever : {"bitterness", "yeast", "draw"})
        CHECK_FALSE(w.line(lever).lock()->isChecked());
    w.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(w.line("bitterness").lock()->isChecked());
}

TEST_CASE("a refusal goes from the page with the next thing that is tried", "[ui][adjust][bad]") {
    const AtBoard w;
    {
        const auto full = w.fullDisk();
        w.adopt();
        REQUIRE_FALSE(wordsOf(w.adjust(), "message").isEmpty());
    }
    w.nudge("sacch_temperature");
    CHECK(wordsOf(w.adjust(), "message").isEmpty());
}
