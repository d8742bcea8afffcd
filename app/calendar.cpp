// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/commands.h"
#include "app/on_book.h"
#include "desk/json.h"
#include "desk/whole_file.h"

#include <fmt/core.h>

namespace staveline::app {
namespace {

int deliver(const std::string& text, const Options& options) {
    if (options.out == "-") {
        fmt::print("{}", text);
        return 0;
    }
    if (auto written = desk::writeWhole(options.out, text); !written) {
        written.error().path = "/out";
        return complain(written.error(), options);
    }
    fmt::print("{}", options.json ? desk::toJson("file", options.out)
                                  : render(say("app.written").with("file", options.out)) + "\n");
    return 0;
}

} // namespace

int calendar(const Options& options) {
    if (options.json && options.out == "-")
        return complain({FaultKind::input, "/out", say("app.two_answers"), say("app.two_answers.remedy")}, options);
    return onBook(options, book::OpenMode::readOnly, [&](desk::Desk& desk) {
        const auto text = desk.calendar(options.vessel, unitsOf(options));
        return text ? deliver(*text, options) : complain(text.error(), options);
    });
}

} // namespace staveline::app
