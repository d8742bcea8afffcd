// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/unit_menu.h"

#include <QActionGroup>
#include <QCoreApplication>
#include <QMenu>

#include <memory>

namespace staveline::ui {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("UnitMenu", words);
}

/// Exclusive choices with their values; the one in use is checked.
template <class Value>
void addGroup(QMenu& menu, Value now, const std::vector<std::pair<QString, Value>>& choices,
              const std::function<void(Value)>& changed) {
    auto* group = new QActionGroup(&menu); // NOLINT(clang-analyzer-cplusplus.NewDeleteLeaks): the menu owns it
    for (const auto& [words, value] : choices) {
        QAction* action = menu.addAction(words);
        action->setCheckable(true);
        action->setChecked(value == now);
        group->addAction(action);
        QObject::connect(action, &QAction::triggered, &menu, [changed, value = value] { changed(value); });
    }
}

} // namespace

void addUnitChoices(QMenu& menu, const WindowSettings& now, const std::function<void(const DisplayUnits&)>& changed) {
    // The choices share what is in use, so that one does not undo another.
    const auto units = std::make_shared<DisplayUnits>(now.units);
    const auto set = [units, changed](auto member) {
        return [units, changed, member](auto value) {
            (*units).*member = value;
            changed(*units);
        };
    };
    using U = DisplayUnits;
    addGroup<U::Volume>(menu, now.units.volume,
                        {{tr("&Litres"), U::Volume::litre},
                         {tr("US &gallons"), U::Volume::usGallon},
                         {tr("&Hectolitres"), U::Volume::hectolitre}},
                        set(&U::volume));
    menu.addSeparator();
    addGroup<U::Temperature>(menu, now.units.temperature,
                             {{tr("\u00b0&C"), U::Temperature::celsius}, {tr("\u00b0&F"), U::Temperature::fahrenheit}},
                             set(&U::temperature));
    menu.addSeparator();
    addGroup<U::Gravity>(menu, now.units.gravity,
                         {{tr("&Specific gravity"), U::Gravity::specific}, {tr("\u00b0&Plato"), U::Gravity::plato}},
                         set(&U::gravity));
    menu.addSeparator();
    addGroup<U::Colour>(menu, now.units.colour, {{tr("&EBC"), U::Colour::ebc}, {tr("S&RM"), U::Colour::srm}},
                        set(&U::colour));
}

void addAppearanceChoices(QMenu& menu, const WindowSettings& now, const std::function<void(Appearance)>& changed) {
    addGroup<Appearance>(menu, now.appearance,
                         {{tr("As the &desktop"), Appearance::system},
                          {tr("&Light"), Appearance::light},
                          {tr("Dar&k"), Appearance::dark}},
                         changed);
}

void addPaperChoices(QMenu& menu, const WindowSettings& now, const std::function<void(PaperSize)>& changed) {
    std::vector<std::pair<QString, PaperSize>> choices;
    for (const PaperSizeRow& row : paperSizes)
        choices.emplace_back(QLatin1Char('&') + QLatin1String(row.name), row.size);
    addGroup<PaperSize>(menu, now.paper, choices, changed);
}

} // namespace staveline::ui
