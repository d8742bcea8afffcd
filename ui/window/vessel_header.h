// SPDX-License-Identifier: GPL-3.0-or-later
// Name and nature of the vessel in hand, and its timeline.
#pragma once

#include "desk/ledger.h"
#include "ui/present/session.h"
#include "ui/widgets/cycle_timeline.h"

#include <QWidget>

class QLabel;
class QToolButton;

namespace staveline::ui {

class ElidedLabel;

class VesselHeader : public QWidget {
    Q_OBJECT
public:
    explicit VesselHeader(Session& session, QWidget* parent = nullptr);
    void showVessel(const desk::VesselSummary& vessel);
    [[nodiscard]] CycleTimeline& timeline() const { return *timeline_; }

Q_SIGNALS:
    void changeAsked();

private:
    Session& session_;
    ElidedLabel* name_;
    QLabel* kind_;
    QLabel* ages_;
    QToolButton* change_;
    CycleTimeline* timeline_;
};

} // namespace staveline::ui
