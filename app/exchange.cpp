// SPDX-License-Identifier: GPL-3.0-or-later
// The whole book as a folder, and a book of such a folder.
#include "app/commands.h"
#include "app/on_book.h"
#include "app/progress.h"
#include "desk/folder.h"
#include "desk/json.h"

#include <fmt/core.h>

namespace staveline::app {

using desk::Desk;

int exportBook(const Options& options) {
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) {
        auto written = [&]() -> Result<void> {
            ProgressLine line;
            auto files =
                desk.exported(unitsOf(options), [&](std::size_t done, std::size_t all) { line.show(done, all); });
            return files ? desk::writeFolder(options.out, *files) : Result<void>(fail(files.error()));
        }();
        if (!written)
            return complain(written.error(), options);
        fmt::print("{}", options.json ? desk::toJson("folder", options.out)
                                      : render(say("app.written").with("file", options.out)) + "\n");
        return 0;
    });
}

int bookFrom(const Options& options) {
    auto made = desk::bookFromFolder(options.book, options.from, clockOf(options));
    if (!made)
        return complain(made.error(), options);
    fmt::print("{}", options.json ? desk::toJson("book", options.book)
                                  : render(say("app.made").with("file", options.book)) + "\n");
    return 0;
}

} // namespace staveline::app
