// SPDX-License-Identifier: GPL-3.0-or-later
// The coming work of a vessel, put off or brought forward by typing its day: one act that undo takes back.
#pragma once

#include "desk/moved_work.h"
#include "ui/present/session.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace staveline::ui {

class ChoiceField;
class DateField;

class WorkDateLine : public QWidget {
    Q_OBJECT
public:
    /// `only`: of this work alone, and hidden where it cannot be moved; without it any is chosen, and the line is
    /// disabled.
    explicit WorkDateLine(Session& session, QWidget* parent = nullptr, std::optional<vessel::DueKind> only = {});
    /// Null: no vessel in hand.
    void showVessel(const desk::VesselSummary* vessel);
    void move(const facts::VesselName& vessel, vessel::DueKind kind, std::optional<Day> to);

private:
    [[nodiscard]] const desk::PlannedWork* chosen() const;
    [[nodiscard]] std::vector<desk::PlannedWork> worksOf(const desk::VesselSummary* vessel) const;
    void connectParts();
    void showWork();
    void offer();

    Session& session_;
    std::optional<vessel::DueKind> only_;
    facts::VesselName vessel_;
    std::vector<desk::PlannedWork> works_;
    QLabel* label_;
    ChoiceField* work_;
    DateField* day_;
    QPushButton* set_;
    QPushButton* back_;
};

} // namespace staveline::ui
