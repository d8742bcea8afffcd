// SPDX-License-Identifier: GPL-3.0-or-later
// Scores of one setting in three columns: at the next draw and if kept up.
#pragma once

#include "ui/adjust/target_timeline_data.h"

#include <QWidget>

class QLabel;

namespace staveline::ui {

class ScoreTable : public QWidget {
    Q_OBJECT
public:
    explicit ScoreTable(QWidget* parent = nullptr);
    void setBands(const PerDimension<ForecastBands>& bands);
    [[nodiscard]] QString next(Dimension dimension) const;
    [[nodiscard]] QString kept(Dimension dimension) const;
    [[nodiscard]] QString sentence() const;

private:
    PerDimension<QLabel*> next_{}, settled_{};
};

} // namespace staveline::ui
