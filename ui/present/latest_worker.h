// SPDX-License-Identifier: GPL-3.0-or-later
// A thread that always works on the newest request: one that waits is replaced, one that runs is asked to stop.
#pragma once

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

namespace staveline::ui {

class LatestWorker {
public:
    using Work = std::function<void(std::stop_token)>;

    LatestWorker();
    ~LatestWorker(); ///< asks the work in hand to stop and joins
    LatestWorker(const LatestWorker&) = delete;
    LatestWorker& operator=(const LatestWorker&) = delete;

    void post(Work work);
    void cancel(); ///< what waits and what runs

private:
    void run(const std::stop_token& end);

    std::mutex mutex_;
    std::condition_variable_any wake_;
    std::optional<Work> next_;
    std::stop_source running_;
    std::jthread thread_; ///< last: it uses all of the above
};

} // namespace staveline::ui
