// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace staveline::testing {

/// Warnings of Qt so far that are not on the list of known ones.
[[nodiscard]] int unexpectedWarnings();

} // namespace staveline::testing
