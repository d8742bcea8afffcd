// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/work_page.h"

namespace staveline::ui {

WorkPage::WorkPage(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    connect(&session, &Session::changed, this, &WorkPage::follow);
    connect(&session, &Session::unitsChanged, this, &WorkPage::follow);
}

void WorkPage::showVessel(facts::VesselName vessel) {
    if (vessel == vessel_)
        return;
    leaveVessel();
    vessel_ = std::move(vessel);
    follow();
}

void WorkPage::follow() {
    stale_ = !isVisible();
    if (!stale_ && !vessel_.empty())
        refresh();
}

void WorkPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_)
        follow();
}

} // namespace staveline::ui
