// SPDX-License-Identifier: GPL-3.0-or-later
// The Adjust page: verdicts, trying without writing, locks, proposals and adopting.
#include "ui/adjust_support.h"

#include "advice/cautions.h"
#include "desk/stock.h"
#include "ui/adjust/answer_panel.h"
#include "ui/adjust/more_notes.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/message_label.h"

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::ui;
using staveline::testing::part;
using staveline::testing::parts;
using staveline::testing::wordsOf;
using testing::AtAdjust;

namespace {

TriedValues valuesOf(const Proposal& proposal) {
    TriedValues values;
    for (const Move& move : proposal.moves)
        values.push_back({move.lever, move.to});
    return values;
}

QStringList setOf(QStringList words) {
    words.sort();
    return words;
}
QStringList leversOf(const TriedValues& values) {
    QStringList levers;
    for (const TriedValue& value : values)
        levers << qs(value.lever);
    return setOf(levers);
}

void expectNoHoles(const QStringList& words) {
    for (const QString& line : words) {
        INFO(line.toStdString());
        CHECK_FALSE(line.contains('{'));
        CHECK_FALSE(line.startsWith("ui."));
        CHECK_FALSE(line.contains("advice."));
    }
}

} // namespace

TEST_CASE("each dimension says its verdict in a word and a sentence", "[ui][adjust]") {
    const AtAdjust s;
    const auto estimates = *s.desk().estimates("Plover");
    REQUIRE(s.verdicts().words().size() == 3);
    for (const Dimension d : allDimensions) {
        const VerdictColumn& column = s.verdicts().column(d);
        CHECK(column.word() == wordOf(estimates.verdicts[d].kind));
        CHECK(column.reason().words() == s.session->words(estimates.verdicts[d].reason));
    }
    expectNoHoles(s.verdicts().words());
}

TEST_CASE("a timeline holds what was tasted, today, the window and the coming draws", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    const auto job = s.jobOf("Plover");
    for (const Dimension d : allDimensions) {
        const TargetTimelineData& look = s.verdicts().column(d).timeline().look();
        CHECK(look.window == job.input.target.windows[d]);
        CHECK(look.tasted.size() == 5);
        CHECK(look.today.band.value == Approx(job.input.combined[d].mean));
        REQUIRE(look.alone);
        CHECK(look.alone->settled.has_value());
        REQUIRE(look.tried); // the first proposal
        CHECK(look.tried->next.low < look.tried->next.high);
        CHECK(look.triedName == "Proposal 1");
    }
}

TEST_CASE("a timeline is told in a sentence and as a table one key away", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    TargetTimeline& timeline = s.verdicts().column(Dimension::funk).timeline();
    CHECK(timeline.accessibleDescription().contains("target 4.0"));
    CHECK(timeline.accessibleDescription().contains(QChar(0xb1)));
    timeline.setFocus();
    QTest::keyClick(&timeline, Qt::Key_T);
    REQUIRE(s.verdicts().tableShown());
    const QTableWidget& table = s.verdicts().table();
    CHECK(table.hasFocus());
    REQUIRE(table.rowCount() >= 10);
    for (int row = 0; row < table.rowCount(); ++row)
        for (int column = 0; column < table.columnCount(); ++column) {
            INFO(row << ' ' << column);
            CHECK_FALSE(table.item(row, column)->text().isEmpty());
        }
    QTest::keyClick(&s.verdicts().table(), Qt::Key_Escape);
    CHECK_FALSE(s.verdicts().tableShown());
}

TEST_CASE("trying shows its effect at once and writes nothing", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    const auto revision = s.revision();
    const auto whole = testing::fingerprint(s.desk());
    s.workPage->asNow();
    s.slide("sacch_temperature", Qt::Key_Left, 6);
    // Before any event is handled: the worker has said nothing yet.
    LeverLine& line = s.line("sacch_temperature");
    CHECK(line.moved());
    const EffectCell& next = s.effect("next sacch_temperature");
    const EffectCell& kept = s.effect("kept sacch_temperature");
    CHECK_FALSE((wordsOf(next, "tasted") + wordsOf(next, "untasted")).isEmpty());
    CHECK(wordsOf(kept, "untasted") == QString(QChar(0x2026)));
    CHECK(s.proposals().chosen() == ProposalList::own);
    s.settle();
    CHECK(wordsOf(kept, "untasted") != QString(QChar(0x2026)));
    CHECK(s.total().words().contains("if repeated"));
    CHECK(s.revision() == revision);
    CHECK(testing::fingerprint(s.desk()) == whole);
}

