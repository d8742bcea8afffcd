// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/plan_in_view.h"

#include "advice/notes.h"
#include "advice/reasons.h"
#include "ui/present/score_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace staveline::ui {

using advice::Proposal;

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("PlanInView", source);
}

Message called(const char* key, const Message& title, const DisplayUnits& units) {
    return say(key).with("plan", toStd(inSentence(text(title, units))));
}

/// Without links: of what no explanation is kept.
Message plainly(const Message& message, const DisplayUnits& units) {
    return say("desk.plain").with("text", render(message, units));
}

QString leverName(const std::string& id) {
    for (const advice::LeverRow& row : advice::builtInLevers())
        if (row.id == id)
            return sentenceCase(qs(row.name));
    return qs(id);
}

/// A forced move says what forces it.
QString nameInView(const advice::Move& move, const desk::AdviceJob& job) {
    const QString name = leverName(move.lever);
    if (!move.forced)
        return name;
    const bool locked = std::any_of(job.input.locks.begin(), job.input.locks.end(),
                                    [&](const advice::LeverLock& lock) { return lock.lever == move.lever; });
    return locked ? tr("%1 (locked)").arg(name) : tr("%1 (what it was is not at hand)").arg(name);
}

bool counts(Dimension d, const Scores& next, const std::optional<Scores>& settled) {
    return advice::willBeTasted(next[d]) || (settled && advice::willBeTasted((*settled)[d]));
}

PlannedMove moveInView(const advice::Move& move, bool settled, bool linked, const desk::AdviceJob& job,
                       const DisplayUnits& units) {
    const auto value = [&](const advice::LeverValue& at) {
        return render(advice::valueText(move.lever, at, *job.pantry), units);
    };
    const auto minutes = std::find_if(move.wording.arguments.begin(), move.wording.arguments.end(),
                                      [](const Argument& argument) { return argument.name == "minutes"; });
    const bool timed = minutes != move.wording.arguments.end(); // a rest at another temperature lasts as long
    Message change = say(timed ? "ui.adjust.move.timed" : "ui.adjust.move")
                         .with("from", value(move.from))
                         .with("to", value(move.to), linked ? Origin(OriginKind::moveTo) : Origin());
    if (timed)
        change.arguments.push_back(*minutes);
    if (!move.next)
        return {nameInView(move, job), std::move(change), tr("its part is not known by itself"), false};
    const auto kept = settled ? move.settled : std::nullopt;
    const bool tasted = std::any_of(allDimensions.begin(), allDimensions.end(),
                                    [&](Dimension d) { return counts(d, *move.next, kept); });
    return {nameInView(move, job), std::move(change), effectWords(*move.next, kept), tasted};
}

std::vector<Message> notAtHandIn(const advice::Setting& setting, const desk::AdviceJob& job) {
    return advice::notAtHand(setting, {*job.pantry, job.input.unavailable});
}

/// What stands in for what is not at hand.
std::vector<Message> replacedIn(const desk::AdviceJob& job) {
    const auto baseline = advice::prepare(job.input);
    return baseline ? baseline->notes : std::vector<Message>{};
}

std::vector<Message> without(std::vector<Message> all, const std::vector<Message>& said) {
    std::erase_if(all, [&](const Message& each) { return std::find(said.begin(), said.end(), each) != said.end(); });
    return all;
}

/// Why a plan that is not the best stands in view: it does not pretend to be.
Message whyAlone(const advice::Advice& advice, const DisplayUnits& units) {
    if (advice.proposals.empty())
        return advice.leaveAlone.why;
    const char* key = advice.leaveAlone.moves.empty() ? "ui.adjust.why.behind" : "ui.adjust.why.behind.forced";
    return called(key, advice.proposals.front().title, units);
}

} // namespace

QString effectWords(const Scores& next, const std::optional<Scores>& settled) {
    QStringList parts;
    for (const Dimension d : allDimensions) {
        if (!counts(d, next, settled))
            continue;
        const QString now = tr("%1 %2 next").arg(inSentence(nameOf(d)), changeWords(next[d]));
        parts << (settled ? tr("%1, %2 over the years").arg(now, changeWords((*settled)[d])) : now);
    }
    if (parts.isEmpty()) // nothing is said of years that are not worked out yet
        return settled ? tr("too small to taste by itself") : tr("too small to taste next");
    return parts.join(QStringLiteral("; "));
}

PlanInView planInView(const Answer& answer, const Proposal& proposal, PlanRank rank, const DisplayUnits& units) {
    PlanInView plan;
    const bool linked = rank != PlanRank::usual;
    switch (rank) {
    case PlanRank::alone:
        plan.sentence = say("ui.adjust.decision.alone");
        if (answer.advice->proposals.empty())
            plan.meanwhile = say("ui.adjust.decision.meanwhile.alone");
        plan.why = whyAlone(*answer.advice, units);
        break;
    case PlanRank::usual:
        plan.sentence = called("ui.adjust.decision.plan", proposal.title, units);
        plan.why = plainly(proposal.why, units);
        break;
    case PlanRank::best:
        plan.meanwhile = called("ui.adjust.decision.meanwhile.plan", proposal.title, units);
        [[fallthrough]];
    case PlanRank::proposal:
        plan.sentence = called("ui.adjust.decision.plan", proposal.title, units);
        plan.why = proposal.why;
    }
    for (const advice::Move& move : proposal.moves)
        plan.moves.push_back(moveInView(move, answer.settled, linked, *answer.job, units));
    plan.missing = notAtHandIn(proposal.setting, *answer.job);
    for (Message& replaced : replacedIn(*answer.job))
        plan.missing.push_back(std::move(replaced));
    return plan;
}

PlanInView planInView(const desk::AdviceJob& job, const advice::Trial& trial, const std::vector<advice::Move>& moves,
                      const DisplayUnits& units) {
    PlanInView plan;
    plan.sentence = moves.empty() ? say("ui.adjust.decision.as_now")
                                  : called("ui.adjust.decision.tried", advice::titleOf(moves), units);
    plan.why = say("ui.adjust.why.tried");
    for (const advice::Move& move : moves)
        plan.moves.push_back(moveInView(move, trial.depth == advice::TrialDepth::settled, false, job, units));
    plan.missing = notAtHandIn(trial.setting, job);
    return plan;
}

Message oneMoreTaster(const advice::Advice& advice, const advice::AdviceInput& input) {
    if (const auto d = advice.tasting.dimension)
        return say("advice.note." + std::string(name(*d)) + (input.tastedThisCycle[*d] ? ".oneMore" : ".taste"));
    const bool canHelp = std::any_of(allDimensions.begin(), allDimensions.end(),
                                     [&](Dimension d) { return input.seen[d] && !input.tastedToday[d]; });
    if (!canHelp || advice.faultFirst)
        return {};
    const auto& tasted = input.tastedThisCycle.values;
    const bool again = std::any_of(tasted.begin(), tasted.end(), [](bool each) { return each; });
    return say(again ? "ui.adjust.no_taster" : "ui.adjust.no_tasting");
}

std::vector<Message> notesBeside(const Answer& answer) {
    const advice::AdviceInput& input = answer.job->input;
    auto said = advice::decisionNotes(input, advice::prepare(input).value_or(advice::Baseline{}), *answer.advice);
    said.push_back(say("advice.note.nothingBetter")); // leaving it alone says why
    return without(answer.advice->notes, said);
}

std::vector<Message> limitsBeside(const Answer& answer, const Proposal& proposal) {
    return without(proposal.limits, notAtHandIn(proposal.setting, *answer.job));
}

} // namespace staveline::ui
