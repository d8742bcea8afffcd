// SPDX-License-Identifier: GPL-3.0-or-later
// What one plan comes to at the next draw, in a line; what it comes to if kept up, in its tool tip.
#pragma once

#include "ui/adjust/target_timeline_data.h"

#include <QLabel>

namespace staveline::ui {

class ScoreLine : public QLabel {
    Q_OBJECT
public:
    explicit ScoreLine(QWidget* parent = nullptr);
    void setBands(const PerDimension<ForecastBands>& bands);
    [[nodiscard]] QString next(Dimension dimension) const { return next_[dimension]; }
    [[nodiscard]] QString kept(Dimension dimension) const { return kept_[dimension]; }
    [[nodiscard]] QString sentence() const;

private:
    PerDimension<QString> next_, kept_;
};

} // namespace staveline::ui
