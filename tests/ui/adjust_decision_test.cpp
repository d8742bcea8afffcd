// SPDX-License-Identifier: GPL-3.0-or-later
// The decision at Adjust: its sentence, what moves, what was taught, adopting it, what may move, and which plan stays
// in view.
#include "ui/adjust_support.h"

#include "advice/lever.h"
#include "estimate/words.h"
#include "ui/adjust/decision_panel.h"
#include "ui/adjust/more_notes.h"
#include "ui/adjust/move_table.h"
#include "ui/adjust/permissions.h"
#include "ui/adjust/plan_in_view.h"
#include "ui/audit.h"
#include "ui/brew/plan_page.h"
#include "ui/window/cellar_view.h"

#include <QScrollArea>

#include <fmt/core.h>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::ui;
using staveline::testing::day;
using staveline::testing::part;
using staveline::testing::parts;
using staveline::testing::wordsOf;
using testing::AtAdjust;

namespace {

/// The page at a target of the test's own; what was answered before is gone.
void aimAt(const AtAdjust& s, const VesselName& vessel, const PerDimension<TargetWindow>& windows) {
    Target target = (*s.desk().target(vessel))->fact.target;
    target.windows = windows;
    REQUIRE(s.session->record(TargetFact{vessel, s.today, target}));
    s.settle();
}

PerDimension<TargetWindow> whereItIs(const AtAdjust& s, const VesselName& vessel) {
    PerDimension<TargetWindow> windows;
    const auto job = s.jobOf(vessel);
    for (const Dimension d : allDimensions)
        windows[d] = {job.input.combined[d].mean, 2};
    return windows;
}

/// It folds or shows the alternatives; none while there is nothing to fold.
QPushButton* foldButton(const AtAdjust& s) {
    QPushButton* show = testing::buttonSaying(*s.workPage, "Show the alternatives");
    return show ? show : testing::buttonSaying(*s.workPage, "Fold the alternatives");
}

void notAtHand(const AtAdjust& s, const std::string& item) {
    REQUIRE(s.session->record(AvailabilityFact{s.today, item, false, {}}));
    s.settle();
}

/// The recipe of the last refill but for the boil, which no lever moves, is the usual one.
Setting otherBoil(const AtAdjust& s) {
    Setting usual = s.jobOf("Plover").input.base;
    usual.recipe.boil = Minutes{usual.recipe.boil.min + 30};
    VesselEditFact handling;
    handling.vessel = "Plover";
    handling.drawShare = Share{usual.draw.l / s.desk().vessel("Plover")->facts.capacity.l};
    REQUIRE(s.session->record({handling, BaseRecipeFact{"Plover", s.today, usual.recipe}}));
    s.settle();
    return usual;
}

/// Two at the table, all the same score in both glasses.
std::string sour(const char* on, double score) {
    std::string scores;
    for (const char* taster : {"Rook", "Teal"})
        for (const char* line : {"TA1", "TA2", "TA3"})
            scores += (scores.empty() ? "" : ",") +
                      fmt::format(R"({{"taster": "{}", "attribute": "{}", "cold": {}, "cellar": {}}})", taster, line,
                                  score, score);
    return fmt::format(R"({{"kind": "sitting", "vessel": "Plover", "on": "{}", "scores": [{}]}})", on, scores);
}

QString why(const AtAdjust& s) {
    const auto* label = s.workPage->findChild<LinkedLabel*>(QStringLiteral("why"));
    REQUIRE(label);
    return label->words();
}

QString lower(const QString& title) {
    return title.left(1).toLower() + title.mid(1);
}

bool whollySeen(const QWidget& widget) {
    return widget.isVisible() && widget.visibleRegion().boundingRect() == widget.rect();
}

/// On the sample cellar in a whole window of 1280 x 800.
struct InWindow : testing::WindowInScratch {
    explicit InWindow(Appearance look) : WindowInScratch(false) {
        REQUIRE(window->sampleBook(book));
        window->setAppearance(look);
    }
    void at(const char* vessel) const {
        window->cellar()->showVessel(vessel);
        window->cellar()->showPage(PageId::adjust);
        REQUIRE(QTest::qWaitFor([this] { return !page().busy(); }, 60000));
        QTest::qWait(30);
    }
    [[nodiscard]] AdjustPage& page() const { return window->cellar()->adjust(); }
};

} // namespace

