// SPDX-License-Identifier: GPL-3.0-or-later
// The kit: volumes, losses, rates and the brew length, as of today; that of all vessels, or one vessel's own. Earlier
// kits stay with the brews made on them.
#pragma once

#include "ui/brew/recipe_editor_model.h"
#include "ui/widgets/fact_form.h"

#include <QWidget>

class QPushButton;

namespace staveline::ui {

class MessageLabel;

class KitEditor : public QWidget {
    Q_OBJECT
public:
    explicit KitEditor(RecipeEditorModel& model, QWidget* parent = nullptr);
    /// The fields follow the book unless one of them is being edited.
    void sync();
    void unfold(bool open);
    [[nodiscard]] FactForm& form() const { return *form_; }
    [[nodiscard]] QPushButton& button() const { return *fold_; }
    [[nodiscard]] QString words() const; ///< of the message shown

private:
    void build(const facts::EquipmentFact& kit);
    void makeOwn();
    void store(const facts::EquipmentFact& kit, const QString& name);
    void edited();
    void finish();
    void showFault();
    [[nodiscard]] facts::EquipmentFact typed() const;

    RecipeEditorModel& model_;
    std::optional<facts::EquipmentFact> shown_; ///< what the fields were filled from
    QPushButton* fold_;
    QPushButton* own_;
    QWidget* body_;
    FactForm* form_;
    MessageLabel* message_;
};

} // namespace staveline::ui
