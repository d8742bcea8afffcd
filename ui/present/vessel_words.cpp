// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/vessel_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace staveline::ui {
namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("VesselWords", source);
}

} // namespace

QString vesselKind(const facts::VesselFact& facts, const DisplayUnits& units) {
    QString size = qs(show(facts.capacity, units));
    size.replace(QLatin1String(".0 "), QLatin1String(" ")); // a size on the head of a cask is a whole number
    return tr("%1 %2, %3")
        .arg(size, own("ui.word." + std::string(wordOf(facts.shape))).toLower(),
             own("ui.word." + std::string(wordOf(facts.material))).toLower());
}

Days youngestThird(const vessel::LedgerState& state) {
    double young = 0, old = 200 * daysPerYear;
    for (int i = 0; i < 60; ++i) {
        const double middle = (young + old) / 2;
        (olderThan(state, Days{middle}).of1 > 2.0 / 3 ? young : old) = middle;
    }
    return Days{old};
}

QString ageWords(const vessel::LedgerState& state) {
    if (state.generations.empty() || state.volume.l <= 0)
        return {};
    QString mean = tr("mean age %1").arg(spanWords(state.meanAge));
    if (state.generations.size() < 2)
        return mean;
    return tr("%1, a third under %2").arg(mean, spanWords(youngestThird(state)));
}

std::vector<DateLine> dateLines(const vessel::Schedule& dates, Day today) {
    std::vector<std::pair<Day, QString>> named{{dates.sample, tr("Taste a sample")},
                                               {dates.brew, tr("Brew the refill")},
                                               {dates.draw, tr("Draw and refill")},
                                               {dates.nextSample, tr("Taste again")},
                                               {dates.nextDraw, tr("Next draw")}};
    std::stable_sort(named.begin(), named.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<DateLine> made;
    made.reserve(named.size());
    for (const auto& [day, what] : named)
        made.push_back({what, weekdayWords(day), distanceWords(daysBetween(today, day))});
    return made;
}

} // namespace staveline::ui
