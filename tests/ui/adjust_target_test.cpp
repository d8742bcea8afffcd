// SPDX-License-Identifier: GPL-3.0-or-later
// The target behind the windows by keyboard: refused and tried again, bounds that depend on each other, undo by name.
#include "ui/bad_input_support.h"

#include "support/full_disk.h"
#include "ui/adjust/linked_label.h"
#include "ui/adjust/target_timeline.h"
#include "ui/adjust/verdict_column.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/widgets/choice_field.h"

#include <QPushButton>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::tasting;
using namespace staveline::ui;
using staveline::testing::part;
using testing::SampleWindow;

namespace {

struct AtTarget : SampleWindow {
    AtTarget() {
        go(PageId::adjust);
        adjust().openTarget(true);
    }
    [[nodiscard]] TargetForm& form() const { return part<TargetForm>(adjust()); }
    [[nodiscard]] QLineEdit* field(const char* path) const { return form().number(path)->edit(); }
    [[nodiscard]] Target target() const { return (*desk().target("Plover"))->fact.target; }
    [[nodiscard]] double wanted(Dimension d) const { return target().windows[d].wanted; }
    [[nodiscard]] testing::FullDisk fullDisk() const {
        return testing::FullDisk(static_cast<rlim_t>(std::filesystem::file_size(book) / 4));
    }
    void undo() const { key(Qt::Key_Z, Qt::ControlModifier); }
};

} // namespace

TEST_CASE("a target the disk refuses is stored by Enter alone once there is room", "[ui][adjust][bad]") {
    const AtTarget w;
    const double before = w.wanted(Dimension::acidity);
    REQUIRE(before != 4.5);
    {
        const auto full = w.fullDisk();
        w.put(w.field("acidity"), "4.5", Qt::Key_Return);
        CHECK(w.wanted(Dimension::acidity) == before);
        CHECK_FALSE(w.form().words().isEmpty());
        w.key(Qt::Key_Return); // still full: said again, still in the field
        CHECK(w.wanted(Dimension::acidity) == before);
        CHECK(w.field("acidity")->text() == "4.5");
    }
    w.key(Qt::Key_Return);
    CHECK(w.wanted(Dimension::acidity) == 4.5);
    CHECK(w.form().words().isEmpty());
    const auto revision = w.desk().revision();
    w.key(Qt::Key_Return); // and once is enough
    CHECK(w.desk().revision() == revision);
}

TEST_CASE("every field of the target is tried again by Enter, the name too", "[ui][adjust][bad]") {
    const AtTarget w;
    const std::pair<const char*, const char*> typed[] = {{"funk", "3"},
                                                         {"body_band", "0.5"},
                                                         {"bitterness_ceiling", "12"},
                                                         {"gravity_high", "1.052"},
                                                         {"alcohol_high", "7"}};
    {
        const auto full = w.fullDisk();
        for (const auto& [path, words] : typed)
            w.put(w.field(path), words, Qt::Key_Return);
        w.put(&w.form().setBy(), "Wren", Qt::Key_Return);
        CHECK(w.target().setBy != "Wren");
    }
    for (const auto& [path, words] : typed) {
        INFO(path);
        w.field(path)->setFocus();
        w.key(Qt::Key_Return);
    }
    w.form().setBy().setFocus();
    w.key(Qt::Key_Return);
    const Target now = w.target();
    CHECK(now.windows[Dimension::funk].wanted == 3);
    CHECK(now.windows[Dimension::body].band == .5);
    CHECK(now.bitternessCeiling.ibu == 12);
    CHECK(now.alcoholHigh.pct == Approx(7));
    CHECK(now.setBy == "Wren");
    CHECK(w.form().words().isEmpty());
}

TEST_CASE("what was refused stays typed while the book changes elsewhere", "[ui][adjust][bad]") {
    const AtTarget w;
    {
        const auto full = w.fullDisk();
        w.put(w.field("acidity"), "4.5", Qt::Key_Return);
    }
    w.elsewhere(R"({"kind": "target", "vessel": "Plover", "on": "2026-03-02", "acidity": 6, "funk": 2.5, "body": 4})");
    w.window->session()->poll();
    CHECK(w.field("acidity")->text() == "4.5");
    CHECK(w.form().number("funk")->stored() == 2.5);
    w.field("acidity")->setFocus();
    w.key(Qt::Key_Return);
    CHECK(w.wanted(Dimension::acidity) == 4.5);
    CHECK(w.wanted(Dimension::funk) == 2.5);
    w.undo();
    CHECK(w.wanted(Dimension::acidity) == 6);
    CHECK(w.form().number("acidity")->stored() == 6);
}

