// SPDX-License-Identifier: GPL-3.0-or-later
// A thread that does one thing after the other, in the order asked; nothing that was asked is dropped.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <stop_token>
#include <thread>

namespace staveline::ui {

class TaskQueue {
public:
    using Work = std::function<void()>;

    TaskQueue();
    ~TaskQueue() = default; ///< does what still waits, then joins
    TaskQueue(const TaskQueue&) = delete;
    TaskQueue& operator=(const TaskQueue&) = delete;

    void post(Work work);

private:
    void run(const std::stop_token& end);

    std::mutex mutex_;
    std::condition_variable_any wake_;
    std::deque<Work> waiting_;
    std::jthread thread_; ///< last: it uses all of the above
};

} // namespace staveline::ui
