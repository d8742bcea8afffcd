// SPDX-License-Identifier: GPL-3.0-or-later
// Files for window and command line, by the same writer as the book's own copies.
#pragma once

#include "book/whole_file.h"

namespace staveline::desk {

using book::writeWhole;

} // namespace staveline::desk
