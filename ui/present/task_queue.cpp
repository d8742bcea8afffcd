// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/task_queue.h"

#include <utility>

namespace staveline::ui {

TaskQueue::TaskQueue() : thread_([this](const std::stop_token& end) { run(end); }) {}

void TaskQueue::post(Work work) {
    {
        const std::scoped_lock lock(mutex_);
        waiting_.push_back(std::move(work));
    }
    wake_.notify_one();
}

void TaskQueue::run(const std::stop_token& end) {
    std::unique_lock lock(mutex_);
    while (wake_.wait(lock, end, [this] { return !waiting_.empty(); })) {
        const Work work = std::move(waiting_.front());
        waiting_.pop_front();
        lock.unlock();
        work();
        lock.lock();
    }
}

} // namespace staveline::ui
