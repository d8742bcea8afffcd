// SPDX-License-Identifier: GPL-3.0-or-later
// The Adjust page: where numbers come from, full answers, the target behind the windows, and the day of the draw.
#include "ui/adjust_support.h"

#include "ui/adjust/answer_panel.h"
#include "ui/adjust/more_notes.h"
#include "ui/audit.h"
#include "ui/present/verdict_words.h"

#include <QVBoxLayout>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::tasting;
using namespace staveline::ui;
using staveline::testing::part;
using staveline::testing::parts;
using staveline::testing::wordsOf;
using testing::AtAdjust;

namespace {

LinkedLabel* firstLinked(const QList<LinkedLabel*>& labels) {
    for (LinkedLabel* label : labels)
        if (label->focusPolicy() != Qt::NoFocus)
            return label;
    return nullptr;
}

void type(QLineEdit* edit, const char* text, bool finish = true) {
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, QString::fromLatin1(text));
    if (finish)
        QTest::keyClick(edit, Qt::Key_Return);
}

} // namespace

TEST_CASE("a number is followed to where it comes from, by keyboard, and back", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    LinkedLabel* reason = firstLinked(parts<LinkedLabel>(s.proposals()));
    REQUIRE(reason);
    reason->setFocus(Qt::TabFocusReason);
    QTest::keyClick(reason, Qt::Key_Return);
    ExplanationPanel& explanation = s.explanation();
    REQUIRE(explanation.isOpen());
    CHECK(explanation.isVisible());
    CHECK_FALSE(explanation.title().isEmpty());
    CHECK_FALSE(wordsOf(explanation, "source").isEmpty());
    const QString first = explanation.title();
    LinkedLabel* input = firstLinked(explanation.inputs());
    REQUIRE(input);
    CHECK(input->hasFocus());
    QTest::keyClick(input, Qt::Key_Return);
    CHECK(part<QPushButton>(explanation, "Back").isVisible());
    INFO(first.toStdString() << " | " << input->words().toStdString() << " | " << explanation.title().toStdString());
    CHECK(explanation.title() != first);
    QTest::keyClick(explanation.focusWidget(), Qt::Key_Backspace);
    CHECK_FALSE(part<QPushButton>(explanation, "Back").isVisible());
    CHECK(explanation.title() == first);
    QTest::keyClick(explanation.focusWidget(), Qt::Key_Escape);
    CHECK_FALSE(explanation.isOpen());
    CHECK(reason->hasFocus());
}

TEST_CASE("every number of every reason has an explanation that ends", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    ProposalList& list = s.proposals();
    for (int number = 0; number <= list.count(); ++number) {
        list.radio(number)->click();
        for (const LinkedLabel* label : parts<LinkedLabel>(list))
            CHECK_FALSE(label->words().contains('{'));
        const Proposal& proposal = *list.proposal(number);
        for (const Message& reason : proposal.reasons)
            for (const Argument& argument : reason.arguments) {
                if (!argument.origin)
                    continue;
                INFO(linkOf(argument.origin));
                Q_EMIT list.explainAsked(number, argument.origin);
                CHECK_FALSE(s.explanation().title().isEmpty());
                CHECK_FALSE(s.explanation().title().contains("nothing behind"));
                s.explanation().leave();
            }
    }
}

TEST_CASE("the numbers of a verdict lead on too", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    LinkedLabel& reason = s.verdicts().column(Dimension::acidity).reason();
    reason.setFocus(Qt::TabFocusReason);
    QTest::keyClick(&reason, Qt::Key_Return);
    CHECK(s.explanation().isOpen());
    CHECK(s.explanation().title().contains("Acidity"));
    QPushButton* close = testing::buttonSaying(s.explanation(), "Close (Esc)");
    REQUIRE(close);
    close->click();
    CHECK(reason.hasFocus());
}

