// SPDX-License-Identifier: GPL-3.0-or-later
// A book under stress: a full disk, a second window, a file that goes away, no leave to write, 200 tasters.
#include "ui/bad_input_support.h"

#include "support/full_disk.h"
#include "ui/taste/sitting_header.h"
#include "ui/taste/taster_grid.h"
#include "ui/widgets/underlined_tabs.h"

#include <fstream>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::ui;
using staveline::testing::part;
using staveline::testing::wordsOf;
using testing::SampleWindow;
using testing::shownWords;

namespace {

/// A disk with less room than the book takes already.
testing::FullDisk fullDisk(const SampleWindow& w) {
    return testing::FullDisk(static_cast<rlim_t>(std::filesystem::file_size(w.book) / 4));
}

/// What the desk says to any edit now, as the window words it.
QString refusalOf(const SampleWindow& w) {
    const auto refused = w.window->session()->record(Fact{DipFact{"Plover", w.today, Litres{170}, ""}}, EditNote{});
    REQUIRE_FALSE(refused);
    REQUIRE_FALSE(render(refused.error().remedy).empty());
    return w.window->session()->words(refused.error());
}

/// An edit at each page, by keys; each says what is wrong where it was made.
void expectEachRefused(const SampleWindow& w) {
    const QString words = refusalOf(w);
    const auto before = testing::fingerprint(w.desk());
    const auto says = [&](const char* where) {
        INFO(where << ": " << words.toStdString());
        CHECK(shownWords(*w.window).contains(words));
        CHECK(testing::fingerprint(w.desk()) == before);
    };
    w.put(w.scoreCell(), "6", Qt::Key_Tab);
    says("taste");
    w.put(w.targetField(), "4.5", Qt::Key_Return);
    says("target");
    w.put(w.recipeField(), "17", Qt::Key_Return);
    says("recipe");
    w.put(w.entryField(), "40", Qt::Key_Return);
    CHECK(w.cellar().drawRefill().form().active());
    says("entry");
    w.key(Qt::Key_Escape);
    w.go(PageId::adjust);
    w.waitForAdvice();
    w.key(Qt::Key_Return, Qt::ControlModifier);
    says("adopting");
    w.go(PageId::history);
    CHECK_FALSE(w.cellar().history().cursorWords().isEmpty());
}

/// A second window on the same book, with settings of its own.
struct TwoWindows : SampleWindow {
    testing::ScriptedPrompt prompt2;
    QSettings settings2{qs((scratch / "second.ini").string()), QSettings::IniFormat};
    MainWindow second{[this] { return today; }, prompt2, settings2};

    TwoWindows() {
        second.resize(1280, 800);
        second.show();
        REQUIRE(second.openBook(book));
        second.cellar()->showVessel("Plover");
    }
    [[nodiscard]] const Desk& other() const { return second.session()->desk(); }
    [[nodiscard]] AdjustPage& otherAdjust() const { return second.cellar()->adjust(); }
    void settle(AdjustPage& workPage) const {
        REQUIRE(QTest::qWaitFor([&] { return !workPage.busy(); }, 60000));
        QTest::qWait(0);
    }
};

} // namespace

// --- a full disk ---------------------------------------------------------------------------------------------------

TEST_CASE("on a full disk each page says so, and nothing half done is in the book", "[ui][badbook]") {
    const SampleWindow w;
    w.go(PageId::adjust);
    w.waitForAdvice();
    const testing::FullDisk full = fullDisk(w);
    expectEachRefused(w);
}

TEST_CASE("a score typed on a full disk is stored when there is room", "[ui][badbook]") {
    const SampleWindow w;
    const auto before = w.desk().sittings("Plover")->size();
    QLineEdit* cell = w.scoreCell();
    {
        const testing::FullDisk full = fullDisk(w);
        w.put(cell, "6", Qt::Key_Tab);
        CHECK(w.desk().sittings("Plover")->size() == before);
        CHECK(cell->text() == "6.0");
        CHECK_FALSE(w.cellar().taste().words().isEmpty());
    }
    w.type("5");
    w.key(Qt::Key_Tab);
    REQUIRE(w.desk().sittings("Plover")->size() == before + 1);
    CHECK(w.desk().sittings("Plover")->front().fact.sitting.scores.front().cold == 6.0);
    CHECK(w.cellar().taste().words().isEmpty());
}

