// SPDX-License-Identifier: GPL-3.0-or-later
// What can be chosen of units, paper and colours, once for the menus and the preferences.
#pragma once

#include "ui/window/settings.h"

#include <functional>

class QMenu;

namespace staveline::ui {

/// Words, with the mark of their key, and what they stand for.
template <class Value> using Choices = std::vector<std::pair<QString, Value>>;
[[nodiscard]] Choices<DisplayUnits::Volume> volumeChoices();
[[nodiscard]] Choices<DisplayUnits::Temperature> temperatureChoices();
[[nodiscard]] Choices<DisplayUnits::Gravity> gravityChoices();
[[nodiscard]] Choices<DisplayUnits::Colour> colourChoices();
[[nodiscard]] Choices<DisplayUnits::Pressure> pressureChoices();
[[nodiscard]] Choices<Appearance> appearanceChoices();
[[nodiscard]] Choices<PaperSize> paperChoices();
[[nodiscard]] Choices<QString> languageChoices();

/// Fills `menu` with checkable choices; `changed` gets the settings with the new choice in. `now` outlives the menu,
/// which shows what is in use whenever it opens.
void addUnitChoices(QMenu& menu, const WindowSettings& now, const std::function<void(const DisplayUnits&)>& changed);
void addAppearanceChoices(QMenu& menu, const WindowSettings& now, const std::function<void(Appearance)>& changed);
void addLanguageChoices(QMenu& menu, const WindowSettings& now, const std::function<void(const QString&)>& changed);
void addPaperChoices(QMenu& menu, const WindowSettings& now, const std::function<void(PaperSize)>& changed);

} // namespace staveline::ui
