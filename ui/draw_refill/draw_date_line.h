// SPDX-License-Identifier: GPL-3.0-or-later
// The day of the coming draw, put off or brought forward in one act that undo takes back.
#pragma once

#include "desk/ledger.h"
#include "ui/present/session.h"

#include <QWidget>

class QPushButton;

namespace staveline::ui {

class DateField;

class DrawDateLine : public QWidget {
    Q_OBJECT
public:
    explicit DrawDateLine(Session& session, QWidget* parent = nullptr);
    /// Hidden while there is no draw to come.
    void showVessel(const desk::VesselSummary& vessel);

private:
    void set(std::optional<Day> drawOn);
    void offer();

    Session& session_;
    facts::VesselName vessel_;
    Day planned_{};
    DateField* day_;
    QPushButton* set_;
    QPushButton* interval_;
};

} // namespace staveline::ui