TEST_CASE("what is adopted and recorded on a full disk can be done again when there is room", "[ui][badbook]") {
    const SampleWindow w;
    w.go(PageId::adjust);
    w.waitForAdvice();
    const auto before = w.desk().lastChoice("Plover");
    {
        const testing::FullDisk full = fullDisk(w);
        w.key(Qt::Key_Return, Qt::ControlModifier);
        CHECK(w.desk().lastChoice("Plover") == before);
        CHECK_FALSE(wordsOf(w.adjust(), "message").isEmpty());
    }
    w.key(Qt::Key_Return, Qt::ControlModifier);
    REQUIRE(w.desk().lastChoice("Plover"));
    CHECK(w.desk().lastChoice("Plover")->on == w.today);
    CHECK(wordsOf(w.adjust(), "message").isEmpty());
    const auto lines = w.desk().ledger("Plover")->lines.size();
    QLineEdit* edit = w.entryField();
    {
        const testing::FullDisk full = fullDisk(w);
        w.put(edit, "40", Qt::Key_Return);
        CHECK(w.desk().ledger("Plover")->lines.size() == lines);
    }
    QTest::keyClick(edit, Qt::Key_Return);
    CHECK(w.desk().ledger("Plover")->lines.size() == lines + 1);
}

// --- a file that goes away -----------------------------------------------------------------------------------------

TEST_CASE("a book removed while it is open: each page says what to do", "[ui][badbook]") {
    const SampleWindow w;
    std::filesystem::remove(w.book);
    expectEachRefused(w);
    w.window->session()->poll();
    CHECK_FALSE(std::filesystem::exists(w.book)); // nobody makes an empty one in its place
}

TEST_CASE("a book replaced while it is open is left alone", "[ui][badbook]") {
    const SampleWindow w;
    const auto other = w.scratch / "other.cellar";
    {
        auto desk = *Desk::create(other, [&w] { return w.today; });
        testing::fillCellar(*desk);
    }
    const auto bytes = testing::readAll(other);
    std::filesystem::rename(other, w.book);
    expectEachRefused(w);
    w.window->session()->poll();
    CHECK(testing::readAll(w.book) == bytes);
}

TEST_CASE("a book that turns to rubbish while it is open takes nobody down", "[ui][badbook]") {
    const SampleWindow w;
    {
        std::ofstream out(w.book, std::ios::binary | std::ios::in);
        out << std::string(4096, 'x');
    }
    w.window->session()->poll();
    for (const PageId workPage : testing::allPages)
        w.go(workPage);
    w.put(w.scoreCell(), "6", Qt::Key_Tab);
    w.action("Undo").trigger();
    w.action("Check the book for damage").trigger();
    CHECK(QTest::qWaitFor([&] { return w.window->notices().isVisible(); }, 20000));
    CHECK_FALSE(w.window->notices().words().isEmpty());
}

// --- a second window -----------------------------------------------------------------------------------------------

TEST_CASE("two windows on one book say the same after each look", "[ui][badbook][two]") {
    const TwoWindows w;
    REQUIRE(w.window->session()->record(DipFact{"Plover", w.today, Litres{168}, ""}));
    w.second.session()->poll();
    CHECK(testing::fingerprint(w.other()) == testing::fingerprint(w.desk()));
    CHECK(w.second.cellar()->drawRefill().model().rowCount() == w.cellar().drawRefill().model().rowCount());
    REQUIRE(w.second.session()->record(DipFact{"Plover", w.today, Litres{167}, ""}));
    w.window->session()->poll();
    CHECK(testing::fingerprint(w.other()) == testing::fingerprint(w.desk()));
    CHECK(w.window->status().words().contains("Another program changed this book"));
}

