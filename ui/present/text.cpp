// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/text.h"

#include "quantity/day_words.h"
#include "quantity/language.h"

#include <QCoreApplication>

#include <cstdlib>

namespace staveline::ui {
namespace {

QString tr(const char* source, int n = -1) {
    return QCoreApplication::translate("Text", source, nullptr, n);
}

} // namespace

QString text(const Message& message, const DisplayUnits& units) {
    return message.key.empty() ? QString() : qs(render(message, units));
}

QString text(const Fault& fault, const DisplayUnits& units) {
    const QString cause = text(fault.cause, units);
    const QString remedy = text(fault.remedy, units);
    return remedy.isEmpty() ? cause : cause + QLatin1Char(' ') + remedy;
}

QString own(std::string_view key) {
    return qs(builtInTexts().find(key));
}

QString inSentence(const QString& name) {
    return qs(staveline::inSentence(toStd(name)));
}

QString numberWords(double value, int decimals) {
    return QString::number(value, 'f', decimals).replace(QLatin1Char('.'), QLatin1Char(spoken().decimalMark));
}

QString dayWords(Day day) {
    return qs(dayInWords(day));
}

QString weekdayWords(Day day) {
    return qs(weekdayInWords(day) + ' ' + dayInWords(day));
}

QString distanceWords(int days) {
    if (days == 0)
        return tr("today");
    if (days == 1)
        return tr("tomorrow");
    if (days == -1)
        return tr("yesterday");
    const QString span = spanWords(Days{static_cast<double>(std::abs(days))});
    return days > 0 ? tr("in %1").arg(span) : tr("%1 ago").arg(span);
}

QString overdueWords(int days) {
    return days == 1 ? tr("overdue 1 day") : tr("overdue %1 days").arg(days);
}

QString spanWords(Days span) {
    return qs(show(Age{span.d}));
}

} // namespace staveline::ui
