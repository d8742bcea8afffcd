// SPDX-License-Identifier: GPL-3.0-or-later
// The window's front door. No Qt headers: the program that starts it needs none.
#pragma once

#include "desk/desk.h"

#include <filesystem>
#include <optional>
#include <string>

namespace staveline::ui {

/// Whether a window could be shown here.
[[nodiscard]] bool hasDisplay();

/// Code of the language chosen in the window; empty: as the desktop.
[[nodiscard]] std::string chosenLanguage();

/// Shows the window until it is closed; the program's exit status. Without `book` the last session comes back, or the
/// first page when there was none.
int runWindow(int argc, char** argv, const std::optional<std::filesystem::path>& book,
              desk::Clock clock = desk::systemToday);

} // namespace staveline::ui