TEST_CASE("what is shown at once is what the model says", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    s.workPage->asNow();
    s.slide("bitterness", Qt::Key_Left, 4);
    const auto tried = s.board().tried();
    REQUIRE(leversOf(tried) == QStringList{"bitterness"});
    const auto job = s.jobOf("Plover");
    TryBoard board(job.input);
    const Trial expected = *board.trial(tried, TrialDepth::central);
    for (const Dimension d : allDimensions) {
        const auto& shown = s.verdicts().column(d).timeline().look().tried;
        REQUIRE(shown);
        CHECK(shown->next.value == expected.next[d].value);
    }
    s.settle();
    const Trial full = *board.trial(tried, TrialDepth::settled);
    for (const Dimension d : allDimensions) {
        const auto& shown = s.verdicts().column(d).timeline().look().tried;
        CHECK(shown->next.low == full.next[d].low);
        REQUIRE(shown->settled);
        CHECK(shown->settled->high == full.settled[d].high);
    }
}

TEST_CASE("an effect below what is tasted is grey and says so", "[ui][adjust]") {
    EffectCell cell;
    Scores points;
    points[Dimension::acidity] = -.5;
    points[Dimension::funk] = .2;
    points[Dimension::body] = .01;
    cell.setPoints(points);
    CHECK(wordsOf(cell, "tasted").contains("acidity"));
    CHECK(wordsOf(cell, "tasted").contains("-0.5"));
    CHECK_FALSE(wordsOf(cell, "tasted").contains("funk"));
    CHECK(wordsOf(cell, "untasted").contains("+0.2"));
    CHECK(wordsOf(cell, "untasted").endsWith("(too small to taste)"));
    CHECK_FALSE(wordsOf(cell, "untasted").contains("body"));
    cell.setPoints({});
    CHECK(wordsOf(cell, "untasted") == "no change");
    cell.clear();
    CHECK(wordsOf(cell, "untasted").isEmpty());
}

TEST_CASE("arrow keys step through what can be brewed", "[ui][adjust]") {
    const AtAdjust s;
    s.workPage->asNow();
    LeverLine& line = s.line("ferulic_rest");
    const auto& steps = line.line().steps;
    REQUIRE(steps.size() > 3);
    s.slide("ferulic_rest", Qt::Key_Home);
    for (const LeverValue& step : steps) {
        CHECK(line.tried() == step);
        s.slide("ferulic_rest", Qt::Key_Right);
    }
    CHECK(line.tried() == steps.back());
    CHECK(line.number()->stored() == std::get<double>(steps.back()));
}

TEST_CASE("a number can be typed in the units in use and moves the slider", "[ui][adjust]") {
    const AtAdjust s;
    s.workPage->asNow();
    DisplayUnits units;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    s.session->setUnits(units);
    LeverLine& line = s.line("sacch_temperature");
    QLineEdit* edit = line.number()->edit();
    edit->clear();
    QTest::keyClicks(edit, "149");
    CHECK(std::get<double>(line.tried()) == Approx(65).margin(.01));
    CHECK(std::get<double>(line.line().steps[static_cast<std::size_t>(line.slider()->value())]) == 65);
    s.session->setUnits({});
    CHECK(edit->text() == "65");
}

TEST_CASE("a number out of bounds is said at its field and tries nothing", "[ui][adjust][bad]") {
    const AtAdjust s;
    s.workPage->asNow();
    const auto before = s.line("sacch_temperature").tried();
    QLineEdit* edit = s.line("sacch_temperature").number()->edit();
    edit->clear();
    QTest::keyClicks(edit, "90");
    CHECK_FALSE(s.line("sacch_temperature").number()->words().isEmpty());
    edit->clear();
    QTest::keyClicks(edit, "abc");
    CHECK_FALSE(s.line("sacch_temperature").number()->words().isEmpty());
    CHECK(s.line("sacch_temperature").tried() == before);
    edit->clear();
    QTest::keyClicks(edit, "64,5");
    CHECK(s.line("sacch_temperature").number()->words().isEmpty());
    CHECK(std::get<double>(s.line("sacch_temperature").tried()) == 64.5);
    // More than the vessel holds: the board itself refuses.
    QLineEdit* draw = s.line("draw").number()->edit();
    draw->clear();
    QTest::keyClicks(draw, "4000");
    CHECK_FALSE(s.line("draw").number()->words().isEmpty());
    CHECK_FALSE(s.total().adoptButton().isEnabled());
}

