// SPDX-License-Identifier: GPL-3.0-or-later
// A report for those who mend the program: which program on which machine, and what the check of the book found. No
// name, note, date or figure of the book is in it; what is found is told by table, row and the key of its text.
#pragma once

#include "quantity/fault.h"

#include <string>
#include <vector>

namespace staveline::desk {

class Desk;

struct Machine {
    std::string program; ///< version of Staveline
    std::string system;  ///< "Debian GNU/Linux 12, x86_64"
    std::string parts;   ///< libraries with their versions
};

[[nodiscard]] std::vector<Message> reportOn(const Machine& machine);
[[nodiscard]] std::vector<Message> reportOn(const Desk& desk);          ///< reads every row
[[nodiscard]] std::vector<Message> reportOnRefused(const Fault& fault); ///< a book that cannot be opened
/// One line each, in the language spoken.
[[nodiscard]] std::string reportText(const std::vector<Message>& lines);

} // namespace staveline::desk
