// SPDX-License-Identifier: GPL-3.0-or-later
// The yeast by name, what it does, and how far it ferments this wort.
#pragma once

#include "ui/brew/binder.h"

#include <QWidget>

class QLabel;

namespace staveline::ui {

class YeastEditor : public QWidget {
    Q_OBJECT
public:
    explicit YeastEditor(Binder& binder, QWidget* parent = nullptr);
    void sync();
    [[nodiscard]] QString words() const;

private:
    RecipeEditorModel& model_;
    QLabel* words_;
};

} // namespace staveline::ui