TEST_CASE("the sentence is that of the plan in view, and its moves are told one by one", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    ProposalList& list = s.proposals();
    REQUIRE(list.count() >= 2);
    for (const int number : {1, 2}) {
        list.radio(number)->click();
        s.settle();
        const Proposal& shown = *list.proposal(number);
        INFO(s.plan().toStdString());
        CHECK(s.plan().contains(lower(s.session->words(shown.title))));
        CHECK(why(s) == s.session->words(shown.why));
        const QStringList moves = s.moves();
        REQUIRE(moves.size() == static_cast<qsizetype>(shown.moves.size()));
        for (std::size_t i = 0; i < shown.moves.size(); ++i)
            CHECK(moves[static_cast<qsizetype>(i)].contains(
                effectWords(shown.moves[i].next.value(), shown.moves[i].settled)));
    }
    list.radio(0)->click();
    CHECK(s.plan().contains("eave it alone"));
    CHECK(s.moves().isEmpty());
    // A better plan is known: leaving alone does not say that nothing gains enough.
    CHECK(why(s).contains(lower(s.session->words(list.proposal(1)->title))));
    CHECK_FALSE(why(s).contains("No change"));
}

TEST_CASE("a setting of the brewer's own is called that, with what it moves", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    s.workPage->asNow();
    s.slide("sacch_temperature", Qt::Key_Left, 4);
    s.settle();
    CHECK(s.plan().contains("s tried: cooler mash"));
    REQUIRE(s.moves().size() == 1);
    const auto& line = s.line("sacch_temperature").line();
    CHECK(s.moves().front().contains(s.session->words(valueText(line.row.id, line.now, s.desk().pantry()))));
    s.slide("sacch_temperature", Qt::Key_Right, 4);
    CHECK(s.moves().isEmpty());
}

TEST_CASE("effects are told where they will be tasted, next and over the years", "[ui][adjust][decision]") {
    Scores next, settled;
    next[Dimension::acidity] = -.2;
    settled[Dimension::acidity] = -.5;
    next[Dimension::funk] = .1;
    settled[Dimension::funk] = .1;
    CHECK(effectWords(next, settled) == "acidity -0.2 next, -0.5 over the years");
    CHECK(effectWords(next, std::nullopt) == "too small to taste next"); // of the years nothing is known yet
    settled[Dimension::acidity] = -.2;
    CHECK(effectWords(next, settled) == "too small to taste by itself");
    next[Dimension::body] = .4;
    CHECK(effectWords(next, std::nullopt) == "body +0.4 next");
}

TEST_CASE("where nothing gains enough, leaving it alone is the sentence and the plan", "[ui][adjust][decision]") {
    const AtAdjust s;
    aimAt(s, "Plover", whereItIs(s, "Plover"));
    REQUIRE(s.proposals().count() == 0);
    CHECK(s.sentence() == "Leave it alone.");
    CHECK(s.proposals().chosen() == 0);
    CHECK(s.moves().isEmpty());
    CHECK(why(s) == s.session->words(s.proposals().proposal(0)->why));
    CHECK(s.proposals().radio(0)->isVisible());
}

TEST_CASE("what the vessel has taught stands below, and what one more taster would do", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    const auto job = s.jobOf("Plover");
    for (const Dimension d : allDimensions) {
        REQUIRE(job.estimates.sittings[d] > 0);
        CHECK(wordsOf(*s.workPage, QString::fromStdString("taught " + std::string(name(d)))) ==
              s.session->words(estimate::taught(d, job.estimates.offsets[d], job.estimates.sittings[d])));
    }
    const auto advice = *advise(job.input);
    const bool worth = advice.tasting.dimension.has_value();
    CHECK((wordsOf(*s.workPage, "tasting") == own("ui.adjust.no_taster")) == !worth);
}

