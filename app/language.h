// SPDX-License-Identifier: GPL-3.0-or-later
// In which language the program speaks: said on the command line, chosen in the window, or as the machine is set.
#pragma once

#include "quantity/language.h"

namespace CLI {
class App;
}

namespace staveline::app {

/// Before anything is said or any table read: help and faults of the command line are in this language too.
[[nodiscard]] const Language& languageOf(int argc, const char* const* argv);

/// The help of the command line in the language spoken; its texts are their own keys.
void tellHelpInLanguage(CLI::App& parser);

} // namespace staveline::app
