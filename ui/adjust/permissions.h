// SPDX-License-Identifier: GPL-3.0-or-later
// What the adviser may move: the draw and the interval, facts of the vessel, and how many changes one plan may hold,
// kept with the window.
#pragma once

#include "ui/present/session.h"

#include <QWidget>

class QCheckBox;

namespace staveline::ui {

class ChoiceField;

class Permissions : public QWidget {
    Q_OBJECT
public:
    explicit Permissions(Session& session, QWidget* parent = nullptr);
    void setVessel(const facts::VesselName& vessel);
    [[nodiscard]] int mostMoved() const; ///< levers in one plan, 1..4
    void setMostMoved(int levers);

Q_SIGNALS:
    void mostMovedChanged();
    void failed(const staveline::Fault& fault);

private:
    void record(QCheckBox& box, std::optional<bool> facts::VesselEditFact::*which);

    Session& session_;
    facts::VesselName vessel_;
    QCheckBox* draw_;
    QCheckBox* interval_;
    ChoiceField* most_;
};

} // namespace staveline::ui
