// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/question_form.h"

#include "ui/brew/row_list.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/field_layout.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"

#include <QLineEdit>

#include <algorithm>

namespace staveline::ui {

QuestionForm::QuestionForm(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), column_(new QVBoxLayout(this)) {
    column_->setContentsMargins(0, lines(*this, .4), lines(*this, .6), lines(*this, .6));
    column_->setSpacing(lines(*this, .3));
    column_->addStretch(1);
}

void QuestionForm::beginPart(const QString& heading) {
    if (!heading.isEmpty()) {
        auto* words = new QLabel(heading, this);
        setType(*words, Type::strong);
        words->setContentsMargins(0, part_ ? lines(*this, .5) : 0, 0, 0);
        column_->insertWidget(column_->count() - 1, words);
    }
    auto* part = new QWidget(this);
    part_ = new FieldLayout(part, lines(*this, 1), lines(*this, .3));
    column_->insertWidget(column_->count() - 1, part);
}

void QuestionForm::place(const QString& caption, QWidget* field, QWidget* typed) {
    if (!first_)
        first_ = typed;
    part_->addField(captioned(caption, field, typed, part_->parentWidget()), false);
}

NumberField* QuestionForm::addNumber(const std::string& path, const QString& caption, UnitKind kind, Range range) {
    auto* field = new NumberField(kind, range, false, this);
    field->setUnits(session_.units());
    field->setName(caption);
    place(caption, field, field->edit());
    connect(field, &NumberField::edited, this, &QuestionForm::edited);
    connect(&session_, &Session::unitsChanged, field, [this, field] { field->setUnits(session_.units()); });
    numbers_[path] = field;
    return field;
}

DateField* QuestionForm::addDate(const std::string& path, const QString& caption) {
    auto* field = new DateField(session_.desk().today(), this);
    field->setRequired(false);
    field->setName(caption);
    place(caption, field, field->edit());
    connect(field, &DateField::edited, this, &QuestionForm::edited);
    dates_[path] = field;
    return field;
}

ChoiceField* QuestionForm::addChoice(const QString& caption) {
    auto* field = new ChoiceField(this);
    field->setAccessibleName(caption);
    place(caption, field, field);
    connect(field, &ChoiceField::activated, this, &QuestionForm::edited);
    return field;
}

void QuestionForm::showField(const QWidget& field, bool shown) {
    field.parentWidget()->setVisible(shown);
}

bool QuestionForm::usable() const {
    const auto can = [](const auto& each) { return each.second->usable(); };
    return std::all_of(numbers_.begin(), numbers_.end(), can) && std::all_of(dates_.begin(), dates_.end(), can);
}

void QuestionForm::recheck() {
    for (const auto& [path, field] : numbers_)
        field->recheck();
    for (const auto& [path, field] : dates_)
        field->recheck();
}

bool QuestionForm::showFault(const Fault& fault) {
    if (const auto number = numbers_.find(fault.path); number != numbers_.end())
        number->second->showFault(fault);
    else if (const auto date = dates_.find(fault.path); date != dates_.end())
        date->second->showFault(fault);
    else
        return false;
    return true;
}

void QuestionForm::focusFirst() {
    first_->setFocus(Qt::OtherFocusReason);
}

} // namespace staveline::ui