TEST_CASE("one more glass worth asking for is the sentence, its dimension named, the working plan beside it",
          "[ui][adjust][decision]") {
    const AtAdjust s;
    std::optional<Dimension> asked;
    for (double off = .4; off < 3 && !asked; off += .2) {
        auto windows = whereItIs(s, "Plover");
        for (const Dimension d : allDimensions)
            windows[d].band = .5;
        windows[Dimension::acidity].wanted -= off;
        aimAt(s, "Plover", windows);
        asked = advise(s.jobOf("Plover").input)->tasting.dimension;
    }
    REQUIRE(asked);
    INFO(s.sentence().toStdString());
    CHECK(s.sentence().contains("Taste before you brew")); // the sample was not tasted in this cycle
    CHECK(s.sentence().contains(QString::fromStdString(std::string(name(*asked)))));
    CHECK(wordsOf(*s.workPage, "meanwhile").contains("brew day cannot move"));
    CHECK_FALSE(wordsOf(*s.workPage, "tasting").contains("would not change"));
    for (const QString& note : s.notes().words()) // said once
        CHECK_FALSE(note.contains("One more taster"));
    // Another plan in view is not what is best without him.
    ProposalList& list = s.proposals();
    REQUIRE(list.count() > 0);
    list.radio(0)->click();
    CHECK(wordsOf(*s.workPage, "meanwhile") == "Leave it alone.");
    list.radio(1)->click();
    CHECK(wordsOf(*s.workPage, "meanwhile").startsWith("If brew day cannot move, for this refill: "));
}

TEST_CASE("a vessel never tasted is to be tasted first, and gets the try board only", "[ui][adjust][decision]") {
    const AtAdjust s;
    testing::recordAll(*s.session, R"([{"kind": "vessel", "name": "Curlew", "shape": "cask", "material": "oak used",
        "capacity_l": 225}, {"kind": "opening", "vessel": "Curlew", "on": "2025-10-01", "volume_l": 214,
        "age_years": 1.6}])");
    s.workPage->showVessel("Curlew");
    s.settle();
    CHECK(s.answers().words().front().startsWith("Taste first"));
    CHECK(s.sentence().isEmpty());
    CHECK_FALSE(s.proposals().isVisible());
    CHECK(wordsOf(*s.workPage, "taught acidity").isEmpty());
    CHECK_FALSE(wordsOf(*s.workPage, "tasting").contains("would not"));
    CHECK(s.board().isVisible());
    const auto yeast = s.jobOf("Curlew").input.base.recipe.yeast;
    notAtHand(s, yeast);
    REQUIRE(s.moves().size() == 1);
    CHECK(s.moves().front().contains(qs(s.desk().pantry().yeast(yeast)->name)));
    QSignalSpy asked(s.workPage.get(), &AdjustPage::tasteAsked);
    s.workPage->focusWork();
    CHECK(part<DecisionPanel>(*s.workPage).tasteButton().hasFocus());
    QTest::keyClick(&part<DecisionPanel>(*s.workPage).tasteButton(), Qt::Key_Space);
    CHECK(asked.count() == 1);
    s.workPage->showVessel("Plover");
    s.settle();
    CHECK(s.proposals().isVisible());
    CHECK_FALSE(part<DecisionPanel>(*s.workPage).tasteButton().isVisible());
}

TEST_CASE("a fault has its full answer and no plan beside it", "[ui][adjust][decision]") {
    const AtAdjust s("Dunlin");
    s.settle();
    CHECK(s.answers().words().front().startsWith("Fault first"));
    CHECK(s.sentence().isEmpty());
    CHECK(s.moves().isEmpty());
    CHECK(s.proposals().numbers() == std::vector<int>{0}); // who has to refill leaves the recipe alone
    const auto recipe = s.jobOf("Dunlin").input.base.recipe;
    notAtHand(s, recipe.grist.front().grain);
    notAtHand(s, recipe.yeast);
    CHECK(s.sentence().isEmpty());
    REQUIRE(s.moves().size() == 1); // and is told what he has to do without
    CHECK(s.moves().front().contains(qs(s.desk().pantry().yeast(recipe.yeast)->name)));
    CHECK(wordsOf(*s.workPage, "missing").contains(qs(s.desk().pantry().grain(recipe.grist.front().grain)->name)));
}