TEST_CASE("adopting in one window drops the advice of the other and shows there", "[ui][badbook][two]") {
    const TwoWindows w;
    w.go(PageId::adjust);
    w.second.cellar()->showPage(PageId::adjust);
    w.settle(w.adjust());
    w.settle(w.otherAdjust());
    w.adjust().adopt();
    REQUIRE(w.desk().lastChoice("Plover")->on == w.today);
    w.second.session()->poll();
    CHECK(w.other().lastChoice("Plover") == w.desk().lastChoice("Plover"));
    CHECK(wordsOf(w.otherAdjust(), "adopted") == wordsOf(w.adjust(), "adopted"));
    CHECK(w.otherAdjust().busy()); // what it knew was about the book as it was
    w.settle(w.otherAdjust());
    AdviceRequest request;
    request.vessel = "Plover";
    const Advice fresh = *w.other().advise(request);
    CHECK(part<ProposalList>(w.otherAdjust()).proposal(0)->setting == fresh.leaveAlone.setting);
    CHECK(part<ProposalList>(w.otherAdjust()).count() == static_cast<int>(fresh.proposals.size()));
}

TEST_CASE("a window that did not look yet does not adopt what is no longer true", "[ui][badbook][two]") {
    const TwoWindows w;
    w.second.cellar()->showPage(PageId::adjust);
    w.settle(w.otherAdjust());
    testing::recordAll(*w.window->session(),
                       R"({"kind": "brew", "name": "Brew 90", "vessel": "Plover", "on": "2026-03-02",
        "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
        "original_gravity_p": 12, "bitterness_ibu": 10})");
    const auto before = w.desk().lastChoice("Plover");
    w.otherAdjust().adopt();
    w.second.session()->poll();
    w.window->session()->poll();
    CHECK(w.desk().lastChoice("Plover") == before); // the refill is brewed: no recipe can be promised for it
    CHECK(testing::fingerprint(w.other()) == testing::fingerprint(w.desk()));
    CHECK_FALSE((wordsOf(w.otherAdjust(), "message").isEmpty() && part<TotalBar>(w.otherAdjust()).whyNot().isEmpty()));
}

TEST_CASE("two windows edit in turn and undo their own last words", "[ui][badbook][two]") {
    const TwoWindows w;
    const auto start = testing::fingerprint(w.desk());
    w.put(w.recipeField(), "17", Qt::Key_Return);
    w.second.session()->poll();
    w.second.cellar()->showPage(PageId::brew);
    CHECK(part<PlanPage>(w.second.cellar()->brew()).flow().fields().numberAt("/bitterness_ibu")->stored() == 17);
    w.second.session()->undo();
    w.window->session()->poll();
    CHECK(testing::fingerprint(w.desk()) == start);
    CHECK(w.recipeNumber("/bitterness_ibu").stored() == w.desk().planned("Plover")->setting.recipe.bitterness.ibu);
}

// --- reading only --------------------------------------------------------------------------------------------------

TEST_CASE("a book for reading only: every page and every key, and not a byte changes", "[ui][badbook][readonly]") {
    const SampleWindow w;
    w.window->closeBook();
    {
        // A book of a newer minor version is opened for reading only.
        std::fstream file(w.book, std::ios::in | std::ios::out | std::ios::binary);
        file.seekg(63);
        const char newer = static_cast<char>(file.get() + 1);
        file.seekp(63);
        file.put(newer);
    }
    const auto before = testing::readAll(w.book);
    REQUIRE(w.window->openBook(w.book));
    REQUIRE(w.desk().readOnly());
    w.cellar().showVessel("Plover");
    for (const PageId workPage : testing::allPages) {
        w.go(workPage);
        if (workPage == PageId::adjust)
            w.waitForAdvice();
        INFO(static_cast<int>(workPage));
        const QString words = shownWords(w.cellar());
        INFO(words.toStdString());
        CHECK(words.count("for reading only") <= 1);
        CHECK(w.window->notices().isVisible());
        for (QAction* action : w.window->actions()) {
            const bool leaves = action == &w.action("Quit") || action == &w.action("Close book") ||
                                action == &w.action("Preferences"); // a dialog, of the window and not of the book
            if (action->shortcut().isEmpty() || leaves)
                continue;
            const QKeyCombination key = action->shortcut()[0];
            QTest::keyClick(w.focus() ? w.focus() : w.window.get(), key.key(), key.keyboardModifiers());
            REQUIRE(w.window->session());
        }
        w.go(workPage);
        for (const char* typed : {"6", "=", "t", " "})
            w.type(typed);
        for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Delete, Qt::Key_Up, Qt::Key_Escape})
            w.key(key);
        CHECK_FALSE(w.cellar().drawRefill().form().active());
    }
    CHECK(w.window->notices().isVisible());
    w.window->closeBook();
    CHECK(testing::readAll(w.book) == before);
}

