// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/process.h"

#include "support/catch.h"

#include <csignal>
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

namespace staveline::book {

namespace {

[[noreturn]] void become(std::vector<std::string>& arguments, int output) {
    std::vector<char*> pointers;
    pointers.reserve(arguments.size() + 1);
    for (std::string& argument : arguments)
        pointers.push_back(argument.data());
    pointers.push_back(nullptr);
    ::dup2(output, STDOUT_FILENO);
    ::execv(pointers[0], pointers.data());
    std::_Exit(127);
}

} // namespace

Process::Process(const std::vector<std::string>& arguments) {
    std::vector<std::string> command{STAVELINE_VICTIM};
    command.insert(command.end(), arguments.begin(), arguments.end());
    int ends[2];
    REQUIRE(::pipe2(ends, O_CLOEXEC) == 0);
    id_ = ::fork();
    REQUIRE(id_ >= 0);
    if (id_ == 0)
        become(command, ends[1]);
    ::close(ends[1]);
    pipe_ = ends[0];
}

Process::~Process() {
    if (id_ > 0) {
        kill();
        static_cast<void>(finish());
    }
}

void Process::kill() {
    ::kill(id_, SIGKILL);
}

bool Process::readSome() {
    char buffer[4096];
    const auto count = ::read(pipe_, buffer, sizeof buffer);
    if (count <= 0)
        return false;
    heard_.append(buffer, static_cast<std::size_t>(count));
    return true;
}

void Process::waitForLine() {
    while (heard_.find('\n') == std::string::npos && readSome()) {
    }
}

std::vector<std::string> Process::finish() {
    while (readSome()) {
    }
    ::close(pipe_);
    int status = 0;
    ::waitpid(id_, &status, 0);
    id_ = -1;
    status_ = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    std::vector<std::string> lines;
    for (std::size_t at = 0, end = 0; (end = heard_.find('\n', at)) != std::string::npos; at = end + 1)
        lines.push_back(heard_.substr(at, end - at));
    return lines;
}

} // namespace staveline::book