TEST_CASE("after adopting the plan and its promise stay and the alternatives fold", "[ui][adjust][decision]") {
    install(*qApp, Appearance::light);
    AtAdjust s;
    s.settle();
    REQUIRE(s.proposals().radio(0)->isVisible());
    CHECK_FALSE(foldButton(s));
    const QString plan = s.plan();
    s.workPage->adopt();
    s.settle();
    CHECK(s.plan() == plan);
    CHECK(wordsOf(*s.workPage, "adopted").contains("Promised for the draw of"));
    CHECK(wordsOf(*s.workPage, "since").isEmpty()); // nothing new is known
    CHECK_FALSE(s.proposals().radio(0)->isVisible());
    REQUIRE(foldButton(s));
    const auto report = testing::audit(*s.workPage);
    INFO(report.findings.join('\n').toStdString());
    CHECK(report.findings.isEmpty());
    s.workPage->focusWork();
    CHECK(foldButton(s)->hasFocus());
    QTest::keyClick(foldButton(s), Qt::Key_Space);
    CHECK(s.proposals().radio(0)->isVisible());
    s.proposals().radio(0)->click();
    CHECK(s.plan().contains("eave it alone"));
    s.session->undo();
    s.settle();
    CHECK(s.proposals().radio(0)->isVisible());
    CHECK_FALSE(foldButton(s));
}

TEST_CASE("what is tasted after adopting says what it changed in the promise", "[ui][adjust][decision]") {
    AtAdjust s;
    s.settle();
    s.workPage->adopt();
    s.settle();
    const Forecast told = *s.desk().lastChoice("Plover")->forecast;
    s.today += std::chrono::days{10};
    testing::recordAll(*s.session, R"({"kind": "sitting", "vessel": "Plover", "on": "2026-06-10", "scores": [
        {"taster": "Rook", "attribute": "TA1", "cold": 8.5, "cellar": 8.5},
        {"taster": "Rook", "attribute": "TA2", "cold": 8.5, "cellar": 8.5},
        {"taster": "Rook", "attribute": "TA3", "cold": 8.5, "cellar": 8.5},
        {"taster": "Teal", "attribute": "TA1", "cold": 8.5, "cellar": 8.5},
        {"taster": "Teal", "attribute": "TA2", "cold": 8.5, "cellar": 8.5},
        {"taster": "Teal", "attribute": "TA3", "cold": 8.5, "cellar": 8.5}]})");
    s.settle();
    const QString since = wordsOf(*s.workPage, "since");
    INFO(since.toStdString());
    CHECK(since.contains("Tasted since, on 10 Jun 2026"));
    const auto job = s.jobOf("Plover");
    REQUIRE(job.open);
    const Trial now = *TryBoard(job.input).trial(*job.open, TrialDepth::central);
    PerDimension<std::optional<double>> expected;
    for (const Dimension d : allDimensions)
        expected[d] = now.next[d].value;
    const auto moved = movedPromises(told, expected, {{.3, .3, .3}});
    for (const Message& message : moved)
        CHECK(since.contains(s.session->words(message)));
    CHECK(since.contains("by less than you would taste") == moved.empty());
}

TEST_CASE("a plan says before it is adopted what is not at hand for it", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    CHECK(wordsOf(*s.workPage, "missing").isEmpty());
    const auto recipe = s.jobOf("Plover").input.base.recipe;
    REQUIRE(s.session->record(AvailabilityFact{s.today, recipe.grist.front().grain, false, {}}));
    REQUIRE(s.session->record(AvailabilityFact{s.today, recipe.yeast, false, {}}));
    s.settle();
    CHECK(wordsOf(*s.workPage, "missing").contains("not at hand"));
    CHECK(wordsOf(*s.workPage, "missing").contains(qs(s.desk().pantry().grain(recipe.grist.front().grain)->name)));
    s.proposals().radio(0)->click();
    s.settle();
    const QStringList moves = s.moves(); // another yeast, also when all else is left alone
    REQUIRE(moves.size() == 1);
    CHECK(moves.front().contains("not at hand"));
    CHECK(moves.front().contains(qs(s.desk().pantry().yeast(recipe.yeast)->name)));
    REQUIRE(s.proposals().count() > 0);
    CHECK_FALSE(why(s).contains("Nothing moves"));
    CHECK(why(s).contains(lower(s.session->words(s.proposals().proposal(1)->title))));
    otherBoil(s); // of the malt that is not at hand
    s.proposals().radio(ProposalList::usual)->click();
    s.settle();
    INFO(wordsOf(*s.workPage, "missing").toStdString());
    CHECK(s.proposals().chosen() == ProposalList::usual);
    CHECK(wordsOf(*s.workPage, "missing").startsWith("Not at hand: "));
    CHECK(wordsOf(*s.workPage, "missing").contains("is not at hand"));
    for (const LinkedLabel* label : parts<LinkedLabel>(s.proposals())) // said once
        CHECK_FALSE(label->words().startsWith("Not at hand: "));
    for (const QString& note : s.notes().words())
        CHECK_FALSE(note.contains("not at hand"));
}

