// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/kit_editor.h"

#include "ui/brew/row_list.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

using facts::EquipmentFact;

KitEditor::KitEditor(RecipeEditorModel& model, QWidget* parent)
    : QWidget(parent), model_(model), fold_(new QPushButton(this)), own_(new QPushButton(this)),
      body_(new QWidget(this)), form_(new FactForm(body_)), message_(new MessageLabel(body_)) {
    fold_->setCheckable(true);
    own_->setObjectName("own kit");
    message_->keepRoom(1.1);
    auto* inner = new QVBoxLayout(body_);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->addWidget(quietLabel(own("ui.brew.kit_words"), body_));
    inner->addWidget(form_);
    inner->addWidget(message_);
    inner->addWidget(own_, 0, Qt::AlignLeft);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .4), lines(*this, .6), lines(*this, 1));
    column->addWidget(fold_, 0, Qt::AlignLeft);
    column->addWidget(body_);
    body_->setVisible(false);
    connect(fold_, &QPushButton::toggled, this, &KitEditor::unfold);
    connect(form_, &FactForm::edited, this, &KitEditor::edited);
    connect(own_, &QPushButton::clicked, this, &KitEditor::makeOwn);
    connect(&model.session(), &Session::unitsChanged, this, [this] { form_->setUnits(model_.session().units()); });
    connect(&model, &RecipeEditorModel::recalculated, this, &KitEditor::showFault);
}

void KitEditor::unfold(bool open) {
    fold_->setChecked(open);
    body_->setVisible(open);
}

/// As of the day of what is shown: a change of the day alone is none.
EquipmentFact KitEditor::typed() const {
    auto kit = std::get<EquipmentFact>(form_->fact());
    kit.on = shown_->on;
    return kit;
}

void KitEditor::sync() {
    const facts::VesselName& vessel = model_.vessel();
    const EquipmentFact kit = model_.session().desk().kit(vessel);
    const bool editing = shown_ && shown_->vessel == kit.vessel && (!form_->usable() || typed() != *shown_);
    if (!editing && (!shown_ || *shown_ != kit))
        build(kit);
    fold_->setText(text(say(kit.vessel.empty() ? "ui.brew.house_kit" : "ui.brew.own_kit")
                            .with("kit", model_.kit().equipment.name)
                            .with("vessel", vessel)));
    own_->setText(tr("A kit of its own for %1").arg(qs(vessel)));
    own_->setVisible(kit.vessel.empty());
    own_->setEnabled(!model_.session().desk().readOnly());
}

void KitEditor::build(const EquipmentFact& kit) {
    shown_ = kit;
    FormContext context;
    context.today = model_.session().desk().today();
    context.units = model_.session().units();
    context.hidden = {"on"};
    context.labels = "equipment";
    form_->build(kit, context);
    form_->setEnabled(!model_.session().desk().readOnly());
    for (QLineEdit* edit : form_->findChildren<QLineEdit*>())
        connect(edit, &QLineEdit::editingFinished, this, &KitEditor::finish);
}

void KitEditor::edited() {
    form_->recheck();
    if (form_->previewable())
        model_.changeKit(typed());
}

void KitEditor::showFault() {
    message_->clear();
    const auto& fault = model_.fault();
    constexpr std::string_view mine = "/equipment";
    if (!fault || !fault->path.starts_with(mine))
        return;
    Fault here = *fault;
    here.path.erase(0, mine.size());
    if (!form_->showFault(here, false))
        message_->say(MessageLabel::Weight::fault, model_.session().words(here));
}

void KitEditor::finish() {
    if (!shown_ || !form_->usable() || model_.fault())
        return;
    EquipmentFact kit = typed();
    if (kit == *shown_)
        return;
    kit.on = model_.session().desk().today();
    store(kit, tr("kit %1").arg(qs(kit.equipment.name)));
}

/// The same to begin with: its sizes are typed next.
void KitEditor::makeOwn() {
    EquipmentFact kit = model_.session().desk().kit();
    kit.on = model_.session().desk().today();
    kit.vessel = model_.vessel();
    kit.equipment.name = toStd(tr("%1 kit").arg(qs(kit.vessel)));
    store(kit, tr("kit of its own for %1").arg(qs(kit.vessel)));
    form_->focusFirst();
}

void KitEditor::store(const EquipmentFact& kit, const QString& name) {
    Session& session = model_.session();
    const auto batch = session.batch(); // what is told then is shown already
    const auto done = session.setToday(facts::Fact{kit}, {toStd(name), "kit"});
    if (done) {
        if (kit.vessel == shown_->vessel)
            shown_ = kit;
        return;
    }
    if (!form_->showFault(done.error(), false))
        message_->say(MessageLabel::Weight::fault, model_.session().words(done.error()));
}

QString KitEditor::words() const {
    return message_->words();
}

} // namespace staveline::ui