TEST_CASE("as now takes every lever back", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    s.slide("gravity", Qt::Key_Right, 3);
    s.slide("draw", Qt::Key_Right, 2);
    CHECK(s.board().tried().size() >= 2);
    part<QPushButton>(s.total(), "Reset").click();
    CHECK(s.board().tried().empty());
    CHECK_FALSE(s.verdicts().column(Dimension::acidity).timeline().look().tried);
}

TEST_CASE("what is tried stays when the book changes elsewhere", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    s.workPage->asNow();
    s.slide("sacch_temperature", Qt::Key_Left, 3);
    const auto tried = s.board().tried();
    testing::recordAll(*s.session, R"({"kind": "reading", "vessel": "Plover", "on": "2026-06-01", "ph": 3.26})");
    CHECK(s.board().tried() == tried);
    s.settle();
    CHECK(s.board().tried() == tried);
    CHECK(s.proposals().chosen() == ProposalList::own);
}

TEST_CASE("a lock is recorded at the tried value, holds its lever, and is one undo", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    s.workPage->asNow();
    s.slide("sacch_temperature", Qt::Key_Left, 4);
    const auto value = std::get<double>(s.line("sacch_temperature").tried());
    QTest::keyClick(s.line("sacch_temperature").lock(), Qt::Key_Space);
    const auto locks = *s.desk().locks("Plover");
    REQUIRE(locks.size() == 1);
    CHECK(locks.front().lever == "sacch_temperature");
    CHECK(*locks.front().value == value);
    CHECK_FALSE(s.line("sacch_temperature").slider()->isEnabled());
    CHECK(std::get<double>(s.line("sacch_temperature").tried()) == value);
    s.settle();
    for (int number = 0; number <= s.proposals().count(); ++number) {
        const Proposal* proposal = s.proposals().proposal(number);
        REQUIRE(proposal);
        CHECK(proposal->setting.recipe.mash.back().temperature.c == Approx(value));
    }
    s.session->undo();
    CHECK(s.desk().locks("Plover")->empty());
    CHECK(s.line("sacch_temperature").slider()->isEnabled());
    CHECK_FALSE(s.line("sacch_temperature").lock()->isChecked());
}

TEST_CASE("a lock that costs something says how much where it stands", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    REQUIRE(s.proposals().count() > 0);
    s.workPage->asNow();
    for (const Move& move : s.proposals().proposal(1)->moves)
        s.line(move.lever.c_str()).lock()->click(); // at the present value
    s.settle();
    QStringList prices;
    for (const LeverLine* line : s.board().all())
        if (!line->notes().isEmpty())
            prices << line->notes();
    expectNoHoles(prices);
    const auto job = s.jobOf("Plover");
    const auto advice = *advise(job.input);
    for (const RestrictionPrice& price : advice.prices)
        CHECK(s.line(price.id.c_str()).notes().contains(priceSentence(price, {})));
}

TEST_CASE("a yeast that is not at hand is recorded and worked around", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    LeverLine& yeast = s.line("yeast");
    const auto id = std::get<std::string>(yeast.tried());
    REQUIRE(yeast.missing());
    CHECK_FALSE(yeast.missing()->isChecked());
    QTest::keyClick(yeast.missing(), Qt::Key_Space);
    REQUIRE(s.desk().stock().size() == 1);
    CHECK(s.desk().stock().front().counted.item == id);
    CHECK_FALSE(s.desk().stock().front().counted.available);
    CHECK(yeast.missing()->isChecked());
    CHECK(s.stock().words().size() == 1);
    s.settle();
    CHECK(s.proposals().proposal(0)->setting.recipe.yeast != id);
    QPushButton* back = testing::buttonSaying(s.stock(), "At hand again");
    REQUIRE(back);
    back->click();
    CHECK(s.desk().stock().front().counted.available);
    CHECK(s.stock().words().isEmpty());
    CHECK_FALSE(yeast.missing()->isChecked());
}

