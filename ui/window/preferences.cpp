// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/preferences.h"

#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/theme.h"
#include "ui/window/status_line.h"
#include "ui/window/unit_menu.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <memory>

namespace staveline::ui {
namespace {

template <class Value, class Chosen>
void addChoice(QFormLayout& form, const QString& name, const Choices<Value>& choices, Value now, const Chosen& chosen) {
    auto* field = new ChoiceField;
    for (const auto& [words, value] : choices)
        field->addItem(shownWords(words));
    for (std::size_t i = 0; i < choices.size(); ++i)
        if (choices[i].second == now)
            field->setCurrentIndex(static_cast<int>(i));
    field->setAccessibleName(shownWords(name));
    form.addRow(name, field);
    QObject::connect(field, &ChoiceField::activated, field,
                     [choices, chosen](int index) { chosen(choices[static_cast<std::size_t>(index)].second); });
}

} // namespace

Preferences::Preferences(const WindowSettings& now, QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("Preferences"));
    auto* form = new QFormLayout;
    const auto units = std::make_shared<DisplayUnits>(now.units);
    const auto unit = [&](const QString& name, const auto& choices, auto member) {
        addChoice(*form, name, choices, now.units.*member, [this, units, member](auto value) {
            (*units).*member = value;
            Q_EMIT unitsChosen(*units);
        });
    };
    unit(tr("&Volumes"), volumeChoices(), &DisplayUnits::volume);
    unit(tr("&Temperatures"), temperatureChoices(), &DisplayUnits::temperature);
    unit(tr("&Gravities"), gravityChoices(), &DisplayUnits::gravity);
    unit(tr("&Colour of beer"), colourChoices(), &DisplayUnits::colour);
    unit(tr("P&ressures"), pressureChoices(), &DisplayUnits::pressure);
    addChoice(*form, tr("&Paper"), paperChoices(), now.paper, [this](PaperSize size) { Q_EMIT paperChosen(size); });
    addChoice(*form, tr("&Language"), languageChoices(), now.language,
              [this](const QString& code) { Q_EMIT languageChosen(code); });
    addChoice(*form, tr("&Appearance"), appearanceChoices(), now.appearance,
              [this](Appearance look) { Q_EMIT appearanceChosen(look); });
    auto* words = new QLabel(own("ui.preferences.words"), this);
    words->setWordWrap(true);
    words->setForegroundRole(QPalette::PlaceholderText);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->setSpacing(lines(*this, .8));
    column->addLayout(form);
    column->addWidget(words);
    column->addWidget(buttons);
}

} // namespace staveline::ui