TEST_CASE("a bound refused for its neighbour's sake is taken by Enter once the neighbour moved", "[ui][adjust][bad]") {
    const AtTarget w;
    const Target before = w.target();
    w.put(w.field("gravity_low"), "1.058", Qt::Key_Return); // above the upper bound
    REQUIRE(w.target() == before);
    CHECK(w.field("gravity_low")->text() == "1.058");
    w.put(w.field("gravity_high"), "1.062", Qt::Key_Return);
    CHECK(w.target().gravityHigh.p > before.gravityHigh.p);
    w.field("gravity_low")->setFocus();
    w.key(Qt::Key_Return);
    CHECK(w.target().gravityLow.p > before.gravityLow.p);
    CHECK(w.form().number("gravity_low")->words().isEmpty());
}

TEST_CASE("numbers that are none stay at their field and never reach the target", "[ui][adjust][bad]") {
    const AtTarget w;
    const auto before = testing::fingerprint(w.desk());
    for (const char* typed : {"11", "-1", "5,5,5", "five", "1e1", "NaN", "  ", ""}) {
        INFO(typed);
        w.put(w.field("acidity"), typed, Qt::Key_Return);
        CHECK_FALSE(w.form().number("acidity")->words().isEmpty());
        CHECK(w.field("acidity")->accessibleDescription() == w.form().number("acidity")->words());
        CHECK(testing::fingerprint(w.desk()) == before);
    }
    w.put(w.field("acidity_band"), "0.1", Qt::Key_Return); // nobody tastes that narrow
    CHECK_FALSE(w.form().number("acidity_band")->words().isEmpty());
    CHECK(testing::fingerprint(w.desk()) == before);
}

TEST_CASE("the target is set by keyboard alone, and each field is one undo by its name", "[ui][adjust]") {
    const AtTarget w;
    const auto start = testing::fingerprint(w.desk());
    REQUIRE(w.field("acidity")->hasFocus());
    const std::pair<const char*, const char*> steps[] = {
        {"Acidity, target", "4,5"}, {"Funk, target", "3"}, {"Body, target", "4.5"}, {"Body, range", "0.75"}};
    for (const auto& [name, typed] : steps) {
        w.tabTo(QString::fromLatin1(name));
        w.key(Qt::Key_A, Qt::ControlModifier);
        w.type(QString::fromLatin1(typed));
        w.key(Qt::Key_Return);
    }
    CHECK(w.wanted(Dimension::acidity) == 4.5);
    CHECK(w.target().windows[Dimension::body].band == .75);
    for (const char* name : {"body, range", "body, target", "funk, target", "acidity, target"}) {
        INFO(w.desk().undoText());
        CHECK(qs(w.desk().undoText()).contains(name));
        w.undo();
    }
    CHECK(testing::fingerprint(w.desk()) == start);
    CHECK(w.verdicts().column(Dimension::acidity).timeline().look().window.wanted == w.wanted(Dimension::acidity));
}

TEST_CASE("the window on the timeline and the verdict follow the target at once", "[ui][adjust]") {
    const AtTarget w;
    const auto known = *w.desk().estimates("Plover");
    const double mean = known.combined[Dimension::body].mean;
    w.put(w.field("body"), QString::number(std::round(mean * 2) / 2), Qt::Key_Return);
    w.put(w.field("body_band"), "4", Qt::Key_Return);
    const VerdictColumn& column = w.verdicts().column(Dimension::body);
    CHECK(column.timeline().look().window.band == 4);
    CHECK(w.desk().estimates("Plover")->verdicts[Dimension::body].kind == VerdictKind::hold);
    CHECK(column.word() == "hold");
    CHECK(column.reason().words().startsWith("On target"));
    w.undo();
    w.undo();
    CHECK(column.timeline().look().window.band != 4);
}

TEST_CASE("a trait the disk refuses is not listed, and can be asked for again", "[ui][adjust][bad]") {
    const AtTarget w;
    part<ChoiceField>(w.form(), "Trait").setWord("ropy");
    {
        const auto full = w.fullDisk();
        part<QPushButton>(w.form(), "Accept").setFocus();
        w.key(Qt::Key_Space);
        CHECK(w.form().traits().isEmpty());
        CHECK_FALSE(w.form().words().isEmpty());
    }
    part<QPushButton>(w.form(), "Accept").setFocus();
    w.key(Qt::Key_Space);
    CHECK(w.form().traits().size() == 1);
    CHECK(w.form().words().isEmpty());
}

TEST_CASE("a reader of the book sees the target and changes nothing of it", "[ui][adjust][readonly]") {
    const SampleWindow w;
    w.window->closeBook();
    auto session = std::make_unique<Session>(*Desk::open(
        w.book, [&w] { return w.today; }, book::OpenMode::readOnly));
    TargetForm form(*session);
    form.setVessel("Plover");
    CHECK(form.number("acidity")->stored() ==
          (*session->desk().target("Plover"))->fact.target.windows[Dimension::acidity].wanted);
    CHECK_FALSE(form.number("acidity")->isEnabled());
    CHECK_FALSE(form.setBy().isEnabled());
    CHECK_FALSE(part<QPushButton>(form, "Accept").isEnabled());
    CHECK_FALSE(part<QPushButton>(form, "Use as target").isEnabled());
}