TEST_CASE("a grain can be missing until a day", "[ui][adjust]") {
    const AtAdjust s;
    StockList& stock = s.stock();
    part<ChoiceField>(stock, "Grain or yeast that is not at hand").setWord("flaked_oats");
    part<QCheckBox>(stock, "ready on").click();
    QLineEdit* on = part<DateField>(stock, "Ready on").edit();
    on->clear();
    QTest::keyClicks(on, "nonsense");
    stock.add().click();
    CHECK(s.desk().stock().empty());
    on->clear();
    QTest::keyClicks(on, "2026-06-20");
    stock.add().click();
    REQUIRE(s.desk().stock().size() == 1);
    CHECK(*s.desk().stock().front().counted.readyOn == testing::day(2026, 6, 20));
    REQUIRE(stock.words().size() == 1);
    CHECK(stock.words().front().contains("20 Jun 2026"));
}

TEST_CASE("choosing a proposal loads its values onto the board and into the timelines", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    ProposalList& list = s.proposals();
    REQUIRE(list.count() >= 2);
    CHECK(list.chosen() == 1);
    s.workPage->focusWork();
    REQUIRE(list.radio(1)->hasFocus());
    QTest::keyClick(list.radio(1), Qt::Key_Down);
    CHECK(list.chosen() == 2);
    CHECK(leversOf(s.board().tried()) == leversOf(valuesOf(*list.proposal(2))));
    s.settle();
    const Proposal& second = *list.proposal(2);
    for (const Dimension d : allDimensions) {
        const auto& tried = s.verdicts().column(d).timeline().look().tried;
        REQUIRE(tried);
        CHECK(tried->next.value == Approx(second.next[d].value).margin(1e-6));
        CHECK(list.scores(2)->next(d) == bandWords(second.next[d]));
        CHECK(list.scores(2)->kept(d) == bandWords(second.settled[d]));
    }
    QTest::keyClick(list.radio(2), Qt::Key_Up);
    list.radio(0)->click();
    CHECK(list.chosen() == 0);
    CHECK(s.board().tried().empty());
}

TEST_CASE("moving a lever makes it the brewer's own setting, moving it back the proposal again", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    ProposalList& list = s.proposals();
    REQUIRE(list.chosen() == 1);
    s.slide("mash_ph", Qt::Key_Right);
    CHECK(list.chosen() == ProposalList::own);
    s.slide("mash_ph", Qt::Key_Left);
    CHECK(list.chosen() == 1);
}

TEST_CASE("reasons, limits and cautions stand under the chosen proposal, what the decision says does not",
          "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    ProposalList& list = s.proposals();
    const Proposal& first = *list.proposal(1);
    QStringList words;
    for (const LinkedLabel* label : parts<LinkedLabel>(list))
        words << label->words();
    for (const Move& move : first.moves)
        CHECK_FALSE(words.contains(s.session->words(move.wording)));
    for (const Message& reason : first.reasons)
        CHECK(words.contains(s.session->words(reason)));
    for (const Message& limit : first.limits)
        CHECK(words.contains(s.session->words(limit)));
    expectNoHoles(words);
}

TEST_CASE("a proposal shows the cautions it adds, and what every brew asks for stands under leaving alone",
          "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    ProposalList& list = s.proposals();
    const Proposal& alone = *list.proposal(0);
    const auto said = [&] {
        QStringList words;
        for (const MessageLabel* label : parts<MessageLabel>(list))
            if (label->isVisibleTo(&list)) // those of before are on their way out
                words << label->words();
        return words;
    };
    REQUIRE_FALSE(alone.cautions.empty());
    for (const int number : list.numbers()) {
        list.radio(number)->click();
        const Proposal& chosen = *list.proposal(number);
        const auto expected = number == 0 ? cautionsOf(alone) : addedCautions(chosen, alone);
        CHECK(said().size() == static_cast<qsizetype>(expected.size()));
        for (const Message& caution : expected)
            CHECK(said().contains(s.session->words(caution)));
        for (const Message& caution : alone.cautions)
            CHECK(said().contains(s.session->words(caution)) == (number == 0));
    }
}

