// SPDX-License-Identifier: GPL-3.0-or-later
// What is adopted for the coming refill, since when, and what it promised.
#pragma once

#include "advice/board.h"
#include "desk/advice.h"
#include "ui/present/session.h"

namespace staveline::ui {

/// Empty while nothing is adopted in this cycle.
[[nodiscard]] QString adoptedWords(const desk::Desk& desk, const desk::AdviceJob& job);
/// What was tasted or measured since, and what it changed in the promise; `adopted`: what the plan comes to with
/// today's numbers. Empty: nothing.
[[nodiscard]] QString sinceAdopted(const Session& session, const desk::AdviceJob& job, const advice::Trial& adopted);
/// Why nothing can be adopted now; empty: it can.
[[nodiscard]] QString whyNotAdopt(const desk::Desk& desk, const std::optional<facts::BrewFact>& brewed);

} // namespace staveline::ui
