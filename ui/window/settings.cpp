// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/settings.h"

#include "quantity/language.h"
#include "ui/present/text.h"

#include <QLocale>
#include <QSettings>

#include <array>

namespace staveline::ui {
namespace {

constexpr int mostRecent = 8;
constexpr int mostParts = 8, widestPart = 100'000; // of a splitter

/// Words that stand for the values of an enumeration, in its order.
template <class E, std::size_t N> struct Words {
    const char* key;
    std::array<const char*, N> words;
    E standard = static_cast<E>(0);

    [[nodiscard]] E read(const QSettings& from) const {
        const QString stored = from.value(QLatin1String(key)).toString();
        for (std::size_t i = 0; i < N; ++i)
            if (stored == QLatin1String(words[i]))
                return static_cast<E>(i);
        return standard;
    }
    void write(E value, QSettings& to) const {
        to.setValue(QLatin1String(key), QLatin1String(words[static_cast<std::size_t>(value)]));
    }
};

constexpr Words<DisplayUnits::Volume, 3> volumes{"units/volume", {"litre", "us_gallon", "hectolitre"}};
constexpr Words<DisplayUnits::Temperature, 2> temperatures{"units/temperature", {"celsius", "fahrenheit"}};
constexpr Words<DisplayUnits::Colour, 2> colours{"units/colour", {"ebc", "srm"}};
constexpr Words<DisplayUnits::Pressure, 2> pressures{"units/pressure", {"bar", "psi"}};
constexpr Words<Appearance, 3> appearances{"appearance", {"system", "light", "dark"}};
constexpr Words<PageId, 6> workPages{
    "session/station", {"taste", "adjust", "brew", "draw_refill", "finish", "history"}, PageId::drawRefill};

constexpr Words<BrewPage::Part, 3> brewParts{"session/brew", {"plan", "sheet", "as_brewed"}};
constexpr Words<HistoryPage::Face, 3> historyFaces{"session/history", {"charts", "table", "promises"}};

const QLatin1String languageKey("language");
const QLatin1String splitGroup("split/");
const QLatin1String atAllKey("session/all_vessels");
const QLatin1String firstStepsKey("first_steps_away");
const QLatin1String versionKey("version");
const QLatin1String mostMovedKey("advice/most_moved"); // its control knows the bounds

/// Sizes as they were written; none when one of them is no size.
QList<int> sizesIn(const QStringList& stored) {
    QList<int> sizes;
    for (const QString& words : stored) {
        bool isNumber = false;
        const int size = words.toInt(&isNumber);
        if (!isNumber || size < 1 || size > widestPart || sizes.size() == mostParts)
            return {};
        sizes << size;
    }
    return sizes;
}

DisplayUnits unitsIn(const QSettings& from) {
    DisplayUnits units;
    units.volume = volumes.read(from);
    units.temperature = temperatures.read(from);
    units.colour = colours.read(from);
    units.pressure = pressures.read(from);
    // Specific gravity is the default, though not the first of its enumeration.
    units.gravity = from.value(QLatin1String("units/gravity")).toString() == QLatin1String("plato")
                        ? DisplayUnits::Gravity::plato
                        : DisplayUnits::Gravity::specific;
    return units;
}

/// Before any are chosen: as the desktop measures.
DisplayUnits localUnits() {
    DisplayUnits units;
    if (QLocale().measurementSystem() != QLocale::ImperialUSSystem)
        return units;
    units.volume = DisplayUnits::Volume::usGallon;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    units.colour = DisplayUnits::Colour::srm;
    units.pressure = DisplayUnits::Pressure::psi;
    return units;
}

QMap<QString, QList<int>> readSplits(const QSettings& from) {
    QMap<QString, QList<int>> splits;
    for (const QString& key : from.allKeys())
        if (key.startsWith(splitGroup))
            if (const QList<int> sizes = sizesIn(from.value(key).toStringList()); !sizes.isEmpty())
                splits[key.mid(splitGroup.size())] = sizes;
    return splits;
}

void writeSplits(const QMap<QString, QList<int>>& splits, QSettings& to) {
    for (auto split = splits.begin(); split != splits.end(); ++split) {
        QStringList words;
        for (const int size : split.value())
            words << QString::number(size);
        to.setValue(splitGroup + split.key(), words);
    }
}

QStringList existing(const QStringList& stored) {
    QStringList kept;
    for (const QString& path : stored)
        if (!path.isEmpty() && !kept.contains(path) && kept.size() < mostRecent)
            kept << path;
    return kept;
}

} // namespace

QString idOf(PageId workPage) {
    return QLatin1String(workPages.words[static_cast<std::size_t>(workPage)]);
}

void WindowSettings::use(const QString& book) {
    recent.removeAll(book);
    recent.prepend(book);
    recent = existing(recent);
    lastBook = book;
}

WindowSettings load(const QSettings& from) {
    WindowSettings made;
    if (!from.contains(QLatin1String(volumes.key)))
        made.units = localUnits();
    else
        made.units = unitsIn(from);
    made.appearance = appearances.read(from);
    made.paper = paperNamed(from.value(QLatin1String("paper")).toString().toStdString()).value_or(localPaper());
    const auto language = from.value(languageKey).toString();
    made.language = isLanguage(toStd(language)) ? language : QString();
    made.recent = existing(from.value(QLatin1String("recent")).toStringList());
    made.lastBook = from.value(QLatin1String("session/book")).toString();
    made.lastVessel = from.value(QLatin1String("session/vessel")).toString();
    made.lastPage = workPages.read(from);
    made.atAll = from.value(atAllKey).toBool();
    made.brewPart = brewParts.read(from);
    made.historyFace = historyFaces.read(from);
    bool isNumber = false;
    const int levers = from.value(mostMovedKey).toInt(&isNumber);
    if (isNumber)
        made.mostMoved = levers;
    made.firstStepsAway = from.value(firstStepsKey).toBool();
    made.seenVersion = from.value(versionKey).toString();
    made.splits = readSplits(from);
    made.geometry = from.value(QLatin1String("session/geometry")).toByteArray();
    return made;
}

void save(const WindowSettings& settings, QSettings& to) {
    volumes.write(settings.units.volume, to);
    temperatures.write(settings.units.temperature, to);
    colours.write(settings.units.colour, to);
    pressures.write(settings.units.pressure, to);
    const bool plato = settings.units.gravity == DisplayUnits::Gravity::plato;
    to.setValue(QLatin1String("units/gravity"), plato ? QLatin1String("plato") : QLatin1String("specific"));
    appearances.write(settings.appearance, to);
    to.setValue(QLatin1String("paper"), QLatin1String(rowOf(settings.paper).word));
    to.setValue(languageKey, settings.language);
    to.setValue(QLatin1String("recent"), settings.recent);
    to.setValue(QLatin1String("session/book"), settings.lastBook);
    to.setValue(QLatin1String("session/vessel"), settings.lastVessel);
    workPages.write(settings.lastPage, to);
    to.setValue(atAllKey, settings.atAll);
    brewParts.write(settings.brewPart, to);
    historyFaces.write(settings.historyFace, to);
    to.setValue(mostMovedKey, settings.mostMoved);
    to.setValue(firstStepsKey, settings.firstStepsAway);
    to.setValue(versionKey, settings.seenVersion);
    writeSplits(settings.splits, to);
    to.setValue(QLatin1String("session/geometry"), settings.geometry);
}

} // namespace staveline::ui
