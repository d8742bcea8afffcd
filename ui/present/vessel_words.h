// SPDX-License-Identifier: GPL-3.0-or-later
// What is said about a vessel, in whole phrases.
#pragma once

#include "ui/present/session.h"
#include "vessel/schedule.h"

namespace staveline::ui {

/// "225 L cask, used oak"
[[nodiscard]] QString vesselKind(const facts::VesselFact& facts, const DisplayUnits& units);
/// "mean age 19 months, youngest third under 8 months"; empty while the vessel is.
[[nodiscard]] QString ageWords(const vessel::LedgerState& state);
/// The age a third of the liquid is below.
[[nodiscard]] Days youngestThird(const vessel::LedgerState& state);

struct DateLine {
    QString what, when, distance;
};
/// The next dates in order of time.
[[nodiscard]] std::vector<DateLine> dateLines(const desk::VesselSummary& vessel, Day today);

} // namespace staveline::ui