TEST_CASE("arrow keys go from link to link and Tab leaves the sentence", "[ui][adjust]") {
    QWidget window;
    auto* column = new QVBoxLayout(&window);
    auto* label = new LinkedLabel(&window);
    auto* after = new QPushButton("after", &window);
    column->addWidget(label);
    column->addWidget(after);
    label->say(say("advice.reason.acidity.alone")
                   .with("now", Points{6.4}, {OriginKind::now, Dimension::acidity})
                   .with("wanted", Points{5}, {OriginKind::window, Dimension::acidity})
                   .with("next", Points{6.1}, {OriginKind::aloneNext, Dimension::acidity}),
               {});
    QStringList asked;
    QObject::connect(label, &LinkedLabel::asked, [&](const Origin& origin) { asked << qs(linkOf(origin)); });
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    label->setFocus(Qt::TabFocusReason);
    QTest::keyClick(label, Qt::Key_Return);
    QTest::keyClick(label, Qt::Key_Right);
    QTest::keyClick(label, Qt::Key_Return);
    QTest::keyClick(label, Qt::Key_Left);
    QTest::keyClick(label, Qt::Key_Return);
    CHECK(asked == QStringList{"now/acidity", "window/acidity", "now/acidity"});
    QTest::keyClick(label, Qt::Key_Tab);
    CHECK(after->hasFocus());
}

TEST_CASE("linked text says what plain text says and escapes what was typed", "[ui][adjust]") {
    const Message plain = say("desk.plain").with("text", std::string("5 < 6 & {braces}"));
    CHECK(linkedHtml(plain) == "5 &lt; 6 &amp; {braces}");
    CHECK_FALSE(hasLinks(plain));
    const Message linked = say("desk.plain").with("text", Litres{60}, Origin::ofParameter("b c"));
    CHECK(hasLinks(linked));
    CHECK(linkedHtml(linked) == "<a href=\"parameter%2Fb%20c\">60.0 L</a>");
    CHECK(originOf("parameter%2Fb%20c") == Origin::ofParameter("b c"));
    CHECK_FALSE(originOf("a%2Fb%20c"));
    DisplayUnits gallons;
    gallons.volume = DisplayUnits::Volume::usGallon;
    CHECK(linkedHtml(linked, gallons).contains("US gal"));
    CHECK(wholeLinkHtml(plain, OriginKind::moveTo).startsWith("<a href=\"move%2Fto\">"));
    CHECK(linkedHtml({}).isEmpty());
}

TEST_CASE("what would change a verdict is said on request", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    const auto expected = whatWouldChange(s.jobOf("Plover").input);
    QStringList words;
    for (const Message& message : expected)
        words << s.session->words(message);
    CHECK(s.notes().changeWords() == words);
    part<QPushButton>(s.notes(), "What would change it").click();
    for (const LinkedLabel* label : s.notes().findChildren<LinkedLabel*>())
        CHECK(label->isVisible());
}

TEST_CASE("fault first is a full answer and proposes no recipe", "[ui][adjust]") {
    const AtAdjust s("Dunlin");
    s.settle();
    bool faulty = false;
    const auto estimates = *s.desk().estimates("Dunlin");
    for (const Dimension d : allDimensions)
        faulty = faulty || estimates.verdicts[d].kind == VerdictKind::faultFirst;
    REQUIRE(faulty);
    CHECK(s.answers().isVisible());
    CHECK(s.answers().words().front().startsWith("Fault first"));
    CHECK(s.proposals().count() == 0);
    CHECK(s.proposals().chosen() == 0);
}

TEST_CASE("a finished field of the target is one edit of today and moves the window", "[ui][adjust]") {
    const AtAdjust s;
    s.workPage->openTarget(true);
    TargetForm& form = s.target();
    REQUIRE(form.isVisible());
    CHECK(form.number("acidity")->edit()->hasFocus());
    type(form.number("acidity")->edit(), "4,5");
    auto stored = *s.desk().target("Plover");
    REQUIRE(stored);
    CHECK(stored->fact.on == s.today);
    CHECK(stored->fact.target.windows[Dimension::acidity].wanted == 4.5);
    CHECK(stored->fact.target.setBy == "Rook"); // the rest stays
    CHECK(s.verdicts().column(Dimension::acidity).timeline().look().window.wanted == 4.5);
    const auto id = stored->id;
    type(form.number("funk_band")->edit(), "0.5");
    stored = *s.desk().target("Plover");
    CHECK(stored->id == id); // of today already: amended
    CHECK(stored->fact.target.windows[Dimension::funk].band == .5);
    s.session->undo();
    CHECK((*s.desk().target("Plover"))->fact.target.windows[Dimension::funk].band == 1);
    s.session->undo();
    CHECK((*s.desk().target("Plover"))->fact.on != s.today);
    CHECK(form.number("acidity")->stored() == 5.0);
}