TEST_CASE("the draw and the interval are let move from here, each one undo", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    auto& draw = part<QCheckBox>(*s.workPage, own("ui.field.vessel.draw_may_move"));
    auto& interval = part<QCheckBox>(*s.workPage, own("ui.field.vessel.interval_may_move"));
    const bool before = s.jobOf("Plover").input.mayMoveDraw;
    CHECK(draw.isChecked() == before);
    draw.setFocus();
    QTest::keyClick(&draw, Qt::Key_Space);
    CHECK(s.jobOf("Plover").input.mayMoveDraw == !before);
    QTest::keyClick(&interval, Qt::Key_Space);
    CHECK(s.jobOf("Plover").input.mayMoveInterval);
    s.session->undo();
    s.session->undo();
    CHECK(s.jobOf("Plover").input.mayMoveDraw == before);
    CHECK(draw.isChecked() == before);
}

TEST_CASE("how many changes a plan may hold is set from here, and the advice follows", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    auto& most = part<ChoiceField>(*s.workPage, "At most so many changes at once");
    CHECK(most.currentText() == "2");
    CHECK(most.count() == AdviceRequest::mostLevers);
    const auto revision = s.revision();
    for (const int levers : {1, 4}) {
        most.setFocus();
        QTest::keyClick(&most, levers == 1 ? Qt::Key_Home : Qt::Key_End);
        s.settle();
        CHECK(s.workPage->mostMoved() == levers);
        AdviceJob job = s.jobOf("Plover");
        job.input.maxMoved = levers;
        const auto expected = *advise(job.input);
        REQUIRE(s.proposals().count() == static_cast<int>(expected.proposals.size()));
        for (std::size_t i = 0; i < expected.proposals.size(); ++i) {
            CHECK(s.proposals().proposal(static_cast<int>(i) + 1)->setting == expected.proposals[i].setting);
            CHECK(expected.proposals[i].moves.size() <= static_cast<std::size_t>(levers));
        }
    }
    CHECK(s.revision() == revision);
}

TEST_CASE("the levers a plan moves stand first on the board, in the order of the keys too", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    const auto moved = s.board().tried();
    REQUIRE_FALSE(moved.empty());
    const auto& order = s.board().inOrder();
    for (std::size_t i = 0; i < moved.size(); ++i)
        CHECK(order[i]->moved());
    int last = -1;
    for (const LeverLine* line : order) {
        CHECK(line->lock()->y() > last);
        last = line->lock()->y();
    }
    QWidget* from = order[moved.size() - 1]->tabStops().back();
    QWidget* next = from->nextInFocusChain();
    while (next->focusPolicy() == Qt::NoFocus || !next->isEnabled() || !next->isVisible())
        next = next->nextInFocusChain();
    bool found = false;
    for (const LeverLine* line : order)
        for (QWidget* stop : line->tabStops())
            found = found || stop == next || stop->isAncestorOf(next);
    CHECK(found);
    s.workPage->asNow();
    CHECK(order.front() == s.board().all().front());
    s.slide("interval", Qt::Key_Right); // while trying, nothing moves away under the hand
    CHECK(order.front() == s.board().all().front());
}

TEST_CASE("the usual recipe is a plan of its own where it differs", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    const auto job = s.jobOf("Plover");
    Setting usual = job.input.base;
    usual.recipe.bitterness = Ibu{usual.recipe.bitterness.ibu + 6};
    REQUIRE(s.session->record(BaseRecipeFact{"Plover", s.today, usual.recipe}));
    s.settle();
    const auto advice = *advise(s.jobOf("Plover").input);
    REQUIRE(advice.usual);
    QRadioButton* radio = s.proposals().radio(ProposalList::usual);
    REQUIRE(radio);
    radio->click();
    s.settle();
    CHECK(s.proposals().chosen() == ProposalList::usual);
    CHECK(s.plan().contains("the usual recipe"));
    s.workPage->adopt();
    CHECK(s.desk().lastChoice("Plover")->forecast->recipe == usual.recipe);
    CHECK(s.desk().lastChoice("Plover")->proposal == ChoiceFact::own);
}

