// SPDX-License-Identifier: GPL-3.0-or-later
// Where a file lies, as a reader knows it.
#pragma once

#include <QString>

namespace staveline::ui {

/// The folder of a file, "~/beer" below one's own; books of one name are told apart by it.
[[nodiscard]] QString folderWords(const QString& file);

} // namespace staveline::ui
