// SPDX-License-Identifier: GPL-3.0-or-later
// What the owner of the vessel lets the advice move beside the recipe: the draw and the interval. Facts of the vessel.
#pragma once

#include "ui/present/session.h"

#include <QWidget>

class QCheckBox;

namespace staveline::ui {

class Permissions : public QWidget {
    Q_OBJECT
public:
    explicit Permissions(Session& session, QWidget* parent = nullptr);
    void setVessel(const facts::VesselName& vessel);
    [[nodiscard]] QCheckBox& draw() const { return *draw_; }
    [[nodiscard]] QCheckBox& interval() const { return *interval_; }

Q_SIGNALS:
    void failed(const staveline::Fault& fault);

private:
    void record(QCheckBox& box, std::optional<bool> facts::VesselEditFact::*which);

    Session& session_;
    facts::VesselName vessel_;
    QCheckBox* draw_;
    QCheckBox* interval_;
};

} // namespace staveline::ui
