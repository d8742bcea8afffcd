// SPDX-License-Identifier: GPL-3.0-or-later
#include "ingredient/pantry.h"
#include "ui/brew/grist_editor.h"
#include "ui/widgets/choice_field.h"

#include <QCompleter>

#include <algorithm>

namespace staveline::ui {
namespace {

QString offered(const std::string& name, const std::string& id, const std::vector<facts::AvailabilityFact>& known) {
    const bool missing = std::any_of(known.begin(), known.end(), [&](const facts::AvailabilityFact& fact) {
        return fact.item == id && !fact.available;
    });
    return missing ? ChoiceField::tr("%1 (not at hand)").arg(qs(name)) : qs(name);
}

} // namespace

void offerGrain(ChoiceField& field, const desk::Desk& desk, bool sugars) {
    const auto known = desk.availability();
    for (const ingredient::Grain& grain : desk.pantry().grains())
        if (grain.isSugar() == sugars)
            field.add(offered(grain.name, grain.id, known), grain.id);
}

void offerYeast(ChoiceField& field, const desk::Desk& desk) {
    const auto known = desk.availability();
    for (const ingredient::Yeast& yeast : desk.pantry().yeasts())
        field.add(offered(yeast.name, yeast.id, known), yeast.id);
}

void makeSearching(ChoiceField& field) {
    field.setEditable(true);
    field.setInsertPolicy(QComboBox::NoInsert);
    field.completer()->setFilterMode(Qt::MatchContains);
    field.completer()->setCompletionMode(QCompleter::PopupCompletion);
    field.completer()->setCaseSensitivity(Qt::CaseInsensitive);
}

} // namespace staveline::ui