TEST_CASE("the other bounds of the target are stored in their own units", "[ui][adjust]") {
    const AtAdjust s;
    s.workPage->openTarget(true);
    TargetForm& form = s.target();
    type(form.number("bitterness_ceiling")->edit(), "12");
    type(form.number("gravity_high")->edit(), "1.052");
    type(form.number("alcohol_high")->edit(), "7.5");
    type(&form.setBy(), "Wren");
    const Target target = (*s.desk().target("Plover"))->fact.target;
    CHECK(target.bitternessCeiling.ibu == 12);
    CHECK(target.gravityHigh.p == Approx(12.87).margin(.03)); // 1.052 by the common table (ASBC), from memory
    CHECK(target.alcoholHigh.pct == Approx(7.5));
    CHECK(target.setBy == "Wren");
}

TEST_CASE("a half-typed target survives what happens elsewhere; a slip is said at its field", "[ui][adjust][bad]") {
    const AtAdjust s;
    s.workPage->openTarget(true);
    TargetForm& form = s.target();
    const auto before = (*s.desk().target("Plover"))->fact;
    type(form.number("acidity")->edit(), "4", false);
    testing::recordAll(*s.session, R"({"kind": "reading", "vessel": "Plover", "on": "2026-06-01", "ph": 3.26})");
    CHECK(form.number("acidity")->edit()->text() == "4");
    type(form.number("acidity")->edit(), "14");
    CHECK_FALSE(form.number("acidity")->words().isEmpty());
    type(form.number("body")->edit(), "");
    QTest::keyClick(form.number("body")->edit(), Qt::Key_Delete);
    QTest::keyClick(form.number("body")->edit(), Qt::Key_Return);
    CHECK_FALSE(form.number("body")->words().isEmpty());
    CHECK((*s.desk().target("Plover"))->fact == before);
    type(form.number("gravity_low")->edit(), "1.09"); // above the upper bound
    CHECK_FALSE((form.number("gravity_low")->words() + form.number("gravity_high")->words() + form.words()).isEmpty());
    CHECK((*s.desk().target("Plover"))->fact == before);
}

TEST_CASE("the windows can be set like a draw that was liked", "[ui][adjust]") {
    const AtAdjust s;
    s.workPage->openTarget(true);
    TargetForm& form = s.target();
    const auto draws = *s.desk().pastDraws("Plover");
    REQUIRE(draws.size() >= 2);
    CHECK(part<ChoiceField>(form, "A draw you liked").currentText().contains(qs(draws.front().lot)));
    part<ChoiceField>(form, "A draw you liked").setCurrentIndex(1);
    const Target before = (*s.desk().target("Plover"))->fact.target;
    part<QPushButton>(form, "Use as target").click();
    CHECK((*s.desk().target("Plover"))->fact.target == likeDraw(before, draws[1]));
    s.session->undo();
    CHECK((*s.desk().target("Plover"))->fact.target == before);
}

TEST_CASE("a trait can be wanted and not wanted again", "[ui][adjust]") {
    const AtAdjust s;
    s.workPage->openTarget(true);
    TargetForm& form = s.target();
    part<ChoiceField>(form, "Trait").setWord("medicinal");
    form.severity().setCurrentIndex(1);
    part<QPushButton>(form, "Accept").click();
    const auto wanted = (*s.desk().target("Plover"))->fact.target.wantedTraits;
    REQUIRE(wanted.size() == 1);
    CHECK(wanted.front() == FaultMark{"medicinal", 2});
    REQUIRE(form.traits().size() == 1);
    CHECK(form.traits().front().contains("clear"));
    QPushButton* remove = testing::buttonSaying(form, "Accept no longer");
    REQUIRE(remove);
    remove->click();
    CHECK((*s.desk().target("Plover"))->fact.target.wantedTraits.empty());
    CHECK(form.traits().isEmpty());
}

