// SPDX-License-Identifier: GPL-3.0-or-later
// What a brewer can do, by version: the file of changes, in the language of the window.
#pragma once

#include <QString>

namespace staveline::ui {

[[nodiscard]] QString programVersion(); ///< "0.1.0"
/// The part of a file of changes (Markdown, a heading "## VERSION" a version) that is later than `version`; all of the
/// versions for an empty one.
[[nodiscard]] QString newsSince(const QString& version, const QString& changes);
[[nodiscard]] QString changesFile(); ///< Markdown
/// Whether the program was another one when it was used last; `seen` empty: it never was.
[[nodiscard]] bool isUpdate(const QString& seen);

} // namespace staveline::ui
