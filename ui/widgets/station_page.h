// SPDX-License-Identifier: GPL-3.0-or-later
// What all stations are: one page about one vessel that follows the book. It reads the desk when it is in front, not
// while another station is.
#pragma once

#include "ui/present/session.h"

#include <QWidget>

namespace staveline::ui {

class StationPage : public QWidget {
    Q_OBJECT
public:
    explicit StationPage(Session& session, QWidget* parent = nullptr);
    void showVessel(VesselName vessel); ///< by value: storing what is in hand changes every list of names
    [[nodiscard]] const VesselName& vessel() const { return vessel_; }
    /// Where work goes on: the first field, the table, the first button of an empty station.
    virtual void focusWork() = 0;

protected:
    /// Shows what the desk says now. What is half typed stays; the vessel is never empty here.
    virtual void refresh() = 0;
    /// Another vessel comes: what is in hand is stored or left. Called before the refresh.
    virtual void leaveVessel() {}
    [[nodiscard]] Session& session() const { return session_; }
    void showEvent(QShowEvent* event) override;
    void follow(); ///< refreshes now or when shown

private:
    Session& session_;
    VesselName vessel_;
    bool stale_ = true;
};

} // namespace staveline::ui
