// SPDX-License-Identifier: GPL-3.0-or-later
// A proposal as plain text, to be pasted into a letter.
#pragma once

#include "advice/advise.h"
#include "ui/present/session.h"

namespace staveline::ui {

/// Its title, what moves, the scores at the next draw with their bands, why, and its limits and cautions.
[[nodiscard]] QString proposalText(const advice::Proposal& proposal, const Session& session);

} // namespace staveline::ui
