// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/yeast_editor.h"

#include "advice/advise.h"
#include "ingredient/pantry.h"
#include "ui/brew/grist_editor.h"
#include "ui/brew/row_list.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

QStringList traits(const ingredient::Yeast& yeast) {
    QStringList words{own(yeast.pof ? "ui.brew.yeast_clove" : "ui.brew.yeast_no_clove")};
    if (yeast.diastatic())
        words << own("ui.brew.yeast_diastatic");
    words << own(yeast.killerPositive ? "ui.brew.yeast_killer" : "ui.brew.yeast_no_killer");
    return words;
}

} // namespace

YeastEditor::YeastEditor(Binder& binder, QWidget* parent)
    : QWidget(parent), model_(binder.model()), words_(new QLabel(this)) {
    auto* yeast = new ChoiceField(this);
    auto* message = new MessageLabel(this);
    offerYeast(*yeast, model_.session());
    binder.tie(*yeast,
               {"/yeast", tr("Yeast"), [](const advice::Setting& s) { return s.recipe.yeast; },
                [](advice::Setting& s, const std::string& id) { s.recipe.yeast = id; }},
               message);
    words_->setWordWrap(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    auto* row = new QHBoxLayout;
    row->addWidget(captioned(tr("Yeast"), yeast, yeast, this));
    row->addStretch(1);
    column->addLayout(row);
    column->addWidget(message);
    column->addWidget(words_);
}

void YeastEditor::sync() {
    QStringList words;
    if (const auto yeast = model_.session().desk().pantry().yeast(model_.recipe().yeast))
        words = traits(*yeast);
    if (model_.draft()) {
        const brewing::BrewPlan& plan = model_.draft()->plan;
        words << model_.session().words(say("ui.brew.attenuation")
                                            .with("limit", Share{model_.draft()->beer.attenuationLimit})
                                            .with("taken", Share{1 - plan.finalGravity / plan.originalGravity})
                                            .with("gravity", plan.finalGravity));
    }
    words_->setText(words.join(QLatin1Char(' ')));
}

QString YeastEditor::words() const {
    return words_->text();
}

} // namespace staveline::ui
