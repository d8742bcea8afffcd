// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/fact_form.h"

#include "facts/fields.h"
#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/field_layout.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {
namespace {

/// What is long has a row of its own.
bool isWhole(const FieldSpec& spec) {
    return spec.kind == FieldKind::text && spec.name == "note";
}

/// What a thing has to be called, else the number an entry is about, stands before its day, which is today more often
/// than not.
void mainFieldFirst(std::vector<FieldSpec>& specs) {
    if (specs.empty() || specs.front().kind != FieldKind::day)
        return;
    auto main = std::find_if(specs.begin(), specs.end(),
                             [](const FieldSpec& spec) { return spec.name == "name" && spec.required; });
    if (main == specs.end())
        main = std::find_if(specs.begin(), specs.end(),
                            [](const FieldSpec& spec) { return spec.kind == FieldKind::number && spec.required; });
    if (main != specs.end())
        std::rotate(specs.begin(), main, main + 1);
}

} // namespace

FactForm::FactForm(QWidget* parent) : QWidget(parent), anchor_(new QWidget(this)) {
    anchor_->setFocusPolicy(Qt::ClickFocus);
    anchor_->hide();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
}

void FactForm::build(const facts::Fact& start, const FormContext& context) {
    start_ = start;
    context_ = context;
    editors_.clear();
    delete page_;
    page_ = new QWidget(this);
    auto specs = fieldsOf(start);
    mainFieldFirst(specs);
    for (const FieldSpec& spec : specs)
        if (!context_.hidden.count(spec.name))
            editors_.push_back(make(spec));
    layOut();
    layout()->addWidget(page_);
    page_->show(); // now, not when events are next handled: the focus goes there at once
    orderTabs();
    fill(valuesOf(start));
    asBuilt_ = fact();
}

QString FactForm::labelOf(const FieldSpec& spec) const {
    const std::string special = "ui.field." + context_.labels + "." + spec.name;
    if (!context_.labels.empty() && builtInTexts().has(special))
        return own(special);
    return own("ui.field." + spec.name);
}

QString FactForm::wordOf(const std::string& word) const {
    const std::string special = "ui.word." + context_.labels + "." + word;
    return own(builtInTexts().has(special) ? special : "ui.word." + word);
}

FactForm::Editor FactForm::make(const FieldSpec& spec) {
    Editor editor{spec, new QLabel(labelOf(spec), page_)};
    switch (spec.kind) {
    case FieldKind::number:
        makeNumber(editor);
        break;
    case FieldKind::day:
        makeDate(editor);
        break;
    case FieldKind::text:
        makeLine(editor);
        break;
    case FieldKind::flag:
        editor.widget = editor.flag = new QCheckBox(page_);
        connect(editor.flag, &QCheckBox::clicked, this, &FactForm::edited);
        break;
    default:
        makeChoice(editor);
    }
    if (editor.stops.isEmpty())
        editor.stops = {editor.widget};
    editor.label->setBuddy(editor.stops.front());
    if (!editor.number && !editor.date)
        editor.widget->setAccessibleName(editor.label->text());
    return editor;
}

void FactForm::makeNumber(Editor& editor) {
    const FieldSpec& spec = editor.spec;
    editor.widget = editor.number = new NumberField(spec.unit, {spec.low, spec.high}, spec.required, page_);
    editor.number->setName(editor.label->text());
    editor.number->setUnits(context_.units);
    editor.stops = editor.number->tabStops();
    connect(editor.number, &NumberField::edited, this, &FactForm::edited);
}

void FactForm::makeDate(Editor& editor) {
    editor.widget = editor.date = new DateField(context_.today, page_);
    editor.date->setRequired(editor.spec.required);
    editor.date->setName(editor.label->text());
    editor.stops = {editor.date->edit()};
    connect(editor.date, &DateField::edited, this, &FactForm::edited);
}

