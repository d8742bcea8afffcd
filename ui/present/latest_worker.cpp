// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/latest_worker.h"

#include <utility>

namespace staveline::ui {

LatestWorker::LatestWorker() : thread_([this](const std::stop_token& end) { run(end); }) {}

LatestWorker::~LatestWorker() {
    cancel();
    thread_.request_stop(); // the waiting thread wakes by itself
}

void LatestWorker::post(Work work) {
    {
        const std::scoped_lock lock(mutex_);
        running_.request_stop();
        next_ = std::move(work);
    }
    wake_.notify_one();
}

void LatestWorker::cancel() {
    const std::scoped_lock lock(mutex_);
    running_.request_stop();
    next_.reset();
}

void LatestWorker::run(const std::stop_token& end) {
    std::unique_lock lock(mutex_);
    while (wake_.wait(lock, end, [this] { return next_.has_value(); })) {
        const Work work = *std::exchange(next_, std::nullopt);
        running_ = {};
        const std::stop_token stop = running_.get_token();
        lock.unlock();
        work(stop);
        lock.lock();
    }
}

} // namespace staveline::ui
