// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/permissions.h"

#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QLabel>
#include <QVBoxLayout>

namespace staveline::ui {

Permissions::Permissions(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), draw_(new QCheckBox(tr("another draw"), this)),
      interval_(new QCheckBox(tr("another wait"), this)) {
    auto* head = new QLabel(tr("The advice may propose"), this);
    setType(*head, Type::small);
    head->setForegroundRole(QPalette::PlaceholderText);
    draw_->setAccessibleName(tr("The advice may propose another draw"));
    interval_->setAccessibleName(tr("The advice may propose another wait to the next draw"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .2));
    column->addWidget(head);
    auto* boxes = new QHBoxLayout;
    boxes->setSpacing(lines(*this, .8));
    boxes->addWidget(draw_);
    boxes->addWidget(interval_);
    boxes->addStretch(1);
    column->addLayout(boxes);
    connect(draw_, &QCheckBox::clicked, this, [this] { record(*draw_, &facts::VesselEditFact::drawMayMove); });
    connect(interval_, &QCheckBox::clicked, this,
            [this] { record(*interval_, &facts::VesselEditFact::intervalMayMove); });
}

void Permissions::setVessel(const facts::VesselName& vessel) {
    vessel_ = vessel;
    const auto found = session_.desk().vessel(vessel);
    draw_->setChecked(found && found->facts.drawMayMove);
    interval_->setChecked(found && found->facts.intervalMayMove);
    for (QCheckBox* box : {draw_, interval_})
        box->setEnabled(!session_.desk().readOnly());
}

/// A box whose fact is refused goes back.
void Permissions::record(QCheckBox& box, std::optional<bool> facts::VesselEditFact::*which) {
    facts::VesselEditFact edit;
    edit.vessel = vessel_;
    edit.*which = box.isChecked();
    if (const auto done = session_.record(facts::Fact(edit)); !done) {
        box.setChecked(!box.isChecked());
        Q_EMIT failed(done.error());
    }
}

} // namespace staveline::ui
