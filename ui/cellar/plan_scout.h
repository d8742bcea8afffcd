// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a plan would help a vessel: asked of the adviser for one vessel after the other, on a thread of its own.
#pragma once

#include "desk/plan_state.h"
#include "ui/present/latest_worker.h"
#include "ui/present/session.h"

#include <QObject>

#include <deque>
#include <map>

namespace staveline::ui {

[[nodiscard]] QString wordsOf(desk::PlanState state);

class PlanScout : public QObject {
    Q_OBJECT
public:
    explicit PlanScout(Session& session, QObject* parent = nullptr);
    /// In this order; what was asked before and is not answered is dropped.
    void ask(std::deque<facts::VesselName> vessels);
    void forget(); ///< the book changed, or nobody looks: what is known stays until it is asked again
    /// None: not known yet.
    [[nodiscard]] std::optional<desk::PlanState> of(const facts::VesselName& vessel) const;
    [[nodiscard]] bool busy() const { return asked_ || !waiting_.empty(); }

Q_SIGNALS:
    void known(const QString& vessel);

private:
    void next();
    void take(int question, const facts::VesselName& vessel, desk::PlanState state);

    Session& session_;
    std::map<facts::VesselName, desk::PlanState> states_;
    std::deque<facts::VesselName> waiting_;
    int question_ = 0;
    bool asked_ = false;
    LatestWorker worker_; ///< last: it uses all of the above
};

} // namespace staveline::ui
