// SPDX-License-Identifier: GPL-3.0-or-later
// Runs the program as a script would.
#pragma once

#include "support/catch.h"
#include "support/scratch.h"

#include <array>
#include <cstdio>
#include <string>
#include <sys/wait.h>

namespace staveline::testing {

struct Answer {
    int status = -1;
    std::string out, err;
};

/// A folder to work in and the program beside it.
class Terminal {
public:
    Scratch scratch;

    /// `arguments` as a shell would read them, run in the scratch folder; `before` the program, "ulimit -f 8;".
    Answer run(const std::string& arguments, const std::string& before = "", const std::string& out = "out.txt") {
        const std::string command = "cd '" + scratch.path().string() + "' && " + before + " '" STAVELINE_PROGRAM "' " +
                                    arguments + " >" + out + " 2>err.txt </dev/null";
        const int raw = std::system(command.c_str());
        return {WIFEXITED(raw) ? WEXITSTATUS(raw) : 128 + WTERMSIG(raw), readAll(scratch / "out.txt"),
                readAll(scratch / "err.txt")};
    }
    void write(const std::string& name, const std::string& text) { writeAll(scratch / name, text); }
    /// Runs and expects it to work.
    Answer expect(const std::string& arguments) {
        Answer answer = run(arguments);
        INFO(arguments);
        INFO(answer.out);
        INFO(answer.err);
        CHECK(answer.status == 0);
        return answer;
    }
};

} // namespace staveline::testing