TEST_CASE("a vessel without a target says that an ordinary one is used", "[ui][adjust]") {
    testing::DeskInScratch made;
    testing::fillCellar(*made.desk);
    Session session(std::move(made.desk));
    AdjustPage workPage(session);
    workPage.showVessel("Heron");
    workPage.show();
    workPage.openTarget(true);
    CHECK(part<TargetForm>(workPage).words() == own("ui.adjust.target.default"));
    CHECK(part<ChoiceField>(part<TargetForm>(workPage), "A draw you liked").count() == 1);
    CHECK_FALSE(part<QPushButton>(part<TargetForm>(workPage), "Use as target").isEnabled());
    type(part<TargetForm>(workPage).number("body")->edit(), "4.5");
    CHECK(part<TargetForm>(workPage).words().isEmpty());
    CHECK((*session.desk().target("Heron"))->fact.target.windows[Dimension::body].wanted == 4.5);
}

TEST_CASE("another vessel's target takes the place of a half-typed one", "[ui][adjust]") {
    const AtAdjust s;
    s.workPage->openTarget(true);
    type(s.target().number("acidity")->edit(), "4.5", false);
    s.workPage->showVessel("Knot");
    CHECK((*s.desk().target("Plover"))->fact.target.windows[Dimension::acidity].wanted == 4.5); // stored on leaving
    CHECK(s.target().number("acidity")->stored() == 5.5);
}

TEST_CASE("draw day compares what is true with what was planned and says what to do", "[ui][adjust]") {
    const AtAdjust s;
    s.settle();
    s.workPage->openDrawDay(true);
    const DrawDayView view = *s.desk().drawDay("Plover");
    const QString all = s.drawDay().words().join('\n');
    CHECK(all.contains(s.session->amount(view.held)));
    CHECK(all.contains(s.session->amount(view.plannedDraw)));
    for (const Dimension d : allDimensions)
        CHECK(all.contains(estimateWords(view.estimates.combined[d])));
    for (const Message& finding : view.findings)
        CHECK(all.contains(s.session->words(finding)));
    for (const Message& step : view.planB)
        CHECK(all.contains(s.session->words(step)));
    QSignalSpy taste(s.workPage.get(), &AdjustPage::tasteAsked), draw(s.workPage.get(), &AdjustPage::drawAsked);
    s.workPage->focusWork();
    QTest::keyClick(s.workPage->focusWidget(), Qt::Key_Space);
    s.drawDay().drawButton().click();
    CHECK(taste.count() == 1);
    CHECK(draw.count() == 1);
    s.workPage->openDrawDay(false);
    CHECK(s.board().isVisible());
}

TEST_CASE("the page passes the audit in both palettes", "[ui][adjust]") {
    for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
        install(*qApp, appearance);
        const AtAdjust s;
        s.workPage->resize(1000, 2600); // everything in sight: what scrolls away cannot be judged
        s.settle();
        testing::AuditReport all;
        const auto look = [&] {
            QTest::qWait(50);
            all.add(testing::audit(*s.workPage));
        };
        look();
        s.workPage->openTarget(true);
        look();
        s.workPage->openDrawDay(true);
        look();
        s.workPage->openDrawDay(false);
        Q_EMIT s.proposals().explainAsked(1, {OriginKind::now, Dimension::acidity});
        look();
        s.workPage->showVessel("Dunlin");
        s.settle();
        look();
        INFO(all.findings.join('\n').toStdString());
        CHECK(all.findings.isEmpty());
        std::printf("%s\n", all.summary().toUtf8().constData());
    }
    install(*qApp, Appearance::light);
}
