// SPDX-License-Identifier: GPL-3.0-or-later
// What a brew as made means for the next draw: the promise of the plan beside it, with bands, and words.
#pragma once

#include "desk/brew.h"
#include "ui/present/session.h"

#include <QWidget>

class QGridLayout;
class QLabel;

namespace staveline::ui {

class MeaningView : public QWidget {
    Q_OBJECT
public:
    explicit MeaningView(Session& session, QWidget* parent = nullptr);
    void show(const Result<desk::BrewMeaning>& meaning);
    [[nodiscard]] QString words() const;
    [[nodiscard]] QString score(Dimension dimension, bool asBrewed) const;

private:
    Session& session_;
    QLabel* title_;
    QWidget* table_;
    std::array<QLabel*, 3> planned_{}, asBrewed_{};
    QLabel* words_;
};

} // namespace staveline::ui
