// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/station_page.h"

namespace staveline::ui {

StationPage::StationPage(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    connect(&session, &Session::changed, this, &StationPage::follow);
    connect(&session, &Session::unitsChanged, this, &StationPage::follow);
}

void StationPage::showVessel(VesselName vessel) {
    if (vessel == vessel_)
        return;
    leaveVessel();
    vessel_ = std::move(vessel);
    follow();
}

void StationPage::follow() {
    stale_ = !isVisible();
    if (!stale_ && !vessel_.empty())
        refresh();
}

void StationPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_)
        follow();
}

} // namespace staveline::ui