TEST_CASE("the usual recipe stays chosen beside a lock on what it would change", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    const Setting base = s.jobOf("Plover").input.base;
    Setting usual = base;
    usual.recipe.bitterness = Ibu{base.recipe.bitterness.ibu + 6};
    REQUIRE(s.session->record({LockFact{"Plover", s.today, "bitterness", base.recipe.bitterness.ibu, {}, true},
                               BaseRecipeFact{"Plover", s.today, usual.recipe}}));
    s.settle();
    s.proposals().radio(ProposalList::usual)->click();
    s.settle();
    CHECK(s.proposals().chosen() == ProposalList::usual);
    s.workPage->adopt();
    CHECK(s.desk().lastChoice("Plover")->forecast->recipe == usual.recipe);
}

TEST_CASE("decision, lessons and alternatives are seen at 1280 x 800 without scrolling", "[ui][adjust][decision]") {
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        const InWindow w(look);
        for (const char* vessel : {"Plover", "Knot"}) {
            w.at(vessel);
            const AdjustPage& page = w.page();
            CAPTURE(vessel);
            for (const char* name : {"decision", "why", "taught acidity", "taught funk", "taught body"}) {
                CAPTURE(name);
                CHECK(whollySeen(part<QWidget>(page, name)));
            }
            CHECK((whollySeen(part<QWidget>(page, "meanwhile")) || whollySeen(part<QWidget>(page, "tasting"))));
            CHECK((whollySeen(part<MoveTable>(page)) || part<ProposalList>(page).count() == 0));
            for (const char* name : {"meanwhile", "missing", "tasting", "doubts"}) { // not always something to say
                const auto& said = part<QWidget>(page, name);
                CAPTURE(name, said.mapTo(&page, QPoint()).y(), said.height());
                CHECK((wordsOf(page, name).isEmpty() || whollySeen(said)));
            }
            const ProposalList& list = part<ProposalList>(page);
            for (const int number : list.numbers()) {
                CAPTURE(number);
                CHECK(whollySeen(*list.radio(number)));
                CHECK(whollySeen(*list.scores(number)));
            }
            for (const Dimension d : allDimensions)
                CHECK(whollySeen(part<VerdictPanel>(page).column(d)));
            CHECK(whollySeen(part<TotalBar>(page).adoptButton()));
        }
    }
    install(*qApp, Appearance::light);
}

TEST_CASE("a usual recipe that no lever tells from leaving alone is chosen and adopted as it is",
          "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    const Setting usual = otherBoil(s);
    QRadioButton* radio = s.proposals().radio(ProposalList::usual);
    REQUIRE(radio);
    radio->click();
    s.settle();
    CHECK(s.proposals().chosen() == ProposalList::usual);
    CHECK(radio->isChecked());
    CHECK(s.plan().contains("the usual recipe"));
    INFO(s.moves().join("; ").toStdString());
    CHECK(s.moves().isEmpty());
    CHECK(s.total().words().startsWith("The usual recipe"));
    s.workPage->adopt();
    CHECK(s.desk().lastChoice("Plover")->forecast->recipe == usual.recipe);
    s.settle();
    CHECK(s.proposals().chosen() == ProposalList::usual);
    CHECK(wordsOf(*s.workPage, "adopted").startsWith("Decision of 1 Jun 2026: the usual recipe."));
    CHECK(originWords(*s.desk().planned("Plover")).startsWith("The usual recipe, adopted on 1 Jun 2026."));
    s.proposals().radio(0)->click();
    s.settle();
    CHECK(s.proposals().chosen() == 0);
    CHECK(s.plan().contains("eave it alone"));
}

