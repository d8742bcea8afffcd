// SPDX-License-Identifier: GPL-3.0-or-later
// What one lever does to the dimensions: what will be tasted in plain text, what will not in grey and with the word.
#pragma once

#include "quantity/dimension.h"

#include <QWidget>

class QLabel;

namespace staveline::ui {

class EffectCell : public QWidget {
    Q_OBJECT
public:
    explicit EffectCell(QWidget* parent = nullptr);
    void setPoints(const Scores& points);
    void showPending(); ///< not worked out yet
    void clear();

private:
    void say(const QString& tasted, const QString& untasted);

    QLabel* tasted_;
    QLabel* untasted_;
};

} // namespace staveline::ui
