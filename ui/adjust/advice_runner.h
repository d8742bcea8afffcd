// SPDX-License-Identifier: GPL-3.0-or-later
// Asks the adviser on a thread of its own: first for what the next draw does, then also for what is kept up and for
// the price of every restriction.
#pragma once

#include "advice/advise.h"
#include "desk/advice.h"
#include "desk/desk.h"
#include "ui/present/latest_worker.h"

#include <QObject>

namespace staveline::ui {

using JobPtr = std::shared_ptr<const desk::AdviceJob>;

struct Answer {
    JobPtr job;
    std::shared_ptr<const advice::Advice> advice; ///< null: `fault` says why
    std::optional<Fault> fault;
    bool settled = false;             ///< "if kept up" and prices are in it
    std::vector<Message> wouldChange; ///< with the settled one
};

class AdviceRunner : public QObject {
    Q_OBJECT
public:
    explicit AdviceRunner(QObject* parent = nullptr);
    void ask(const JobPtr& job); ///< an earlier question is dropped
    void cancel();
    [[nodiscard]] bool busy() const { return busy_; }

Q_SIGNALS:
    void answered(const staveline::ui::Answer& answer);
    void ended(bool cancelled); ///< nothing more will come

private:
    void deliver(int question, Answer answer, bool last);

    int question_ = 0;
    bool busy_ = false;
    LatestWorker worker_; ///< last: it uses all of the above
};

} // namespace staveline::ui
