// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/report.h"
#include "app/on_book.h"

#include <sys/utsname.h>

namespace staveline::app {
namespace {

std::string systemName() {
    utsname names{};
    if (uname(&names) != 0)
        return {};
    return std::string(names.sysname) + " " + names.release + ", " + names.machine;
}

void tellBook(const Options& options, std::vector<Message>& lines) {
    if (options.book.empty()) {
        lines.push_back(say("desk.report.no_book"));
        return;
    }
    const auto desk = desk::Desk::open(options.book, clockOf(options), book::OpenMode::readOnly);
    const auto found = desk ? desk::reportOn(**desk) : desk::reportOnRefused(desk.error());
    lines.insert(lines.end(), found.begin(), found.end());
}

} // namespace

/// Of a book that does not open too: that is what most reports are for.
int report(const Options& options) {
    auto lines = desk::reportOn(desk::Machine{STAVELINE_VERSION, systemName(), "command line"});
    tellBook(options, lines);
    Options to = options;
    if (to.out.empty())
        to.out = "-";
    return deliver(desk::reportText(lines), to);
}

} // namespace staveline::app