TEST_CASE("a plan of an older question goes with it when nobody answers the new one", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    REQUIRE(s.proposals().chosen() == 1);
    const QString promised = why(s);
    REQUIRE(s.plan().contains("or this refill: "));
    Target target = (*s.desk().target("Plover"))->fact.target;
    target.windows[Dimension::acidity].wanted = 1;
    REQUIRE(s.session->record(TargetFact{"Plover", s.today, target}));
    REQUIRE(s.workPage->busy());
    s.workPage->cancel();
    s.settle();
    CHECK(s.proposals().empty());
    CHECK_FALSE(s.plan().contains("or this refill: "));
    CHECK(s.plan().startsWith("As tried: "));
    CHECK(why(s) == own("ui.adjust.why.tried"));
    CHECK(why(s) != promised);
}

TEST_CASE("of a vessel that cannot be advised on nothing of the one before is left", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    // Nearly water by its own measurement: no beer comes of that.
    testing::recordAll(*s.session, R"([{"kind": "brew", "name": "Brew 40", "vessel": "Knot", "on": "2026-05-20",
        "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
        "original_gravity_p": 12, "bitterness_ibu": 10, "measured_original_gravity_sg": 1.004},
        {"kind": "refill", "vessel": "Knot", "on": "2026-05-25", "volume_l": 10, "brew": "Brew 40"}])");
    s.settle();
    AdviceRequest request;
    request.vessel = "Knot";
    REQUIRE_FALSE(s.desk().adviceJob(request));
    REQUIRE(s.desk().vessel("Knot")->opened);
    const bool before = s.jobOf("Plover").input.mayMoveDraw;
    s.workPage->showVessel("Knot");
    CHECK_FALSE(wordsOf(*s.workPage, "message").isEmpty());
    CHECK_FALSE(s.verdicts().isVisible());
    CHECK_FALSE(s.board().isVisible());
    CHECK_FALSE(s.total().isVisible());
    CHECK(s.plan().isEmpty());
    CHECK(wordsOf(*s.workPage, "taught acidity").isEmpty());
    QCheckBox& draw = part<QCheckBox>(*s.workPage, own("ui.field.vessel.draw_may_move"));
    draw.click();
    CHECK(s.jobOf("Plover").input.mayMoveDraw == before);
    CHECK(s.desk().vessel("Knot")->facts.drawMayMove == draw.isChecked());
    s.workPage->showVessel("Plover");
    s.settle();
    CHECK(s.verdicts().isVisible());
    CHECK(s.board().isVisible());
    CHECK(s.total().isVisible());
}

TEST_CASE("after adopting, the focus stays where there is work", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    SECTION("by the button, which is greyed then") {
        s.proposals().radio(1)->click();
        s.settle();
        s.total().adoptButton().setFocus();
        QTest::keyClick(&s.total().adoptButton(), Qt::Key_Space);
    }
    SECTION("from among the alternatives, which fold") {
        s.proposals().radio(1)->setFocus();
        s.workPage->adopt();
    }
    REQUIRE(foldButton(s));
    CHECK(foldButton(s)->hasFocus());
    s.settle();
    CHECK(foldButton(s)->hasFocus());
}

TEST_CASE("what is measured after adopting is called what it is", "[ui][adjust][decision]") {
    AtAdjust s;
    s.settle();
    s.workPage->adopt();
    s.today += std::chrono::days{11};
    testing::recordAll(*s.session, R"({"kind": "reading", "vessel": "Plover", "on": "2026-06-10", "ph": 3.3})");
    s.settle();
    CHECK(wordsOf(*s.workPage, "since").contains("pH measured since, on 10 Jun 2026."));
    CHECK_FALSE(wordsOf(*s.workPage, "since").contains("Titrated"));
    testing::recordAll(*s.session, R"({"kind": "reading", "vessel": "Plover", "on": "2026-06-11", "ta_g_l": 6})");
    s.settle();
    CHECK(wordsOf(*s.workPage, "since").contains("Titrated since, on 11 Jun 2026."));
}

TEST_CASE("what is tasted on the day of the adoption is told when it came after it", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    SECTION("after") {
        s.workPage->adopt();
        testing::recordAll(*s.session, sour("2026-06-01", 8.5));
        s.settle();
        CHECK(wordsOf(*s.workPage, "since").contains("Tasted since, on 1 Jun 2026."));
        CHECK_FALSE(wordsOf(*s.workPage, "since").contains(own("ui.adjust.since.nothing")));
    }
    SECTION("before") {
        testing::recordAll(*s.session, sour("2026-06-01", 8.5));
        s.settle();
        s.workPage->adopt();
        s.settle();
        CHECK(wordsOf(*s.workPage, "since").isEmpty());
    }
}

