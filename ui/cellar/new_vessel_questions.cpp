// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/new_vessel_questions.h"

#include "ui/present/score_words.h"
#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>
#include <cstring>

namespace staveline::ui {
namespace {

const std::string answeredNow = "now";

FormContext contextOf(Day today, const DisplayUnits& units, const char* labels) {
    FormContext context;
    context.today = today;
    context.units = units;
    context.labels = labels;
    context.hidden = {"on"};
    return context;
}

} // namespace

NewVesselQuestions::NewVesselQuestions(QWidget* parent)
    : QWidget(parent), culture_(new FactForm(this)), kit_(new FactForm(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .4));
    ask(*column, "culture", tr("What lives in it"), culture_);
    ask(*column, "kit", tr("The kit it is brewed on"), kit_);
    ask(*column, "target", tr("What it should taste of"), makeTarget());
    for (const FactForm* form : {culture_, kit_})
        connect(form, &FactForm::edited, this, &NewVesselQuestions::edited);
}

void NewVesselQuestions::ask(QVBoxLayout& column, const char* about, const QString& title, QWidget* answer) {
    auto* choice = new ChoiceField(this);
    auto* label = new QLabel(title, this);
    setType(*label, Type::strong);
    label->setBuddy(choice);
    choice->setAccessibleName(title);
    auto* row = new QHBoxLayout;
    row->addWidget(label);
    row->addWidget(choice);
    row->addStretch(1);
    column.addLayout(row);
    column.addWidget(answer);
    questions_.push_back({about, choice, answer});
    connect(choice, &ChoiceField::activated, this, [this] {
        fold();
        Q_EMIT edited();
    });
}

QWidget* NewVesselQuestions::makeTarget() {
    auto* part = new QWidget(this);
    auto* row = new QHBoxLayout(part);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, 1));
    for (const Dimension dimension : allDimensions) {
        auto* field = new NumberField(UnitKind::none, {0, 10}, true, part);
        auto* label = new QLabel(nameOf(dimension), part);
        field->setName(label->text());
        label->setBuddy(field->edit());
        auto* both = new QVBoxLayout;
        both->addWidget(label);
        both->addWidget(field);
        row->addLayout(both);
        wanted_[static_cast<std::size_t>(dimension)] = field;
        connect(field, &NumberField::edited, this, &NewVesselQuestions::edited);
    }
    row->addStretch(1);
    return part;
}

void NewVesselQuestions::begin(Day today, const DisplayUnits& units, const std::optional<std::string>& kit) {
    today_ = today;
    kitKnown_ = kit.has_value();
    culture_->build(facts::CultureFact{}, contextOf(today, units, "culture"));
    kit_->build(facts::EquipmentFact{}, contextOf(today, units, "equipment"));
    const tasting::Target usual;
    for (const Dimension dimension : allDimensions)
        wanted(dimension).setStored(usual.windows[dimension].wanted);
    for (const Question& question : questions_) {
        question.choice->clear();
        const bool kitKnown = kit && question.choice == &choice("kit");
        question.choice->add(kitKnown ? qs(*kit) : tr("Later"), {});
        question.choice->add(kitKnown ? tr("Another kit") : tr("Now"), answeredNow);
    }
    fold();
}

void NewVesselQuestions::fold() {
    for (const Question& question : questions_)
        question.answer->setVisible(question.choice->word() == answeredNow);
}

ChoiceField& NewVesselQuestions::choice(const char* about) const {
    return *std::find_if(questions_.begin(), questions_.end(), [&](const Question& question) {
                return std::strcmp(question.about, about) == 0;
            })->choice;
}

bool NewVesselQuestions::answered(const char* about) const {
    return choice(about).word() == answeredNow;
}

NumberField& NewVesselQuestions::wanted(Dimension dimension) const {
    return *wanted_[static_cast<std::size_t>(dimension)];
}

std::vector<FactForm*> NewVesselQuestions::answeredForms() const {
    std::vector<FactForm*> forms;
    if (answered("culture"))
        forms.push_back(culture_);
    if (answered("kit"))
        forms.push_back(kit_);
    return forms;
}

void NewVesselQuestions::setUnits(const DisplayUnits& units) {
    culture_->setUnits(units);
    kit_->setUnits(units);
}

bool NewVesselQuestions::touched() const {
    return std::any_of(questions_.begin(), questions_.end(),
                       [](const Question& question) { return question.choice->word() == answeredNow; });
}

bool NewVesselQuestions::usable() const {
    const auto forms = answeredForms();
    return std::all_of(forms.begin(), forms.end(), [](const FactForm* form) { return form->usable(); }) &&
           (!answered("target") || std::all_of(wanted_.begin(), wanted_.end(),
                                               [](const NumberField* field) { return field->stored().has_value(); }));
}

void NewVesselQuestions::complain() {
    for (FactForm* form : answeredForms())
        form->complain();
    if (answered("target"))
        for (NumberField* field : wanted_)
            field->complainIfEmpty();
}

std::vector<facts::Fact> NewVesselQuestions::answers(const facts::VesselName& vessel) const {
    std::vector<facts::Fact> facts;
    if (answered("kit")) {
        auto kit = std::get<facts::EquipmentFact>(kit_->fact());
        kit.on = today_;
        if (kitKnown_) // the other vessels keep theirs
            kit.vessel = vessel;
        facts.emplace_back(kit);
    }
    if (answered("culture")) {
        auto culture = std::get<facts::CultureFact>(culture_->fact());
        culture.vessel = vessel;
        culture.on = today_;
        facts.emplace_back(culture);
    }
    if (answered("target")) {
        facts::TargetFact target{vessel, today_, {}};
        for (const Dimension dimension : allDimensions)
            target.target.windows[dimension].wanted = wanted(dimension).stored().value_or(0);
        facts.emplace_back(target);
    }
    return facts;
}

bool NewVesselQuestions::showFault(const Fault& fault) {
    const auto forms = answeredForms();
    return std::any_of(forms.begin(), forms.end(), [&](FactForm* form) { return form->showFault(fault, true); });
}

} // namespace staveline::ui
