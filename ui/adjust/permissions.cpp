// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/permissions.h"

#include "desk/advice.h"
#include "quantity/constants.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {

using desk::AdviceRequest;

Permissions::Permissions(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), draw_(new QCheckBox(tr("how much is drawn"), this)),
      interval_(new QCheckBox(tr("the interval"), this)), most_(new ChoiceField(this)) {
    auto* head = new QLabel(tr("The adviser may change"), this);
    setType(*head, Type::small);
    head->setForegroundRole(QPalette::PlaceholderText);
    draw_->setAccessibleName(own("ui.field.vessel.draw_may_move"));
    interval_->setAccessibleName(own("ui.field.vessel.interval_may_move"));
    most_->setAccessibleName(tr("At most so many changes at once"));
    for (int levers = 1; levers <= AdviceRequest::mostLevers; ++levers)
        most_->add(QString::number(levers), std::to_string(levers));
    setMostMoved(static_cast<int>(constants::advice::mostMoved));
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
    auto* bound = new QHBoxLayout;
    bound->setSpacing(lines(*this, .3));
    bound->addWidget(new QLabel(tr("at most"), this));
    bound->addWidget(most_);
    bound->addWidget(new QLabel(tr("changes at once"), this));
    bound->addStretch(1);
    column->addLayout(bound);
    connect(most_, &QComboBox::currentIndexChanged, this, &Permissions::mostMovedChanged);
    connect(draw_, &QCheckBox::clicked, this, [this] { record(*draw_, &facts::VesselEditFact::drawMayMove); });
    connect(interval_, &QCheckBox::clicked, this,
            [this] { record(*interval_, &facts::VesselEditFact::intervalMayMove); });
}

int Permissions::mostMoved() const {
    return most_->currentIndex() + 1;
}

void Permissions::setMostMoved(int levers) {
    most_->setCurrentIndex(std::clamp(levers, 1, AdviceRequest::mostLevers) - 1);
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
