// SPDX-License-Identifier: GPL-3.0-or-later
// What tried values do: at once without bands on the calling thread, then with bands and kept up on another.
#pragma once

#include "advice/board.h"
#include "ui/adjust/advice_runner.h"

#include <map>

namespace staveline::ui {

using TriedValues = std::vector<advice::TriedValue>;

struct DeepTrial {
    TriedValues tried;
    advice::Trial trial;
    /// What is to be said at a lever: cautions and findings that it brings by itself.
    std::map<std::string, std::vector<Message>> atLever;
    std::vector<Message> together; ///< findings that only the whole brings
};

class TrialRunner : public QObject {
    Q_OBJECT
public:
    using Whole = std::optional<advice::Setting>;

    explicit TrialRunner(QObject* parent = nullptr);
    ~TrialRunner() override;
    void setJob(const JobPtr& job); ///< null: nothing can be tried
    /// Values only, fast enough for a slider in motion. `whole`: what the values belong to, where it may differ from
    /// them in what no lever moves.
    [[nodiscard]] Result<advice::Trial> atOnce(const TriedValues& tried, const Whole& whole = {});
    /// The same in full, in two steps; the newest request wins.
    void deepen(const TriedValues& tried, const Whole& whole = {});
    [[nodiscard]] bool busy() const { return busy_; }

Q_SIGNALS:
    void deepened(const staveline::ui::DeepTrial& trial);

private:
    struct WorkerBoard; ///< the worker's own board
    void deliver(int question, const Result<DeepTrial>& result, bool last);

    int question_ = 0;
    bool busy_ = false;
    JobPtr job_;
    std::unique_ptr<advice::TryBoard> board_;
    std::shared_ptr<WorkerBoard> workerBoard_;
    LatestWorker worker_; ///< last: it uses all of the above
};

} // namespace staveline::ui