void FactForm::makeLine(Editor& editor) {
    if (const auto offers = context_.offers.find(editor.spec.name); offers != context_.offers.end()) {
        editor.line = editor.offered = new OfferedLine(offers->second, page_);
        connect(editor.offered, &OfferedLine::taken, this, &FactForm::edited);
    } else {
        editor.line = new QLineEdit(page_);
    }
    editor.widget = editor.line;
    connect(editor.line, &QLineEdit::textEdited, this, &FactForm::edited);
}

void FactForm::makeChoice(Editor& editor) {
    editor.widget = editor.choice = new ChoiceField(page_);
    if (editor.spec.kind == FieldKind::brew) {
        editor.choice->add(context_.withoutBrew, {});
        for (const Offer& brew : context_.brews)
            editor.choice->add(brew.shown, brew.word);
    } else if (editor.spec.kind == FieldKind::vessel) {
        editor.choice->add(own("ui.choice.no_vessel"), {});
        for (const facts::VesselName& vessel : context_.vessels)
            editor.choice->add(qs(vessel), vessel);
    } else if (editor.spec.kind == FieldKind::room) {
        editor.choice->add(own("ui.choice.no_room"), {});
        for (const std::string& room : context_.rooms)
            editor.choice->add(qs(room), room);
    } else {
        for (const std::string& word : editor.spec.words)
            editor.choice->add(word.empty() ? QString() : wordOf(word), word);
    }
    connect(editor.choice, &ChoiceField::activated, this, &FactForm::edited);
}

void FactForm::layOut() {
    auto* fields = new FieldLayout(page_, lines(*this, 1), lines(*this, .2));
    for (Editor& editor : editors_) {
        auto* field = editor.frame = new QWidget(page_);
        auto* column = new QVBoxLayout(field);
        column->setContentsMargins(0, 0, 0, 0);
        column->setSpacing(lines(*this, .2));
        column->addWidget(editor.label, 0, Qt::AlignLeft);
        column->addWidget(editor.widget);
        fields->addField(field, isWhole(editor.spec));
    }
}

void FactForm::orderTabs() {
    QWidget* before = anchor_;
    for (const Editor& editor : editors_)
        for (QWidget* stop : editor.stops) {
            setTabOrder(before, stop);
            before = stop;
        }
}

void FactForm::fill(const FieldValues& values) {
    for (Editor& editor : editors_)
        if (const auto found = values.find(editor.spec.name); found != values.end())
            fill(editor, found->second);
}

void FactForm::fill(Editor& editor, const FieldValue& value) {
    if (editor.number) {
        const auto* stored = std::get_if<double>(&value);
        // A needed number that is still 0 was never given: the field starts empty.
        const bool given = stored && !(editor.spec.required && *stored == 0 && editor.spec.name == "volume_l");
        editor.number->setStored(given ? std::optional(*stored) : std::nullopt);
    } else if (editor.date) {
        if (const auto* day = std::get_if<Day>(&value))
            editor.date->setDay(*day);
    } else if (const auto* words = std::get_if<std::string>(&value)) {
        if (editor.offered)
            editor.offered->setWord(*words);
        else if (editor.line)
            editor.line->setText(qs(*words));
        if (editor.choice)
            editor.choice->setWord(*words);
    } else if (const auto* flag = std::get_if<bool>(&value); flag && editor.flag) {
        editor.flag->setChecked(*flag);
    }
}

void FactForm::ask(const std::string& field, bool asked) {
    const auto at =
        std::find_if(editors_.begin(), editors_.end(), [&](const Editor& editor) { return editor.spec.name == field; });
    if (at == editors_.end())
        return;
    at->asked = asked;
    at->frame->setVisible(asked);
}

FieldValue FactForm::valueOf(const Editor& editor) const {
    if (!editor.asked)
        return editor.line ? FieldValue(std::string()) : FieldValue();
    if (editor.number)
        return editor.number->stored() ? FieldValue(*editor.number->stored()) : FieldValue();
    if (editor.date)
        return editor.date->day() ? FieldValue(*editor.date->day()) : FieldValue();
    if (editor.offered)
        return editor.offered->word();
    if (editor.line)
        return toStd(editor.line->text().trimmed());
    if (editor.choice)
        return editor.choice->word();
    return editor.flag->isChecked();
}

