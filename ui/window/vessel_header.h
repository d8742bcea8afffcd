// SPDX-License-Identifier: GPL-3.0-or-later
// Name and nature of the vessel in hand, and its time ribbon.
#pragma once

#include "desk/ledger.h"
#include "ui/present/session.h"
#include "ui/widgets/time_ribbon.h"

#include <QWidget>

class QLabel;
class QToolButton;

namespace staveline::ui {

class ElidedLabel;

class VesselHeader : public QWidget {
    Q_OBJECT
public:
    explicit VesselHeader(Session& session, QWidget* parent = nullptr);
    void showVessel(const VesselSummary& vessel);
    [[nodiscard]] TimeRibbon& ribbon() const { return *ribbon_; }

Q_SIGNALS:
    void changeAsked();

private:
    Session& session_;
    ElidedLabel* name_;
    QLabel* kind_;
    QLabel* ages_;
    QToolButton* change_;
    TimeRibbon* ribbon_;
};

} // namespace staveline::ui
