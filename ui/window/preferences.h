// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that is a matter of taste, in one place. A choice holds at once; there is nothing to confirm.
#pragma once

#include "ui/window/settings.h"

#include <QDialog>

namespace staveline::ui {

class Preferences : public QDialog {
    Q_OBJECT
public:
    explicit Preferences(const WindowSettings& now, QWidget* parent = nullptr);

Q_SIGNALS:
    void unitsChosen(const staveline::DisplayUnits& units);
    void paperChosen(staveline::ui::PaperSize size);
    void languageChosen(const QString& code);
    void appearanceChosen(staveline::ui::Appearance appearance);
};

} // namespace staveline::ui