facts::Fact FactForm::fact() const {
    facts::Fact made = start_;
    FieldValues values;
    for (const Editor& editor : editors_)
        values[editor.spec.name] = valueOf(editor);
    put(made, values);
    return made;
}

bool FactForm::touched() const {
    const bool halfTyped = std::any_of(editors_.begin(), editors_.end(), [](const Editor& editor) {
        if (editor.number)
            return !editor.number->stored() && !editor.number->edit()->text().isEmpty();
        return editor.date && !editor.date->usable();
    });
    return halfTyped || !(fact() == asBuilt_);
}

bool FactForm::usable() const {
    return std::all_of(editors_.begin(), editors_.end(), [](const Editor& editor) {
        if (editor.number)
            return editor.number->usable();
        return !editor.date || editor.date->usable();
    });
}

bool FactForm::previewable() const {
    return std::all_of(editors_.begin(), editors_.end(), [](const Editor& editor) {
        if (editor.number)
            return editor.number->stored().has_value() || !editor.spec.required;
        return !editor.date || editor.date->usable();
    });
}

void FactForm::recheck() {
    for (const Editor& editor : editors_) {
        if (editor.number)
            editor.number->recheck();
        if (editor.date)
            editor.date->recheck();
    }
}

void FactForm::complain() {
    bool gone = false;
    for (const Editor& editor : editors_) {
        if (editor.number)
            editor.number->complainIfEmpty();
        const bool bad = (editor.number && !editor.number->usable()) || (editor.date && !editor.date->usable());
        if (bad && !gone)
            editor.stops.front()->setFocus(Qt::OtherFocusReason);
        gone = gone || bad;
    }
}

bool FactForm::showFault(const Fault& fault, bool goThere) {
    const Editor* editor = find(fieldAt(fault.path));
    if (!editor || (!editor->number && !editor->date))
        return false;
    if (editor->number)
        editor->number->showFault(fault);
    else
        editor->date->showFault(fault);
    if (goThere)
        editor->stops.front()->setFocus(Qt::OtherFocusReason);
    return true;
}

void FactForm::setUnits(const DisplayUnits& units) {
    context_.units = units;
    for (const Editor& editor : editors_)
        if (editor.number)
            editor.number->setUnits(units);
}

void FactForm::setHint(const std::string& field, const QString& hint) {
    if (NumberField* at = number(field))
        at->setHint(hint);
}

/// The date is today more often than not, and the time seldom matters: what comes after them is asked first.
void FactForm::focusFirst() {
    const auto at = std::find_if(editors_.begin(), editors_.end(), [](const Editor& editor) {
        return editor.spec.kind != FieldKind::day && editor.spec.name != facts::timeField.name;
    });
    if (at != editors_.end())
        at->stops.front()->setFocus(Qt::OtherFocusReason);
}

const FactForm::Editor* FactForm::find(const std::string& field) const {
    const auto at =
        std::find_if(editors_.begin(), editors_.end(), [&](const Editor& editor) { return editor.spec.name == field; });
    return at != editors_.end() ? &*at : nullptr;
}

NumberField* FactForm::number(const std::string& field) const {
    const Editor* editor = find(field);
    return editor ? editor->number : nullptr;
}
DateField* FactForm::date(const std::string& field) const {
    const Editor* editor = find(field);
    return editor ? editor->date : nullptr;
}
QLineEdit* FactForm::line(const std::string& field) const {
    const Editor* editor = find(field);
    return editor ? editor->line : nullptr;
}
ChoiceField* FactForm::choice(const std::string& field) const {
    const Editor* editor = find(field);
    return editor ? editor->choice : nullptr;
}

} // namespace staveline::ui
