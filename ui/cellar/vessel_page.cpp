// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/vessel_page.h"

#include "ui/widgets/fact_form.h"
#include "ui/widgets/message_label.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

VesselPage::VesselPage(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), form_(new FactForm(this)), message_(new MessageLabel(this)) {
    auto* outer = new QHBoxLayout(this);
    auto* column = new QVBoxLayout;
    outer->addLayout(column, 4);
    outer->addStretch(1);
    column->setSpacing(lines(*this, .8));
    auto* title = new QLabel(tr("A vessel for the cellar"), this);
    setType(*title, Type::title);
    auto* words = new QLabel(own("ui.vessel.words"), this);
    words->setWordWrap(true);
    auto* add = new QPushButton(tr("&Add the vessel"), this);
    add->setDefault(true);
    add->setAutoDefault(true);
    auto* leave = new QPushButton(tr("Leave it (Esc)"), this);
    leave->setFlat(true);
    leave->setAutoDefault(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(add);
    buttons->addWidget(leave);
    buttons->addStretch(1);
    column->addWidget(title);
    column->addWidget(words);
    column->addWidget(form_);
    column->addWidget(message_);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(add, &QPushButton::clicked, this, &VesselPage::add);
    connect(leave, &QPushButton::clicked, this, &VesselPage::left);
    connect(form_, &FactForm::edited, message_, &MessageLabel::clear);
    connect(&session, &Session::unitsChanged, this, [this] { form_->setUnits(session_.units()); });
}

void VesselPage::begin() {
    FormContext context;
    context.today = session_.desk().today();
    context.units = session_.units();
    context.labels = "vessel";
    context.hidden = {"temperature_can_change",
                      "sample_days_before_draw",
                      "evaporation_per_year",
                      "oxygen_mg_l_year",
                      "culture_held_back",
                      "note",
                      "retired_on",
                      "retired_reason"};
    form_->build(VesselFact{}, context);
    message_->clear();
    form_->focusFirst();
}

void VesselPage::add() {
    if (!form_->usable()) {
        form_->complain();
        return;
    }
    const Fact fact = form_->fact();
    if (const auto added = session_.record(fact); !added) {
        if (!form_->showFault(added.error(), true))
            message_->say(MessageLabel::Weight::fault, session_.words(added.error()));
        return;
    }
    Q_EMIT this->added(qs(std::get<VesselFact>(fact).name));
}

QString VesselPage::words() const {
    return message_->words();
}

void VesselPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        Q_EMIT left();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        add();
    else
        QWidget::keyPressEvent(event);
}

} // namespace staveline::ui
