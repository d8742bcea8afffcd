// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/page.h"

#include "advice/advise.h"
#include "advice/lever.h"
#include "desk/advice.h"
#include "desk/filed.h"
#include "desk/history.h"
#include "desk/ledger.h"
#include "ui/adjust/adopted_note.h"
#include "ui/adjust/decision_panel.h"
#include "ui/adjust/draw_day_page.h"
#include "ui/adjust/explanation_panel.h"
#include "ui/adjust/lever_board.h"
#include "ui/adjust/more_notes.h"
#include "ui/adjust/permissions.h"
#include "ui/adjust/plan_in_view.h"
#include "ui/adjust/stock_list.h"
#include "ui/adjust/target_form.h"
#include "ui/adjust/target_timeline.h"
#include "ui/adjust/total_bar.h"
#include "ui/adjust/verdict_column.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/present/choice_words.h"
#include "ui/present/funk_words.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/steady_scroll.h"

#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>

#include <algorithm>

namespace staveline::ui {

using advice::Proposal;

namespace {

/// Against the last refill: the usual recipe may take back what is forced.
TriedValues valuesOf(const Proposal& proposal) {
    TriedValues values;
    for (const advice::Move& move : proposal.moves) {
        std::erase_if(values, [&](const advice::TriedValue& other) { return other.lever == move.lever; });
        const auto first = std::find_if(proposal.moves.begin(), proposal.moves.end(),
                                        [&](const advice::Move& other) { return other.lever == move.lever; });
        if (!advice::sameValue(first->from, move.to))
            values.push_back({move.lever, move.to});
    }
    return values;
}

bool sameValues(const TriedValues& a, const TriedValues& b) {
    const auto close = [](const advice::TriedValue& x, const advice::TriedValue& y) {
        return x.lever == y.lever && advice::sameValue(x.to, y.to);
    };
    return a.size() == b.size() && std::is_permutation(a.begin(), a.end(), b.begin(), close);
}

/// Spice and horse of the sitting the verdicts rest on: "spice 2.1 ±1.5, horse 4.0 ±1.5, tasted 3 May 2026".
QString tastedSides(const desk::Desk& desk, const desk::AdviceJob& job) {
    const auto sittings = desk.sittings(job.vessel);
    if (!sittings || !job.estimates.tastedOn)
        return {};
    const auto last =
        std::find_if(sittings->begin(), sittings->end(), [&](const desk::Filed<facts::SittingFact>& filed) {
            return filed.fact.learn && filed.fact.sitting.on == *job.estimates.tastedOn;
        });
    const QString words =
        last == sittings->end() ? QString() : sidesWords(funkSides(last->fact.sitting, tasting::builtInSheet()));
    return words.isEmpty() ? words : AdjustPage::tr("%1, tasted %2").arg(words, dayWords(*job.estimates.tastedOn));
}

PlanRank rankOf(int number) {
    if (number == ProposalList::usual)
        return PlanRank::usual;
    return number == 0 ? PlanRank::alone : number == 1 ? PlanRank::best : PlanRank::proposal;
}

} // namespace

void AdjustPage::focusWork() {
    if (firstFill_->isVisible())
        firstFill_->setFocus(Qt::OtherFocusReason);
    else if (drawDayButton_->isChecked())
        drawDay_->tasteButton().setFocus(Qt::OtherFocusReason);
    else if (decision_->tasteButton().isVisible())
        decision_->tasteButton().setFocus(Qt::OtherFocusReason);
    else if (alternativesButton_->isVisible() && !alternativesOpen_)
        alternativesButton_->setFocus(Qt::OtherFocusReason);
    else if (!proposals_->empty() && proposals_->isVisible())
        proposals_->focusChosen();
    else
        targetButton_->setFocus(Qt::OtherFocusReason); // the board would scroll the answer away
}

void AdjustPage::leaveVessel() {
    target_->finishTyping();
    board_->leave();
    job_.reset();
    answer_ = {};
    advice_->cancel();
    trials_->setJob(nullptr);
    trial_.reset();
    touched_ = false;
    alternativesOpen_ = false;
    for (SteadyScroll* area : {whole_, left_, proposalsArea_, explanationArea_})
        area->toTop();
    closeExplanation();
    proposals_->clear();
    proposals_->choose(0);
    decision_->clear();
    notes_->clear();
    total_->clear();
}

void AdjustPage::refresh() {
    const auto summary = session().desk().vessel(vessel());
    const bool holdsBeer = summary && !summary->toFill;
    showEmpty(!holdsBeer);
    if (!holdsBeer)
        return;
    // What is written from here on is about this vessel, also where nothing can be advised on it.
    target_->setVessel(vessel());
    permissions_->setVessel(vessel());
    if (!job_ || job_->vessel != vessel() || job_->revision != session().desk().revision() ||
        readOn_ != session().desk().today())
        readDesk();
    if (!job_)
        return;
    showJob();
    if (answer_.advice && fresh(answer_))
        showAnswer(answer_); // only the units changed
}

/// A new snapshot; the questions about the old one are dropped.
void AdjustPage::readDesk() {
    closeExplanation();
    job_.reset(); // nothing of before can be adopted
    readOn_ = session().desk().today();
    auto job = session().desk().adviceJob({vessel(), {}, {}, true, false, permissions_->mostMoved()});
    middle_->setVisible(job.has_value());
    total_->setVisible(job && !drawDayButton_->isChecked());
    if (!job) {
        advice_->cancel();
        trials_->setJob(nullptr);
        dropStale();
        say(job.error());
        return;
    }
    message_->clear();
    job_ = std::make_shared<const desk::AdviceJob>(*std::move(job));
    trials_->setJob(job_);
    const auto history = session().desk().history(vessel());
    for (const Dimension d : allDimensions) {
        TargetTimelineData& look = timelines_[d];
        look = {};
        look.dimension = d;
        look.window = job_->input.target.windows[d];
        look.tasted = history ? lastTasted(*history, d) : std::vector<TimelinePoint>{};
        look.today = {session().desk().today(), bandOf(job_->estimates.combined[d])};
        look.thisDraw = job_->dates.draw;
        look.nextDraw = job_->dates.nextDraw;
    }
    verdicts_->column(Dimension::funk).setSides(tastedSides(session().desk(), *job_));
    advice_->ask(job_);
}

void AdjustPage::showJob() {
    verdicts_->setVerdicts(job_->estimates.verdicts, session().units());
    decision_->setKnown(*job_);
    target_->refresh();
    stock_->refresh();
    board_->setJob(job_, !session().desk().readOnly());
    showLocked();
    showAdopted();
    if (drawDayButton_->isChecked())
        drawDay_->setVessel(vessel());
    tryValues();
    showWorking();
}

bool AdjustPage::fresh(const Answer& answer) const {
    return job_ && answer.job == job_;
}

void AdjustPage::showAnswer(const Answer& answer) {
    if (!fresh(answer))
        return;
    if (answer.fault) {
        dropStale();
        say(*answer.fault);
        return;
    }
    const bool first = !answer_.advice || answer_.job != answer.job;
    answer_ = answer;
    verdicts_->setVerdicts(answer.advice->verdicts, session().units());
    decision_->setAdvice(answer);
    proposals_->setAnswer(answer);
    notes_->setAnswer(answer);
    if (answer.settled) {
        board_->setPrices(answer.advice->prices);
        stock_->setPrices(answer.advice->prices);
    }
    if (first && !touched_)
        showFirst();
    else
        proposals_->choose(matching(board_->tried()));
    showAdopted();
    showTimelines();
    showPlan();
    showAdoptable();
    showWorking();
}

/// What is decided stays on the board; before a decision, the best proposal.
void AdjustPage::showFirst() {
    if (!job_->open) {
        pick(proposals_->count() > 0 ? 1 : 0);
        return;
    }
    board_->setTried(*job_->open);
    const Proposal* usual = proposals_->proposal(ProposalList::usual);
    proposals_->choose(usual && usual->setting == job_->inUse ? ProposalList::usual : matching(board_->tried()));
    tryValues();
}

/// Of several plans with the same levers the chosen one: what no lever moves may tell them apart. A locked lever is the
/// same on the board whatever the plan.
int AdjustPage::matching(const TriedValues& tried) const {
    const auto unlocked = [&](TriedValues values) {
        std::erase_if(values, [&](const advice::TriedValue& value) {
            const LeverLine* line = board_->line(value.lever);
            return line && line->line().lockedAt;
        });
        return values;
    };
    const auto fits = [&](int number) {
        const Proposal* proposal = proposals_->proposal(number);
        return proposal && sameValues(unlocked(valuesOf(*proposal)), unlocked(tried));
    };
    if (fits(proposals_->chosen()))
        return proposals_->chosen();
    const auto numbers = proposals_->numbers();
    const auto found = std::find_if(numbers.begin(), numbers.end(), fits);
    return found == numbers.end() ? ProposalList::own : *found;
}

std::optional<advice::Setting> AdjustPage::usualInView() const {
    if (matching(board_->tried()) != ProposalList::usual)
        return {};
    return proposals_->proposal(ProposalList::usual)->setting;
}

/// Without a fresh answer: what an older one promised and advised goes, what is tried stays to be adopted.
void AdjustPage::dropStale() {
    if (answer_.advice && fresh(answer_))
        return;
    const bool hadFocus = proposals_->isAncestorOf(focusWidget());
    answer_ = {};
    proposals_->clear();
    decision_->clearAdvice();
    notes_->clear();
    if (job_)
        tryValues();
    if (hadFocus)
        focusWork();
}

void AdjustPage::pick(int number) {
    const Proposal* proposal = proposals_->proposal(number);
    if (!proposal)
        return;
    board_->setTried(valuesOf(*proposal));
    proposals_->choose(number);
    tryValues();
}

void AdjustPage::asNow() {
    if (!job_)
        return;
    touched_ = true;
    board_->setTried({});
    proposals_->choose(ProposalList::own, true); // not the usual recipe, where no lever tells it from leaving alone
    tryValues();
}

/// At once without bands; the rest follows from the other thread.
void AdjustPage::tryValues() {
    const TriedValues tried = board_->tried();
    const int number = matching(tried);
    proposals_->postpone();
    const bool something = !proposals_->empty() || touched_ || !tried.empty();
    if (something && number != proposals_->chosen())
        proposals_->choose(number, true);
    trial_.reset();
    board_->clearFaults();
    message_->clear();
    const auto whole = usualInView();
    if (const auto trial = trials_->atOnce(tried, whole)) {
        showTrial(*trial);
        trials_->deepen(tried, whole);
    } else if (!board_->showFault(trial.error())) {
        say(trial.error());
    }
    showAdoptable();
}

void AdjustPage::showTrial(const advice::Trial& trial) {
    trial_ = trial;
    board_->showTrial(trial);
    total_->setTrial(nameOfTried(), trial);
    showTimelines();
    showPlan();
}

/// The sentence and the moves of what the board shows.
void AdjustPage::showPlan() {
    if (!job_)
        return;
    const int number = matching(board_->tried());
    const Proposal* proposal = answer_.advice && fresh(answer_) ? proposals_->proposal(number) : nullptr;
    if (proposal) {
        decision_->setPlan(planInView(answer_, *proposal, rankOf(number), session().units()));
    } else if (trial_ && proposals_->chosen() == ProposalList::own) {
        decision_->setPlan(planInView(*job_, *trial_, board_->movesOf(*trial_), session().units()));
    }
}

/// A brewed refill is shown as it stands.
void AdjustPage::showLocked() {
    locked_->say(MessageLabel::Weight::note, job_->brewed ? whyNotAdopt(session().desk(), job_->brewed) : QString());
    proposals_->setLocked(job_->brewed.has_value());
}

/// Another plan that would come first by now.
QString AdjustPage::firstNow() const {
    if (!adoptedHere_ || !job_->open || job_->brewed || !answer_.advice || !fresh(answer_))
        return {};
    const Proposal* first = proposals_->proposal(proposals_->count() > 0 ? 1 : 0);
    if (sameValues(valuesOf(*first), *job_->open))
        return {};
    return text(staveline::say("ui.adjust.since.first").with("plan", toStd(inSentence(session().words(first->title)))));
}

/// What is decided, and what has become known since; the alternatives fold.
void AdjustPage::showAdopted() {
    const QString words = adoptedWords(session().desk(), *job_);
    adoptedHere_ = !words.isEmpty();
    QString since;
    if (adoptedHere_ && job_->open)
        if (const auto trial = trials_->atOnce(*job_->open, job_->inUse))
            since = sinceAdopted(session(), *job_, *trial);
    if (const QString first = firstNow(); !first.isEmpty())
        since += (since.isEmpty() ? QString() : QStringLiteral(" ")) + first;
    decision_->setAdopted(words, since);
    foldAlternatives();
}

void AdjustPage::foldAlternatives() {
    const bool choice = !decision_->neverTasted();
    alternativesButton_->setVisible(choice && adoptedHere_);
    alternativesButton_->setText(alternativesOpen_ ? tr("Fold the alternatives") : tr("Show the alternatives"));
    const QWidget* focused = focusWidget();
    proposals_->setVisible(choice);
    proposals_->setFolded(adoptedHere_ && !alternativesOpen_);
    if (focused && proposals_->isAncestorOf(focused) && !focused->isVisible())
        focusWork();
}

void AdjustPage::openAlternatives(bool open) {
    alternativesOpen_ = open;
    foldAlternatives();
}

void AdjustPage::resizeEvent(QResizeEvent* event) {
    WorkPage::resizeEvent(event);
    fitRoom();
}

void AdjustPage::showDeep(const DeepTrial& deep) {
    if (!sameValues(deep.tried, board_->tried()))
        return;
    showTrial(deep.trial);
    board_->showNotes(deep);
    total_->setTogether(deep.together);
    showAdoptable();
    showWorking();
}

QString AdjustPage::nameOfTried() const {
    const int number = matching(board_->tried());
    if (number == ProposalList::usual)
        return sentenceCase(usualName());
    return board_->tried().empty() ? tr("Current settings") : sentenceCase(choiceName(number));
}

void AdjustPage::showTimelines() {
    const TriedValues tried = board_->tried();
    const bool fromAnswer = answer_.advice && fresh(answer_);
    const Proposal* alone = fromAnswer ? &answer_.advice->leaveAlone : nullptr;
    const bool moves = !sameValues(tried, alone ? valuesOf(*alone) : board_->forced());
    const bool differs = trial_ && (moves || usualInView());
    for (const Dimension d : allDimensions) {
        timelines_[d].alone = alone ? std::optional(forecastBandsOf(*alone, answer_.settled)[d]) : std::nullopt;
        timelines_[d].tried = differs ? std::optional(forecastBandsOf(*trial_)[d]) : std::nullopt;
        timelines_[d].triedName = differs ? nameOfTried() : QString();
    }
    legend_->setTriedName(differs ? inSentence(nameOfTried()) : QString());
    verdicts_->setTimelines(timelines_);
}

void AdjustPage::showAdoptable() {
    if (!job_)
        return;
    const int chosen = proposals_->chosen();
    const bool proposal = !proposals_->empty() && fresh(answer_) && chosen != ProposalList::own;
    const bool decided = job_->open && sameValues(*job_->open, board_->tried());
    const bool ownReady =
        chosen == ProposalList::own && !decided && trial_ && trial_->depth != advice::TrialDepth::central;
    QString why = whyNotAdopt(session().desk(), job_->brewed);
    if (const LeverLine* slip = board_->unusable(); slip && why.isEmpty())
        why = text(staveline::say("ui.adjust.adopt.slip").with("lever", slip->line().row.name));
    if (why.isEmpty() && !proposal && !ownReady)
        why = own(busy() ? "ui.adjust.adopt.working" : "ui.adjust.adopt.nothing");
    total_->setAdoptable(why.isEmpty() && (proposal || ownReady), why, !locked_->words().isEmpty());
}

/// Nothing is written while something stands against it; that is said, and a slip is gone to.
void AdjustPage::refuseAdopt() {
    if (total_->whyNot().isEmpty())
        return;
    Q_EMIT session().said(total_->whyNot());
    if (LeverLine* slip = board_->unusable()) {
        slip->complain();
        left_->ensureWidgetVisible(slip->number(), 0, lines(*this, 1.5));
    }
}

void AdjustPage::adopt() {
    if (drawDayButton_->isChecked()) { // what would be adopted is out of sight
        openDrawDay(false);
        Q_EMIT session().said(own("ui.adjust.adopt.look"));
        return;
    }
    if (!total_->adoptButton().isEnabled()) {
        refuseAdopt();
        return;
    }
    const QString name = nameOfTried();
    const bool byButton = total_->adoptButton().hasFocus(); // which is greyed when all is done
    touched_ = false;
    alternativesOpen_ = false;
    left_->toTop();
    if (const auto done = adoptChosen())
        Q_EMIT session().said(tr("Adopted: %1").arg(name));
    else
        say(done.error());
    if (byButton && !total_->adoptButton().isEnabled())
        focusWork();
}

Result<desk::Chosen> AdjustPage::adoptChosen() {
    const int chosen = proposals_->chosen();
    if (chosen == ProposalList::own)
        return session().adopt(*job_, trial_->setting);
    if (chosen == ProposalList::usual) // as it is written, also where no set of levers makes it
        return session().adopt(*job_, proposals_->proposal(chosen)->setting);
    return session().choose(*job_, *answer_.advice, chosen);
}

void AdjustPage::openTarget(bool open) {
    targetButton_->setChecked(open);
    target_->setVisible(open);
    if (open)
        openDrawDay(false);
    if (!open || !isVisible())
        return;
    left_->toTop();
    target_->focusFirst();
}

void AdjustPage::openDrawDay(bool open) {
    drawDayButton_->setChecked(open);
    if (open && job_)
        drawDay_->setVessel(vessel());
    middle_->setCurrentIndex(open ? 1 : 0);
    total_->setVisible(!open);
}

void AdjustPage::explainNumber(int proposal, int move, const Origin& origin) {
    if (!answer_.advice)
        return;
    asker_ = focusWidget();
    right_->setCurrentIndex(1);
    explanation_->open(answer_, std::max(proposal, 0), move, origin);
    explanationArea_->toTop();
}

void AdjustPage::closeExplanation() {
    const bool hadFocus = explanation_->isAncestorOf(focusWidget());
    right_->setCurrentIndex(0);
    if (hadFocus && asker_ && asker_->isVisible())
        asker_->setFocus(Qt::OtherFocusReason);
    else if (hadFocus)
        focusWork();
}

int AdjustPage::mostMoved() const {
    return permissions_->mostMoved();
}

void AdjustPage::setMostMoved(int levers) {
    permissions_->setMostMoved(levers);
}

/// Of the same book, with other bounds.
void AdjustPage::askAnew() {
    if (!job_)
        return;
    readDesk();
    if (job_)
        showJob();
}

void AdjustPage::cancel() {
    advice_->cancel();
}

void AdjustPage::showWorking() {
    const bool works = advice_->busy();
    working_->setText(works ? own("ui.adjust.working") : QString());
    decision_->setWaiting(working_->text());
    cancel_->setText(works ? tr("Stop") : tr("Ask again"));
    cancel_->setVisible(works || !answer_.advice || !fresh(answer_) || !answer_.settled);
}

void AdjustPage::endWork(bool cancelled) {
    if (cancelled)
        dropStale();
    showWorking();
    if (cancelled) {
        working_->setText(own("ui.adjust.cancelled"));
        decision_->setWaiting(working_->text());
    }
    showAdoptable();
}

void AdjustPage::say(const Fault& fault) {
    message_->say(MessageLabel::Weight::fault, session().words(fault));
}

} // namespace staveline::ui
