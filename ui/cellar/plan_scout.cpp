// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/plan_scout.h"

#include <QCoreApplication>

namespace staveline::ui {

using desk::AdviceJob;
using desk::PlanState;

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("PlanScout", words);
}

} // namespace

QString wordsOf(PlanState state) {
    switch (state) {
    case PlanState::tasteFirst:
        return tr("taste first");
    case PlanState::tasteAgain:
        return tr("one more taster");
    case PlanState::wait:
        return tr("wait");
    case PlanState::helps:
        return tr("a plan helps");
    case PlanState::leaveAlone:
        return tr("leave it alone");
    case PlanState::adopted:
        return tr("plan adopted");
    case PlanState::brewed:
        return tr("brewed");
    case PlanState::unsaid:
        break;
    }
    return QStringLiteral("\u2013");
}

PlanScout::PlanScout(Session& session, QObject* parent) : QObject(parent), session_(session) {}

void PlanScout::ask(std::deque<facts::VesselName> vessels) {
    waiting_ = std::move(vessels);
    if (!asked_)
        next();
}

void PlanScout::forget() {
    worker_.cancel();
    ++question_;
    asked_ = false;
    waiting_.clear();
}

std::optional<PlanState> PlanScout::of(const facts::VesselName& vessel) const {
    const auto found = states_.find(vessel);
    return found == states_.end() ? std::nullopt : std::optional(found->second);
}

/// The question is put together here, where the book is; it is answered on the worker.
void PlanScout::next() {
    if (waiting_.empty())
        return;
    const facts::VesselName vessel = std::move(waiting_.front());
    waiting_.pop_front();
    asked_ = true;
    const int question = ++question_;
    const auto answer = [this, question, vessel](PlanState state) {
        QMetaObject::invokeMethod(
            this, [this, question, vessel, state] { take(question, vessel, state); }, Qt::QueuedConnection);
    };
    const auto job = session_.desk().adviceJob({vessel, {}, {}, false});
    const auto known = job ? planState(*job) : std::optional(PlanState::unsaid);
    if (known) {
        answer(*known);
        return;
    }
    worker_.post([asked = std::make_shared<const AdviceJob>(std::move(*job)), answer](const std::stop_token& stop) {
        const auto advice = advise(asked->input, stop);
        if (!stop.stop_requested())
            answer(advice ? desk::planState(*advice) : PlanState::unsaid);
    });
}

void PlanScout::take(int question, const facts::VesselName& vessel, PlanState state) {
    if (question != question_)
        return; // of an older book
    asked_ = false;
    states_[vessel] = state;
    Q_EMIT known(qs(vessel));
    next();
}

} // namespace staveline::ui
