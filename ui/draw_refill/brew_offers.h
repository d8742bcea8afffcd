// SPDX-License-Identifier: GPL-3.0-or-later
// The brews a vessel can be refilled from, as the entry form offers them.
#pragma once

#include "desk/brew.h"
#include "ui/present/session.h"
#include "ui/widgets/fact_form.h"

namespace staveline::ui {

/// In the order of the stock, each with its day, its vessel and what is left; what is gone comes last.
[[nodiscard]] std::vector<Offer> brewOffers(const std::vector<desk::BrewStock>& stock, const Session& session);
/// What a coming refill is when no brew of it is on record: by the plan adopted for it, else by what goes on.
[[nodiscard]] QString withoutBrew(const desk::Desk& desk, const facts::VesselName& vessel);
/// The name of the brew made for the coming refill; empty: none is, or nothing is left of it.
[[nodiscard]] std::string brewMadeFor(const std::vector<desk::BrewStock>& stock);

} // namespace staveline::ui
