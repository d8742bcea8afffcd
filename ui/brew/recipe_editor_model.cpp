// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/recipe_editor_model.h"
#include "advice/advise.h"

#include <utility>

namespace staveline::ui {

RecipeEditorModel::RecipeEditorModel(Session& session, QObject* parent) : QObject(parent), session_(session) {
    connect(&session, &Session::storeAsked, this, &RecipeEditorModel::finish);
}

void RecipeEditorModel::begin(const facts::VesselName& vessel, const advice::Setting& setting,
                              const facts::EquipmentFact& kit, const desk::BrewMeasures& measured) {
    vessel_ = vessel;
    pending_.clear();
    draft_.reset();
    base_ = setting_ = setting;
    kit_ = kit;
    measured_ = measured;
    recalculate(true);
}

void RecipeEditorModel::rebase(const advice::Setting& setting, const facts::EquipmentFact& kit) {
    base_ = setting_ = setting;
    kit_ = kit;
    for (const Pending& edit : pending_)
        edit.change(setting_);
    recalculate();
}

void RecipeEditorModel::change(const Change& change, const QString& name, const std::string& field) {
    if (locked_)
        return;
    change(setting_);
    if (!pending_.empty() && pending_.back().field == field)
        pending_.back().change = change;
    else
        pending_.push_back({field, change});
    note_ = {toStd(tr("%1, %2").arg(name, qs(vessel_))), vessel_ + field};
    recalculate();
}

void RecipeEditorModel::takeBack(const std::string& field) {
    if (std::erase_if(pending_, [&](const Pending& edit) { return edit.field == field; }) == 0)
        return;
    setting_ = base_;
    for (const Pending& edit : pending_)
        edit.change(setting_);
    recalculate();
}

void RecipeEditorModel::changeKit(const facts::EquipmentFact& kit) {
    kit_ = kit;
    recalculate();
}

void RecipeEditorModel::setMeasured(const desk::BrewMeasures& measured) {
    if (measured == measured_)
        return;
    measured_ = measured;
    recalculate();
}

void RecipeEditorModel::finish() {
    if (pending_.empty() || (fault_ && !refused_) || !store_)
        return;
    if (setting_ == base_) {
        pending_.clear();
        tellUnstored();
        return;
    }
    const auto batch = session_.batch(); // the rebase that follows finds nothing pending
    const auto done = store_(setting_, note_);
    if (done) {
        pending_.clear();
        tellUnstored();
        return;
    }
    fault_ = done.error();
    refused_ = ofStorage(fault_->kind);
    Q_EMIT recalculated(false);
}

void RecipeEditorModel::tellUnstored() {
    if (store_)
        session_.setUnstored("recipe", pending() ? QStringList{tr("recipe of %1").arg(qs(vessel_))} : QStringList());
}

void RecipeEditorModel::recalculate(bool anew) {
    fault_.reset();
    refused_ = false;
    if (auto made = draftAsBrewed(session_.desk(), vessel_, setting_, kit_, measured_))
        draft_ = std::move(*made);
    else
        fault_ = made.error();
    tellUnstored();
    Q_EMIT recalculated(anew);
}

} // namespace staveline::ui