TEST_CASE("an effect that will be tasted is not grey", "[ui][adjust][decision]") {
    MoveTable table;
    table.setMoves({{"Bitterness", say("desk.plain").with("text", "10 → 12"), "acidity -0.5 next", true},
                    {"Mash pH", say("desk.plain").with("text", "5.4 → 5.2"), "too small to taste by itself", false}},
                   {});
    for (const QLabel* label : parts<QLabel>(table))
        if (!label->text().isEmpty())
            CHECK((label->foregroundRole() == QPalette::PlaceholderText) == label->text().startsWith("too small"));
}

// --- locked, and decided
// ----------------------------------------------------------------------------------------------

TEST_CASE("a lock holds what is in use, unless a value was put in by hand", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    s.proposals().radio(1)->click();
    s.settle();
    const std::vector<Move> moves = s.proposals().proposal(1)->moves; // the answer is replaced meanwhile
    for (const Move& move : moves) {
        if (move.forced)
            continue;
        LeverLine& line = s.line(move.lever.c_str());
        REQUIRE(sameValue(line.tried(), move.to));
        line.lock()->click();
        const auto locks = *s.desk().locks("Plover");
        REQUIRE(locks.size() == 1);
        const LeverValue held =
            locks.front().value ? LeverValue{*locks.front().value} : LeverValue{locks.front().choice};
        CHECK(sameValue(held, move.from));
        s.session->undo();
        s.settle();
    }
    s.workPage->asNow();
    s.slide("sacch_temperature", Qt::Key_Left, 2);
    const auto byHand = std::get<double>(s.line("sacch_temperature").tried());
    s.line("sacch_temperature").lock()->click();
    CHECK(*s.desk().locks("Plover")->front().value == byHand);
}

TEST_CASE("a plan that is brewed looks locked, and says why and how it is unlocked", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    CHECK(wordsOf(*s.workPage, "locked").isEmpty());
    BrewFact brew;
    brew.name = "Brew 99";
    brew.vessel = "Plover";
    brew.on = s.today;
    brew.recipe = s.desk().planned("Plover")->setting.recipe;
    REQUIRE(s.session->record(Fact{brew}));
    s.settle();
    const QString said = wordsOf(*s.workPage, "locked");
    CHECK(said.contains("Brew 99"));
    CHECK(said.contains("locked"));
    CHECK(said.contains("Taking the brew out"));
    for (const LeverLine* line : s.board().all()) {
        CAPTURE(line->line().row.id);
        for (const QWidget* control : {static_cast<QWidget*>(line->slider()), static_cast<QWidget*>(line->number()),
                                       static_cast<QWidget*>(line->choice())})
            CHECK((!control || !control->isEnabled()));
    }
    for (const int number : s.proposals().numbers())
        CHECK_FALSE(s.proposals().radio(number)->isEnabled());
    CHECK_FALSE(s.total().adoptButton().isEnabled());
    s.session->undo();
    s.settle();
    CHECK(wordsOf(*s.workPage, "locked").isEmpty());
    CHECK(s.line("sacch_temperature").slider()->isEnabled());
    CHECK(s.proposals().radio(0)->isEnabled());
}

TEST_CASE("after another plan than the first was adopted, one sentence names the first", "[ui][adjust][decision]") {
    const AtAdjust s;
    s.settle();
    REQUIRE(s.proposals().count() > 0);
    s.proposals().radio(0)->click();
    s.settle();
    s.workPage->adopt();
    s.settle();
    REQUIRE(s.proposals().count() > 0);
    const QString first = s.session->words(s.proposals().proposal(1)->title);
    CHECK(wordsOf(*s.workPage, "since").contains("would come first: " + first.left(1).toLower() + first.mid(1)));
    s.session->undo();
    s.settle();
    s.proposals().radio(1)->click();
    s.settle();
    s.workPage->adopt();
    s.settle();
    CHECK_FALSE(wordsOf(*s.workPage, "since").contains("would come first"));
}