TEST_CASE("adopting a proposal writes plan and promise, says so, and is one undo", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    const auto whole = testing::fingerprint(s.desk());
    const Proposal first = *s.proposals().proposal(1);
    s.workPage->adopt();
    const auto choice = s.desk().lastChoice("Plover");
    REQUIRE(choice);
    CHECK(choice->on == s.today);
    CHECK(choice->proposal == 1);
    REQUIRE(choice->forecast);
    CHECK(choice->forecast->recipe == first.setting.recipe);
    CHECK(wordsOf(*s.workPage, "adopted").contains("proposal 1"));
    CHECK(wordsOf(*s.workPage, "adopted").contains(dayWords(s.today)));
    for (const Dimension d : allDimensions)
        CHECK(wordsOf(*s.workPage, "adopted")
                  .contains(estimateWords({choice->forecast->mean[d], choice->forecast->sd[d]})));
    s.settle();
    CHECK(s.proposals().chosen() == 1);
    s.session->undo();
    CHECK(s.desk().lastChoice("Plover")->on != s.today);
    CHECK(testing::fingerprint(s.desk()) == whole);
}

TEST_CASE("a setting of the brewer's own can be adopted once its promise is worked out", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    s.workPage->asNow();
    s.slide("sacch_temperature", Qt::Key_Left, 4);
    CHECK_FALSE(s.total().adoptButton().isEnabled());
    CHECK_FALSE(s.total().whyNot().isEmpty());
    s.settle();
    const double tried = std::get<double>(s.line("sacch_temperature").tried());
    s.total().adoptButton().click();
    const auto choice = s.desk().lastChoice("Plover");
    REQUIRE(choice);
    CHECK(choice->proposal == ChoiceFact::own);
    CHECK(choice->forecast->recipe.mash.back().temperature.c == Approx(tried));
    CHECK(wordsOf(*s.workPage, "adopted").contains("your own setting"));
    s.settle();
    const auto decided = s.board().tried(); // against leaving it alone, as before it was decided
    REQUIRE(decided.size() == 1);
    CHECK(decided.front().lever == "sacch_temperature");
    CHECK(std::get<double>(decided.front().to) == Approx(tried));
    CHECK_FALSE(s.total().adoptButton().isEnabled());
}

TEST_CASE("the board opens at what is decided, not at a fresh proposal", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    REQUIRE(s.proposals().chosen() == 1);
    const auto job = s.desk().adviceJob({"Plover", {}, {}, true, false});
    const auto advice = advise(job->input);
    REQUIRE(s.session->choose(*job, *advice, 0));
    s.settle();
    CHECK(s.proposals().chosen() == 0);
    CHECK(wordsOf(*s.workPage, "adopted").contains("no change"));
}

TEST_CASE("nothing is adopted once the refill is brewed", "[ui][adjust]") {
    const AtAdjust s;
    testing::recordAll(*s.session, R"({"kind": "brew", "name": "Brew 40", "vessel": "Plover", "on": "2026-05-31",
        "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
        "original_gravity_p": 12, "bitterness_ibu": 10})");
    s.settle();
    CHECK_FALSE(s.total().adoptButton().isEnabled());
    CHECK(s.total().whyNot().contains("Brew 40"));
    const auto before = s.desk().lastChoice("Plover");
    s.workPage->adopt();
    CHECK(s.desk().lastChoice("Plover") == before);
}

TEST_CASE("a book for reading only can be tried on and not written", "[ui][adjust]") {
    AtAdjust s;
    s.workPage.reset();
    s.session.reset();
    s.session = std::make_unique<Session>(*Desk::open(
        s.book, [] { return testing::sampleDay; }, book::OpenMode::readOnly));
    s.open("Plover");
    s.settle();
    CHECK_FALSE(s.total().adoptButton().isEnabled());
    CHECK_FALSE(s.total().whyNot().isEmpty());
    for (const LeverLine* line : s.board().all())
        CHECK_FALSE(line->lock()->isEnabled());
    s.workPage->asNow();
    s.slide("sacch_temperature", Qt::Key_Left, 2);
    CHECK(s.line("sacch_temperature").moved());
    CHECK_FALSE(s.stock().add().isEnabled());
}

