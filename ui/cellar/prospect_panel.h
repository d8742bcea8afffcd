// SPDX-License-Identifier: GPL-3.0-or-later
// Beside the numbers of a vessel what they come to: the curve of its mean age from draw to draw, and the long run in
// words. Two more numbers can be turned that are no facts of the vessel. Nothing here writes.
#pragma once

#include "desk/what_if.h"
#include "ui/present/session.h"

#include <QWidget>

class QGridLayout;
class QLabel;

namespace staveline::ui {

class ChartStack;
class NumberField;
struct ChartData;

class ProspectPanel : public QWidget {
    Q_OBJECT
public:
    explicit ProspectPanel(Session& session, QWidget* parent = nullptr);
    /// From now on of this vessel; one that is empty, or new, starts with a first fill.
    void begin(const desk::Start& start);
    void showVessel(const facts::VesselFact& vessel);

private:
    void refresh();
    void readCursor();

    Session& session_;
    desk::Start start_;
    facts::VesselFact vessel_;
    NumberField* refillAge_;
    NumberField* row_;
    ChartStack* chart_;
    QLabel* reading_; ///< at the cursor of the chart
    QLabel* words_;
};

/// The mean age on the days to come, in months up to three years, then in years.
[[nodiscard]] ChartData prospectChart(const desk::Prospect& prospect, Day today);

} // namespace staveline::ui
