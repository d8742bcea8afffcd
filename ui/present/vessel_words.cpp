// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/vessel_words.h"

#include "vessel/routine.h"

#include <QCoreApplication>

#include <algorithm>

namespace staveline::ui {
namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("VesselWords", source);
}

struct Named {
    Day on;
    QString what;
    vessel::DueKind kind;
};

std::vector<Named> firstFillDates(const vessel::Schedule& dates) {
    using vessel::DueKind;
    return {{dates.brew, tr("Brew the first fill"), DueKind::brew},
            {dates.draw, tr("Fill"), DueKind::refill},
            {dates.nextSample, tr("First tasting"), DueKind::nothing},
            {dates.nextDraw, tr("First draw"), DueKind::nothing}};
}

std::vector<Named> refillDates(const vessel::Schedule& dates, bool drawn) {
    using vessel::DueKind;
    return {{dates.sample, tr("Taste a sample"), DueKind::taste},
            {dates.brew, tr("Brew the refill"), DueKind::brew},
            {dates.draw, drawn ? tr("Refill") : tr("Draw and refill"), drawn ? DueKind::refill : DueKind::draw},
            {dates.nextSample, tr("Taste again"), DueKind::nothing},
            {dates.nextDraw, tr("Next draw"), DueKind::nothing}};
}

} // namespace

QString vesselKind(const facts::VesselFact& facts, const DisplayUnits& units) {
    QString size = qs(show(facts.capacity, units));
    size.replace(numberWords(0, 1).mid(1) + QLatin1Char(' '),
                 QStringLiteral(" ")); // a size on the head of a cask is a whole number
    const QString shape = inSentence(own("ui.word." + std::string(wordOf(facts.shape))));
    const QString material = inSentence(own("ui.word." + std::string(wordOf(facts.material))));
    const QString kind = shape == material ? tr("%1 %2").arg(size, shape) : tr("%1 %2, %3").arg(size, shape, material);
    const QString place = qs(facts.room.empty() ? show(facts.temperature, units) : facts.room);
    return tr("%1, %2").arg(kind, place);
}

Days youngestThird(const vessel::LedgerState& state) {
    double young = 0, old = vessel::longestAge;
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
    const Days young = youngestThird(state);
    return young.d < .5 ? tr("%1; a third or more went in today").arg(mean)
                        : tr("%1; youngest third under %2").arg(mean, spanWords(young));
}

std::vector<DateLine> dateLines(const desk::VesselSummary& vessel, Day today) {
    const desk::Due& next = vessel.due;
    std::vector<Named> named =
        vessel.toFill ? firstFillDates(vessel.dates) : refillDates(vessel.dates, vessel.works.draw.done);
    std::stable_sort(named.begin(), named.end(), [](const Named& a, const Named& b) { return a.on < b.on; });
    std::vector<DateLine> made;
    made.reserve(named.size());
    for (const Named& each : named) {
        const bool late = each.kind == next.kind && next.inDays < 0;
        made.push_back({each.what, weekdayWords(each.on),
                        late ? overdueWords(-next.inDays) : distanceWords(daysBetween(today, each.on))});
    }
    return made;
}

} // namespace staveline::ui