TEST_CASE("switching units rewrites the page and asks nothing anew", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    DisplayUnits units;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    s.session->setUnits(units);
    bool fahrenheit = false;
    for (const QLabel* label : s.board().findChildren<QLabel*>())
        fahrenheit = fahrenheit || label->text().contains(QString::fromUtf8("°F"));
    CHECK(fahrenheit);
    CHECK_FALSE(wordsOf(*s.workPage, "working").contains("Working"));
    CHECK(s.proposals().count() > 0);
}

TEST_CASE("work can be stopped and asked for again", "[ui][adjust]") {
    const AtAdjust s;
    REQUIRE(s.workPage->busy());
    s.workPage->cancel();
    CHECK(wordsOf(*s.workPage, "working") == own("ui.adjust.cancelled"));
    CHECK(s.proposals().empty());
    QPushButton* again = testing::buttonSaying(*s.workPage, "Ask again");
    REQUIRE(again);
    again->click();
    s.settle();
    CHECK_FALSE(s.proposals().empty());
    CHECK_FALSE(testing::buttonSaying(*s.workPage, "Ask again"));
}

TEST_CASE("answers about an older book are dropped", "[ui][adjust]") {
    const AtAdjust s;
    // Still working on the old snapshot when the target moves.
    Target target = (*s.desk().target("Plover"))->fact.target;
    target.windows[Dimension::acidity].wanted = 3;
    REQUIRE(s.session->record(TargetFact{"Plover", s.today, target}));
    s.settle();
    CHECK(s.verdicts().column(Dimension::acidity).timeline().look().window.wanted == 3);
    const auto job = s.jobOf("Plover");
    const auto advice = *advise(job.input);
    REQUIRE(s.proposals().count() == static_cast<int>(advice.proposals.size()));
    for (std::size_t i = 0; i < advice.proposals.size(); ++i)
        CHECK(s.proposals().proposal(static_cast<int>(i) + 1)->setting == advice.proposals[i].setting);
}

TEST_CASE("leaving the page or the vessel in the middle of work is safe", "[ui][adjust]") {
    AtAdjust s;
    REQUIRE(s.workPage->busy());
    s.workPage->showVessel("Knot");
    CHECK(s.proposals().empty());
    s.slide("sacch_temperature", Qt::Key_Left);
    s.workPage->showVessel("Plover");
    s.workPage.reset();
    s.open("Dunlin");
    s.workPage.reset();
    QTest::qWait(50); // nothing arrives for what is gone
    CHECK(s.session->desk().vessel("Plover").has_value());
}

TEST_CASE("a vessel never opened says so and offers the first step", "[ui][adjust]") {
    const AtAdjust s;
    testing::recordAll(*s.session, R"({"kind": "vessel", "name": "Curlew", "shape": "tank", "material": "steel",
        "capacity_l": 500})");
    s.workPage->showVessel("Curlew");
    QPushButton* fill = testing::buttonSaying(*s.workPage, "Record the first fill");
    QPushButton* takeover = testing::buttonSaying(*s.workPage, "Record a takeover");
    REQUIRE(fill);
    REQUIRE(takeover);
    std::vector<vessel::EntryKind> asked;
    QObject::connect(s.workPage.get(), &AdjustPage::firstEntryAsked, s.workPage.get(),
                     [&](vessel::EntryKind kind) { asked.push_back(kind); });
    s.workPage->focusWork();
    CHECK(fill->hasFocus());
    QTest::keyClick(fill, Qt::Key_Space);
    QTest::keyClick(takeover, Qt::Key_Space);
    CHECK(asked == std::vector{vessel::EntryKind::refill, vessel::EntryKind::opening});
    CHECK_FALSE(s.workPage->busy());
}

TEST_CASE("a long drag to and fro ends where it began", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    s.workPage->asNow();
    const LeverValue start = s.line("sacch_temperature").tried();
    for (int round = 0; round < 30; ++round) {
        s.slide("sacch_temperature", Qt::Key_Right, 8);
        s.slide("sacch_temperature", Qt::Key_Left, 8);
    }
    s.settle();
    CHECK(s.line("sacch_temperature").tried() == start);
    CHECK(s.board().tried().empty());
    CHECK(wordsOf(s.effect("next sacch_temperature"), "tasted").isEmpty());
}
