// SPDX-License-Identifier: GPL-3.0-or-later
// The one place where units, paper and colours of the window are chosen.
#pragma once

#include "ui/window/settings.h"

#include <functional>

class QMenu;

namespace staveline::ui {

/// Fills `menu` with checkable choices; `changed` gets the settings with the new choice in.
void addUnitChoices(QMenu& menu, const WindowSettings& now, const std::function<void(const DisplayUnits&)>& changed);
void addAppearanceChoices(QMenu& menu, const WindowSettings& now, const std::function<void(Appearance)>& changed);
void addPaperChoices(QMenu& menu, const WindowSettings& now, const std::function<void(PaperSize)>& changed);

} // namespace staveline::ui
