// SPDX-License-Identifier: GPL-3.0-or-later
// Core text in Qt's clothes, and days in words.
#pragma once

#include "quantity/day.h"
#include "quantity/fault.h"
#include "quantity/text.h"

#include <QString>

namespace staveline::ui {

[[nodiscard]] inline QString qs(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
[[nodiscard]] inline std::string toStd(const QString& text) {
    return text.toStdString();
}
[[nodiscard]] QString text(const Message& message, const DisplayUnits& units = {});
/// Cause and remedy in one line.
[[nodiscard]] QString text(const Fault& fault, const DisplayUnits& units = {});
/// A text of the window's own (resources/texts/LANGUAGE/ui*.tsv).
[[nodiscard]] QString own(std::string_view key);

/// A name as it stands in the middle of a sentence: in lower case, where nouns are not capitalised.
[[nodiscard]] QString inSentence(const QString& name);
/// "1.25", with the decimal mark of the language.
[[nodiscard]] QString numberWords(double value, int decimals);
/// "2 Mar 2026", not by the locale, so that papers and screens agree.
[[nodiscard]] QString dayWords(Day day);
/// "Mon 2 Mar 2026"
[[nodiscard]] QString weekdayWords(Day day);
/// "today", "in 12 days", "3 months ago"
[[nodiscard]] QString distanceWords(int days);
/// "overdue 5 days"
[[nodiscard]] QString overdueWords(int days);
/// "80 days", "27 months", "4.1 years": an age has one unit wherever it is told.
[[nodiscard]] QString spanWords(Days span);

} // namespace staveline::ui
