// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/trial_runner.h"

#include <algorithm>

namespace staveline::ui {

using advice::TrialDepth;

namespace {

bool contains(const std::vector<Message>& messages, const Message& message) {
    return std::find(messages.begin(), messages.end(), message) != messages.end();
}

/// The messages of `all` that are not in `known`, without doubles.
std::vector<Message> beyond(const std::vector<Message>& all, const std::vector<Message>& known) {
    std::vector<Message> fresh;
    for (const Message& message : all)
        if (!contains(known, message) && !contains(fresh, message))
            fresh.push_back(message);
    return fresh;
}

std::vector<Message> said(const advice::Trial& trial) {
    std::vector<Message> all = trial.cautions;
    all.insert(all.end(), trial.findings.begin(), trial.findings.end());
    return all;
}

/// Of the whole setting, its parts those of the levers.
Result<advice::Trial> trialOf(advice::TryBoard& board, const TriedValues& tried, const TrialRunner::Whole& whole,
                              TrialDepth depth, const std::stop_token& stop = {}) {
    auto trial = board.trial(tried, depth, stop);
    if (!trial || !whole || trial->setting == *whole)
        return trial;
    auto all = board.trial(*whole, depth, stop);
    if (all)
        all->parts = std::move(trial->parts);
    return all;
}

} // namespace

/// Used by the worker alone.
struct TrialRunner::WorkerBoard {
    explicit WorkerBoard(JobPtr given) : job(std::move(given)), board(job->input) {}

    void addNotes(DeepTrial& deep) {
        const auto asNow = board.trial(TriedValues{}, TrialDepth::central);
        std::vector<Message> known = asNow ? said(*asNow) : std::vector<Message>{};
        for (const advice::TriedValue& value : deep.tried)
            if (const auto alone = board.trial({value}, TrialDepth::central)) {
                deep.atLever[value.lever] = beyond(said(*alone), known);
                known.insert(known.end(), deep.atLever[value.lever].begin(), deep.atLever[value.lever].end());
            }
        deep.together = beyond(said(deep.trial), known);
    }
    Result<DeepTrial> deep(const TriedValues& tried, const Whole& whole, TrialDepth depth,
                           const std::stop_token& stop) {
        auto trial = trialOf(board, tried, whole, depth, stop);
        if (!trial)
            return fail(trial.error());
        DeepTrial made{tried, *std::move(trial), {}, {}};
        addNotes(made);
        return made;
    }

    JobPtr job;
    advice::TryBoard board;
};

TrialRunner::TrialRunner(QObject* parent) : QObject(parent) {}
TrialRunner::~TrialRunner() = default;

void TrialRunner::setJob(const JobPtr& job) {
    worker_.cancel();
    ++question_;
    busy_ = false;
    job_ = job;
    board_ = job ? std::make_unique<advice::TryBoard>(job->input) : nullptr;
    workerBoard_ = job ? std::make_shared<WorkerBoard>(job) : nullptr;
}

Result<advice::Trial> TrialRunner::atOnce(const TriedValues& tried, const Whole& whole) {
    if (!board_)
        return fail({FaultKind::notPossible, {}, say("advice.fault.cancelled"), say("advice.fault.cancelled.remedy")});
    return trialOf(*board_, tried, whole, TrialDepth::central);
}

void TrialRunner::deepen(const TriedValues& tried, const Whole& whole) {
    if (!workerBoard_)
        return;
    const int question = ++question_;
    busy_ = true;
    worker_.post([this, workerBoard = workerBoard_, tried, whole, question](const std::stop_token& stop) {
        for (const TrialDepth depth : {TrialDepth::next, TrialDepth::settled}) {
            const auto result = workerBoard->deep(tried, whole, depth, stop);
            if (stop.stop_requested())
                return;
            const bool last = depth == TrialDepth::settled || !result;
            QMetaObject::invokeMethod(
                this, [this, question, result, last] { deliver(question, result, last); }, Qt::QueuedConnection);
            if (last)
                return;
        }
    });
}

void TrialRunner::deliver(int question, const Result<DeepTrial>& result, bool last) {
    if (question != question_)
        return;
    busy_ = !last;
    if (result)
        Q_EMIT deepened(*result);
}

} // namespace staveline::ui
