// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/binder.h"

#include "advice/advise.h"
#include "facts/fields.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"

#include <QCheckBox>
#include <QLineEdit>

#include <algorithm>
#include <map>

namespace staveline::ui {

using advice::Setting;
using facts::describe;

namespace {

/// Collects the limits a description states.
class Limits {
public:
    std::map<std::string, Range> found;

    template <class T> void field(const facts::Field& f, const T&) { found[std::string(f.name)] = {f.low, f.high}; }
    template <class E> void word(const facts::Field&, const E&, std::span<const std::string_view>) {}
    template <class T> void list(const facts::Field&, const std::vector<T>&) {}
    void extract(std::string_view, const Plato&) {}
};

std::map<std::string, Range> limits() {
    Limits all;
    const Setting setting;
    const brewing::GristPart part;
    const brewing::MashStep step;
    const brewing::HopAddition hop;
    facts::describeHandling(all, setting); // its temperature is the cellar's: the mash step's comes after
    describe(all, setting.recipe);
    describe(all, part);
    describe(all, step);
    describe(all, hop);
    return std::move(all.found);
}

std::string lastPart(const std::string& path) {
    return path.substr(path.rfind('/') + 1);
}

template <class List> void forgetIn(List& list, const std::string& prefix) {
    std::erase_if(list, [&](const auto& each) { return each.tie.path.starts_with(prefix); });
}

} // namespace

Range recipeRange(const std::string& field) {
    static const std::map<std::string, Range> all = limits();
    const auto found = all.find(field);
    return found == all.end() ? Range{1, 1.2} : found->second; // a gravity, which is described without limits
}

Binder::Binder(RecipeEditorModel& model, QObject* parent) : QObject(parent), model_(model) {}

NumberField* Binder::number(const NumberTie& tie, QWidget* parent) {
    const Range range = tie.range ? *tie.range : recipeRange(lastPart(tie.path));
    auto* field = new NumberField(tie.unit, range, !tie.clear, parent);
    field->setUnits(model_.session().units());
    field->setName(tie.name);
    connect(field, &NumberField::edited, this, [this, field, tie] {
        if (const auto value = field->stored())
            model_.change([set = tie.set, value](Setting& setting) { set(setting, *value); }, tie.name, tie.path);
        else if (tie.clear && field->usable())
            model_.change(tie.clear, tie.name, tie.path);
        else
            model_.takeBack(tie.path);
    });
    connect(field->edit(), &QLineEdit::editingFinished, this, [this, field] {
        field->complainIfEmpty();
        if (field->stored())
            field->edit()->setModified(false);
        model_.finish();
    });
    connect(&model_.session(), &Session::unitsChanged, field,
            [this, field] { field->setUnits(model_.session().units()); });
    numbers_.push_back({tie, field});
    return field;
}

void Binder::tie(ChoiceField& field, const WordTie& tie, MessageLabel* message) {
    field.setAccessibleName(tie.name);
    field.setObjectName(tie.name);
    choices_.push_back({tie, &field, message});
    if (message)
        message->setObjectName(qs(tie.path));
    connect(&field, &QComboBox::activated, this, [this, &field, tie] {
        if (field.lineEdit())
            field.lineEdit()->setModified(false);
        take(tie, field);
    });
    if (!field.isEditable())
        return;
    connect(field.lineEdit(), &QLineEdit::editingFinished, this, [this, &field, tie] {
        if (!field.lineEdit()->isModified()) {
            model_.finish(); // what was refused before is tried again
            return;
        }
        field.lineEdit()->setModified(false);
        take(tie, field);
    });
}

void Binder::take(const WordTie& tie, ChoiceField& field) {
    std::string word = field.word();
    if (field.isEditable()) {
        const QString typed = field.currentText().trimmed();
        const int at = field.findText(typed, Qt::MatchFixedString);
        word = at >= 0 ? toStd(field.itemData(at).toString()) : toStd(typed);
    }
    model_.change([set = tie.set, word](Setting& setting) { set(setting, word); }, tie.name, tie.path);
    model_.finish();
}

void Binder::tie(QLineEdit& field, const WordTie& tie) {
    field.setAccessibleName(tie.name);
    lines_.push_back({tie, &field});
    connect(&field, &QLineEdit::textEdited, this, [this, tie](const QString& typed) {
        const std::string word = toStd(typed.trimmed());
        model_.change([set = tie.set, word](Setting& setting) { set(setting, word); }, tie.name, tie.path);
    });
    connect(&field, &QLineEdit::editingFinished, this, [this, &field] {
        field.setModified(false);
        model_.finish();
    });
}

void Binder::tie(QCheckBox& field, const FlagTie& tie) {
    field.setAccessibleName(tie.name);
    flags_.push_back({tie, &field});
    connect(&field, &QCheckBox::clicked, this, [this, tie](bool on) {
        model_.change([set = tie.set, on](Setting& setting) { set(setting, on); }, tie.name, tie.path);
        model_.finish();
    });
}

void Binder::place(const std::string& path, MessageLabel& label) {
    label.setObjectName(qs(path));
    places_.push_back({path, &label});
}

void Binder::forget(const std::string& pathPrefix) {
    forgetIn(numbers_, pathPrefix);
    forgetIn(choices_, pathPrefix);
    forgetIn(lines_, pathPrefix);
    forgetIn(flags_, pathPrefix);
}

void Binder::show(bool all) {
    for (const Number& number : numbers_)
        showNumber(number, all);
    for (const Choice& choice : choices_)
        showChoice(choice, all);
    for (const Line& line : lines_) {
        if (const QString words = qs(line.tie.get(model_.setting()));
            (all || !line.field->isModified()) && line.field->text() != words)
            line.field->setText(words);
        line.field->setEnabled(!model_.locked());
    }
    for (const Flag& flag : flags_) {
        flag.field->setChecked(flag.tie.get(model_.setting()));
        flag.field->setEnabled(!model_.locked());
    }
    clearPlaces();
    if (model_.fault() && !model_.refused()) // what the book says is no field's fault: the page says it
        showFault(*model_.fault());
}

void Binder::showNumber(const Number& number, bool all) const {
    NumberField& field = *number.field;
    field.setEnabled(!model_.locked());
    field.recheck();
    if (!all && field.edit()->isModified())
        return;
    const std::optional<double> value = number.tie.get(model_.setting());
    if (all || field.stored() != value || !field.usable())
        field.setStored(value);
}

void Binder::showChoice(const Choice& choice, bool all) const {
    ChoiceField& field = *choice.field;
    field.setEnabled(!model_.locked());
    const std::string word = choice.tie.get(model_.setting());
    const bool typing = field.isEditable() && field.lineEdit()->isModified() && !all;
    if (typing)
        return;
    if (field.isEditable() && field.findData(qs(word)) < 0)
        field.setEditText(qs(word)); // typed, and not in the pantry
    else
        field.setWord(word);
}

void Binder::clearPlaces() {
    for (const Place& place : places_)
        place.label->clear();
    for (const Choice& choice : choices_)
        if (choice.message)
            choice.message->clear();
}

void Binder::showFault(const Fault& fault) {
    if (NumberField* field = numberAt(fault.path)) {
        field->showFault(fault);
        return;
    }
    const auto choice =
        std::find_if(choices_.begin(), choices_.end(), [&](const Choice& c) { return c.tie.path == fault.path; });
    MessageLabel* label = choice != choices_.end() && choice->message ? choice->message.data() : placeOf(fault.path);
    if (label)
        label->say(MessageLabel::Weight::fault, model_.session().words(fault));
}

/// The nearest place above: "/grist/0/late" is said at "/grist"; what fits nowhere at "".
MessageLabel* Binder::placeOf(const std::string& path) const {
    MessageLabel* best = nullptr;
    std::size_t length = 0;
    for (const Place& place : places_)
        if (path.starts_with(place.path) && (!best || place.path.size() > length)) {
            best = place.label;
            length = place.path.size();
        }
    return best;
}

NumberField* Binder::numberAt(const std::string& path) const {
    for (const Number& number : numbers_)
        if (number.tie.path == path)
            return number.field;
    return nullptr;
}

} // namespace staveline::ui
