// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <cstddef>

namespace staveline::app {

/// How far long work is, on one line of standard error that is gone when the work is; nothing where no one looks on.
class ProgressLine {
public:
    ProgressLine();
    ~ProgressLine();
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;
    void show(std::size_t done, std::size_t all);

private:
    bool seen_; ///< standard error is a terminal
    bool written_ = false;
    std::chrono::steady_clock::time_point next_;
};

} // namespace staveline::app
