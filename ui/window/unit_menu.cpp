// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/unit_menu.h"

#include "quantity/language.h"
#include "ui/present/text.h"

#include <QActionGroup>
#include <QCoreApplication>
#include <QMenu>

namespace staveline::ui {

using U = DisplayUnits;

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("UnitMenu", words);
}

/// Exclusive choices with their values; the one in use is checked.
template <class Value, class Now, class Changed>
void addGroup(QMenu& menu, const Choices<Value>& choices, const Now& now, const Changed& changed) {
    auto* group = new QActionGroup(&menu); // NOLINT(clang-analyzer-cplusplus.NewDeleteLeaks): the menu owns it
    for (const auto& [words, value] : choices) {
        QAction* action = menu.addAction(words);
        action->setCheckable(true);
        action->setChecked(value == now());
        group->addAction(action);
        QObject::connect(action, &QAction::triggered, &menu, [changed, value = value] { changed(value); });
        QObject::connect(&menu, &QMenu::aboutToShow, action,
                         [action, now, value = value] { action->setChecked(value == now()); });
    }
}

} // namespace

Choices<U::Volume> volumeChoices() {
    return {{tr("&Litres"), U::Volume::litre},
            {tr("US &gallons"), U::Volume::usGallon},
            {tr("&Hectolitres"), U::Volume::hectolitre}};
}
Choices<U::Temperature> temperatureChoices() {
    return {{tr("\u00b0&C"), U::Temperature::celsius}, {tr("\u00b0&F"), U::Temperature::fahrenheit}};
}
Choices<U::Gravity> gravityChoices() {
    return {{tr("&Specific gravity"), U::Gravity::specific}, {tr("\u00b0&Plato"), U::Gravity::plato}};
}
Choices<U::Colour> colourChoices() {
    return {{tr("&EBC"), U::Colour::ebc}, {tr("S&RM"), U::Colour::srm}};
}
Choices<U::Pressure> pressureChoices() {
    return {{tr("&bar"), U::Pressure::bar}, {tr("ps&i"), U::Pressure::psi}};
}
Choices<Appearance> appearanceChoices() {
    return {{tr("As the &desktop"), Appearance::system},
            {tr("&Light"), Appearance::light},
            {tr("Dar&k"), Appearance::dark}};
}
Choices<PaperSize> paperChoices() {
    Choices<PaperSize> choices;
    for (const PaperSizeRow& row : paperSizes)
        choices.emplace_back(QLatin1Char('&') + QLatin1String(row.name), row.size);
    return choices;
}

Choices<QString> languageChoices() {
    Choices<QString> choices{{tr("As the des&ktop"), QString()}};
    for (const Language& language : languages())
        choices.emplace_back(QLatin1Char('&') + qs(language.name), qs(language.code));
    return choices;
}

void addUnitChoices(QMenu& menu, const WindowSettings& now, const std::function<void(const DisplayUnits&)>& changed) {
    const auto add = [&](const auto& choices, auto member) {
        addGroup(
            menu, choices, [&now, member] { return now.units.*member; },
            [&now, changed, member](auto value) {
                DisplayUnits units = now.units; // one choice keeps the others
                units.*member = value;
                changed(units);
            });
    };
    add(volumeChoices(), &U::volume);
    menu.addSeparator();
    add(temperatureChoices(), &U::temperature);
    menu.addSeparator();
    add(gravityChoices(), &U::gravity);
    menu.addSeparator();
    add(colourChoices(), &U::colour);
    menu.addSeparator();
    add(pressureChoices(), &U::pressure);
}

void addAppearanceChoices(QMenu& menu, const WindowSettings& now, const std::function<void(Appearance)>& changed) {
    addGroup(
        menu, appearanceChoices(), [&now] { return now.appearance; }, changed);
}

void addLanguageChoices(QMenu& menu, const WindowSettings& now, const std::function<void(const QString&)>& changed) {
    addGroup(
        menu, languageChoices(), [&now] { return now.language; }, changed);
}

void addPaperChoices(QMenu& menu, const WindowSettings& now, const std::function<void(PaperSize)>& changed) {
    addGroup(
        menu, paperChoices(), [&now] { return now.paper; }, changed);
}

} // namespace staveline::ui
