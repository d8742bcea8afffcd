// SPDX-License-Identifier: GPL-3.0-or-later
// A verdict in one word; its shape is in the table of `ui/widgets/glyph.h`.
#pragma once

#include "ui/present/score_words.h"
#include "ui/widgets/theme.h"

#include <QString>

namespace staveline::ui {

[[nodiscard]] QString wordOf(tasting::VerdictKind kind); ///< "move"

} // namespace staveline::ui
