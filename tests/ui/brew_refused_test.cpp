// SPDX-License-Identifier: GPL-3.0-or-later
// A recipe that the book would not take: what was changed stays, and finishing it again tries again.
#include "ui/bad_input_support.h"
#include "ui/brew_support.h"

#include "support/full_disk.h"
#include "ui/brew/plan_page.h"
#include "ui/brew/recipe_editor_model.h"
#include "ui/widgets/choice_field.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ui;
using staveline::testing::part;
using staveline::testing::planWords;
using testing::SampleWindow;

namespace {

testing::FullDisk fullDisk(const SampleWindow& w) {
    return testing::FullDisk(static_cast<rlim_t>(std::filesystem::file_size(w.book) / 4));
}
Recipe planned(const SampleWindow& w) {
    return w.desk().planned("Plover")->setting.recipe;
}

} // namespace

TEST_CASE("a recipe refused by a full disk is stored by Enter alone when there is room", "[ui][badbook][brew]") {
    const SampleWindow w;
    QLineEdit* edit = w.recipeField();
    const double before = planned(w).bitterness.ibu;
    {
        const testing::FullDisk full = fullDisk(w);
        w.put(edit, "17", Qt::Key_Return);
        CHECK(planned(w).bitterness.ibu == before);
        CHECK(edit->text().startsWith("17"));
        CHECK(planWords(w.cellar().brew()).contains(own("ui.brew.refused")));
        const auto revision = w.desk().revision();
        QTest::keyClick(edit, Qt::Key_Return); // still no room
        CHECK(w.desk().revision() == revision);
        CHECK(edit->text().startsWith("17"));
    }
    QTest::keyClick(edit, Qt::Key_Return);
    CHECK(planned(w).bitterness.ibu == 17);
    CHECK_FALSE(planWords(w.cellar().brew()).contains(own("ui.brew.refused")));
    CHECK_FALSE(part<PlanPage>(w.cellar().brew()).model().pending());
    w.window->session()->undo(); // one edit, however often it was tried
    CHECK(planned(w).bitterness.ibu == before);
}

TEST_CASE("another edit and another page try again as well", "[ui][badbook][brew]") {
    const SampleWindow w;
    QLineEdit* edit = w.recipeField();
    {
        const testing::FullDisk full = fullDisk(w);
        w.put(edit, "17", Qt::Key_Return);
    }
    SECTION("an edit elsewhere takes both") {
        w.put(w.recipeField("/boil_min"), "75", Qt::Key_Return);
        CHECK(planned(w).bitterness.ibu == 17);
        CHECK(planned(w).boil.min == 75);
    }
    SECTION("another part of the page") {
        w.cellar().brew().showSheet();
        CHECK(planned(w).bitterness.ibu == 17);
    }
}

TEST_CASE("typing the old value back leaves nothing to store", "[ui][badbook][brew]") {
    const SampleWindow w;
    QLineEdit* edit = w.recipeField();
    const QString old = edit->text().section(' ', 0, 0);
    const auto revision = w.desk().revision();
    {
        const testing::FullDisk full = fullDisk(w);
        w.put(edit, "17", Qt::Key_Return);
        w.put(edit, old, Qt::Key_Return);
        CHECK_FALSE(planWords(w.cellar().brew()).contains(own("ui.brew.refused")));
    }
    QTest::keyClick(edit, Qt::Key_Return);
    CHECK(w.desk().revision() == revision);
}

TEST_CASE("a word refused by a full disk is stored by Enter too", "[ui][badbook][brew]") {
    const SampleWindow w;
    w.go(PageId::brew);
    const std::string before = planned(w).yeast;
    auto* yeast = &part<ChoiceField>(part<PlanPage>(w.cellar().brew()), "Yeast");
    REQUIRE(yeast);
    REQUIRE(yeast->count() > 1);
    const auto other = yeast->currentIndex() == 0 ? Qt::Key_Down : Qt::Key_Up;
    {
        const testing::FullDisk full = fullDisk(w);
        yeast->setFocus();
        QTest::keyClick(yeast, other);
        QTest::keyClick(yeast, Qt::Key_Return);
        CHECK(planned(w).yeast == before);
        CHECK(part<PlanPage>(w.cellar().brew()).model().recipe().yeast != before);
    }
    QLineEdit* edit = w.recipeField();
    edit->setFocus();
    QTest::keyClick(edit, Qt::Key_Return);
    CHECK(planned(w).yeast == part<PlanPage>(w.cellar().brew()).model().recipe().yeast);
    CHECK(planned(w).yeast != before);
}

TEST_CASE("what cannot be brewed is still not stored by Enter", "[ui][badbook][brew]") {
    const SampleWindow w;
    const auto revision = w.desk().revision();
    QLineEdit* edit = w.recipeField("/mash/0/temperature_c");
    w.put(edit, "30", Qt::Key_Return);
    QTest::keyClick(edit, Qt::Key_Return);
    CHECK(w.desk().revision() == revision);
    CHECK_FALSE(part<PlanPage>(w.cellar().brew()).model().refused());
}
