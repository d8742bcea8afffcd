// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/plan_in_view.h"

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

std::string lowerFirst(const Message& title, const DisplayUnits& units) {
    std::string words = render(title, units);
    if (!words.empty() && words.front() >= 'A' && words.front() <= 'Z')
        words.front() = static_cast<char>(words.front() - 'A' + 'a');
    return words;
}

Message called(const char* key, const Message& title, const DisplayUnits& units) {
    return say(key).with("plan", lowerFirst(title, units));
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

PlannedMove moveInView(const advice::Move& move, bool settled, bool linked, const desk::AdviceJob& job,
                       const DisplayUnits& units) {
    const auto value = [&](const advice::LeverValue& at) {
        return render(advice::valueText(move.lever, at, *job.pantry), units);
    };
    Message change = say("ui.adjust.move")
                         .with("from", value(move.from))
                         .with("to", value(move.to), linked ? Origin(OriginKind::moveTo) : Origin());
    return {nameInView(move, job), std::move(change),
            move.next ? effectWords(*move.next, settled ? move.settled : std::nullopt)
                      : tr("its part is not known by itself")};
}

std::vector<Message> missingOf(const std::vector<Message>& said) {
    std::vector<Message> missing;
    std::copy_if(said.begin(), said.end(), std::back_inserter(missing), [](const Message& message) {
        return message.key == "advice.limit.notAtHand" || message.key == "advice.note.replaced";
    });
    return missing;
}

/// Why a plan that is not the best stands in view: it does not pretend to be.
Message whyAlone(const advice::Advice& advice, const DisplayUnits& units) {
    if (advice.proposals.empty())
        return advice.leaveAlone.why;
    return called("ui.adjust.why.behind", advice.proposals.front().title, units);
}

} // namespace

QString effectWords(const Scores& next, const std::optional<Scores>& settled) {
    QStringList parts;
    for (const Dimension d : allDimensions) {
        const bool counts = advice::willBeTasted(next[d]) || (settled && advice::willBeTasted((*settled)[d]));
        if (!counts)
            continue;
        const QString now = tr("%1 %2 next").arg(nameOf(d).toLower(), changeWords(next[d]));
        parts << (settled ? tr("%1, %2 over the years").arg(now, changeWords((*settled)[d])) : now);
    }
    return parts.isEmpty() ? tr("too little to taste by itself") : parts.join(QStringLiteral("; "));
}

PlanInView planInView(const Answer& answer, const Proposal& proposal, PlanRank rank, const DisplayUnits& units) {
    PlanInView plan;
    const bool linked = rank != PlanRank::usual;
    switch (rank) {
    case PlanRank::alone:
        plan.sentence = say("ui.adjust.decision.alone");
        plan.why = whyAlone(*answer.advice, units);
        break;
    case PlanRank::usual:
        plan.sentence = called("ui.adjust.decision.plan", proposal.title, units);
        plan.why = plainly(proposal.why, units);
        break;
    case PlanRank::proposal:
        plan.sentence = called("ui.adjust.decision.plan", proposal.title, units);
        plan.why = proposal.why;
    }
    for (const advice::Move& move : proposal.moves)
        plan.moves.push_back(moveInView(move, answer.settled, linked, *answer.job, units));
    plan.missing = missingOf(proposal.limits);
    for (const Message& replaced : missingOf(answer.advice->notes))
        plan.missing.push_back(replaced);
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
    plan.missing = missingOf(trial.findings);
    return plan;
}

Message oneMoreTaster(const advice::Advice& advice, const advice::AdviceInput& input) {
    if (const auto d = advice.tasting.dimension)
        return say("advice.note." + std::string(name(*d)) + ".oneMore");
    const bool canHelp = std::any_of(allDimensions.begin(), allDimensions.end(),
                                     [&](Dimension d) { return input.seen[d] && !input.tastedToday[d]; });
    return canHelp && !advice.faultFirst ? say("ui.adjust.no_taster") : Message{};
}

bool isSaidByDecision(const Message& note) {
    return note.key.ends_with(".oneMore") || note.key.starts_with("advice.note.meanwhile.") ||
           note.key == "advice.note.titrate" || note.key == "advice.note.tasteFirst" ||
           note.key == "advice.note.replaced" || note.key.starts_with("advice.note.fault") ||
           note.key == "advice.note.nothingBetter";
}

} // namespace staveline::ui
