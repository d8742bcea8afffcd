// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/commands.h"

#include <functional>

namespace staveline::app {

[[nodiscard]] desk::Clock clockOf(const Options& options);

/// A command on a book: opens it, looks the whole of it over, then does the work; says on standard error what is wrong
/// with the book. A script sees no banner, so damage makes the exit status 3 whatever the work answered, and whether it
/// was there before or was found while the work read. A damaged book is open for reading only.
int onBook(const Options& options, book::OpenMode mode, const std::function<int(desk::Desk&)>& work);

/// Of a file, or of standard input for "-".
[[nodiscard]] Result<std::string> readFile(const std::string& path);
/// Text or bytes to the file of --out, or to standard output for "-"; says where. The exit status.
int deliver(const std::string& text, const Options& options);

} // namespace staveline::app
