// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/progress.h"

#include "quantity/text.h"

#include <cstdio>
#include <fmt/core.h>
#include <unistd.h>

namespace staveline::app {
namespace {

// Short work says nothing, long work nothing that cannot be read.
constexpr auto pause = std::chrono::milliseconds(250);

} // namespace

ProgressLine::ProgressLine() : seen_(isatty(STDERR_FILENO) == 1), next_(std::chrono::steady_clock::now() + pause) {}

ProgressLine::~ProgressLine() {
    if (written_)
        fmt::print(stderr, "\r\033[K");
}

void ProgressLine::show(std::size_t done, std::size_t all) {
    if (!seen_ || std::chrono::steady_clock::now() < next_)
        return;
    fmt::print(stderr, "\r{}\033[K",
               render(say("app.progress")
                          .with("done", static_cast<std::int64_t>(done))
                          .with("all", static_cast<std::int64_t>(all))));
    std::fflush(stderr);
    written_ = true;
    next_ = std::chrono::steady_clock::now() + pause;
}

} // namespace staveline::app
