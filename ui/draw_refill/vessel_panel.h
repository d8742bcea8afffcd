// SPDX-License-Identifier: GPL-3.0-or-later
// The vessel beside its ledger: drawing, level, ages and next dates; while an entry is in hand, what it would change.
#pragma once

#include "desk/ledger.h"
#include "ui/present/session.h"

#include <QWidget>

class QGridLayout;
class QLabel;

namespace staveline::ui {

class WorkDateLine;
class VesselDrawing;

class VesselPanel : public QWidget {
    Q_OBJECT
public:
    explicit VesselPanel(Session& session, QWidget* parent = nullptr);
    void showVessel(const desk::VesselSummary& vessel);
    /// The vessel as it was after an entry of the past; none: now.
    void showPast(const std::optional<vessel::LedgerState>& state);
    /// What an entry in hand would make of it; none: the vessel as it is.
    void showPreview(const std::optional<desk::LedgerPreview>& preview, bool entering);

private:
    // A preview goes before the past, the past before today.
    void refresh();
    void refreshDates();
    void saySteering();
    [[nodiscard]] const vessel::LedgerState& shown() const;
    [[nodiscard]] bool showsPast() const;

    Session& session_;
    desk::VesselSummary vessel_;
    std::optional<vessel::LedgerState> past_;
    std::optional<desk::LedgerPreview> preview_;
    bool entering_ = false; ///< a form is open
    QLabel* level_;
    QLabel* caption_;
    QLabel* ages_;
    VesselDrawing* drawing_;
    QLabel* dateHeading_;
    QWidget* dates_;
    QGridLayout* dateGrid_;
    QLabel* steering_; ///< what the age has to do with the dates
    WorkDateLine* drawDate_;
};

} // namespace staveline::ui
