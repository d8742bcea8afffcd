// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/advice_runner.h"
#include "advice/explain.h"

namespace staveline::ui {
namespace {

Answer answerOf(const JobPtr& job, bool settled, const std::stop_token& stop) {
    advice::AdviceInput input = job->input;
    input.withSettled = settled;
    Answer answer{job, nullptr, {}, settled, {}};
    if (auto advice = advise(input, stop))
        answer.advice = std::make_shared<const advice::Advice>(*std::move(advice));
    else
        answer.fault = advice.error();
    return answer;
}

} // namespace

AdviceRunner::AdviceRunner(QObject* parent) : QObject(parent) {}

void AdviceRunner::ask(const JobPtr& job) {
    const int question = ++question_;
    busy_ = true;
    worker_.post([this, job, question](const std::stop_token& stop) {
        const auto send = [&](Answer answer, bool last) {
            if (!stop.stop_requested())
                QMetaObject::invokeMethod(
                    this, [this, question, answer, last] { deliver(question, answer, last); }, Qt::QueuedConnection);
        };
        Answer quick = answerOf(job, false, stop);
        const bool failed = quick.fault.has_value();
        send(std::move(quick), failed);
        if (failed || stop.stop_requested())
            return;
        Answer full = answerOf(job, true, stop);
        if (!stop.stop_requested())
            full.wouldChange = whatWouldChange(job->input);
        send(std::move(full), true);
    });
}

void AdviceRunner::cancel() {
    if (!busy_)
        return;
    worker_.cancel();
    ++question_;
    busy_ = false;
    Q_EMIT ended(true);
}

void AdviceRunner::deliver(int question, Answer answer, bool last) {
    if (question != question_)
        return; // of an older book, or cancelled
    busy_ = !last;
    Q_EMIT answered(answer);
    if (last)
        Q_EMIT ended(false);
}

} // namespace staveline::ui