// --- 200 tasters, no target ----------------------------------------------------------------------------------------

namespace {

SittingFact crowd(Day on, int tasters) {
    SittingFact fact;
    fact.vessel = "Plover";
    fact.sitting.on = on;
    for (int i = 0; i < tasters; ++i)
        for (const Attribute& attribute : builtInSheet().attributes) {
            if (!attribute.shortSheet)
                continue;
            Score score;
            score.taster = "Taster " + std::to_string(i + 1);
            score.attribute = attribute.code;
            score.cold = .5 * ((i * 7 + static_cast<int>(attribute.code.back())) % 21);
            if (attribute.bothTemperatures)
                score.cellar = .5 * ((i * 5 + static_cast<int>(attribute.code.back())) % 21);
            fact.sitting.scores.push_back(score);
        }
    return fact;
}

} // namespace

TEST_CASE("200 tasters' scores are shown, judged and added to", "[ui][badbook][crowd]") {
    const SampleWindow w;
    const SittingFact fact = crowd(w.today, 200);
    REQUIRE(w.window->session()->record(Fact{fact}));
    w.go(PageId::taste);
    TastePage& taste = w.cellar().taste();
    CHECK(taste.draft().tasters().size() == 200);
    CHECK(w.window->minimumSizeHint().width() <= 1280);
    CHECK(w.window->width() == 1280);
    taste.showAllTasters(true);
    CHECK(taste.grid().scores().columnCount() == 2 * 200 + 2);
    CHECK(w.window->minimumSizeHint().width() <= 1280);
    taste.showAllTasters(false);
    taste.header().tasters().setCurrentIndex(199);
    CHECK(taste.draft().taster() == "Taster 200");
    w.put(taste.sheet().cell("TA1", Glass::cold), "9.5", Qt::Key_Tab);
    const auto stored = w.desk().sittings("Plover")->front().fact;
    const auto mine = std::find_if(stored.sitting.scores.begin(), stored.sitting.scores.end(), [](const Score& score) {
        return score.taster == "Taster 200" && score.attribute == "TA1";
    });
    REQUIRE(mine != stored.sitting.scores.end());
    CHECK(mine->cold == 9.5);
    CHECK(stored.sitting.scores.size() == fact.sitting.scores.size());
    w.go(PageId::adjust);
    w.waitForAdvice();
    CHECK(part<VerdictPanel>(w.adjust()).words().size() >= 3);
    const auto advice = w.desk().advise({"Plover", {}, {}, true}).value();
    for (const Dimension d : allDimensions)
        CHECK((advice.verdicts[d].kind == VerdictKind::faultFirst || // said once, in the full answer
               part<VerdictPanel>(w.adjust())
                   .words()
                   .join(' ')
                   .contains(w.window->session()->words(advice.verdicts[d].reason))));
    w.go(PageId::history);
    w.key(Qt::Key_End);
    CHECK_FALSE(w.cellar().history().cursorWords().isEmpty());
    CHECK(w.window->minimumSizeHint().width() <= 1280);
}

TEST_CASE("a vessel without a target is tasted, judged and looked back on", "[ui][badbook]") {
    const testing::WindowInScratch w;
    CellarView& cellar = *w.window->cellar();
    cellar.showVessel("Heron");
    REQUIRE_FALSE(w.window->session()->desk().target("Heron")->has_value());
    const auto before = testing::fingerprint(w.window->session()->desk());
    w.key(Qt::Key_1, Qt::ControlModifier);
    CHECK_FALSE(cellar.taste().verdictWords().isEmpty());
    w.key(Qt::Key_2, Qt::ControlModifier);
    REQUIRE(QTest::qWaitFor([&] { return !cellar.adjust().busy(); }, 60000));
    CHECK(part<VerdictPanel>(cellar.adjust()).words().size() >= 3);
    cellar.adjust().openTarget(true);
    CHECK(part<TargetForm>(cellar.adjust()).words() == own("ui.adjust.target.default"));
    w.key(Qt::Key_6, Qt::ControlModifier);
    w.key(Qt::Key_End);
    CHECK_FALSE(cellar.history().cursorWords().isEmpty());
    CHECK(testing::fingerprint(w.window->session()->desk()) == before);
}
