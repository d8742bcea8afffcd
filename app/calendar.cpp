// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/commands.h"
#include "app/on_book.h"
#include "desk/json.h"

namespace staveline::app {

int calendar(const Options& options) {
    if (options.json && options.out == "-")
        return complain({FaultKind::input, "/out", say("app.two_answers"), say("app.two_answers.remedy")}, options);
    return onBook(options, book::OpenMode::readOnly, [&](desk::Desk& desk) {
        const auto text = desk.calendar(options.vessel, unitsOf(options));
        return text ? deliver(*text, options) : complain(text.error(), options);
    });
}

} // namespace staveline::app
