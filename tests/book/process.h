// SPDX-License-Identifier: GPL-3.0-or-later
// The victim: started, heard, killed.
#pragma once

#include <string>
#include <sys/types.h>
#include <vector>

namespace staveline::book {

class Process {
public:
    explicit Process(const std::vector<std::string>& arguments);
    ~Process();
    Process(const Process&) = delete;
    Process& operator=(const Process&) = delete;

    void kill();
    /// Waits for the first whole line.
    void waitForLine();
    /// The whole lines it has said, after its end.
    [[nodiscard]] std::vector<std::string> finish();
    /// After finish(): -1 when it was killed.
    [[nodiscard]] int exitStatus() const { return status_; }

private:
    bool readSome();

    pid_t id_ = -1;
    int pipe_ = -1;
    int status_ = -1;
    std::string heard_;
};

} // namespace staveline::book
