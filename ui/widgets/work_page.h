// SPDX-License-Identifier: GPL-3.0-or-later
// What all pages are: a widget about one vessel that follows the book. It reads the desk when it is in front, not
// while another page is.
#pragma once

#include "ui/present/session.h"

#include <QWidget>

namespace staveline::ui {

class WorkPage : public QWidget {
    Q_OBJECT
public:
    explicit WorkPage(Session& session, QWidget* parent = nullptr);
    void showVessel(facts::VesselName vessel); ///< by value: storing what is in hand changes every list of names
    [[nodiscard]] const facts::VesselName& vessel() const { return vessel_; }
    /// Where work goes on: the first field, the table, the first button of an empty page.
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
    facts::VesselName vessel_;
    bool stale_ = true;
};

} // namespace staveline::ui
